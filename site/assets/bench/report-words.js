/* What a report says in sentences: the twin of keytool/bench/report_words.py. */
(function (bench) {
  "use strict";
  var SAYS = { met: "met", "not-met": "not met", "too-few": "too few UNITS to say", seen: "seen", "none-seen": "none seen", "not-looked": "not looked for" };

  function units(n, at) { return n + " " + at + (n === 1 ? "" : "s"); }
  function answer(outcome) { return SAYS[outcome.answer].replace("UNITS", outcome.rule.per === "drop" ? "drops" : "fields"); }
  function counted(outcome) {
    if (outcome.answer === "not-looked") { return ""; }
    return outcome.sure + " in " + units(outcome.units, outcome.rule.per) + (outcome.atMost > outcome.sure ? ", " + (outcome.atMost - outcome.sure) + " more not told" : "");
  }

  /* What was met most and what was not seen; never a mark for the soil. */
  function summary(data, of) {
    var whole = of.lines.filter(function (line) { return !(data.tally[line.id] || {}).partOf; }), said = [];
    function most(lines) { return lines.slice().sort(function (a, b) { return b.mean.total - a.mean.total; }); }
    function list(lines) {
      var names = lines.map(function (line) { return data.tally[line.id] ? data.tally[line.id].many : line.label; });
      return names.length > 1 ? names.slice(0, -1).join(", ") + " and " + names[names.length - 1] : names[0];
    }
    [["drop", "In whole drops"], ["field", "Field by field"]].forEach(function (each) {
      var lines = whole.filter(function (line) { return line.at === each[0]; });
      if (!lines.length) { return; }
      var met = most(lines.filter(function (line) { return line.mean.total; })), none = lines.filter(function (line) { return !line.mean.total; });
      said.push(each[1] + ", " + units(lines[0].mean.fields, each[0]) + ": " + (met.length ? list(met) + (met.length > 1 ? ", most often the first" : "") + "." : "nothing that was looked for.")
        + (none.length ? " None seen of: " + list(none) + "." : ""));
    });
    var known = most(whole.filter(function (line) { return line.mean.total && data.tally[line.id]; }))[0];
    if (known) { said.push(data.tally[known.id].label + ": " + data.tally[known.id].tells); }
    return said;
  }

  /* What to think of a line counted both in drops and in fields; empty where none is. */
  function twiceCounted(of) {
    var ids = of.lines.map(function (line) { return line.id; });
    return ids.some(function (id, n) { return ids.indexOf(id) !== n; }) ? "What stands twice was counted at both powers: low power misses small ones, a few fields miss rare ones." : "";
  }

  /* The line counted most often in fields, or else in drops: what the plot of precision is drawn of. */
  function mostCounted(of) {
    return ["field", "drop"].map(function (at) {
      return of.lines.filter(function (line) { return line.at === at && line.mean.total; }).sort(function (a, b) { return b.mean.total - a.mean.total; })[0];
    }).filter(Boolean)[0] || null;
  }

  /* Half the interval as a share of the estimate after so many fields or drops, if they go on as they did. */
  function goodTo(line, n) { return bench.distributions.normalQuantile(0.975) / Math.sqrt(line.mean.perField.value * n / line.mean.factor); }

  function precisionWords(line) {
    return line.label + ": good to about ± " + bench.dom.figures(100 * goodTo(line, line.mean.fields)) + " % after " + units(line.mean.fields, line.at) + ". Half of that takes four times as many, " + units(4 * line.mean.fields, line.at) + ".";
  }

  /* What would settle the rules that are open, and when to look again. */
  function next(outcomes) {
    return outcomes.filter(function (each) { return each.more; }).map(function (each) {
      return "About " + units(each.more, each.rule.per) + " more would settle: " + each.rule.asks.charAt(0).toLowerCase() + each.rule.asks.slice(1) + ".";
    }).concat("Look again in half a year: same spot, same depth, same dilution, as many fields.");
  }

  bench.reportWords = { units: units, answer: answer, counted: counted, summary: summary, next: next,
    twiceCounted: twiceCounted, mostCounted: mostCounted, goodTo: goodTo, precisionWords: precisionWords };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
