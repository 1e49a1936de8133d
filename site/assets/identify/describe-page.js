/* "What do you see?": what was seen, what it probably is, and what to look at next, in one column.
 *
 * A thing pointed at in the field, a word typed, a picture chosen: each is an observation that may be mistaken. All of them are the
 * address of the page, so that a reload, a link and the browser's Back bring them back. The engine is fetched at the first of them.
 */
(function () {
  "use strict";
  var W = self.wetmount, el = W && W.el;
  var start = document.querySelector(".wm-start"), told = document.querySelector(".wm-told");
  if (!W || !start || !told) { return; }
  var FEW = 4;
  var message = document.querySelector(".wm-message");
  var dock = document.querySelector(".wm-say-dock");
  var dockBox = dock.querySelector("input"), startBox = start.querySelector(".wm-say-here input");
  var sample = start.querySelector(".wm-sample");
  var trail = fresh();
  var shown = null;
  var passed = [];
  var pointing = false;

  function fresh() { return { sample: "", pictures: [], legs: [], saw: [] }; }
  function toldSoFar() { return trail; }
  function copyOf(what) { return JSON.parse(JSON.stringify(what)); }
  function isEmpty(of) { return !of.saw.length && !of.pictures.length && !(of.called || []).length && !of.legs.some(function (each) { return each.answers.length; }); }
  function failed() { message.textContent = "What the library knows could not be fetched. Try once more where there is a network; what you told is kept in the address."; }

  /* --- going about ----------------------------------------------------------------------------------------- */

  function goTo(next) {
    W.engine().then(function (ready) {
      trail = next;
      passed = [];
      pointing = false;
      var address = isEmpty(trail) && !trail.sample ? "" : ready.E.write(trail);
      if (address !== W.fragment()) { location.hash = address; }
      show(true);
    }, failed);
  }

  /* What is told again of one character takes the place of what was told before. */
  function tell(observations, extra) {
    var next = copyOf(trail);
    if (extra) {
      next.pictures = next.pictures.concat(extra.pictures.filter(function (each) { return next.pictures.indexOf(each) < 0; }));
      next.sample = next.sample || extra.sample;
    }
    W.addCalled(next, extra);
    next.saw = W.toldAnew(next.saw, observations);
    goTo(next);
  }

  function pointAt(picture) {
    var next = copyOf(trail);
    if (next.pictures.indexOf(picture) < 0) { next.pictures.push(picture); }
    goTo(next);
  }

  function takeBack(what, index) {
    var next = copyOf(trail);
    if (what === "called") { next.called = []; } else { next[what].splice(index, 1); }
    goTo(next);
  }

  /* The thing as it lies in the field. */
  function pictureOf(id) {
    var image = start.querySelector('[data-at="' + id + '"] img');
    return image ? image.src.slice(W.root.length) : "";
  }

  function withCross(row, words, what, index) {
    row.append(el("button", { type: "button", "class": "off", "aria-label": "Take back: " + words, onclick: function () { takeBack(what, index); } }, "×"));
    return row;
  }

  function part(title, body, notes, attributes) {
    return el("section", Object.assign({ "class": "part" }, attributes || {}), [
      el("h2", { tabindex: "-1" }, title), el("div", { "class": "body" }, body), notes && notes.length ? el("div", { "class": "notes" }, notes) : null
    ]);
  }

  /* --- you saw ----------------------------------------------------------------------------------------------- */

  function youSaw(faces) {
    var rows = trail.pictures.map(function (id, index) {
      var known = faces.pictures[id];
      return withCross(W.row(pictureOf(id) || W.pictureOf(faces, known.entry), known.name, "pointed at, " + known.power + "×", point), known.name, "pictures", index);
    }).concat(trail.saw.map(function (each, index) {
      var row = W.observationRow(faces, each, faces.characters[each.character].power, function () { change(each, row); });
      return withCross(row, W.sayObservation(faces, each), "saw", index);
    }));
    if ((trail.called || []).length) {
      var like = W.sayCalled(faces, trail.called);
      rows.push(withCross(W.row(W.pictureOf(faces, trail.called[0][0]), like, W.tell(faces, "words-like-why"), point), like, "called", 0));
    }
    trail.legs.forEach(function (each) {
      if (each.answers.length) { rows.unshift(el("li", {}, [W.thumb(""), el("a", { "class": "wm-row", href: W.root + "keys/" + each.key + ".html#" + W.ready.E.write({ sample: trail.sample, pictures: [], legs: [each], saw: [] }) }, [
        W.nameOf(faces, each.key), el("span", { "class": "label" }, each.answers.length + (each.answers.length === 1 ? " answer" : " answers") + " in this key")
      ])])); }
    });
    var older = rows.length > FEW ? rows.splice(0, rows.length - FEW + 1) : [];
    return [
      older.length ? el("details", { "class": "wm-fold" }, [el("summary", {}, older.length + " things seen before"), el("ul", { "class": "seen", role: "list" }, older)]) : null,
      el("ul", { "class": "seen", role: "list" }, rows)
    ];
  }

  /* A tap on what was seen opens its pictures again, in the place of the line. */
  function change(observation, row) {
    W.engine().then(function (ready) {
      var known = ready.faces.characters[observation.character];
      var open = el("li", { "class": "wm-changing" }, el("div", {}, [
        el("h3", { tabindex: "-1" }, known.asks), W.states(ready.faces, observation.character, tell),
        el("div", { "class": "ways" }, el("button", { type: "button", onclick: function () { tell({ character: observation.character }); } }, "Cannot tell"))
      ]));
      row.replaceWith(open);
      open.querySelector("h3").focus();
    }, failed);
  }

  /* --- it is probably -------------------------------------------------------------------------------------------- */

  function probably(E, faces, result) {
    var id = result.verdict ? result.verdict.id : "";
    return [
      result.fits ? null : el("p", { "class": "wm-no-fit" }, W.tell(faces, "nothing-fits-look-again") + " " + W.tell(faces, "nearest")),
      W.verdict.head(faces, result, E)
    ].concat(W.verdict.feeding(faces, id, result), W.verdict.names(faces, result), meaning(faces, id, result), conflicts(faces, result), folded(why(E, faces, result), W.tell(faces, "what-speaks-for")));
  }

  /* What it means and what to take care of: open once one name leads, folded while there is more to look at first. */
  function meaning(faces, id, result) {
    var all = W.verdict.means(faces, id).concat(W.verdict.cautions(faces, id, result));
    if (!all.length || result.names.length === 1) { return all; }
    var care = (id ? faces.entries[id].cautions : []).concat(result.cautions).filter(function (each, at, every) { return every.indexOf(each) === at; }).map(function (each) { return W.html("div", {}, faces.cautions[each]).querySelector("strong"); }).filter(Boolean);
    return [el("details", { "class": "wm-fold" }, [el("summary", {}, W.tell(faces, care.length ? "what-it-means-care" : "what-it-means", { what: care.map(function (each) { return each.textContent.toLowerCase(); }).join(", ") }))].concat(all))];
  }

  function conflicts(faces, result) {
    if (!result.conflicts || !result.conflicts.length) { return []; }
    var words = result.conflicts.map(function (each) { return sourceWords(faces)(each.source); });
    return [el("p", { "class": "label" }, W.tell(faces, "left-out", { what: words.join("; ") }))];
  }

  /* What a reason rests on: a character that was told, or an answer in a key. */
  function sourceWords(faces) {
    return function (source) {
      if (source.length > 1) { return W.tell(faces, "an-answer-in", { key: W.nameOf(faces, source[0]) }); }
      var told = trail.saw.filter(function (each) { return each.character === source[0]; })[0];
      return told ? W.sayObservation(faces, told) : (faces.characters[source[0]] || { name: source[0] }).name;
    };
  }

  function why(E, faces, result) {
    var name = result.names[0] ? result.names[0].id : "";
    if (!faces.entries[name]) { return []; }
    return [el("b", {}, W.nameOf(faces, name)), el("br")].concat(W.verdict.weights(faces, E.explain(trail, name), sourceWords(faces)));
  }

  function folded(content, words) {
    return content.length ? el("details", { "class": "wm-fold desk-off" }, [el("summary", {}, words), el("div", { "class": "small" }, content)]) : null;
  }

  /* --- look at next -------------------------------------------------------------------------------------------------- */

  function lookNext(faces, result) {
    var left = result.next.filter(function (each) { return passed.indexOf(each.character) < 0; });
    if (!left.length) { return [el("p", {}, W.tell(faces, result.next.length ? "nothing-else-tells" : "nothing-tells-apart"))]; }
    var character = left[0].character, known = faces.characters[character];
    return [
      el("h3", {}, known.asks), W.html("p", { "class": "small soft" }, "<span class='num'>" + known.power + "</span> " + known.look), W.states(faces, character, tell),
      el("div", { "class": "ways" }, [
        el("button", { type: "button", onclick: function () { tell({ character: character }); } }, W.tell(faces, "cannot-tell")),
        left.length > 1 ? el("button", { type: "button", onclick: function () { passed.push(character); show(false); document.querySelector(".wm-next-look h2").focus(); } }, "Ask something else") : null,
        el("button", { type: "button", onclick: function () { pick(); } }, "Pick a part")
      ])
    ];
  }

  function whyNext(faces, result) {
    var effort = result.next.length && result.next[0].effort;
    return [el("b", {}, W.tell(faces, "why-this")), el("br"), W.tell(faces, effort && effort > 1 ? "tells-most-for-trouble" : "tells-most")];
  }

  /* --- saying it ---------------------------------------------------------------------------------------------------------- */

  function listen(box) {
    W.keepLines(box);
    box.addEventListener("focus", function () { W.engine().then(function (ready) { prepare(box, ready); }, failed); }, { once: true });
  }

  function prepare(box, ready) {
    var panel = W.say(ready.faces, { box: box, next: trail.saw.length ? ready.E.describe(trail).next.map(function (each) { return each.character; }) : [], trail: toldSoFar, pick: tell });
    var place = box === startBox ? el("div", { "class": "wm-saying" }, panel.body) : part("Say it", [panel.body], null, { "class": "part first wm-saying" });
    box.addEventListener("input", function () {
      var some = box.value.trim().length > 2;
      place.hidden = !some;
      if (!some || place.isConnected) { return; }
      if (box === startBox) { start.querySelector(".wm-say-here").after(place); } else {
        told.before(place);
        window.scrollTo(0, 0);
      }
    });
    box.dispatchEvent(new Event("input"));
  }

  function pick() {
    W.engine().then(function (ready) {
      var old = document.querySelector(".wm-picking");
      if (old) { old.remove(); }
      var panel = W.say(ready.faces, { next: ready.E.describe(trail).next.map(function (each) { return each.character; }), trail: toldSoFar, pick: tell });
      var place = part("Pick a part", [panel.body], null, { "class": "part wm-picking" });
      told.before(place);
      panel.box.focus();
      window.scrollTo(0, 0);
    }, failed);
  }

  /* --- drawing it all --------------------------------------------------------------------------------------------------------- */

  function show(focus) {
    shown = W.fragment();
    document.querySelectorAll(".wm-picking, .wm-saying").forEach(function (each) { each.remove(); });
    [dockBox, startBox].forEach(function (each) { each.value = ""; each.dispatchEvent(new Event("input")); });
    var empty = isEmpty(trail);
    start.hidden = !empty && !pointing;
    told.hidden = empty;
    dock.hidden = empty;
    if (sample) {
      sample.hidden = false;
      sample.querySelector("select").value = trail.sample || "";
    }
    if (empty) { return; }
    W.engine().then(function (ready) {
      var E = ready.E, faces = ready.faces, result = E.describe(trail);
      var verdict = part("It is probably", probably(E, faces, result), why(E, faces, result), { "class": "part verdict" });
      told.replaceChildren(
        part("You saw", youSaw(faces), ["Tap a line to change it, the cross to take it back. The address keeps it all."], { "class": "part first" }), verdict,
        part("Look at next", lookNext(faces, result), whyNext(faces, result), { "class": "part wm-next-look" }),
        part("Keep it", [el("div", { "class": "ways" }, [
          el("button", { type: "button", onclick: function () { W.copyLink(copied); } }, "Copy a link to this"),
          el("button", { type: "button", onclick: function () { goTo(fresh()); } }, "Start again"),
          told.dataset.count !== undefined ? countIt(faces, result) : null
        ]), copied])
      );
      W.said(W.verdict.words(faces, result, E));
      if (focus) {
        verdict.querySelector("h2").focus({ preventScroll: true });
        window.scrollTo(0, 0);
      }
    }, failed);
  }

  /* What it is is counted; what is not settled as the group that leads, or as something that has no name yet. */
  function countIt(faces, result) {
    var as = result.verdict || result.leading, name = as ? W.nameOf(faces, as.id) : W.tell(faces, "not-named");
    var words = result.verdict ? W.tell(faces, "count-this") : W.tell(faces, "count-as", { name: name });
    return el("a", { href: W.root + "count.html#add=" + encodeURIComponent(as ? as.id : "other:" + name) }, words);
  }
  var copied = el("p", { "class": "label", role: "status" });

  function point() {
    pointing = true;
    start.hidden = false;
    start.scrollIntoView();
    start.querySelector(".point").focus({ preventScroll: true });
  }

  function open(focus) {
    var text = W.fragment();
    message.textContent = "";
    if (!text || document.getElementById(text)) { trail = fresh(); show(false); return; }
    W.engine().then(function (ready) {
      var read = ready.E.parse(text);
      trail = read.trail;
      show(focus);
      message.textContent = read.left.length ? "Part of this link could not be read and was left out: " + read.left.join(" ") : "";
    }, failed);
  }

  start.addEventListener("click", function (event) {
    var thing = event.target.closest("[data-at]"), word = event.target.closest("[data-say]");
    if (event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    if (thing) { event.preventDefault(); pointAt(thing.dataset.at); }
    if (word) {
      startBox.focus();
      W.engine().then(function () { startBox.value = word.dataset.say; startBox.dispatchEvent(new Event("input")); }, failed);
    }
  });
  if (sample) { sample.querySelector("select").addEventListener("change", function (event) {
    var next = copyOf(trail);
    next.sample = event.target.value;
    if (isEmpty(next)) { trail = next; } else { goTo(next); }
  }); }
  dock.querySelector('[data-does="point"]').addEventListener("click", point);
  window.addEventListener("hashchange", function () { if (W.fragment() !== shown) { open(true); } });
  start.querySelector(".wm-people-say").hidden = false;
  listen(dockBox);
  listen(startBox);
  open(false);
})();
