/* Shelled amoebae: the shell is drawn once; the arms reach out from under it before it drags. */
(function (field) {
  "use strict";
  var TURN = field.TURN, looks = field.looks, around = field.around;

  /* Thread-like arms out of the mouth of a flask. */
  function threads(pen, b) {
    if (b.arm < 0.03) { return; }
    var l = b.p.length, w = b.p.width, ctx = pen.ctx;
    ctx.beginPath();
    [-0.5, -0.12, 0.2, 0.55].forEach(function (way, i) {
      field.whip(ctx, 0.46 * l, 0.1 * w * way, way, b.arm * l * (0.4 + 0.12 * (i % 2)), 0.04 * l, 0.7, b.age / 3 + i);
    });
    field.fine(pen, 0.8, 0.8);
    ctx.stroke();
  }

  /* Blunt fingers from under the front edge, or out of a mouth at `from` of the length. */
  function fingers(from) {
    return function (pen, b) {
      if (b.arm < 0.03) { return; }
      var l = b.p.length, w = b.p.width;
      [-0.5, 0.05, 0.45].forEach(function (a, i) {
        var arm = new Path2D();
        arm.ellipse(from * l * Math.cos(a), 0.46 * w * Math.sin(a), b.arm * l * (0.2 + 0.05 * i), 0.05 * w, a, 0, TURN);
        field.solid(pen, arm, 0.9);
      });
    };
  }

  function halfOf(w) { return function (u) { return 0.94 * w / 2 * Math.sqrt(Math.max(0, 1 - u * u)) * (1 - 0.34 * u); }; }

  function flaskOutline(l, w) {
    var half = halfOf(w), top = [];
    for (var i = 0; i <= 30; i++) { top.push([l / 2 * (-1 + 1.93 * i / 30), half(-1 + 1.93 * i / 30)]); }
    return top.concat(top.slice().reverse().map(function (p) { return [p[0], -p[1]]; }));
  }

  function lip(pen, l, w) { field.strokes(pen, field.lines([[0.455 * l, -0.16 * w, 0.455 * l, 0.16 * w]]), 1.2, 0.9); }

  /* Small and smooth, with the cell showing through. */
  looks["smooth-flask"] = {
    tone: 0.6, under: threads,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width;
      field.solid(pen, field.closed(flaskOutline(l, w)), 1.5);
      field.fine(pen, 1, 0.5);
      field.turningGrains(pen, field.strewn(b, 14, 0.7 * l, 0.7 * w, 0.04 * w), 0);
      lip(pen, l, w);
    }
  };

  /* Mouth in front, rows of round scales: one for about every 6 µm. */
  looks.flask = {
    tone: 0.7, under: threads,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, half = halfOf(w), path = field.closed(flaskOutline(l, w));
      field.solid(pen, path, 1.5);
      if (2.2 * pen.scale > 1.6) {
        var rows = Math.max(4, Math.round(l / 6)), across = Math.max(3, Math.round(w / 6)), scales = new Path2D();
        for (var row = 0; row < rows; row++) {
          for (var i = -across; i <= across; i++) {
            var u = -0.9 + 1.75 * (row + 0.5) / rows, v = (i + (row % 2 ? 0.5 : 0)) / (across / 2);
            if (Math.abs(v) < 0.9) { field.spot(scales, l / 2 * u, v * half(u), 2.2); }
          }
        }
        field.strokes(pen, scales, 0.55, 0.65);
      } else {
        field.tone(pen, path, 0.3);
      }
      lip(pen, l, w);
    }
  };

  /* The same built of sand: angular grains of many sizes, an uneven outline, blunt arms. */
  looks["grain-flask"] = {
    tone: 0.85, under: fingers(0.5), box: [0.6, 0.7],
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, half = halfOf(w), rng = field.chance(b.grain), big = Math.min(7, 0.16 * w);
      field.solid(pen, field.closed(flaskOutline(l, w).map(function (p) { return [p[0] * (0.98 + 0.04 * rng()), p[1] * (0.95 + 0.1 * rng())]; })), 1.6);
      for (var i = 0; i < 44; i++) {
        var u = -0.88 + 1.72 * (i + rng()) / 44, v = 1.5 * ((i * 0.618034 + 0.15 * rng()) % 1 - 0.5), size = big * (0.4 + 0.7 * rng()), grain = new Path2D();
        around(5, function (a) {
          var far = size * (0.75 + 0.4 * rng()), turned = a + i;
          grain.lineTo(l / 2 * u + far * Math.cos(turned), v * half(u) + far * Math.sin(turned));
        });
        grain.closePath();
        field.cover(pen, grain);
        field.tone(pen, grain, 0.05 + 0.25 * rng());
        field.strokes(pen, grain, 0.6, 0.75);
      }
      lip(pen, l, w);
    }
  };

  /* A clear pear; the mouth is round and lies on the underside, near the narrow front. */
  looks["pear-shell"] = {
    tone: 0.5, under: threads,
    paint: function (pen, b) {
      var l = b.p.length, w = b.p.width, mouth = new Path2D(), scales = new Path2D();
      field.solid(pen, field.closed(field.profile(l, w, [[0, 0.03], [0.05, 0.22], [0.35, 0.38], [0.7, 0.49], [0.9, 0.36], [1, 0.04]])), 1.4);
      if (pen.detail(b) > 8) {
        for (var i = 0; i < 24; i++) {
          var r = Math.sqrt((i + 0.5) / 24), a = TURN * i * 0.618034;
          field.spot(scales, -0.18 * l + 0.27 * l * r * Math.cos(a), 0.38 * w * r * Math.sin(a), 0.07 * w);
        }
        field.strokes(pen, scales, 0.5, 0.4);
      }
      mouth.ellipse(0.27 * l, 0, 0.11 * l, 0.14 * w, 0, 0, TURN);
      mouth.moveTo(0.34 * l, 0);
      mouth.ellipse(0.27 * l, 0, 0.07 * l, 0.09 * w, 0, 0, TURN);
      field.strokes(pen, mouth, 0.9, 0.9);
    }
  };

  /* A round shell from above; the mouth shows through as a ring or a slit. */
  function dome(o) {
    return {
      tone: 0.75, under: fingers(0.46),
      paint: function (pen, b) {
        var l = b.p.length, w = b.p.width, rng = field.chance(b.grain), mouth = new Path2D();
        field.solid(pen, field.closed(field.oval(l, w, o.taper || 0)), 1.5);
        field.fine(pen, 1, 0.7);
        pen.ctx.beginPath();
        for (var i = 0; i < 90; i++) {
          var r = 0.48 * Math.sqrt((i + rng()) / 90), a = TURN * (i * 0.618034), x = l * r * Math.cos(a), y = w * r * Math.sin(a);
          if (Math.hypot((x - o.mouth * l) / l, y / w) > 0.2) { field.spot(pen.ctx, x, y, 0.55 / pen.scale); }
        }
        pen.ctx.fill();
        if (o.slit) {
          mouth.moveTo(o.mouth * l, -0.3 * w);
          mouth.quadraticCurveTo((o.mouth + 0.1) * l, 0, o.mouth * l, 0.3 * w);
        } else {
          mouth.ellipse(o.mouth * l, 0, 0.17 * l * (o.mouth ? 0.75 : 1), 0.17 * w * (o.mouth ? 1.2 : 1), 0, 0, TURN);
        }
        field.strokes(pen, mouth, o.slit ? 1.4 : 0.9, 0.9);
      }
    };
  }

  looks.dome = dome({ mouth: 0 });
  looks["lopsided-dome"] = dome({ mouth: 0.2, taper: 0.08 });
  looks["slit-dome"] = dome({ mouth: 0.16, slit: true });
})(self.WetmountField);
