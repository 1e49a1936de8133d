/* The scale of a picture of a stage micrometer, from the spacing of its lines: the twin of keytool/bench/stage_lines.py.
 * image = {data: RGBA, width, height}; gives {spacingPx, umPerPart, relativeError, divisions, turn, onALine}. Throws an Error that says what to do. */
(function (bench) {
  "use strict";
  var BANDS = 16, WIDEST = 1400, TURNED = 480, INSIDE = 0.69, LEAST_REGULAR = 0.3, LEAST_LINES = 5, RISE = 0.15, LEAST_SPACING = 3.5, AGREE = 0.03;
  var edge = bench.fieldEdge || require("./field-edge.js").fieldEdge;

  function where(image) {
    var found = null;
    try { found = edge.findEdge(image); } catch (error) { found = null; }
    var middle = found ? [found.x, found.y] : [(image.width - 1) / 2, (image.height - 1) / 2], of = edge.grey(image, TURNED), way = [], n;
    for (n = 0; n < 180; n += 1) { way.push(0); }
    for (var j = 1; j < of.height - 1; j += 1) {
      for (var i = 1; i < of.width - 1; i += 1) {
        if (found && Math.hypot(i * of.factor - found.x, j * of.factor - found.y) > 0.9 * found.radius) { continue; }
        var at = j * of.width + i, gx = of.light[at + 1] - of.light[at - 1], gy = of.light[at + of.width] - of.light[at - of.width], strong = gx * gx + gy * gy;
        if (strong > 16) { way[(Math.round(Math.atan2(gy, gx) * 180 / Math.PI) + 360) % 180] += strong; }
      }
    }
    var best = 0, most = -1, total = 0, off = 0, d;
    for (n = 0; n < 180; n += 1) {
      var smooth = 0;
      for (d = -3; d <= 3; d += 1) { smooth += way[(n + d + 180) % 180] * (4 - Math.abs(d)); }
      if (smooth > most) { most = smooth; best = n; }
    }
    for (d = -4; d <= 4; d += 1) { var weight = way[(best + d + 180) % 180]; total += weight; off += d * weight; }
    var turn = (best + (total ? off / total : 0)) * Math.PI / 180;
    if (turn > Math.PI / 2) { turn -= Math.PI; }
    var c = Math.abs(Math.cos(turn)), s = Math.abs(Math.sin(turn));
    var across = Math.min(c > 1e-9 ? image.width / c : Infinity, s > 1e-9 ? image.height / s : Infinity);
    return { turn: turn, middle: middle, half: found ? INSIDE * found.radius : across / 2, reach: found ? 2 * found.radius : across };
  }

  /* The square about the middle, turned so that the ruling lies along the rows, in bands; what lies outside the picture repeats its border. */
  function turned(image, at) {
    var columns = Math.min(WIDEST, Math.max(64, Math.round(2 * at.half))), by = 2 * at.half / columns;
    var rows = Math.min(columns, Math.max(BANDS, Math.floor(Math.round(2 * Math.min(at.half, Math.min(image.width, image.height) / 2) / by) / BANDS) * BANDS));
    var c = Math.cos(at.turn) * by, s = Math.sin(at.turn) * by, tall = rows / BANDS, bands = [], data = image.data;
    var steps = Math.max(1, Math.round(by));        // so many samples to a pixel of the square, so that fine lines do not fold
    function light(x, y) {
      x = Math.min(Math.max(x, 0), image.width - 1.001);
      y = Math.min(Math.max(y, 0), image.height - 1.001);
      var i = Math.floor(x), j = Math.floor(y), dx = x - i, dy = y - j;
      function grey(p, q) { var n = 4 * (q * image.width + p); return 0.299 * data[n] + 0.587 * data[n + 1] + 0.114 * data[n + 2]; }
      return (grey(i, j) * (1 - dx) + grey(i + 1, j) * dx) * (1 - dy) + (grey(i, j + 1) * (1 - dx) + grey(i + 1, j + 1) * dx) * dy;
    }
    for (var b = 0; b < BANDS; b += 1) { bands.push(new Float64Array(columns)); }
    for (var row = 0; row < rows; row += 1) {
      var band = bands[Math.floor(row / tall)], v = row + 0.5 - rows / 2;
      for (var column = 0; column < columns; column += 1) {
        for (var k = 0; k < steps; k += 1) {
          var u = column + (k + 0.5) / steps - columns / 2;
          band[column] += light(at.middle[0] + u * c - v * s, at.middle[1] + u * s + v * c) / steps / tall;
        }
      }
    }
    return { bands: bands, by: by, tall: tall };
  }

  /* A profile without its slow changes; a clod of dirt shall not outweigh the lines. */
  function bare(profile) {
    var reach = Math.max(3, Math.floor(profile.length / 8)), sums = [0], out = [], n;
    for (n = 0; n < profile.length; n += 1) { sums.push(sums[n] + profile[n]); }
    for (n = 0; n < profile.length; n += 1) { var low = Math.max(0, n - reach), high = Math.min(profile.length, n + reach + 1); out.push(profile[n] - (sums[high] - sums[low]) / (high - low)); }
    var most = 4 * out.map(Math.abs).sort(function (a, b) { return a - b; })[Math.floor(out.length / 2)];
    return out.map(function (each) { return Math.min(most, Math.max(-most, each)); });
  }

  function alikeOf(bands) {
    var size = bands[0].length, power = 0, out = [];
    bands.forEach(function (band) { band.forEach(function (each) { power += each * each; }); });
    power = power / size || 1;
    for (var lag = 0; lag < Math.floor(size / 2); lag += 1) {
      var total = 0;
      for (var b = 0; b < bands.length; b += 1) { var band = bands[b]; for (var n = 0; n < size - lag; n += 1) { total += band[n] * band[n + lag]; } }
      out.push(total / (size - lag) / power);
    }
    return out;
  }

  /* The first shift at which it is like itself again: one line further on, not five. */
  function firstPeak(alike) {
    var peaks = [], least = 1, lag;
    for (lag = 1; lag < alike.length - 1; lag += 1) {
      least = Math.min(least, alike[lag]);
      if (alike[lag - 1] < alike[lag] && alike[lag] >= alike[lag + 1] && alike[lag] - least > RISE) { peaks.push(lag); }
    }
    if (!peaks.length) { return null; }
    var best = peaks.reduce(function (a, b) { return alike[b] > alike[a] ? b : a; });
    for (var n = 0; n < peaks.length; n += 1) {
      var times = best / peaks[n], whole = Math.round(times);
      if (alike[peaks[n]] >= 0.6 * alike[best] || (alike[peaks[n]] >= LEAST_REGULAR && Math.abs(times - whole) < 0.04 * whole)) { return peaks[n]; }
    }
    return best;
  }

  function top(alike, lag) {
    var bend = alike[lag - 1] - 2 * alike[lag] + alike[lag + 1];
    return lag + (bend ? 0.5 * (alike[lag - 1] - alike[lag + 1]) / bend : 0);
  }
  function highest(alike, low, high) { var best = low; for (var n = low; n <= high; n += 1) { if (alike[n] > alike[best]) { best = n; } } return best; }
  function refined(alike, lag) {
    var spacing = top(alike, lag), count = 1;
    for (;;) {
      var next = Math.round(spacing * (count + 1));
      if (next + 2 >= alike.length) { return spacing; }
      var near = highest(alike, Math.max(1, next - 2), next + 2);
      if (near + 1 >= alike.length || alike[near] < LEAST_REGULAR * alike[lag]) { return spacing; }
      count += 1;
      spacing = top(alike, near) / count;
    }
  }

  function halves(bands, spacing) {
    var size = bands[0].length, middle = Math.floor(size / 2), found = [];
    for (var n = 0; n < 2; n += 1) {
      var alike = alikeOf(bands.map(function (band) { return n ? band.slice(middle) : band.slice(0, middle); }));
      var low = Math.floor(0.8 * spacing), high = Math.min(alike.length - 2, Math.ceil(1.2 * spacing));
      if (high - low < 2) { return 0; }
      found.push(refined(alike, highest(alike, Math.max(1, low), high)));
    }
    return Math.abs(found[0] - found[1]) / spacing;
  }

  function wave(band, spacing) {
    var re = 0, im = 0;
    band.forEach(function (value, n) { re += value * Math.cos(2 * Math.PI * n / spacing); im += value * Math.sin(2 * Math.PI * n / spacing); });
    return [re, im];
  }

  function scaleOfLines(image, divisionUm) {
    var at = where(image), made = turned(image, at), bands = made.bands.map(bare), alike = alikeOf(bands), lag = firstPeak(alike);
    if (lag === null || alike[lag] < LEAST_REGULAR) { throw new Error("No regular lines were found. Fill the picture with the ruled part, in focus, with even light; or tap two lines and say how many divisions lie between."); }
    var spacing = refined(alike, lag), size = bands[0].length;
    if (size / spacing < LEAST_LINES) { throw new Error("Only about " + Math.round(size / spacing) + " lines were found. Tap two lines and say how many divisions lie between."); }
    if (spacing < LEAST_SPACING) { throw new Error("The lines are too close to be told apart. Take a higher power, or tap two lines far from each other."); }
    var apart = halves(bands, spacing);
    if (apart > AGREE) { throw new Error("The lines stand " + Math.round(100 * apart) + " % wider on one side than on the other. Lay the scale in the middle, or tap two lines on it."); }
    var waves = bands.map(function (band) { return wave(band, spacing); }), re = 0, im = 0;
    for (var n = 1; n < waves.length; n += 1) {
      re += waves[n][0] * waves[n - 1][0] + waves[n][1] * waves[n - 1][1];
      im += waves[n][1] * waves[n - 1][0] - waves[n][0] * waves[n - 1][1];
    }
    var lean = Math.atan(Math.atan2(im, re) / (2 * Math.PI) * spacing / made.tall), turn = at.turn + lean;
    spacing *= Math.cos(lean);
    var strong = bands.map(function (band) { return wave(band, spacing); }).reduce(function (a, b) { return Math.hypot(b[0], b[1]) > Math.hypot(a[0], a[1]) ? b : a; });
    var dark = ((Math.atan2(strong[1], strong[0]) / (2 * Math.PI) + 0.5) % 1 + 1) % 1 * spacing, along = (dark - (size - 1) / 2) * made.by;
    return { spacingPx: spacing * made.by, umPerPart: divisionUm / (spacing * made.by), relativeError: Math.max(apart / 2, 0.25 / size), divisions: at.reach / (spacing * made.by),
      turn: turn, onALine: [at.middle[0] + along * Math.cos(turn), at.middle[1] + along * Math.sin(turn)] };
  }

  /* Two lines set by hand with so many divisions between, each end good to endPx. */
  function scaleOfTwoLines(one, two, divisions, divisionUm, endPx) {
    var span = Math.hypot(one[0] - two[0], one[1] - two[1]);
    if (span < 20 * endPx) { throw new Error("The two lines are too near each other. Tap two that are far apart."); }
    return { spacingPx: span / divisions, umPerPart: divisionUm * divisions / span, relativeError: Math.SQRT2 * endPx / span, divisions: divisions, turn: Math.atan2(two[1] - one[1], two[0] - one[0]), onALine: one };
  }

  bench.stageLines = { scaleOfLines: scaleOfLines, scaleOfTwoLines: scaleOfTwoLines };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
