/* Intervals as vector pictures, readable in grey: a thick line, a box at the estimate, a broken line where none was seen. */
(function (bench) {
  "use strict";
  var s = bench.dom.svg, figures = bench.dom.figures;

  /* One interval on an axis. `to` gives 0..1 for a value; `ticks` are values; `line` a value to hold it against. */
  function bar(interval, to, ticks, line, words) {
    function x(value) { return 2 + 296 * Math.min(1, Math.max(0, to(value))); }
    var low = x(interval.low), high = x(isFinite(interval.high) ? interval.high : Infinity), none = !interval.value;
    var children = [s("title", {}, words), s("line", { x1: 2, y1: 8, x2: 298, y2: 8, "class": "ax" })].concat(
      ticks.map(function (tick) { return s("line", { x1: x(tick), y1: 4, x2: x(tick), y2: 12, "class": "ax" }); }));
    if (line !== undefined) { children.push(s("line", { x1: x(line), y1: 0, x2: x(line), y2: 16, "class": "hold" })); }
    children.push(s("line", { x1: low, y1: 8, x2: Math.max(high, low + 3), y2: 8, "class": none ? "iv-none" : "iv-bar" }));
    if (!none) { children.push(s("rect", { x: Math.min(292, Math.max(0, x(interval.value) - 3)), y: 2, width: 6, height: 12, "class": "iv-box" })); }
    return s("svg", { viewBox: "0 0 300 16", preserveAspectRatio: "none", "class": "iv-plot", role: "img" }, children);
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

  /* Half the interval, in parts of the estimate, against how many fields or drops were looked at; `now` marks where one stands. */
  function precision(mean, factor, now, most, words) {
    function share(n) { var total = mean * n / factor; return total > 0 ? 1.96 / Math.sqrt(total) : 1; }
    var points = [];
    for (var n = 1; n <= most; n += Math.max(1, Math.floor(most / 60))) { points.push((10 + 280 * n / most).toFixed(1) + "," + (10 + 80 * (1 - Math.min(1, share(n)))).toFixed(1)); }
    var x = 10 + 280 * Math.min(1, now / most), y = 10 + 80 * (1 - Math.min(1, share(now)));
    return s("svg", { viewBox: "0 0 300 118", "class": "iv-precision", role: "img" }, [s("title", {}, words),
      s("line", { x1: 10, y1: 90, x2: 290, y2: 90, "class": "ax" }), s("line", { x1: 10, y1: 10, x2: 10, y2: 90, "class": "ax" }),
      s("polyline", { points: points.join(" "), "class": "curve" }), s("circle", { cx: x, cy: y, r: 5, "class": "here" }),
      s("text", { x: 12, y: 110 }, "1"), s("text", { x: 290, y: 110, "text-anchor": "end" }, String(most)),
      s("text", { x: Math.min(200, x + 9), y: y > 24 ? y - 6 : y + 18 }, "± " + figures(100 * share(now)) + " %, " + now + " looked at")]);
  }

  bench.plot = { bar: bar, decades: decades, plain: plain, axis: axis, precision: precision };
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
