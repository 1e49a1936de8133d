/* Tell what you saw: in lay words, or by picture, part by part. One panel for the walk and for the page "What do you see?". */
(function () {
  "use strict";
  var W = self.wetmount, el = W.el;
  var SHOWN = 8, OTHERS = 4, LIKE = 3;
  var LONG = 40, PAUSE = 200; /* of a long text not every letter is heard */
  var panels = 0;

  function unitOf(known) { return known.unit === "1" ? "" : " " + known.unit; }
  function length(known, base) { return String(Number((base / known.factor).toPrecision(3))); }

  /* Whether an observation is that one could not tell. */
  W.isUnsure = function (seen) { return !seen.states && (seen.low === undefined || seen.low === null) && (seen.high === undefined || seen.high === null); };

  /* An observation in words: "Tail: drawn out to a hair". */
  W.sayObservation = function (faces, seen) {
    var known = faces.characters[seen.character];
    if (!known) { return seen.character; }
    function states(ids) { return ids.map(function (id) { return (known.states[id] || { name: id }).name; }).join(W.tell(faces, "or")); }
    function said(id, words) { return W.tell(faces, id, Object.assign({ character: known.name }, words)); }
    if (W.isUnsure(seen)) { return said("seen-cannot-tell"); }
    if (seen.states) {
      var what = seen.negated ? W.tell(faces, "not", { what: states(seen.states) }) : states(seen.states);
      return said("seen", { what: seen.pointed ? W.tell(faces, "perhaps", { what: what }) : what });
    }
    var unit = unitOf(known), low = seen.low, high = seen.high;
    if (low === null || low === undefined) { return said("under", { high: length(known, high) + unit }); }
    if (high === null || high === undefined) { return said("or-more", { low: length(known, low) + unit }); }
    var kind = low === high ? (seen.about ? "about-number" : "a-number") : (seen.about ? "about-range" : "a-range");
    return said(kind, { low: length(known, low), high: length(known, high) + unit });
  };

  /* What the user's own words are like. */
  W.sayCalled = function (faces, called) {
    return W.tell(faces, "words-like", { names: called.slice(0, LIKE).map(function (each) { return W.nameOf(faces, each[0]); }).join(", ") });
  };

  W.pictureOfObservation = function (faces, seen) {
    return seen.states ? W.pictureOfState(faces, seen.character, seen.states[0]) : "";
  };

  /* What was told, with something told anew: of each character the later counts. */
  W.toldAnew = function (before, told) {
    var now = [].concat(told);
    return before.filter(function (each) { return !now.some(function (one) { return one.character === each.character; }); }).concat(now);
  };

  /* What a text says, as the terminal hears it: {heard: [{seen | picture | sample | called, words}], left: [{words, nearest: [seen]}], near: [seen]}. */
  function understood(faces, trail, text) {
    return W.fetch("assets/words/fold.js").then(function () {
      return Promise.all([W.fetch("assets/words/hear.js"), W.fetch("data/words.js"), W.engine()]);
    }).then(function (all) {
      return W.fetch("assets/words/likeness.js").then(function () { return W.fetch("assets/words/understood.js"); }).then(function () { return all[2].E; });
    }).then(function (E) {
      var data = self.wetmountWordsData, found = self.wetmountUnderstood.understand(E, data, trail, text, { typing: true });
      var heard = found.places.map(function (each) {
        return { seen: each.observation, picture: each.picture, sample: each.sample, words: text.slice(each.start, each.end) };
      }).filter(function (each) { return !each.seen || faces.characters[each.seen.character]; });
      if (found.called.length) { heard.push({ called: found.called }); }
      var left = sentences(text).filter(function (part) {
        return self.wetmountFold.tokens(part.words, data.spelling).some(function (token) { return !token.aside; }) &&
          !found.places.some(function (each) { return each.start < part.end && part.start < each.end; });
      }).map(function (part) {
        var near = found.heard.filter(function (each) { return part.start <= each.start && each.end <= part.end; }).map(observation);
        return { words: part.words, nearest: different(faces, near.concat(near.length ? [] : byName(faces, part.words)), heard).slice(0, 2) };
      });
      return { heard: heard, left: left, near: different(faces, found.heard.map(observation), heard) };
    }).catch(function () { return { heard: [], left: [], near: different(faces, byName(faces, text), []) }; });
  }

  /* The sentences of a text, with where they stand. */
  function sentences(text) {
    var found = [], pattern = /[^.!?;\n]+(?:[.!?;](?!\s|$)[^.!?;\n]+)*/g, part;
    while ((part = pattern.exec(text))) {
      if (part[0].trim()) { found.push({ words: part[0].trim(), start: part.index, end: part.index + part[0].length }); }
    }
    return found;
  }

  /* Each observation once, without those that were heard. */
  function different(faces, observations, heard) {
    var known = {};
    heard.forEach(function (each) { if (each.seen) { known[told(each.seen)] = true; } });
    return observations.filter(function (each) {
      if (known[told(each)] || !faces.characters[each.character]) { return false; }
      known[told(each)] = true;
      return true;
    });
  }

  function told(seen) { return JSON.stringify([seen.character, seen.states, Boolean(seen.negated), seen.low, seen.high]); }

  function observation(each) {
    if (each.says === "unsure") { return { character: each.character }; }
    if (!each.state) { return { character: each.character, low: each.low, high: each.high, about: each.low === each.high }; }
    return { character: each.character, states: [each.state], negated: each.says === "not" };
  }

  function sayHeard(faces, each) {
    if (each.picture) { return "At first sight: " + (faces.pictures[each.picture] || { name: each.picture }).name; }
    if (each.called) { return W.sayCalled(faces, each.called); }
    if (each.sample) { return "The drop is from: " + sampleName(each.sample); }
    return each.seen ? W.sayObservation(faces, each.seen) : "";
  }

  function pictureOfHeard(faces, each) {
    if (each.picture) { return W.pictureOf(faces, (faces.pictures[each.picture] || {}).entry); }
    if (each.called) { return W.pictureOf(faces, each.called[0][0]); }
    return each.seen ? W.pictureOfObservation(faces, each.seen) : "";
  }

  function sampleName(id) {
    var option = document.querySelector('.wm-sample option[value="' + id + '"]');
    return option ? option.textContent : id.replace(/-/g, " ");
  }

  function byName(faces, text) {
    var wanted = text.toLowerCase().split(/[^a-z0-9µ]+/).filter(function (each) { return each.length > 2; });
    var found = [];
    if (!wanted.length) { return found; }
    Object.keys(faces.characters).forEach(function (id) {
      var known = faces.characters[id];
      Object.keys(known.states).forEach(function (state) {
        var words = (known.name + " " + known.states[state].name + " " + known.states[state].about).toLowerCase();
        var hits = wanted.filter(function (each) { return words.indexOf(each) >= 0; }).length;
        if (hits) { found.push({ seen: { character: id, states: [state], negated: false }, score: hits }); }
      });
    });
    return found.sort(function (a, b) { return b.score - a.score; }).map(function (each) { return each.seen; });
  }

  /* A trail's own words with those told now. */
  W.addCalled = function (trail, extra) {
    if (extra && extra.called.length) { trail.called = self.wetmountLikeness.together(trail.called || [], extra.called); }
  };

  /* A row to tap: picture, what it says, and the power it is seen at. */
  W.observationRow = function (faces, seen, more, action) {
    var known = faces.characters[seen.character];
    return W.row(W.pictureOfObservation(faces, seen), W.sayObservation(faces, seen), more || (known ? "seen from " + known.power : ""), action);
  };

  W.row = function (picture, words, more, action) {
    return el("li", {}, [
      W.thumb(picture),
      el("button", { type: "button", "class": "wm-row", onclick: action }, [
        words, el("span", { "class": "label" }, more)
      ])
    ]);
  };

  /* The states of a character as pictures side by side, "cannot tell" among the ways; a number has a box. */
  W.states = function (faces, character, pick) {
    var known = faces.characters[character];
    if (known.number) { return number(faces, character, pick); }
    var ids = Object.keys(known.states);
    var drawn = ids.some(function (id) { return known.states[id].drawn; });
    var list = el("ul", { "class": "wm-leads wm-states-to-pick" + (drawn ? " wm-drawn" : ""), role: "list" }, ids.map(function (id, index) {
      var state = known.states[id];
      return el("li", {}, el("button", { type: "button", "class": "wm-lead", "data-state": id, onclick: function () { pick({ character: character, states: [id], negated: false }); } }, [
        drawn ? el("span", { "class": "wm-picture plate", "aria-hidden": "true" }, state.drawn ? el("img", { src: W.root + W.pictureOfState(faces, character, id), alt: "" }) : null) : null,
        el("span", { "class": "wm-lead-text" }, [index < 9 ? el("span", { "class": "wm-letter" }, String(index + 1)) : null, " ", el("b", {}, state.name), state.about ? el("span", { "class": "small" }, " " + state.about) : null])
      ]));
    }));
    return list;
  };

  function example(known) { return known.factor >= 1000 ? "0.6 or 0.5-0.7" : "60 or 50-70"; }

  function number(faces, character, pick) {
    var known = faces.characters[character], id = "wm-number-" + character;
    var box = el("input", { id: id, inputmode: "decimal", autocomplete: "off", "aria-describedby": id + "-help" });
    var wrong = el("p", { "class": "label", id: id + "-help", role: "status" }, "One number, or two with a dash between them: " + example(known) + ".");
    var form = el("form", { "class": "wm-number-form" }, [
      el("label", { "for": id }, known.name + (known.unit === "1" ? "" : ", in " + known.unit)), el("span", { "class": "wm-number-line" }, [
        el("span", { "class": "box" }, [box, el("span", { "class": "u" }, known.unit === "1" ? "" : known.unit)]), el("button", { type: "submit", "class": "btn main" }, "That is it")
      ]), wrong
    ]);
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      var parts = box.value.replace(/,/g, ".").split(/\s*(?:-|–|to)\s*/).map(Number);
      if (!box.value.trim() || parts.length > 2 || parts.some(function (each) { return !isFinite(each) || each <= 0; }) || parts[1] < parts[0]) {
        wrong.textContent = "That is no length I can read. Type a number above nought, such as " + example(known) + (known.unit === "1" ? "." : ", in " + known.unit + ".");
        box.setAttribute("aria-invalid", "true");
        box.focus();
        return;
      }
      var low = parts[0] * known.factor, high = parts[parts.length - 1] * known.factor;
      pick(parts.length === 1 ? { character: character, low: low, high: high, about: true } : { character: character, low: low, high: high, about: false });
    });
    return form;
  }

  /* A line box would join the lines of what is pasted without a gap. */
  W.keepLines = function (box) {
    box.addEventListener("paste", function (event) {
      var text = event.clipboardData && event.clipboardData.getData("text");
      if (!text || text.indexOf("\n") < 0) { return; }
      event.preventDefault();
      box.setRangeText(text.trim().replace(/([.!?;,])?\s*\n+\s*/g, function (gap, stop) { return (stop || ".") + " "; }), box.selectionStart, box.selectionEnd, "end");
      box.dispatchEvent(new Event("input"));
    });
  };

  /* The panel. `options`: {next: [character ids], trail() what was told so far, pick(observations, {pictures, sample, called})}. Focus goes to the box. */
  W.say = function (faces, options) {
    var list = el("ul", { "class": "seen", role: "list" });
    var status = el("p", { "class": "label", role: "status" });
    var parts = el("div", { "class": "wm-parts" });
    var id = "wm-say-" + (panels += 1);
    var box = options.box || el("input", { type: "text", id: id, placeholder: "tail like a hair", autocomplete: "off", autocapitalize: "off", "aria-label": "Say what you saw" });
    var latest = "", waiting = 0;

    function typed() {
      var text = latest = box.value.trim();
      clearTimeout(waiting);
      if (text.length < 3) {
        list.replaceChildren();
        status.textContent = "";
        parts.hidden = false;
        return;
      }
      waiting = setTimeout(function () {
        understood(faces, options.trail ? options.trail() : { sample: "", pictures: [], legs: [], saw: [] }, text).then(function (found) { if (text === latest) { show(found); } });
      }, text.length > LONG ? PAUSE : 0);
    }

    /* All that was heard is taken at once; what is wrong is left out by a tap, what was not understood has its nearest words beside it. */
    function show(found) {
      var looks = found.heard.filter(function (each) { return !each.called; }).length;
      var only = looks ? null : found.heard[0]; /* what the words are like, and nothing else was heard: it goes last */
      if (only) { found.heard = []; }
      var all = found.heard.map(function (each) { return Object.assign({ on: true }, each); });
      var take = el("button", { type: "button", "class": "wm-row wm-take", onclick: function () { taken(all.filter(function (each) { return each.on; })); } });
      var first = el("li", {}, take);
      function count() {
        var on = all.filter(function (each) { return each.on; });
        first.hidden = !on.length;
        take.replaceChildren(el("b", {}, on.length > 1 ? "All of these (" + on.length + ")" : "Take it"), " ", el("span", { "class": "label" }, on.length > 1 ? "tap a line to leave it out" : sayHeard(faces, on[0] || {})));
      }
      function toggle(each, more) {
        var row = W.row(pictureOfHeard(faces, each), sayHeard(faces, each), more, function () {
          each.on = !each.on;
          button.setAttribute("aria-pressed", String(each.on));
          count();
        });
        var button = row.querySelector("button");
        button.classList.add("wm-heard");
        button.setAttribute("aria-pressed", String(each.on));
        return row;
      }
      function offer(seen) {
        if (!found.heard.length) { return W.observationRow(faces, seen, "", function () { taken([{ seen: seen }]); }); }
        var each = { seen: seen, on: false };
        all.push(each);
        return toggle(each, "tap to add");
      }
      var rows = all.map(function (each) { return toggle(each, each.called ? W.tell(faces, "words-like-why") : "“" + each.words + "”"); });
      found.left.forEach(function (each) {
        rows.push(el("li", { "class": "wm-not-heard" }, el("p", { "class": "small" }, ["Not understood: ", el("q", {}, each.words), each.nearest.length ? " Nearest is:" : " Say it in other words, or pick a part below."])));
        each.nearest.forEach(function (seen) { rows.push(offer(seen)); });
      });
      var few = looks > 1 || found.left.length ? 0 : looks ? OTHERS : SHOWN;
      found.near.slice(0, few).forEach(function (seen) { rows.push(offer(seen)); });
      if (only) { rows.push(W.row(pictureOfHeard(faces, only), sayHeard(faces, only), W.tell(faces, "words-like-why"), function () { taken([only]); })); }
      parts.hidden = found.heard.length > 0 || rows.length > 0 && !found.left.length;
      status.textContent = found.heard.length ? "Heard" : rows.length ? "Tap what comes nearest" : "Nothing here is called that. Try another word, or pick a part below.";
      count();
      list.replaceChildren.apply(list, (all.length ? [first] : []).concat(rows));
    }

    function taken(chosen) {
      box.value = "";
      typed();
      var extra = { pictures: [], sample: "", called: [] };
      chosen.forEach(function (each) {
        if (each.picture) { extra.pictures.push(each.picture); }
        if (each.sample) { extra.sample = each.sample; }
        if (each.called) { extra.called = each.called; }
      });
      options.pick(chosen.filter(function (each) { return each.seen; }).map(function (each) { return each.seen; }), extra);
    }

    if (!options.box) { W.keepLines(box); }

    function showParts() {
      var first = (options.next || []).slice(0, 6);
      var rest = Object.keys(faces.characters).filter(function (each) { return first.indexOf(each) < 0; })
        .sort(function (a, b) { return faces.characters[a].name < faces.characters[b].name ? -1 : 1; });
      parts.replaceChildren(
        el("h3", {}, first.length ? "Or pick a part that tells most" : "Or pick a part"), rows(first),
        el("details", { "class": "wm-fold" }, [el("summary", {}, "Everything that can be looked at"), rows(rest)])
      );
    }

    function rows(ids) {
      return el("ul", { "class": "lines", role: "list" }, ids.map(function (each) {
        return el("li", {}, el("button", { type: "button", "class": "wm-row", onclick: function () { showStates(each); } }, [
          faces.characters[each].asks, el("span", { "class": "label" }, "seen from " + faces.characters[each].power)
        ]));
      }));
    }

    function showStates(character) {
      var known = faces.characters[character];
      var head = el("h3", { tabindex: "-1" }, known.asks);
      parts.replaceChildren(head, W.html("p", { "class": "small soft" }, known.look), W.states(faces, character, options.pick),
        el("div", { "class": "ways" }, [
          el("button", { type: "button", onclick: function () { options.pick({ character: character }); } }, "Cannot tell"),
          el("button", { type: "button", onclick: showParts }, "Another part")
        ]));
      head.focus();
    }

    box.addEventListener("input", typed);
    box.addEventListener("keydown", function (event) {
      if (event.key === "Enter") { event.preventDefault(); var one = list.querySelector("li:not([hidden]) button"); if (one) { one.click(); } }
    });
    showParts();
    return { box: box, body: el("div", { "class": "wm-say" }, [options.box ? null : el("label", { "class": "say", "for": id }, box), status, list, parts]) };
  };
})();
