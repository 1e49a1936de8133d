/* One page for the grower, in plain words, to print. The same sentences and order as keytool/report. */
(function (bench) {
  "use strict";
  var el = bench.dom.el, words = bench.reportWords, units = words.units;
  /* `other` is another sample drawn as thin lines below, or null; `choice` a control to choose it. */
  bench.report = function (data, sample, setupWords, go, other, choice) {
    var of = bench.results.results(data, sample), outcomes = bench.results.verdict(data, sample);
    var perUnit = of.lines.length && of.lines.every(function (line) { return line.perUnit; });
    function value(line) { return perUnit ? line.perUnit : line.mean.perField; }
    var differ = other ? bench.results.differences(data, other, sample).filter(function (each) { return each.perUnit === Boolean(perUnit); }) : [];
    function then(line) { return differ.filter(function (each) { return each.second.id === line.id && each.second.at === line.at; })[0] || null; }
    var axis = bench.plot.decades(of.lines.map(value).concat(differ.map(function (each) { return value(each.first); }))), unit = { g: "gram of soil", mL: "millilitre of soil", "g dry": "gram of dry soil" }[of.slip.unit];
    var best = words.mostCounted(of);
    var said = [sample.place, sample.taken ? "taken " + sample.taken : "", sample["depth-cm"] ? sample["depth-cm"] + " cm deep" : "", sample.looked ? "looked at " + sample.looked : "", sample.by ? "counted by " + sample.by : ""].filter(Boolean).join(", ");
    return [el("article", { "class": "count-report" }, [
      el("p", { "class": "soft" }, "What was met in this soil"), el("h1", {}, sample.name), el("p", { "class": "label" }, (said ? said + ". " : "") + setupWords(sample.setup, of.slip) + " wetmount " + data.version + "."),
      sample.invented ? el("p", {}, el("b", {}, "An invented sample, to show the sheet.")) : null,
      el("div", { "class": "no-print count-files" }, [el("button", { type: "button", "class": "btn main", onclick: function () { window.print(); } }, "Print, or save as PDF"), el("button", { type: "button", "class": "btn plain", onclick: function () { go("samples"); } }, "Samples and files"), choice]),
      of.lines.length ? el("div", {}, words.summary(data, of).map(function (each) { return el("p", {}, each); })) : el("p", {}, "No drop and no field is done yet."),
      of.lines.length ? el("h2", {}, perUnit ? "In one " + unit : "In one drop or field") : null,
      of.lines.length ? el("table", {}, [el("thead", {}, el("tr", {}, [el("th", {}, ""), el("th", {}, "counted"), el("th", {}, "about"), el("th", {}, bench.plot.axis(axis)), el("th", {}, "between")])),
        el("tbody", {}, of.lines.map(function (line) {
          var before = then(line);
          return el("tr", {}, [el("td", {}, [line.label, el("span", { "class": "label on-phone" }, line.mean.total + " in " + units(line.mean.fields, line.at))]), el("td", { "class": "num" }, line.mean.total + " in " + units(line.mean.fields, line.at)), el("td", { "class": "num" }, bench.dom.estimate(value(line))),
            el("td", { "class": "w" }, [bench.plot.bar(value(line), axis.to, axis.ticks, undefined, line.label), before ? bench.plot.bar(value(before.first), axis.to, axis.ticks, undefined, other.name, true) : null, before ? el("span", { "class": "label on-phone" }, bench.dom.sooner(before.comparison.ratio)) : null]),
            el("td", { "class": "num" }, [bench.dom.between(value(line)), before ? el("span", { "class": "label then" }, bench.dom.sooner(before.comparison.ratio)) : null])]);
        }))]) : null,
      of.lines.length ? el("p", { "class": "label" }, (differ.length ? "Thin lines below: " + other.name + ". " : "") + "A thick line holds the true number 95 times in 100. A broken line: none seen, so fewer than that. Each mark to the right is ten times more. Drops and spoons may be off as well: read the numbers as sizes, not as exact. " + words.twiceCounted(of)) : null,
      el("h2", {}, "Held against the rules of the bench"),
      el("ul", { "class": "count-rules" }, outcomes.map(function (each) {
        var most = Math.max(each.rule.value * 2.5 || 2, isFinite(each.interval.high) ? each.interval.high * 1.05 : 0), plain = bench.plot.plain(most);
        return el("li", {}, [el("div", {}, each.rule.asks), el("div", { "class": "label" }, [words.counted(each) ? words.counted(each) + ". " : "", el("span", { "class": "ans " + each.answer }, words.answer(each))]),
          each.answer === "not-looked" ? null : bench.plot.bar(each.interval, plain.to, plain.ticks, each.rule.value || undefined, each.rule.asks)]);
      })),
      el("p", { "class": "label" }, "These rules are common practice at the bench; no published source stands behind them. They are not added up: a soil has no single mark."),
      el("h2", {}, "What to do next"),
      el("div", { "class": "count-next" }, [el("div", {}, words.next(outcomes).concat(best ? words.precisionWords(best) : []).map(function (each) { return el("p", {}, each); })),
        best ? bench.plot.precision(function (n) { return words.goodTo(best, n); }, best.mean.fields, 4 * best.mean.fields, best.at, words.precisionWords(best)) : null]),
      el("h2", {}, "What this cannot say"), el("p", {}, data.cannotSay.join(" "))
    ])];
  };
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
