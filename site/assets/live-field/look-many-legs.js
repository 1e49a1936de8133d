/* Animals of litter with legs, seen from above: symphylan, pauropod, proturan, dipluran, centipede, millipede, woodlouse, spider, false scorpion. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, limbs = field.limbs;

  /* Small rings along a line: a feeler or a tail like a string of beads. */
  function beads(path, x, y, way, bend, length, size) {
    var many = Math.round(length / (2.1 * size));
    for (var i = 0; i < many; i++) {
      field.spot(path, x, y, size);
      x += 2.1 * size * Math.cos(way + bend * i / many);
      y += 2.1 * size * Math.sin(way + bend * i / many);
    }
  }

  function even(count, from, to, reach) {
    var all = [];
    for (var i = 0; i < count; i++) {
      var t = count > 1 ? i / (count - 1) : 0;
      all.push({ s: from + (to - from) * (i + 0.5) / count, reach: reach, way: 1.3 + 0.75 * t, bend: t < 0.35 ? -0.5 : 0.45 });
    }
    return all;
  }

  /* Rings behind a head, legs, feelers and tails. In shares of the length: `head` its depth and half width, `half` [share, half width as a share of
   * the width], `legs` {s, reach, way, bend}; `rings` are counted; more(pen, b, l, w, turn) draws feelers and tails. `lag`, `apart`: see the legs. */
  function crawler(o) {
    return {
      tone: 0.75, poses: 12, box: function (b) { return [0.5 + o.out, 0.62 + o.side * b.p.length / b.p.width]; },
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width, rings = new Path2D(), trunk = field.closed(field.profile(l, w, o.half)), head = new Path2D();
        var each = o.legs.map(function (at) {
          return { x: 0.5 - at.s, y: 0.34 * (o.hip || 1), way: at.way, upper: 0.5 * at.reach, lower: 0.55 * at.reach, bend: at.bend };
        });
        limbs.band(pen, limbs.legs(l, w, turn, each, o.swing, o.lag, o.apart), o.thick * l, 0.95);
        o.more(pen, b, l, w, turn);
        field.solid(pen, trunk, 1.5);
        for (var i = 1; i < o.rings; i++) {
          var s = o.head[0] + (1 - o.head[0]) * i / o.rings;
          rings.moveTo((0.5 - s) * l, -0.5 * w);
          rings.quadraticCurveTo((0.49 - s) * l, 0, (0.5 - s) * l, 0.5 * w);
        }
        pen.ctx.save();
        pen.ctx.clip(trunk);
        field.strokes(pen, rings, 0.9, 0.75);
        if (o.shade) { field.tone(pen, trunk, o.shade); }
        pen.ctx.restore();
        head.ellipse((0.5 - 0.5 * o.head[0]) * l, 0, 0.5 * o.head[0] * l, o.head[1] * w, 0, 0, TURN);
        field.solid(pen, head, 1.3);
        if (o.shade) { field.tone(pen, head, o.shade); }
        if (o.eyes) {
          var eyes = new Path2D();
          [-1, 1].forEach(function (side) { field.spot(eyes, (0.5 - 0.4 * o.head[0]) * l, 0.7 * side * o.head[1] * w, Math.max(0.05 * w, 0.9 / pen.scale)); });
          field.tone(pen, eyes, 0.95);
        }
      }
    };
  }

  function pair(draw) { [-1, 1].forEach(draw); }

  /* Long feelers of beads that never rest: in front. */
  function beaded(pen, l, headHalf, turn, length, size) {
    var path = new Path2D();
    pair(function (side) { beads(path, 0.48 * l, 0.6 * side * headHalf, side * (0.5 + 0.18 * Math.sin(turn + side)), -0.35 * side, length * l, size * l); });
    field.strokes(pen, path, 0.8, 0.9);
  }

  var slim = [[0, 0.2], [0.04, 0.34], [0.1, 0.36], [0.3, 0.47], [0.55, 0.5], [0.85, 0.4], [0.97, 0.22], [1, 0.06]];

  /* White, twelve pairs of legs, bead feelers, and two points behind that spin. */
  looks.symphylan = crawler({
    head: [0.085, 0.42], half: slim, rings: 14, legs: even(12, 0.12, 0.92, 0.1), swing: 0.42, lag: 1.1, thick: 0.011, out: 0.34, side: 0.2,
    more: function (pen, b, l, w, turn) {
      beaded(pen, l, 0.42 * w, turn, 0.3, 0.0095);
      pair(function (side) {
        var point = new Path2D();
        point.moveTo(-0.48 * l, 0.06 * side * w);
        point.lineTo(-0.58 * l, 0.2 * side * w);
        point.lineTo(-0.47 * l, 0.26 * side * w);
        point.closePath();
        field.solid(pen, point, 1);
      });
    }
  });

  /* Short and stout, nine pairs of legs, and feelers that fork into long branches. */
  looks.pauropod = crawler({
    head: [0.13, 0.36], half: [[0, 0.15], [0.06, 0.34], [0.14, 0.36], [0.4, 0.5], [0.7, 0.48], [0.9, 0.34], [1, 0.08]], rings: 6, legs: even(9, 0.2, 0.95, 0.15), swing: 0.4,
    lag: 1.2, thick: 0.018, out: 0.34, side: 0.24,
    more: function (pen, b, l, w, turn) {
      var stems = [], whips = [];
      pair(function (side) {
        var way = side * (0.5 + 0.12 * Math.sin(turn + side)), x = 0.47 * l, y = 0.22 * side * w, fx = x + 0.1 * l * Math.cos(way), fy = y + 0.1 * l * Math.sin(way);
        stems.push([x, y, fx, fy]);
        [-0.35, 0.15, 0.6].forEach(function (more, i) {
          whips.push([fx, fy, fx + (0.15 + 0.03 * (i === 1)) * l * Math.cos(way + side * more), fy + 0.16 * l * Math.sin(way + side * more)]);
        });
      });
      field.strokes(pen, field.lines(stems), Math.max(1.4, 0.03 * l * pen.scale), 0.95);
      field.strokes(pen, field.lines(whips), 0.9, 0.85);
    }
  });

  /* No feelers and no eyes: the first legs are held up before the pointed head; it walks on the other four. */
  looks.proturan = crawler({
    head: [0.11, 0.3], half: [[0, 0.06], [0.06, 0.3], [0.12, 0.36], [0.3, 0.46], [0.6, 0.5], [0.88, 0.34], [1, 0.06]], rings: 12,
    legs: [{ s: 0.25, reach: 0.14, way: 1.6, bend: 0.3 }, { s: 0.33, reach: 0.15, way: 2, bend: 0.4 }], swing: 0.35, thick: 0.02, out: 0.14, side: 0.22,
    more: function (pen, b, l, w, turn) {
      var raised = new Path2D();
      pair(function (side) { limbs.leg(raised, 0.33 * l, 0.34 * side * w, side, 0.75 + 0.12 * Math.sin(turn + side), 0, 0.14 * l, 0.15 * l, -0.75); });
      limbs.band(pen, raised, 0.02 * l, 0.95);
    }
  });

  /* White and blind, six legs, bead feelers, and two long tails. */
  looks.dipluran = crawler({
    head: [0.115, 0.44], half: slim, rings: 13, swing: 0.4, thick: 0.014, out: 0.34, side: 0.26,
    legs: [{ s: 0.18, reach: 0.19, way: 1, bend: -0.4 }, { s: 0.26, reach: 0.19, way: 1.6, bend: 0.3 }, { s: 0.34, reach: 0.21, way: 2.2, bend: 0.4 }],
    more: function (pen, b, l, w, turn) {
      var tails = new Path2D();
      beaded(pen, l, 0.44 * w, turn, 0.32, 0.0095);
      pair(function (side) { beads(tails, -0.49 * l, 0.14 * side * w, Math.PI - side * 0.45, 0.15 * side, 0.3 * l, 0.0095 * l); });
      field.strokes(pen, tails, 0.8, 0.9);
    }
  });

  /* Flat, one pair of legs to a ring, the last pair trailing; long feelers, fangs. */
  looks.centipede = crawler({
    head: [0.12, 0.46], half: [[0, 0.3], [0.05, 0.44], [0.12, 0.4], [0.4, 0.5], [0.8, 0.46], [0.95, 0.3], [1, 0.16]], rings: 16, shade: 0.2, eyes: true, swing: 0.4, lag: 1.1,
    legs: even(14, 0.14, 0.94, 0.12).concat([{ s: 0.97, reach: 0.2, way: 2.8, bend: 0.1 }]), thick: 0.013, out: 0.34, side: 0.2,
    more: function (pen, b, l, w, turn) {
      beaded(pen, l, 0.46 * w, turn, 0.3, 0.009);
      var fangs = new Path2D();
      pair(function (side) {
        fangs.moveTo(0.4 * l, 0.42 * side * w);
        fangs.quadraticCurveTo(0.5 * l, 0.5 * side * w, 0.52 * l, 0.14 * side * w);
      });
      field.strokes(pen, fangs, Math.max(1.4, 0.012 * l * pen.scale), 0.95);
    }
  });

  /* Round and long, two pairs of short legs to most rings, moved in waves by both sides alike. */
  looks.millipede = crawler({
    head: [0.06, 0.44], half: [[0, 0.3], [0.03, 0.42], [0.08, 0.46], [0.5, 0.5], [0.9, 0.44], [0.97, 0.3], [1, 0.08]], rings: 22, shade: 0.24, eyes: true, swing: 0.3, lag: 0.7, apart: 0,
    legs: even(36, 0.07, 0.93, 0.06), thick: 0.006, out: 0.12, side: 0.1,
    more: function (pen, b, l, w, turn) {
      var feelers = new Path2D();
      pair(function (side) { limbs.leg(feelers, 0.47 * l, 0.3 * side * w, side, 0.5, 0.15 * Math.sin(turn + side), 0.035 * l, 0.04 * l, -0.3); });
      limbs.band(pen, feelers, 0.009 * l, 0.95);
    }
  });

  /* A flat oval of broad shields; the legs hardly show from above, two elbowed feelers do. */
  looks.woodlouse = crawler({
    head: [0.1, 0.26], half: [[0, 0.14], [0.04, 0.3], [0.14, 0.4], [0.4, 0.49], [0.6, 0.5], [0.82, 0.4], [0.94, 0.24], [1, 0.06]], rings: 12, shade: 0.26, eyes: true, swing: 0.35, lag: 1.2,
    hip: 1.1, legs: even(7, 0.18, 0.75, 0.16), thick: 0.016, out: 0.26, side: 0.12,
    more: function (pen, b, l, w, turn) {
      var feelers = new Path2D(), tails = [];
      pair(function (side) {
        limbs.leg(feelers, 0.46 * l, 0.2 * side * w, side, 0.9, 0.12 * Math.sin(turn + side), 0.12 * l, 0.15 * l, -0.9);
        tails.push([-0.46 * l, 0.1 * side * w, -0.57 * l, 0.15 * side * w]);
      });
      limbs.band(pen, feelers, 0.018 * l, 0.95);
      field.strokes(pen, field.lines(tails), Math.max(1.2, 0.025 * l * pen.scale), 0.9);
    }
  });

  /* Eight legs on the front body, a narrow waist, an egg-shaped hind body; two feelers. */
  looks.spider = {
    tone: 0.8, poses: 10, box: function (b) { return [1.02, 0.95 * b.p.length / b.p.width]; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, eyes = new Path2D(), palps = new Path2D(), waist = field.lines([[0.1 * l, 0, 0.02 * l, 0]]);
      var each = [{ x: 0.38, way: 0.65, bend: -0.2, upper: 0.42, lower: 0.44 }, { x: 0.32, way: 1.15, bend: -0.35, upper: 0.4, lower: 0.4 }, { x: 0.24, way: 1.75, bend: 0.35, upper: 0.34, lower: 0.36 },
        { x: 0.17, way: 2.3, bend: 0.3, upper: 0.42, lower: 0.5 }];
      each.forEach(function (at) { at.y = 0.3; });
      limbs.band(pen, limbs.legs(l, w, turn, each, 0.28), 0.035 * l, 0.95);
      pair(function (side) { limbs.leg(palps, 0.48 * l, 0.1 * side * w, side, 0.4, 0, 0.1 * l, 0.1 * l, -0.4); });
      limbs.band(pen, palps, 0.03 * l, 0.95);
      field.strokes(pen, waist, Math.max(1.5, 0.05 * l * pen.scale), 1);
      field.solid(pen, field.closed(field.profile(0.41 * l, 0.78 * w, [[0, 0.2], [0.2, 0.36], [0.6, 0.5], [0.9, 0.36], [1, 0.1]]).map(function (p) { return [p[0] + 0.295 * l, p[1]]; })), 1.5);
      field.solid(pen, field.closed(field.profile(0.54 * l, w, [[0, 0.12], [0.15, 0.36], [0.5, 0.5], [0.85, 0.32], [1, 0.06]]).map(function (p) { return [p[0] - 0.23 * l, p[1]]; })), 1.7);
      [[0.46, 0.05], [0.46, 0.14], [0.43, 0.08], [0.42, 0.18]].forEach(function (p) {
        pair(function (side) { field.spot(eyes, p[0] * l, p[1] * side * w, Math.max(0.012 * l, 0.7 / pen.scale)); });
      });
      field.tone(pen, eyes, 1);
    }
  };

  /* A shield in front, a flat ringed hind body without a waist, and two long arms with pincers held out before it. */
  looks["false-scorpion"] = {
    tone: 0.8, poses: 10, box: function (b) { return [1.0, 0.75 * b.p.length / b.p.width]; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, arms = new Path2D(), rings = new Path2D(), eyes = new Path2D(), feel = 0.08 * Math.sin(turn), i;
      var each = [{ x: 0.34, way: 0.9, bend: -0.3 }, { x: 0.28, way: 1.3, bend: -0.2 }, { x: 0.22, way: 1.9, bend: 0.3 }, { x: 0.17, way: 2.3, bend: 0.3 }];
      each.forEach(function (at) {
        at.y = 0.26;
        at.upper = 0.2;
        at.lower = 0.2;
      });
      limbs.band(pen, limbs.legs(l, w, turn, each, 0.26), 0.035 * l, 0.95);
      pair(function (side) {
        var x = 0.42 * l + 0.26 * l * Math.cos(1 + feel), y = side * (0.2 * w + 0.26 * l * Math.sin(1 + feel)), way = -side * 0.25, hand = new Path2D(), fingers = [];
        arms.moveTo(0.42 * l, 0.2 * side * w);
        arms.lineTo(x, y);
        arms.lineTo(x + 0.14 * l, y + 0.02 * side * l);
        hand.ellipse(x + 0.2 * l, y, 0.1 * l, 0.055 * l, way, 0, TURN);
        [0.035, -0.035].forEach(function (apart) { fingers.push([x + 0.28 * l, y + apart * l - side * 0.02 * l, x + 0.4 * l, y + 0.3 * apart * l - side * 0.05 * l]); });
        field.solid(pen, hand, 1.2);
        field.strokes(pen, field.lines(fingers), Math.max(1.2, 0.02 * l * pen.scale), 0.95);
      });
      limbs.band(pen, arms, 0.045 * l, 0.95);
      var trunk = field.closed(field.profile(l, w, [[0, 0.14], [0.05, 0.26], [0.3, 0.34], [0.38, 0.36], [0.6, 0.5], [0.8, 0.48], [0.95, 0.28], [1, 0.08]]));
      field.solid(pen, trunk, 1.6);
      for (i = 0; i < 11; i++) {
        rings.moveTo((0.155 - 0.058 * i) * l, -0.5 * w);
        rings.quadraticCurveTo((0.145 - 0.058 * i) * l, 0, (0.155 - 0.058 * i) * l, 0.5 * w);
      }
      pen.ctx.save();
      pen.ctx.clip(trunk);
      field.strokes(pen, rings, 0.9, 0.75);
      field.tone(pen, trunk, 0.16);
      pen.ctx.restore();
      pair(function (side) { field.spot(eyes, 0.4 * l, 0.2 * side * w, Math.max(0.018 * l, 0.8 / pen.scale)); });
      field.tone(pen, eyes, 1);
    }
  };
})(self.WetmountField);
