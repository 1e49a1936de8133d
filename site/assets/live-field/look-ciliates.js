/* Ciliates. All but two share one picture: an outline with its coat of hairs, grains that turn about with
 * the body, and a clear bubble that fills and empties. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made;
  var POSES = 12;                     // of one turn about the long axis
  var BEATS = 3;                      // of the coat of hairs
  var INSIDE = 5;                     // pixels across from which there is something inside to see

  /* Turns about its long axis; one that glides on its belly does not. */
  function turned(b) { return b.motion === field.motions.glide ? 0.05 : b.phase / TURN; }

  function poseOf(b) {
    var turns = turned(b);
    return Math.floor((turns - Math.floor(turns)) * POSES) % POSES;
  }

  /* A ciliate: outline(l, w, turn) gives its points; `hair` the length of its hairs in widths, `every` how
   * thinly they stand; inside(pen, b, l, w, turn) and beside(pen, b, l, w) draw what is its own;
   * `rear` and `front` are where bubbles lie. `turns`: its outline changes as it turns. `flat`: it lies on its belly. */
  function ciliate(o) {
    return {
      tone: o.tone, poses: POSES, box: o.box, turn: turned,
      under: function (pen, b) {
        var l = b.p.length, w = b.p.width;
        if (pen.detail(b) <= INSIDE) { return; }
        if (o.beside) { o.beside(pen, b, l, w); }
        if (!o.hair) { return; }
        var pose = o.turns ? poseOf(b) : 0, beat = Math.floor(b.age * 14) % BEATS;
        var coat = made(b, "hairs " + pose + " " + beat, function () {
          return field.lines(field.hairs(o.outline(l, w, TURN * (pose + 0.5) / POSES), o.hair * w, 0.5 - 0.5 * beat, o.every || 1));
        });
        field.strokes(pen, coat, 0.6, 0.6);
      },
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width, path = field.closed(o.outline(l, w, turn));
        field.solid(pen, path, o.weight || 1.25);
        if (pen.detail(b) < INSIDE) {
          field.tone(pen, path, 0.3);
          return;
        }
        field.fine(pen, 1, 0.72);
        field.turningGrains(pen, made(b, "grains", function () { return field.strewn(b, o.grains || 26, l, (o.spread || 1) * w, w * 0.045); }), turn);
        if (o.inside) { o.inside(pen, b, l, w, turn); }
      },
      over: function (pen, b) {
        if (pen.detail(b) < INSIDE) { return; }
        var turn = TURN * turned(b);
        field.bubble(pen, b, (o.rear || -0.3) * b.p.length, (o.flat ? 0.12 : 0.2 * Math.sin(turn)) * b.p.width, (o.clear || 0.15) * b.p.width, o.cycle || 12);
        if (o.front) { field.bubble(pen, b, o.front * b.p.length, -0.2 * Math.sin(turn + 1) * b.p.width, 0.12 * b.p.width, 9); }
      }
    };
  }

  looks["pear-ciliate"] = ciliate({
    tone: 0.6, hair: 0.12,
    outline: function (l, w) { return field.oval(l, w, 0.2); },
    inside: function (pen, b, l, w, turn) {           // the mouth comes and goes as it turns
      if (Math.cos(turn + 1) < -0.3) { return; }
      var side = Math.sin(turn + 1), mouth = new Path2D();
      mouth.ellipse(0.24 * l, 0.22 * w * side, 0.08 * l, 0.07 * w, 0.5 * side, 0, TURN);
      field.strokes(pen, mouth, 0.9, 0.85);
    }
  });

  /* Broadest behind the middle; the groove turns about with it, and a bubble lies at either end. */
  looks["slipper-ciliate"] = ciliate({
    tone: 0.6, hair: 0.1, front: 0.26,
    outline: function (l, w) {
      return around(48, function (a) {
        var u = Math.cos(a), rear = Math.max(0, -u - 0.35) / 0.65;
        return [l / 2 * u, w / 2 * Math.sin(a) * (1 - 0.14 * u) * (1 - 0.4 * rear * rear)];
      });
    },
    inside: function (pen, b, l, w, turn) {
      var side = Math.sin(turn + 1) * w, groove = new Path2D();
      if (Math.cos(turn + 1) < -0.3) { return; }
      groove.moveTo(0.44 * l, 0.2 * side);
      groove.quadraticCurveTo(0.22 * l, 0.34 * side, 0, 0.1 * side);
      field.strokes(pen, groove, 0.9, 0.85);
    }
  });

  /* Flat, with a notch in one side that turns to the other side as it rolls. */
  looks["bean-ciliate"] = ciliate({
    tone: 0.75, hair: 0.14, turns: true,
    outline: function (l, w, turn) {
      var turned = Math.cos(turn);
      return around(44, function (a) {
        var u = Math.cos(a), v = Math.sin(a);
        var notch = Math.max(0, v > 0 ? turned : -turned) * 0.62 * Math.exp(-Math.pow((u - 0.25) / 0.26, 2));
        return [l / 2 * u, w / 2 * v * (1 - 0.16 * u) * (0.78 + 0.22 * Math.abs(turned)) * (1 - notch)];
      });
    }
  });

  /* Flat, on its belly: a rounded ear with a beak to its left in front; hairs only underneath, a basket of rods at the mouth. */
  looks["ear-ciliate"] = ciliate({
    tone: 0.5, flat: true, rear: -0.22, grains: 20,
    outline: function (l, w) {
      return around(44, function (a) {
        var u = Math.cos(a), v = Math.sin(a), beak = Math.exp(-Math.pow((a - 5.75) / 0.42, 2));
        return [l / 2 * u * (1 + 0.02 * beak), w / 2 * v * (1 - 0.1 * u) - 0.16 * w * beak];
      });
    },
    inside: function (pen, b, l, w) {
      var rods = [];
      for (var i = -3; i <= 3; i++) { rods.push([0.28 * l, -0.06 * w + 0.03 * w * i, 0.08 * l, -0.06 * w + 0.012 * w * i]); }
      field.strokes(pen, field.lines(rods), 0.8, 0.85);
      var nucleus = new Path2D();
      nucleus.ellipse(-0.1 * l, 0.02 * w, 0.13 * l, 0.15 * w, 0, 0, TURN);
      field.strokes(pen, nucleus, 0.7, 0.7);
    }
  });

  /* A knife: the mouth is a slanted ridge across the blunt front end. */
  looks["flask-ciliate"] = ciliate({
    tone: 0.5, hair: 0.16, rear: -0.42, flat: true, grains: 34, box: [0.56, 0.7],
    outline: function (l, w) {
      return field.profile(l, w, [[0, 0.22], [0.03, 0.28], [0.2, 0.27], [0.55, 0.5], [0.82, 0.42], [0.95, 0.2], [1, 0.04]]).map(function (p) {
        var front = Math.max(0, p[0] / l - 0.2) / 0.3;                // the front end is cut off on a slant
        return [p[0] - 0.16 * l * front * front * (p[1] / w + 0.28), p[1]];
      });
    },
    inside: function (pen, b, l, w) {
      field.strokes(pen, field.lines([[0.49 * l, -0.25 * w, 0.41 * l, 0.26 * w]]), 1.6, 0.9);
      var rods = [];
      for (var i = 0; i < 7; i++) { rods.push([(0.48 - 0.012 * i) * l, (-0.22 + 0.075 * i) * w, (0.4 - 0.012 * i) * l, (-0.18 + 0.06 * i) * w]); }
      field.strokes(pen, field.lines(rods), 0.6, 0.7);
    }
  });

  /* Twisted: the front hangs like a scarf over a narrower waist, and the row of membranelles under it runs slantwise round
   * the body. Both come round as it turns. Dark dots in front, a tuft of long hairs at the tail. */
  function brim(x) { return Math.exp(-Math.pow((x - 0.2) / 0.13, 2)) - 0.55 * Math.exp(-Math.pow((x + 0.04) / 0.11, 2)); }

  function twisted(w, x, side) {      // half width at x, in body lengths; `side` 1 where the scarf hangs over
    return w * (0.34 * Math.pow(Math.max(0, 1 - Math.pow(Math.abs(x - 0.1) / (x > 0.1 ? 0.4 : 0.6), 2.2)), x > 0.1 ? 0.5 : 0.62) + 0.16 * Math.max(0, side) * brim(x));
  }

  looks["twisted-ciliate"] = ciliate({
    tone: 0.65, hair: 0.08, turns: true, rear: -0.37, clear: 0.11, grains: 22, spread: 0.55, box: [0.56, 0.66],
    outline: function (l, w, turn) {
      return around(56, function (a) {
        var x = 0.5 * Math.cos(a), v = Math.sin(a) < 0 ? -1 : 1, lean = 0.08 * w * Math.sin(turn) * Math.max(0, x) * 2;
        return [x * l, v * twisted(w, x, v * Math.sin(turn)) + lean];
      });
    },
    inside: function (pen, b, l, w, turn) {
      var row = new Path2D(), hairs = [], drawn = false, dots = new Path2D(), nucleus = new Path2D();
      for (var i = 0; i <= 40; i++) {                   // a screw line on the near face: from the front edge slantwise back
        var t = i / 40, x = 0.3 - 0.42 * t, way = turn - 0.5 + 2.3 * t, near = Math.cos(way) > -0.05;
        var y = 0.94 * Math.sin(way) * twisted(w, x, Math.sin(turn) * Math.sin(way));
        if (near && drawn) { row.lineTo(x * l, y); } else if (near) { row.moveTo(x * l, y); }
        if (near && i % 3 === 0) { hairs.push([x * l, y, (x - 0.055) * l, y + 0.05 * w * Math.cos(way)]); }
        drawn = near;
      }
      field.strokes(pen, row, 1.6, 0.95);
      field.strokes(pen, field.lines(hairs), 0.7, 0.8);
      [[0.44, 0.3], [0.42, 2.1], [0.39, 4.2], [0.37, 1.2], [0.36, 5.4], [0.33, 3.1], [0.41, 5], [0.34, 0.2]].forEach(function (p) {
        field.spot(dots, p[0] * l, 0.5 * twisted(w, p[0], 0) * Math.sin(p[1] + turn), Math.max(0.028 * w, 0.6 / pen.scale));
      });
      field.tone(pen, dots, 0.95);
      nucleus.ellipse(-0.08 * l, 0.06 * w * Math.sin(turn + 2), 0.1 * l, 0.1 * w, 0, 0, TURN);
      field.strokes(pen, nucleus, 0.7, 0.7);
    },
    beside: function (pen, b, l, w) {
      var tuft = [];
      for (var i = -2; i <= 2; i++) { tuft.push([-0.47 * l, 0.03 * w * i, -0.68 * l, (0.08 * i + 0.05 * Math.sin(b.age * 9 + i)) * w]); }
      field.strokes(pen, field.lines(tuft), 0.8, 0.8);
    }
  });

  /* A stiff helmet drawn out to a spine behind, a smaller spine on one side, and a belt of tufts round its lower edge. */
  looks["helmet-ciliate"] = ciliate({
    tone: 0.6, turns: true, rear: -0.12, clear: 0.08, grains: 14, spread: 0.45, weight: 1.6, box: [0.56, 0.7],
    outline: function (l, w, turn) {
      var at = [0, 0.03, 0.15, 0.36, 0.47, 0.53, 0.6, 0.66, 0.74, 0.9, 1], plain = [0.02, 0.18, 0.3, 0.35, 0.345, 0.3, 0.14, 0.1, 0.08, 0.04, 0.01];
      var spined = [0.02, 0.17, 0.29, 0.34, 0.335, 0.36, 0.38, 0.41, 0.09, 0.04, 0.01], share = 0.5 + 0.5 * Math.sin(turn);
      function half(more) { return at.map(function (s, i) { return [s, (plain[i] * (1 - more) + spined[i] * more) / 0.76]; }); }
      var top = field.profile(l, w, half(share)), low = field.profile(l, w, half(1 - share));
      return top.slice(0, top.length / 2).concat(low.slice(low.length / 2));
    },
    inside: function (pen, b, l, w, turn) {
      var tufts = [], ridges = new Path2D(), belt = new Path2D(), nucleus = new Path2D();
      for (var i = -6; i <= 6; i++) {
        var y = 0.068 * i * w, bow = 0.04 * l * (1 - i * i / 36);
        tufts.push([0.07 * l - bow, y, 0.0 * l - bow, y + 0.03 * w * Math.sin(turn + i)]);
      }
      belt.moveTo(0.1 * l, -0.44 * w);
      belt.quadraticCurveTo(-0.01 * l, 0, 0.1 * l, 0.44 * w);
      [0, 2.1, 4.2].forEach(function (from) {
        var side = Math.sin(turn + from);
        if (Math.cos(turn + from) < -0.1) { return; }
        ridges.moveTo(0.47 * l, 0.1 * side * w);
        ridges.quadraticCurveTo(0.34 * l, 0.38 * side * w, 0.1 * l, 0.4 * side * w);
      });
      field.strokes(pen, belt, 1.3, 0.9);
      field.strokes(pen, field.lines(tufts), 0.9, 0.85);
      field.strokes(pen, ridges, 0.6, 0.6);
      nucleus.ellipse(0.22 * l, 0.1 * w * Math.sin(turn + 1), 0.08 * l, 0.1 * w, 0, 0, TURN);
      field.strokes(pen, nucleus, 0.7, 0.7);
    }
  });

  /* Bare in front, a sail at the mouth, one long hair behind. */
  looks["tailed-ciliate"] = ciliate({
    tone: 0.5, hair: 0.28, every: 3,
    outline: function (l, w) {
      return around(44, function (a) { return [Math.min(0.46, Math.cos(a) / 2) * l, w / 2 * Math.sin(a)]; });
    },
    beside: function (pen, b, l, w) {
      field.strokes(pen, made(b, "tail", function () {
        var path = field.lines([[-l / 2, 0, -1.05 * l, 0.05 * l]]);
        path.moveTo(0.36 * l, 0.3 * w);
        path.quadraticCurveTo(0.1 * l, 0.95 * w, -0.14 * l, 0.46 * w);
        return path;
      }), 0.6, 0.75);
    }
  });

  /* Small and oval, the hairs in front longer than the rest. */
  looks["tufted-ciliate"] = ciliate({
    tone: 0.55, hair: 0.14, every: 2, grains: 14,
    outline: function (l, w) { return field.oval(l, w, 0.1); },
    beside: function (pen, b, l, w) {
      var beat = Math.floor(b.age * 14) % BEATS;
      field.strokes(pen, made(b, "front " + beat, function () {
        var tuft = [];
        for (var i = -3; i <= 3; i++) { tuft.push([0.46 * l, 0.08 * w * i, 0.62 * l, (0.13 * i + 0.06 * (beat - 1)) * w]); }
        return field.lines(tuft);
      }), 0.7, 0.8);
    }
  });
})(self.WetmountField);
