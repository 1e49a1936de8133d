/* The page of a key as a walk: one question at a time, in the place of the one before.
 *
 * The page arrives with its first question. As long as every question is answered the next one is the one the printed key leads
 * to, and stands in the key's own data; the engine over the whole library is fetched while the first is read, and says what it may be,
 * what to ask after a "cannot tell" and what the end is. A walk is nothing but its address (the fragment), so that the browser's
 * Back goes one step back and a link brings the walk back.
 */
(function () {
  "use strict";
  var W = self.wetmount, el = W && W.el;
  var home = document.querySelector(".wm-key[data-first]");
  var data = home && self.wetmountData && self.wetmountData["key-" + home.dataset.key];
  if (!W || !data) { return; }
  var CANNOT_TELL = "cannot-tell";
  var QUIET = 3000;   // ms after the page is there, as the worker waits too (offline.js): the files are the first it would keep
  var dock = document.querySelector(".wm-walk-dock");
  var message = home.querySelector(".wm-message");
  var trail = fresh();
  var place = { asks: data.first };
  var shown = "";
  var changing = -1;
  var doubted = "";
  var nowOpen = false;
  var turn = 0;

  function fresh() { return { sample: "", pictures: [], legs: [{ key: data.id, answers: [] }], saw: [] }; }
  function leg() { return trail.legs[trail.legs.length - 1]; }
  function copyOf(what) { return JSON.parse(JSON.stringify(what)); }
  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }

  /* --- where a walk stands, without the engine while the printed key says it all -------------------------- */

  function isPlain(of) {
    return of.legs.length === 1 && !of.saw.length && !of.sample && !of.pictures.length && of.legs[0].answers.every(function (each) { return each.lead !== CANNOT_TELL && !has(data.sure, each.couplet); });
  }

  /* Along the printed key: {asks} or {arrived} or {goesOn}; null where the answers leave it. */
  function follow(answers) {
    var at = data.first;
    for (var index = 0; index < answers.length; index += 1) {
      var each = answers[index];
      while (each.couplet !== at && has(data.sure, at)) { at = data.leads[at][data.sure[at]]; }
      if (each.couplet !== at || !has(data.leads[at], each.lead)) { return null; }
      var to = data.leads[at][each.lead];
      if (/^(key|end):/.test(to)) {
        return index < answers.length - 1 ? null : to.slice(0, 4) === "key:" ? { asks: "", goesOn: to.slice(4) } : { asks: "", arrived: to.slice(4) };
      }
      at = to;
    }
    while (has(data.sure, at)) { at = data.leads[at][data.sure[at]]; }
    return at.slice(0, 4) === "key:" ? { asks: "", goesOn: at.slice(4) } : at.slice(0, 4) === "end:" ? { asks: "", arrived: at.slice(4) } : { asks: at };
  }

  function plainAddress(answers) { return answers.map(function (each) { return each.couplet + "=" + each.lead; }).join("/"); }

  function plainAnswers(text) {
    var answers = text.split("/").filter(Boolean).map(function (part) {
      var cut = part.indexOf("=");
      return { couplet: part.slice(0, cut), lead: part.slice(cut + 1) };
    });
    return answers.every(function (each) { return has(data.leads, each.couplet) && has(data.leads[each.couplet], each.lead); }) && follow(answers) ? answers : null;
  }

  /* A walk of this key alone need not name the key. */
  function addressOf(of) {
    if (isPlain(of)) { return plainAddress(of.legs[0].answers); }
    var parts = W.ready.E.write(of).split("/");
    return parts.filter(function (each) { return of.legs.length > 1 || each !== "key:" + data.id; }).join("/");
  }

  /* --- going about ---------------------------------------------------------------------------------------- */

  function goTo(next) {
    var before = shown;
    changing = -1;
    ready(next).then(function () {
      trail = next;
      var address = addressOf(trail);
      if (address !== W.fragment()) {
        location.hash = address;
        history.replaceState({ before: before }, "");
      }
      show(true);
    }, failed);
  }

  /* The engine is only waited for where the printed key does not say what comes. */
  function ready(next) {
    if (isPlain(next) && follow(next.legs[0].answers)) { return { then: function (done) { done(); } }; }
    return W.engine();
  }

  function failed() { message.textContent = "The rest of the key could not be fetched. Try once more where there is a network; what you answered is kept in the address."; }

  function answer(lead) {
    var next = copyOf(trail), answers = next.legs[next.legs.length - 1].answers;
    if (changing >= 0) { answers[changing].lead = lead; } else { answers.push({ couplet: doubted || place.asks, lead: lead }); }
    /* Of answers that contradict each other the later one counts, so what is said anew comes last. */
    if (changing >= 0 && !follow(answers)) { answers.push(answers.splice(changing, 1)[0]); }
    goTo(next);
  }

  /* One observation, or several that were said at once. */
  function tell(observations, extra) {
    var next = copyOf(trail);
    W.addCalled(next, extra);
    next.saw = W.toldAnew(next.saw, observations);
    goTo(next);
  }

  function cannotTell() {
    if (changing < 0 && !doubted && !place.asks && place.asksCharacter) { tell({ character: place.asksCharacter }); } else { answer(CANNOT_TELL); }
  }

  function canGoBack() { return changing >= 0 || leg().answers.length > 0 || trail.saw.length > 0 || trail.legs.length > 1; }

  function back() {
    if (changing >= 0) { changing = -1; show(true); return; }
    if (!canGoBack()) { return; }
    if (history.state && history.state.before !== undefined) { history.back(); return; }
    /* Come to by a link: the address does not say what was told last. After a "cannot tell" the questions are of no couplet. */
    var next = copyOf(trail), last = next.legs[next.legs.length - 1];
    var asked = last.answers.some(function (each) { return each.lead === CANNOT_TELL; });
    if (next.saw.length && (asked || !last.answers.length)) { next.saw.pop(); } else if (last.answers.length) { last.answers.pop(); } else {
      next.legs.pop();
      next.legs[next.legs.length - 1].answers.pop();
      location.assign(W.root + "keys/" + next.legs[next.legs.length - 1].key + ".html#" + W.ready.E.write(next));
      return;
    }
    goTo(next);
  }

  /* --- parts of the screen --------------------------------------------------------------------------------- */

  var own = "";
  function button(words, style, action, does) {
    var made = el("button", { type: "button", "class": "btn " + style, onclick: action });
    if (does) { made.dataset.does = does; }
    made.append(words);
    return made;
  }

  var goBack = button("Back", "plain", back, "back");
  var also = button("I also saw…", "", function () { say(); }, "also");
  var unsure = button("Cannot tell", "", cannotTell, "cannot-tell");
  var main = el("a", { "class": "btn main", href: "#", hidden: true });
  var status = el("p", { "class": "wm-left label", role: "status" });
  var now = el("details", { "class": "wm-fold wm-now" }, el("summary", {}, "Show what it may be now"));
  var nowBody = el("div", { "class": "verdict" });
  var copied = el("p", { "class": "label", role: "status" });
  var keys = el("button", { type: "button", onclick: function () { useKeys(!usesKeys); } });
  var steps = el("section", { "class": "part wm-trail", hidden: true }, [el("h2", {}, "Your answers"), el("div", { "class": "body" })]);
  var stuck = document.querySelector(".wm-stuck-part");
  var beforePart = document.querySelector(".wm-before-part");
  var ways = document.querySelector(".wm-ways-part .body");
  var usesKeys = true;

  now.append(nowBody);
  now.addEventListener("toggle", function () { nowOpen = now.open; if (nowOpen) { fillNow(); } });

  /* Single keys answer; who speaks to the machine or rests a hand on the keys can switch that off, for good on this device. */
  function useKeys(yes) {
    usesKeys = yes;
    keys.textContent = yes ? "Answer with keys 1, 2, 3, u, b, s: on" : "Answer with keys: off";
    home.classList.toggle("wm-no-keys", !yes);
    W.store.set("keys", yes ? null : "off");
  }

  /* In a template nothing is fetched; its pictures are when it is put into the page. */
  function element(markup) {
    var box = el("template");
    box.innerHTML = markup;
    return box.content.firstElementChild;
  }

  /* The words of a couplet, read out of its markup once: {asks, leads: {lead: words}}. */
  var words = {};
  function wordsIn(of, couplet) {
    var name = of && of.couplets[couplet] ? of.id + " " + couplet : "";
    if (!name) { return { asks: couplet, leads: {} }; }
    if (!words[name]) {
      var read = element(of.couplets[couplet]);
      words[name] = { asks: read.querySelector("h2").textContent, leads: {} };
      read.querySelectorAll("[data-lead]").forEach(function (each) {
        words[name].leads[each.dataset.lead] = each.querySelector(".wm-lead-text").textContent.replace(/^\S+\s/, "").trim();
      });
    }
    return words[name];
  }

  function questionIn(of, couplet) { return wordsIn(of, couplet).asks; }

  function answerIn(of, each) {
    return each.lead === CANNOT_TELL ? "Cannot tell" : wordsIn(of, each.couplet).leads[each.lead] || each.lead;
  }

  /* The pictures of the questions that may come next are fetched ahead, unless the device asks to save data. */
  var ahead = {};
  function lookAhead(couplet) {
    if (navigator.connection && navigator.connection.saveData) { return; }
    Object.keys(data.leads[couplet] || {}).forEach(function (lead) {
      var next = data.leads[couplet][lead];
      if (ahead[next] || !has(data.couplets, next)) { return; }
      ahead[next] = Array.from(element(data.couplets[next]).querySelectorAll("img"), function (each) {
        var image = new Image();
        image.src = each.getAttribute("src");
        return image;
      });
    });
  }

  function put(part) {
    home.querySelectorAll(":scope > .part, :scope > .wm-estimate").forEach(function (each) { each.remove(); });
    home.append(part);
  }

  function showQuestion(couplet) {
    var there = home.querySelector(':scope > .wm-couplet[data-couplet="' + couplet + '"]');
    var part = there || element(data.couplets[couplet]);
    if (!there) { put(part); }
    part.querySelectorAll(".wm-lead").forEach(function (each) {
      each.setAttribute("role", "button");
      each.classList.toggle("wm-said-before", changing >= 0 && leg().answers[changing].lead === each.dataset.lead);
    });
    part.querySelector(".body").append(status, now);
    W.fit(part);
    return part.querySelector("h2");
  }

  /* A question of no couplet: a character, asked since it parts best what is left. */
  function showCharacter(character, faces) {
    var known = faces.characters[character];
    var head = el("h2", { tabindex: "-1" }, known.asks);
    var part = el("article", { "class": "part wm-couplet", "data-character": character }, [
      el("div", { "class": "side" }, el("p", { "class": "wm-where label" }, [el("span", { "class": "wm-key-name" }, data.title), el("span", { "class": "wm-power" }, known.power)])),
      el("div", { "class": "body" }, [head, W.html("p", { "class": "wm-look" }, known.look), W.states(faces, character, tell), status, now])
    ]);
    put(part);
    W.fit(part);
    return head;
  }

  /* --- the end ------------------------------------------------------------------------------------------------ */

  function showEnd(there, E, faces) {
    var result = there.result, best = result.verdict || there.ends[0] || result.names[0];
    if (!result.verdict && !isFirm(E, there)) { return showOpen(there, E, faces); }
    var id = isFirm(E, there) && !isNarrower(E, result.verdict, there.arrived) ? there.arrived : best.id;
    var entry = faces.entries[id] || { name: W.nameOf(faces, id), cautions: [] };
    var here = there.ends.concat(result.verdict || [], result.names).filter(function (each) { return each.id === id; })[0] || best;
    var head = el("h2", { "class": "wm-end-name", tabindex: "-1" }, el("a", { href: W.hrefOf(faces, id) }, entry.name));
    var top = el("section", { "class": "part wm-arrival first" }, [
      el("div", { "class": "side" }, el("p", { "class": "label" }, where(faces))),
      el("div", { "class": "body" }, [
        el("div", { "class": "endhead" + (entry.drawn ? "" : " undrawn") }, [
          entry.drawn ? el("figure", { "class": "plate", "aria-hidden": "true" }, el("img", { src: W.root + W.pictureOf(faces, id), alt: "" })) : null,
          el("div", { "class": "name" }, [
            result.fits === false ? el("p", { "class": "label" }, W.tell(faces, "nothing-fits") + " " + W.tell(faces, "nearest")) : null,
            head, entry.latin ? el("p", { "class": "soft" }, el("i", {}, entry.latin)) : null,
            el("p", { "class": "num odds" }, W.verdict.odds(faces, here)), W.verdict.scale(here.chance, true)
          ]),
          keyEndsAt(there, E, faces, id),
          entry.summary ? W.html("p", { "class": "lead" }, entry.summary) : null,
          el("div", { "class": "means" }, [W.verdict.feeding(faces, id, result)].concat(W.verdict.means(faces, id), el("p", {}, el("a", { href: W.hrefOf(faces, id) }, W.tell(faces, "read-about-it"))), entry.tell ? W.html("p", {}, W.tell(faces, "said-by", { who: "<b>" + W.tell(faces, "what-would-tell") + "</b>", what: entry.tell })) : null))
        ])
      ].concat(W.verdict.cautions(faces, id, result)))
    ]);
    put(top);
    var others = result.names.filter(function (each) { return each.id !== id; });
    var inside = others.filter(function (each) { return W.within(E, each.id, id); });
    var outside = others.filter(function (each) { return inside.indexOf(each) < 0; });
    var rest = restOf(faces, result);
    if (inside.length) { home.append(rivals(faces, W.tell(faces, "which-one"), inside, outside.length ? null : rest)); }
    if (outside.length || rest && !inside.length) { home.append(rivals(faces, W.tell(faces, "if-it-is-not"), outside, rest)); }
    oneLook(result, faces);
    if (home.dataset.writing && faces.entries[id]) {
      home.append(el("p", { "class": "wm-next wm-estimate" }, around(W.tell(faces, "next-write", { write: "\n" }), el("a", { href: home.dataset.writing }, W.tell(faces, "write-it-down")))));
    }
    home.append(el("p", { "class": "label wm-estimate" }, W.tell(faces, "an-estimate")));
    var counts = home.dataset.count && faces.entries[id];
    main.hidden = false;
    main.textContent = W.tell(faces, counts ? "count-this" : "read-about-it");
    main.href = counts ? home.dataset.count + "#add=" + id : W.hrefOf(faces, id);
    return head;
  }

  /* The one look that would settle most, answered on the spot. */
  function oneLook(result, faces) {
    var known = faces.characters[result.look];
    if (!known) { return; }
    home.append(el("section", { "class": "part wm-look-next" }, [el("h2", {}, W.tell(faces, "one-look-settles")), el("div", { "class": "body" }, [
      el("p", {}, [el("b", {}, known.asks), " ", el("span", { "class": "num small soft" }, known.power)]),
      W.html("p", { "class": "small soft" }, known.look), W.states(faces, result.look, tell)
    ])]));
  }

  /* Whether the end that the key comes to holds so much that it may be named before the group. */
  function isFirm(E, there) { return Boolean(there.arrived) && heldBy(E, there) >= E.holds; }

  function in100(faces, chance) { return W.tell(faces, "in-100", { n: W.odds(chance) }); }

  function heldBy(E, there) {
    return E.members(there.arrived).reduce(function (sum, each) { return sum + there.result.chance[E.entries[each]]; }, 0);
  }

  /* The end of the printed key, where something else stands above it. */
  function keyEndsAt(there, E, faces, id) {
    if (!there.arrived || there.arrived === id) { return null; }
    var said = W.tell(faces, "key-ends-at", { name: W.nameOf(faces, there.arrived), odds: in100(faces, heldBy(E, there)) });
    return el("p", {}, el("a", { href: W.hrefOf(faces, there.arrived) }, said));
  }

  /* What is not settled is counted all the same: as the group that leads, or as something that has no name yet. */
  function countAs(faces, sheet, group) {
    var name = group ? W.nameOf(faces, group.id) : W.tell(faces, "not-named");
    return el("p", {}, el("a", { "class": "btn wm-count-as", href: sheet + "#add=" + encodeURIComponent(group ? group.id : "other:" + name) }, W.tell(faces, "count-as", { name: name })));
  }

  /* No end, and no group that is likely enough: names without what they would mean, and the way on. */
  function showOpen(there, E, faces) {
    var result = there.result, group = result.leading;
    var head = el("h2", { "class": "wm-end-name", tabindex: "-1" }, W.tell(faces, result.fits === false ? "nothing-here-fits" : "not-settled"));
    put(el("section", { "class": "part wm-arrival first" }, [
      el("div", { "class": "side" }, el("p", { "class": "label" }, where(faces))),
      el("div", { "class": "body" }, [
        head,
        group ? el("p", {}, [W.tell(faces, "likeliest"), " ", el("a", { href: W.hrefOf(faces, group.id) }, el("b", {}, W.nameOf(faces, group.id))), ", ", el("span", { "class": "num" }, in100(faces, group.chance))]) : null,
        keyEndsAt(there, E, faces, group ? group.id : ""),
        el("p", { "class": "lead" }, W.tell(faces, "still-many")),
        home.dataset.count ? countAs(faces, home.dataset.count, group) : null
      ])
    ]));
    home.append(rivals(faces, W.tell(faces, "it-may-be"), result.names, restOf(faces, result)));
    oneLook(result, faces);
    main.hidden = false;
    main.textContent = W.tell(faces, "tell-more");
    main.href = W.root + "describe.html#" + E.write(trail);
    return head;
  }

  function restOf(faces, result) { return W.verdict.rest(faces, result.rest); }

  /* A sentence with a part of the page where its line break is. */
  function around(words, part) { var at = words.split("\n"); return [at[0], part, at[1]]; }

  /* The key one is in, and how much was answered or told on the whole way. */
  function where(faces) { return W.tell(faces, "answers-in", { key: data.title, n: total() }); }

  function total() { return trail.legs.reduce(function (sum, each) { return sum + each.answers.length; }, trail.saw.length); }

  /* Whether all that was told says more than the end that the key comes to: a name within it. */
  function isNarrower(E, verdict, end) {
    return Boolean(verdict && verdict.id !== end && E.members && W.within(E, verdict.id, end));
  }

  function rivals(faces, title, names, rest) {
    return el("section", { "class": "part wm-rivals" }, [el("h2", {}, title), el("div", { "class": "body" }, [
      el("ul", { "class": "pairs", role: "list" }, names.map(function (each) { return rival(faces, each); })), rest
    ])]);
  }

  function rival(faces, each) {
    var entry = faces.entries[each.id] || {};
    return el("li", {}, [W.thumb(W.pictureOf(faces, each.id), true), el("div", {}, [
      el("h3", {}, [el("a", { href: W.hrefOf(faces, each.id) }, W.nameOf(faces, each.id)), " ", el("span", { "class": "num soft" }, W.tell(faces, "in-100", { n: W.odds(each.chance) }))]),
      entry.summary ? W.html("p", { "class": "small" }, entry.summary) : null
    ])]);
  }

  /* --- told beside the key -------------------------------------------------------------------------------------- */

  function say() {
    W.engine().then(function (ready) {
      var next = ready.E.walk(trail).result.next.map(function (each) { return each.character; });
      var panel = W.say(ready.faces, { next: next, trail: function () { return trail; }, pick: tell });
      beforePart.hidden = true;
      var part = el("section", { "class": "part first wm-also" }, [
        el("h2", { tabindex: "-1" }, "I also saw…"),
        el("div", { "class": "body" }, [panel.body])
      ]);
      put(part);
      place = {};
      changing = -1;
      dockFor({ closes: true });
      panel.box.focus();
    }, failed);
  }

  /* --- what stands below --------------------------------------------------------------------------------------- */

  function fillNow() {
    W.engine().then(function (ready) {
      if (!nowOpen) { return; }
      var result = ready.E.walk(trail).result;
      nowBody.replaceChildren.apply(nowBody, [W.verdict.head(ready.faces, result, ready.E)].concat(W.verdict.names(ready.faces, result)).filter(Boolean));
    }, failed);
  }

  /* Once the question is on the screen and can be answered, what the engine has to say of it. */
  function later(mine) {
    if (!leg().answers.length && trail.legs.length === 1 && !trail.saw.length) { status.textContent = ""; now.hidden = steps.hidden = true; return; }
    now.hidden = false;
    inTurn([
      function () { showSteps(W.ready); },
      function () { if (place.asks) { lookAhead(place.asks); } },
      W.engine,
      function () { status.textContent = W.verdict.words(W.ready.faces, W.ready.E.walk(trail).result, W.ready.E); },
      function () { if (nowOpen) { fillNow(); } if (trail.saw.length || trail.pictures.length) { showSteps(W.ready); } }
    ], function () { return mine === turn; }, failed);
  }

  /* One thing after another, each when the last is painted, while it is still wanted: a tap in between is answered first. */
  function inTurn(things, wanted, otherwise) {
    if (!things.length) { return; }
    W.afterPaint(function () {
      if (!wanted()) { return; }
      Promise.resolve(things[0]()).then(function () { inTurn(things.slice(1), wanted, otherwise); }, otherwise);
    });
  }

  /* While the first question is read: the engine is fetched and asked once, so that it is at hand when it is needed. */
  function getReady() {
    if (navigator.connection && navigator.connection.saveData) { return; }
    setTimeout(function () {
      inTurn([W.engine, function () { W.ready.E.walk(fresh()); }], function () { return !total(); }, function () { /* fetched again at the first answer */ });
    }, QUIET);
  }

  function showSteps(ready) {
    steps.hidden = total() === 0;
    if (steps.hidden) { return; }
    Promise.all(trail.legs.map(function (each) { return each.key === data.id ? data : W.data("key-" + each.key).catch(function () { return null; }); })).then(function (known) {
      var lines = [];
      trail.legs.forEach(function (one, which) {
        one.answers.forEach(function (each, index) {
          lines.push(el("li", {}, [el("span", {}, questionIn(known[which], each.couplet)), stepLink(one, which, each, index, answerIn(known[which], each))]));
        });
      });
      if (ready) { trail.pictures.forEach(function (each) { lines.unshift(el("li", {}, [el("span", {}, "Pointed at"), el("span", {}, (ready.faces.pictures[each] || { name: each }).name)])); }); }
      if (ready && (trail.called || []).length) {
        lines.push(el("li", {}, [el("span", {}, W.tell(ready.faces, "own-words")), el("span", { "class": "wm-told-beside" }, [W.sayCalled(ready.faces, trail.called), " ",
          el("button", { type: "button", "class": "wm-take-back", onclick: function () { goTo(Object.assign(copyOf(trail), { called: [] })); } }, "take back")])]));
      }
      trail.saw.forEach(function (each, index) {
        if (!ready) { return; }
        lines.push(el("li", {}, [el("span", {}, (ready.faces.characters[each.character] || { asks: "I also saw" }).asks), el("span", { "class": "wm-told-beside" }, [W.sayObservation(ready.faces, each), " ",
          el("button", { type: "button", "class": "wm-take-back", onclick: function () { takeBack(index); } }, "take back")])]));
      });
      steps.lastChild.replaceChildren(el("ol", { "class": "trail" }, lines), el("div", { "class": "ways" }, [
        el("button", { type: "button", onclick: function () { W.copyLink(copied); } }, "Copy a link to this walk"),
        el("button", { type: "button", onclick: function () { location.hash = ""; trail = fresh(); shown = ""; show(true); } }, "Start again")
      ]), copied);
    });
  }

  /* An answer of this key opens its question again; what was answered after it stays. One of an earlier key is changed there. */
  function stepLink(one, which, each, index, words) {
    if (which < trail.legs.length - 1) {
      var there = copyOf(trail);
      there.legs = there.legs.slice(0, which + 1);
      there.legs[which].answers = there.legs[which].answers.slice(0, index);
      return el("a", { href: W.root + "keys/" + one.key + ".html#" + (W.ready ? W.ready.E.write(there) : "") }, words);
    }
    return el("button", { type: "button", "class": "wm-step", onclick: function () { change(index); } }, words);
  }

  function takeBack(index) {
    var next = copyOf(trail);
    next.saw.splice(index, 1);
    goTo(next);
  }

  function change(index) {
    changing = index;
    place = { asks: leg().answers[index].couplet };
    message.textContent = "Changing this answer. What you answered after it stays.";
    dockFor(place);
    focusOn(showQuestion(place.asks));
  }

  function dockFor(there) {
    var asks = Boolean(there.asks || there.asksCharacter || changing >= 0);
    goBack.disabled = !canGoBack() && !there.closes;
    unsure.hidden = !asks;
    also.hidden = Boolean(there.closes);
    main.hidden = main.hidden || asks || Boolean(there.closes);
    closing = Boolean(there.closes);
    goBack.textContent = closing ? "Back to the question" : "Back";
  }
  var closing = false;
  goBack.addEventListener("click", function (event) {
    if (!closing) { return; }
    event.stopImmediatePropagation();
    closing = false;
    show(true);
  }, true);

  function focusOn(head) {
    head.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }

  /* --- drawing it all ----------------------------------------------------------------------------------------------- */

  function show(focus) {
    var mine = turn += 1;
    shown = W.fragment();
    message.textContent = own;
    own = doubted = "";
    copied.replaceChildren();
    main.hidden = true;
    changing = -1;
    var there = isPlain(trail) ? follow(leg().answers) : null;
    if (there && there.asks) { arrive(there, null, focus); later(mine); return; }
    W.engine().then(function (ready) {
      if (mine !== turn) { return; }
      arrive(ready.E.walk(trail), ready, focus);
      later(mine);
    }, failed);
  }

  function arrive(there, ready, focus) {
    var begun = total() > 0 || trail.legs.length > 1, head;
    place = there;
    document.body.classList.toggle("wm-walk-under-way", begun);
    beforePart.hidden = begun;
    stuck.hidden = true;
    if (there.goesOn && ready) { goOn(there, ready); return; }
    if (there.asks) { head = showQuestion(there.asks); }
    else if (there.asksCharacter) { head = showCharacter(there.asksCharacter, ready.faces); }
    else { head = showEnd(there, ready.E, ready.faces); }
    stuck.hidden = !(there.asks || there.asksCharacter) || unsureInARow() < 2;
    dockFor(there);
    if ((there.asks || there.asksCharacter) && begun && ready && !message.textContent) {
      message.textContent = cameHere(ready, there);
      doubt(there, ready.faces);
    }
    if (focus) { focusOn(head); }
  }

  /* Why this question: that the walk went on to a key that only most of what is likely belongs to, and what was passed over. */
  function cameHere(ready, there) {
    var faces = ready.faces, said = [], likely = Object.keys(there.likely || {}), told = Object.keys(there.passed || {}).length > likely.length;
    if (trail.legs.length > 1 && !leg().answers.length) {
      var before = copyOf(trail);
      before.legs.pop();
      var was = ready.E.walk(before);
      if (was.holds < 1 && !Object.keys(was.likely).length) { said.push(W.tell(faces, "goes-on-here", { odds: in100(faces, was.holds) })); }
    }
    likely.forEach(function (each) {
      var what = questionIn(data, each) + " " + (wordsIn(data, each).leads[there.passed[each]] || "") + ".";
      said.push(W.tell(faces, "taken-as-likely", { odds: in100(faces, there.likely[each]), what: what }));
    });
    if (told) { said.push(W.tell(faces, "passed-over")); }
    return said.join(" ");
  }

  /* What was passed over as likely is asked after all. */
  function doubt(there, faces) {
    var last = Object.keys(there.likely || {}).pop();
    if (!last) { doubtBefore(faces); return; }
    message.append(" ", button(W.tell(faces, "not-so"), "plain", function () {
      doubted = last;
      message.textContent = "";
      focusOn(showQuestion(last));
    }, "not-so"));
  }

  /* The same for what the key before passed over last: the answer is the other one, where there are only two. */
  function doubtBefore(faces) {
    if (trail.legs.length < 2 || leg().answers.length) { return; }
    var before = copyOf(trail), mine = turn, E = W.ready.E;
    before.legs.pop();
    var was = E.walk(before), last = Object.keys(was.likely).pop(), from = before.legs[before.legs.length - 1];
    if (!last) { return; }
    W.data("key-" + from.key).then(function (known) {
      if (mine !== turn) { return; }
      var others = Object.keys(known.leads[last]).filter(function (each) { return each !== was.passed[last]; });
      var said = answerIn(known, { couplet: last, lead: was.passed[last] });
      message.append(" ", W.tell(faces, "taken-as-likely", { odds: in100(faces, was.likely[last]), what: questionIn(known, last) + " " + said + "." }));
      if (others.length !== 1) { return; }
      from.answers.push({ couplet: last, lead: others[0] });
      message.append(" ", button(W.tell(faces, "not-so"), "plain", function () { location.assign(W.root + "keys/" + from.key + ".html#" + E.write(before)); }, "not-so"));
    }, failed);
  }

  /* How many of the last questions could not be told, those about no couplet among them. */
  function unsureInARow() {
    function atTheEnd(all, isUnsure) {
      var row = 0;
      while (row < all.length && isUnsure(all[all.length - 1 - row])) { row += 1; }
      return row;
    }
    return atTheEnd(leg().answers, function (each) { return each.lead === CANNOT_TELL; }) + atTheEnd(trail.saw, W.isUnsure);
  }

  /* Another key goes on from here, with all that was answered; it takes this page's place, so that Back goes to the last question. */
  function goOn(there, ready) {
    var next = copyOf(trail);
    next.legs.push({ key: there.goesOn, answers: [] });
    location.replace(W.root + "keys/" + there.goesOn + ".html#" + ready.E.write(next));
  }

  /* Whether the first answer of an address stands behind the name of its key; else it is an answer of the key of this page. */
  function namesItsKeys(text) {
    var first = text.split("/").filter(function (part) { return /^key:|^[^:=]+=/.test(part); })[0];
    return Boolean(first) && first.slice(0, 4) === "key:";
  }

  /* The walk of an address; old ones (`couplet=lead`), those of a printed couplet, and rubbish. */
  function open(focus) {
    var text = W.fragment();
    if (/^(couplet|end)-|^(ends|voices|shortcut-.*)$/.test(text) && !document.getElementById(text)) {
      location.replace(home.dataset.whole + "#" + text);
      return;
    }
    if (!text || document.getElementById(text)) { trail = fresh(); show(focus); return; }
    var answers = plainAnswers(text);
    if (answers) {
      trail = fresh();
      trail.legs[0].answers = answers;
      show(focus);
      return;
    }
    home.classList.add("wm-fetching");
    W.engine().then(function (ready) {
      var read = ready.E.parse(text, namesItsKeys(text) ? "" : data.id);
      trail = read.trail;
      if (!trail.legs.length || leg().key !== data.id) { trail.legs.push({ key: data.id, answers: [] }); }
      own = read.left.length ? "Part of this link does not fit the key as it stands now and was left out: " + read.left.join(" ") : "";
      home.classList.remove("wm-fetching");
      show(focus);
    }, function () { home.classList.remove("wm-fetching"); failed(); });
  }

  home.addEventListener("click", function (event) {
    var lead = event.target.closest("[data-lead]");
    if (!lead || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    event.preventDefault();
    answer(lead.dataset.lead);
  });
  home.addEventListener("keydown", function (event) {
    if (event.key === " " && event.target.matches("a.wm-lead")) { event.preventDefault(); event.target.click(); }
  });

  document.addEventListener("keydown", function (event) {
    var at = event.target;
    if (!usesKeys || event.ctrlKey || event.metaKey || event.altKey || at.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(at.tagName)) { return; }
    var leads = home.querySelectorAll(".wm-couplet .wm-lead");
    if (/^[1-9]$/.test(event.key) && leads[event.key - 1]) { leads[event.key - 1].click();
    } else if ((event.key === "u" || event.key === "0") && !unsure.hidden) { cannotTell();
    } else if (event.key === "b" || event.key === "Backspace") { goBack.click();
    } else if (event.key === "s" && !also.hidden) { say();
    } else { return; }
    event.preventDefault();
  });

  window.addEventListener("hashchange", function () { if (W.fragment() !== shown) { open(true); } });

  /* A moving picture is fetched when it is asked for. */
  home.addEventListener("toggle", function (event) {
    if (event.target.matches(".wm-moving") && event.target.open) { W.liveField(); }
  }, true);

  W.liveField = function () {
    W.fetch("assets/live-field.js").then(function () { if (self.WetmountField.start) { self.WetmountField.start(); } });
  };

  dock.replaceChildren(goBack, also, unsure, main);
  ways.append(el("div", { "class": "ways" }, keys));
  document.querySelector(".wm-ways-part").before(steps);
  useKeys(W.store.get("keys") !== "off");
  open(false);
  if (document.readyState === "complete") { getReady(); } else { window.addEventListener("load", getReady); }
})();
