/* The count sheet: screens drawn from the state, each tap kept at once. What it counts and how is in sheet.js and results.js. */
(function (bench) {
  "use strict";
  var home = document.querySelector("[data-count]");
  if (!home) { return; }
  (document.getElementById("main") || document.body).append(home);      // its parts are parts of the page, beside no others
  var data = JSON.parse(document.getElementById("count-data").textContent);
  var el = bench.dom.el, sheet = bench.sheet, figures = bench.dom.figures;
  var ASKED = { "field-number-mm": [5, 30], low: [1, 20], high: [10, 150], soil: [0.0001, 10000], "total-ml": [0.01, 100000], "drop-ml": [0.001, 5],
    "slip-width-mm": [5, 100], "slip-length-mm": [5, 100], moisture: [0, 20], "bulk-density": [0.05, 3], "line-um": [10, 5000] };
  var trouble = "", said = "", screen = "count", choosing = false;
  var store = new bench.Store(function (changed) { state = changed; show(); }, function (words) { trouble = words; show(); });
  var state = store.read();
  var isFirst = !state;
  if (!state) { state = sheet.begin(data, firstSetup()); }

  function firstSetup() {
    var own = bench.dom.keptOptics(), setup = sheet.clone(data.setup);
    if (own["field-number"] >= 5 && own["field-number"] <= 30) { setup["field-number-mm"] = Number(own["field-number"]); }
    ["low", "high"].forEach(function (name) { if (own[name] >= 1 && own[name] <= 150) { setup[name] = Number(own[name]); } });
    return setup;
  }

  /* Does something to the newest state and keeps it. */
  function act(what) {
    state = store.newest(state);
    var gave = what(state);
    store.write(state);
    show();
    return gave;
  }

  function power(at) {
    var setup = sheet.sample(state).setup;
    return figures(10 * (at === "drop" ? setup.low || 4 : setup.high || 40), 4) + "×";
  }
  function name(id) { return bench.results.label(data, id); }
  function one(id) { return data.tally[id] ? data.tally[id].one : name(id); }
  function doneAt(at) { return bench.results.units(sheet.sample(state), at).length; }

  function totals(at) {
    var all = {};
    bench.results.units(sheet.sample(state), at).concat(state.open[at] ? [state.open[at]] : []).forEach(function (tally) {
      Object.keys(tally).forEach(function (id) { all[id] = (all[id] || 0) + tally[id]; });
    });
    return all;
  }

  function buzz() { if (state.buzzes && navigator.vibrate) { navigator.vibrate(25); } }

  /* A short tone for an eye that stays at the eyepiece: each thing has its own pitch, taking back a low one. Made here, no file. */
  var ears = null;
  function sound(id) {
    var Context = window.AudioContext || window.webkitAudioContext;
    if (!state.sounds || !Context) { return; }
    try {
      ears = ears || new Context();
      if (ears.state === "suspended") { ears.resume(); }
      var at = sheet.listed(state, state.now.at).indexOf(id), tone = ears.createOscillator(), loud = ears.createGain(), start = ears.currentTime;
      tone.type = "triangle";
      tone.frequency.value = at < 0 ? 165 : 440 * Math.pow(2, [0, 2, 4, 7, 9][at % 5] / 12 + Math.floor(at / 5) % 2);
      loud.gain.setValueAtTime(0.0001, start);
      loud.gain.linearRampToValueAtTime(0.2, start + 0.008);
      loud.gain.exponentialRampToValueAtTime(0.0001, start + 0.12);
      tone.connect(loud).connect(ears.destination);
      tone.start(start);
      tone.stop(start + 0.13);
    } catch (error) { /* without a loudspeaker the tap counts all the same */ }
  }

  function tap(id) {
    act(function (now) { sheet.tap(now, id); });
    buzz();
    sound(id);
    said = "";
    var pressed = home.querySelector("[data-id=\"" + CSS.escape(id) + "\"]");
    if (pressed) { pressed.classList.add("hit"); setTimeout(function () { pressed.classList.remove("hit"); }, 180); }
    speak("1 more " + one(id));
  }

  function takeBack() {
    var was = act(sheet.takeBack);
    if (was) { sound(""); }
    speak(!was ? "Nothing to take back" : was.did === "tap" ? "Took back 1 " + one(was.id) : was.did === "done" ? "This " + was.at + " is open again" : "Took back the new drop");
  }

  function speak(words) {
    said = words;
    var place = home.querySelector(".count-said");
    if (place) { place.textContent = words; }
  }

  function done() {
    var at = state.now.at;
    act(sheet.done);
    speak(at === "field" ? "Field " + doneAt("field") + " done" : "Drop done; now fields");
    window.scrollTo(0, 0);
  }

  function lastWords() {
    var last = state.undo[state.undo.length - 1];
    if (!last) { return "Take back"; }
    return last.did === "tap" ? "Take back " + (data.tally[last.id] ? one(last.id) : name(last.id)) : last.did === "done" ? "Back into the " + last.at : "Take back the new drop";
  }

  function go(where) {
    screen = where;
    choosing = false;
    if (location.hash.slice(1) !== where && where !== "count") { history.pushState(null, "", "#" + where); } else if (where === "count") { history.pushState(null, "", location.pathname + location.search); }
    show();
    window.scrollTo(0, 0);
  }

  function button(words, action, kind) { return el("button", { type: "button", "class": "btn " + (kind || "plain"), onclick: action }, words); }
  function link(words, action) { return el("button", { type: "button", "class": "as-link", onclick: action }, words); }
  function part(title, body, notes) {
    return el("section", { "class": "part" }, [title ? el("h2", {}, title) : null, el("div", { "class": "body" }, body), notes ? el("div", { "class": "notes" }, notes) : null]);
  }

  function tallyButton(id, here, all) {
    var line = data.tally[id] || data.tally[(data.entries[id] || {}).line], shows = data.tally[id] ? data.tally[id].shows : data.entries[id] ? id : "";
    var picture = shows ? el("span", { "class": "pic" }, el("img", { src: data.figures.replace("ID", shows), alt: "", loading: "lazy" })) : el("span", { "class": "pic", "aria-hidden": "true" }, line ? "" : "?");
    return el("li", {}, el("button", { type: "button", "data-id": id, onclick: function () { tap(id); }, "aria-label": name(id) + ": " + (all[id] || 0) + ", " + (here[id] || 0) + " here" },
      [picture, el("span", { "class": "t" }, name(id)), el("span", { "class": "n" }, [el("b", {}, String(all[id] || 0)), el("small", {}, (here[id] || 0) + " here")])]));
  }

  function countScreen() {
    var at = state.now.at, sample = sheet.sample(state), here = state.open[at] || {}, all = totals(at), number = doneAt("field"), aim = Math.max(state.aim, number + 1);
    var beads = el("ol", { "class": "count-beads", "aria-hidden": "true" });
    for (var n = 0; n < Math.min(aim, 40); n += 1) { beads.append(el("li", { "class": n < number ? "on" : n === number ? "now" : "" })); }
    var line = at === "field"
      ? [el("p", {}, [el("b", { "class": "big" }, String(number + 1)), el("span", { "class": "soft" }, " of " + aim + " fields")]), beads]
      : [el("p", {}, [el("b", { "class": "big" }, "Drop " + sheet.slide(state).name), el("span", { "class": "soft" }, " all of it, lane by lane")])];
    return [
      part("", [
        el("div", { "class": "count-line" }, line),
        el("div", { "class": "count-power", role: "group", "aria-label": "What is looked at" }, ["drop", "field"].map(function (each) {
          return el("button", { type: "button", "aria-pressed": String(each === at), onclick: function () { act(function (now) { sheet.turn(now, each); }); } },
            each === "drop" ? "Whole drop, " + power("drop") : "Fields, " + power("field"));
        })),
        el("ul", { "class": "count-tally" }, sheet.listed(state, at).map(function (id) { return tallyButton(id, here, all); })),
        el("div", { "class": "count-ways" }, [link("Something else", function () { choosing = !choosing; show(); }), el("a", { href: data.walk }, "What is this?"),
          at === "field" ? el("a", { href: data.measure }, "On a photograph") : null, link("New drop", function () { act(sheet.newSlide); speak("Drop " + sheet.slide(state).name); })]),
        choosing ? chooser(at) : null,
        el("p", { "class": "count-said label", role: "status" }, said),
        el("div", { "class": "count-acts desk-only" }, dockButtons())
      ]),
      resultsPart(sample)
    ];
  }

  function dockButtons() {
    return [button(lastWords(), takeBack), button(state.now.at === "field" ? "Next field" : "Drop done", done, "main wide")];
  }

  function chooser(at) {
    var listed = sheet.listed(state, at), list = el("ul", { "class": "count-choices" });
    var input = el("input", { "class": "count-find", type: "search", "aria-label": "Name of what you saw", placeholder: "Type a name", autocomplete: "off" });
    function pick(id) { choosing = false; tap(id); }
    function fill() {
      var typed = input.value.trim().toLowerCase(), found;
      if (!typed) {
        found = Object.keys(data.tally).filter(function (id) { return data.tally[id].at.indexOf(at) >= 0 && listed.indexOf(id) < 0; }).map(function (id) { return [id, name(id)]; });
      } else {
        found = Object.keys(data.entries).filter(function (id) { return data.entries[id].name.toLowerCase().indexOf(typed) >= 0; }).slice(0, 8).map(function (id) { return [id, name(id)]; });
      }
      list.replaceChildren.apply(list, found.map(function (each) { return el("li", {}, el("button", { type: "button", onclick: function () { pick(each[0]); } }, each[1])); })
        .concat(typed ? [el("li", {}, el("button", { type: "button", onclick: function () { pick(bench.results.OTHER + input.value.trim().slice(0, 60)); } }, "Not in the library: " + input.value.trim().slice(0, 60)))] : []));
    }
    input.addEventListener("input", fill);
    fill();
    return el("div", {}, [input, list]);
  }

  /* ---- what follows from the counts ---- */
  function unitWords(unit) { return { g: "gram", mL: "millilitre of soil", "g dry": "gram of dry soil" }[unit]; }

  function resultsPart(sample) {
    var of = bench.results.results(data, sheet.tidy(state.record).samples[state.now.sample]), made = of.slip;   // what is done; a field half looked at says nothing yet
    if (!of.lines.length) { return part("So far", el("p", { "class": "soft" }, "Numbers stand here when the first drop or field is done. Empty ones count too.")); }
    var perUnit = of.lines.every(function (line) { return line.perUnit; });
    var intervals = of.lines.map(function (line) { return perUnit ? line.perUnit : line.mean.perField; }), axis = bench.plot.decades(intervals);
    var rows = of.lines.map(function (line, n) {
      var heads = n && of.lines[n - 1].at === line.at ? [] : [el("li", { "class": "label power" }, line.at === "drop" ? "In whole drops, " + power("drop") : "In fields, " + power("field"))];
      var seen = line.mean.total + " in " + line.mean.fields + (line.at === "drop" ? line.mean.fields === 1 ? " drop" : " drops" : line.mean.fields === 1 ? " field" : " fields");
      return heads.concat(el("li", {}, [el("span", {}, [line.label + " ", el("span", { "class": "label" }, seen + (line.mean.widened ? ", clumped" : ""))]), el("span", { "class": "v" }, bench.dom.estimate(intervals[n])),
        bench.plot.bar(intervals[n], axis.to, axis.ticks, undefined, line.label + ": " + bench.dom.estimate(intervals[n]) + ", " + bench.dom.between(intervals[n])), el("span", { "class": "label r" }, [bench.dom.between(intervals[n]), others(sample, line, made.unit)])]));
    });
    var setup = sample.setup;
    return part(perUnit ? "In a " + unitWords(made.unit) + " so far" : "In a drop or field so far", [
      el("ul", { "class": "count-grams" }, [].concat.apply([], rows).concat(el("li", {}, bench.plot.axis(axis)))),
      bench.reportWords.twiceCounted(of) ? el("p", { "class": "label" }, bench.reportWords.twiceCounted(of)) : null,
      precisionOf(of),
      el("div", { "class": "count-ways" }, [link("Report for the grower", function () { go("report"); }), link("Samples and files", function () { go("samples"); })])
    ], [el("p", {}, "The thick line holds the true number 95 times in 100. A broken line: none seen, so fewer than that. Only drops and fields that are done count."),
      el("p", {}, [setupWords(setup, made) + " ", link("Change", function () { go("setup"); })])]);
  }

  /* How much shorter the line of what is counted most would grow with more fields. */
  function precisionOf(of) {
    var best = bench.reportWords.mostCounted(of);
    if (!best) { return null; }
    var words = bench.reportWords.precisionWords(best);
    return el("details", {}, [el("summary", {}, "How many more fields?"), el("p", { "class": "label" }, words),
      bench.plot.precision(function (n) { return bench.reportWords.goodTo(best, n); }, best.mean.fields, 4 * best.mean.fields, best.at, words)]);
  }

  /* What eight samples of this kind in ten are thought to hold; nothing where the unit differs. */
  function others(sample, line, unit) {
    var kind = data.abundances[sample.kind], range = kind && kind.things[line.id];
    return range && unit === kind.per ? "; " + data.kinds[sample.kind] + " mostly " + figures(range[1], 1) + " to " + figures(range[2], 1) + " (an estimate)" : "";
  }

  function setupWords(setup, made) {
    var words = [];
    if (setup.soil && setup["total-ml"]) { words.push(figures(setup.soil, 3) + " " + (setup["soil-unit"] || "g") + " made up to " + figures(setup["total-ml"], 3) + " mL"); }
    if (setup["drop-ml"]) { words.push("drop " + figures(setup["drop-ml"], 3) + " mL"); }
    if (setup["slip-width-mm"]) { words.push("slip " + figures(setup["slip-width-mm"], 3) + " × " + figures(setup["slip-length-mm"], 3) + " mm"); }
    if (made.fieldMm) { words.push("field " + figures(made.fieldMm * 1000, 3) + " µm"); }
    return words.join(", ") + ".";
  }

  /* ---- set up ---- */
  function box(label, hint, unit, key, setup, change) {
    var range = ASKED[key], input = el("input", { inputmode: "decimal", autocomplete: "off" }), frame = el("span", { "class": "box" }, [input, el("span", { "class": "label u" }, unit)]);
    input.value = setup[key] === undefined || setup[key] === null ? "" : String(setup[key]);
    input.addEventListener("change", function () {
      var text = input.value.trim().replace(",", "."), value = Number(text), note = frame.parentNode.querySelector("[data-note]");
      if (!text) { change(key, undefined); return; }
      var good = isFinite(value) && value >= range[0] && value <= range[1];
      frame.classList.toggle("bad", !good);
      note.textContent = good ? hint : "'" + input.value.trim().slice(0, 12) + "' cannot be. Allowed: " + range[0] + " to " + range[1] + " " + unit;
      if (good) { change(key, value); }
    });
    return el("li", {}, el("label", {}, [el("span", { "class": "t" }, [label, el("span", { "class": "label", "data-note": true }, hint)]), frame]));
  }

  function setupScreen() {
    var sample = sheet.sample(state), setup = sample.setup, derived = el("p", { role: "status" }), film = el("p", { role: "status" });
    function change(key, value) {
      act2(function (now) {
        var own = sheet.sample(now).setup;
        if (value === undefined) { delete own[key]; delete now.setup[key]; } else { own[key] = value; now.setup[key] = value; }
        setup = own;
      });
      if (key === "field-number-mm") { bench.dom.keepOptics("field-number", value); }
      if (key === "low" || key === "high") { bench.dom.keepOptics(key, value); }
      derive();
    }
    function derive() {
      var made = bench.results.slip(setup);
      derived.replaceChildren.apply(derived, made.fieldMm && made.lowFieldMm ? ["At " + power("field") + " the field is ", el("b", {}, figures(made.fieldMm * 1000, 3) + " µm"), " across; at " + power("drop") + " it is ", el("b", {}, figures(made.lowFieldMm, 3) + " mm"), "."] : ["The width of the field is not known yet."]);
      film.replaceChildren.apply(film, made.filmMm && made.fieldMl ? ["The film is ", el("b", {}, figures(made.filmMm * 1000, 3) + " µm"), " deep. One field holds ", el("b", {}, figures(made.fieldMl) + " mL"), ", one of " + figures(made.fieldsPerSlip) + " under the coverslip."] : ["Without drop and coverslip there is no number per millilitre."]);
    }
    derive();
    var unit = el("select", { "aria-label": "Soil in grams or millilitres" }, [el("option", { value: "g" }, "g, weighed"), el("option", { value: "mL" }, "mL, level spoon")]);
    unit.value = setup["soil-unit"] || "g";
    unit.addEventListener("change", function () { change("soil-unit", unit.value); });
    function tick(name, label, hint, then) {
      var box = el("input", { type: "checkbox" });
      box.checked = Boolean(state[name]);
      box.addEventListener("change", function () { act2(function (now) { now[name] = box.checked; }); then(); });
      return el("li", {}, el("label", {}, [el("span", { "class": "t" }, [label, el("span", { "class": "label" }, hint)]), box]));
    }
    return [
      part("Set up once", el("p", { "class": "lead" }, "Kept on this device. Nothing leaves it.")),
      part("Your microscope", [el("ul", { "class": "count-form" }, [
        box("Field number", "on the eyepiece, after 10×/", "mm", "field-number-mm", setup, change), box("Low objective", "for the whole drop", "×", "low", setup, change), box("High objective", "for fields", "×", "high", setup, change)]), derived],
      el("p", {}, "No number on the eyepiece? Lay a clear ruler under the 4× objective, read the millimetres across, and put in four times that.")),
      part("Your slide", [el("ul", { "class": "count-form" }, [
        box("Soil", "how much was taken", "", "soil", setup, change), el("li", {}, el("label", {}, [el("span", { "class": "t" }, "measured in"), el("span", { "class": "box words" }, unit)])),
        box("Made up to", "soil and water together", "mL", "total-ml", setup, change), box("One drop", "count the drops in 1 mL", "mL", "drop-ml", setup, change),
        box("Coverslip, one side", "", "mm", "slip-width-mm", setup, change), box("the other side", "", "mm", "slip-length-mm", setup, change)]), film],
      el("p", {}, "Focus through the whole film. At one focus you see about 2 µm of it, and what does not settle is undercounted up to a hundred times.")),
      part("If you know it", el("ul", { "class": "count-form" }, [
        box("Water in the soil", "g to a gram of dry soil; gives numbers per gram of dry soil", "g/g", "moisture", setup, change), box("Weight of the spoonful", "g in a mL; turns a spoon into grams", "g/mL", "bulk-density", setup, change)])),
      part("While your eye is at the eyepiece", el("ul", { "class": "count-form" }, [
        tick("buzzes", "Buzz at each tap", "where the device can", buzz), tick("sounds", "Sound at each tap", "each button its own tone", function () { sound(sheet.listed(state, state.now.at)[0]); })])),
      el("div", { "class": "count-acts desk-only" }, button("Start counting", startCounting, "main"))
    ];
  }
  /* As act, without drawing the screen anew: the hand is in a box of it. */
  function act2(what) { state = store.newest(state); what(state); store.write(state); }
  function startCounting() { act2(function (now) { now.isSetUp = true; }); go("count"); }

  /* ---- samples, files, two dates ---- */
  function words(key, label, hint, options) {
    var sample = sheet.sample(state), input = options ? el("select", {}, [el("option", { value: "" }, "not said")].concat(Object.keys(options).map(function (id) { return el("option", { value: id }, options[id]); })))
      : el("input", { maxlength: 300, type: key === "taken" || key === "looked" ? "date" : "text" });
    input.value = sample[key] || "";
    input.addEventListener("change", function () { act2(function (now) { sheet.sample(now)[key] = input.value; }); });
    return el("li", {}, el("label", {}, [el("span", { "class": "t" }, [label, el("span", { "class": "label" }, hint)]), el("span", { "class": "box words" }, input)]));
  }

  function samplesScreen() {
    var file = el("input", { type: "file", accept: ".json,.csv,text/csv,application/json", "class": "unseen", "aria-label": "Open a file" });
    file.addEventListener("change", function () { if (file.files[0]) { open(file.files[0]); } });
    return [
      part("This sample", el("ul", { "class": "count-form" }, [words("name", "Name", ""), words("place", "Place", "plot, bed, row"), words("kind", "What it is", "", data.kinds), words("depth-cm", "Depth", "cm"), words("taken", "Taken on", ""), words("looked", "Looked at on", ""), words("by", "Counted by", ""), words("note", "Note", "weather, what was done to the soil")])),
      part("Samples", [
        el("ul", { "class": "count-samples" }, state.record.samples.map(function (sample, n) {
          return el("li", {}, [el("span", { "class": "t" }, [el("b", {}, sample.name || "Sample " + (n + 1)), sample.invented ? " (invented)" : "", el("span", { "class": "label" }, " " + bench.results.units(sample, "drop").length + " drops, " + bench.results.units(sample, "field").length + " fields")]),
            n === state.now.sample ? el("span", { "class": "label" }, "being counted") : el("button", { type: "button", "class": "as-link", onclick: function () { act(function (now) { sheet.goTo(now, n); }); } }, "Go on with it"),
            el("button", { type: "button", "class": "as-link", onclick: function () { remove(n); } }, "Delete")]);
        })),
        el("div", { "class": "count-files" }, [button("New sample", function () { act(function (now) { sheet.newSample(now, data, "Sample " + (now.record.samples.length + 1)); }); go("count"); }, "main"),
          button("Open the invented example", function () { act(function (now) { addSamples(now, data.demo.samples); }); speak("The invented example is open"); })])
      ]),
      part("Files", [
        el("p", {}, "A file holds everything. Nothing is sent anywhere."),
        el("div", { "class": "count-files" }, [button("Save as file (JSON)", function () { bench.dom.download("count.json", "application/json", JSON.stringify(sheet.whole(state), null, 1) + "\n"); }),
          button("Save as table (CSV)", function () { bench.dom.download("count.csv", "text/csv", bench.csv.toCsv(sheet.whole(state), data)); }),
          button("Open a file", function () { file.click(); })]), file,
        el("p", { "class": "count-said label", role: "status" }, said)
      ]),
      state.record.samples.length > 1 ? differencePart() : null
    ];
  }

  /* Puts samples beside those that stand; an untouched first sample gives way. */
  function addSamples(now, samples) {
    sheet.close(now);
    var first = now.record.samples[0];
    var untouched = now.record.samples.length === 1 && !first.slides.some(function (slide) { return slide.drop || slide.fields.length; });
    now.record.samples = (untouched ? [] : now.record.samples).concat(sheet.clone(samples));
    now.now = { sample: now.record.samples.length - 1, slide: now.record.samples[now.record.samples.length - 1].slides.length - 1, at: "field" };
    if (now.now.slide < 0) { sheet.sample(now).slides.push({ name: "1", drop: null, fields: [] }); now.now.slide = 0; }
    now.undo = [];
    now.isSetUp = true;
  }

  function remove(n) {
    var sample = state.record.samples[n];
    if (!window.confirm("Delete " + (sample.name || "this sample") + " from this device? Save it as a file first if you may need it.")) { return; }
    act(function (now) {
      sheet.close(now);
      now.record.samples.splice(n, 1);
      if (!now.record.samples.length) { now.record.samples = sheet.begin(data, now.setup).record.samples; }
      now.now = { sample: 0, slide: now.record.samples[0].slides.length - 1, at: "field" };
      now.undo = [];
    });
  }

  function open(file) {
    if (file.size > 20000000) { speak(file.name + " has " + Math.round(file.size / 1e6) + " MB. Allowed: up to 20 MB. Split it by sample."); return; }
    file.arrayBuffer().then(function (bytes) {
      var text = new TextDecoder("utf-8").decode(bytes), strange = text.indexOf("\ufffd");
      if (text.indexOf("\0") < 0 && strange >= 0) { throw new Error("row " + text.slice(0, strange).split("\n").length + ": this is not UTF-8 text. Save the sheet as 'CSV UTF-8'."); }
      var record = /^[\ufeff\s]*\{/.test(text) ? sheet.fromJson(text.replace(/^\ufeff/, ""), data) : bench.csv.fromCsv(text, data);
      if (!record.samples.length) { throw new Error("It holds no sample."); }
      act(function (now) { addSamples(now, record.samples); });
      speak(record.samples.length + (record.samples.length === 1 ? " sample" : " samples") + " read from " + file.name);
    }).catch(function (error) { speak(file.name + ": " + error.message + " Nothing was taken from it, and what you have is as before."); });
  }

  function differencePart() {
    var samples = sheet.whole(state).samples, one = samples.length - 2, two = samples.length - 1, place = el("div", {});
    function choice(at, set) {
      var select = el("select", { "class": "count-find", "aria-label": "Sample to compare" }, samples.map(function (each, n) { return el("option", { value: n }, each.name || "Sample " + (n + 1)); }));
      select.value = at;
      select.addEventListener("change", function () { set(Number(select.value)); fill(); });
      return select;
    }
    function fill() {
      var found = bench.results.differences(data, samples[one], samples[two]), ends = [];
      found.forEach(function (each) { ends.push(value(each.first, each), value(each.second, each)); });
      var axis = bench.plot.decades(ends);
      place.replaceChildren(el("ul", { "class": "count-grams" }, found.map(function (each) {
        var name = each.label + (each.first.at === "drop" ? ", drops" : ", fields");
        return el("li", {}, [el("b", {}, name), el("span", { "class": "v" }, ""),
          bench.plot.bar(value(each.first, each), axis.to, axis.ticks, undefined, samples[one].name + ": " + bench.dom.estimate(value(each.first, each))),
          bench.plot.bar(value(each.second, each), axis.to, axis.ticks, undefined, samples[two].name + ": " + bench.dom.estimate(value(each.second, each))),
          el("span", { "class": "label r" }, bench.dom.ratioWords(each.comparison.ratio))]);
      }).concat(el("li", {}, bench.plot.axis(axis)))));
    }
    function value(line, each) { return each.perUnit ? line.perUnit : line.mean.perField; }
    fill();
    return part("Two dates side by side", [choice(one, function (n) { one = n; }), choice(two, function (n) { two = n; }), place],
      el("p", {}, "Upper line the first, lower line the second. Of twenty lines compared, one differs by chance alone. Two drops of one jar are not two soils: a difference between plots needs several samples of each."));
  }

  /* ---- show ---- */
  var SCREENS = { count: countScreen, setup: setupScreen, samples: samplesScreen, report: reportScreen };

  var besides = null;                 // the sample drawn beside the one of the report
  function reportScreen() {
    var samples = sheet.whole(state).samples, here = state.now.sample;
    var select = el("select", { "class": "count-find", "aria-label": "Another sample beside it" }, [el("option", { value: "" }, "Another date beside it: none")]
      .concat(samples.map(function (each, n) { return n === here ? null : el("option", { value: n }, "Beside it: " + (each.name || "Sample " + (n + 1))); }).filter(Boolean)));
    if (besides === here || besides >= samples.length) { besides = null; }
    select.value = besides === null ? "" : String(besides);
    select.addEventListener("change", function () { besides = select.value === "" ? null : Number(select.value); show(); });
    return bench.report(data, samples[here], setupWords, go, besides === null ? null : samples[besides], samples.length > 1 ? select : null);
  }

  function show() {
    var typing = document.activeElement && home.contains(document.activeElement) ? document.activeElement.getAttribute("data-id") : null;
    var sample = sheet.sample(state), where = document.querySelector("[data-count-where]");
    if (where) { where.textContent = (sample.name || "") + (sample.invented ? " (invented)" : ""); }
    home.replaceChildren.apply(home, [trouble ? el("p", { "class": "count-trouble", role: "alert" }, trouble) : null, el("p", { "class": "label no-print" }, screen === "count" ? sample.name + (sample.invented ? ", invented" : "") : "")].concat(SCREENS[screen]()).filter(Boolean));
    var dock = document.querySelector("[data-count-dock]");
    dock.replaceChildren.apply(dock, screen === "count" ? dockButtons() : screen === "setup" ? [button("Start counting", startCounting, "main")]
      : [button("Back to counting", function () { go("count"); }, "main")]);
    if (typing) { var again = home.querySelector("[data-id=\"" + CSS.escape(typing) + "\"]"); if (again) { again.focus(); } }
  }

  /* #field=450;flagellate:3,ciliate:1 from a photograph: its width in µm, and what was tapped in it. It counts as one field, if it is as wide as those of the sheet. */
  function fromPhotograph(text) {
    var parts = text.split(";"), um = Number(parts[0]), own = bench.results.slip(sheet.sample(state).setup).fieldMm, tally = {}, bad = "";
    (parts[1] || "").split(",").filter(Boolean).forEach(function (each) {
      var at = each.lastIndexOf(":"), id = each.slice(0, at), many = Number(each.slice(at + 1));
      if (!bench.results.isKnown(data, id) || !Number.isInteger(many) || many < 1) { bad = each; return; }
      tally[id] = (tally[id] || 0) + many;
    });
    if (bad) { said = "'" + bad.slice(0, 60) + "' from the photograph cannot be counted. Nothing was taken from it."; return; }
    if (own && Math.abs(um / (1000 * own) - 1) > 0.03) {
      said = "The field of the photograph is " + figures(um, 3) + " µm wide, those of this sheet are " + figures(1000 * own, 3) + " µm. It was not counted: take it with the objective of the sheet, or set the sheet up for it.";
      return;
    }
    act2(function (now) { sheet.addField(now, tally); });
    said = "One field from the photograph: " + (Object.keys(tally).map(function (id) { return tally[id] + " " + (tally[id] === 1 ? one(id) : name(id)); }).join(", ") || "none seen") + ". Take it back below if that was not meant.";
  }

  /* #add=plectus,ciliate from the end of a walk: one more of each, in the field or drop its line is counted in. */
  function arrive() {
    var hash = location.hash.slice(1), found;
    try { hash = decodeURIComponent(hash); } catch (error) { /* as it stands */ }
    found = /^add=(.+)$/.exec(hash);
    if (found) {
      var unknown = [];
      found[1].split(",").forEach(function (id) {
        if (!bench.results.isKnown(data, id)) { unknown.push(id); return; }
        act2(function (now) {
          var lines = bench.results.linesOf(data, id), at = lines.length ? data.tally[lines[0]].at : ["drop", "field"];
          if (at.indexOf(now.now.at) < 0) { now.now.at = at[0]; }
          sheet.tap(now, id);
        });
        said = "Counted: 1 " + one(id) + ". Take it back below if that was not meant.";
      });
      if (unknown.length) { said = "Nothing in the library is called '" + unknown.join(", ").slice(0, 60) + "'. It was not counted."; }
      history.replaceState(null, "", location.pathname + location.search);
      screen = "count";
    } else if (/^field=/.test(hash)) {
      fromPhotograph(hash.slice(6));
      history.replaceState(null, "", location.pathname + location.search);
      screen = "count";
    } else if (hash === "demo") {
      act2(function (now) { if (!now.record.samples.some(function (each) { return each.invented; })) { addSamples(now, data.demo.samples); } });
      history.replaceState(null, "", location.pathname + location.search);
      screen = "count";
    } else { screen = SCREENS[hash] ? hash : isFirst && !state.isSetUp ? "setup" : "count"; }
    isFirst = false;
    show();
  }

  window.addEventListener("hashchange", arrive);
  window.addEventListener("popstate", function () { var hash = location.hash.slice(1); screen = SCREENS[hash] ? hash : "count"; show(); });
  arrive();
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
