/* Bodies that are the entry's own drawing: the page gives its lines by part, and here they are only turned, bent, stretched.
 *
 * mover.shape: { wide, reach: [along, aside], grain, marks: [[how, moves, ink, weight, lines, feet], ...] }, in shares of the body's
 * length, its middle at 0, 0 and its head towards +x. mover.deforms says what its motion does to it; see deforms.js.
 */
(function (field) {
  "use strict";
  var TURN = field.TURN, made = field.made;
  var POSES = 12;                     // of one turn or one step
  var BEATS = 3;                      // of a coat of hairs
  var INSIDE = 5, FINE = 9;           // pixels across from which there is something inside to see; from which its fine lines show
  var GAP = 0.03;                     // of the length, between two points of a line that is bent
  var BINS = 48;                      // stretches of a body's length, for its girth
  var BENDS = ["bend", "sway", "lie", "path", "squeeze", "stretch", "round"];
  var PALE = ["flow", "path"];

  /* The marks of a shape as numbers, read once. */
  function read(shape, bends) {
    if (!shape.read) {
      var marks = shape.marks.map(function (m) {
        var lines = m[4].split(";").map(function (text) {
          var words = text.split(" "), line = new Float32Array(words.length);
          for (var i = 0, x = 0, y = 0; i < words.length; i += 2) {
            line[i] = (x += Number(words[i])) / shape.grain;
            line[i + 1] = (y += Number(words[i + 1])) / shape.grain;
          }
          return bends && m[0] !== "dots" ? finer(line, m[0] !== "line") : line;
        });
        return { how: m[0], moves: m[1], ink: m[2], weight: m[3], lines: lines, feet: m[5] };
      });
      shape.read = { marks: marks, girth: girth(marks, shape.wide) };
    }
    return shape.read;
  }

  /* The same line with points close enough to be bent. */
  function finer(line, closed) {
    var out = [];
    for (var i = 0; i < line.length; i += 2) {
      var j = i + 2 < line.length ? i + 2 : closed ? 0 : i, dx = line[j] - line[i], dy = line[j + 1] - line[i + 1];
      var many = Math.max(1, Math.ceil(Math.hypot(dx, dy) / GAP));
      for (var n = 0; n < many; n++) { out.push(line[i] + dx * n / many, line[i + 1] + dy * n / many); }
    }
    return Float32Array.from(out);
  }

  /* For each stretch of the length the middle and half the width of the body's edge. */
  function girth(marks, wide) {
    var low = [], high = [], out = [];
    marks.filter(function (m) { return m.how === "edge"; }).forEach(function (m) {
      m.lines.forEach(function (line) {
        for (var i = 0; i < line.length; i += 2) {
          var j = (i + 2) % line.length;
          for (var n = 0; n <= 8; n++) {
            var x = line[i] + (line[j] - line[i]) * n / 8, y = line[i + 1] + (line[j + 1] - line[i + 1]) * n / 8;
            var at = Math.max(0, Math.min(BINS - 1, Math.floor((x + 0.5) * BINS)));
            low[at] = Math.min(y, low[at] === undefined ? y : low[at]);
            high[at] = Math.max(y, high[at] === undefined ? y : high[at]);
          }
        }
      });
    });
    for (var i = 0; i < BINS; i++) {
      out.push(low[i] === undefined || high[i] - low[i] < 0.02 * wide ? [0, wide / 2] : [(low[i] + high[i]) / 2, (high[i] - low[i]) / 2]);
    }
    return out;
  }

  field.girthAt = function (girths, x) { return girths[Math.max(0, Math.min(BINS - 1, Math.floor((x + 0.5) * BINS)))]; };

  /* One line onto a path through put([x, y], x, y, the line where it begins). */
  function run(path, line, put, closed) {
    var p = [0, 0];
    for (var i = 0; i < line.length; i += 2) {
      put(p, line[i], line[i + 1], i ? null : line);
      if (i) { path.lineTo(p[0], p[1]); } else { path.moveTo(p[0], p[1]); }
    }
    if (closed) { path.closePath(); }
  }

  function pathOf(mark, put) {
    var path = new Path2D();
    mark.lines.forEach(function (line) { run(path, line, put, mark.how !== "line"); });
    return path;
  }

  function inked(pen, mark, weight, alpha) {
    field.fine(pen, weight, mark.ink === "faint" ? 0.5 * alpha : alpha);
    if (mark.ink[0] === "#") { pen.ctx.strokeStyle = pen.ctx.fillStyle = mark.ink; }
  }

  function draw(pen, b, mark, put) {
    var ctx = pen.ctx, path, p = [0, 0], least = 0.45 / pen.scale;
    if (mark.how === "dots") {
      ctx.beginPath();
      mark.lines.forEach(function (line) {
        for (var i = 0; i < line.length; i += 2) {
          if (put(p, line[i], line[i + 1]) !== false) { ctx.rect(p[0] - least, p[1] - least, 2 * least, 2 * least); }
        }
      });
      inked(pen, mark, 1, 0.7);
      ctx.fill();
      return;
    }
    path = pathOf(mark, put);
    if (mark.how === "edge") {
      field.solid(pen, path, Math.min(1.6, 0.55 + 0.4 * mark.weight));
    } else if (mark.how === "cover") {
      field.cover(pen, path);
    } else {
      inked(pen, mark, Math.max(0.5, 0.5 * mark.weight), mark.how === "fill" ? 0.9 : 0.8);
      if (mark.how === "fill") { ctx.fill(path); } else { ctx.stroke(path); }
    }
  }

  /* What of a mark is to be seen at this size: all; from 9 pixels across its fine lines; under 5 its edge. */
  function shows(mark, across) {
    return mark.how === "edge" || mark.moves === "step" || across >= FINE || across >= INSIDE && mark.weight >= 1 && mark.how !== "dots";
  }

  function self(mark) { return mark.moves === "beat" || mark.moves === "wave" || mark.moves === "reach" || mark.moves === "pulse"; }

  function poseOf(b) {
    var turns = b.phase / TURN;
    return Math.floor((turns - Math.floor(turns)) * POSES) % POSES;
  }

  /* Hairs swing about their feet, a wave running along the coat. */
  function coat(b, shape, put, beat) {
    var path = new Path2D(), p = [0, 0];
    shape.marks.forEach(function (mark) {
      if (mark.moves !== "beat") { return; }
      mark.lines.forEach(function (line) {
        var swing = 0.32 * Math.sin(TURN * (beat / BEATS + 2.2 * line[0])), c = Math.cos(swing), s = Math.sin(swing);
        for (var i = 0; i < line.length; i += 2) {
          var dx = line[i] - line[0], dy = line[i + 1] - line[1];
          put(p, line[0] + dx * c - dy * s, line[1] + dx * s + dy * c);
          if (i) { path.lineTo(p[0], p[1]); } else { path.moveTo(p[0], p[1]); }
        }
        if (mark.how !== "line") { path.closePath(); }
      });
    });
    return path;
  }

  /* A whip keeps its course while a wave runs out along it. */
  function whip(path, b, line, put) {
    var p = [0, 0], last = line.length - 2, running = b.state === "run" || b.state === "slow";
    var length = 0, gone = 0, i;
    for (i = 2; i <= last; i += 2) { length += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]); }
    for (i = 0; i <= last; i += 2) {
      var back = Math.max(0, i - 2), on = Math.min(last, i + 2), dx = line[on] - line[back], dy = line[on + 1] - line[back + 1], d = Math.hypot(dx, dy) || 1;
      if (i) { gone += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]); }
      var share = gone / length, aside = (running ? 0.07 : 0.025) * length * share * Math.sin(TURN * 1.4 * share - b.age * (running ? 26 : 6));
      put(p, line[i] - dy / d * aside, line[i + 1] + dx / d * aside);
      if (i) { path.lineTo(p[0], p[1]); } else { path.moveTo(p[0], p[1]); }
    }
  }

  /* What moves of itself is drawn at every frame, from the same lines. */
  function stir(pen, b, look, put) {
    var ctx = pen.ctx, across = pen.detail(b);
    if (across >= INSIDE && look.hairy) {
      var pose = look.live ? 0 : poseOf(b), beat = Math.floor(b.age * 14) % BEATS;
      var hairs = look.live ? coat(b, look.shape, put(null), beat) : made(b, "hairs " + pose + " " + beat, function () { return coat(b, look.shape, put(null), beat); });
      field.fine(pen, 0.75, 0.75);
      ctx.stroke(hairs);
    }
    look.shape.marks.forEach(function (mark) {
      if (mark.moves === "wave") {
        ctx.beginPath();
        mark.lines.forEach(function (line) { whip(ctx, b, line, put(null)); });
        field.fine(pen, 0.8, 0.7);
        ctx.stroke();
      } else if (mark.moves === "pulse" && across >= INSIDE) {
        var full = ((b.age + b.grain % 97) % 12) / 12, size = 0.2 + 0.8 * Math.sqrt(full), there = put(mark);
        mark.lines.forEach(function (line) {
          var mx = 0, my = 0, many = line.length / 2;
          for (var i = 0; i < line.length; i += 2) { mx += line[i] / many; my += line[i + 1] / many; }
          ctx.beginPath();
          run(ctx, line, function (p, x, y) { there(p, mx + size * (x - mx), my + size * (y - my)); }, true);
          field.fine(pen, 0.8, 0.8);
          ctx.stroke();
        });
      }
    });
  }

  /* Arms are put out from their feet as far as it reaches now. */
  function reaching(pen, b, look, put) {
    var out = b.arm === undefined ? 1 : b.arm, ctx = pen.ctx, there = put(null);
    if (out < 0.05) { return; }
    ctx.beginPath();
    look.shape.marks.forEach(function (mark) {
      if (mark.moves !== "reach") { return; }
      mark.lines.forEach(function (line) {
        run(ctx, line, function (p, x, y) { there(p, line[0] + out * (x - line[0]), line[1] + out * (y - line[1])); }, mark.how !== "line");
      });
    });
    field.fine(pen, 0.8, 0.75);
    ctx.stroke();
  }

  /* What its motion does to it; what has legs steps, and a long body that keeps its shape lies in a slight curve. */
  function deformOf(mover) {
    var keeps = mover.deforms === "keep", walks = mover.shape.marks.some(function (m) { return m[1] === "step"; });
    if (walks && (keeps || mover.deforms === "roll")) { return "step"; }
    return mover.shape.lined && keeps ? mover.parameters.sway ? "sway" : "lie" : mover.deforms;
  }

  /* The look of a mover with a shape. */
  field.drawnLook = function (mover) {
    if (mover.look) { return mover.look; }
    var lies = deformOf(mover), bends = BENDS.indexOf(lies) >= 0;
    var shape = read(mover.shape, bends || lies === "flow"), deform = field.deforms[lies], wide = mover.shape.wide, reach = mover.shape.reach;
    var look = mover.look = {
      shape: shape, wide: wide, belly: mover.shape.belly, tone: PALE.indexOf(lies) < 0 ? 0.6 : 0.2, live: bends,
      upright: lies === "path", poses: lies === "roll" || lies === "step" ? POSES : 1,
      fresh: lies === "flow" ? 0.3 : 0, from: 3, far: 1, hairy: shape.marks.some(function (m) { return m.moves === "beat"; })
    };
    var spread = lies === "flow" ? 1.35 : lies === "step" ? 1.12 : 1.02;
    look.square = lies === "step" || lies === "flow";
    look.box = [spread * reach[0], spread * reach[1] / wide];
    if (lies === "bend") { look.hair = function (b, points) { return field.waveLine(b, points); }; }
    look.paint = function (pen, b, turn) {
      var put = deform(b, look, turn), across = pen.detail(b);
      shape.marks.forEach(function (mark) {
        if (!self(mark) && shows(mark, across)) { draw(pen, b, mark, put(mark)); }
      });
      if (across < INSIDE) {
        shape.marks.forEach(function (mark) {
          if (mark.how === "edge") { field.tone(pen, pathOf(mark, put(mark)), 0.3); }
        });
      }
    };
    if (shape.marks.some(function (m) { return m.moves === "reach"; })) {
      look.under = function (pen, b) { reaching(pen, b, look, deform(b, look, b.phase)); };
    }
    if (shape.marks.some(self)) {
      look.over = function (pen, b) { stir(pen, b, look, deform(b, look, look.live ? b.phase : TURN * (poseOf(b) + 0.5) / POSES)); };
    }
    return look;
  };
})(self.WetmountField);
