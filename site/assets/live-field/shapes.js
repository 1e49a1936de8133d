/* Shapes that bodies are made of: in µm, the middle of the body at 0, 0 and its head towards +x. */
(function (field) {
  "use strict";
  var TURN = field.TURN;

  /* A closed smooth line through the middles of its points, onto a canvas or a Path2D. */
  field.smooth = function (path, points) {
    var last = points[points.length - 1], first = points[0];
    path.moveTo((last[0] + first[0]) / 2, (last[1] + first[1]) / 2);
    for (var i = 0; i < points.length; i++) {
      var here = points[i], next = points[(i + 1) % points.length];
      path.quadraticCurveTo(here[0], here[1], (here[0] + next[0]) / 2, (here[1] + next[1]) / 2);
    }
    path.closePath();
    return path;
  };

  field.closed = function (points) { return field.smooth(new Path2D(), points); };

  /* Straight strokes [x, y, to x, to y] as one path. */
  field.lines = function (each) {
    var path = new Path2D();
    each.forEach(function (line) {
      path.moveTo(line[0], line[1]);
      path.lineTo(line[2], line[3]);
    });
    return path;
  };

  /* An outline from its half widths: pairs of share along (0 at the head) and half width as a share of `width`.
   * Between them runs a curve that goes through each and never swings beyond them (Fritsch and Carlson's slopes). */
  field.profile = function (length, width, pairs) {
    var last = pairs.length - 1, rise = [], slope = [], top = [], i;
    for (i = 0; i < last; i++) { rise.push((pairs[i + 1][1] - pairs[i][1]) / (pairs[i + 1][0] - pairs[i][0])); }
    for (i = 0; i <= last; i++) {
      var before = rise[Math.max(0, i - 1)], after = rise[Math.min(i, last - 1)];
      slope.push(before * after <= 0 ? 0 : 2 * before * after / (before + after));
    }
    for (i = 0; i < last; i++) {
      var p = pairs[i], q = pairs[i + 1], wide = q[0] - p[0], many = Math.max(2, Math.round(wide * 40));
      for (var n = 0; n < many; n++) {
        var t = n / many, left = 1 - t;
        top.push([length * (0.5 - p[0] - wide * t), width * (left * left * ((1 + 2 * t) * p[1] + t * wide * slope[i]) + t * t * ((1 + 2 * left) * q[1] - left * wide * slope[i + 1]))]);
      }
    }
    top.push([length * (0.5 - pairs[last][0]), width * pairs[last][1]]);
    return top.concat(top.slice().reverse().map(function (each) { return [each[0], -each[1]]; }));
  };

  /* Grains strewn in an oval, fixed by the body: [x, angle, share of the half width, radius]. */
  field.strewn = function (b, count, length, width, radius) {
    var rng = field.chance(b.grain), all = [];
    for (var i = 0; i < count; i++) {
      var x = (rng() - 0.5) * 0.8;
      all.push([x * length, TURN * rng(), width / 2 * 0.8 * Math.sqrt(1 - 4 * x * x * 0.9), radius * (0.6 + 0.8 * rng())]);
    }
    return all;
  };

  field.spot = function (path, x, y, r) {
    path.moveTo(x + r, y);
    path.arc(x, y, r, 0, TURN);
  };

})(self.WetmountField);
