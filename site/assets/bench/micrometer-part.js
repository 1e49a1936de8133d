/* The part of the photograph page that takes a second picture, of a stage micrometer: its lines are found and shown, or two are tapped. */
(function (bench) {
  "use strict";
  var el = bench.dom.el, figures = bench.dom.figures;

  /* `loaded(file, then)` opens a picture as {sheet, size}; `changed(ruling)` is told the scale, or null; `redraw` draws the page anew. */
  bench.micrometerPart = function (loaded, changed, redraw) {
    var now = { picture: null, ruling: null, division: 10, between: null, taps: [], said: "" };
    var canvas = el("canvas", { role: "img", "aria-label": "The stage micrometer. Tap two lines." });

    function find() {
      now.taps = [];
      try {
        var sheet = now.picture.sheet;
        take(bench.stageLines.scaleOfLines(sheet.getContext("2d").getImageData(0, 0, sheet.width, sheet.height), now.division));
        now.said = "Lines were found. Do the marks lie on them? If not, tap two lines far apart.";
      } catch (error) { take(null); now.said = error.message; }
    }
    function take(ruling) {
      now.ruling = ruling;
      changed(ruling && { umPerPart: ruling.umPerPart, relativeError: ruling.relativeError, size: now.picture.size });
    }
    function byHand() {
      if (now.taps.length < 2) { now.said = now.taps.length + " of 2 lines"; return; }
      if (!now.between) { now.said = "How many divisions lie between the two? Write it below."; return; }
      try { take(bench.stageLines.scaleOfTwoLines(now.taps[0], now.taps[1], now.between, now.division, 1.5 * now.picture.sheet.width / 700)); now.said = "The scale is set by your two lines."; } catch (error) { take(null); now.said = error.message; }
    }

    function paint() {
      var sheet = now.picture.sheet, wide = Math.min(1000, sheet.width), k = wide / sheet.width, pen = canvas.getContext("2d");
      canvas.width = wide;
      canvas.height = Math.round(sheet.height * k);
      pen.drawImage(sheet, 0, 0, canvas.width, canvas.height);
      pen.strokeStyle = "#9a3a14";
      pen.lineWidth = Math.max(1, wide / 500);
      if (now.ruling && !now.taps.length) {
        var r = now.ruling, c = Math.cos(r.turn), s = Math.sin(r.turn), tall = wide / 12, many = Math.ceil(Math.hypot(sheet.width, sheet.height) / r.spacingPx);
        var middle = [sheet.width / 2 - r.onALine[0], sheet.height / 2 - r.onALine[1]], first = Math.round((middle[0] * c + middle[1] * s) / r.spacingPx);
        pen.beginPath();
        for (var n = first - many; n <= first + many; n += 1) {
          var x = (r.onALine[0] + n * r.spacingPx * c) * k, y = (r.onALine[1] + n * r.spacingPx * s) * k;
          pen.moveTo(x - tall * -s / 2, y - tall * c / 2);
          pen.lineTo(x + tall * -s / 2, y + tall * c / 2);
        }
        pen.stroke();
      }
      now.taps.forEach(function (p) { pen.beginPath(); pen.arc(p[0] * k, p[1] * k, wide / 90, 0, 7); pen.stroke(); });
    }
    canvas.addEventListener("click", function (event) {
      var box = canvas.getBoundingClientRect();
      if (now.taps.length > 1) { now.taps = []; }
      now.taps.push([(event.clientX - box.left) / box.width * now.picture.sheet.width, (event.clientY - box.top) / box.height * now.picture.sheet.height]);
      byHand();
      redraw();
    });

    return {
      /* The fields and the picture; `number(label, hint, unit, value, low, high, change)` makes a box. */
      show: function (number) {
        var file = el("input", { type: "file", accept: "image/*", "class": "unseen", "aria-label": "Open a picture of a stage micrometer" });
        file.addEventListener("change", function () {
          if (file.files[0]) { loaded(file.files[0], function (picture, trouble) { if (picture) { now.picture = picture; find(); } else { now.said = trouble; } redraw(); }); }
        });
        if (now.picture) { paint(); }
        return el("details", { open: Boolean(now.picture || now.said), "class": "photo-ruled" }, [el("summary", {}, "Scale from a stage micrometer"),
          el("p", { "class": "label" }, "A second picture, with the same objective, phone and zoom, of the ruled slide: better than the engraved numbers."),
          el("ul", { "class": "count-form" }, [number("From line to line", "on the ruled slide", "µm", now.division, 0.5, 1000, function (got) { now.division = got; if (now.picture) { if (now.taps.length) { byHand(); } else { find(); } } })]),
          el("div", { "class": "count-files" }, [el("button", { type: "button", "class": "btn plain", onclick: function () { file.click(); } }, now.picture ? "Another picture of it" : "Open its picture"),
            now.ruling ? el("button", { type: "button", "class": "btn plain", onclick: function () { now.picture = null; now.said = ""; take(null); redraw(); } }, "Do without it") : null]), file,
          now.picture ? el("div", { "class": "photo-stage" }, canvas) : null,
          now.said ? el("p", { "class": "count-said label", role: "status" }, now.said) : null,
          now.ruling ? el("p", {}, [now.taps.length ? "" : "About " + Math.round(now.ruling.divisions) + " divisions across. ", "Good to ", el("b", {}, figures(100 * now.ruling.relativeError, 2) + " %"), "."]) : null,
          now.picture ? el("ul", { "class": "count-form" }, [number("Divisions between", "two lines that you tap", "", now.between, 1, 1000, function (got) { now.between = got; byHand(); })]) : null]);
      }
    };
  };
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
