/* What every manner of moving is made of: a step ahead, a stray, a spell of doing one thing.
 *
 * `motions` holds one object a manner: start(body, here), once, and move(body, seconds, here), at each tick.
 * A body has its place x, y, its course `heading`, the way it is drawn `facing`, a `phase` that turns or
 * beats, and `p`, its own figures.
 */
(function (field) {
  "use strict";
  field.TURN = 2 * Math.PI;
  field.DEGREE = Math.PI / 180;
  field.motions = { still: { start: function () {}, move: function () {} } };

  field.ahead = function (b, distance) {
    b.x += distance * Math.cos(b.heading);
    b.y += distance * Math.sin(b.heading);
  };

  field.stray = function (b, dt) {
    if (b.p.wander) { b.heading += b.p.wander * field.DEGREE * Math.sqrt(dt) * field.normal(b); }
  };

  /* Counts down what it is doing; true when that is over. */
  field.over = function (b, dt) {
    b.left -= dt;
    return b.left <= 0;
  };

  field.begin = function (b, state, seconds) {
    b.state = state;
    b.left = seconds;
  };

  /* From running to resting and back; true when it has just set off again. */
  field.takeTurns = function (b, dt) {
    if (!field.over(b, dt)) { return false; }
    var next = b.state === "run" ? "rest" : "run";
    field.begin(b, next, field.pick(b, next));
    return next === "run";
  };

  /* Starts in the midst of what it does, so that bodies are not in step. */
  field.midway = function (b, states) {
    var state = states[Math.floor(b.rng() * states.length)];
    field.begin(b, state, field.pick(b, state) * b.rng());
  };

  /* Turns part of a planned swing of the course: a turn takes a moment. */
  field.swing = function (b, share) {
    if (Math.abs(b.swing || 0) < 0.001) { return 0; }
    var part = b.swing * Math.min(1, share);
    b.heading += part;
    b.swing -= part;
    return part;
  };
})(self.WetmountField);
