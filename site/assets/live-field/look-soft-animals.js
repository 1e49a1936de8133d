/* Soft animals: rotifers, gastrotrich, flatworm, and worms with segments. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, made = field.made;

  function jaws(pen, b, x, w) {
    var gape = 0.035 * w * (1 + Math.sin(b.age * 9)), ctx = pen.ctx;
    ctx.beginPath();                                  // they pulse
    ctx.ellipse(x, 0.07 * w + gape, 0.1 * w, 0.06 * w, 0, 0, Math.PI);
    ctx.moveTo(x - 0.1 * w, -0.07 * w - gape);
    ctx.ellipse(x, -0.07 * w - gape, 0.1 * w, 0.06 * w, 0, Math.PI, TURN);
    field.fine(pen, 1.2, 0.95);
    ctx.stroke();
  }

  function granules(pen, b, many, from, to, half, e) {
    pen.ctx.beginPath();
    made(b, "grains", function () { return field.strewn(b, many, 1, 1, 1); }).forEach(function (g) {
      var s = from + (to - from) * (0.5 + g[0] / 0.8);
      field.spot(pen.ctx, e * (0.5 - s), 1.5 * g[2] * half(s) * Math.sin(g[1]), Math.max(0.7 * g[3], 0.5 / pen.scale));
    });
    field.fine(pen, 1, 0.6);
    pen.ctx.fill();
  }

  function sides(e, half, steps) {
    var top = [];
    for (var i = 0; i <= steps; i++) { top.push([e * (0.5 - i / steps), half(i / steps)]); }
    return field.closed(top.concat(top.slice().reverse().map(function (p) { return [p[0], -p[1]]; })));
  }

  /* Telescoping: the shorter, the stouter. Foot with its toes behind, jaws at work. */
  looks.rotifer = {
    tone: 0.6, live: true,
    paint: function (pen, b) {
      var e = b.extent, w = b.p.width * Math.pow(b.p.length / e, 0.35);
      function half(s) {              // s from the head, 0 to 1
        if (s < 0.16) { return w / 2 * (0.34 + 0.16 * Math.sin(Math.PI * s / 0.16) + 0.9 * s); }
        return w / 2 * (s < 0.7 ? 0.48 + 0.52 * Math.sin(Math.PI * (s - 0.08) / 0.66) : Math.max(0.18, 0.48 - 1.1 * (s - 0.7)));
      }
      field.strokes(pen, field.lines([[-0.49 * e, 0, -0.54 * e, 0.07 * w], [-0.49 * e, 0, -0.54 * e, -0.07 * w]]), 1.3, 1);
      field.solid(pen, sides(e, half, 26), 1.4);
      field.strokes(pen, field.lines([0.16, 0.28, 0.68, 0.78, 0.88].map(function (s) { return [e * (0.5 - s), -half(s), e * (0.5 - s), half(s)]; })), 0.6, 0.7);
      jaws(pen, b, 0.2 * e, w);
      granules(pen, b, 40, 0.38, 0.72, half, e);
    }
  };

  function lashes(b, rim, reach) {    // the beat of the hairs along a rim of [x, y, way], in one of three poses
    var beat = Math.floor(b.age * 14) % 3;
    return made(b, "crown " + beat, function () {
      return field.lines(rim.map(function (p) {
        return [p[0], p[1], p[0] + reach * Math.cos(p[2] + 0.25 * (beat - 1)), p[1] + reach * Math.sin(p[2] + 0.25 * (beat - 1))];
      }));
    });
  }

  /* A bdelloid that swims: two wheels of beating hairs in front, the foot drawn in. */
  looks["wheel-rotifer"] = {
    tone: 0.6, box: [0.75, 0.8],
    under: function (pen, b) {
      var l = b.p.length, w = b.p.width, rim = [];
      for (var i = -4; i <= 4; i++) { rim.push([0.44 * l, 0.24 * w, 0.35 + 0.28 * i], [0.44 * l, -0.24 * w, -0.35 + 0.28 * i]); }
      field.strokes(pen, lashes(b, rim, 0.26 * w), 0.7, 0.75);
    },
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, wheels = new Path2D();
      wheels.ellipse(0.43 * l, 0.24 * w, 0.04 * l, 0.2 * w, 0.2, 0, TURN);
      wheels.ellipse(0.43 * l, -0.24 * w, 0.04 * l, 0.2 * w, -0.2, 0, TURN);
      field.solid(pen, wheels, 1);
      field.solid(pen, field.closed(field.profile(0.94 * l, w, [[0, 0.28], [0.08, 0.22], [0.16, 0.26], [0.5, 0.48], [0.75, 0.34], [0.9, 0.12], [1, 0.06]])), 1.3);
      field.strokes(pen, field.lines([[0.3, 0.24], [-0.26, 0.34], [-0.36, 0.18]].map(function (p) { return [p[0] * l, -p[1] * w, p[0] * l, p[1] * w]; })), 0.6, 0.7);
      field.fine(pen, 1, 0.55);
      pen.ctx.beginPath();
      field.strewn(b, 40, 0.6 * l, 0.75 * w, 1).forEach(function (g) { field.spot(pen.ctx, g[0] - 0.06 * l, g[2] * Math.sin(g[1]), Math.max(0.8 * g[3], 0.5 / pen.scale)); });
      pen.ctx.fill();
    },
    over: function (pen, b) { jaws(pen, b, 0.2 * b.p.length, b.p.width); }
  };

  /* A stiff clear vase of a shell, one crown of hairs across its front, an eye, jaws, gut and an egg; behind, a ringed foot that bends, with two toes. */
  looks["shelled-rotifer"] = {
    tone: 0.6, box: [0.56, 0.62],
    under: function (pen, b) {
      var l = b.p.length, w = b.p.width, rim = [], ctx = pen.ctx, swing = 0.22 * Math.sin(b.age * 1.7 + b.grain % 7);
      for (var i = -7; i <= 7; i++) { rim.push([(0.455 - 0.0009 * i * i) * l, 0.036 * i * w, 0.13 * i]); }
      field.strokes(pen, lashes(b, rim, 0.05 * l), 0.8, 0.8);
      ctx.save();
      ctx.translate(-0.27 * l, 0);
      ctx.rotate(swing);
      field.solid(pen, made(b, "foot", function () { return field.closed(field.profile(0.16 * l, 0.2 * w, [[0, 0.5], [0.6, 0.42], [1, 0.3]]).map(function (p) { return [p[0] - 0.07 * l, p[1]]; })); }), 1);
      field.strokes(pen, made(b, "foot rings", function () {
        return field.lines([0.05, 0.09].map(function (x) { return [-x * l, -0.09 * w, -x * l, 0.09 * w]; }));
      }), 0.7, 0.7);
      field.strokes(pen, made(b, "toes", function () { return field.lines([[-0.14 * l, 0.03 * w, -0.23 * l, 0.09 * w], [-0.14 * l, -0.03 * w, -0.23 * l, -0.09 * w]]); }), 1.5, 1);
      ctx.restore();
    },
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, crown = new Path2D(), gut = new Path2D(), egg = new Path2D(), eye = new Path2D();
      crown.moveTo(0.38 * l, -0.24 * w);
      crown.bezierCurveTo(0.47 * l, -0.3 * w, 0.46 * l, -0.08 * w, 0.45 * l, 0);
      crown.bezierCurveTo(0.46 * l, 0.08 * w, 0.47 * l, 0.3 * w, 0.38 * l, 0.24 * w);
      crown.closePath();
      field.solid(pen, crown, 1);
      var shell = [[0, 0.22], [0.03, 0.28], [0.12, 0.36], [0.34, 0.46], [0.56, 0.5], [0.8, 0.42], [0.95, 0.24], [1, 0.1]];
      field.solid(pen, field.closed(field.profile(0.7 * l, w, shell).map(function (p) { return [p[0] + 0.05 * l, p[1]]; })), 1.8);
      gut.ellipse(0.06 * l, 0.05 * w, 0.12 * l, 0.2 * w, 0, 0, TURN);
      field.tone(pen, gut, 0.3);
      field.strokes(pen, gut, 0.7, 0.7);
      egg.ellipse(-0.14 * l, -0.08 * w, 0.09 * l, 0.15 * w, 0.2, 0, TURN);
      field.tone(pen, egg, 0.12);
      field.strokes(pen, egg, 0.8, 0.8);
      field.spot(eye, 0.36 * l, 0, Math.max(0.035 * w, 0.9 / pen.scale));
      field.tone(pen, eye, 1);
    },
    over: function (pen, b) { jaws(pen, b, 0.26 * b.p.length, 0.9 * b.p.width); }
  };

  /* A skittle: a head, a neck, a belly, two prongs behind; it glides on the hairs of its belly. */
  looks.gastrotrich = {
    tone: 0.5, poses: 12, box: [0.56, 0.9],
    turn: function (b) { return 0.2 * b.age + b.grain % 12 / 12; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, line = [], i;
      for (i = 0; i <= 30; i++) { line.push([l * (0.5 - i / 30), 0.16 * w * Math.sin(turn - 3 * i / 30) * (1 - i / 40)]); }
      var at = field.along(line), shape = field.profile(1, w, [[0, 0.14], [0.05, 0.3], [0.12, 0.34], [0.24, 0.25], [0.55, 0.5], [0.78, 0.34], [0.88, 0.16], [0.9, 0.12]]);
      [-1, 1].forEach(function (side) {
        var prong = new Path2D(), p = at(0.86, 0.1 * w * side), q = at(0.92, 0.2 * w * side), r = at(1, 0.3 * w * side);
        prong.moveTo(p[0], p[1]);
        prong.quadraticCurveTo(q[0], q[1], r[0], r[1]);
        field.strokes(pen, prong, Math.max(1, 0.09 * w * pen.scale), 0.9);
      });
      var edge = shape.map(function (p) { return at(0.5 - p[0], p[1]); });
      field.strokes(pen, field.lines(field.hairs(edge, 0.14 * w, -0.9, 2)), 0.6, 0.75);
      field.solid(pen, field.closed(edge), 1.3);
      var whiskers = [0.6, 0.9, -0.6, -0.9].map(function (way) {
        var p = at(0.04, 0.25 * w * Math.sign(way));
        return [p[0], p[1], p[0] + 0.3 * w * Math.cos(way), p[1] + 0.3 * w * Math.sin(way)];
      });
      field.strokes(pen, field.lines(whiskers), 0.6, 0.8);
      var gut = new Path2D();
      field.trace(gut, at, 0.01, 0.24, 10, function () { return 0.08 * w; });
      field.trace(gut, at, 0.01, 0.24, 10, function () { return -0.08 * w; });
      field.strokes(pen, gut, 0.8, 0.85);
      var wide = new Path2D();
      field.trace(wide, at, 0.26, 0.84, 16);
      field.strokes(pen, wide, 0.34 * w * pen.scale, 0.2);
    }
  };

  /* Flat, gliding like a leaf on water; two eyes, a gut down the middle, the edges ripple a little. */
  looks.flatworm = {
    tone: 0.6, poses: 14, box: [0.6, 1],
    turn: function (b) { return 0.12 * b.age + b.grain % 14 / 14; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, line = [], i;
      for (i = 0; i <= 30; i++) { line.push([l * (0.5 - i / 30), 0.035 * l * Math.sin(turn - 3.2 * i / 30)]); }
      var at = field.along(line);
      var edge = field.profile(1, w, [[0, 0.12], [0.05, 0.3], [0.14, 0.4], [0.45, 0.5], [0.8, 0.36], [1, 0.03]]).map(function (p, n) {
        return at(0.5 - p[0], p[1] * (1 + 0.03 * Math.sin(n * 0.9 + turn)));
      });
      if (pen.detail(b) > 12) { field.strokes(pen, field.lines(field.hairs(edge, Math.min(8, 0.08 * w), 0.3, 1)), 0.5, 0.55); }
      field.solid(pen, field.closed(edge), 1.5);
      var gut = new Path2D(), eyes = new Path2D(), throat = new Path2D();
      field.trace(gut, at, 0.2, 0.88, 18);
      field.strokes(pen, gut, 0.46 * w * pen.scale, 0.22);
      [-1, 1].forEach(function (side) {
        var p = at(0.11, 0.15 * w * side);
        field.spot(eyes, p[0], p[1], Math.max(0.045 * w, 1 / pen.scale));
      });
      field.tone(pen, eyes, 1);
      var c = at(0.52, 0);
      throat.ellipse(c[0], c[1], 0.08 * l, 0.13 * w, 0, 0, TURN);
      field.strokes(pen, throat, 0.9, 0.8);
      field.fine(pen, 1, 0.45);
      pen.ctx.beginPath();
      field.strewn(b, 80, 1, 1, 1.2).forEach(function (g) {
        var p = at(0.5 - g[0] * 1.15, 0.95 * g[2] * w * Math.sin(g[1]));
        field.spot(pen.ctx, p[0], p[1], Math.max(g[3], 0.45 / pen.scale));
      });
      pen.ctx.fill();
    }
  };

  /* Segments that swell and thin as a wave of shortening runs along; bundles of bristles, a gut that shows through. `hooks`: a maggot instead. */
  function segmented(hooks) {
    return {
      tone: 0.7, from: 3, poses: 24, box: function (b) { return [0.58, 0.8 + 0.14 * b.p.length / b.p.width]; },
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width, many = hooks ? 12 : Math.max(16, Math.min(36, Math.round(l / w * 1.6))), line = [], rings = [], bristles = [], i;
        for (i = 0; i <= 40; i++) {
          var u = i / 40 - 0.5;
          line.push([-l * u + 0.02 * l * Math.sin(TURN * 1.5 * (u + 0.5) - turn), (hooks ? 0.02 : 0.12) * l * Math.sin(2.6 * u + b.grain % 5)]);
        }
        function half(s) {
          var ends = hooks ? Math.pow(Math.min(1, s / 0.75), 0.55) * (s > 0.92 ? 0.86 : 1) : Math.min(1, 0.35 + 3.2 * s) * Math.min(1, 0.45 + 2.6 * (1 - s));
          return w / 2 * ends * (1 + 0.16 * Math.sin(TURN * 1.5 * s - turn)) * 0.9;
        }
        for (i = 1; i < many; i++) {
          var s = i / many;
          rings.push([s, 1]);
          if (!hooks && i > 1) { bristles.push([s - 0.5 / many, 0.7], [s - 0.5 / many, -0.7]); }
        }
        var body = field.sheath(line, half, 64), path = new Path2D(), gut = new Path2D();
        field.strokes(pen, field.lines(bristles.map(function (p) {
          var from = body.at(p[0], p[1] * half(p[0])), to = body.at(p[0] + 0.012, (p[1] + Math.sign(p[1]) * 0.62) * half(p[0]));
          return from.concat(to);
        })), 0.9, 0.9);
        field.solid(pen, body.path, 1.5);
        field.trace(gut, body.at, hooks ? 0.2 : 0.08, 0.96, 24);
        field.strokes(pen, gut, (hooks ? 0.35 : 0.42) * w * pen.scale, 0.25);
        rings.forEach(function (r) {
          var p = body.at(r[0], half(r[0])), q = body.at(r[0] + 0.004, 0), e = body.at(r[0], -half(r[0]));
          path.moveTo(p[0], p[1]);
          path.quadraticCurveTo(q[0], q[1], e[0], e[1]);
        });
        field.strokes(pen, path, 0.7, hooks ? 0.75 : 0.5);
        if (hooks) {
          var a = body.at(0.01, 0.02 * w), c = body.at(0.1, 0.03 * w), d = body.at(0.99, 0.14 * w), f = body.at(0.99, -0.14 * w), dark = new Path2D();
          field.strokes(pen, field.lines([a.concat(c)]), Math.max(1.4, 0.06 * w * pen.scale), 1);
          field.spot(dark, d[0], d[1], 0.06 * w);
          field.spot(dark, f[0], f[1], 0.06 * w);
          field.tone(pen, dark, 0.85);
        }
      }
    };
  }

  looks["bristle-worm"] = segmented(false);
  looks.maggot = segmented(true);
})(self.WetmountField);
