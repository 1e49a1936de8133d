/* Euglenids: one thick whip; gliding sacs without colour, and green spindles that swim or squirm. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made;

  /* The whip points ahead like a rod, and only its tip flickers. */
  function rodAhead(pen, b) {
    var l = b.p.length, ctx = pen.ctx;
    field.strokes(pen, made(b, "rod", function () { return field.lines([[0.47 * l, 0, 1.12 * l, 0.02 * l]]); }), 1.1, 0.9);
    ctx.beginPath();
    field.whip(ctx, 1.12 * l, 0.02 * l, 0, 0.22 * l, 0.1 * l, 1, b.age * 25);
    field.fine(pen, 0.8, 0.8);
    ctx.stroke();
  }

  /* A stiff flat leaf with keels along it. */
  looks["leaf-euglenid"] = {
    tone: 0.35, under: rodAhead,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, keels = new Path2D();
      field.solid(pen, field.closed(field.profile(l, w, [[0, 0.08], [0.08, 0.26], [0.35, 0.46], [0.6, 0.5], [0.85, 0.36], [0.97, 0.12], [1, 0.03]])), 1.3);
      [-0.24, 0.02, 0.26].forEach(function (y) {
        keels.moveTo(0.38 * l, 0.6 * y * w);
        keels.quadraticCurveTo(-0.05 * l, 1.35 * y * w, -0.42 * l, 0.5 * y * w);
      });
      field.strokes(pen, keels, 0.8, 0.75);
      field.fine(pen, 1, 0.6);
      field.turningGrains(pen, field.strewn(b, 12, 0.75 * l, 0.7 * w, 0.04 * w), 0);
    }
  };

  looks.euglenid = {
    tone: 0.4, poses: 12,
    turn: function (b) { return b.phase / TURN / 5; },
    under: rodAhead,
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, squirm = 0.05 * Math.sin(turn);
      field.solid(pen, field.closed(around(40, function (a) {
        var u = Math.cos(a);
        return [l / 2 * u, w / 2 * Math.sin(a) * (1 - 0.32 * u + squirm * Math.cos(3 * a)) + squirm * w * u];
      })), 1.25);
      field.fine(pen, 0.7, 0.75);
      pen.ctx.beginPath();
      field.strewn(b, 22, 0.9 * l, 0.8 * w, 0.07 * w).forEach(function (g) {
        field.spot(pen.ctx, g[0] - 0.04 * l, 0.9 * g[2] * Math.sin(g[1]), g[3]);
      });
      pen.ctx.stroke();
    }
  };

  /* Plastids as toned discs, an eyespot near the front, a paler place about the nucleus. */
  function green(pen, b, halfAt, turn) {
    var l = b.p.length, w = b.p.width, ctx = pen.ctx, plastids = made(b, "plastids", function () {
      var rng = field.chance(b.grain), all = [];
      for (var i = 0; i < 26; i++) { all.push([0.14 + 0.74 * (i + rng()) / 26, TURN * rng(), 0.8 + 0.4 * rng()]); }
      return all;
    });
    ctx.beginPath();
    plastids.forEach(function (g) {
      if (Math.cos(turn + g[1]) > -0.2) { field.spot(ctx, l * (0.5 - g[0]), 0.72 * halfAt(g[0]) * Math.sin(turn + g[1]), Math.min(0.13 * w, 2.2) * g[2]); }
    });
    field.fine(pen, 0.6, 0.42);
    ctx.fill();
    ctx.globalAlpha = 0.7;
    ctx.stroke();
    ctx.beginPath();
    field.spot(ctx, 0.4 * l, 0.5 * halfAt(0.1) * Math.sin(turn + 0.8), Math.max(0.1 * w, 1.1 / pen.scale));
    field.fine(pen, 1, 1);
    ctx.fill();
  }

  /* A spindle with a pointed tail, turning about itself as it swims; the whip leads and sweeps round. */
  looks["green-spindle"] = {
    tone: 0.7, poses: 12,
    under: function (pen, b) {
      var l = b.p.length;
      pen.ctx.beginPath();
      field.whip(pen.ctx, 0.48 * l, 0, 0.5 * Math.sin(b.phase), 0.85 * l, 0.14 * l, 1.1, b.age * 35);
      field.fine(pen, 0.8, 0.65);
      pen.ctx.stroke();
    },
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, bow = 0.12 * w * Math.sin(turn);
      var shape = [[0, 0.14], [0.06, 0.3], [0.3, 0.48], [0.55, 0.46], [0.85, 0.16], [0.93, 0.05], [1, 0.01]];
      field.solid(pen, field.closed(field.profile(l, w, shape).map(function (p) { return [p[0], p[1] + bow * (4 * p[0] * p[0] / l / l - 0.4)]; })), 1.25);
      green(pen, b, function (s) { return w * 0.48 * Math.sin(Math.PI * Math.min(1, 0.12 + 0.9 * s)); }, turn);
    }
  };

  /* Squirming: a swelling passes from one end to the other, and the cell is a ball, a pear or a spindle in turn. */
  looks["squirming-green"] = {
    tone: 0.7, poses: 20, box: [0.56, 1.25],
    paint: function (pen, b, turn) {
      var l = b.p.length, w = b.p.width, place = 0.5 - 0.34 * Math.cos(turn), pull = 0.78 + 0.16 * Math.cos(2 * turn);
      function half(s) {
        var swell = Math.exp(-Math.pow((s - place) / 0.27, 2)), ends = Math.pow(Math.max(0, Math.sin(Math.PI * s)), 0.4);
        return w * (0.16 + 0.6 * swell) * ends;
      }
      var top = [];
      for (var i = 0; i <= 30; i++) { top.push([pull * l * (0.5 - i / 30), half(i / 30)]); }
      field.solid(pen, field.closed(top.concat(top.slice().reverse().map(function (p) { return [p[0], -0.92 * p[1]]; }))), 1.25);
      pen.ctx.save();
      pen.ctx.scale(pull, 1);
      green(pen, b, half, 0.6);
      pen.ctx.restore();
    }
  };
})(self.WetmountField);
