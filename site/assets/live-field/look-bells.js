/* Bells on a stalk, which no drawing shows both open and shut: the stalk coils and the bell closes. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, made = field.made;

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
