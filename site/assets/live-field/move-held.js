/* Held fast at one place: a stalk that coils, a cell that rocks on its thread. */
(function (field) {
  "use strict";
  var TURN = field.TURN, pick = field.pick;
  var SNAP = 0.009;                   // s in which a stalk closes; the figure with its source is in the manner's words

  /* Stretched and feeding, then shut at once, then slowly stretched again. `coil` is 0 when stretched, 1 when shut. */
  field.motions.snap = {
    start: function (b) {
      b.coil = 0;
      b.heading = Math.atan2(-b.y, -b.x) + 0.7 * field.normal(b);         // it stands into the field
      field.midway(b, ["rest"]);
    },
    move: function (b, dt) {
      if (field.over(b, dt)) {
        var next = { rest: "shut", shut: "stretch", stretch: "rest" }[b.state];
        field.begin(b, next, next === "shut" ? 0.25 : pick(b, next));
        b.total = b.left;
        if (next === "rest") { b.coil = 0; }
      }
      if (b.state === "shut") { b.coil = Math.min(1, b.coil + dt / SNAP); }
      if (b.state === "stretch") { b.coil = Math.pow(Math.max(0, b.left / b.total), 1.5); }
      b.phase += TURN * dt;
      b.facing = b.heading + 0.12 * Math.sin(0.7 * b.age + b.grain % 7);
    }
  };

  field.motions.rock = {
    start: function () {},
    move: function (b, dt) {
      b.phase += TURN * b.p.wobbles * dt;
      b.facing = b.heading + b.p.tilt * field.DEGREE * Math.sin(b.phase);
    }
  };
})(self.WetmountField);
