/* The count sheet as a state, and what can be done to it: pure functions, state in, state out (the state given is changed and returned).
 *
 * state = {record, now: {sample, slide, at}, open: {drop, field}, undo: [...], aim, setup, log}
 *   record  the record of keytool/bench/sheet.py; only finished drops and fields stand in it
 *   open    the drop and the field being looked at; null where none is begun
 *   undo    what was done last, newest last; it survives a locked phone, since it is kept with the rest
 *   aim     how many fields one means to look at; setup: what a new sample starts with
 */
(function (bench) {
  "use strict";
  var MOST_UNDO = 300;

  function clone(value) { return JSON.parse(JSON.stringify(value)); }

  function emptySample(data, setup, name) {
    function at(where) {
      return Object.keys(data.tally).filter(function (id) { return data.tally[id].atOnce && data.tally[id].at.indexOf(where) >= 0; });
    }
    return { name: name, place: "", kind: "", taken: "", looked: "", by: "", "depth-cm": "", note: "", invented: false, setup: clone(setup),
      "at-drop": at("drop"), "at-field": at("field"), slides: [{ name: "1", drop: null, fields: [] }] };
  }

  function begin(data, setup, name) {
    return { version: 1, record: { "wetmount-count": 1, samples: [emptySample(data, setup, name || "Sample 1")] },
      now: { sample: 0, slide: 0, at: "drop" }, open: { drop: null, field: null }, undo: [], aim: 20, setup: clone(setup), isSetUp: false };
  }

  function sample(state) { return state.record.samples[state.now.sample]; }
  function slide(state) { return sample(state).slides[state.now.slide]; }

  function remember(state, what) {
    state.undo.push(what);
    if (state.undo.length > MOST_UNDO) { state.undo.shift(); }
    return state;
  }

  function listed(state, at) { return sample(state)[at === "drop" ? "at-drop" : "at-field"]; }

  /* One more of something, in the drop or field being looked at. What was not looked for before is from now on. */
  function tap(state, id) {
    var at = state.now.at, ids = listed(state, at), added = ids.indexOf(id) < 0;
    if (added) { ids.push(id); }
    state.open[at] = state.open[at] || {};
    state.open[at][id] = (state.open[at][id] || 0) + 1;
    return remember(state, { did: "tap", id: id, at: at, added: added });
  }

  /* Ends the field or drop being looked at: it now counts, also when nothing was met in it. */
  function done(state) {
    var at = state.now.at, here = slide(state), tally = state.open[at] || {};
    if (at === "field") { here.fields.push(tally); } else if (here.drop) {
      Object.keys(tally).forEach(function (id) { here.drop[id] = (here.drop[id] || 0) + tally[id]; });
    } else { here.drop = tally; }
    remember(state, { did: "done", at: at, sample: state.now.sample, slide: state.now.slide, tally: clone(tally) });
    state.open[at] = null;
    if (at === "drop") { state.now.at = "field"; }
    return state;
  }

  /* A whole field that was counted elsewhere, such as on a photograph. What is being tallied in another is ended first. */
  function addField(state, tally) {
    if (state.open.field && Object.keys(state.open.field).length) { state.now.at = "field"; done(state); }
    state.now.at = "field";
    Object.keys(tally).forEach(function (id) { if (listed(state, "field").indexOf(id) < 0) { listed(state, "field").push(id); } });
    state.open.field = tally;
    return done(state);
  }

  function turn(state, at) {
    if (at !== state.now.at) { state.now.at = at; }
    return state;
  }

  /* A new drop under a new coverslip. A field or drop that was begun and holds something is ended first, so that nothing is lost. */
  function newSlide(state) {
    close(state);
    var slides = sample(state).slides;
    slides.push({ name: String(slides.length + 1), drop: null, fields: [] });
    state.now.slide = slides.length - 1;
    state.now.at = "drop";
    return remember(state, { did: "slide", sample: state.now.sample });
  }

  function newSample(state, data, name) {
    close(state);
    var fresh = emptySample(data, state.setup, name);
    state.record.samples.push(fresh);
    state.now = { sample: state.record.samples.length - 1, slide: 0, at: "drop" };
    state.undo = [];
    return state;
  }

  function goTo(state, at) {
    close(state);
    state.now = { sample: at, slide: state.record.samples[at].slides.length - 1, at: "field" };
    state.undo = [];
    return state;
  }

  /* Ends what was begun and holds something. */
  function close(state) {
    var was = state.now.at;
    ["drop", "field"].forEach(function (at) {
      var tally = state.open[at];
      if (tally && Object.keys(tally).length) { state.now.at = at; done(state); }
      state.open[at] = null;
    });
    state.now.at = was;
    return state;
  }

  /* Takes back the last thing done. Returns what it was, or null. */
  function takeBack(state) {
    var last = state.undo.pop();
    if (!last) { return null; }
    if (last.did === "tap") {
      var tally = state.open[last.at];
      if (tally && tally[last.id]) {
        tally[last.id] -= 1;
        if (!tally[last.id]) { delete tally[last.id]; }
      }
      if (last.added) { var ids = listed(state, last.at); ids.splice(ids.indexOf(last.id), 1); }
      state.now.at = last.at;
    } else if (last.did === "done") {
      state.now = { sample: last.sample, slide: last.slide, at: last.at };
      if (last.at === "field") { slide(state).fields.pop(); } else {
        var left = slide(state).drop;
        Object.keys(last.tally).forEach(function (id) { left[id] -= last.tally[id]; if (!left[id]) { delete left[id]; } });
        if (!Object.keys(left).length) { slide(state).drop = null; }
      }
      state.open[last.at] = last.tally;
    } else if (last.did === "slide") {
      sample(state).slides.pop();
      state.now.slide = sample(state).slides.length - 1;
      state.now.at = "field";
    }
    return last;
  }

  /* The record as it is saved: what was begun and holds something is in it as a finished one. */
  function whole(state) { return tidy(close(clone(state)).record); }

  /* The one form that is kept: no zeros, everything met among what was looked for, one order. */
  function tidy(record) {
    var samples = record.samples.map(function (each) {
      function listOf(name, tallies) {
        var ids = each[name].slice();
        tallies.forEach(function (tally) { Object.keys(tally).forEach(function (id) { if (ids.indexOf(id) < 0) { ids.push(id); } }); });
        return ids;
      }
      var drops = bench.results.units(each, "drop"), fields = bench.results.units(each, "field");
      var atDrop = listOf("at-drop", drops), atField = listOf("at-field", fields);
      function tidied(tally, order) {
        var made = {};
        order.forEach(function (id) { if (tally[id]) { made[id] = tally[id]; } });
        return made;
      }
      var copy = {};
      ["name", "place", "kind", "taken", "looked", "by", "depth-cm", "note"].forEach(function (name) { copy[name] = each[name] || ""; });
      copy.invented = each.invented === true;
      copy.setup = each.setup;
      copy["at-drop"] = atDrop;
      copy["at-field"] = atField;
      copy.slides = each.slides.map(function (one) {
        return { name: one.name, drop: one.drop ? tidied(one.drop, atDrop) : null, fields: one.fields.map(function (tally) { return tidied(tally, atField); }) };
      });
      return copy;
    });
    return { "wetmount-count": 1, samples: samples };
  }

  /* A record that came from a file, checked. Throws an Error whose message says where it is wrong and what is allowed. */
  function fromJson(text, data) {
    var raw;
    try { raw = JSON.parse(text); } catch (error) { throw new Error("This is not JSON: " + error.message); }
    function must(holds, message) { if (!holds) { throw new Error(message); } }
    must(raw && raw["wetmount-count"] === 1, "This is not a count sheet. One begins with {\"wetmount-count\": 1, \"samples\": [...]}.");
    must(Array.isArray(raw.samples), "'samples' is missing. It is a list of samples, and may be empty.");
    function tally(of, where) {
      must(of && typeof of === "object" && !Array.isArray(of), where + " is not a mapping of ids to counts.");
      Object.keys(of).forEach(function (id) {
        must(bench.results.isKnown(data, id), where + ": nothing is called '" + id + "'. Allowed: a line of the tally, an entry, or other: and a name.");
        must(Number.isInteger(of[id]) && of[id] >= 0, where + ", '" + id + "': " + JSON.stringify(of[id]) + " is no count. Allowed: 0, 1, 2 and so on.");
      });
      return of;
    }
    raw.samples.forEach(function (each, n) {
      var where = "sample " + (n + 1);
      must(each && typeof each === "object", where + " is not a mapping.");
      ["name", "place", "kind", "taken", "looked", "by", "depth-cm", "note"].forEach(function (name) {
        must(each[name] === undefined || typeof each[name] === "string", where + ", '" + name + "': text is expected.");
      });
      each.setup = each.setup || {};
      Object.keys(each.setup).forEach(function (name) {
        var value = each.setup[name];
        must(name === "soil-unit" ? value === "g" || value === "mL" : typeof value === "number" && (value > 0 || (name === "moisture" && value === 0)),
          where + ", '" + name + "' is " + JSON.stringify(value) + ". Allowed: " + (name === "soil-unit" ? "g, mL." : "a number above 0."));
      });
      ["at-drop", "at-field"].forEach(function (name) {
        each[name] = each[name] || [];
        must(Array.isArray(each[name]), where + ", '" + name + "': a list is expected.");
        each[name].forEach(function (id) { must(bench.results.isKnown(data, id), where + ", '" + name + "': nothing is called '" + id + "'."); });
      });
      must(Array.isArray(each.slides), where + ": 'slides' is missing. It is a list.");
      each.slides.forEach(function (one, m) {
        var here = where + ", slide " + (m + 1);
        must(one && typeof one === "object" && Array.isArray(one.fields || []), here + " is not a slide.");
        one.name = String(one.name || "");
        one.fields = (one.fields || []).map(function (each, k) { return tally(each, here + ", field " + (k + 1)); });
        one.drop = one.drop ? tally(one.drop, here + ", drop") : null;
      });
    });
    return tidy(raw);
  }

  bench.sheet = { begin: begin, emptySample: emptySample, sample: sample, slide: slide, tap: tap, done: done, addField: addField, turn: turn, newSlide: newSlide,
    newSample: newSample, goTo: goTo, close: close, takeBack: takeBack, whole: whole, tidy: tidy, fromJson: fromJson, listed: listed, clone: clone };
  if (typeof module === "object" && module.exports) { require("./results.js"); module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
