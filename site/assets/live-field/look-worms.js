/* Worms and threads: bodies along a middle line. Those that bend are drawn anew at every frame. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, made = field.made;

  /* An outline along a line; half(s) is the half width at share s. */
  field.sheath = function (line, half, steps) {
    var at = field.along(line), top = [], low = [];
    for (var i = 0; i <= steps; i++) {
      top.push(at(i / steps, half(i / steps)));
      low.push(at(i / steps, -half(i / steps)));
    }
    return { at: at, path: field.closed(top.concat(low.reverse())) };
  };

  function nematodeHalf(w) {
    return function (s) {
      return w / 2 * (s < 0.14 ? Math.min(1, 0.42 + 0.58 * Math.sqrt(s / 0.14)) : s > 0.7 ? Math.pow(Math.max(0, (1 - s) / 0.3), 0.75) : 1);
    };
  }

  /* A clear tube with a gut. From 7 pixels across there is a gullet with two swellings, and grains in the gut. */
  looks.worm = {
    live: true, from: 3, far: 1,
    hair: function (b, points) { return field.waveLine(b, points); },
    paint: function (pen, b) {
      var w = b.p.width, ctx = pen.ctx, broad = pen.detail(b) > 7, half = nematodeHalf(w);
      var line = field.waveLine(b, broad ? 44 : 28), body = field.sheath(line, half, broad ? 56 : 32), at = body.at;
      field.solid(pen, body.path, broad ? 1.6 : 0.9);
      if (!broad) {                                   // a clear hair with the darker line of its gut
        ctx.beginPath();
        field.trace(ctx, at, 0.1, 0.88, 20);
        field.fine(pen, 0.4 * w * pen.scale, 0.45);
        ctx.stroke();
        return;
      }
      ctx.beginPath();
      field.trace(ctx, at, 0.005, 0.205, 9);
      [[0.115, 0.19], [0.195, 0.25]].forEach(function (bulb) {
        var c = at(bulb[0], 0), n = at(bulb[0] + 0.01, 0), way = Math.atan2(n[1] - c[1], n[0] - c[0]);
        ctx.moveTo(c[0] + 0.36 * w * Math.cos(way), c[1] + 0.36 * w * Math.sin(way));
        ctx.ellipse(c[0], c[1], 0.36 * w, bulb[1] * w, way, 0, TURN);
      });
      [-0.64, 0.64].forEach(function (aside) {          // the two edges of the gut
        field.trace(ctx, at, 0.22, 0.9, 30, function (t) { return aside * Math.min(1, 0.3 + 7.5 * t) * half(0.22 + 0.68 * t); });
      });
      field.fine(pen, 0.65, 0.68);
      ctx.stroke();
      var grains = made(b, "grains", function () {
        var rng = field.chance(b.grain), all = [];
        for (var k = 0; k < 220; k++) { all.push([0.225 + 0.655 * (k + rng()) / 220, (2 * rng() - 1) * 0.56, rng()]); }
        return all;
      });
      ctx.beginPath();
      grains.forEach(function (g) {
        var p = at(g[0], g[1] * half(g[0])), r = Math.max(0.6 + 0.7 * g[2], 0.5 / pen.scale);
        ctx.rect(p[0] - r, p[1] - r, 2 * r, 2 * r);
      });
      field.fine(pen, 1, 0.55);
      ctx.fill();
    }
  };

  /* Stout, with coarse rings and a slight fixed curve; the rings slide a little as it inches on. */
  looks["ring-worm"] = {
    tone: 0.6, poses: 10, box: [0.6, 0.9],
    turn: function (b) { return b.phase / TURN / 14 * 4; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, curve = ((b.grain % 100) / 100 - 0.5) * 0.5, line = [], i;
      for (i = 0; i <= 40; i++) {
        var s = i / 40;
        line.push([l * (0.5 - s) + 0.03 * l * s * (1 - s) * Math.sin(TURN * 2 * s + turn), curve * l * (s - 0.5) * (s - 0.5)]);
      }
      var body = field.sheath(line, function (s) {
        return w / 2 * Math.min(1, 0.5 + 0.5 * Math.sqrt(s / 0.16)) * (s > 0.72 ? Math.pow(Math.max(0, (1 - s) / 0.28), 0.6) : 1);
      }, 60);
      field.solid(pen, body.path, 1.5);
      if (l / 80 * pen.scale < 2.2) {                 // rings this fine cannot be seen: a tone
        field.tone(pen, body.path, 0.35);
        return;
      }
      pen.ctx.save();
      pen.ctx.clip(body.path);
      var rings = new Path2D();
      for (i = 1; i < 80; i++) {
        var p = body.at(i / 80, w / 2), q = body.at(i / 80 + 0.006, 0), r = body.at(i / 80, -w / 2);
        rings.moveTo(p[0], p[1]);
        rings.quadraticCurveTo(q[0], q[1], r[0], r[1]);
      }
      field.strokes(pen, rings, 0.8, 0.8);
      pen.ctx.restore();
    }
  };

  /* A larva with a hard dark head and a dozen segments, that throws itself into bends. */
  looks["capsule-larva"] = {
    tone: 0.7, live: true, hair: function (b, points) { return field.waveLine(b, points); },
    paint: function (pen, b) {
      var w = b.p.width, body = field.sheath(field.waveLine(b, 40), function (s) {
        return w / 2 * Math.min(1, 0.7 + 4 * s) * (1 - 0.45 * s * s) * (0.94 + 0.06 * Math.abs(Math.sin(TURN * 6 * s))) * Math.min(1, 12 * (1 - s));
      }, 70), head = new Path2D(), rings = new Path2D(), gut = new Path2D(), from = body.at(0.05, 0), to = body.at(0, 0);
      field.solid(pen, body.path, 1.4);
      field.trace(gut, body.at, 0.16, 0.92, 24);
      field.strokes(pen, gut, 0.4 * w * pen.scale, 0.25);
      for (var i = 2; i < 12; i++) {
        var p = body.at(i / 12.5, 0.4 * w), q = body.at(i / 12.5, -0.4 * w);
        rings.moveTo(p[0], p[1]);
        rings.lineTo(q[0], q[1]);
      }
      field.strokes(pen, rings, 0.7, 0.6);
      head.ellipse(from[0], from[1], 0.07 * b.p.length, 0.4 * w, Math.atan2(to[1] - from[1], to[0] - from[0]), 0, TURN);
      field.solid(pen, head, 1.4);
      field.tone(pen, head, 0.6);
    }
  };

  /* A row of disc-like cells that slides along itself and sways slowly; the end cell is rounded. */
  looks.filament = {
    tone: 0.6, live: true, from: 1.5, hair: swaying,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, line = swaying(b, 36), body = field.sheath(line, function (s) {
        var end = Math.min(s, 1 - s) * l / (0.5 * w);
        return w / 2 * Math.sqrt(Math.min(1, Math.max(0, 1 - Math.pow(1 - Math.min(1, end), 2))));
      }, 60);
      field.solid(pen, body.path, 1.1);
      field.tone(pen, body.path, 0.34);
      var cell = 0.6 * w * pen.scale > 2.2 ? 0.6 * w : 0, walls = new Path2D();
      for (var x = cell; cell && x < l; x += cell) {
        var p = body.at(x / l, w / 2), q = body.at(x / l, -w / 2);
        walls.moveTo(p[0], p[1]);
        walls.lineTo(q[0], q[1]);
      }
      field.strokes(pen, walls, 0.6, 0.75);
    }
  };

  /* Its ends bend to one side and the other; the front more than the rear. */
  function swaying(b, points) {
    var line = [], l = b.p.length, sway = 0.06 * l * Math.sin(TURN * b.p.sway * b.age + b.grain % 7);
    for (var i = 0; i <= points; i++) {
      var u = 1 - 2 * i / points;
      line.push([l / 2 * u, sway * u * u * (u > 0 ? 1 : 0.4)]);
    }
    return line;
  }

  /* A stiff screw, or one that also bends: as wide as the lens makes it. */
  function screw(bends) {
    return {
      mote: true, tone: 0.5, live: true,
      paint: function (pen, b) {
        var l = b.p.length, ctx = pen.ctx, turns = Math.max(2, Math.round(l / 3.2)), wide = Math.max(0.45, Math.min(1.1, l / 14));
        var blur = Math.hypot(Math.min(b.p.width, 0.6), pen.resolution);
        ctx.beginPath();
        for (var i = 0; i <= 12 * turns; i++) {
          var s = i / (12 * turns), bow = bends ? 0.12 * l * Math.sin(2.4 * b.age + 3 * s + b.grain % 7) * (s - 0.5) : 0;
          var y = wide * Math.sin(TURN * turns * s + b.phase) + bow;
          if (i) { ctx.lineTo(l * (0.5 - s), y); } else { ctx.moveTo(l * (0.5 - s), y); }
        }
        field.fine(pen, Math.max(1.1, blur * pen.scale), Math.max(0.3, Math.min(0.8, b.p.width / blur)));
        ctx.stroke();
      }
    };
  }

  looks["stiff-screw"] = screw(false);
  looks["bending-screw"] = screw(true);
})(self.WetmountField);
