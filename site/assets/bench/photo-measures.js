/* Measures on a picture with a known scale, each with its uncertainty: the twin of keytool/bench/photo_measures.py.
 * scale = {umPerPart, relativeError}; points are [x, y] in pixels; circle may be null. */
(function (bench) {
  "use strict";
  function dist(a, b) { return Math.hypot(a[0] - b[0], a[1] - b[1]); }
  function chain(points) { var total = 0; for (var n = 1; n < points.length; n += 1) { total += dist(points[n - 1], points[n]); } return total; }

  function stretched(points, circle, distortion) {
    if (!circle) { return distortion / 2; }
    var far = Math.max.apply(null, points.map(function (each) { return Math.min(1, dist(each, [circle.x, circle.y]) / circle.radius); }));
    return distortion * far * far;
  }
  function scaleOfField(circle, fieldUm, edgeError, fieldError) {
    return { umPerPart: fieldUm / (2 * circle.radius), relativeError: Math.hypot(edgeError, fieldError) };
  }
  function length(points, scale, circle, endUm, distortion) {
    var um = chain(points) * scale.umPerPart;
    return { value: um, error: Math.hypot(Math.SQRT2 * endUm, um * scale.relativeError, um * stretched(points, circle, distortion)) };
  }
  function area(points, scale, circle, endUm, distortion) {
    var twice = 0;
    points.forEach(function (p, n) { var q = points[(n + 1) % points.length]; twice += p[0] * q[1] - q[0] * p[1]; });
    var um2 = Math.abs(twice) / 2 * scale.umPerPart * scale.umPerPart, around = chain(points.concat([points[0]])) * scale.umPerPart;
    var relative = 2 * Math.hypot(scale.relativeError, stretched(points, circle, distortion));
    return { value: um2, error: Math.hypot(around * endUm / Math.sqrt(Math.max(3, points.length)), um2 * relative) };
  }
  function angle(one, corner, two, scale, endUm) {
    var turn = Math.abs((Math.atan2(one[1] - corner[1], one[0] - corner[0]) - Math.atan2(two[1] - corner[1], two[0] - corner[0])) * 180 / Math.PI) % 360;
    function arm(p) { return Math.max(1e-9, dist(p, corner) * scale.umPerPart); }
    return { value: Math.min(turn, 360 - turn), error: Math.SQRT2 * endUm * Math.hypot(1 / arm(one), 1 / arm(two)) * 180 / Math.PI };
  }
  /* The longest of 1, 2, 5 times a power of ten that takes at most 30 % of a width in pixels, in µm. */
  function barLength(umPerPixel, width) {
    var most = umPerPixel * width * 0.3, power = Math.pow(10, Math.floor(Math.log10(most)));
    return [5, 2, 1, 0.5].map(function (step) { return step * power; }).filter(function (each) { return each <= most; })[0];
  }
  /* How much of a round field a picture shows, 0 to 1: strips of the circle, cut at the borders. */
  function shareInPicture(circle, width, height) {
    var inside = 0, whole = 0, strips = 400;
    for (var n = 0; n < strips; n += 1) {
      var y = circle.radius * (2 * (n + 0.5) / strips - 1), half = Math.sqrt(circle.radius * circle.radius - y * y);
      whole += 2 * half;
      if (circle.y + y >= 0 && circle.y + y <= height) { inside += Math.max(0, Math.min(width, circle.x + half) - Math.max(0, circle.x - half)); }
    }
    return inside / whole;
  }
  bench.photo = { shareInPicture: shareInPicture, chain: chain, scaleOfField: scaleOfField, length: length, area: area, angle: angle, barLength: barLength };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
