/* One page for the grower, in plain words, to print. The same sentences and order as keytool/report. */
(function (bench) {
  "use strict";
  var el = bench.dom.el, words = bench.reportWords, units = words.units;
  bench.report = function (data, sample, setupWords, go) {
    var of = bench.results.results(data, sample), outcomes = bench.results.verdict(data, sample);
    var perUnit = of.lines.length && of.lines.every(function (line) { return line.perUnit; });
    function value(line) { return perUnit ? line.perUnit : line.mean.perField; }
    var axis = bench.plot.decades(of.lines.map(value)), unit = { g: "gram of soil", mL: "millilitre of soil", "g dry": "gram of dry soil" }[of.slip.unit];
    var said = [sample.place, sample.taken ? "taken " + sample.taken : "", sample["depth-cm"] ? sample["depth-cm"] + " cm deep" : "", sample.looked ? "looked at " + sample.looked : "", sample.by ? "counted by " + sample.by : ""].filter(Boolean).join(", ");
    return [el("article", { "class": "count-report" }, [
      el("p", { "class": "soft" }, "What was met in this soil"), el("h1", {}, sample.name), el("p", { "class": "label" }, said + ". " + setupWords(sample.setup, of.slip) + " wetmount " + data.version + "."),
      sample.invented ? el("p", {}, el("b", {}, "An invented sample, to show the sheet.")) : null,
      el("div", { "class": "no-print count-files" }, [el("button", { type: "button", "class": "btn main", onclick: function () { window.print(); } }, "Print, or save as PDF"), el("button", { type: "button", "class": "btn plain", onclick: function () { go("samples"); } }, "Samples and files")]),
      of.lines.length ? el("div", {}, words.summary(data, of).map(function (each) { return el("p", {}, each); })) : el("p", {}, "No drop and no field is done yet."),
      of.lines.length ? el("h2", {}, perUnit ? "In one " + unit : "In one drop or field") : null,
      of.lines.length ? el("table", {}, [el("thead", {}, el("tr", {}, [el("th", {}, ""), el("th", {}, "counted"), el("th", {}, "about"), el("th", {}, bench.plot.axis(axis)), el("th", {}, "between")])),
        el("tbody", {}, of.lines.map(function (line) {
          return el("tr", {}, [el("td", {}, line.label), el("td", { "class": "num" }, line.mean.total + " in " + units(line.mean.fields, line.at)), el("td", { "class": "num" }, bench.dom.estimate(value(line))),
            el("td", { "class": "w" }, bench.plot.bar(value(line), axis.to, axis.ticks, undefined, line.label)), el("td", { "class": "num" }, bench.dom.between(value(line)))]);
        }))]) : null,
      of.lines.length ? el("p", { "class": "label" }, "A thick line holds the true number 95 times in 100. A broken line: none seen, so fewer than that. Each mark to the right is ten times more. Drops and spoons may be off as well: read the numbers as sizes, not as exact.") : null,
      el("h2", {}, "Held against the rules of the bench"),
      el("ul", { "class": "count-rules" }, outcomes.map(function (each) {
        var most = Math.max(each.rule.value * 2.5 || 2, isFinite(each.interval.high) ? each.interval.high * 1.05 : 0), plain = bench.plot.plain(most);
        return el("li", {}, [el("div", {}, each.rule.asks), el("div", { "class": "label" }, [words.counted(each) ? words.counted(each) + ". " : "", el("span", { "class": "ans " + each.answer }, words.answer(each))]),
          each.answer === "not-looked" ? null : bench.plot.bar(each.interval, plain.to, plain.ticks, each.rule.value || undefined, each.rule.asks)]);
      })),
      el("p", { "class": "label" }, "These rules are common practice at the bench; no published source stands behind them. They are not added up: a soil has no single mark."),
      el("h2", {}, "What to do next"), el("div", {}, words.next(outcomes).map(function (each) { return el("p", {}, each); })),
      el("h2", {}, "What this cannot say"), el("p", {}, data.cannotSay.join(" "))
    ])];
  };
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
