/* A field and its clock. Seeded, and every body has its own stream of chance, so the same seed gives
 * the same field whatever the frame rate. */
(function (field) {
  "use strict";
  var TURN = field.TURN;
  var STEP = 1 / 120;                 // s; the clock of the simulation, whatever the frame rate
  field.TRAIL_STEP = 0.1;             // s between two points of a trail
  field.TRAIL_POINTS = 40;
  field.trailSeconds = field.TRAIL_STEP * field.TRAIL_POINTS;

  function createBody(mover, index, here) {
    var b = {
      mover: mover, motion: field.motions[mover.motion], free: !mover.holds, ranges: mover.parameters, p: {},
      rng: field.chance(field.seedOf([here.seed, mover.id, index].join("/"))), spare: null, age: 0, state: "run", left: 0,
      heading: 0, facing: 0, phase: 0, sign: 1, pace: 0, entries: 0, trail: []
    };
    var size = b.rng();
    Object.keys(mover.parameters).forEach(function (name) {
      b.p[name] = field.at(mover.parameters[name], name === "length" || name === "width" || name === "ball" ? size : b.rng());
    });
    b.look = mover.shape ? field.drawnLook(mover) : field.looks[mover.body];
    if (mover.shape) { b.p.width = mover.shape.wide * b.p.length; }   // as it is drawn
    b.reach = 0.75 * Math.max(b.p.length, b.p.width);
    var r = here.radius * Math.sqrt(b.rng());
    var angle = TURN * b.rng();
    b.x = r * Math.cos(angle);
    b.y = r * Math.sin(angle);
    b.heading = b.facing = TURN * b.rng();
    b.phase = TURN * b.rng();
    b.grain = field.seedOf(mover.id + index);
    b.motion.start(b, here);
    return b;
  }

  /* A field of `diameter_um` with `movers`: [{id, motion, holds, count, parameters: {length: [low, high], ...}}, with
   * shape and deforms, or the name of a body of a look]}.
   * A parameter is one number or [low, high]. Options: seed (1), drift {speed µm/s, direction rad},
   * temperature (20 °C), viscosity (1.002 mPa s), bounds: "rim" (a body that leaves comes in again
   * elsewhere, so that counts stay) or "open". */
  field.createField = function (options) {
    var here = {
      seed: options.seed === undefined ? 1 : options.seed,
      diameter: options.diameter_um, radius: options.diameter_um / 2, time: 0, clock: 0,
      drift: options.drift || { speed: 0, direction: 0 },
      temperature: options.temperature === undefined ? 20 : options.temperature,
      viscosity: options.viscosity === undefined ? 1.002 : options.viscosity,
      bounds: options.bounds || "rim", bodies: []
    };
    options.movers.forEach(function (mover) {
      for (var i = 0; i < mover.count; i++) { here.bodies.push(createBody(mover, i, here)); }
    });
    return here;
  };

  /* Moves everything on by `dt` seconds, in whole ticks of the clock; what is left over waits. */
  field.step = function (here, dt) {
    here.clock += dt;
    var ticks = Math.floor(here.clock / STEP + 1e-6);
    here.clock -= ticks * STEP;
    for (var tick = 0; tick < ticks; tick++) { advance(here); }
  };

  function advance(here) {
    var dx = here.drift.speed * Math.cos(here.drift.direction) * STEP;
    var dy = here.drift.speed * Math.sin(here.drift.direction) * STEP;
    var before = Math.floor(here.time / field.TRAIL_STEP + 1e-6);
    here.time += STEP;
    var mark = Math.floor(here.time / field.TRAIL_STEP + 1e-6) > before;
    for (var i = 0; i < here.bodies.length; i++) {
      var b = here.bodies[i];
      b.age += STEP;
      b.motion.move(b, STEP, here);
      if (b.free) {
        b.x += dx;
        b.y += dy;
      }
      if (here.bounds === "rim" && Math.hypot(b.x, b.y) > here.radius + b.reach) { field.enter(b, here); }
      if (mark) {
        b.trail.push(b.x, b.y, b.entries);
        if (b.trail.length > 3 * (field.TRAIL_POINTS + 1)) { b.trail.splice(0, 3); }
      }
    }
  }

  /* Brings a body in again at the rim, on its way into the field: paths are spread evenly over the width they meet. */
  field.enter = function (b, here) {
    b.heading = b.facing = TURN * b.rng();
    b.sign = 1;
    var speed = b.p.speed || 0;
    var vx = speed * Math.cos(b.heading) + (b.free ? here.drift.speed * Math.cos(here.drift.direction) : 0);
    var vy = speed * Math.sin(b.heading) + (b.free ? here.drift.speed * Math.sin(here.drift.direction) : 0);
    var v = Math.hypot(vx, vy);
    var angle = v > 0 ? Math.atan2(vy, vx) : b.heading;
    var r = 0.999 * (here.radius + b.reach);
    var aside = (2 * b.rng() - 1) * 0.9 * here.radius;
    var back = Math.sqrt(r * r - aside * aside);
    b.x = -back * Math.cos(angle) - aside * Math.sin(angle);
    b.y = -back * Math.sin(angle) + aside * Math.cos(angle);
    b.entries += 1;
    if (b.path) { b.motion.start(b, here); }
  };
})(self.WetmountField);
