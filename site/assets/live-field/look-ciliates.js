/* Ciliates. All but two share one picture: an outline with its coat of hairs, grains that turn about with
 * the body, and a clear bubble that fills and empties. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made;
  var POSES = 12;                     // of one turn about the long axis
  var BEATS = 3;                      // of the coat of hairs
  var INSIDE = 5;                     // pixels across from which there is something inside to see

  function poseOf(b) {
    var turned = b.phase / TURN;
    return Math.floor((turned - Math.floor(turned)) * POSES) % POSES;
  }

  /* A ciliate: outline(l, w, turn) gives its points; `hair` the length of its hairs in widths, `every` how
   * thinly they stand; inside(pen, b, l, w, turn) and beside(pen, b, l, w) draw what is its own;
   * `rear` and `front` are where bubbles lie. `turns`: its outline changes as it turns. `flat`: it lies on its belly. */
  function ciliate(o) {
    return {
      tone: o.tone, poses: POSES, box: o.box,
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
        field.turningGrains(pen, made(b, "grains", function () { return field.strewn(b, o.grains || 26, l, w, w * 0.045); }), turn);
        if (o.inside) { o.inside(pen, b, l, w, turn); }
      },
      over: function (pen, b) {
        if (pen.detail(b) < INSIDE) { return; }
        field.bubble(pen, b, (o.rear || -0.3) * b.p.length, (o.flat ? 0.12 : 0.2 * Math.sin(b.phase)) * b.p.width, 0.15 * b.p.width, o.cycle || 12);
        if (o.front) { field.bubble(pen, b, o.front * b.p.length, -0.2 * Math.sin(b.phase + 1) * b.p.width, 0.12 * b.p.width, 9); }
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

  /* Twisted: the front hangs over to one side, a slanting row of long hairs runs back from it, a tuft at the tail. */
  looks["twisted-ciliate"] = ciliate({
    tone: 0.65, hair: 0.1, turns: true, rear: -0.4, grains: 30,
    outline: function (l, w, turn) {
      var side = Math.sin(turn);
      return around(44, function (a) {
        var u = Math.cos(a), v = Math.sin(a), front = Math.max(0, u - 0.1), rear = Math.max(0, -u - 0.2);
        return [l / 2 * u, w / 2 * (v * (1 - 0.7 * rear * rear) * (0.85 + 0.2 * front) + 0.45 * side * front)];
      });
    },
    inside: function (pen, b, l, w, turn) {
      var side = Math.sin(turn), row = new Path2D(), hairs = [];
      row.moveTo(0.42 * l, 0.4 * side * w);
      row.quadraticCurveTo(0.2 * l, 0.1 * side * w + 0.1 * w, -0.08 * l, -0.3 * side * w);
      field.strokes(pen, row, 1.1, 0.9);
      for (var i = 0; i < 9; i++) {
        var t = i / 8, x = (0.42 - 0.5 * t) * l, y = (0.4 - 0.7 * t) * side * w + 0.1 * w * t * (1 - t);
        hairs.push([x, y, x - 0.05 * l, y + 0.12 * w]);
      }
      field.strokes(pen, field.lines(hairs), 0.7, 0.8);
    },
    beside: function (pen, b, l, w) {
      var tuft = [];
      for (var i = -2; i <= 2; i++) { tuft.push([-0.47 * l, 0.03 * w * i, -0.68 * l, (0.08 * i + 0.05 * Math.sin(b.age * 9 + i)) * w]); }
      field.strokes(pen, field.lines(tuft), 0.6, 0.75);
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
