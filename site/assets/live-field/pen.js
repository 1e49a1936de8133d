/* The pen: where a body lies on the canvas, its two inks, and pictures of a body that are kept.
 *
 * A look (of a drawing that moves: drawn.js; `looks` holds those of bodies that have none): paint(pen, b, turn) draws it about 0, 0 with its head towards +x, and
 * is called once for each of its `poses` (or again after `fresh` seconds) into a picture that is kept;
 * under(pen, b) and over(pen, b) draw at every frame what beats or flickers. `box` gives half the
 * length and half the width that paint needs, in body lengths and widths, or is a function that does; `upright` bodies do not turn;
 * `live` ones are drawn anew at every frame.
 */
(function (field) {
  "use strict";
  var TURN = field.TURN;
  var MOST = 6e6;                     // pixels in all poses of one body; where it would take more, it is drawn anew each time
  var MARGIN = 3;                     // pixels about a picture
  field.looks = {};

  /* Puts 0, 0 of the drawing at a body, its head along `angle`; from then on lengths are µm. */
  field.place = function (pen, x, y, angle) {
    var k = pen.scale * pen.density, c = k * Math.cos(angle), s = k * Math.sin(angle);
    pen.angle = angle;
    pen.ctx.setTransform(c, s, -s, c, pen.density * (pen.middle + x * pen.scale), pen.density * (pen.middle + y * pen.scale));
  };

  field.fine = function (pen, weight, alpha) {
    var ctx = pen.ctx;
    ctx.strokeStyle = ctx.fillStyle = pen.ink;
    ctx.globalAlpha = alpha;
    ctx.lineWidth = weight / pen.scale;
  };

  /* Fills a shape with paper, so that what lies under it does not show. */
  field.cover = function (pen, path) {
    pen.ctx.globalAlpha = 1;
    pen.ctx.fillStyle = pen.paper;
    pen.ctx.fill(path);
    pen.ctx.fillStyle = pen.ink;
  };

  /* The line is heavier on the side away from the light, at the lower right, however the body lies. */
  function shade(pen, path, weight) {
    var ctx = pen.ctx, far = 0.45 * weight / pen.scale, c = Math.cos(pen.angle), s = Math.sin(pen.angle);
    field.fine(pen, 1.3 * weight, 1);
    ctx.translate(far * (c + s), far * (c - s));
    ctx.stroke(path);
    ctx.translate(-far * (c + s), -far * (c - s));
  }

  /* An outline with paper inside. */
  field.solid = function (pen, path, weight) {
    if (pen.kept) { pen.kept.push([path, weight]); } else { shade(pen, path, weight); }
    field.fine(pen, 1.3 * weight, 1);
    pen.ctx.stroke(path);
    field.cover(pen, path);
  };

  field.tone = function (pen, path, alpha) {
    field.fine(pen, 1, alpha);
    pen.ctx.fill(path);
  };

  field.strokes = function (pen, path, weight, alpha) {
    field.fine(pen, weight, alpha);
    pen.ctx.stroke(path);
  };

  /* A clear bubble that fills and vanishes. */
  field.bubble = function (pen, b, x, y, most, period) {
    var ctx = pen.ctx, full = ((b.age + b.grain % 97) % period) / period;
    ctx.beginPath();
    field.spot(ctx, x, y, most * (0.15 + 0.85 * Math.sqrt(full)));
    ctx.fillStyle = pen.paper;
    ctx.globalAlpha = 1;
    ctx.fill();
    field.fine(pen, 0.8, 0.8);
    ctx.stroke();
  };

  /* What of a body need be made only once, by name. */
  field.made = function (b, name, make) {
    if (!b.art) { b.art = {}; }
    if (b.art[name] === undefined) { b.art[name] = make(); }
    return b.art[name];
  };

  /* One body, from its look. */
  field.portray = function (pen, b) {
    var look = b.look;
    field.place(pen, b.x, b.y, look.upright ? 0 : b.facing);
    if (look.under) { look.under(pen, b); }
    var picture = look.live ? null : pictureOf(pen, b, look);
    if (picture) {
      picture.kept.forEach(function (each) { shade(pen, each[0], each[1]); });
      pen.ctx.globalAlpha = 1;
      pen.ctx.drawImage(picture.canvas, -picture.half[0], -picture.half[1], 2 * picture.half[0], 2 * picture.half[1]);
    } else {
      look.paint(pen, b, b.phase);
    }
    if (look.over) { look.over(pen, b); }
    pen.ctx.globalAlpha = 1;
  };

  /* The kept picture of a body as it is posed now; null where it would be too large to keep. */
  function pictureOf(pen, b, look) {
    var box = typeof look.box === "function" ? look.box(b) : look.box || [0.56, 0.62], most = look.square ? Math.max(box[0] * b.p.length, box[1] * b.p.width) : 0;
    var half = [(most || box[0] * b.p.length) + MARGIN / pen.scale, (most || box[1] * b.p.width) + MARGIN / pen.scale];
    var wide = Math.ceil(2 * half[0] * pen.scale * pen.density), high = Math.ceil(2 * half[1] * pen.scale * pen.density);
    var poses = look.poses || 1;
    if (wide * high * poses > MOST) { return null; }
    if (b.pictured !== pen.key) {
      b.pictured = pen.key;
      b.pictures = [];
    }
    var turned = look.turn ? look.turn(b) : b.phase / TURN;
    var pose = Math.floor((turned - Math.floor(turned)) * poses) % poses, kept = b.pictures[pose];
    var stamp = look.fresh ? Math.floor(b.age / look.fresh + b.grain % 64 / 64) : 0;
    if (!kept || kept.stamp !== stamp) {
      kept = b.pictures[pose] = { stamp: stamp, half: half, kept: [], canvas: kept ? kept.canvas : pen.ctx.canvas.ownerDocument.createElement("canvas") };
      kept.canvas.width = wide;       // setting it also clears it
      kept.canvas.height = high;
      look.paint(onPicture(pen, kept), b, TURN * (pose + 0.5) / poses);
    }
    return kept;
  }

  function onPicture(pen, picture) {
    var ctx = picture.canvas.getContext("2d"), k = pen.scale * pen.density;
    ctx.lineCap = ctx.lineJoin = "round";
    ctx.setTransform(k, 0, 0, k, picture.canvas.width / 2, picture.canvas.height / 2);
    return Object.assign({}, pen, { ctx: ctx, angle: 0, kept: picture.kept });
  }
})(self.WetmountField);
