/* Bodies that change their length or their girth as they go: looping, creeping by waves, squirming. */
(function (field) {
  "use strict";
  var TURN = field.TURN, DEGREE = field.DEGREE, motions = field.motions, ahead = field.ahead;

  /* How long a looping body is now: reaches out, holds, draws up, holds. */
  function extentAt(b) {
    var c = b.cycle;
    var out = c < 0.45 ? c / 0.45 : c < 0.55 ? 1 : c < 0.92 ? 1 - (c - 0.55) / 0.37 : 0;
    var eased = out * out * (3 - 2 * out);
    return b.p.length * (b.p.shortest + (1 - b.p.shortest) * eased);
  }

  /* The foot holds while it reaches out, the head holds while it draws up: each moves the middle on by half the change. */
  motions.loop = {
    start: function (b) {
      b.cycle = b.rng();
      b.extent = extentAt(b);
    },
    move: function (b, dt) {
      var was = b.extent, foot = was / 2;
      b.cycle += b.p.loops * dt;
      if (b.cycle >= 1) {
        b.cycle -= 1;
        b.swing = field.either(b) * field.pick(b, "turn") * DEGREE;
      }
      b.extent = extentAt(b);
      if (b.swing && b.extent > was) {
        ahead(b, -foot);
        field.swing(b, 4 * dt);
        ahead(b, foot);
      }
      ahead(b, Math.abs(b.extent - was) / 2);
      b.facing = b.heading;
    }
  };

  /* Waves of thick and thin run along it; it creeps on while they do, and stops to feel about. */
  motions.creep = {
    start: function (b) { field.midway(b, ["run", "run", "rest"]); },
    move: function (b, dt) {
      if (field.takeTurns(b, dt)) { b.swing = field.either(b) * field.pick(b, "turn") * DEGREE; }
      field.swing(b, 1.2 * dt);
      if (b.state === "run") {
        field.stray(b, dt);
        ahead(b, b.p.speed * dt);
        b.phase += TURN * b.p.waves * dt;
      }
      b.facing = b.heading;
    }
  };

  /* A swelling travels along the cell, which stays about where it is. */
  motions.squirm = {
    start: function (b) { b.bend = field.either(b) * 0.12; },
    move: function (b, dt) {
      field.stray(b, dt);
      b.phase += TURN * b.p.waves * dt;
      b.heading += b.bend * Math.sin(b.phase / 3) * dt;
      ahead(b, b.p.speed * dt);
      b.facing = b.heading;
    }
  };

  /* Waves of bending that run from head to tail; see `spine`. */
  motions.undulate = {
    start: function (b) {
      if (b.p.rest) { field.midway(b, ["run", "rest"]); }
    },
    move: function (b, dt) {
      if (b.p.rest) { field.takeTurns(b, dt); }
      if (b.state === "run") {
        field.stray(b, dt);
        b.phase += TURN * b.p.waves * dt;
        ahead(b, b.p.speed * dt);
      }
      b.facing = b.heading;
    }
  };

  /* The middle line of a body that bends in waves, head first: `points + 1` of [x, y] in µm about its own middle, course along +x.
   * The bending is a wave that runs towards the tail: bend(s, t) ~ cos(2π (s / wavelength - t × waves)),
   * s in body lengths. The middle of the line stays at the body's place and its mean slant on its course. */
  field.waveLine = function (b, points) {
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
      var way = Math.PI + slant[i] - mean;
      x += length * Math.cos(way);
      y += length * Math.sin(way);
      line.push([x, y]);
      cx += x;
      cy += y;
    }
    cx /= points + 1;
    cy /= points + 1;
    line.forEach(function (p) {
      p[0] -= cx;
      p[1] -= cy;
    });
    return line;
  };

  /* The same line where the body lies in the field. */
  field.spine = function (b, points) {
    var c = Math.cos(b.heading), s = Math.sin(b.heading);
    return field.waveLine(b, points).map(function (p) { return [p[0] * c - p[1] * s + b.x, p[0] * s + p[1] * c + b.y]; });
  };
})(self.WetmountField);
