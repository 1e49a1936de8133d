/* The page of a key as a walk: shows one couplet of the printed key at a time and takes answers.
 *
 * What to show is worked out in walk.js; the questions, drawings and ends are those that stand
 * in the page already. The address of the walk is the fragment of the page's address, so that
 * the browser's Back goes one step back and a link brings the walk back.
 */
(function () {
  "use strict";
  var key = document.querySelector(".wm-key");
  var source = document.getElementById("wm-data");
  if (!key || !source || !window.wetmountWalk) { return; }
  var walk = window.wetmountWalk;
  var data = JSON.parse(source.textContent);
  var ground = data.ground;
  var total = Object.keys(ground.entries).length;
  var answers = [];
  var standing = null;
  var shown = null;
  var opened = null;

  /* An element with its attributes and children; text is always text, never markup. */
  function el(tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) {
      if (name === "onclick") { made.addEventListener("click", attributes[name]); } else { made.setAttribute(name, attributes[name]); }
    });
    [].concat(children || []).forEach(function (child) {
      if (child) { made.append(child); }
    });
    return made;
  }

  function button(words, press, action, more) {
    var attributes = { type: "button", "class": "wm-button", onclick: action };
    Object.keys(more || {}).forEach(function (name) { attributes[name] = more[name]; });
    return el("button", attributes, [el("span", {}, words), press ? el("kbd", { "class": "wm-press", "aria-hidden": "true" }, press) : null]);
  }

  function name(id) { return data.names[id].name; }
  function link(id) { return el("a", { href: data.names[id].href }, name(id)); }
  function coupletAt(id) { return key.querySelector('[data-couplet="' + id + '"]'); }
  function endAt(id) { return key.querySelector('[data-end="' + id + '"]'); }
  function questionOf(id) { return coupletAt(id).querySelector("h3").textContent; }

  /* To 9 places, as the order of ends is: a sum may come out a little more or less with the order it is taken in. */
  function sureness(chance) {
    return data.sureness.filter(function (step) { return step[0] <= Number(chance.toFixed(9)); }).pop()[1];
  }

  /* Chances rest on estimates, so they are never given finer than 5 %. */
  var FINEST = 0.05;
  function percent(chance) { return chance < FINEST ? "under 5 %" : "about " + 5 * Math.round(20 * chance) + " %"; }

  function answerWords(answer) {
    if (answer.lead === walk.CANNOT_TELL) { return "Cannot tell"; }
    return coupletAt(answer.couplet).querySelector('[data-lead="' + answer.lead + '"] .wm-lead-text').textContent;
  }

  /* --- going about --------------------------------------------------------------------- */

  function fragment() {
    try { return decodeURIComponent(location.hash.slice(1)); } catch (error) { return location.hash.slice(1); }
  }

  function goTo(steps) {
    var before = walk.address(answers);
    location.hash = walk.address(steps);
    history.replaceState({ before: before }, "");
    show(true);
  }

  function answer(lead) {
    if (standing && standing.asks) { goTo(answers.concat({ couplet: standing.asks, lead: lead })); }
  }

  function back() {
    if (!answers.length) { return; }
    var shorter = answers.slice(0, -1);
    if (history.state && history.state.before === walk.address(shorter)) { history.back(); } else { goTo(shorter); }
  }

  /* --- parts of the screen ---------------------------------------------------------------- */

  var cannotTell = button("Cannot tell", "u", function () { answer(walk.CANNOT_TELL); });
  var goBack = button("Back", "b", back);
  var controls = el("div", { "class": "wm-controls" }, [cannotTell, goBack]);
  var message = el("p", { "class": "wm-message", role: "status" });
  var arrival = el("div", { "class": "wm-arrival" });
  var left = el("div", { "class": "wm-left", role: "status" });
  var jump = el("p", { "class": "wm-jump", role: "status" });
  var stuck = key.querySelector(".wm-stuck");
  var again = el("div", { "class": "wm-again" });
  var trail = el("div", { "class": "wm-trail" });
  var copied = el("div", { "class": "wm-copied", role: "status" });
  var whole = button("Show the whole key", "", function () { showWhole(!key.classList.contains("wm-whole")); }, { "aria-expanded": "false" });
  var keys = button("", "", function () { useKeys(!usesKeys); }, { "class": "wm-button wm-keys" });
  var tools = el("div", { "class": "wm-tools" }, [
    button("Copy a link to this walk", "", copy), button("Start again", "", function () { goTo([]); }), whole, keys
  ]);

  /* Single keys answer; who speaks to the machine or rests a hand on the keys can switch that off, for good on this device. */
  var KEPT = "wetmount.keys";
  var usesKeys = true;

  function useKeys(yes) {
    usesKeys = yes;
    keys.firstChild.textContent = yes ? "Answer with keys 1, 2, 3, u, b: on" : "Answer with keys: off";
    key.classList.toggle("wm-no-keys", !yes);
    try { if (yes) { localStorage.removeItem(KEPT); } else { localStorage.setItem(KEPT, "off"); } } catch (error) { /* holds until the page is left */ }
  }

  function keptKeys() {
    try { return localStorage.getItem(KEPT) !== "off"; } catch (error) { return true; }
  }

  function copy() {
    function byHand() {
      var box = el("input", { type: "text", readonly: "", "aria-label": "Link to this walk", "class": "wm-link" });
      box.value = location.href;
      copied.replaceChildren(box);
      box.select();
    }
    try {
      navigator.clipboard.writeText(location.href).then(function () { copied.replaceChildren("Link copied."); }, byHand);
    } catch (error) { byHand(); }
  }

  function showWhole(yes) {
    key.classList.toggle("wm-whole", yes);
    whole.setAttribute("aria-expanded", String(yes));
    whole.firstChild.textContent = yes ? "Back to one question at a time" : "Show the whole key";
  }

  /* After a "cannot tell": why the number jumps, and how to read a question that takes an answer for granted; after several,
   * or where they leave several ends, what to change at the microscope, and the question to go back to. */
  function showDoubt() {
    var doubt = walk.doubt(ground, answers, standing);
    var open = doubt.open.length, many = open > 1 ? 1 : 0;
    var why = doubt.jumps ? data.doubt.jump[many]
      .replace("{open}", many ? open : doubt.open[0]).replace("{next}", coupletAt(standing.asks).querySelector(".wm-number").textContent) : "";
    jump.textContent = standing.asks && doubt.row || why ? [why, data.doubt.leaveOut].filter(Boolean).join(" ") : "";
    var several = standing.ends.length > 1;
    stuck.hidden = !several && doubt.row < data.doubt.several;
    stuck.open = several || !stuck.hidden && stuck.open && stuck.parentNode === key;
    if (several) { arrival.querySelector(".wm-again").after(stuck); } else { jump.after(stuck); }
    again.replaceChildren();
    if (!stuck.hidden && !several) { again.append(lookAgain(answers[answers.length - doubt.row].couplet)); }
  }

  function showLeft() {
    var told = !answers.length || answers[answers.length - 1].lead !== walk.CANNOT_TELL;
    var bar = el("div", { "class": "wm-bar", "aria-hidden": "true" }, el("div", {}));
    bar.firstChild.style.width = (100 * standing.possible.length / total).toFixed(1) + "%";
    left.replaceChildren(bar, el("p", {}, standing.possible.length ? [
      el("strong", {}, String(standing.possible.length)), " of " + total + " still possible." + (told ? "" : " " + data.doubt.nothingOut)
    ].concat(standing.asks && answers.length ? likeliest() : []) : [
      "Nothing in this key fits all your answers. Nearest is ", el("strong", {}, name(walk.likeliest(ground, answers, standing).end)),
      ". Go back and look again."
    ]));
  }

  /* Where the walk is most likely to end, said as what it is: a name, another key, or that it cannot be told. */
  function likeliest() {
    var likely = walk.likeliest(ground, answers, standing);
    var kind = data.onward.indexOf(likely.end) >= 0 ? "goes on in another key, " : data.vague.indexOf(likely.end) >= 0 ? "cannot be told, " : "";
    return [" Likeliest end: " + kind, el("strong", {}, name(likely.end)), ": " + sureness(likely.chance) + ", an estimate."];
  }

  function showTrail() {
    trail.replaceChildren();
    if (!answers.length) { return; }
    trail.append(el("h2", {}, "Your answers"), el("ol", {}, answers.map(function (each, index) {
      return el("li", {}, el("button", { type: "button", "class": "wm-step", onclick: function () { goTo(answers.slice(0, index)); } }, [
        el("span", { "class": "wm-asked-there" }, questionOf(each.couplet)), " ", el("strong", {}, answerWords(each))
      ]));
    })));
  }

  function lookAgain(couplet) {
    var index = answers.findIndex(function (each) { return each.couplet === couplet; });
    return button("Look again: " + questionOf(couplet), "", function () { goTo(answers.slice(0, index)); });
  }

  function showArrival() {
    arrival.replaceChildren();
    if (standing.asks) { return; }
    var found = walk.arrivals(ground, answers, standing);
    if (found.length > 1) { arrival.append(unsettled(found)); } else { arrival.append(wholeEnd(found[0])); }
  }

  /* Several ends: what it may be, the likeliest first; then the question to look at again, since to look once more beats a choice by chance. */
  function unsettled(found) {
    var overlap = found.some(function (one, index) {
      return found.slice(index + 1).some(function (other) {
        return one.members.some(function (id) { return other.members.indexOf(id) >= 0; });
      });
    });
    var rare = found.slice(2).filter(function (each) { return each.sure < FINEST; });
    if (rare.length < 2) { rare = []; }
    return el("div", { "class": "wm-unsettled" }, [
      el("h2", { tabindex: "-1" }, "Not settled. It is one of these, most likely first."),
      listed(found.filter(function (each) { return rare.indexOf(each) < 0; })),
      rare.length ? el("details", { "class": "wm-members" }, [el("summary", {}, "And " + rare.length + " more, each under 5 %"), listed(rare)]) : null,
      overlap ? el("p", {}, data.doubt.overlap) : null
    ].concat(cautionsOf(found), el("div", { "class": "wm-again" }, lookAgain(answers.find(isOpen).couplet))));
  }

  function isOpen(each) { return each.lead === walk.CANNOT_TELL; }
  function isKey(end) { return data.onward.indexOf(end) >= 0; }

  function listed(found) {
    return el("ol", { role: "list" }, found.map(function (each) { return el("li", {}, oneOf(each)); }));
  }

  function oneOf(each) {
    return el("a", { href: data.names[each.end].href, "class": "wm-button wm-one-of" }, [
      el("strong", {}, (isKey(each.end) ? "Go on to the key: " : "") + name(each.end)), el("span", {}, sureness(each.sure))
    ]);
  }

  /* What to take care of at any of several ends, each caution once. */
  function cautionsOf(found) {
    var given = {};
    found.forEach(function (each) {
      endAt(each.end).querySelectorAll(".wm-caution").forEach(function (caution) { given[caution.getAttribute("aria-label")] = caution; });
    });
    return Object.keys(given).map(function (label) { return given[label].cloneNode(true); });
  }

  /* Where an end leads on to; another key begins after what is settled already, if nothing on the way was left open. */
  function onwardFrom(end) {
    var last = answers[answers.length - 1];
    var carried = answers.some(isOpen) ? "" : data.carry[walk.address([last])];
    return data.names[end].href + (isKey(end) && carried ? "#" + carried : "");
  }

  function wholeEnd(each) {
    var onward = isKey(each.end);
    var end = endAt(each.end).cloneNode(true);
    end.querySelectorAll("[id]").forEach(function (part) { part.removeAttribute("id"); });
    var title = end.querySelector("h3");
    var head = el("h2", { tabindex: "-1" }, (each.sure < data.likely ? "Perhaps: " : "") + title.textContent);
    title.replaceWith(head);
    (end.querySelector(".wm-feeding") || end.querySelector(".wm-names") || (onward ? head.nextElementSibling : head)).after(el("p", { "class": "wm-sure" }, [
      onward ? "That it belongs in the next key: " : null, el("strong", {}, sureness(each.sure)), ". An estimate, from how common things are and how often looks are misread."
    ]));
    end.querySelector(".wm-reached").remove();
    if (!onward && data.writing) {
      end.append(el("p", { "class": "wm-next" }, ["Next: ", el("a", { href: data.writing }, "write it down"), ", then look at two more of its kind."]));
    }
    end.append(el("p", { "class": "wm-onward" }, el("a", { href: onwardFrom(each.end), "class": "wm-button wm-main" },
      onward ? "Go on to the key: " + name(each.end) : "Read about " + name(each.end))));
    if (each.members.length && !(each.members.length === 1 && each.members[0] === each.end)) { end.append(members(each)); }
    each.rivals.forEach(function (other) { end.append(rival(other)); });
    return end;
  }

  function members(each) {
    return el("details", { "class": "wm-members" }, [
      el("summary", {}, "What it may be: " + each.members.length + (each.members.length === 1 ? " thing fits" : " things fit")),
      el("ul", {}, each.members.map(function (id) { return el("li", {}, [link(id), " " + percent(standing.chance[id])]); }))
    ]);
  }

  function rival(other) {
    return el("div", { "class": "wm-rival" }, [
      el("p", {}, ["If that is wrong, it may be ", link(other.end), " (" + percent(other.chance) + ")",
        other.entry !== other.end ? el("span", {}, [", such as ", link(other.entry)]) : null, "."]),
      other.couplet ? lookAgain(other.couplet) : null
    ]);
  }

  /* --- drawing it all ---------------------------------------------------------------------- */

  function show(focus) {
    var text = shown = fragment();
    message.textContent = "";
    copied.replaceChildren();
    if (text && text.indexOf("=") < 0) {
      showWhole(Boolean(document.getElementById(text) && key.contains(document.getElementById(text))));
      if (standing) { return; }
      text = "";
    }
    try {
      answers = walk.answersAt(ground, text);
    } catch (error) {
      answers = error.answers || [];
      message.textContent = "This link does not quite fit the key as it stands now: " + error.message + " The walk goes on from there.";
    }
    standing = walk.stand(ground, answers);
    if (opened === null) { opened = walk.address(answers); }
    key.querySelectorAll(".wm-asked").forEach(function (each) { each.classList.remove("wm-asked"); });
    if (standing.asks) { coupletAt(standing.asks).classList.add("wm-asked"); }
    controls.classList.toggle("wm-at-end", !standing.asks);
    document.body.classList.toggle("wm-walk-under-way", answers.length > 0);
    /* Who comes in the middle of a walk, from another key, has not read what to take care of here. */
    document.body.classList.toggle("wm-past-before", answers.length > 0 && !(standing.asks && walk.address(answers) === opened));
    cannotTell.hidden = !standing.asks;
    goBack.disabled = !answers.length;
    showArrival();
    showDoubt();
    showLeft();
    showTrail();
    if (focus) {
      showWhole(false);
      var place = standing.asks ? coupletAt(standing.asks).querySelector("h3") : arrival.querySelector("h2");
      place.focus({ preventScroll: true });
      window.scrollTo(0, 0);
    }
  }

  key.addEventListener("click", function (event) {
    var lead = event.target.closest("[data-lead]");
    if (!lead || key.classList.contains("wm-whole") || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    event.preventDefault();
    answer(lead.dataset.lead);
  });

  document.addEventListener("keydown", function (event) {
    var at = event.target;
    if (event.ctrlKey || event.metaKey || event.altKey || at.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName)) { return; }
    if (!usesKeys || key.classList.contains("wm-whole")) { return; }
    var leads = standing.asks ? Object.keys(ground.couplets[standing.asks].leads) : [];
    if (/^[1-3]$/.test(event.key) && leads[event.key - 1]) {
      answer(leads[event.key - 1]);
    } else if ((event.key === "u" || event.key === "0") && standing.asks) {
      answer(walk.CANNOT_TELL);
    } else if (event.key === "b" || event.key === "Backspace") {
      back();
    } else {
      return;
    }
    event.preventDefault();
  });

  window.addEventListener("hashchange", function () {
    if (fragment() !== shown) { show(true); }
  });

  useKeys(keptKeys());
  stuck.append(again);
  key.prepend(message, jump, stuck);
  key.append(arrival, controls, left, trail, copied, tools);
  key.classList.add("wm-walking");
  document.body.classList.add("wm-walk-page");
  document.querySelector(".wm-before").open = false;
  show(false);
})();
