/* Finds the round edge of the field in a picture: the twin of keytool/bench/field_edge.py, on grey pixels.
 * grey = {light: Uint8 array, width, height, factor}; a circle is {x, y, radius} in pixels of the picture. Throws an Error that says what to do. */
(function (bench) {
  "use strict";
  var COARSE = 320, FINE = 1000, RAYS = 180, LEAST_SHARE = 0.35, LEAST_SPREAD = 8, TOLERANCE = 0.012, TRIES = 160;
  var ASK = "The round edge of the field was not found. Tap three points on it, far from each other.";

  function at(of, x, y) {
    x = Math.min(Math.max(x, 0), of.width - 1.001);
    y = Math.min(Math.max(y, 0), of.height - 1.001);
    var i = Math.floor(x), j = Math.floor(y), dx = x - i, dy = y - j, row = j * of.width + i, light = of.light;
    return (light[row] * (1 - dx) + light[row + 1] * dx) * (1 - dy) + (light[row + of.width] * (1 - dx) + light[row + of.width + 1] * dx) * dy;
  }

  function circleThrough(one, two, three) {
    var d = 2 * (one[0] * (two[1] - three[1]) + two[0] * (three[1] - one[1]) + three[0] * (one[1] - two[1]));
    var size = Math.max(dist(one, two), dist(two, three), dist(one, three));
    if (Math.abs(d) < 1e-3 * size * size) { throw new Error("The three points lie in a line. Tap them far from each other on the round edge."); }
    function square(p) { return p[0] * p[0] + p[1] * p[1]; }
    var a = square(one), b = square(two), c = square(three);
    var x = (a * (two[1] - three[1]) + b * (three[1] - one[1]) + c * (one[1] - two[1])) / d;
    var y = (a * (three[0] - two[0]) + b * (one[0] - three[0]) + c * (two[0] - one[0])) / d;
    return { x: x, y: y, radius: Math.hypot(one[0] - x, one[1] - y) };
  }
  function dist(a, b) { return Math.hypot(a[0] - b[0], a[1] - b[1]); }

  /* RGBA pixels to grey at most `longest` long, each the mean of what it covers, a little smoothed. */
  function grey(image, longest) {
    var factor = Math.max(1, Math.max(image.width, image.height) / longest);
    var width = Math.max(2, Math.round(image.width / factor)), height = Math.max(2, Math.round(image.height / factor));
    var raw = new Float64Array(width * height), data = image.data;
    for (var j = 0; j < height; j += 1) {
      var y0 = Math.floor(j * image.height / height), y1 = Math.max(y0 + 1, Math.floor((j + 1) * image.height / height));
      for (var i = 0; i < width; i += 1) {
        var x0 = Math.floor(i * image.width / width), x1 = Math.max(x0 + 1, Math.floor((i + 1) * image.width / width)), total = 0;
        for (var y = y0; y < y1; y += 1) { for (var x = x0; x < x1; x += 1) { var n = 4 * (y * image.width + x); total += 0.299 * data[n] + 0.587 * data[n + 1] + 0.114 * data[n + 2]; } }
        raw[j * width + i] = total / ((x1 - x0) * (y1 - y0));
      }
    }
    var light = new Uint8Array(width * height);
    for (j = 0; j < height; j += 1) {
      for (i = 0; i < width; i += 1) {
        var sum = 0;
        for (var b = -1; b <= 1; b += 1) { for (var a = -1; a <= 1; a += 1) { sum += raw[Math.min(height - 1, Math.max(0, j + b)) * width + Math.min(width - 1, Math.max(0, i + a))]; } }
        light[j * width + i] = Math.round(sum / 9);
      }
    }
    return { light: light, width: width, height: height, factor: image.width / width };
  }

  function middleOfLight(of) {
    var every = Math.max(1, Math.floor(of.light.length / 4000)), sample = [];
    for (var k = 0; k < of.light.length; k += every) { sample.push(of.light[k]); }
    sample.sort(function (a, b) { return a - b; });
    var half = (sample[Math.floor(sample.length / 10)] + sample[sample.length - Math.ceil(sample.length / 10)]) / 2, sx = 0, sy = 0, n = 0;
    for (var j = 0; j < of.height; j += 2) { for (var i = 0; i < of.width; i += 2) { if (of.light[j * of.width + i] > half) { sx += i; sy += j; n += 1; } } }
    if (!n) { throw new Error(ASK); }
    return [sx / n, sy / n];
  }

  function border(from, step, size) { return Math.abs(step) < 1e-9 ? Infinity : ((step > 0 ? size - 1 - from : -from) / step); }

  /* On each ray the outermost steep fall of light, with the number of its ray. */
  function edges(of, x, y, low, high) {
    var found = [], least = 255, most = 0;
    of.light.forEach(function (each) { least = Math.min(least, each); most = Math.max(most, each); });
    for (var ray = 0; ray < RAYS; ray += 1) {
      var c = Math.cos(2 * Math.PI * ray / RAYS), s = Math.sin(2 * Math.PI * ray / RAYS), profile = [], falls = [];
      var end = Math.min(border(x, c, of.width), border(y, s, of.height), high || Infinity);
      if (end - low < 6) { continue; }
      for (var k = 0; k <= Math.floor(end - low); k += 1) { profile.push(at(of, x + c * (low + k), y + s * (low + k))); }
      for (k = 2; k < profile.length - 2; k += 1) { falls.push(profile[k - 2] - profile[k + 2]); }
      if (!falls.length) { continue; }
      var steep = Math.max.apply(null, falls);
      if (steep < 0.12 * (most - least)) { continue; }
      var n = falls.length - 1;
      while (falls[n] < 0.6 * steep) { n -= 1; }
      while (n > 0 && falls[n - 1] > falls[n]) { n -= 1; }
      var shift = 0;
      if (n > 0 && n < falls.length - 1) { var bend = falls[n - 1] - 2 * falls[n] + falls[n + 1]; shift = bend < 0 ? 0.5 * (falls[n - 1] - falls[n + 1]) / bend : 0; }
      var r = low + n + 2 + shift;
      found.push([[x + c * r, y + s * r], ray]);
    }
    return found;
  }

  function fit(points) {
    var n = points.length, mx = 0, my = 0;
    points.forEach(function (p) { mx += p[0] / n; my += p[1] / n; });
    var suu = 0, svv = 0, suv = 0, su = 0, sv = 0, u = points.map(function (p) { return [p[0] - mx, p[1] - my]; });
    u.forEach(function (p) { var q = p[0] * p[0] + p[1] * p[1]; suu += p[0] * p[0]; svv += p[1] * p[1]; suv += p[0] * p[1]; su += p[0] * q / 2; sv += p[1] * q / 2; });
    var d = suu * svv - suv * suv, x = (su * svv - sv * suv) / d, y = (sv * suu - su * suv) / d, r = 0;
    for (var k = 0; k < 4; k += 1) {
      var far = u.map(function (p) { return Math.hypot(p[0] - x, p[1] - y); });
      r = far.reduce(function (a, b) { return a + b; }, 0) / n;
      if (k === 3) { break; }
      var gx = 0, gy = 0;
      for (var i = 0; i < n; i += 1) { gx += (r - far[i]) * (u[i][0] - x) / far[i]; }
      x -= 2 * gx / n;
      for (i = 0; i < n; i += 1) { gy += (r - far[i]) * (u[i][1] - y) / far[i]; }
      y -= 2 * gy / n;
    }
    return { x: x + mx, y: y + my, radius: r };
  }

  function agreed(given, of) {
    var least = 0.15 * Math.min(of.width, of.height), best = [], n = given.length, seed = 12345;
    if (n < 12) { throw new Error(ASK); }
    for (var k = 0; k < TRIES; k += 1) {
      var picks = [];
      for (var m = 0; m < 3; m += 1) {
        seed = Number((BigInt(seed) * 1103515245n + 12345n) % 2147483648n);
        picks.push(given[Math.floor(seed * n / 2147483648)][0]);
      }
      var guess;
      try { guess = circleThrough(picks[0], picks[1], picks[2]); } catch (error) { continue; }
      if (!(least < guess.radius && guess.radius < 4 * Math.max(of.width, of.height))) { continue; }
      var near = given.filter(function (each) { return Math.abs(Math.hypot(each[0][0] - guess.x, each[0][1] - guess.y) - guess.radius) < TOLERANCE * guess.radius; });
      if (near.length > best.length) { best = near; }
    }
    var sectors = {};
    best.forEach(function (each) { sectors[Math.floor(each[1] * 12 / RAYS)] = true; });
    if (best.length < LEAST_SHARE * RAYS || Object.keys(sectors).length < LEAST_SPREAD) { throw new Error(ASK); }
    return fit(best.map(function (each) { return each[0]; }));
  }

  function findEdge(image) {
    var coarse = grey(image, COARSE), middle = middleOfLight(coarse);
    var circle = agreed(edges(coarse, middle[0], middle[1], 0.12 * Math.min(coarse.width, coarse.height), null), coarse);
    for (var k = 0; k < 2; k += 1) { circle = agreed(edges(coarse, circle.x, circle.y, 0.5 * circle.radius, null), coarse); }
    var fine = grey(image, FINE), grown = coarse.factor / fine.factor;
    var found = agreed(edges(fine, circle.x * grown, circle.y * grown, 0.93 * circle.radius * grown, 1.07 * circle.radius * grown), fine);
    return { x: (found.x + 0.5) * fine.factor - 0.5, y: (found.y + 0.5) * fine.factor - 0.5, radius: found.radius * fine.factor };
  }

  bench.fieldEdge = { findEdge: findEdge, circleThrough: circleThrough, grey: grey };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
