/* Ciliates of their own build: a ball that leaps, walkers on bristles, a long neck, and bells on a stalk. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, made = field.made, around = field.around;

  /* A wreath in front, and a few long stiff hairs round the middle. */
  looks["ball-ciliate"] = {
    tone: 0.5, box: [1.05, 1.05],
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, stiff = [], wreath = [], i;
      for (i = 0; i < 10; i++) {
        var a = 0.9 + 4.48 * i / 9;
        stiff.push([0.48 * l * Math.cos(a), 0.48 * w * Math.sin(a), l * Math.cos(a), w * Math.sin(a)]);
      }
      for (i = -6; i <= 6; i++) {
        var f = 0.11 * i;
        wreath.push([0.48 * l * Math.cos(f), 0.48 * w * Math.sin(f), 0.64 * l * Math.cos(0.8 * f), 0.7 * w * Math.sin(1.2 * f)]);
      }
      field.strokes(pen, field.lines(stiff), 0.7, 0.8);
      field.strokes(pen, field.lines(wreath), 1.1, 0.9);
      field.solid(pen, field.closed(field.oval(l, w, 0)), 1.2);
      field.fine(pen, 1, 0.7);
      field.turningGrains(pen, field.strewn(b, 16, 0.85 * l, 0.85 * w, 0.045 * w), 0);
    }
  };

  /* The wreath runs over the front and down the left side to the mouth; groups of bristles on the flat side. `tailed`: three long ones behind. */
  function walker(tailed) { return {
    tone: 0.65, poses: 6, box: [tailed ? 0.76 : 0.6, 0.72],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, stepping = Math.sin(turn), wreath = [], bristles = [], i;
      var outline = around(48, function (a) {
        return [l / 2 * Math.cos(a), w / 2 * Math.sign(Math.sin(a)) * Math.pow(Math.abs(Math.sin(a)), 0.8) * (1 - 0.06 * Math.cos(a))];
      });
      var path = field.closed(outline);
      field.strokes(pen, field.lines(field.hairs(outline, 0.13 * w, 0, 2).map(function (h, n) {
        return [h[0], h[1], h[2] - 0.06 * l + 0.05 * l * stepping * (n % 2 ? 1 : -1), h[3]];
      })), 0.8, 0.85);
      if (tailed) {
        field.strokes(pen, field.lines([-1, 0, 1].map(function (side) { return [-0.46 * l, 0.16 * side * w, -0.74 * l, 0.34 * side * w]; })), 1.2, 0.9);
      }
      field.solid(pen, path, 1.4);
      if (pen.detail(b) < 5) {
        field.tone(pen, path, 0.3);
        return;
      }
      for (i = 0; i < 15; i++) {
        var a = -0.55 + 2.0 * i / 14, inward = i > 9 ? (i - 9) / 5 : 0;
        var x = 0.46 * l * Math.cos(a), y = -0.45 * w * Math.sin(a) * (1 - 0.5 * inward);
        wreath.push([x, y, x + 0.05 * l * Math.cos(a + 0.5), y - 0.12 * w * Math.sin(a + 0.3)]);
      }
      for (i = 0; i < 7; i++) { bristles.push([0.3 - 0.07 * i, 0.1 + 0.16 * (i % 2), 1]); }
      for (i = 0; i < 5; i++) { bristles.push([-0.32 - 0.02 * i, -0.16 + 0.09 * i, 1.5]); }
      field.strokes(pen, field.lines(wreath.concat(bristles.map(function (p, n) {
        var lean = 0.05 * l * stepping * (n % 2 ? 1 : -1);
        return [p[0] * l, p[1] * w, p[0] * l - 0.06 * l * p[2] + lean, p[1] * w + 0.03 * w];
      }))), 1, 0.9);
      field.fine(pen, 1, 0.6);
      field.turningGrains(pen, field.strewn(b, 34, 0.9 * l, 0.85 * w, 0.03 * w), 0);
    },
    over: function (pen, b) {
      if (pen.detail(b) >= 5) { field.bubble(pen, b, 0, -0.28 * b.p.width, 0.12 * b.p.width, 11); }
    }
  }; }

  looks["bristle-ciliate"] = walker(false);
  looks["tailed-bristle-ciliate"] = walker(true);

  /* A flattened flask whose long neck sways as it glides; the mouth is a slit along the neck, and it has two nuclei. */
  looks["neck-ciliate"] = {
    tone: 0.45, poses: 16, box: [0.56, 1.1],
    turn: function (b) { return 0.16 * b.age + b.grain % 16 / 16; },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, line = [], i;
      for (i = 0; i <= 30; i++) {
        var s = i / 30, neck = Math.max(0, 0.5 - s) / 0.5;
        line.push([l * (0.5 - s), 0.75 * w * neck * neck * Math.sin(turn - 1.5 * s)]);
      }
      var at = field.along(line), half = [[0, 0.05], [0.1, 0.12], [0.35, 0.24], [0.6, 0.5], [0.82, 0.4], [1, 0.05]];
      var sides = field.profile(1, w, half).map(function (p) { return at(0.5 - p[0], p[1]); });
      field.strokes(pen, field.lines(field.hairs(sides, 0.1 * w, 0.3, 2)), 0.5, 0.55);
      field.solid(pen, field.closed(sides), 1.2);
      var mouth = new Path2D(), rods = [];
      field.trace(mouth, at, 0.02, 0.36, 16, function (t) { return (0.03 + 0.15 * t) * w; });
      field.strokes(pen, mouth, 1, 0.85);
      for (i = 0; i < 10; i++) { rods.push(at(0.04 + 0.03 * i, (0.04 + 0.015 * i) * w).concat(at(0.06 + 0.03 * i, -0.02 * w))); }
      field.strokes(pen, field.lines(rods), 0.5, 0.6);
      var nuclei = new Path2D(), p = at(0.6, -0.06 * w), q = at(0.7, 0.04 * w);
      field.spot(nuclei, p[0], p[1], 0.11 * w);
      field.spot(nuclei, q[0], q[1], 0.11 * w);
      field.strokes(pen, nuclei, 0.8, 0.85);
      field.tone(pen, nuclei, 0.18);
      field.fine(pen, 1, 0.6);
      pen.ctx.beginPath();
      field.made(b, "grains", function () { return field.strewn(b, 30, 1, 1, 0.03 * w); }).forEach(function (g) {
        var c = at(0.66 + 0.3 * g[0], 0.8 * g[2] * w * Math.sin(g[1]));
        field.spot(pen.ctx, c[0], c[1], Math.max(g[3], 0.45 / pen.scale));
      });
      pen.ctx.fill();
    }
  };

  /* A bell on a stalk, foot at the body's place. `coils`: the stalk is a spring when shut; a stiff stalk stays, and only the bell draws in. */
  function bell(coils) {
    return {
      tone: 0.55, live: true, far: 5,
      paint: function (pen, b) {
        var l = b.p.length, w = b.p.width, stalk = b.p.stalk * l, ctx = pen.ctx, shut = b.coil;
        var reach = coils ? stalk * (1 - 0.82 * shut) : stalk;
        ctx.beginPath();
        ctx.moveTo(0, 0);
        for (var i = 1; i <= 48; i++) {
          var s = i / 48;
          ctx.lineTo(reach * s, coils ? (0.13 * w * shut + 0.01 * w) * Math.sin(TURN * 6 * s) : 0);
        }
        field.strokes(pen, made(b, "foot", function () { return field.lines([[0, -0.12 * w, 0, 0.12 * w]]); }), 1.2, 0.8);
        field.fine(pen, coils ? 1 : Math.max(1, 0.09 * w * pen.scale), coils ? 0.85 : 0.4);
        ctx.stroke();
        ctx.translate(reach, 0);
        var open = 1 - Math.min(1, 1.2 * shut), beat = Math.floor(b.age * 14) % 3, rim = 0.34 + 0.16 * open, long = l * (0.8 + 0.2 * open);
        var body = made(b, "bell " + open.toFixed(1), function () {
          return field.closed(field.profile(long, w, [[0, 0.86 * rim], [0.06, rim], [0.13, rim * 0.92], [0.5, 0.42], [0.85, 0.22], [1, 0.06]])
            .map(function (p) { return [p[0] + long / 2, p[1]]; }));
        });
        if (open > 0.3) {                             // the crown beats only while the bell is open
          field.strokes(pen, made(b, "crown " + beat, function () {
            var hairs = [];
            for (var n = -6; n <= 6; n++) { hairs.push([0.98 * l, 0.078 * n * w, 1.13 * l, (0.098 * n + 0.03 * (beat - 1)) * w]); }
            return field.lines(hairs);
          }), 0.7, 0.75);
        }
        field.solid(pen, body, 1.25);
        if (pen.detail(b) < 6) { return; }
        field.strokes(pen, made(b, "inside " + open.toFixed(1), function () {
          var path = new Path2D();
          path.ellipse(0.93 * long, 0, 0.05 * l, 0.8 * rim * w, 0, 0, TURN);              // the lid
          path.moveTo(0.9 * long, -0.12 * w);
          path.quadraticCurveTo(0.72 * long, -0.1 * w, 0.6 * long, 0.02 * w);            // the gullet
          path.moveTo(0.34 * long, -0.24 * w);
          path.bezierCurveTo(0.2 * long, 0, 0.3 * long, 0.26 * w, 0.56 * long, 0.22 * w); // the band of the nucleus
          return path;
        }), 1, 0.7);
        field.fine(pen, 1, 0.6);
        ctx.beginPath();
        made(b, "grains", function () { return field.strewn(b, 26, 0.7 * l, 0.7 * w, 0.026 * w); }).forEach(function (g) {
          field.spot(ctx, 0.48 * long + g[0], g[2] * Math.sin(g[1]), g[3]);
        });
        ctx.fill();
        field.bubble(pen, b, 0.72 * long, 0.16 * w, 0.1 * w, 14);
      }
    };
  }

  looks["coiling-bell"] = bell(true);
  looks["stiff-bell"] = bell(false);
})(self.WetmountField);
