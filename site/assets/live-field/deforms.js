/* What a motion does to the lines of a body: deforms[name](b, look, turn) gives put(mark), which gives at(p, x, y): where a point of
 * the drawing (shares of the length) comes to lie, in µm. put(null) is for what stands out from the body. At rest each gives the
 * drawing as it is.
 */
(function (field) {
  "use strict";
  var TURN = field.TURN;
  var AROUND = 48;                    // directions in which a flowing cell is measured

  /* The mean y of a line's points. */
  field.middleOf = function (line) {
    if (line.middle === undefined) {
      line.middle = 0;
      for (var i = 1; i < line.length; i += 2) { line.middle += 2 * line[i] / line.length; }
    }
    return line.middle;
  };

  function plain(b) {
    var l = b.p.length;
    return function (p, x, y) { p[0] = l * x; p[1] = l * y; };
  }

  function keep(b) {
    var at = plain(b);
    return function () { return at; };
  }

  /* About the long axis: the edge swings to its other side as the body turns; what lies in the skin goes round with it. */
  function roll(b, look, turn) {
    var l = b.p.length, c = Math.cos(turn), girths = look.shape.girth;
    function edge(p, x, y) {
      var g = field.girthAt(girths, x);
      p[0] = l * x;
      p[1] = l * (g[0] * c + y - g[0]);
    }
    function inside(p, x, y) {
      p[0] = l * x;
      p[1] = l * c * y;
    }
    function ball() {                 // what is round keeps its girth, and goes from side to side
      var middle = 0;
      return function (p, x, y, line) {
        if (line) { middle = field.middleOf(line); }
        p[0] = l * x;
        p[1] = l * (c * middle + y - middle);
      };
    }
    function skin(p, x, y) {
      var g = field.girthAt(girths, x), a = Math.asin(Math.max(-1, Math.min(1, (y - g[0]) / g[1]))) + turn;
      p[0] = l * x;
      p[1] = l * (g[0] * c + g[1] * Math.sin(a));
      return Math.cos(a) > -0.1;
    }
    return function (mark) {
      return mark && (mark.how === "dots" || mark.moves === "skin") ? skin : !mark || mark.how === "edge" || mark.moves ? edge : mark.how === "line" ? inside : ball();
    };
  }

  /* Legs swing about their feet, each after its neighbour and after its fellow on the other side. Where the legs of the near side
   * are part of the edge, all that hangs below the belly swings. */
  function step(b, look, turn) {
    var l = b.p.length, at = plain(b);
    function hanging(p, x, y) {
      var down = Math.max(0, y - look.belly) / (look.wide / 2 - look.belly);
      p[0] = l * (x + 0.035 * down * Math.sin(turn + 2.5 * TURN * x));
      p[1] = l * y;
    }
    return function (mark) {
      if (look.belly !== undefined) { return hanging; }
      return mark && mark.moves === "step" ? swinging(b, mark, turn) : at;
    };
  }

  /* The legs of a mark are told by its feet, three numbers a line; lines come in their order. */
  function swinging(b, mark, turn) {
    var l = b.p.length, n = -1, c = 1, s = 0, fx = 0, fy = 0;
    return function (p, x, y, line) {
      if (line) {
        n = (n + 1) % mark.lines.length;
        fx = mark.feet[3 * n];
        fy = mark.feet[3 * n + 1];
        var swing = 0.24 * Math.sin(turn + Math.PI * mark.feet[3 * n + 2]) * (fy < 0 ? -1 : 1);
        c = Math.cos(swing);
        s = Math.sin(swing);
      }
      p[0] = l * (fx + (x - fx) * c - (y - fy) * s);
      p[1] = l * (fy + (x - fx) * s + (y - fy) * c);
    };
  }

  /* Onto a line of [x, y], head first: a share of the body's length is a share of the line. */
  function along(line, l, girth) {
    var last = line.length - 1, nx = [], ny = [];
    for (var i = 0; i <= last; i++) {
      var q = line[Math.max(i - 1, 0)], r = line[Math.min(i + 1, last)], dx = r[0] - q[0], dy = r[1] - q[1], d = Math.hypot(dx, dy) || 1;
      nx.push(-dy / d);
      ny.push(dx / d);
    }
    return function (p, x, y) {
      var share = 0.5 - x, n = Math.min(Math.max(share, 0), 0.9999) * last, i = Math.floor(n), t = n - i, a = line[i], e = line[i + 1];
      var aside = -l * y * (girth ? girth(share) : 1), over = share < 0 ? share * l : share > 1 ? (share - 1) * l : 0;
      var mx = nx[i] + (nx[i + 1] - nx[i]) * t, my = ny[i] + (ny[i + 1] - ny[i]) * t;
      p[0] = a[0] + (e[0] - a[0]) * t + mx * aside + my * over;
      p[1] = a[1] + (e[1] - a[1]) * t + my * aside - mx * over;
    };
  }

  function always(at) { return function () { return at; }; }

  function bend(b) { return always(along(field.waveLine(b, 36), b.p.length)); }

  /* Its ends bend to one side and the other; the front more than the rear. */
  function sway(b) {
    var line = [], l = b.p.length, far = 0.06 * l * Math.sin(TURN * b.p.sway * b.age + b.grain % 7);
    for (var i = 0; i <= 36; i++) {
      var u = 1 - 2 * i / 36;
      line.push([l / 2 * u, far * u * u * (u > 0 ? 1 : 0.4)]);
    }
    return always(along(line, l));
  }

  /* Stiff, in a slight curve of its own. */
  function lie(b) {
    var line = [], l = b.p.length, curve = ((b.grain % 100) / 100 - 0.5) * 0.5;
    for (var i = 0; i <= 36; i++) { line.push([l * (0.5 - i / 36), curve * l * Math.pow(i / 36 - 0.5, 2)]); }
    return always(along(line, l));
  }

  /* Along the way it came, its front where it is now. */
  function path(b) {
    var line = [[0, 0]], gone = 0, l = b.p.length, even = [], want = 0, i;
    b.path.forEach(function (p) { line.push([p[0] - b.x, p[1] - b.y]); });
    for (i = 1; i < line.length && even.length <= 24; i++) {
      var d = Math.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]);
      while (d && want <= gone + d && even.length <= 24) {
        var t = (want - gone) / d;
        even.push([line[i - 1][0] + (line[i][0] - line[i - 1][0]) * t, line[i - 1][1] + (line[i][1] - line[i - 1][1]) * t]);
        want += l / 24;
      }
      gone += d;
    }
    while (even.length <= 24) {         // a path that turned sharply is a little short: the rear goes straight on
      var a = even[even.length - 2] || [l / 24, 0], e = even[even.length - 1] || [0, 0], f = Math.hypot(e[0] - a[0], e[1] - a[1]) || 1;
      even.push([e[0] + (e[0] - a[0]) / f * l / 24, e[1] + (e[1] - a[1]) / f * l / 24]);
    }
    for (var round = 0; round < 3; round++) {
      for (i = 1; i < 24; i++) {
        even[i] = [(even[i - 1][0] + 2 * even[i][0] + even[i + 1][0]) / 4, (even[i - 1][1] + 2 * even[i][1] + even[i + 1][1]) / 4];
      }
    }
    return always(along(even, l));
  }

  /* Waves of thick and thin run along it; a long body lies in a slight curve of its own. */
  function squeeze(b, look) {
    var l = b.p.length, line = [], long = look.wide < 0.35, much = long ? 0.14 : 0.34;
    for (var i = 0; i <= 36; i++) {
      var u = i / 36 - 0.5;
      line.push([-l * u, long ? 0.1 * l * Math.sin(2.6 * u + b.grain % 5) : 0]);
    }
    return always(along(line, l, function (s) { return 1 + much * Math.sin(TURN * (long ? 1.5 : 0.8) * s - b.phase); }));
  }

  /* Longer and thinner, shorter and stouter. */
  function stretch(b) {
    var l = b.p.length, longer = (b.extent || l) / l, thicker = Math.min(1.4, Math.sqrt(1 / longer));
    return always(function (p, x, y) {
      p[0] = l * x * longer;
      p[1] = l * y * thicker;
    });
  }

  /* Arms swell and melt about it; it keeps its area. */
  function flow(b, look) {
    var l = b.p.length, out = [], mean = 0, i;
    for (i = 0; i < AROUND; i++) {
      var a = TURN * i / AROUND, more = 0.88;
      b.arms.forEach(function (arm) {
        var d = Math.atan2(Math.sin(a - arm.angle + b.heading), Math.cos(a - arm.angle + b.heading));
        more += 0.5 * field.swell(arm) * Math.exp(-Math.pow(d / 0.45, 2));
      });
      out.push(more);
      mean += more * more / AROUND;
    }
    mean = Math.sqrt(mean);
    return always(function (p, x, y) {
      var n = (Math.atan2(y, x) / TURN + 1) % 1 * AROUND, i = Math.floor(n), t = n - i;
      var by = l * (out[i % AROUND] * (1 - t) + out[(i + 1) % AROUND] * t) / mean;
      p[0] = by * x;
      p[1] = by * y;
    });
  }

  /* Draws up into a ball, its whip with it. */
  function round(b, look, turn) {
    var l = b.p.length, ball = b.p.ball / 2, much = b.round || 0, rolled = roll(b, look, turn);
    return function (mark) {
      var at = rolled(mark);
      return function (p, x, y, line) {
        at(p, x, y, line);
        if (!much) { return; }
        var far = Math.hypot(p[0], p[1]) || 1, edge = mark && mark.how === "edge" ? ball : Math.min(far, 0.9 * ball * far / (0.6 * l));
        var by = 1 + (edge / far - 1) * much;
        p[0] *= by;
        p[1] *= by;
      };
    };
  }

  field.deforms = { keep: keep, roll: roll, step: step, bend: bend, sway: sway, lie: lie, path: path, squeeze: squeeze, stretch: stretch, flow: flow, round: round };
})(self.WetmountField);
