/* Amoebae that keep one shape as they go: a fan, a folded bag, and slugs drawn along the path they took. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made;

  /* A half moon in front that stays clear; the grains lie in a hump behind. Wider than long. */
  looks["fan-amoeba"] = {
    tone: 0.14, fresh: 0.3, box: [0.62, 0.62],
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, ripple = b.age / 6, ctx = pen.ctx;
      var outline = around(48, function (a) {
        var u = Math.cos(a), v = Math.sin(a), rear = Math.max(0, -u);
        return [l / 2 * (u > 0 ? u * 0.92 + 0.02 * Math.sin(7 * a + ripple) : u * (0.9 - 0.12 * Math.cos(2 * v))), w / 2 * v * (1 - 0.45 * rear * rear)];
      });
      field.solid(pen, field.closed(outline), 0.9);
      var hump = new Path2D();
      hump.ellipse(-0.16 * l, 0, 0.26 * l, 0.3 * w, 0, 0, TURN);
      field.strokes(pen, hump, 0.5, 0.35);
      field.fine(pen, 1, 0.75);
      ctx.beginPath();
      field.strewn(b, 70, 0.58 * l, 0.62 * w, 0.5).forEach(function (g) {
        field.spot(ctx, g[0] - 0.16 * l, g[2] * Math.sin(g[1]), Math.max(g[3], 0.5 / pen.scale));
      });
      ctx.fill();
      var nucleus = new Path2D(), dot = new Path2D();
      field.spot(nucleus, -0.08 * l, 0.08 * w, 0.1 * Math.min(l, w));
      field.spot(dot, -0.08 * l, 0.08 * w, 0.045 * Math.min(l, w));
      field.cover(pen, nucleus);
      field.strokes(pen, nucleus, 0.7, 0.85);
      field.tone(pen, dot, 0.85);
      field.bubble(pen, b, -0.26 * l, -0.12 * w, 0.1 * Math.min(l, w), 30);
    }
  };

  /* A bag with a thick skin in lengthwise folds that rolls slowly on. */
  looks["folded-amoeba"] = {
    tone: 0.3, fresh: 0.5,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, folds = new Path2D();
      field.solid(pen, field.closed(around(44, function (a) {
        return [l / 2 * Math.cos(a) * (1 + 0.02 * Math.sin(5 * a + b.grain)), w / 2 * Math.sin(a) * (1 + 0.07 * Math.cos(a) + 0.02 * Math.sin(4 * a + b.age / 20))];
      })), 1.5);
      [-0.3, -0.1, 0.12, 0.3].forEach(function (y, i) {
        var roll = y + 0.04 * Math.sin(b.age / 12 + i);
        folds.moveTo((0.34 - 0.4 * y * y) * l, 0.55 * roll * w);
        folds.bezierCurveTo(0.12 * l, 1.25 * roll * w, -0.12 * l, 1.2 * roll * w, (-0.28 - 0.03 * (i % 2)) * l, 0.8 * roll * w);
      });
      field.fine(pen, 1, 0.5);
      pen.ctx.beginPath();
      field.strewn(b, 60, 0.8 * l, 0.8 * w, 0.6).forEach(function (g) { field.spot(pen.ctx, g[0], g[2] * Math.sin(g[1]), Math.max(g[3], 0.45 / pen.scale)); });
      pen.ctx.fill();
      field.strokes(pen, folds, 1.1, 0.8);
      var nucleus = new Path2D();
      field.spot(nucleus, -0.06 * l, 0, 0.13 * w);
      field.cover(pen, nucleus);
      field.strokes(pen, nucleus, 0.9, 0.9);
    }
  };

  /* The path its head took, from the head on, in pieces of one length: the newest piece of the path is not yet a whole one. */
  function behindTheHead(b) {
    var kept = b.path, piece = b.p.length / field.SLUG, left = 1 - Math.min(1, Math.hypot(b.x - kept[0][0], b.y - kept[0][1]) / piece), path = [[0, 0]];
    for (var i = 0; i + 1 < kept.length && i < field.SLUG; i++) {
      path.push([kept[i][0] + left * (kept[i + 1][0] - kept[i][0]) - b.x, kept[i][1] + left * (kept[i + 1][1] - kept[i][1]) - b.y]);
    }
    return path;
  }

  /* A slug along the path its head took. `bursts`: with the bulge on the side it burst to. `knob`: a round knob at the rear, crystals inside. */
  function slug(o) {
    return {
      tone: 0.14, upright: true, fresh: 0.25, square: true, box: [1.15, 1.15], far: 1.5,
      paint: function (pen, b) {
        var w = b.p.width, many = field.SLUG, path = behindTheHead(b);
        var round = Math.min(0.3, 0.55 * w / b.p.length);               // the front is a half circle
        function half(s) {
          var front = s < round ? Math.sqrt(1 - Math.pow(1 - s / round, 2)) : 1, rear = s > 0.9 ? Math.sqrt(Math.max(0, 1 - Math.pow((s - 0.9) / 0.1, 2))) : 1;
          return w / 2 * front * (1 - (o.knob ? 0.3 : 0.5) * Math.pow(s, 1.6)) * rear;
        }
        var at = field.along(path), left = [], right = [], bulge = new Path2D();
        for (var i = 0; i <= 2 * many; i++) {
          var s = Math.pow(i / (2 * many), 1.5);
          left.push(at(s, half(s)));
          right.push(at(s, -half(s)));
        }
        var outline = field.closed(left.concat(right.reverse()));
        if (o.bursts) {
          var u = 1 - b.left / b.total, burst = Math.min(1, 4 * u) * (1 - Math.max(0, (u - 0.45) / 0.55)), way = b.heading + 1.1 * b.side * (1 - u);
          field.spot(bulge, path[2][0] + 0.3 * w * burst * Math.cos(way), path[2][1] + 0.3 * w * burst * Math.sin(way), w * (0.2 + 0.2 * burst));
        }
        if (o.knob) {
          var end = at(0.97, 0);
          field.spot(bulge, end[0], end[1], 0.26 * w);
        }
        field.solid(pen, bulge, 1);
        field.solid(pen, outline, 1);
        field.cover(pen, bulge);      // one outline about both
        var grains = made(b, "grains", function () {
          var rng = field.chance(b.grain);
          return around(o.grains, function () { return [0.15 + 0.8 * rng(), 2 * rng() - 1, rng()]; });
        });
        field.fine(pen, 1, 0.75);
        pen.ctx.beginPath();
        grains.forEach(function (g) {
          var p = at(g[0], 0.68 * half(g[0]) * g[1]);
          if (o.knob && g[2] > 0.6) { pen.ctx.rect(p[0], p[1], 1.1, 1.1); } else { field.spot(pen.ctx, p[0], p[1], Math.max(0.3, 0.45 / pen.scale)); }
        });
        pen.ctx.fill();
        var n = at(0.42, 0.1 * w), nucleus = new Path2D(), dot = new Path2D();
        field.spot(nucleus, n[0], n[1], 0.22 * w);
        field.spot(dot, n[0], n[1], 0.1 * w);
        field.cover(pen, nucleus);
        field.strokes(pen, nucleus, 0.6, 0.8);
        field.tone(pen, dot, 0.8);
      }
    };
  }

  looks["slug-amoeba"] = slug({ bursts: true, grains: 34 });
  looks["smooth-slug-amoeba"] = slug({ grains: 30 });
  looks["knob-slug-amoeba"] = slug({ knob: true, grains: 70 });
})(self.WetmountField);
