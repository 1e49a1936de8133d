/* Free in the water: jiggling, swimming on a screw path, darting, wobbling, and the runs of bacteria. */
(function (field) {
  "use strict";
  var TURN = field.TURN, DEGREE = field.DEGREE, motions = field.motions;
  var SLOWING = 1.5;                  // s from full speed to a stop
  var pick = field.pick, begin = field.begin, over = field.over, ahead = field.ahead, normal = field.normal;

  /* A Stokes-Einstein step each time, and a rod or flake turns as well. */
  motions.jiggle = {
    start: function (b, here) {
      b.tilt = TURN * b.rng();
      b.turning = field.rodTurning(b.p.length, Math.min(b.p.width, b.p.length / 2), here.temperature, here.viscosity);
    },
    move: function (b, dt, here) {
      field.jitter(b, here, dt);
      var turning = Math.sqrt(2 * b.turning * dt);
      b.heading += turning * normal(b);
      b.tilt += turning * normal(b);
      b.facing = b.heading;
    }
  };

  /* One step along a screw about its course, at `speed` along the axis. */
  function screw(b, speed, dt) {
    ahead(b, speed * dt);
    var half = b.p["spiral-width"] * b.p.length;
    var before = half * Math.sin(b.phase);
    b.phase += TURN * b.p.turns * dt;
    var aside = half * Math.sin(b.phase) - before;
    b.x -= Math.sin(b.heading) * aside;
    b.y += Math.cos(b.heading) * aside;
    b.facing = b.heading + 0.8 * Math.atan2(aside, b.p.speed * dt);
  }

  /* Along a screw about a straight or bending axis. */
  motions.swim = {
    start: function (b) { b.bend = b.p.circling ? field.either(b) * b.p.circling * DEGREE : 0; },
    move: function (b, dt) {
      field.stray(b, dt);
      b.heading += b.bend * dt;
      if (b.bend && b.rng() < dt / 3) { b.bend = field.either(b) * pick(b, "circling") * DEGREE; }
      screw(b, b.p.speed, dt);
    }
  };

  /* The same, but now and then it backs off, swings its front round, and goes on another way. */
  motions.recoil = {
    start: function (b) { begin(b, "run", pick(b, "run") * b.rng()); },
    move: function (b, dt) {
      if (over(b, dt)) {
        var next = b.state === "run" ? "back" : "run";
        begin(b, next, pick(b, next));
        if (next === "run") { b.swing = field.either(b) * pick(b, "turn") * DEGREE; }
      }
      if (b.state === "run" && field.swing(b, 5 * dt) === 0) { field.stray(b, dt); }
      screw(b, b.state === "run" ? b.p.speed : -0.7 * b.p.speed, dt);
    }
  };

  motions.dart = {
    start: function (b) { begin(b, "rest", pick(b, "rest") * b.rng()); },
    move: function (b, dt) {
      if (field.takeTurns(b, dt)) { b.heading += 1.1 * normal(b); }
      if (b.state === "run") {
        ahead(b, b.p.speed * dt);
        b.phase += TURN * 3 * dt;
      }
      b.facing = b.heading;
    }
  };

  /* A dart with its rear end ahead. */
  motions.leap = {
    start: motions.dart.start,
    move: function (b, dt) {
      motions.dart.move(b, dt);
      b.facing = b.heading + TURN / 2;
    }
  };

  /* Swims, slows and stops, and draws up into a ball that lies there; after a while another swims in in its place.
   * `round` is 0 while it swims and 1 when it is a ball. */
  motions.settle = {
    start: function (b) {
      field.midway(b, ["run", "run", "rounding", "rest"]);
      b.round = b.state === "rest" ? 1 : b.state === "rounding" ? b.rng() : 0;
      if (b.state === "rounding") { b.left = (1 - b.round) * b.p.rounding; }
    },
    move: function (b, dt, here) {
      if (over(b, dt)) {
        var next = { run: "slow", slow: "rounding", rounding: "rest", rest: "run" }[b.state];
        begin(b, next, next === "slow" ? SLOWING : next === "rounding" ? b.p.rounding : pick(b, next));
        if (next === "run") {
          b.round = 0;
          field.enter(b, here);
        }
      }
      if (b.state === "rounding") { b.round = Math.min(1, b.round + dt / b.p.rounding); }
      if (b.state === "rest") { b.round = 1; }
      if (b.state === "run") {
        field.stray(b, dt);
        screw(b, b.p.speed, dt);
      } else if (b.state === "slow") {
        screw(b, b.p.speed * b.left / SLOWING, dt);
      } else {
        field.jitter(b, here, dt);
      }
    }
  };

  motions.wobble = {
    start: function (b) { field.midway(b, ["run", "rest"]); },
    move: function (b, dt) {
      if (field.takeTurns(b, dt)) { b.heading += 1.2 * normal(b); }
      b.phase += TURN * b.p.wobbles * dt;
      var running = b.state === "run";
      b.facing = b.heading + (running ? 1 : 0.25) * b.p.tilt * DEGREE * Math.sin(b.phase);
      if (running) {
        b.x += b.p.speed * dt * Math.cos(b.facing);
        b.y += b.p.speed * dt * Math.sin(b.facing);
      }
    }
  };

  /* Straight runs, tumbles on the spot. Turns are even over 0 to twice their mean, to either side. */
  motions.run = {
    start: function (b) { begin(b, "run", field.exponential(b, b.p.run)); },
    move: function (b, dt, here) {
      var left = dt;
      while (left > 0) {
        var part = Math.min(left, b.left);
        if (b.state === "run") {
          field.stray(b, part);
          ahead(b, b.p.speed * part);
        }
        left -= part;
        if (over(b, part)) {
          if (b.state === "run") {
            b.heading += field.either(b) * 2 * b.p.turn * DEGREE * b.rng();
            begin(b, "tumble", field.exponential(b, b.p.tumble));
          } else {
            begin(b, "run", field.exponential(b, b.p.run));
          }
        }
      }
      field.jitter(b, here, dt);
      b.facing += Math.sin(b.heading - b.facing) * Math.min(1, 20 * dt) + (b.state === "tumble" ? 0.25 * normal(b) : 0);
    }
  };

  /* A screw-shaped body that bores ahead and, after a short halt, back the same way without turning round. */
  motions.bore = {
    start: function (b) { field.midway(b, ["run", "rest"]); },
    move: function (b, dt, here) {
      if (field.takeTurns(b, dt)) { b.sign = -b.sign; }
      field.stray(b, dt);
      if (b.state === "run") {
        ahead(b, b.sign * b.p.speed * dt);
        b.phase += b.sign * TURN * b.p.turns * dt;
      }
      field.jitter(b, here, dt);
      b.facing = b.heading;
    }
  };
})(self.WetmountField);
