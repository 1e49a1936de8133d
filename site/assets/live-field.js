/* A live field: things on a slide at true size, true speed and in their own manner.
 *
 * Two halves. The first is a pure simulation: `createField` and `step`, lengths in µm, times in
 * seconds, angles in radians, x to the right and y down from the middle of the field. It is
 * seeded, and every body has its own stream of chance, so the same seed gives the same field
 * whatever the frame rate. The second half, `draw`, puts a field on a canvas in two inks.
 * Nothing here touches the document. Figures come from the caller; there are none of biology here.
 */
(function (root, make) {
  "use strict";
  var field = make();
  if (typeof module === "object" && module.exports) { module.exports = field; } else { root.WetmountField = field; }
})(typeof self === "undefined" ? this : self, function () {
  "use strict";

  var TURN = 2 * Math.PI;
  var DEGREE = Math.PI / 180;
  var STEP = 1 / 120;                 // s; the clock of the simulation, whatever the frame rate
  var BOLTZMANN = 1.380649e-23;       // J/K, exact in the SI
  var ZERO_CELSIUS = 273.15;          // K
  var TRAIL_STEP = 0.1;               // s between two points of a trail
  var TRAIL_POINTS = 40;
  var WAVELENGTH_UM = 0.55;           // green light, as in every sum of the bench quantities

  /* ---------- chance ---------- */

  /* A stream of numbers in 0..1 (mulberry32), fixed by its seed. */
  function chance(seed) {
    var a = seed >>> 0;
    return function () {
      a = (a + 0x6D2B79F5) | 0;
      var t = Math.imul(a ^ (a >>> 15), 1 | a);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
  }

  /* A seed from words (FNV-1a), so that one body's chance does not hang on which others are there. */
  function seedOf(words) {
    var hash = 0x811c9dc5;
    for (var i = 0; i < words.length; i++) { hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193); }
    return hash >>> 0;
  }

  function normal(b) {
    if (b.spare !== null) {
      var kept = b.spare;
      b.spare = null;
      return kept;
    }
    var r = Math.sqrt(-2 * Math.log(1 - b.rng()));
    var angle = TURN * b.rng();
    b.spare = r * Math.sin(angle);
    return r * Math.cos(angle);
  }

  function exponential(b, mean) { return -mean * Math.log(1 - b.rng()); }

  /* The value at share `u` of a range, evenly in the logarithm: sizes and speeds are skewed. */
  function at(range, u) {
    if (typeof range === "number") { return range; }
    var low = range[0] > 0 ? range[0] : range[1] / 20;
    return range[1] > 0 ? low * Math.pow(range[1] / low, u) : 0;
  }

  function pick(b, name) { return at(b.ranges[name], b.rng()); }

  function either(b) { return b.rng() < 0.5 ? -1 : 1; }

  /* ---------- physics ---------- */

  /* Stokes-Einstein: µm²/s for a sphere of `diameter` µm in still water; `viscosity` in mPa s. */
  function diffusion(diameter, celsius, viscosity) {
    return BOLTZMANN * (ZERO_CELSIUS + celsius) / (3 * Math.PI * viscosity * 1e-3 * diameter * 1e-6) * 1e12;
  }

  /* The same for a rod, mean of all directions, with end corrections (Tirado and Garcia de la Torre, from memory). */
  function rodDiffusion(length, width, celsius, viscosity) {
    var p = length / width;
    return diffusion(length, celsius, viscosity) * (Math.log(p) + 0.312 + 0.565 / p - 0.1 / (p * p));
  }

  /* How a rod turns end over end: rad²/s, with the end corrections of the same authors. */
  function rodTurning(length, width, celsius, viscosity) {
    var p = length / width;
    return 9 * diffusion(length, celsius, viscosity) / (length * length) * (Math.log(p) - 0.662 + 0.917 / p - 0.05 / (p * p));
  }

  /* Smallest spacing an objective resolves, µm: 0.61 × wavelength / numerical aperture. */
  function resolution(aperture) { return 0.61 * WAVELENGTH_UM / aperture; }

  /* ---------- bodies ---------- */

  function createBody(mover, index, field) {
    var b = {
      mover: mover, motion: MOTIONS[mover.motion], body: mover.body, free: !mover.holds, ranges: mover.parameters, p: {},
      rng: chance(seedOf([field.seed, mover.id, index].join("/"))), spare: null, age: 0, state: "run", left: 0,
      heading: 0, facing: 0, phase: 0, sign: 1, pace: 0, entries: 0, trail: []
    };
    var size = b.rng();
    Object.keys(mover.parameters).forEach(function (name) {
      b.p[name] = at(mover.parameters[name], name === "length" || name === "width" ? size : b.rng());
    });
    b.reach = 0.75 * Math.max(b.p.length, b.p.width);
    var r = field.radius * Math.sqrt(b.rng());
    var angle = TURN * b.rng();
    b.x = r * Math.cos(angle);
    b.y = r * Math.sin(angle);
    b.heading = b.facing = TURN * b.rng();
    b.phase = TURN * b.rng();
    b.grain = seedOf(mover.id + index);
    b.motion.start(b, field);
    return b;
  }

  function ahead(b, distance) {
    b.x += distance * Math.cos(b.heading);
    b.y += distance * Math.sin(b.heading);
  }

  function stray(b, dt) {
    if (b.p.wander) { b.heading += b.p.wander * DEGREE * Math.sqrt(dt) * normal(b); }
  }

  function jitter(b, field, dt) {
    if (b.diffusion === undefined) {
      b.diffusion = b.p.length > 1.2 * b.p.width ? rodDiffusion(b.p.length, b.p.width, field.temperature, field.viscosity)
        : diffusion(b.p.length, field.temperature, field.viscosity);
    }
    var far = Math.sqrt(2 * b.diffusion * dt);
    b.x += far * normal(b);
    b.y += far * normal(b);
  }

  /* Counts down what it is doing; true when that is over. */
  function over(b, dt) {
    b.left -= dt;
    return b.left <= 0;
  }

  function begin(b, state, seconds) {
    b.state = state;
    b.left = seconds;
  }

  /* Starts in the midst of what it does, so that bodies are not in step. */
  function midway(b, states) {
    var state = states[Math.floor(b.rng() * states.length)];
    begin(b, state, pick(b, state) * b.rng());
  }

  /* ---------- motions: start(body, field) and move(body, dt, field) ---------- */

  var MOTIONS = {
    still: { start: function () {}, move: function () {} },

    /* A Stokes-Einstein step each time, and a rod or flake turns as well. */
    jiggle: {
      start: function (b, field) {
        b.tilt = TURN * b.rng();
        b.turning = rodTurning(b.p.length, Math.min(b.p.width, b.p.length / 2), field.temperature, field.viscosity);
      },
      move: function (b, dt, field) {
        jitter(b, field, dt);
        var turning = Math.sqrt(2 * b.turning * dt);
        b.heading += turning * normal(b);
        b.tilt += turning * normal(b);
        b.facing = b.heading;
      }
    },

    /* Along a screw about a straight or bending axis. The speed is that along the axis. */
    swim: {
      start: function (b) {
        b.bend = b.p.circling ? either(b) * b.p.circling * DEGREE : 0;
      },
      move: function (b, dt) {
        stray(b, dt);
        b.heading += b.bend * dt;
        if (b.bend && b.rng() < dt / 3) { b.bend = either(b) * pick(b, "circling") * DEGREE; }
        ahead(b, b.p.speed * dt);
        var half = b.p["spiral-width"] * b.p.length;
        var before = half * Math.sin(b.phase);
        b.phase += TURN * b.p.turns * dt;
        var aside = half * Math.sin(b.phase) - before;
        b.x -= Math.sin(b.heading) * aside;
        b.y += Math.cos(b.heading) * aside;
        b.facing = b.heading + 0.8 * Math.atan2(aside, b.p.speed * dt);
      }
    },

    dart: {
      start: function (b) { begin(b, "rest", pick(b, "rest") * b.rng()); },
      move: function (b, dt) {
        if (over(b, dt)) {
          if (b.state === "rest") {
            b.heading += 1.1 * normal(b);
            begin(b, "run", pick(b, "run"));
          } else {
            begin(b, "rest", pick(b, "rest"));
          }
        }
        if (b.state === "run") {
          ahead(b, b.p.speed * dt);
          b.phase += TURN * 3 * dt;
        }
        b.facing = b.heading;
      }
    },

    walk: {
      start: function (b) { midway(b, ["run", "rest"]); },
      move: function (b, dt) {
        if (over(b, dt)) {
          if (b.state === "run") {
            begin(b, "rest", pick(b, "rest"));
          } else if (b.state === "rest") {
            begin(b, "back", pick(b, "back"));
          } else {
            b.swing = either(b) * pick(b, "turn") * DEGREE;
            begin(b, "run", pick(b, "run"));
          }
        }
        if (b.swing) {                // the turn takes a moment
          var part = b.swing * Math.min(1, 9 * dt);
          b.heading += part;
          b.swing -= part;
        }
        b.pace = b.state === "run" ? b.p.speed : b.state === "back" ? -b.p.speed / 2 : 0;
        ahead(b, b.pace * dt);
        b.phase += TURN * b.pace / b.p.length * 1.6 * dt;
        b.facing = b.heading;
      }
    },

    wobble: {
      start: function (b) { midway(b, ["run", "rest"]); },
      move: function (b, dt) {
        if (over(b, dt)) {
          if (b.state === "run") {
            begin(b, "rest", pick(b, "rest"));
          } else {
            b.heading += 1.2 * normal(b);
            begin(b, "run", pick(b, "run"));
          }
        }
        b.phase += TURN * b.p.wobbles * dt;
        var running = b.state === "run";
        b.facing = b.heading + (running ? 1 : 0.25) * b.p.tilt * DEGREE * Math.sin(b.phase);
        if (running) {
          b.x += b.p.speed * dt * Math.cos(b.facing);
          b.y += b.p.speed * dt * Math.sin(b.facing);
        }
      }
    },

    glide: {
      start: function () {},
      move: function (b, dt) {
        stray(b, dt);
        ahead(b, b.p.speed * dt);
        b.phase += TURN * 2.2 * dt;   // of the whip
        b.facing = b.heading;
      }
    },

    /* Arms swell and melt away, mostly on the side it is going to; the body follows them. */
    flow: {
      start: function (b) {
        b.arms = [0, 1, 2, 3, 4].map(function () { return newArm(b, b.rng()); });
      },
      move: function (b, dt) {
        var pull = 0;
        b.arms.forEach(function (arm, i) {
          arm.age += dt / arm.life;
          if (arm.age >= 1) { b.arms[i] = arm = newArm(b, 0); }
          pull += swell(arm) * Math.sin(arm.angle - b.heading);
        });
        b.heading += 0.02 * pull * dt;
        ahead(b, b.p.speed * dt);
        b.phase += b.p.speed * dt;    // how far the contents have streamed
        b.facing = b.heading;
      }
    },

    /* A slug whose front bursts out to one side, then the other. It is drawn along the path it took. */
    erupt: {
      start: function (b) {
        b.side = either(b);
        b.path = [];
        for (var i = 0; i <= SLUG; i++) {
          b.path.push([b.x - Math.cos(b.heading) * b.p.length * i / SLUG, b.y - Math.sin(b.heading) * b.p.length * i / SLUG]);
        }
        b.total = pick(b, "burst");
        b.left = b.total * b.rng();
      },
      move: function (b, dt) {
        if (over(b, dt)) {
          b.side = b.rng() < 0.75 ? -b.side : b.side;
          b.heading += b.side * pick(b, "zigzag") * DEGREE;
          b.total = b.left = pick(b, "burst");
        }
        ahead(b, b.p.speed * dt * (0.4 + 1.2 * b.left / b.total));   // quick at first, then slowing; the mean is its speed
        var last = b.path[0];
        if (Math.hypot(b.x - last[0], b.y - last[1]) > b.p.length / SLUG) {
          b.path.unshift([b.x, b.y]);
          b.path.length = SLUG + 1;
        }
        b.facing = b.heading;
      }
    },

    drag: {
      start: function (b) {
        b.arm = 0;
        midway(b, ["rest", "rest", "run"]);
      },
      move: function (b, dt) {
        if (over(b, dt)) {
          if (b.state === "rest") {
            b.swing = 0.35 * normal(b);
            begin(b, "reach", 2.5);
          } else if (b.state === "reach") {
            begin(b, "run", pick(b, "run"));
          } else {
            begin(b, "rest", pick(b, "rest"));
          }
        }
        b.arm += ((b.state === "rest" ? 0 : 1) - b.arm) * Math.min(1, dt);
        if (b.state === "run") {
          ahead(b, b.p.speed * dt);
          b.heading += (b.swing || 0) * dt / 3;
          b.phase += TURN * 0.9 * dt;
        }
        b.facing = b.heading + (b.state === "run" ? b.p.tilt * DEGREE * Math.sin(b.phase) : 0);
      }
    },

    /* Waves of bending that run from head to tail; see `spine`. */
    undulate: {
      start: function (b) {
        if (b.p.rest) { midway(b, ["run", "rest"]); }
      },
      move: function (b, dt) {
        if (b.p.rest && over(b, dt)) {
          var next = b.state === "run" ? "rest" : "run";
          begin(b, next, pick(b, next));
        }
        if (b.state === "run") {
          stray(b, dt);
          b.phase += TURN * b.p.waves * dt;
          ahead(b, b.p.speed * dt);
        }
        b.facing = b.heading;
      }
    },

    /* Straight runs, tumbles on the spot. Turns are even over 0 to twice their mean, to either side. */
    run: {
      start: function (b) { begin(b, "run", exponential(b, b.p.run)); },
      move: function (b, dt, field) {
        var left = dt;
        while (left > 0) {
          var part = Math.min(left, b.left);
          if (b.state === "run") {
            stray(b, part);
            ahead(b, b.p.speed * part);
          }
          left -= part;
          if (over(b, part)) {
            if (b.state === "run") {
              b.heading += either(b) * 2 * b.p.turn * DEGREE * b.rng();
              begin(b, "tumble", exponential(b, b.p.tumble));
            } else {
              begin(b, "run", exponential(b, b.p.run));
            }
          }
        }
        jitter(b, field, dt);
        b.facing += Math.sin(b.heading - b.facing) * Math.min(1, 20 * dt) + (b.state === "tumble" ? 0.25 * normal(b) : 0);
      }
    },

    shuttle: {
      start: function (b) { midway(b, ["run", "rest"]); },
      move: function (b, dt) {
        if (over(b, dt)) {
          if (b.state === "run") {
            begin(b, "rest", pick(b, "rest"));
          } else {
            b.sign = -b.sign;
            begin(b, "run", pick(b, "run"));
          }
        }
        if (b.state === "run") {
          stray(b, dt);
          ahead(b, b.sign * b.p.speed * dt);
        }
        b.facing = b.heading;
      }
    },

    /* The foot holds while it reaches out, the head holds while it draws up: each moves the middle on by half the change. */
    loop: {
      start: function (b) {
        b.cycle = b.rng();
        b.extent = extentAt(b);
      },
      move: function (b, dt) {
        var was = b.extent, foot = was / 2;
        b.cycle += b.p.loops * dt;
        if (b.cycle >= 1) {
          b.cycle -= 1;
          b.swing = either(b) * pick(b, "turn") * DEGREE;
        }
        b.extent = extentAt(b);
        if (b.swing && b.extent > was) {
          var part = b.swing * Math.min(1, 4 * dt);
          b.x -= foot * Math.cos(b.heading);
          b.y -= foot * Math.sin(b.heading);
          b.heading += part;
          b.swing -= part;
          ahead(b, foot);
        }
        ahead(b, Math.abs(b.extent - was) / 2);
        b.facing = b.heading;
      }
    }
  };

  var SLUG = 14;                      // pieces in the path of a slug

  function newArm(b, age) { return { angle: b.heading + 0.95 * normal(b), age: age, life: pick(b, "lobe-time"), size: 0.45 + 0.4 * b.rng() }; }

  function swell(arm) { return arm.size * Math.pow(Math.sin(Math.PI * Math.min(1, arm.age)), 2); }

  /* How long a looping body is now: reaches out, holds, draws up, holds. */
  function extentAt(b) {
    var c = b.cycle;
    var out = c < 0.45 ? c / 0.45 : c < 0.55 ? 1 : c < 0.92 ? 1 - (c - 0.55) / 0.37 : 0;
    var eased = out * out * (3 - 2 * out);
    return b.p.length * (b.p.shortest + (1 - b.p.shortest) * eased);
  }

  /* ---------- the field ---------- */

  /* A field of `diameter_um` with `movers`: [{id, motion, body, holds, count, parameters: {length: [low, high], ...}}].
   * A parameter is one number or [low, high]. Options: seed (1), drift {speed µm/s, direction rad},
   * temperature (20 °C), viscosity (1.002 mPa s), bounds: "rim" (a body that leaves comes in again
   * elsewhere, so that counts stay) or "open". */
  function createField(options) {
    var field = {
      seed: options.seed === undefined ? 1 : options.seed,
      diameter: options.diameter_um, radius: options.diameter_um / 2, time: 0, clock: 0,
      drift: options.drift || { speed: 0, direction: 0 },
      temperature: options.temperature === undefined ? 20 : options.temperature,
      viscosity: options.viscosity === undefined ? 1.002 : options.viscosity,
      bounds: options.bounds || "rim", bodies: []
    };
    options.movers.forEach(function (mover) {
      for (var i = 0; i < mover.count; i++) { field.bodies.push(createBody(mover, i, field)); }
    });
    return field;
  }

  /* Moves everything on by `dt` seconds, in whole ticks of the clock; what is left over waits. */
  function step(field, dt) {
    field.clock += dt;
    var ticks = Math.floor(field.clock / STEP + 1e-6);
    field.clock -= ticks * STEP;
    for (var tick = 0; tick < ticks; tick++) { advance(field); }
  }

  function advance(field) {
    var dx = field.drift.speed * Math.cos(field.drift.direction) * STEP;
    var dy = field.drift.speed * Math.sin(field.drift.direction) * STEP;
    var before = Math.floor(field.time / TRAIL_STEP + 1e-6);
    field.time += STEP;
    var mark = Math.floor(field.time / TRAIL_STEP + 1e-6) > before;
    for (var i = 0; i < field.bodies.length; i++) {
      var b = field.bodies[i];
      b.age += STEP;
      b.motion.move(b, STEP, field);
      if (b.free) {
        b.x += dx;
        b.y += dy;
      }
      if (field.bounds === "rim" && Math.hypot(b.x, b.y) > field.radius + b.reach) { enter(b, field); }
      if (mark) {
        b.trail.push(b.x, b.y, b.entries);
        if (b.trail.length > 3 * (TRAIL_POINTS + 1)) { b.trail.splice(0, 3); }
      }
    }
  }

  /* Brings a body in again at the rim, on its way into the field: paths are spread evenly over the width they meet. */
  function enter(b, field) {
    b.heading = b.facing = TURN * b.rng();
    b.sign = 1;
    var speed = b.p.speed || 0;
    var vx = speed * Math.cos(b.heading) + (b.free ? field.drift.speed * Math.cos(field.drift.direction) : 0);
    var vy = speed * Math.sin(b.heading) + (b.free ? field.drift.speed * Math.sin(field.drift.direction) : 0);
    var v = Math.hypot(vx, vy);
    var angle = v > 0 ? Math.atan2(vy, vx) : b.heading;
    var r = 0.999 * (field.radius + b.reach);
    var aside = (2 * b.rng() - 1) * 0.9 * field.radius;
    var back = Math.sqrt(r * r - aside * aside);
    b.x = -back * Math.cos(angle) - aside * Math.sin(angle);
    b.y = -back * Math.sin(angle) + aside * Math.cos(angle);
    b.entries += 1;
    if (b.path) { b.motion.start(b, field); }
  }

  /* The middle line of a body that bends in waves, head first: `points + 1` of [x, y] in µm.
   * The bending is a wave that runs towards the tail: bend(s, t) ~ cos(2π (s / wavelength - t × waves)),
   * s in body lengths. The middle of the line stays at the body's place and its mean slant on its course. */
  function spine(b, points) {
    var wavelength = b.p.wavelength;
    var most = b.p.bend * DEGREE * TURN / wavelength;
    var slant = [], sum = 0, angle = 0, i;
    for (i = 0; i < points; i++) {
      var s = (i + 0.5) / points;
      angle += most * (1 - 0.2 * s) * Math.cos(TURN * s / wavelength - b.phase) / points;
      slant.push(angle);
      sum += angle;
    }
    var mean = sum / points, length = b.p.length / points;
    var line = [[0, 0]], cx = 0, cy = 0, x = 0, y = 0;
    for (i = 0; i < points; i++) {
      var way = b.heading + Math.PI + slant[i] - mean;
      x += length * Math.cos(way);
      y += length * Math.sin(way);
      line.push([x, y]);
      cx += x;
      cy += y;
    }
    cx /= points + 1;
    cy /= points + 1;
    return line.map(function (p) { return [p[0] - cx + b.x, p[1] - cy + b.y]; });
  }

  /* ---------- drawing: shapes, in µm, head towards +x ---------- */

  /* A closed smooth line through the middles of its points, onto a canvas or a Path2D. */
  function smooth(path, points) {
    var last = points[points.length - 1], first = points[0];
    path.moveTo((last[0] + first[0]) / 2, (last[1] + first[1]) / 2);
    for (var i = 0; i < points.length; i++) {
      var here = points[i], next = points[(i + 1) % points.length];
      path.quadraticCurveTo(here[0], here[1], (here[0] + next[0]) / 2, (here[1] + next[1]) / 2);
    }
    path.closePath();
    return path;
  }

  function lines(path, each) {
    each.forEach(function (line) {
      path.moveTo(line[0], line[1]);
      path.lineTo(line[2], line[3]);
    });
    return path;
  }

  function around(count, at) {
    var points = [];
    for (var i = 0; i < count; i++) { points.push(at(TURN * i / count)); }
    return points;
  }

  /* An oval whose front is narrower (`taper` > 0) or wider. */
  function oval(length, width, taper) {
    return around(44, function (a) {
      return [length / 2 * Math.cos(a), width / 2 * Math.sin(a) * (1 - taper * Math.cos(a))];
    });
  }

  /* Short hairs that stand out from an outline, leaning by `lean`. */
  function hairs(points, length, lean, every, from) {
    var all = [];
    for (var i = from || 0; i < points.length; i += every) {
      var p = points[i], q = points[(i + 1) % points.length];
      var dx = q[0] - p[0], dy = q[1] - p[1], d = Math.hypot(dx, dy) || 1;
      var nx = dy / d, ny = -dx / d;
      all.push([p[0], p[1], p[0] + length * (nx + lean * dx / d), p[1] + length * (ny + lean * dy / d)]);
    }
    return all;
  }

  /* Grains strewn in an oval, fixed by the body: [x, angle, share of the half width, radius]. */
  function strewn(b, count, length, width, radius) {
    var rng = chance(b.grain), all = [];
    for (var i = 0; i < count; i++) {
      var x = (rng() - 0.5) * 0.8;
      all.push([x * length, TURN * rng(), width / 2 * 0.8 * Math.sqrt(1 - 4 * x * x * 0.9), radius * (0.6 + 0.8 * rng())]);
    }
    return all;
  }

  /* What of a body need be made only once. */
  function made(b, make) {
    if (!b.art) { b.art = make(b.p.length, b.p.width, chance(b.grain)); }
    return b.art;
  }

  /* ---------- drawing: the pen ---------- */

  function onBody(pen, b, angle, draw) {
    var ctx = pen.ctx;
    ctx.save();
    ctx.translate(b.x * pen.scale, b.y * pen.scale);
    ctx.rotate(angle);
    ctx.scale(pen.scale, pen.scale);
    draw(ctx);
    ctx.restore();
  }

  /* A body with its outline: paper inside, a line that is heavier on the side away from the light (lower right). */
  function solid(pen, b, angle, paths, weight) {
    var ctx = pen.ctx, shade = 0.45 * weight;
    ctx.strokeStyle = pen.ink;
    ctx.fillStyle = pen.ink;
    ctx.save();
    ctx.translate(b.x * pen.scale + shade, b.y * pen.scale + shade);
    ctx.rotate(angle);
    ctx.scale(pen.scale, pen.scale);
    ctx.lineWidth = 1.3 * weight / pen.scale;
    paths.forEach(function (path) { ctx.stroke(path); });
    ctx.restore();
    onBody(pen, b, angle, function () {
      ctx.lineWidth = 1.3 * weight / pen.scale;
      paths.forEach(function (path) { ctx.stroke(path); });
      ctx.fillStyle = pen.paper;
      paths.forEach(function (path) { ctx.fill(path); });
    });
  }

  function fine(pen, weight, alpha) {
    pen.ctx.strokeStyle = pen.ctx.fillStyle = pen.ink;
    pen.ctx.globalAlpha = alpha;
    pen.ctx.lineWidth = weight / pen.scale;
  }

  function spot(ctx, x, y, r) {
    ctx.moveTo(x + r, y);
    ctx.arc(x, y, r, 0, TURN);
  }

  /* Grains that turn with the body about its long axis: those on the near side show. */
  function turningGrains(pen, grains, phase) {
    var ctx = pen.ctx;
    ctx.beginPath();
    grains.forEach(function (g) {
      if (Math.cos(phase + g[1]) > -0.1) { spot(ctx, g[0], g[2] * Math.sin(phase + g[1]), Math.max(g[3], 0.45 / pen.scale)); }
    });
    ctx.fill();
  }

  /* A clear bubble that fills and vanishes. */
  function bubble(pen, b, x, y, most, period) {
    var ctx = pen.ctx, full = ((b.age + b.grain % 97) % period) / period;
    ctx.beginPath();
    spot(ctx, x, y, most * (0.15 + 0.85 * Math.sqrt(full)));
    ctx.fillStyle = pen.paper;
    ctx.globalAlpha = 1;
    ctx.fill();
    fine(pen, 0.8, 0.8);
    ctx.stroke();
  }

  /* A whip as a wave that runs out along it, from (x, y) in direction `way`. */
  function whip(ctx, x, y, way, length, swing, waves, phase) {
    ctx.moveTo(x, y);
    for (var i = 1; i <= 14; i++) {
      var s = i / 14;
      var along = s * length, aside = swing * s * Math.sin(TURN * waves * s - phase);
      ctx.lineTo(x + along * Math.cos(way) - aside * Math.sin(way), y + along * Math.sin(way) + aside * Math.cos(way));
    }
  }

  /* ---------- drawing: bodies ---------- */

  function ciliate(pen, b, outline, o) {
    var path = smooth(new Path2D(), outline);
    var length = b.p.length, width = b.p.width;
    if (pen.detail(b) > 5) {
      var beat = Math.floor(b.age * 14) % 3;
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.6);
        ctx.stroke(lines(new Path2D(), hairs(outline, o.hair * width, 0.5 - 0.5 * beat, o.every || 1, 0)));
      });
    }
    solid(pen, b, b.facing, [path], 1.25);
    if (pen.detail(b) < 5) {
      toned(pen, b, path, 0.3);
      return;
    }
    onBody(pen, b, b.facing, function () {
      if (!b.grains) { b.grains = strewn(b, 26, length, width, width * 0.045); }
      fine(pen, 1, 0.72);
      turningGrains(pen, b.grains, b.phase);
      bubble(pen, b, -0.3 * length, 0.2 * width * Math.sin(b.phase), 0.15 * width, 12);
      pen.ctx.globalAlpha = 1;
    });
  }

  /* A grey tone over a body too small to show what is inside it. */
  function toned(pen, b, path, alpha) {
    onBody(pen, b, b.facing, function (ctx) {
      fine(pen, 1, alpha);
      ctx.fill(path);
      ctx.globalAlpha = 1;
    });
  }

  var BODIES = {
    "pear-ciliate": function (pen, b) {
      ciliate(pen, b, made(b, function (l, w) { return oval(l, w, 0.2); }), { hair: 0.12 });
      if (pen.detail(b) < 5) { return; }
      onBody(pen, b, b.facing, function (ctx) {      // the mouth comes and goes as it turns
        var side = Math.sin(b.phase + 1);
        fine(pen, 0.9, Math.cos(b.phase + 1) > -0.3 ? 0.85 : 0);
        ctx.beginPath();
        ctx.ellipse(0.24 * b.p.length, 0.22 * b.p.width * side, 0.08 * b.p.length, 0.07 * b.p.width, 0.5 * side, 0, TURN);
        ctx.stroke();
      });
    },

    /* Broadest behind the middle; the groove turns about with it, and a bubble lies at either end. */
    "slipper-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      ciliate(pen, b, made(b, function () {
        return around(48, function (a) {
          var u = Math.cos(a), rear = Math.max(0, -u - 0.35) / 0.65;
          return [l / 2 * u, w / 2 * Math.sin(a) * (1 - 0.14 * u) * (1 - 0.4 * rear * rear)];
        });
      }), { hair: 0.1 });
      if (pen.detail(b) < 5) { return; }
      onBody(pen, b, b.facing, function (ctx) {
        var side = Math.sin(b.phase + 1) * w;
        bubble(pen, b, 0.26 * l, -0.2 * side, 0.12 * w, 9);
        fine(pen, 0.9, Math.cos(b.phase + 1) > -0.3 ? 0.85 : 0);
        ctx.beginPath();
        ctx.moveTo(0.44 * l, 0.2 * side);
        ctx.quadraticCurveTo(0.22 * l, 0.34 * side, 0, 0.1 * side);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
    },

    /* A wreath in front, and a few long stiff hairs round the middle. */
    "ball-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function () {
        var outline = oval(l, w, 0), stiff = [], wreath = [], i;
        for (i = 0; i < 10; i++) {
          var a = 0.9 + 4.48 * i / 9;
          stiff.push([0.48 * l * Math.cos(a), 0.48 * w * Math.sin(a), 1.0 * l * Math.cos(a), 1.0 * w * Math.sin(a)]);
        }
        for (i = -6; i <= 6; i++) {
          var f = 0.11 * i;
          wreath.push([0.48 * l * Math.cos(f), 0.48 * w * Math.sin(f), 0.64 * l * Math.cos(0.8 * f), 0.7 * w * Math.sin(1.2 * f)]);
        }
        return { path: smooth(new Path2D(), outline), stiff: lines(new Path2D(), stiff), wreath: lines(new Path2D(), wreath) };
      });
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.7, 0.8);
        ctx.stroke(art.stiff);
        fine(pen, 1.1, 0.9);
        ctx.stroke(art.wreath);
        ctx.globalAlpha = 1;
      });
      solid(pen, b, b.facing, [art.path], 1.2);
      cellGrains(pen, b, 12);
    },

    /* Flat, with a notch in one side that turns to the other side as it rolls. */
    "bean-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width, turned = Math.cos(b.phase);
      var outline = around(44, function (a) {
        var u = Math.cos(a), v = Math.sin(a);
        var notch = Math.max(0, v > 0 ? turned : -turned) * 0.62 * Math.exp(-Math.pow((u - 0.25) / 0.26, 2));
        return [l / 2 * u, w / 2 * v * (1 - 0.16 * u) * (0.78 + 0.22 * Math.abs(turned)) * (1 - notch)];
      });
      ciliate(pen, b, outline, { hair: 0.14 });
    },

    "tailed-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.75);
        ctx.beginPath();
        ctx.moveTo(-l / 2, 0);
        ctx.lineTo(-1.05 * l, 0.05 * l);
        ctx.moveTo(0.36 * l, 0.3 * w);
        ctx.quadraticCurveTo(0.1 * l, 0.95 * w, -0.14 * l, 0.46 * w);
        ctx.stroke();
      });
      ciliate(pen, b, made(b, function () {
        return around(44, function (a) { return [Math.min(0.46, Math.cos(a) / 2) * l, w / 2 * Math.sin(a)]; });
      }), { hair: 0.28, every: 3 });
    },

    /* Broadest behind the middle; the groove turns about with it, and a bubble lies at either end. */
    "slipper-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      ciliate(pen, b, made(b, function () {
        return around(48, function (a) {
          var u = Math.cos(a), rear = Math.max(0, -u - 0.35) / 0.65;
          return [l / 2 * u, w / 2 * Math.sin(a) * (1 - 0.14 * u) * (1 - 0.4 * rear * rear)];
        });
      }), { hair: 0.1 });
      if (pen.detail(b) < 5) { return; }
      onBody(pen, b, b.facing, function (ctx) {
        var side = Math.sin(b.phase + 1) * w;
        bubble(pen, b, 0.26 * l, -0.2 * side, 0.12 * w, 9);
        fine(pen, 0.9, Math.cos(b.phase + 1) > -0.3 ? 0.85 : 0);
        ctx.beginPath();
        ctx.moveTo(0.44 * l, 0.2 * side);
        ctx.quadraticCurveTo(0.22 * l, 0.34 * side, 0, 0.1 * side);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
    },

    /* A wreath in front, and a few long stiff hairs round the middle. */
    "ball-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function () {
        var outline = oval(l, w, 0), stiff = [], wreath = [], i;
        for (i = 0; i < 10; i++) {
          var a = 0.9 + 4.48 * i / 9;
          stiff.push([0.48 * l * Math.cos(a), 0.48 * w * Math.sin(a), 1.0 * l * Math.cos(a), 1.0 * w * Math.sin(a)]);
        }
        for (i = -6; i <= 6; i++) {
          var f = 0.11 * i;
          wreath.push([0.48 * l * Math.cos(f), 0.48 * w * Math.sin(f), 0.64 * l * Math.cos(0.8 * f), 0.7 * w * Math.sin(1.2 * f)]);
        }
        return { path: smooth(new Path2D(), outline), stiff: lines(new Path2D(), stiff), wreath: lines(new Path2D(), wreath) };
      });
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.7, 0.8);
        ctx.stroke(art.stiff);
        fine(pen, 1.1, 0.9);
        ctx.stroke(art.wreath);
        ctx.globalAlpha = 1;
      });
      solid(pen, b, b.facing, [art.path], 1.2);
      cellGrains(pen, b, 12);
    },

    /* Flat, with a notch in one side that turns to the other side as it rolls. */
    "bean-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width, turned = Math.cos(b.phase);
      var outline = around(44, function (a) {
        var u = Math.cos(a), v = Math.sin(a);
        var notch = Math.max(0, v > 0 ? turned : -turned) * 0.62 * Math.exp(-Math.pow((u - 0.25) / 0.26, 2));
        return [l / 2 * u, w / 2 * v * (1 - 0.16 * u) * (0.78 + 0.22 * Math.abs(turned)) * (1 - notch)];
      });
      ciliate(pen, b, outline, { hair: 0.14 });
    },

    "tailed-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.75);
        ctx.beginPath();
        ctx.moveTo(-l / 2, 0);
        ctx.lineTo(-1.05 * l, 0.05 * l);
        ctx.moveTo(0.36 * l, 0.3 * w);
        ctx.quadraticCurveTo(0.1 * l, 0.95 * w, -0.14 * l, 0.46 * w);
        ctx.stroke();
      });
      ciliate(pen, b, made(b, function () {
        return around(44, function (a) { return [Math.min(0.46, Math.cos(a) / 2) * l, w / 2 * Math.sin(a)]; });
      }), { hair: 0.28, every: 3 });
    },

    "bristle-ciliate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function () {
        var outline = around(48, function (a) {
          return [l / 2 * Math.cos(a), w / 2 * Math.sign(Math.sin(a)) * Math.pow(Math.abs(Math.sin(a)), 0.8) * (1 - 0.06 * Math.cos(a))];
        });
        return { outline: outline, path: smooth(new Path2D(), outline) };
      });
      var stepping = Math.sin(b.phase);
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.8, 0.85);
        var feet = hairs(art.outline, 0.13 * w, 0, 2, 1).map(function (h, i) {
          return [h[0], h[1], h[2] - 0.06 * l + 0.05 * l * stepping * (i % 2 ? 1 : -1), h[3]];
        });
        ctx.stroke(lines(new Path2D(), feet));
      });
      solid(pen, b, b.facing, [art.path], 1.4);
      if (pen.detail(b) < 5) {
        toned(pen, b, art.path, 0.3);
        return;
      }
      onBody(pen, b, b.facing, function (ctx) {
        var wreath = [], bristles = [], i;
        for (i = 0; i < 15; i++) {                    // the wreath: over the front and down the left side to the mouth
          var a = -0.55 + 2.0 * i / 14;
          var inward = i > 9 ? (i - 9) / 5 : 0;
          var x = 0.46 * l * Math.cos(a), y = -0.45 * w * Math.sin(a) * (1 - 0.5 * inward);
          wreath.push([x, y, x + 0.05 * l * Math.cos(a + 0.5), y - 0.12 * w * Math.sin(a + 0.3)]);
        }
        for (i = 0; i < 7; i++) { bristles.push([0.3 - 0.07 * i, 0.1 + 0.16 * (i % 2), 1]); }
        for (i = 0; i < 5; i++) { bristles.push([-0.32 - 0.02 * i, -0.16 + 0.09 * i, 1.5]); }
        fine(pen, 1, 0.9);
        ctx.stroke(lines(new Path2D(), wreath.concat(bristles.map(function (p, n) {
          var lean = 0.05 * l * stepping * (n % 2 ? 1 : -1);
          return [p[0] * l, p[1] * w, p[0] * l - 0.06 * l * p[2] + lean, p[1] * w + 0.03 * w];
        }))));
        if (!b.grains) { b.grains = strewn(b, 34, 0.9 * l, 0.85 * w, 0.03 * w); }
        fine(pen, 1, 0.6);
        turningGrains(pen, b.grains, 0);
        bubble(pen, b, 0, -0.28 * w, 0.12 * w, 11);
        ctx.globalAlpha = 1;
      });
    },

    flagellate: function (pen, b) {
      var l = b.p.length, w = b.p.width, run = b.state === "run" ? 1 : 0.4;
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.5);
        ctx.beginPath();
        whip(ctx, 0.42 * l, -0.15 * w, -0.5, 0.9 * l, 0.28 * l * run, 1.5, b.age * 40 * run);
        whip(ctx, 0.4 * l, 0.15 * w, Math.PI + 0.1, 2.3 * l, 0.18 * l, 1.2, b.age * 12 * run);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
      solid(pen, b, b.facing, [made(b, function () { return smooth(new Path2D(), oval(l, w, 0.22)); })], 1.1);
      cellGrains(pen, b, 7);
    },

    "gliding-flagellate": function (pen, b) {
      var l = b.p.length, w = b.p.width;
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.55);
        ctx.beginPath();
        whip(ctx, 0.48 * l, 0, 0.15, 0.7 * l, 0.16 * l, 1, b.phase);
        whip(ctx, 0.4 * l, 0.2 * w, Math.PI, 2.1 * l, 0.05 * l, 0.8, 0.3 * b.phase);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
      solid(pen, b, b.facing, [made(b, function () {
        return smooth(new Path2D(), around(36, function (a) {
          var u = Math.cos(a);
          return [l / 2 * u, w / 2 * Math.sin(a) * Math.pow((1.15 + u) / 2.15, 0.7) * 1.25];
        }));
      })], 1.1);
      cellGrains(pen, b, 8);
    },

    euglenid: function (pen, b) {
      var l = b.p.length, w = b.p.width;
      onBody(pen, b, b.facing, function (ctx) {      // stiff, only the tip flickers
        fine(pen, 1.1, 0.9);
        ctx.beginPath();
        ctx.moveTo(0.47 * l, 0);
        ctx.lineTo(1.12 * l, 0.02 * l);
        ctx.stroke();
        fine(pen, 0.8, 0.8);
        ctx.beginPath();
        whip(ctx, 1.12 * l, 0.02 * l, 0, 0.22 * l, 0.1 * l, 1, b.age * 25);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
      var squirm = 0.05 * Math.sin(b.phase / 5);
      var path = smooth(new Path2D(), around(40, function (a) {
        var u = Math.cos(a);
        return [l / 2 * u, w / 2 * Math.sin(a) * (1 - 0.32 * u + squirm * Math.cos(3 * a)) + squirm * w * u];
      }));
      solid(pen, b, b.facing, [path], 1.25);
      onBody(pen, b, b.facing, function (ctx) {
        if (!b.grains) { b.grains = strewn(b, 22, 0.9 * l, 0.8 * w, 0.07 * w); }
        fine(pen, 0.7, 0.75);
        ctx.beginPath();
        b.grains.forEach(function (g) { spot(ctx, g[0] - 0.04 * l, 0.9 * g[2] * Math.sin(g[1]), g[3]); });
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
    },

    amoeba: function (pen, b) {
      var size = Math.sqrt(b.p.length * b.p.width) / 2, count = 64, area = 0;
      var radii = [];
      for (var i = 0; i < count; i++) {
        var angle = TURN * i / count, r = 0.62 + 0.02 * Math.sin(5 * angle + b.grain) + 0.012 * Math.sin(11 * angle + b.age / 9);
        b.arms.forEach(function (arm) {
          var off = Math.atan2(Math.sin(angle - arm.angle), Math.cos(angle - arm.angle));
          r += 1.15 * swell(arm) * Math.exp(-off * off / 0.11);
        });
        radii.push(r);
        area += r * r / count;
      }
      var fit = size / Math.sqrt(area);             // the outline changes, the cell keeps its size
      function at(share, a) {
        var n = ((a / TURN % 1) + 1) % 1 * count, low = Math.floor(n), t = n - low;
        var r = fit * share * (radii[low % count] * (1 - t) + radii[(low + 1) % count] * t);
        return [r * Math.cos(a), r * Math.sin(a)];
      }
      solid(pen, b, 0, [smooth(new Path2D(), around(count, function (a) { return at(1, a); }))], 1);
      if (!b.grains) {
        var rng = chance(b.grain);
        for (var n = 0, all = []; n < 110; n++) { all.push([(n + rng()) / 110, TURN * (n * 0.618034 + 0.2 * rng()), rng()]); }
        b.grains = all;
      }
      onBody(pen, b, 0, function (ctx) {
        fine(pen, 1, 0.75);
        ctx.beginPath();
        b.grains.forEach(function (g) {               // a clear border stays free of grains
          var p = at(0.8 * Math.sqrt((g[0] + b.phase / size * 0.3) % 1), g[1]);
          spot(ctx, p[0], p[1], Math.max(0.3 + 0.35 * g[2], 0.5 / pen.scale));
        });
        ctx.fill();
        ctx.globalAlpha = 1;
        ctx.beginPath();
        var n = at(0.28, b.heading + 2.4);
        spot(ctx, n[0], n[1], 0.17 * size);
        ctx.fillStyle = pen.paper;
        ctx.fill();
        fine(pen, 0.7, 0.85);
        ctx.stroke();
        ctx.beginPath();
        spot(ctx, n[0], n[1], 0.07 * size);
        ctx.fill();
        var v = at(0.5, b.heading + Math.PI);
        bubble(pen, b, v[0], v[1], 0.16 * size, 25);
        ctx.globalAlpha = 1;
      });
    },

    "slug-amoeba": function (pen, b) { slug(pen, b, true); },
    "smooth-slug-amoeba": function (pen, b) { slug(pen, b, false); },

    /* Mouth in front; thread-like arms reach out of it before it drags. */
    flask: function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function (length, width) {
        var outline = [], scales = [], i, row;
        function half(u) { return 0.94 * w / 2 * Math.sqrt(Math.max(0, 1 - u * u)) * (1 - 0.34 * u); }
        for (i = 0; i <= 30; i++) { outline.push([l / 2 * (-1 + 1.93 * i / 30), half(-1 + 1.93 * i / 30)]); }
        for (i = 30; i >= 0; i--) { outline.push([l / 2 * (-1 + 1.93 * i / 30), -half(-1 + 1.93 * i / 30)]); }
        var rows = Math.max(4, Math.round(length / 6)), across = Math.max(3, Math.round(width / 6));
        for (row = 0; row < rows; row++) {            // one scale for about every 6 µm
          for (i = -across; i <= across; i++) {
            var u = -0.9 + 1.75 * (row + 0.5) / rows, v = (i + (row % 2 ? 0.5 : 0)) / (across / 2);
            if (Math.abs(v) < 0.9) { scales.push([length / 2 * u, v * half(u)]); }
          }
        }
        return { path: smooth(new Path2D(), outline), scales: scales };
      });
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.8, 0.8);
        ctx.beginPath();
        [-0.5, -0.12, 0.2, 0.55].forEach(function (way, i) {
          if (b.arm > 0.03) { whip(ctx, 0.46 * l, 0.1 * w * way, way, b.arm * l * (0.4 + 0.12 * (i % 2)), 0.04 * l, 0.7, b.age / 3 + i); }
        });
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
      solid(pen, b, b.facing, [art.path], 1.5);
      onBody(pen, b, b.facing, function (ctx) {
        if (2.2 * pen.scale > 1.6) {
          fine(pen, 0.55, 0.65);
          ctx.beginPath();
          art.scales.forEach(function (s) { spot(ctx, s[0], s[1], 2.2); });
          ctx.stroke();
        } else {
          fine(pen, 1, 0.3);
          ctx.fill(art.path);
        }
        fine(pen, 1.2, 0.9);
        ctx.beginPath();
        ctx.moveTo(0.455 * l, -0.16 * w);
        ctx.lineTo(0.455 * l, 0.16 * w);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
    },

    /* A round shell seen from above: the mouth a ring in the middle, blunt arms under the front edge. */
    dome: function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function (length, width, rng) {
        var stipple = [];
        for (var i = 0; i < 90; i++) {
          var r = 0.48 * Math.sqrt((i + rng()) / 90), a = TURN * (i * 0.618034);
          if (r > 0.2) { stipple.push([length * r * Math.cos(a), width * r * Math.sin(a)]); }
        }
        return { path: smooth(new Path2D(), oval(length, width, 0)), stipple: stipple };
      });
      if (b.arm > 0.03) {
        solid(pen, b, b.facing, [-0.5, 0.05, 0.45].map(function (a, i) {
          var arm = new Path2D();
          arm.ellipse(0.46 * l * Math.cos(a), 0.46 * w * Math.sin(a), b.arm * l * (0.2 + 0.05 * i), 0.045 * w, a, 0, TURN);
          return arm;
        }), 0.9);
      }
      solid(pen, b, b.facing, [art.path], 1.5);
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 1, 0.7);
        ctx.beginPath();
        art.stipple.forEach(function (p) { spot(ctx, p[0], p[1], 0.55 / pen.scale); });
        ctx.fill();
        fine(pen, 0.9, 0.9);
        ctx.beginPath();
        ctx.ellipse(0, 0, 0.17 * l, 0.17 * w, 0, 0, TURN);
        ctx.stroke();
        ctx.globalAlpha = 1;
      });
    },

    worm: function (pen, b) {
      var line = spine(b, 44);
      wormBody(pen, b, line, function (s) {
        var head = Math.min(1, 0.42 + 0.58 * Math.sqrt(s / 0.14)), tail = s > 0.7 ? Math.pow((1 - s) / 0.3, 0.75) : 1;
        return b.p.width / 2 * (s < 0.14 ? head : 1) * tail;
      }, function (ctx, at) {
        fine(pen, 0.7, 0.75);
        ctx.beginPath();                              // the gullet with its two swellings
        for (var i = 0; i <= 9; i++) {
          var p = at(0.005 + 0.2 * i / 9, 0);
          if (i) { ctx.lineTo(p[0], p[1]); } else { ctx.moveTo(p[0], p[1]); }
        }
        ctx.stroke();
        [[0.115, 0.19], [0.195, 0.25]].forEach(function (bulb) {
          var c = at(bulb[0], 0), n = at(bulb[0] + 0.01, 0);
          ctx.beginPath();
          ctx.ellipse(c[0], c[1], 0.36 * b.p.width, bulb[1] * b.p.width, Math.atan2(n[1] - c[1], n[0] - c[0]), 0, TURN);
          ctx.stroke();
        });
        if (!b.grains) {
          var rng = chance(b.grain);
          for (var k = 0, all = []; k < 260; k++) { all.push([0.225 + 0.655 * (k + rng()) / 260, (2 * rng() - 1) * 0.56, rng()]); }
          b.grains = all;
        }
        fine(pen, 0.6, 0.6);
        ctx.beginPath();                              // the gut: its two edges
        [-0.64, 0.64].forEach(function (aside) {
          for (var n = 0; n <= 30; n++) {
            var q = at(0.22 + 0.68 * n / 30, aside * Math.min(1, 0.3 + n / 4));
            if (n) { ctx.lineTo(q[0], q[1]); } else { ctx.moveTo(q[0], q[1]); }
          }
        });
        ctx.stroke();
        fine(pen, 1, 0.6);
        ctx.beginPath();
        b.grains.forEach(function (g) {
          var p = at(g[0], g[1]);
          spot(ctx, p[0], p[1], Math.max(0.6 + 0.7 * g[2], 0.5 / pen.scale));
        });
        ctx.fill();
      });
    },

    /* Stout, with coarse rings; a slight fixed curve. */
    "ring-worm": function (pen, b) {
      var l = b.p.length, w = b.p.width, curve = ((b.grain % 100) / 100 - 0.5) * 0.5, line = [];
      for (var i = 0; i <= 40; i++) {
        var s = i / 40, inch = 0.008 * l * Math.sin(TURN * (2 * s + b.phase / 14));
        var along = l * (0.5 - s) + inch, aside = curve * l * (s - 0.5) * (s - 0.5);
        line.push([b.x + along * Math.cos(b.facing) - aside * Math.sin(b.facing), b.y + along * Math.sin(b.facing) + aside * Math.cos(b.facing)]);
      }
      wormBody(pen, b, line, function (s) {
        return w / 2 * Math.min(1, 0.5 + 0.5 * Math.sqrt(s / 0.16)) * (s > 0.72 ? Math.pow((1 - s) / 0.28, 0.6) : 1);
      }, function (ctx, at, path) {
        if (l / 80 * pen.scale < 2.2) {               // rings this fine cannot be seen: a tone
          fine(pen, 1, 0.35);
          ctx.fill(path);
          return;
        }
        fine(pen, 0.8, 0.8);
        ctx.beginPath();
        for (var n = 1; n < 80; n++) {
          var p = at(n / 80, 1), q = at(n / 80 + 0.006, 0), r = at(n / 80, -1);
          ctx.moveTo(p[0], p[1]);
          ctx.quadraticCurveTo(q[0], q[1], r[0], r[1]);
        }
        ctx.stroke();
      });
    },

    diatom: function (pen, b) {
      var l = b.p.length, w = b.p.width;
      var art = made(b, function () {
        var outline = around(44, function (a) {
          var u = Math.cos(a);
          return [l / 2 * u, w / 2 * Math.sign(Math.sin(a)) * Math.pow(Math.max(0, 1 - u * u), 0.72)];
        });
        var striae = [];
        for (var i = -11; i <= 11; i++) {
          var u = i / 12.5, half = w / 2 * Math.pow(1 - u * u, 0.72);
          striae.push([u * l / 2, half, u * l / 2 * 0.97, 0.56 * half], [u * l / 2, -half, u * l / 2 * 0.97, -0.56 * half]);
        }
        return { path: smooth(new Path2D(), outline), striae: lines(new Path2D(), striae),
          raphe: lines(new Path2D(), [[-0.45 * l, 0, -0.04 * l, 0], [0.04 * l, 0, 0.45 * l, 0]]) };
      });
      solid(pen, b, b.facing, [art.path], 1.3);
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 1, 0.16);                           // the plastids along both sides
        ctx.beginPath();
        ctx.ellipse(0, 0.24 * w, 0.34 * l, 0.16 * w, 0, 0, TURN);
        ctx.ellipse(0, -0.24 * w, 0.34 * l, 0.16 * w, 0, 0, TURN);
        ctx.fill();
        if (pen.detail(b) > 6) {
          fine(pen, 0.5, 0.7);
          ctx.stroke(art.striae);
        }
        fine(pen, 0.8, 0.85);
        ctx.stroke(art.raphe);
        ctx.globalAlpha = 1;
      });
    },

    /* Telescoping: the shorter, the stouter. */
    rotifer: function (pen, b) {
      var e = b.extent, w = b.p.width * Math.pow(b.p.length / e, 0.35), top = [], folds = [];
      function half(s) {                              // s from the head, 0 to 1
        if (s < 0.16) { return w / 2 * (0.34 + 0.16 * Math.sin(Math.PI * s / 0.16) + 0.9 * s); }
        if (s < 0.7) { return w / 2 * (0.48 + 0.52 * Math.sin(Math.PI * (s - 0.08) / 0.66)); }
        return w / 2 * (0.3 - 0.75 * (s - 0.7));
      }
      for (var i = 0; i <= 26; i++) { top.push([e * (0.5 - i / 26), half(i / 26)]); }
      var outline = top.concat(top.slice().reverse().map(function (p) { return [p[0], -p[1]]; }));
      [0.16, 0.28, 0.68, 0.78, 0.88].forEach(function (s) { folds.push([e * (0.5 - s), -half(s), e * (0.5 - s), half(s)]); });
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 1.3, 1);
        ctx.stroke(lines(new Path2D(), [[-0.49 * e, 0, -0.54 * e, 0.07 * w], [-0.49 * e, 0, -0.54 * e, -0.07 * w]]));
      });
      solid(pen, b, b.facing, [smooth(new Path2D(), outline)], 1.4);
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.7);
        ctx.stroke(lines(new Path2D(), folds));
        var x = e * (0.5 - 0.3), gape = 0.035 * w * (1 + Math.sin(b.age * 9));
        fine(pen, 1.2, 0.95);
        ctx.beginPath();                              // the jaws, which pulse
        ctx.ellipse(x, 0.07 * w + gape, 0.1 * w, 0.06 * w, 0, 0, Math.PI);
        ctx.ellipse(x, -0.07 * w - gape, 0.1 * w, 0.06 * w, 0, Math.PI, TURN);
        ctx.stroke();
        if (!b.grains) { b.grains = strewn(b, 40, 0.4, 0.5, 1); }
        fine(pen, 1, 0.65);
        ctx.beginPath();
        b.grains.forEach(function (g) { spot(ctx, (g[0] - 0.02) * e, g[2] * w * Math.sin(g[1]), Math.max(0.7 * g[3], 0.5 / pen.scale)); });
        ctx.fill();
        ctx.globalAlpha = 1;
      });
    },

    grain: function (pen, b) {
      var art = made(b, function (l, w, rng) {
        var count = 6 + Math.floor(rng() * 3), corners = around(count, function (a) {
          var turned = a + 0.5 * (rng() - 0.5), far = 0.82 + 0.18 * rng();
          return [l / 2 * far * Math.cos(turned), w / 2 * far * Math.sin(turned)];
        });
        var path = new Path2D(), facets = [], heart = [0.12 * l * (rng() - 0.5), 0.12 * w * (rng() - 0.5)];
        corners.forEach(function (p, i) {
          if (i) { path.lineTo(p[0], p[1]); } else { path.moveTo(p[0], p[1]); }
          if (i % 2) { facets.push([p[0], p[1], heart[0] + 0.3 * p[0], heart[1] + 0.3 * p[1]]); }
        });
        path.closePath();
        return { path: path, facets: lines(new Path2D(), facets) };
      });
      solid(pen, b, b.facing, [art.path], 1.7);
      onBody(pen, b, b.facing, function (ctx) {
        fine(pen, 0.6, 0.6);
        ctx.stroke(art.facets);
        ctx.globalAlpha = 1;
      });
    },

    fleck: function (pen, b) { mote(pen, b, 0.4 + 0.6 * Math.abs(Math.cos(b.tilt))); },   // it twinkles as it turns
    dot: function (pen, b) { mote(pen, b, 0.75); },
    rod: function (pen, b) { mote(pen, b, 0.8); }
  };

  /* A slug amoeba, along the path its head took; with the bulge on the side it burst to, if it bursts. */
  function slug(pen, b, bursts) {
    var w = b.p.width, path = [[b.x, b.y]].concat(b.path.slice(0, SLUG)), left = [], right = [];
    path.forEach(function (p, i) {
      var q = path[Math.min(i + 1, SLUG)], o = path[Math.max(i - 1, 0)];
      var dx = o[0] - q[0], dy = o[1] - q[1], d = Math.hypot(dx, dy) || 1, s = i / SLUG;
      var half = w / 2 * Math.sqrt(Math.max(0, 1 - Math.pow(Math.max(0, 0.12 - s) / 0.12, 2))) * (1 - 0.5 * Math.pow(s, 1.6)) * (s > 0.93 ? 0.8 : 1);
      left.push([p[0] - b.x - dy / d * half, p[1] - b.y + dx / d * half]);
      right.push([p[0] - b.x + dy / d * half, p[1] - b.y - dx / d * half]);
    });
    var u = 1 - b.left / b.total, burst = Math.min(1, 4 * u) * (1 - Math.max(0, (u - 0.45) / 0.55));
    var way = b.heading + 1.1 * b.side * (1 - u);
    var bulge = new Path2D();
    if (bursts) {
      spot(bulge, path[2][0] - b.x + 0.3 * w * burst * Math.cos(way), path[2][1] - b.y + 0.3 * w * burst * Math.sin(way), w * (0.2 + 0.2 * burst));
    }
    solid(pen, b, 0, [smooth(new Path2D(), left.concat(right.reverse())), bulge], 1);
    if (!b.grains) {
      var rng = chance(b.grain);
      b.grains = around(34, function () { return [0.14 + 0.8 * rng(), 2 * rng() - 1, rng()]; });
    }
    onBody(pen, b, 0, function (ctx) {
      fine(pen, 1, 0.75);
      ctx.beginPath();
      b.grains.forEach(function (g) {
        var n = g[0] * SLUG, i = Math.floor(n), p = path[i], q = path[i + 1], t = n - i;
        var dx = p[0] - q[0], dy = p[1] - q[1], d = Math.hypot(dx, dy) || 1, aside = 0.34 * w * g[1] * (1 - 0.5 * g[0]);
        spot(ctx, p[0] + (q[0] - p[0]) * t - b.x - dy / d * aside, p[1] + (q[1] - p[1]) * t - b.y + dx / d * aside, Math.max(0.3, 0.45 / pen.scale));
      });
      ctx.fill();
      ctx.globalAlpha = 1;
    });
  }

  function cellGrains(pen, b, count) {
    if (pen.detail(b) < 4) { return; }
    onBody(pen, b, b.facing, function (ctx) {
      if (!b.grains) { b.grains = strewn(b, count, 0.85 * b.p.length, 0.85 * b.p.width, 0.06 * b.p.width); }
      fine(pen, 1, 0.7);
      turningGrains(pen, b.grains, 0.3 * b.phase);
      ctx.globalAlpha = 1;
    });
  }

  /* A worm along its middle line (absolute, head first); `half` gives its half width at share s, `inside` draws in it. */
  function wormBody(pen, b, line, half, inside) {
    var last = line.length - 1, top = [], low = [];
    function normalAt(i) {
      var p = line[Math.max(i - 1, 0)], q = line[Math.min(i + 1, last)], dx = q[0] - p[0], dy = q[1] - p[1], d = Math.hypot(dx, dy) || 1;
      return [-dy / d, dx / d];
    }
    /* The point at share s along and `aside` half widths beside the middle line. */
    function at(s, aside) {
      var n = Math.min(s, 0.9999) * last, i = Math.floor(n), t = n - i, p = line[i], q = line[i + 1], m = normalAt(i), h = half(s) * aside;
      return [p[0] + (q[0] - p[0]) * t - b.x + m[0] * h, p[1] + (q[1] - p[1]) * t - b.y + m[1] * h];
    }
    line.forEach(function (p, i) {
      var m = normalAt(i), h = half(i / last);
      top.push([p[0] - b.x + m[0] * h, p[1] - b.y + m[1] * h]);
      low.push([p[0] - b.x - m[0] * h, p[1] - b.y - m[1] * h]);
    });
    var path = new Path2D();
    smooth(path, top.concat(low.reverse()));
    var broad = pen.detail(b) > 7;
    solid(pen, b, 0, [path], broad ? 1.6 : 0.9);
    onBody(pen, b, 0, function (ctx) {
      if (broad || b.body === "ring-worm") {
        inside(ctx, at, path);
      } else {                                        // a clear hair with the darker line of its gut
        fine(pen, 0.4 * b.p.width * pen.scale, 0.45);
        ctx.beginPath();
        for (var i = 0; i <= 20; i++) {
          var p = at(0.1 + 0.78 * i / 20, 0);
          if (i) { ctx.lineTo(p[0], p[1]); } else { ctx.moveTo(p[0], p[1]); }
        }
        ctx.stroke();
      }
      ctx.globalAlpha = 1;
    });
  }

  /* What is at or below what the lens resolves: its true size, blurred by the lens, and the paler the smaller. */
  function mote(pen, b, alpha) {
    var ctx = pen.ctx, l = b.p.length, w = b.p.width, blur = pen.resolution;
    var wide = Math.hypot(w, blur) * pen.scale, long = Math.max(0, l - w) * pen.scale;
    var seen = Math.max(wide, 1.3);
    ctx.globalAlpha = Math.max(0.22, alpha * Math.min(1, w / blur) * Math.min(1, 0.35 + 0.65 * wide / seen));
    ctx.strokeStyle = pen.ink;
    ctx.lineWidth = seen;
    ctx.beginPath();
    var dx = Math.cos(b.facing) * (long / 2 + 0.01), dy = Math.sin(b.facing) * (long / 2 + 0.01);
    ctx.moveTo(b.x * pen.scale - dx, b.y * pen.scale - dy);
    ctx.lineTo(b.x * pen.scale + dx, b.y * pen.scale + dy);
    ctx.stroke();
    ctx.globalAlpha = 1;
  }

  /* How dark a body is when only its outline shows: clear cells are missed at low power. */
  var TONE = { amoeba: 0.14, "slug-amoeba": 0.14, "smooth-slug-amoeba": 0.14, "slipper-ciliate": 0.6, "ball-ciliate": 0.5, dome: 0.75, flagellate: 0.45, "gliding-flagellate": 0.35, euglenid: 0.4, "bean-ciliate": 0.75,
    "bristle-ciliate": 0.65, "pear-ciliate": 0.6, "tailed-ciliate": 0.5, flask: 0.7, diatom: 0.6, grain: 0.8, rotifer: 0.6 };

  /* At low power: a hair for a worm, a speck for the rest. */
  function silhouette(pen, b) {
    var ctx = pen.ctx, l = b.p.length * pen.scale, w = b.p.width * pen.scale;
    ctx.fillStyle = ctx.strokeStyle = pen.ink;
    if (b.body === "worm") {
      var line = spine(b, 24);
      ctx.lineWidth = Math.max(0.9, 0.8 * w);
      ctx.globalAlpha = 0.85;
      ctx.beginPath();
      line.forEach(function (p, i) {
        if (i) { ctx.lineTo(p[0] * pen.scale, p[1] * pen.scale); } else { ctx.moveTo(p[0] * pen.scale, p[1] * pen.scale); }
      });
      ctx.stroke();
    } else {
      var blur = pen.resolution * pen.scale, size = Math.sqrt(b.p.length * b.p.width);
      ctx.globalAlpha = (TONE[b.body] || 0.5) * Math.min(1, Math.pow(size / pen.resolution, 2) / 4 + 0.2);
      ctx.beginPath();
      ctx.ellipse(b.x * pen.scale, b.y * pen.scale, Math.max(0.65, Math.hypot((b.extent || b.p.length) * pen.scale, blur / 2) / 2),
        Math.max(0.65, Math.hypot(w, blur / 2) / 2), b.facing, 0, TURN);
      ctx.fill();
      if (l > 5 && TONE[b.body] > 0.3) {
        ctx.lineWidth = 0.7;
        ctx.globalAlpha = 0.9;
        ctx.stroke();
      }
    }
    ctx.globalAlpha = 1;
  }

  /* ---------- drawing: the field ---------- */

  /* Whether a body is large enough to show at all, as a dot, through an objective that resolves `resolved` µm. */
  function seen(length, width, resolved) { return Math.sqrt(length * width) >= 0.6 * resolved; }

  /* Draws a field into the top left `pixels` × `pixels` of a canvas.
   * View: pixels, ink and paper (CSS colours), aperture of the objective, trails (true or false), font. */
  function draw(ctx, field, view) {
    var scale = view.pixels / field.diameter * 0.985;   // leaves room for the rim
    var pen = { ctx: ctx, ink: view.ink, paper: view.paper, scale: scale, resolution: resolution(view.aperture),
      detail: function (b) { return b.p.width * scale; } };
    var r = field.radius * scale;
    ctx.clearRect(0, 0, view.pixels, view.pixels);
    ctx.save();
    ctx.translate(view.pixels / 2, view.pixels / 2);
    ctx.lineCap = ctx.lineJoin = "round";
    ctx.save();
    ctx.beginPath();
    ctx.arc(0, 0, r, 0, TURN);
    ctx.fillStyle = view.paper;
    ctx.fill();
    ctx.clip();
    var shown = field.bodies.filter(function (b) { return seen(b.p.length, b.p.width, pen.resolution); });
    if (view.trails) { trails(pen, shown); }
    shown.forEach(function (b) {
      if (Math.hypot(b.x, b.y) > field.radius + b.reach) { return; }
      if (pen.detail(b) < 3 && !MOTES[b.body]) { silhouette(pen, b); } else { BODIES[b.body](pen, b); }
    });
    ctx.restore();
    ctx.strokeStyle = view.ink;
    ctx.lineWidth = 2;
    ctx.beginPath();
    ctx.arc(0, 0, r, 0, TURN);
    ctx.stroke();
    scaleBar(pen, field, view);
    ctx.restore();
  }

  var MOTES = { fleck: true, dot: true, rod: true };

  /* Where each went in the last seconds: a line, with a dot for every second. */
  function trails(pen, bodies) {
    var ctx = pen.ctx, every = Math.round(1 / TRAIL_STEP);
    ctx.strokeStyle = ctx.fillStyle = pen.ink;
    ctx.lineWidth = 0.9;
    ctx.globalAlpha = 0.42;
    ctx.beginPath();
    bodies.forEach(function (b) {
      for (var i = 0; i < b.trail.length; i += 3) {
        var x = b.trail[i] * pen.scale, y = b.trail[i + 1] * pen.scale;
        if (i && b.trail[i + 2] === b.trail[i - 1]) { ctx.lineTo(x, y); } else { ctx.moveTo(x, y); }
      }
      if (b.trail.length && b.trail[b.trail.length - 1] === b.entries) { ctx.lineTo(b.x * pen.scale, b.y * pen.scale); }
    });
    ctx.stroke();
    ctx.globalAlpha = 0.75;
    ctx.beginPath();
    bodies.forEach(function (b) {                     // none on a jiggle: they would hide it
      if (b.trail.length && Math.hypot(b.x - b.trail[0], b.y - b.trail[1]) * pen.scale < 6 && b.trail[2] === b.entries) { return; }
      for (var i = b.trail.length - 3 * every; i >= 0; i -= 3 * every) { spot(ctx, b.trail[i] * pen.scale, b.trail[i + 1] * pen.scale, 1.5); }
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
  function scaleBar(pen, field, view) {
    var ctx = pen.ctx, length = barLength(field.diameter), edge = view.pixels / 2 - 1;
    ctx.font = view.font || "13px sans-serif";
    ctx.textAlign = "right";
    ctx.textBaseline = "bottom";
    ctx.fillStyle = view.ink;
    ctx.fillText(length >= 1000 ? length / 1000 + " mm" : length + " µm", edge, edge - 6);
    ctx.fillRect(edge - length * pen.scale, edge - 3, length * pen.scale, 3);
  }

  return {
    createField: createField, step: step, draw: draw, spine: spine, seen: seen, diffusion: diffusion, rodDiffusion: rodDiffusion,
    rodTurning: rodTurning, resolution: resolution, motions: Object.keys(MOTIONS), bodies: Object.keys(BODIES),
    trailSeconds: TRAIL_STEP * TRAIL_POINTS
  };
});
