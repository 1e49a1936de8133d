/* On a surface, with a body that keeps its outline: gliding, walking, sliding to and fro, dragging a shell. */
(function (field) {
  "use strict";
  var TURN = field.TURN, DEGREE = field.DEGREE, motions = field.motions;
  var pick = field.pick, begin = field.begin, ahead = field.ahead;

  motions.glide = {
    start: function (b) { b.bend = b.p.circling ? field.either(b) * b.p.circling * DEGREE : 0; },
    move: function (b, dt) {
      field.stray(b, dt);
      b.heading += b.bend * dt;
      ahead(b, b.p.speed * dt);
      b.phase += TURN * 2.2 * dt;     // of the whip
      b.facing = b.heading;
    }
  };

  /* Runs, stops, steps back, and sets off another way. */
  motions.walk = {
    start: function (b) { field.midway(b, ["run", "rest"]); },
    move: function (b, dt) {
      if (field.over(b, dt)) {
        var next = { run: "rest", rest: "back", back: "run" }[b.state];
        begin(b, next, pick(b, next));
        if (next === "run") { b.swing = field.either(b) * pick(b, "turn") * DEGREE; }
      }
      field.swing(b, 9 * dt);
      b.pace = b.state === "run" ? b.p.speed : b.state === "back" ? -b.p.speed / 2 : 0;
      ahead(b, b.pace * dt);
      b.phase += TURN * b.pace / b.p.length * 1.6 * dt;
      b.facing = b.heading;
    }
  };

  /* On legs: each leg makes `steps` a second while it walks. One with a spring is now and then gone at once. */
  motions.stride = {
    start: function (b) {
      field.midway(b, ["run", "run", "rest"]);
      b.waits = b.p.leap ? field.exponential(b, b.p.leap) : Infinity;
    },
    move: function (b, dt, here) {
      if (field.takeTurns(b, dt)) { b.swing = field.either(b) * pick(b, "turn") * DEGREE; }
      field.swing(b, 3 * dt);
      if (b.state === "run") {
        field.stray(b, dt);
        ahead(b, b.p.speed * dt);
        b.phase += TURN * b.p.steps * dt;
      }
      b.waits -= dt;
      if (b.waits <= 0) {
        ahead(b, 4 * here.diameter);  // far out of sight within one tick
        b.waits = field.exponential(b, b.p.leap);
      }
      b.facing = b.heading;
    }
  };

  motions.shuttle = {
    start: function (b) { field.midway(b, ["run", "rest"]); },
    move: function (b, dt) {
      if (field.takeTurns(b, dt)) { b.sign = -b.sign; }
      if (b.state === "run") {
        field.stray(b, dt);
        ahead(b, b.sign * b.p.speed * dt);
        b.phase += TURN * dt;
      }
      b.facing = b.heading;
    }
  };

  motions.drag = {
    start: function (b) {
      b.arm = 0;
      field.midway(b, ["rest", "rest", "run"]);
    },
    move: function (b, dt) {
      if (field.over(b, dt)) {
        if (b.state === "rest") {
          b.swing = 0.35 * field.normal(b);
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
  };
})(self.WetmountField);
