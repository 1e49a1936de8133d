/* Flagellates: a small body, and whips that are drawn anew at every frame. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around, made = field.made, whip = field.whip;

  /* A flagellate: outline(l, w), grains that show from 4 pixels on, whips(ctx, b, l, w), and what is its own inside. */
  function flagellate(o) {
    return {
      tone: o.tone || 0.4, poses: o.poses || 1, box: o.box, live: o.live,
      under: function (pen, b) {
        pen.ctx.beginPath();
        o.whips(pen.ctx, b, b.p.length, b.p.width);
        field.fine(pen, 0.7, 0.6);
        pen.ctx.stroke();
        if (o.stiff) { o.stiff(pen, b, b.p.length, b.p.width); }
      },
      paint: function (pen, b, turn) {
        var l = b.p.length, w = b.p.width;
        field.solid(pen, field.closed(o.outline(l, w, b, turn)), o.weight || 1.1);
        if (o.inside) { o.inside(pen, b, l, w, turn); }
        if (pen.detail(b) < 4 || !o.grains) { return; }
        field.fine(pen, 1, 0.7);
        field.turningGrains(pen, field.strewn(b, o.grains, 0.85 * l, 0.85 * w, 0.06 * w), turn);
      }
    };
  }

  function spindle(front, rear, bulge) {
    return function (l, w) {
      return around(36, function (a) {
        var u = Math.cos(a);
        return [l / 2 * u, w / 2 * Math.sin(a) * Math.pow((1.15 + u) / 2.15, rear) * Math.pow((1.15 - u) / 2.15, front) * bulge];
      });
    };
  }

  looks.flagellate = flagellate({
    tone: 0.45, grains: 7, poses: 8,
    outline: function (l, w) { return field.oval(l, w, 0.22); },
    whips: function (ctx, b, l, w) {
      var run = b.state === "run" ? 1 : 0.4;
      whip(ctx, 0.42 * l, -0.15 * w, -0.5, 0.9 * l, 0.28 * l * run, 1.5, b.age * 40 * run);
      whip(ctx, 0.4 * l, 0.15 * w, Math.PI + 0.1, 2.3 * l, 0.18 * l, 1.2, b.age * 12 * run);
    }
  });

  looks["gliding-flagellate"] = flagellate({
    tone: 0.35, grains: 8, outline: spindle(0, 0.7, 1.25),
    whips: function (ctx, b, l, w) {
      whip(ctx, 0.48 * l, 0, 0.15, 0.7 * l, 0.16 * l, 1, b.phase);
      whip(ctx, 0.4 * l, 0.2 * w, Math.PI, 2.1 * l, 0.05 * l, 0.8, 0.3 * b.phase);
    }
  });

  /* Roundish; the whip behind lies on the glass, the stub in front hardly shows. */
  looks["round-gliding-flagellate"] = flagellate({
    tone: 0.35, grains: 6, outline: function (l, w) { return field.oval(l, w, -0.06); },
    whips: function (ctx, b, l) {
      whip(ctx, 0.45 * l, 0, 0.3, 0.3 * l, 0.1 * l, 1, b.age * 18);
      whip(ctx, -0.3 * l, 0, Math.PI - 0.04 * Math.sin(b.phase), 1.7 * l, 0.06 * l, 0.6, b.age * 3);
    }
  });

  /* A finger-like snout that waves in front, and one whip behind. */
  looks["snout-flagellate"] = flagellate({
    tone: 0.3, grains: 5, outline: function (l, w) { return field.oval(l, w, 0.1); },
    whips: function (ctx, b, l) { whip(ctx, -0.2 * l, 0.1 * l, Math.PI, 2 * l, 0.06 * l, 0.8, 0.3 * b.phase); },
    stiff: function (pen, b, l, w) {
      var swing = 0.7 * Math.sin(b.age * 5), ctx = pen.ctx;
      ctx.beginPath();
      ctx.moveTo(0.42 * l, 0);
      ctx.quadraticCurveTo(0.66 * l, 0.05 * w, 0.66 * l + 0.28 * l * Math.cos(swing), 0.28 * l * Math.sin(swing));
      field.fine(pen, Math.max(1.1, 0.16 * w * pen.scale), 0.55);
      ctx.stroke();
    }
  });

  /* Stiff and grooved: one whip sweeps in front, a thicker one drags behind, a rod lies in the body. */
  looks["grooved-flagellate"] = flagellate({
    tone: 0.45, grains: 10, outline: function (l, w) { return field.oval(l, w, 0.08); },
    whips: function (ctx, b, l) {
      whip(ctx, 0.48 * l, 0, 0.5 * Math.sin(b.age * 6), 0.8 * l, 0.1 * l, 0.8, b.age * 14);
    },
    stiff: function (pen, b, l, w) {
      pen.ctx.beginPath();
      whip(pen.ctx, 0.4 * l, 0.1 * w, Math.PI + 0.03, 2 * l, 0.06 * l, 0.5, b.age);
      field.fine(pen, 1.2, 0.8);
      pen.ctx.stroke();
    },
    inside: function (pen, b, l, w) {
      var grooves = new Path2D();
      [-0.32, -0.1, 0.28].forEach(function (y) {
        grooves.moveTo(0.4 * l, 0.6 * y * w);
        grooves.quadraticCurveTo(0, 1.15 * y * w, -0.42 * l, 0.5 * y * w);
      });
      field.strokes(pen, grooves, 0.7, 0.7);
      field.strokes(pen, field.lines([[0.42 * l, 0.06 * w, -0.2 * l, 0.06 * w]]), 1.5, 0.85);
    }
  });

  /* A green cell with a cup of chloroplast behind, a red spot, and two whips that beat like a breast-stroke. */
  looks["twin-whip-green"] = flagellate({
    tone: 0.7, poses: 10, outline: function (l, w) { return field.oval(l, w, 0.1); },
    whips: function (ctx, b, l) {
      var stroke = 0.5 + 0.5 * Math.sin(b.age * 45);
      [-1, 1].forEach(function (side) {
        var way = side * (0.5 + 1.9 * stroke);
        ctx.moveTo(0.48 * l, side * 0.03 * l);
        ctx.quadraticCurveTo(0.72 * l, side * 0.3 * l, 0.5 * l + 0.95 * l * Math.cos(way), 0.95 * l * Math.sin(way));
      });
    },
    inside: function (pen, b, l, w, turn) {
      var cup = new Path2D(), eye = new Path2D();
      cup.ellipse(-0.04 * l, 0, 0.42 * l, 0.43 * w, 0, 0.75, TURN - 0.75);
      cup.quadraticCurveTo(-0.16 * l, 0, 0.26 * l, 0.3 * w);
      cup.closePath();
      field.tone(pen, cup, 0.5);
      field.strokes(pen, cup, 0.7, 0.7);
      if (Math.cos(turn) > -0.2) {
        field.spot(eye, 0.16 * l, 0.4 * w * Math.sin(turn), Math.max(0.07 * w, 0.8 / pen.scale));
        field.tone(pen, eye, 1);
      }
    }
  });

  /* Slanted in front, with a notch from which two whips come. */
  looks["notched-flagellate"] = flagellate({
    tone: 0.55, grains: 10, poses: 10,
    outline: function (l, w) {
      return around(36, function (a) {
        var u = Math.cos(a), v = Math.sin(a), cut = v > 0 ? Math.max(0, u - 0.45) / 0.55 : 0;
        return [l / 2 * (u - 0.35 * cut * cut), w / 2 * (v * (1 + 0.12 * u) - 0.2 * cut)];
      });
    },
    whips: function (ctx, b, l, w) {
      whip(ctx, 0.36 * l, 0.16 * w, 0.35, 0.8 * l, 0.2 * l, 1.2, b.age * 45);
      whip(ctx, 0.34 * l, 0.18 * w, 0.75, 0.7 * l, 0.2 * l, 1.2, b.age * 41);
    },
    inside: function (pen, b, l, w, turn) {
      var gullet = field.lines([[0.36 * l, 0.14 * w, 0.02 * l, 0.02 * w]]), plastid = new Path2D();
      plastid.ellipse(-0.06 * l, 0.2 * w * Math.sin(turn), 0.32 * l, 0.2 * w, 0, 0, TURN);
      field.tone(pen, plastid, 0.22);
      field.strokes(pen, gullet, 1, 0.8);
    }
  });

  /* A clear ball that trails the thread it sticks by; one long whip and a stub. */
  looks["ball-flagellate"] = flagellate({
    tone: 0.4, grains: 6, poses: 8, box: [0.6, 0.6], outline: function (l, w) { return field.oval(l, w, 0.03); },
    whips: function (ctx, b, l) {
      whip(ctx, 0.46 * l, 0, 0.1, 1.8 * l, 0.22 * l, 1.4, b.age * 45);
      whip(ctx, 0.44 * l, 0.12 * l, 0.8, 0.4 * l, 0.08 * l, 1, b.age * 30);
      if (b.motion === field.motions.rock) { tether(ctx, b, l, 1.6); }
    }
  });

  /* A drop on a stalk, with one whip in a faint collar. */
  looks["collar-flagellate"] = flagellate({
    tone: 0.3, grains: 5, outline: function (l, w) { return field.oval(l, w, 0.2); },
    whips: function (ctx, b, l) {
      whip(ctx, 0.46 * l, 0, 0, 2 * l, 0.22 * l, 1.2, b.age * 30);
      tether(ctx, b, l, 2);
    },
    stiff: function (pen, b, l, w) {
      field.strokes(pen, made(b, "collar", function () {
        return field.lines([[0.4 * l, -0.28 * w, 1.05 * l, -0.5 * w], [0.4 * l, 0.28 * w, 1.05 * l, 0.5 * w]]);
      }), 0.6, 0.45);
    }
  });

  /* The thread by which a cell is stuck: it starts at a place that does not rock with it. */
  function tether(ctx, b, l, far) {
    var back = Math.PI + b.heading - b.facing;
    ctx.moveTo(-0.45 * l, 0);
    ctx.quadraticCurveTo(-0.8 * l, 0, far * l * Math.cos(back), far * l * Math.sin(back));
  }

  /* A pear with two like whips from its front. */
  looks["pear-flagellate"] = flagellate({
    tone: 0.4, grains: 8, poses: 8, outline: function (l, w) { return field.oval(l, w, 0.28); },
    whips: function (ctx, b, l) {
      whip(ctx, 0.47 * l, 0, 0.4, 1.1 * l, 0.16 * l, 1.3, b.age * 42);
      whip(ctx, 0.47 * l, 0, -0.4, 1.1 * l, 0.16 * l, 1.3, b.age * 38);
    }
  });

  /* A little sausage; its one whip that shows lies on the glass behind. */
  looks["sausage-flagellate"] = flagellate({
    tone: 0.4, grains: 6,
    outline: function (l, w) { return around(36, function (a) { return [l / 2 * Math.cos(a), w / 2 * Math.sign(Math.sin(a)) * Math.pow(Math.abs(Math.sin(a)), 0.7)]; }); },
    whips: function (ctx, b, l) { whip(ctx, 0.1 * l, 0.1 * l, Math.PI, 2 * l, 0.05 * l, 0.7, 0.3 * b.phase); }
  });

  /* A bean with both whips in the hollow of its side, one ahead and one behind; the hollow comes round as it turns.
   * Settled, it loses the whips and is a ball with a wall, as wide as its figure `ball` says. */
  looks["swimming-spore"] = flagellate({
    tone: 0.5, grains: 10, live: true,
    outline: function (l, w, b, turn) {
      var round = b.round || 0, ball = b.p.ball / 2 || 0, side = Math.cos(turn);
      return around(36, function (a) {
        var u = Math.cos(a), v = Math.sin(a), hollow = v * side > 0 ? 0.45 * Math.abs(side) * Math.exp(-u * u / 0.08) : 0;
        return [(1 - round) * l / 2 * u + round * ball * u, (1 - round) * w / 2 * v * (1 - hollow) + round * ball * v];
      });
    },
    inside: function (pen, b) {
      if (b.round === 1) {
        var wall = new Path2D();
        field.spot(wall, 0, 0, Math.max(0.5, b.p.ball / 2 - 1.1 / pen.scale));
        field.strokes(pen, wall, 0.9, 0.8);
      }
    },
    whips: function (ctx, b, l, w) {
      var left = Math.max(0, 1 - 3 * (b.round || 0)), from = 0.28 * w * Math.cos(b.phase);
      if (!left) { return; }
      var beat = b.state === "rounding" ? 4 : 45;
      whip(ctx, 0, from, 0.35, 1.2 * l * left, 0.14 * l, 1.3, b.age * beat);
      whip(ctx, 0, from, Math.PI - 0.25, 1.5 * l * left, 0.08 * l, 0.8, b.age * beat / 3);
    }
  });
})(self.WetmountField);
