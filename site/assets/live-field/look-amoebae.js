/* Naked amoebae with arms. Their outline changes slowly, so a picture of it serves for a part of a second. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made;
  var FRESH = 0.35;                   // s; within it even a quick one changes by less than a pixel

  function grainsOf(b, many) {
    return made(b, "grains", function () {
      var rng = field.chance(b.grain), all = [];
      for (var n = 0; n < many; n++) { all.push([(n + rng()) / many, TURN * (n * 0.618034 + 0.2 * rng()), rng()]); }
      return all;
    });
  }

  /* An outline by angle: r(angle), in half widths, scaled so that the cell keeps its size while it changes. */
  function sized(b, count, r) {
    var size = Math.sqrt(b.p.length * b.p.width) / 2, radii = [], area = 0;
    for (var i = 0; i < count; i++) {
      radii.push(r(TURN * i / count));
      area += radii[i] * radii[i] / count;
    }
    var fit = size / Math.sqrt(area);
    return function (share, a) {
      var n = ((a / TURN % 1) + 1) % 1 * count, low = Math.floor(n), t = n - low;
      var far = fit * share * (radii[low % count] * (1 - t) + radii[(low + 1) % count] * t);
      return [far * Math.cos(a), far * Math.sin(a)];
    };
  }

  /* Contents that stream after the arms, a nucleus with its dark dot, and a bubble at the rear. */
  function contents(pen, b, at, grains) {
    var ctx = pen.ctx, size = Math.sqrt(b.p.length * b.p.width) / 2;
    field.fine(pen, 1, 0.75);
    ctx.beginPath();
    grains.forEach(function (g) {                     // a clear border stays free of grains
      var p = at(0.78 * Math.sqrt((g[0] + b.phase / size * 0.3) % 1), g[1]);
      field.spot(ctx, p[0], p[1], Math.max(Math.min(0.3 + 0.35 * g[2], 0.05 * size), 0.5 / pen.scale));
    });
    ctx.fill();
    var n = at(0.28, b.heading + 2.4), nucleus = new Path2D(), dot = new Path2D();
    field.spot(nucleus, n[0], n[1], 0.17 * size);
    field.spot(dot, n[0], n[1], 0.07 * size);
    field.cover(pen, nucleus);
    field.strokes(pen, nucleus, 0.7, 0.85);
    field.tone(pen, dot, 0.85);
    var v = at(0.5, b.heading + Math.PI);
    field.bubble(pen, b, v[0], v[1], 0.16 * size, 25);
  }

  /* An amoeba whose outline is shape(b, angle). more(pen, b, at) draws what stands out from it, and gives the parts that open into it. */
  function amoeba(o) {
    return {
      tone: 0.14, upright: true, fresh: FRESH, square: true, box: [0.95, 0.95],
      paint: function (pen, b) {
        var at = sized(b, 72, function (a) { return o.shape(b, a); });
        var outline = around(72, function (a) { return at(1, a); });
        var parts = o.more ? o.more(pen, b, at) : [];
        field.solid(pen, field.closed(outline), 1);
        parts.forEach(function (part) { field.cover(pen, part); });     // of the same cell: no line between
        contents(pen, b, at, grainsOf(b, o.grains));
      }
    };
  }

  function off(a, from) { return Math.atan2(Math.sin(a - from), Math.cos(a - from)); }

  function arms(b, a, narrow, base) {
    return b.arms.reduce(function (r, arm) {
      var away = off(a, arm.angle);
      return r + 1.15 * field.swell(arm) * Math.exp(-away * away / narrow);
    }, base + 0.02 * Math.sin(5 * a + b.grain) + 0.012 * Math.sin(11 * a + b.age / 9));
  }

  looks.amoeba = amoeba({ grains: 110, shape: function (b, a) { return arms(b, a, 0.11, 0.62); } });

  /* Several clear cones, mostly in front. */
  looks["coned-amoeba"] = amoeba({
    grains: 90,
    shape: function (b, a) {
      var r = 0.72 + 0.14 * Math.cos(off(a, b.heading));
      b.arms.forEach(function (arm, i) {
        var way = arm.angle, out = field.swell(arm) * (i % 2 ? 0.8 : 1), away = Math.abs(off(a, way));
        r += 1.1 * out * Math.pow(Math.max(0, 1 - away / 0.36), 1.25);
      });
      return r;
    }
  });

  /* Flat, wider in front, with many thin tapering spikes that flex slowly and come and go. */
  looks["spiky-amoeba"] = amoeba({
    grains: 100,
    shape: function (b, a) {
      return 0.85 + 0.12 * Math.cos(off(a, b.heading)) + 0.06 * Math.sin(2 * a + b.age / 40 + b.grain) + 0.04 * Math.sin(3 * a - b.age / 31);
    },
    more: function (pen, b, at) {
      var size = Math.sqrt(b.p.length * b.p.width) / 2, spikes = [];
      for (var i = 0; i < 14; i++) {
        var way = TURN * (i + 0.5 * Math.sin(7 * i + b.grain)) / 14, live = Math.sin(b.age / (11 + i % 5 * 3) + i * 2.4);
        var long = size * (0.12 + 0.4 * Math.max(0, live + 0.4)) * (0.8 + 0.3 * Math.cos(off(way, b.heading)));
        var lean = way + 0.3 * Math.sin(b.age / 7 + i), p = at(0.93, way - 0.17), q = at(0.93, way + 0.17), m = at(1.04, way), spike = new Path2D();
        spike.moveTo(p[0], p[1]);
        spike.quadraticCurveTo(m[0], m[1], m[0] + long * Math.cos(lean), m[1] + long * Math.sin(lean));
        spike.quadraticCurveTo(m[0], m[1], q[0], q[1]);
        field.solid(pen, spike, 0.9);
        spikes.push(spike);
      }
      return spikes;
    }
  });

  /* A ball of cell with hair-thin rays, some bent, some forked. */
  looks["ray-amoeba"] = amoeba({
    grains: 70,
    shape: function (b, a) { return 1 + 0.08 * Math.sin(2 * a + b.age / 30 + b.grain) + 0.03 * Math.sin(5 * a - b.age / 21); },
    more: function (pen, b, at) {
      var size = Math.sqrt(b.p.length * b.p.width) / 2, rays = new Path2D();
      for (var i = 0; i < 15; i++) {
        var way = TURN * (i + 0.3 * Math.sin(5 * i)) / 15, long = size * (0.5 + 0.32 * Math.sin(b.age / 17 + 2.1 * i)), p = at(0.95, way);
        var bend = way + 0.4 * Math.sin(b.age / 15 + i);
        rays.moveTo(p[0], p[1]);
        rays.quadraticCurveTo(p[0] + 0.5 * long * Math.cos(way), p[1] + 0.5 * long * Math.sin(way), p[0] + long * Math.cos(bend), p[1] + long * Math.sin(bend));
      }
      field.strokes(pen, rays, 0.6, 0.8);
      return [];
    }
  });

  /* A thin film that branches and joins, with holes in it; no clear front, and several nuclei. */
  looks["net-amoeba"] = {
    tone: 0.14, upright: true, fresh: 0.5, square: true, box: [0.8, 0.8],
    paint: function (pen, b) {
      var size = Math.sqrt(b.p.length * b.p.width) / 2, ctx = pen.ctx;
      var at = sized(b, 90, function (a) {
        return arms(b, a, 0.05, 0.55) + 0.3 * Math.pow(Math.max(0, Math.sin(3.5 * a + b.grain + 0.3 * Math.sin(b.age / 30))), 2)
          + 0.22 * Math.pow(Math.max(0, Math.sin(6 * a - b.grain + b.age / 80)), 2);
      });
      field.solid(pen, field.closed(around(90, function (a) { return at(1, a); })), 0.9);
      field.fine(pen, 1, 0.6);
      ctx.beginPath();
      grainsOf(b, 160).forEach(function (g) {
        var p = at(0.9 * Math.sqrt((g[0] + b.phase / size * 0.2) % 1), g[1]);
        field.spot(ctx, p[0], p[1], Math.max(0.3 + 0.35 * g[2], 0.45 / pen.scale));
      });
      ctx.fill();
      [0.5, 2.4, 3.6, 5.1].forEach(function (a, i) {    // the holes of the net, and nuclei
        var p = at(0.42 + 0.07 * i, a), q = at(0.3, a + 0.7), hole = new Path2D(), nucleus = new Path2D(), dot = new Path2D();
        hole.ellipse(p[0], p[1], size * (0.08 + 0.025 * i), size * 0.06, a, 0, TURN);
        field.cover(pen, hole);
        field.strokes(pen, hole, 0.8, 0.85);
        field.spot(nucleus, q[0], q[1], Math.min(3.5, 0.07 * size));
        field.spot(dot, q[0], q[1], Math.min(1.4, 0.03 * size));
        field.cover(pen, nucleus);
        field.strokes(pen, nucleus, 0.6, 0.8);
        field.tone(pen, dot, 0.8);
      });
    }
  };
})(self.WetmountField);
