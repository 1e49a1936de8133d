/* Results as plain data: the same as keytool/bench/results_json.py gives, for files and for recorded cases. Infinite ends are null. */
(function (bench) {
  "use strict";
  function interval(of) {
    if (!of) { return null; }
    function end(value) { return isFinite(value) ? value : null; }
    return { value: end(of.value), low: end(of.low), high: end(of.high) };
  }

  function sample(data, of) {
    var found = bench.results.results(data, of), made = found.slip;
    return {
      name: of.name, invented: of.invented,
      slip: { "field-mm": made.fieldMm, "low-field-mm": made.lowFieldMm, "film-mm": made.filmMm, "field-ml": made.fieldMl, "fields-per-slip": made.fieldsPerSlip, "per-unit": made.perUnit, unit: made.unit },
      lines: found.lines.map(function (each) {
        return { id: each.id, label: each.label, at: each.at, total: each.mean.total, units: each.mean.fields, widened: each.mean.widened,
          "index-of-dispersion": each.mean.scatter ? each.mean.scatter.index : null, "searched-ml": each.searchedMl, "per-unit-looked-at": interval(each.mean.perField),
          "per-ml": interval(each.perMl), "per-unit-of-soil": interval(each.perUnit), "with-slide-errors": interval(each.allIn) };
      }),
      rules: bench.results.verdict(data, of).map(function (each) {
        return { id: each.rule.id, answer: each.answer, sure: each.sure, "at-most": each.atMost, units: each.units, interval: interval(each.interval), more: each.more };
      })
    };
  }

  bench.resultsJson = function (data, record) {
    var samples = record.samples;
    return { samples: samples.map(function (each) { return sample(data, each); }), differences: samples.slice(1).map(function (two, n) {
      var one = samples[n];
      return { first: one.name, second: two.name, lines: bench.results.differences(data, one, two).map(function (each) {
        return { id: each.first.id, at: each.first.at, "per-unit-of-soil": each.perUnit, ratio: interval(each.comparison.ratio), p: each.comparison.p, widened: each.comparison.widened };
      }) };
    }) };
  };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
