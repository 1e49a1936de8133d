/* The round field on a canvas: what is in it, trails, the rim and a scale bar. */
(function (field) {
  "use strict";
  var TURN = field.TURN;
  var FROM = 3;                       // pixels; a body narrower than this is a speck or a hair

  /* Draws a field into the top left `pixels` × `pixels` of a canvas.
   * View: pixels, density (canvas pixels to one of these, 1), ink and paper (CSS colours), aperture of the
   * objective, trails (true or false), font. */
  field.draw = function (ctx, here, view) {
    var density = view.density || 1, scale = view.pixels / here.diameter * 0.985;   // leaves room for the rim
    var pen = { ctx: ctx, ink: view.ink, paper: view.paper, scale: scale, density: density, middle: view.pixels / 2, angle: 0, kept: null,
      key: [scale, density, view.ink, view.paper].join(" "), resolution: field.resolution(view.aperture),
      detail: function (b) { return b.p.width * scale; } };
    var r = here.radius * scale;
    ctx.setTransform(density, 0, 0, density, 0, 0);
    ctx.lineCap = ctx.lineJoin = "round";
    ctx.globalAlpha = 1;
    ctx.fillStyle = view.paper;
    ctx.fillRect(0, 0, view.pixels, view.pixels);
    var shown = here.bodies.filter(function (b) { return field.seen(b.p.length, b.p.width, pen.resolution); });
    if (view.trails) { trails(pen, shown); }
    shown.forEach(function (b) {
      var look = b.look;
      if (Math.hypot(b.x, b.y) > here.radius + (look.far || 1) * b.reach) { return; }
      if (look.mote || pen.detail(b) >= (look.from || FROM)) { field.portray(pen, b); } else { silhouette(pen, b, look); }
    });
    ctx.setTransform(density, 0, 0, density, density * pen.middle, density * pen.middle);
    rim(pen, r);
    scaleBar(pen, here, view);
  };

  /* Cuts off what stands outside the field: one pass, where a clip would slow every stroke. */
  function rim(pen, r) {
    var ctx = pen.ctx, out = pen.middle + 1;
    ctx.globalCompositeOperation = "destination-out";
    ctx.beginPath();
    ctx.rect(-out, -out, 2 * out, 2 * out);
    ctx.arc(0, 0, r, 0, TURN);
    ctx.fill("evenodd");
    ctx.globalCompositeOperation = "source-over";
    ctx.strokeStyle = pen.ink;
    ctx.lineWidth = 2;
    ctx.beginPath();
    ctx.arc(0, 0, r, 0, TURN);
    ctx.stroke();
  }

  /* At low power: a hair for a worm, a speck for the rest. `pale` looks are clear cells, missed at low power. */
  function silhouette(pen, b, look) {
    var ctx = pen.ctx, l = b.p.length * pen.scale, w = b.p.width * pen.scale;
    field.place(pen, b.x, b.y, look.upright ? b.heading : b.facing);
    field.fine(pen, 1, 0.85);
    if (look.hair) {
      ctx.lineWidth = Math.max(0.9, 0.8 * w) / pen.scale;
      ctx.beginPath();
      look.hair(b, Math.max(8, Math.min(28, Math.round(l / 3)))).forEach(function (p, i) {
        if (i) { ctx.lineTo(p[0], p[1]); } else { ctx.moveTo(p[0], p[1]); }
      });
      ctx.stroke();
    } else {
      var blur = pen.resolution * pen.scale, size = Math.sqrt(b.p.length * b.p.width);
      ctx.globalAlpha = look.tone * Math.min(1, Math.pow(size / pen.resolution, 2) / 4 + 0.2);
      ctx.beginPath();
      ctx.ellipse(0, 0, Math.max(0.65, Math.hypot((b.extent || b.p.length) * pen.scale, blur / 2) / 2) / pen.scale,
        Math.max(0.65, Math.hypot(w, blur / 2) / 2) / pen.scale, 0, 0, TURN);
      ctx.fill();
      if (l > 5 && look.tone > 0.3) {
        ctx.lineWidth = 0.7 / pen.scale;
        ctx.globalAlpha = 0.9;
        ctx.stroke();
      }
    }
    ctx.globalAlpha = 1;
  }

  /* Where each went in the last seconds: a line, with a dot for every second. */
  function trails(pen, bodies) {
    var ctx = pen.ctx, every = Math.round(1 / field.TRAIL_STEP), k = pen.scale;
    ctx.setTransform(pen.density, 0, 0, pen.density, pen.density * pen.middle, pen.density * pen.middle);
    ctx.strokeStyle = ctx.fillStyle = pen.ink;
    ctx.lineWidth = 0.9;
    ctx.globalAlpha = 0.42;
    ctx.beginPath();
    bodies.forEach(function (b) {
      for (var i = 0, x, y; i < b.trail.length; i += 3) {
        var nx = b.trail[i] * k, ny = b.trail[i + 1] * k;
        if (i && b.trail[i + 2] === b.trail[i - 1]) {
          if (Math.abs(nx - x) + Math.abs(ny - y) < 1) { continue; }   // too close to be told apart
          ctx.lineTo(nx, ny);
        } else {
          ctx.moveTo(nx, ny);
        }
        x = nx;
        y = ny;
      }
      if (b.trail.length && b.trail[b.trail.length - 1] === b.entries) { ctx.lineTo(b.x * k, b.y * k); }
    });
    ctx.stroke();
    ctx.globalAlpha = 0.75;
    ctx.beginPath();
    bodies.forEach(function (b) {                     // none on a jiggle: they would hide it
      if (b.trail.length && Math.hypot(b.x - b.trail[0], b.y - b.trail[1]) * k < 6 && b.trail[2] === b.entries) { return; }
      for (var i = b.trail.length - 3 * every; i >= 0; i -= 3 * every) { field.spot(ctx, b.trail[i] * k, b.trail[i + 1] * k, 1.5); }
    });
    ctx.fill();
    ctx.globalAlpha = 1;
  }

  /* A bar of a round length, near a fifth of the field. */
  function barLength(diameter) {
    var wanted = diameter / 5, ten = Math.pow(10, Math.floor(Math.log10(wanted)));
    return [1, 2, 5, 10].map(function (n) { return n * ten; }).reduce(function (best, each) {
      return Math.abs(Math.log(each / wanted)) < Math.abs(Math.log(best / wanted)) ? each : best;
    });
  }

  /* In the lower right corner, outside the round field, so that it hides nothing. */
  function scaleBar(pen, here, view) {
    var ctx = pen.ctx, length = barLength(here.diameter), edge = pen.middle - 1;
    ctx.font = view.font || "13px sans-serif";
    ctx.textAlign = "right";
    ctx.textBaseline = "bottom";
    ctx.fillStyle = view.ink;
    ctx.fillText(length >= 1000 ? length / 1000 + " mm" : length + " µm", edge, edge - 6);
    ctx.fillRect(edge - length * pen.scale, edge - 3, length * pen.scale, 3);
  }
})(self.WetmountField);
