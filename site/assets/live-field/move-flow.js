/* Amoebae: flowing with arms that swell and melt, and slugs whose front bursts out. */
(function (field) {
  "use strict";
  var motions = field.motions, pick = field.pick;
  field.SLUG = 14;                    // pieces in the path of a slug

  function newArm(b, age) {
    return { angle: b.heading + 0.95 * field.normal(b), age: age, life: pick(b, "lobe-time"), size: 0.45 + 0.4 * b.rng() };
  }

  /* How far an arm is out now, in half widths of the body. */
  field.swell = function (arm) { return arm.size * Math.pow(Math.sin(Math.PI * Math.min(1, arm.age)), 2); };

  /* Arms swell and melt away, mostly on the side it is going to; the body follows them. */
  motions.flow = {
    start: function (b) {
      b.arms = [0, 1, 2, 3, 4].map(function () { return newArm(b, b.rng()); });
    },
    move: function (b, dt) {
      var pull = 0;
      b.arms.forEach(function (arm, i) {
        arm.age += dt / arm.life;
        if (arm.age >= 1) { b.arms[i] = arm = newArm(b, 0); }
        pull += field.swell(arm) * Math.sin(arm.angle - b.heading);
      });
      b.heading += 0.02 * pull * dt;
      field.ahead(b, b.p.speed * dt);
      b.phase += b.p.speed * dt;      // how far the contents have streamed
      b.facing = b.heading;
    }
  };

  /* A slug whose front bursts out to one side, then the other. It is drawn along the path it took. */
  motions.erupt = {
    start: function (b) {
      b.side = field.either(b);
      b.path = [];
      for (var i = 0; i <= field.SLUG; i++) {
        var back = b.p.length * i / field.SLUG;
        b.path.push([b.x - Math.cos(b.heading) * back, b.y - Math.sin(b.heading) * back]);
      }
      b.total = pick(b, "burst");
      b.left = b.total * b.rng();
    },
    move: function (b, dt) {
      if (field.over(b, dt)) {
        b.side = b.rng() < 0.75 ? -b.side : b.side;
        b.heading += b.side * pick(b, "zigzag") * field.DEGREE;
        b.total = b.left = pick(b, "burst");
      }
      field.ahead(b, b.p.speed * dt * (0.4 + 1.2 * b.left / b.total));   // quick at first, then slowing; the mean is its speed
      var last = b.path[0];
      if (Math.hypot(b.x - last[0], b.y - last[1]) > b.p.length / field.SLUG) {
        b.path.unshift([b.x, b.y]);
        b.path.length = field.SLUG + 1;
      }
      b.facing = b.heading;
    }
  };
})(self.WetmountField);
