/* Bodies too fine to have a shape: at or below what the lens resolves they are as wide as the lens makes them. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks;

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
