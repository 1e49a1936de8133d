/* Animals with legs, seen from above: water bear, mites, springtails, and small crustaceans. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks;

  /* A jointed leg: hip, then a knee, then a foot, swung by `swing`. Angles are from straight ahead; `side` is 1 or -1. */
  function leg(path, x, y, side, way, swing, upper, lower, bend) {
    var a = side * (way + swing), kx = x + upper * Math.cos(a), ky = y + upper * Math.sin(a), f = a + side * bend;
    path.moveTo(x, y);
    path.lineTo(kx, ky);
    path.lineTo(kx + lower * Math.cos(f), ky + lower * Math.sin(f));
  }

  /* Legs in turn: each swings after its neighbour by `lag` and after its fellow on the other side by `apart`, half a step where nothing is said. */
  function legs(l, w, turn, each, swing, lag, apart) {
    var after = lag === undefined ? Math.PI : lag, across = apart === undefined ? Math.PI : apart;
    var path = new Path2D();
    each.forEach(function (at, i) {
      [-1, 1].forEach(function (side) {
        leg(path, at.x * l, side * at.y * w, side, at.way, swing * Math.sin(turn + after * i + (side > 0 ? across : 0)), at.upper * l, at.lower * l, at.bend);
      });
    });
    return path;
  }

  function band(pen, path, um, alpha) { field.strokes(pen, path, Math.max(1, um * pen.scale), alpha); }

  field.limbs = { leg: leg, legs: legs, band: band };

  /* Plump, four pairs of stubby legs with claws, the last pair pointing back; dark gut, two eyes. */
  looks["water-bear"] = {
    tone: 0.7, poses: 12, box: [0.62, 1.05],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, stubs = [], claws = [], i;
      [0.27, 0.07, -0.15].forEach(function (x, n) {
        [-1, 1].forEach(function (side) {
          var swing = 0.4 * Math.sin(turn + n * 2.1 + (side > 0 ? Math.PI : 0)), a = side * (1.35 - swing);
          stubs.push([x * l, side * 0.34 * w, a]);
        });
      });
      [-1, 1].forEach(function (side) { stubs.push([-0.43 * l, side * 0.18 * w, Math.PI - side * (0.35 + 0.15 * Math.sin(turn + side))]); });
      stubs.forEach(function (s) {
        var stub = new Path2D(), c = Math.cos(s[2]), d = Math.sin(s[2]), far = 0.3 * w;
        stub.ellipse(s[0] + 0.5 * far * c, s[1] + 0.5 * far * d, 0.6 * far, 0.13 * w, s[2], 0, TURN);
        for (i = -1; i <= 1; i++) {
          var x = s[0] + 1.08 * far * c, y = s[1] + 1.08 * far * d, a = s[2] + 0.5 * i;
          claws.push([x, y, x + 0.12 * w * Math.cos(a), y + 0.12 * w * Math.sin(a)]);
        }
        field.solid(pen, stub, 1.1);
      });
      field.strokes(pen, field.lines(claws), 1, 0.95);
      field.solid(pen, field.closed(field.profile(l, w, [[0, 0.14], [0.05, 0.24], [0.16, 0.36], [0.45, 0.5], [0.72, 0.46], [0.92, 0.3], [1, 0.08]])), 1.5);
      var gut = new Path2D(), folds = new Path2D(), eyes = new Path2D(), throat = new Path2D();
      gut.ellipse(-0.1 * l, 0, 0.28 * l, 0.22 * w, 0, 0, TURN);
      field.tone(pen, gut, 0.32);
      [0.3, 0.16, -0.04, -0.26].forEach(function (x) {
        folds.moveTo(x * l, -0.3 * w);
        folds.quadraticCurveTo((x - 0.03) * l, 0, x * l, 0.3 * w);
      });
      field.strokes(pen, folds, 0.6, 0.55);
      field.spot(eyes, 0.38 * l, 0.13 * w, Math.max(0.035 * w, 0.9 / pen.scale));
      field.spot(eyes, 0.38 * l, -0.13 * w, Math.max(0.035 * w, 0.9 / pen.scale));
      field.tone(pen, eyes, 1);
      throat.ellipse(0.26 * l, 0, 0.06 * l, 0.1 * w, 0, 0, TURN);
      field.strokes(pen, throat, 0.9, 0.9);
      field.strokes(pen, field.lines([[0.49 * l, 0, 0.32 * l, 0], [0.47 * l, 0.07 * w, 0.34 * l, 0.03 * w], [0.47 * l, -0.07 * w, 0.34 * l, -0.03 * w]]), 0.8, 0.9);
    }
  };

  /* A body without a waist; two pairs of legs forwards, two back (`six`: one back); a small head of mouthparts. `armour`: dark and hard. */
  function mite(o) {
    return {
      tone: 0.85, poses: 10, box: [0.95, 1.45],
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width, hairs = [], i, long = o.legs || 1;
        var each = [{ x: 0.3, y: 0.3, way: 0.75 }, { x: 0.2, y: 0.4, way: 1.15 }, { x: -0.02, y: 0.45, way: 1.95 }, { x: -0.14, y: 0.44, way: 2.35 }].slice(0, o.six ? 3 : 4);
        each.forEach(function (at, n) {
          at.upper = 0.24 * long;
          at.lower = 0.26 * long;
          at.bend = n < 2 ? -0.45 : 0.4;
        });
        band(pen, legs(l, w, turn, each, 0.32), 0.055 * w, 0.95);
        var mouth = field.closed(field.profile(0.2 * l, 0.3 * w, [[0, 0.2], [0.3, 0.4], [1, 0.5]]).map(function (p) { return [p[0] + 0.47 * l, p[1]]; }));
        field.solid(pen, mouth, 1);
        var body = field.closed(field.profile(0.94 * l, w, o.armour ? [[0, 0.1], [0.16, 0.3], [0.3, 0.36], [0.34, 0.42], [0.62, 0.5], [0.88, 0.36], [1, 0.06]]
          : [[0, 0.12], [0.2, 0.4], [0.5, 0.48], [0.75, 0.5], [0.94, 0.32], [1, 0.08]]).map(function (p) { return [p[0] - 0.03 * l, p[1]]; }));
        field.solid(pen, body, o.armour ? 2 : 1.4);
        field.tone(pen, body, o.armour ? 0.38 : 0.08);
        if (o.armour) { field.strokes(pen, field.lines([[0.12 * l, -0.38 * w, 0.12 * l, 0.38 * w]]), 1.1, 0.85); }
        for (i = 0; i < 8; i++) {
          var x = (0.3 - 0.1 * i) * l, y = (0.2 + 0.05 * (i % 3)) * w;
          hairs.push([x, y, x - 0.1 * l, y + 0.06 * w], [x, -y, x - 0.1 * l, -y - 0.06 * w]);
        }
        field.strokes(pen, field.lines(hairs), 0.7, 0.8);
      }
    };
  }

  looks.mite = mite({});
  looks["long-legged-mite"] = mite({ legs: 1.35 });
  looks["armoured-mite"] = mite({ armour: true, legs: 0.85 });
  looks["six-legged-mite"] = mite({ six: true });

  /* Six legs on the front part, segments behind, antennae, and often a fork. `feelers` gives the antennae in body lengths; `ball`: globular. */
  function springtail(o) {
    return {
      tone: 0.75, poses: 10, box: [0.85, 2.2],
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width, feelers = new Path2D(), rings = [];
        var each = [{ x: 0.24, way: 0.9 }, { x: 0.14, way: 1.5 }, { x: 0.03, way: 2.1 }].map(function (at) {
          return { x: at.x, y: 0.35, way: at.way, upper: 0.11, lower: 0.12, bend: at.way < 1.2 ? -0.3 : 0.3 };
        });
        band(pen, legs(l, w, turn, each, 0.3), (o.ball ? 0.04 : 0.06) * w, 0.9);
        if (o.fork) { field.strokes(pen, field.lines([[-0.4 * l, 0.1 * w, -0.62 * l, 0.16 * w], [-0.4 * l, -0.1 * w, -0.62 * l, -0.16 * w]]), Math.max(1, 0.05 * w * pen.scale), 0.8); }
        [-1, 1].forEach(function (side) {
          leg(feelers, 0.44 * l, side * 0.16 * w, side, 0.45, 0.15 * Math.sin(turn + side), o.feelers * l * 0.5, o.feelers * l * 0.5, -0.3 + 0.2 * Math.sin(2 * turn));
        });
        band(pen, feelers, (o.ball ? 0.045 : 0.09) * w, 0.9);
        var body = o.ball ? [[0, 0.12], [0.08, 0.26], [0.22, 0.26], [0.3, 0.34], [0.6, 0.5], [0.85, 0.4], [0.94, 0.2], [1, 0.08]]
          : [[0, 0.15], [0.06, 0.34], [0.16, 0.36], [0.2, 0.3], [0.5, 0.47], [0.75, 0.45], [0.94, 0.26], [1, 0.06]];
        field.solid(pen, field.closed(field.profile(l, w, body)), 1.5);
        (o.ball ? [0.22, 0.3] : [0.19, 0.28, 0.37, 0.47, 0.58, 0.69, 0.8, 0.9]).forEach(function (s) {
          var h = 0.36 + 0.1 * Math.sin(Math.PI * s);
          rings.push([l * (0.5 - s), -h * w, l * (0.5 - s), h * w]);
        });
        pen.ctx.save();
        pen.ctx.clip(field.closed(field.profile(l, w, body)));
        field.strokes(pen, field.lines(rings), 0.8, 0.75);
        pen.ctx.restore();
        if (o.eyes) {
          var eyes = new Path2D();
          field.spot(eyes, 0.4 * l, 0.2 * w, 0.07 * w);
          field.spot(eyes, 0.4 * l, -0.2 * w, 0.07 * w);
          field.tone(pen, eyes, 0.9);
        }
      }
    };
  }

  looks.springtail = springtail({ feelers: 0.35, eyes: true, fork: true });
  looks["deep-springtail"] = springtail({ feelers: 0.16 });
  looks["ball-springtail"] = springtail({ feelers: 0.45, eyes: true, fork: true, ball: true });

  /* A drop of rings with one eye, feelers, and a tail fork. */
  looks.copepod = {
    tone: 0.75, poses: 6, box: [0.7, 1.3],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, feelers = new Path2D(), rings = [], tail = [], eye = new Path2D();
      var each = [0.16, 0.06, -0.04].map(function (x) { return { x: x, y: 0.28, way: 1.5, upper: 0.1, lower: 0.08, bend: 0.5 }; });
      band(pen, legs(l, w, turn, each, 0.5), 0.05 * w, 0.75);
      [-1, 1].forEach(function (side) {
        leg(feelers, 0.4 * l, side * 0.2 * w, side, 0.9, 0.2 * Math.sin(turn), 0.13 * l, 0.13 * l, 0.5);
        for (var i = 0; i < 3; i++) { tail.push([-0.42 * l, side * 0.07 * w, -0.64 * l, side * (0.04 + 0.09 * i) * w]); }
      });
      band(pen, feelers, 0.07 * w, 0.9);
      field.strokes(pen, field.lines(tail), 0.8, 0.85);
      var shape = [[0, 0.1], [0.1, 0.38], [0.3, 0.5], [0.5, 0.42], [0.7, 0.26], [0.9, 0.18], [0.93, 0.1]];
      field.solid(pen, field.closed(field.profile(l, w, shape)), 1.5);
      [[0.34, 0.49], [0.44, 0.46], [0.54, 0.39], [0.63, 0.31], [0.72, 0.25], [0.8, 0.22]].forEach(function (r) { rings.push([l * (0.5 - r[0]), -r[1] * w, l * (0.5 - r[0]), r[1] * w]); });
      field.strokes(pen, field.lines(rings), 0.8, 0.8);
      field.spot(eye, 0.42 * l, 0, Math.max(0.07 * w, 1 / pen.scale));
      field.tone(pen, eye, 1);
    }
  };

  /* A sac with three pairs of limbs and one eye. */
  looks.nauplius = {
    tone: 0.6, poses: 6, box: [0.9, 1.3],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, eye = new Path2D();
      var each = [{ x: 0.28, way: 0.6 }, { x: 0.16, way: 1.2 }, { x: 0.02, way: 1.8 }].map(function (at) { return { x: at.x, y: 0.36, way: at.way, upper: 0.22, lower: 0.24, bend: 0.4 }; });
      band(pen, legs(l, w, turn, each, 0.45), 0.07 * w, 0.9);
      field.solid(pen, field.closed(field.profile(l, w, [[0, 0.16], [0.12, 0.42], [0.4, 0.5], [0.75, 0.34], [1, 0.06]])), 1.3);
      field.spot(eye, 0.36 * l, 0, Math.max(0.06 * w, 1 / pen.scale));
      field.tone(pen, eye, 1);
      field.fine(pen, 1, 0.5);
      field.turningGrains(pen, field.strewn(b, 18, 0.7 * l, 0.6 * w, 0.04 * w), 0);
    }
  };

  /* From the side: a head with a big eye and branched feelers, the rest in a clear shell with a spine behind. */
  looks["water-flea"] = {
    tone: 0.65, poses: 6, box: [0.75, 1.1],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, arms = new Path2D(), inside = new Path2D(), eye = new Path2D(), lift = 0.5 * Math.sin(turn);
      [0.2, 0.6].forEach(function (more) { leg(arms, 0.3 * l, -0.22 * w, -1, 1.2 - lift + 0.3 * more, 0, 0.16 * l, 0.2 * l, 0.3 + more); });
      field.strokes(pen, field.lines([[-0.44 * l, -0.1 * w, -0.68 * l, -0.2 * w]]), 1.2, 0.9);
      field.solid(pen, field.closed(field.around(40, function (a) {
        var u = Math.cos(a), v = Math.sin(a), head = Math.exp(-Math.pow((u - 0.62) / 0.12, 2));
        return [l / 2 * u * 0.96, w / 2 * v * (1 - 0.25 * u) * (1 - (v > 0 ? 0.3 : 0.1) * head)];
      })), 1.5);
      band(pen, arms, 0.06 * w, 0.95);
      inside.moveTo(0.4 * l, 0.06 * w);
      inside.bezierCurveTo(0.1 * l, -0.2 * w, -0.3 * l, -0.15 * w, -0.3 * l, 0.2 * w);
      field.strokes(pen, inside, Math.max(2, 0.1 * w * pen.scale), 0.3);
      field.strokes(pen, field.lines([0, 1, 2, 3, 4].map(function (i) { return [(0.16 - 0.08 * i) * l, 0.06 * w, (0.12 - 0.08 * i) * l, (0.3 + 0.03 * lift) * w]; })), 0.9, 0.7);
      field.spot(eye, 0.38 * l, 0.04 * w, Math.max(0.1 * w, 1 / pen.scale));
      field.tone(pen, eye, 0.95);
    }
  };

  /* Two halves of a shell like a bean, feelers and a leg or two between them. */
  looks["seed-shrimp"] = {
    tone: 0.85, poses: 6, box: [0.75, 0.95],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, limbs = new Path2D(), eye = new Path2D(), mark = new Path2D(), swing = 0.35 * Math.sin(turn);
      [[0.42, 0.3, 0.5], [0.4, 0.34, 0.9], [0.1, 0.44, 1.4], [-0.3, 0.4, 2.2]].forEach(function (p, i) {
        leg(limbs, p[0] * l, p[1] * w * 0.9, 1, p[2] + (i % 2 ? -swing : swing), 0, 0.13 * l, 0.12 * l, i < 2 ? -0.5 : 0.3);
      });
      band(pen, limbs, 0.05 * w, 0.9);
      var shell = field.closed(field.around(40, function (a) {
        var u = Math.cos(a), v = Math.sin(a);
        return [l / 2 * u, w / 2 * (v > 0 ? v * (0.84 - 0.14 * Math.exp(-u * u / 0.1)) : v * (1 - 0.06 * u))];
      }));
      field.solid(pen, shell, 1.8);
      field.tone(pen, shell, 0.2);
      field.spot(eye, 0.3 * l, -0.2 * w, Math.max(0.05 * w, 1 / pen.scale));
      field.tone(pen, eye, 0.95);
      mark.ellipse(0, 0, 0.07 * l, 0.1 * w, 0, 0, TURN);
      field.strokes(pen, mark, 0.7, 0.5);
    }
  };
})(self.WetmountField);
