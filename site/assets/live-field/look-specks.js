/* Specks, diatoms and grains. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around;

  /* What is at or below what the lens resolves: its true size, blurred by the lens, and the paler the smaller. */
  function mote(alphaOf, bent) {
    return {
      mote: true, live: true,
      paint: function (pen, b) {
        var ctx = pen.ctx, l = b.p.length, w = b.p.width, blur = pen.resolution;
        var wide = Math.hypot(w, blur) * pen.scale, seen = Math.max(wide, 1.3), half = Math.max(0, l - w) / 2 + 0.01 / pen.scale;
        ctx.globalAlpha = Math.max(0.22, alphaOf(b) * Math.min(1, w / blur) * Math.min(1, 0.35 + 0.65 * wide / seen));
        ctx.strokeStyle = pen.ink;
        ctx.lineWidth = seen / pen.scale;
        ctx.beginPath();
        ctx.moveTo(-half, bent ? 0.08 * l : 0);
        ctx.quadraticCurveTo(0, bent ? -0.2 * l : 0, half, bent ? 0.08 * l : 0);
        ctx.stroke();
      }
    };
  }

  looks.fleck = mote(function (b) { return 0.4 + 0.6 * Math.abs(Math.cos(b.tilt)); });   // it twinkles as it turns
  looks.dot = mote(function () { return 0.75; });
  looks.rod = mote(function () { return 0.8; });
  looks["bent-rod"] = mote(function () { return 0.8; }, true);

  looks.diatom = {
    tone: 0.6,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, striae = [], plastids = new Path2D();
      field.solid(pen, field.closed(around(44, function (a) {
        var u = Math.cos(a);
        return [l / 2 * u, w / 2 * Math.sign(Math.sin(a)) * Math.pow(Math.max(0, 1 - u * u), 0.72)];
      })), 1.3);
      plastids.ellipse(0, 0.24 * w, 0.34 * l, 0.16 * w, 0, 0, TURN);
      plastids.ellipse(0, -0.24 * w, 0.34 * l, 0.16 * w, 0, 0, TURN);
      field.tone(pen, plastids, 0.16);
      if (pen.detail(b) > 6) {
        for (var i = -11; i <= 11; i++) {
          var u = i / 12.5, half = w / 2 * Math.pow(1 - u * u, 0.72);
          striae.push([u * l / 2, half, u * l / 2 * 0.97, 0.56 * half], [u * l / 2, -half, u * l / 2 * 0.97, -0.56 * half]);
        }
        field.strokes(pen, field.lines(striae), 0.5, 0.7);
      }
      field.strokes(pen, field.lines([[-0.45 * l, 0, -0.04 * l, 0], [0.04 * l, 0, 0.45 * l, 0]]), 0.8, 0.85);
    }
  };

  /* A chip of mineral: corners, and edges that run inwards. */
  looks.grain = {
    tone: 0.8, from: 2, box: [0.6, 0.75],
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, rng = field.chance(b.grain), count = 6 + Math.floor(rng() * 3), path = new Path2D(), facets = [];
      var corners = around(count, function (a) {
        var turned = a + 0.5 * (rng() - 0.5), far = 0.82 + 0.18 * rng();
        return [l / 2 * far * Math.cos(turned), w / 2 * far * Math.sin(turned)];
      });
      var heart = [0.12 * l * (rng() - 0.5), 0.12 * w * (rng() - 0.5)];
      corners.forEach(function (p, i) {
        if (i) { path.lineTo(p[0], p[1]); } else { path.moveTo(p[0], p[1]); }
        if (i % 2) { facets.push([p[0], p[1], heart[0] + 0.3 * p[0], heart[1] + 0.3 * p[1]]); }
      });
      path.closePath();
      field.solid(pen, path, 1.7);
      field.strokes(pen, field.lines(facets), 0.6, 0.6);
    }
  };
})(self.WetmountField);
