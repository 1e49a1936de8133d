/* Intervals as vector pictures, readable in grey: a thick line, a box at the estimate, a broken line where none was seen. */
(function (bench) {
  "use strict";
  var s = bench.dom.svg, figures = bench.dom.figures;

  /* One interval on an axis. `to` gives 0..1 for a value; `ticks` are values; `line` a value to hold it against; `thin` one that stands behind. */
  function bar(interval, to, ticks, line, words, thin) {
    function x(value) { return 2 + 296 * Math.min(1, Math.max(0, to(value))); }
    var low = x(interval.low), high = x(isFinite(interval.high) ? interval.high : Infinity), none = !interval.value;
    var children = [s("title", {}, words), s("line", { x1: 2, y1: 8, x2: 298, y2: 8, "class": "ax" })].concat(
      ticks.map(function (tick) { return s("line", { x1: x(tick), y1: 4, x2: x(tick), y2: 12, "class": "ax" }); }));
    if (line !== undefined) { children.push(s("line", { x1: x(line), y1: 0, x2: x(line), y2: 16, "class": "hold" })); }
    children.push(s("line", { x1: low, y1: 8, x2: Math.max(high, low + 3), y2: 8, "class": none ? "iv-none" : "iv-bar" }));
    if (!none) { children.push(s("rect", { x: Math.min(292, Math.max(0, x(interval.value) - 3)), y: 2, width: 6, height: 12, "class": "iv-box" })); }
    return s("svg", { viewBox: "0 0 300 16", preserveAspectRatio: "none", "class": "iv-plot" + (thin ? " thin" : ""), role: "img" }, children);
  }

  /* A log axis that holds all intervals, in whole powers of ten. */
  function decades(intervals) {
    var ends = [];
    intervals.forEach(function (each) {
      if (each.value) { ends.push(each.value); if (each.low) { ends.push(Math.max(each.low, each.value / 100)); } }
      if (isFinite(each.high)) { ends.push(each.high); }
    });
    if (!ends.length) { ends = [1, 10]; }
    var from = Math.floor(Math.log10(Math.min.apply(null, ends))), upto = Math.ceil(Math.log10(Math.max.apply(null, ends)));
    if (upto - from < 2) { upto = from + 2; }
    var ticks = [];
    for (var n = from; n <= upto; n += 1) { ticks.push(Math.pow(10, n)); }
    return { ticks: ticks, to: function (value) { return value > 0 ? (Math.log10(value) - from) / (upto - from) : value === Infinity ? 1 : 0; } };
  }

  /* A plain axis from 0. */
  function plain(most) {
    var step = Math.pow(10, Math.floor(Math.log10(most)));
    step = most / step > 5 ? step * 2 : most / step > 2 ? step : step / 2;
    var ticks = [];
    for (var n = 0; n * step <= most * 1.0001; n += 1) { ticks.push(n * step); }
    return { ticks: ticks, to: function (value) { return value / most; } };
  }

  function axis(of) {
    var every = Math.ceil(of.ticks.length / 6);
    return bench.dom.el("div", { "class": "iv-axis label", "aria-hidden": "true" }, of.ticks.map(function (tick, n) {
      if (n % every && n !== of.ticks.length - 1) { return null; }
      var at = bench.dom.el("span", {}, tick >= 1e6 ? (tick === 1e6 ? "million" : figures(tick / 1e6) + " million") : figures(tick));
      at.style.left = 100 * of.to(tick) + "%";
      return at;
    }));
  }

  /* Half the interval as a share of the estimate (1 at the top, 0 at the foot) against how many were looked at; a ring where one stands. */
  function precision(share, now, most, at, words) {
    function x(n) { return 44 + 250 * n / most; }
    function y(n) { return 8 + 72 * (1 - Math.min(1, share(n))); }
    var points = [], n;
    for (n = 0; n <= 60; n += 1) { var many = 1 + (most - 1) * n / 60; points.push(x(many).toFixed(1) + "," + y(many).toFixed(1)); }
    var levels = [["± 100 %", 1], ["± 50 %", 0.5], ["exact", 0]].map(function (each) {
      var at = 8 + 72 * (1 - each[1]);
      return [s("line", { x1: 44, y1: at, x2: 294, y2: at, "class": "ax" }), s("text", { x: 40, y: at + 3.5, "text-anchor": "end" }, each[0])];
    });
    return s("svg", { viewBox: "0 0 300 100", "class": "iv-precision", role: "img" }, [s("title", {}, words)].concat(levels[0], levels[1], levels[2], [
      s("polyline", { points: points.join(" "), "class": "curve" }), s("circle", { cx: x(now), cy: y(now), r: 4.5, "class": "here" }),
      s("text", { x: x(now), y: 95, "text-anchor": "middle" }, String(now)), s("text", { x: 294, y: 95, "text-anchor": "end" }, bench.reportWords.units(most, at))]));
  }

  bench.plot = { bar: bar, decades: decades, plain: plain, axis: axis, precision: precision };
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
