/* A sample worked out and judged: the twin of keytool/bench/{lines,results,verdict,difference}.py.
 *
 * `data` is what keytool.pages.count_page puts into the page: lines of the tally, the line of each entry, rules, constants.
 * A sample is the record of keytool/bench/sheet.py as plain JSON.
 */
(function (bench) {
  "use strict";
  var counts = bench.counts || require("./counts.js").counts;
  var d = bench.distributions;
  var OTHER = "other:", MOST_MORE = 500;

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }

  function linesOf(data, id) {
    var line = has(data.tally, id) ? id : has(data.entries, id) ? data.entries[id].line : "";
    if (!line) { return []; }
    var whole = data.tally[line].partOf;
    return whole ? [line, whole] : [line];
  }

  function addedUp(data, tally) {
    var totals = {};
    Object.keys(tally).forEach(function (id) {
      var lines = linesOf(data, id);
      (lines.length ? lines : [id]).forEach(function (line) { totals[line] = (totals[line] || 0) + tally[id]; });
    });
    return totals;
  }

  function label(data, id) {
    if (has(data.tally, id)) { return data.tally[id].label; }
    return has(data.entries, id) ? data.entries[id].name : id.indexOf(OTHER) === 0 ? id.slice(OTHER.length) : id;
  }

  function isKnown(data, id) {
    return typeof id === "string" && (has(data.tally, id) || has(data.entries, id) || (id.indexOf(OTHER) === 0 && id.slice(OTHER.length).trim() !== ""));
  }

  function units(sample, at) {
    return sample.slides.reduce(function (all, slide) {
      return all.concat(at === "field" ? slide.fields : slide.drop ? [slide.drop] : []);
    }, []);
  }

  function slip(setup) {
    var number = setup["field-number-mm"], width = setup["slip-width-mm"], length = setup["slip-length-mm"];
    var field = number && setup.high ? number / setup.high : null, low = number && setup.low ? number / setup.low : null;
    var film = setup["drop-ml"] && width && length ? setup["drop-ml"] * 1000 / (width * length) : null;
    var area = field ? Math.PI * field * field / 4 : null, per = null, unit = setup["soil-unit"] || "g";
    if (setup.soil && setup["total-ml"]) {
      per = setup["total-ml"] / setup.soil;
      if (unit === "mL" && setup["bulk-density"]) { per /= setup["bulk-density"]; unit = "g"; }
      if (unit === "g" && typeof setup.moisture === "number") { per *= 1 + setup.moisture; unit = "g dry"; }
    }
    return {
      fieldMm: field, lowFieldMm: low, filmMm: film, fieldMl: area && film ? area * film / 1000 : null,
      fieldsPerSlip: area && width && length ? width * length / area : null, perUnit: per, unit: unit
    };
  }

  function lookedFor(data, sample, at) {
    var wanted = [];
    function want(id) { if (wanted.indexOf(id) < 0) { wanted.push(id); } }
    var ids = sample[at === "drop" ? "at-drop" : "at-field"].slice();
    units(sample, at).forEach(function (unit) { ids = ids.concat(Object.keys(unit)); });
    ids.forEach(function (id) { var lines = linesOf(data, id); (lines.length ? lines : [id]).forEach(want); });
    return Object.keys(data.tally).filter(function (id) { return wanted.indexOf(id) >= 0; })
      .concat(wanted.filter(function (id) { return !has(data.tally, id); }));
  }

  /* An interval of counting widened by what the slide may be off by; none seen: only its upper end. */
  function withSlideErrors(of, errors) {
    var cv2 = counts.sum(errors.map(function (each) { return each * each; }));
    var spread = Math.sqrt(Math.log1p(cv2)) * d.normalQuantile(0.975);
    if (!of.value) { return { value: 0, low: 0, high: of.high * Math.exp(spread) }; }
    function reach(end) {
      var by = Math.sqrt(Math.pow(Math.log(end / of.value), 2) + spread * spread);
      return of.value * Math.exp(end < of.value ? -by : by);
    }
    return { value: of.value, low: of.low ? reach(of.low) : 0, high: reach(of.high) };
  }

  function results(data, sample) {
    var made = slip(sample.setup), lines = [];
    ["drop", "field"].forEach(function (at) {
      var each = units(sample, at), volume = at === "drop" ? sample.setup["drop-ml"] || null : made.fieldMl;
      if (!each.length) { return; }
      var totals = each.map(function (unit) { return addedUp(data, unit); });
      var errors = ["drop-error", "film-error", "dilution-error", "mass-error"].filter(function (name) { return at === "field" || name !== "film-error"; })
        .map(function (name) { return data.constants[name]; });
      lookedFor(data, sample, at).forEach(function (id) {
        var mean = counts.meanPerField(totals.map(function (unit) { return unit[id] || 0; }), data.judging);
        var perMl = volume ? counts.times(mean.perField, 1 / volume) : null;
        var perUnit = perMl && made.perUnit ? counts.times(perMl, made.perUnit) : null;
        lines.push({ id: id, label: label(data, id), at: at, mean: mean, searchedMl: volume ? volume * each.length : null, perMl: perMl,
          perUnit: perUnit, allIn: perUnit ? withSlideErrors(perUnit, errors) : null });
      });
    });
    return { sample: sample, slip: made, lines: lines };
  }

  function answer(rule, interval, counted) {
    if (rule.wants === "watch") { return counted ? "seen" : "none-seen"; }
    if (rule.wants === "at-least") { return interval.low >= rule.value ? "met" : interval.high < rule.value ? "not-met" : "too-few"; }
    return interval.high <= rule.value ? "met" : interval.low > rule.value ? "not-met" : "too-few";
  }

  /* Python rounds halves to even, and so do we: both must say the same. */
  function even(value) {
    var low = Math.floor(value), rest = value - low;
    return rest < 0.5 ? low : rest > 0.5 ? low + 1 : low % 2 ? low + 1 : low;
  }

  function limitsAt(seen, units, confidence) {
    return counts.times(counts.poissonLimits(even(seen.perField.value * units / seen.factor), confidence), seen.factor / units);
  }

  function more(rule, surely, mostly, confidence) {
    var step = Math.max(1, Math.floor(surely.fields / 4));
    for (var n = surely.fields + step; n <= surely.fields + MOST_MORE; n += step) {
      var interval = { low: limitsAt(surely, n, confidence).low, high: limitsAt(mostly, n, confidence).high };
      if (answer(rule, interval, 0) !== "too-few") { return n - surely.fields; }
    }
    return null;
  }

  function verdict(data, sample) {
    return data.rules.map(function (rule) {
      var each = units(sample, rule.per), watched = lookedFor(data, sample, rule.per), named = rule.counts.concat(rule.mayCount);
      if (!each.length || !named.some(function (id) { return watched.indexOf(id) >= 0; })) {
        return { rule: rule, answer: "not-looked", sure: 0, atMost: 0, units: each.length, interval: { value: 0, low: 0, high: Infinity }, more: null };
      }
      var parts = Object.keys(data.tally).filter(function (id) { return rule.mayCount.indexOf(data.tally[id].partOf) >= 0; });
      function of(totals, ids) { return counts.sum(ids.map(function (id) { return totals[id] || 0; })); }
      var totals = each.map(function (unit) { return addedUp(data, unit); });
      var sure = totals.map(function (unit) { return of(unit, rule.counts); });
      var most = totals.map(function (unit, n) { return sure[n] + Math.max(0, of(unit, rule.mayCount) - of(unit, parts)); });
      var surely = counts.meanPerField(sure, data.judging), mostly = counts.meanPerField(most, data.judging);
      var interval = { value: surely.perField.value, low: surely.perField.low, high: mostly.perField.high };
      var said = answer(rule, interval, surely.total);
      return { rule: rule, answer: said, sure: surely.total, atMost: mostly.total, units: each.length, interval: interval,
        more: said === "too-few" ? more(rule, surely, mostly, data.judging.confidence) : null };
    });
  }

  function differences(data, one, two) {
    var before = results(data, one), after = results(data, two), found = [];
    before.lines.forEach(function (line) {
      var other = after.lines.filter(function (each) { return each.id === line.id && each.at === line.at; })[0];
      if (!other || !(line.mean.total || other.mean.total)) { return; }
      var perUnit = Boolean(before.slip.unit === after.slip.unit && line.perUnit && other.perUnit), scale = 1;
      if (perUnit) {
        scale = (after.slip.perUnit * other.mean.fields / other.searchedMl) / (before.slip.perUnit * line.mean.fields / line.searchedMl);
      }
      found.push({ label: line.label, first: line, second: other, comparison: counts.compare(line.mean, other.mean, data.judging, scale), perUnit: perUnit });
    });
    return found;
  }

  bench.results = { OTHER: OTHER, linesOf: linesOf, addedUp: addedUp, label: label, isKnown: isKnown, units: units, slip: slip, lookedFor: lookedFor,
    results: results, verdict: verdict, differences: differences };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
