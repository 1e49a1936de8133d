/* Distributions that the bench needs: gamma, chi-square, beta, t, normal, Poisson. The twin of keytool/bench/special.py. */
(function (bench) {
  "use strict";
  var TINY = 1e-300, CLOSE = 1e-16, MOST_STEPS = 10000;

  /* log of the gamma function, by Stirling's series above 15 and by stepping up to it below. */
  function lgamma(x) {
    var shift = 0;
    if (x < 15) {
      var product = 1;
      while (x < 15) { product *= x; x += 1; }
      shift = Math.log(product);
    }
    var i = 1 / x, s = i * i;
    var series = i * (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s / 156))))));
    return (x - 0.5) * Math.log(x) - x + 0.9189385332046727418 + series - shift;
  }

  function gammaTailFraction(shape, x) {
    var b = x + 1 - shape, c = 1 / TINY, d = 1 / b, result = d;
    for (var n = 1; n < MOST_STEPS; n += 1) {
      var a = -n * (n - shape);
      b += 2;
      d = a * d + b;
      d = 1 / (Math.abs(d) > TINY ? d : TINY);
      c = b + a / c;
      c = Math.abs(c) > TINY ? c : TINY;
      var step = d * c;
      result *= step;
      if (Math.abs(step - 1) < CLOSE * 10) { break; }
    }
    return result;
  }

  function front(shape, x) { return Math.exp(shape * Math.log(x) - x - lgamma(shape)); }

  function gammaShare(shape, x) {
    if (x <= 0) { return 0; }
    if (x === Infinity) { return 1; }
    if (x < shape + 1) {
      var term = 1 / shape, total = term;
      for (var n = 1; n < MOST_STEPS; n += 1) {
        term *= x / (shape + n);
        total += term;
        if (term < total * CLOSE) { break; }
      }
      return front(shape, x) * total;
    }
    return 1 - front(shape, x) * gammaTailFraction(shape, x);
  }

  function gammaTail(shape, x) {
    if (x <= 0) { return 1; }
    if (x < shape + 1) { return 1 - gammaShare(shape, x); }
    return front(shape, x) * gammaTailFraction(shape, x);
  }

  /* Where a rising function crosses 0; `high` is pushed up until it lies above. */
  function solve(rising, low, high) {
    while (rising(high) < 0) { low = high; high = 2 * high; }
    var atLow = rising(low), atHigh = rising(high);
    for (var n = 0; n < 300; n += 1) {
      if (high - low <= Math.abs(low + high) * 2e-16 || atHigh === atLow) { break; }
      var middle = n % 3 ? (low * atHigh - high * atLow) / (atHigh - atLow) : (low + high) / 2;
      if (!(low < middle && middle < high)) { middle = (low + high) / 2; }
      var at = rising(middle);
      if (at === 0) { return middle; }
      if (at < 0) { low = middle; atLow = at; } else { high = middle; atHigh = at; }
    }
    return (low + high) / 2;
  }

  function gammaQuantile(shape, share) {
    return share <= 0 ? 0 : solve(function (x) { return gammaShare(shape, x) - share; }, 0, shape + 10);
  }

  function normalQuantile(share) {
    var size = Math.sqrt(2 * gammaQuantile(0.5, Math.abs(2 * share - 1)));
    return share >= 0.5 ? size : -size;
  }

  function betaFraction(a, b, x) {
    var c = 1, d = 1 - (a + b) * x / (a + 1);
    d = 1 / (Math.abs(d) > TINY ? d : TINY);
    var result = d;
    for (var n = 1; n < MOST_STEPS; n += 1) {
      var steps = [n * (b - n) * x / ((a + 2 * n - 1) * (a + 2 * n)), -(a + n) * (a + b + n) * x / ((a + 2 * n) * (a + 2 * n + 1))];
      for (var i = 0; i < 2; i += 1) {
        d = 1 + steps[i] * d;
        d = 1 / (Math.abs(d) > TINY ? d : TINY);
        c = 1 + steps[i] / c;
        c = Math.abs(c) > TINY ? c : TINY;
        result *= d * c;
      }
      if (Math.abs(d * c - 1) < CLOSE * 10) { break; }
    }
    return result;
  }

  function betaShare(a, b, x) {
    if (x <= 0) { return 0; }
    if (x >= 1) { return 1; }
    var before = Math.exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * Math.log(x) + b * Math.log1p(-x));
    return x < (a + 1) / (a + b + 2) ? before * betaFraction(a, b, x) / a : 1 - before * betaFraction(b, a, 1 - x) / b;
  }

  function betaQuantile(a, b, share) { return solve(function (x) { return betaShare(a, b, x) - share; }, 0, 1); }

  function tQuantile(df, share) {
    var x = betaQuantile(df / 2, 0.5, 2 * Math.min(share, 1 - share));
    var size = Math.sqrt(df * (1 - x) / x);
    return share >= 0.5 ? size : -size;
  }

  bench.distributions = {
    lgamma: lgamma, gammaShare: gammaShare, gammaTail: gammaTail, gammaQuantile: gammaQuantile,
    chiSquareTail: function (df, x) { return gammaTail(df / 2, x / 2); },
    normalQuantile: normalQuantile,
    normalTailBoth: function (z) { return gammaTail(0.5, z * z / 2); },
    betaShare: betaShare, betaQuantile: betaQuantile, tQuantile: tQuantile,
    poissonShare: function (mean, most) { return most >= 0 ? gammaTail(most + 1, mean) : 0; },
    poissonChance: function (mean, count) {
      return mean <= 0 ? (count === 0 ? 1 : 0) : Math.exp(count * Math.log(mean) - mean - lgamma(count + 1));
    },
    binomialChance: function (count, of, p) {
      if (p <= 0 || p >= 1) { return count === (p <= 0 ? 0 : of) ? 1 : 0; }
      return Math.exp(lgamma(of + 1) - lgamma(count + 1) - lgamma(of - count + 1) + count * Math.log(p) + (of - count) * Math.log1p(-p));
    }
  };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
