/* Measure on a photograph of one's own. The picture is opened here and goes nowhere; what is saved is drawn anew, without hidden data. */
(function (bench) {
  "use strict";
  var home = document.querySelector("[data-measure]");
  if (!home) { return; }
  (document.getElementById("main") || document.body).append(home);      // its parts are parts of the page, beside no others
  var data = JSON.parse(document.getElementById("measure-data").textContent), el = bench.dom.el, figures = bench.dom.figures, photo = bench.photo;
  var MOST = 2600;                     // longest side that is worked on
  var TOOLS = { length: "Length", width: "Width", area: "Area", angle: "Angle", count: "Count", edge: "Set edge" };
  var own = bench.dom.keptOptics();
  var now = { fieldNumber: own["field-number"] || data.setup["field-number-mm"] || 18, objective: own.high || data.setup.high || 40, image: null, circle: null, umPerPixel: null,
    tool: "length", points: [], taps: [], done: [], said: "", zoom: 1, centre: null, shrink: 1, size: null, ruling: null, of: "" };
  var canvas = el("canvas", { tabindex: "0", role: "img", "aria-label": "Your photograph. Tap to set points." });

  /* The worth of a pixel that is worked on: by the stage micrometer, by what is known of the picture as it came, or by the round edge. */
  function scale() {
    if (now.ruling && fits()) { return now.ruling; }
    if (now.umPerPixel) { return { umPerPart: now.umPerPixel / now.shrink, relativeError: 0.01 }; }
    return now.circle ? photo.scaleOfField(now.circle, 1000 * now.fieldNumber / now.objective, data.edgeError, data.fieldError) : null;
  }
  function fits() { return Boolean(now.size) && Math.max.apply(null, now.size) === Math.max.apply(null, now.ruling.size) && Math.min.apply(null, now.size) === Math.min.apply(null, now.ruling.size); }
  function endUm() {
    var powers = Object.keys(data.apertures).map(Number), near = powers.reduce(function (a, b) { return Math.abs(b - now.objective) < Math.abs(a - now.objective) ? b : a; });
    return data.endError * 0.61 * data.wavelengthUm / data.apertures[near];
  }

  /* Opens a picture, at most MOST pixels long: then({sheet, size, shrink}) or then(null, what is wrong). */
  function loaded(file, then) {
    if (!/^image\//.test(file.type)) { then(null, file.name + " is no picture. Allowed: JPEG, PNG or WebP."); return; }
    var address = URL.createObjectURL(file), image = new Image();
    image.onload = function () {
      var by = Math.min(1, MOST / Math.max(image.naturalWidth, image.naturalHeight));
      var sheet = el("canvas", { width: Math.round(image.naturalWidth * by), height: Math.round(image.naturalHeight * by) });
      sheet.getContext("2d").drawImage(image, 0, 0, sheet.width, sheet.height);
      URL.revokeObjectURL(address);
      then({ sheet: sheet, size: [image.naturalWidth, image.naturalHeight], shrink: by });
    };
    image.onerror = function () { URL.revokeObjectURL(address); then(null, file.name + " cannot be opened as a picture."); };
    image.src = address;
  }

  function open(file) {
    loaded(file, function (picture, trouble) {
      if (!picture) { say(trouble); return; }
      now.image = picture.sheet; now.size = picture.size; now.shrink = picture.shrink;
      now.circle = null; now.umPerPixel = null; now.points = []; now.done = []; now.zoom = 1; now.centre = null; now.taps = [];
      find();
    });
  }
  var ruled = bench.micrometerPart(loaded, function (ruling) { now.ruling = ruling; }, function () { show(); });

  function find() {
    try {
      var pixels = now.image.getContext("2d").getImageData(0, 0, now.image.width, now.image.height);
      now.circle = bench.fieldEdge.findEdge(pixels);
      now.tool = "length";
      now.said = "The round edge was found. Is the ring on it? If not, choose Set edge.";
    } catch (error) { now.tool = "edge"; now.said = error.message; }
    show();
  }
  function say(words) { now.said = words; show(); }

  /* ---- drawing ---- */
  function view() {                    // the part of the picture that is shown
    var w = now.image.width / now.zoom, h = now.image.height / now.zoom, c = now.centre || [now.image.width / 2, now.image.height / 2];
    return { x: Math.min(Math.max(0, c[0] - w / 2), now.image.width - w), y: Math.min(Math.max(0, c[1] - h / 2), now.image.height - h), w: w, h: h };
  }
  function paint() {
    if (!now.image) { return; }
    var wide = Math.min(1400, now.image.width), pen = canvas.getContext("2d"), v = view(), k = wide / v.w;
    canvas.width = wide;
    canvas.height = Math.round(wide * v.h / v.w);
    pen.drawImage(now.image, v.x, v.y, v.w, v.h, 0, 0, canvas.width, canvas.height);
    pen.setTransform(k, 0, 0, k, -v.x * k, -v.y * k);
    var line = 3 * canvas.width / 700 / k;
    function twice(draw) { pen.lineWidth = line * 2; pen.strokeStyle = "rgba(255,255,255,.85)"; draw(); pen.stroke(); pen.lineWidth = line; pen.strokeStyle = "#9a3a14"; draw(); pen.stroke(); }
    if (now.circle) { twice(function () { pen.beginPath(); pen.arc(now.circle.x, now.circle.y, now.circle.radius, 0, 7); }); }
    now.done.concat(now.points.length ? [{ tool: now.tool, points: now.points }] : []).forEach(function (each) {
      if (each.tool !== "count" && each.points.length > 1) {
        twice(function () { pen.beginPath(); each.points.forEach(function (p, n) { if (n) { pen.lineTo(p[0], p[1]); } else { pen.moveTo(p[0], p[1]); } }); if (each.tool === "area") { pen.closePath(); } });
      }
      each.points.forEach(function (p) { twice(function () { pen.beginPath(); pen.arc(p[0], p[1], line * 2.2, 0, 7); }); });
    });
    now.taps.forEach(function (p) { twice(function () { pen.beginPath(); pen.arc(p[0], p[1], line * 2.6, 0, 7); }); });
    pen.setTransform(1, 0, 0, 1, 0, 0);
    if (scale()) { bar(pen, canvas.width, canvas.height, scale().umPerPart / k); }
  }
  function bar(pen, width, height, umPerPixel) {
    var um = photo.barLength(umPerPixel, width), long = um / umPerPixel, gap = width / 50, tall = Math.max(14, width / 28), words = um >= 1000 ? um / 1000 + " mm" : um + " µm";
    pen.font = "bold " + tall + "px sans-serif";
    pen.fillStyle = "#fff";
    pen.fillRect(width - long - 3 * gap, height - tall - 4 * gap, long + 2 * gap, tall + 3 * gap);
    pen.fillStyle = "#000";
    pen.fillRect(width - long - 2 * gap, height - 2.2 * gap, long, Math.max(3, gap / 3));
    pen.textAlign = "right";
    pen.fillText(words, width - 2 * gap, height - 2.8 * gap);
  }

  canvas.addEventListener("click", function (event) {
    var box = canvas.getBoundingClientRect(), v = view();
    var p = [v.x + (event.clientX - box.left) / box.width * v.w, v.y + (event.clientY - box.top) / box.height * v.h];
    if (now.tool === "edge") {
      now.taps.push(p);
      if (now.taps.length === 3) {
        try { now.circle = bench.fieldEdge.circleThrough(now.taps[0], now.taps[1], now.taps[2]); now.tool = "length"; now.said = "The edge is set by your three points."; } catch (error) { now.said = error.message; }
        now.taps = [];
      } else { now.said = now.taps.length + " of 3 points on the edge"; }
    } else {
      now.points.push(p);
      if ((now.tool === "width" && now.points.length === 2) || (now.tool === "angle" && now.points.length === 3)) { finish(); }
      now.said = "";
    }
    show();
  });
  function finish() { if (now.points.length) { now.done.push({ tool: now.tool, points: now.points, of: now.of }); now.points = []; } }

  /* What was tapped, as one field of the count sheet: only where the picture shows all of the round field. */
  function toSheet() {
    var by = scale(), tally = {}, any = false;
    now.done.concat(now.points.length ? [{ tool: now.tool, points: now.points, of: now.of }] : []).forEach(function (each) {
      if (each.tool === "count") { var id = each.of || "other:not told"; tally[id] = (tally[id] || 0) + each.points.length; any = true; }
    });
    if (!any || !by) { return null; }
    if (!now.circle) { return el("p", { "class": "label" }, "For the count sheet the picture must show the round field: set its edge."); }
    var share = photo.shareInPicture(now.circle, now.image.width, now.image.height);
    if (share < 0.97) { return el("p", { "class": "label" }, "The picture shows " + Math.floor(100 * share) + " % of the field. The count sheet counts whole fields, so take a picture that holds the whole ring; or count this one at the eyepiece."); }
    var um = 2 * now.circle.radius * by.umPerPart, parts = Object.keys(tally).map(function (id) { return id + ":" + tally[id]; });
    return el("p", {}, el("a", { href: data.count + "#field=" + encodeURIComponent(um.toFixed(1) + ";" + parts.join(",")) }, "Put what you tapped into the count sheet, as one field"));
  }
  function what() {
    var select = el("select", { "class": "count-find", "aria-label": "What you tap" }, [el("option", { value: "" }, "What is it? Not told")].concat(Object.keys(data.tally).map(function (id) { return el("option", { value: id }, data.tally[id]); })));
    select.value = now.of;
    select.addEventListener("change", function () { finish(); now.of = select.value; show(); });
    return select;
  }

  function words(each) {
    var by = scale(), p = each.points, got;
    if (each.tool === "count") { return p.length + " counted" + (each.of ? ", " + data.tally[each.of] : ""); }
    if (!by) { return "no scale yet"; }
    if (each.tool === "area") { if (p.length < 3) { return "an area needs three points"; } got = photo.area(p, by, now.circle, endUm(), data.distortion); return figures(got.value, 3) + " ± " + figures(got.error, 2) + " µm²"; }
    if (each.tool === "angle") { if (p.length < 3) { return "an angle needs three points, the corner second"; } got = photo.angle(p[0], p[1], p[2], by, endUm()); return figures(got.value, 3) + " ± " + figures(got.error, 2) + " °"; }
    if (p.length < 2) { return "a length needs two points or more"; }
    got = photo.length(p, by, now.circle, endUm(), data.distortion);
    return figures(got.value, 3) + " ± " + figures(got.error, 2) + " µm";
  }

  /* ---- what is around it ---- */
  /* What a length or a width may be told as, to the page that ranks what it may be. */
  function told() {
    var by = scale();
    if (!by || !data.describe) { return null; }
    var saw = now.done.concat(now.points.length ? [{ tool: now.tool, points: now.points }] : []).filter(function (each) { return (each.tool === "length" || each.tool === "width") && each.points.length > 1; })
      .map(function (each) {
        var got = photo.length(each.points, by, now.circle, endUm(), data.distortion);
        return "saw:body-" + each.tool + "=" + figures(Math.max(0, got.value - 2 * got.error), 3).replace(/\u202f/g, "") + ".." + figures(got.value + 2 * got.error, 3).replace(/\u202f/g, "");
      });
    return saw.length ? el("p", {}, el("a", { href: data.describe + "#" + saw.slice(-2).join("/") }, "What is that long? Go on with what you measured")) : null;
  }

  /* A drawing of the library at the scale of the photograph as it is shown. */
  function beside() {
    var by = scale();
    if (!by) { return null; }
    var select = el("select", { "class": "count-find", "aria-label": "Drawing to lay beside it" }, [el("option", { value: "" }, "Lay a drawing beside it, at the same scale")].concat(data.beside.map(function (each, n) { return el("option", { value: n }, each.name); })));
    var place = el("div", { "class": "photo-beside" });
    function lay() {
      now.beside = select.value;
      if (select.value === "") { place.replaceChildren(); return; }
      var each = data.beside[Number(select.value)], shown = canvas.getBoundingClientRect().width || 328;
      var picture = el("img", { src: each.src, alt: each.name + ", drawn at the scale of the photograph" });
      picture.style.width = Math.max(1, each.um / by.umPerPart * shown / view().w) + "px";
      place.replaceChildren(el("span", { "class": "pic" }, picture), el("p", { "class": "label" }, each.name + ", at the scale of the photograph above"));
    }
    select.addEventListener("change", lay);
    select.value = now.beside || "";
    setTimeout(lay, 0);
    return el("div", {}, [select, place]);
  }

  function number(label, hint, unit, value, low, high, change) {
    var input = el("input", { inputmode: "decimal", autocomplete: "off" }), frame = el("span", { "class": "box" }, [input, el("span", { "class": "label u" }, unit)]), note = el("span", { "class": "label" }, hint);
    input.value = value === null ? "" : value;
    input.addEventListener("change", function () {
      var got = Number(input.value.replace(",", ".")), good = input.value.trim() !== "" && got >= low && got <= high;
      frame.classList.toggle("bad", !good);
      note.textContent = good ? hint : "Allowed: " + low + " to " + high + " " + unit;
      if (good) { change(got); show(); }
    });
    return el("li", {}, el("label", {}, [el("span", { "class": "t" }, [label, note]), frame]));
  }
  function button(text, action, kind) { return el("button", { type: "button", "class": "btn " + (kind || "plain"), onclick: action }, text); }

  function save() {
    finish();
    var out = el("canvas", { width: now.image.width, height: now.image.height }), pen = out.getContext("2d");
    pen.drawImage(now.image, 0, 0);
    bar(pen, out.width, out.height, scale().umPerPart);
    out.toBlob(function (blob) {
      var address = URL.createObjectURL(blob), link = el("a", { href: address, download: "scaled.png" });
      document.body.append(link); link.click(); link.remove();
      setTimeout(function () { URL.revokeObjectURL(address); }, 1000);
    }, "image/png");
  }

  function show() {
    var by = scale(), file = el("input", { type: "file", accept: "image/*", "class": "unseen", "aria-label": "Open a photograph" });
    file.addEventListener("change", function () { if (file.files[0]) { open(file.files[0]); } });
    var all = now.done.concat(now.points.length ? [{ tool: now.tool, points: now.points, of: now.of }] : []);
    var parts = [el("section", { "class": "part" }, el("div", { "class": "body" }, [
      now.image ? null : el("p", { "class": "lead" }, "Hold the phone to the eyepiece so that the round edge of the field is in the picture: the edge is the scale. The picture stays on this device."),
      el("div", { "class": "count-files" }, [button(now.image ? "Another photograph" : "Open a photograph", function () { file.click(); }, now.image ? "plain" : "main")]), file,
      now.image ? el("div", { "class": "photo-stage" }, canvas) : null,      // nothing above it changes, so that it stays under the finger
      el("p", { "class": "count-said two label", role: "status" }, now.said),
      now.image ? el("div", { "class": "photo-tools", role: "group", "aria-label": "What to measure" }, Object.keys(TOOLS).map(function (tool) {
        return el("button", { type: "button", "aria-pressed": String(tool === now.tool), onclick: function () { finish(); now.tool = tool; now.taps = []; now.said = tool === "edge" ? "Tap three points on the round edge, far from each other" : ""; show(); } }, TOOLS[tool]);
      })) : null,
      now.image && now.tool === "count" ? what() : null,
      now.image ? el("div", { "class": "count-files" }, [button("Closer", function () { now.centre = now.points[now.points.length - 1] || now.centre; now.zoom = Math.min(8, now.zoom * 2); show(); }), button("Wider", function () { now.zoom = Math.max(1, now.zoom / 2); show(); }),
        button("Take back", function () { if (now.taps.length) { now.taps.pop(); } else if (now.points.length) { now.points.pop(); } else { now.done.pop(); } show(); }), button("New line", function () { finish(); show(); })]) : null
    ]))];
    if (now.image) {
      parts.push(el("section", { "class": "part" }, [el("h2", {}, "Measures"), el("div", { "class": "body" }, [
        by ? el("p", {}, ["One pixel is ", el("b", {}, figures(by.umPerPart, 3) + " µm"), ", to " + figures(100 * by.relativeError, 2) + " %."]) : el("p", {}, "No scale yet: set the edge."),
        all.length ? el("ol", {}, all.map(function (each) { return el("li", {}, [TOOLS[each.tool] + ": ", el("b", {}, words(each))]); })) : el("p", { "class": "soft" }, "Tap along a line: each tap adds a point, so a bent thing is measured along its bends."),
        now.ruling && !fits() ? el("p", {}, "The picture of the stage micrometer has " + now.ruling.size.join(" × ") + " pixels, this one " + now.size.join(" × ") + ": both must come from one phone with one zoom, not cut. Its scale is not used.") : null,
        toSheet(), told(), beside(),
        el("div", { "class": "count-files" }, [by ? button("Save with a scale bar", save, "main") : null, by ? el("p", { "class": "label" }, ["For the library, with your own names: ", el("code", {}, "wetmount photo add scaled.png --um-per-pixel " + Number(by.umPerPart.toPrecision(5)) + " --entry ENTRY --author \"NAME\" --licence cc-by-4.0 --shows \"WHAT IS SEEN\"")]) : null])
      ]), el("div", { "class": "notes" }, [el("p", {}, "The uncertainty joins the blur of the lens at both ends, the field number, the found edge, and the bend of the eyepiece, which grows towards the rim. Lay what you measure in the middle."),
        el("p", {}, "A thing narrower than " + figures(2 * endUm(), 2) + " µm is a blur of that width: do not measure it.")])]));
    }
    parts.push(el("section", { "class": "part" }, [el("h2", {}, "Scale"), el("div", { "class": "body" }, el("ul", { "class": "count-form" }, [
      number("Field number", "on the eyepiece, after 10×/", "mm", now.fieldNumber, 5, 30, function (got) { now.fieldNumber = got; bench.dom.keepOptics("field-number", got); }),
      number("Objective", "with which it was taken", "×", now.objective, 1, 150, function (got) { now.objective = got; }),
      number("Known already", "µm to a pixel of the picture as it came", "µm", now.umPerPixel, 0.001, 1000, function (got) { now.umPerPixel = got; })])), el("div", { "class": "body" }, ruled.show(number))]));
    home.replaceChildren.apply(home, parts);
    paint();
  }
  show();
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
