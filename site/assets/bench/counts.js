/* What counts allow to be said. The twin of keytool/bench/counts.py; recorded cases are run against both. */
(function (bench) {
  "use strict";
  var d = bench.distributions || require("./distributions.js").distributions;

  function sum(values) { return values.reduce(function (total, each) { return total + each; }, 0); }
  function times(of, factor) { return { value: of.value * factor, low: of.low * factor, high: of.high * factor }; }

  function poissonLimits(count, confidence) {
    var tail = (1 - confidence) / 2;
    return { value: count, low: count ? d.gammaQuantile(count, tail) : 0, high: d.gammaQuantile(count + 1, 1 - tail) };
  }

  function dispersion(counts) {
    var n = counts.length, mean = sum(counts) / n;
    var variance = sum(counts.map(function (each) { return (each - mean) * (each - mean); })) / (n - 1);
    var index = mean ? variance / mean : 1;
    return { fields: n, mean: mean, variance: variance, index: index, clumped: d.chiSquareTail(n - 1, (n - 1) * index) };
  }

  /* Mean per field (or drop) with its interval, widened where counts are clumped. `by` = {confidence, leastFields, leastTotal, clumpedChance}. */
  function meanPerField(counts, by) {
    var n = counts.length, total = sum(counts), scatter = n > 1 ? dispersion(counts) : null, factor = 1;
    if (scatter && total >= by.leastTotal && scatter.clumped < (n >= by.leastFields ? by.clumpedChance : by.surelyClumped)) {
      var share = (1 + by.confidence) / 2;
      var excess = Math.max(0, scatter.index - 1);
      factor = (1 + excess) * (1 + excess / n) * Math.pow(d.tQuantile(n - 1, share) / d.normalQuantile(share), 2);
    }
    if (factor === 1) {
      return { perField: times(poissonLimits(total, by.confidence), 1 / n), total: total, fields: n, widened: false, factor: 1, scatter: scatter };
    }
    var tail = (1 - by.confidence) / 2;
    var low = factor * d.gammaQuantile(total / factor, tail), high = factor * d.gammaQuantile(total / factor + 1, 1 - tail);
    return { perField: { value: total / n, low: low / n, high: high / n }, total: total, fields: n, widened: true, factor: factor, scatter: scatter };
  }

  function binomialLimits(count, of, confidence) {
    var tail = (1 - confidence) / 2;
    return {
      value: count / of,
      low: count ? d.betaQuantile(count, of - count + 1, tail) : 0,
      high: count < of ? d.betaQuantile(count + 1, of - count, 1 - tail) : 1
    };
  }

  function standardised(one, effort1, two, effort2) {
    var spread = one / (effort1 * effort1) + two / (effort2 * effort2);
    return spread ? (one / effort1 - two / effort2) / Math.sqrt(spread) : 0;
  }

  function likely(mean) {
    var reach = 9 * Math.sqrt(mean) + 40;
    return [Math.max(0, Math.floor(mean - reach)), Math.ceil(mean + reach)];
  }

  function last(holds, low, high) {
    if (!holds(low)) { return low - 1; }
    while (low < high) {
      var middle = Math.floor((low + high + 1) / 2);
      if (holds(middle)) { low = middle; } else { high = middle - 1; }
    }
    return low;
  }

  function first(holds, low, mean) {
    var high = Math.max(low + 1, likely(mean)[1]);
    while (!holds(high)) { low = high; high = 2 * high; }
    while (low < high) {
      var middle = Math.floor((low + high) / 2);
      if (holds(middle)) { high = middle; } else { low = middle + 1; }
    }
    return low;
  }

  /* Two counts, same rate? The E-test of Krishnamoorthy and Thomson (2004). */
  function eTest(one, effort1, two, effort2) {
    if (one + two === 0) { return 1; }
    var rate = (one + two) / (effort1 + effort2), mean1 = rate * effort1, mean2 = rate * effort2;
    var seen = Math.abs(standardised(one, effort1, two, effort2)) * (1 - 1e-12);
    if (!seen) { return 1; }
    var range = likely(mean1), total = 0;
    for (var x = range[0]; x <= range[1]; x += 1) {
      var centre = x * effort2 / effort1;
      var below = last(function (y) { return standardised(x, effort1, y, effort2) >= seen; }, 0, Math.floor(centre));
      var above = first(function (y) { return standardised(x, effort1, y, effort2) <= -seen; }, Math.ceil(centre), mean2);
      total += d.poissonChance(mean1, x) * (d.poissonShare(mean2, below) + (above > 0 ? d.gammaShare(above, mean2) : 1));
    }
    return Math.min(1, total);
  }

  function rateRatio(one, effort1, two, effort2, confidence) {
    if (one + two === 0) { return { value: NaN, low: 0, high: Infinity }; }
    var share = binomialLimits(one, one + two, confidence);
    function odds(p) { return p < 1 ? p / (1 - p) * effort2 / effort1 : Infinity; }
    return { value: odds(share.value), low: odds(share.low), high: odds(share.high) };
  }

  /* How the second count stands to the first; `scale` turns a ratio per field into one per gram. */
  function compare(before, after, by, scale) {
    var one = before.fields, two = after.fields / scale;
    if (!(before.widened || after.widened) || !(before.total && after.total)) {
      return { ratio: rateRatio(after.total, two, before.total, one, by.confidence), p: eTest(after.total, two, before.total, one), widened: false };
    }
    var spread = Math.sqrt(before.factor / before.total + after.factor / after.total);
    var value = scale * after.perField.value / before.perField.value;
    var reach = Math.exp(d.normalQuantile((1 + by.confidence) / 2) * spread);
    return { ratio: { value: value, low: value / reach, high: value * reach }, p: d.normalTailBoth(Math.abs(Math.log(value)) / spread), widened: true };
  }

  bench.counts = {
    sum: sum, times: times, poissonLimits: poissonLimits, dispersion: dispersion, meanPerField: meanPerField,
    binomialLimits: binomialLimits, eTest: eTest, rateRatio: rateRatio, compare: compare
  };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
