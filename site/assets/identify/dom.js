/* What the scripts of the identifying pages share: elements, files fetched when they are needed, words for chances. */
(function (root) {
  "use strict";
  var W = root.wetmount = root.wetmount || {};
  var own = document.currentScript && document.currentScript.src || "";
  var waiting = {};

  /* The folder of the site, whether it is served or lies on a stick; this script stands in its `assets`, or one folder below. */
  W.root = new URL(/\/assets\/[^/]+$/.test(own) ? ".." : "../..", own || location.href).href.replace(/\/?$/, "/");

  /* An element with its attributes and children; text is always text, never markup. */
  W.el = function (tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) {
      var value = attributes[name];
      if (name === "onclick") { made.addEventListener("click", value); } else if (value !== null && value !== false) { made.setAttribute(name, value === true ? "" : value); }
    });
    [].concat(children === undefined || children === null ? [] : children).forEach(function (child) {
      if (child || child === 0) { made.append(child); }
    });
    return made;
  };

  /* Markup that the build has written (its texts are escaped there), for a page in any folder. */
  W.html = function (tag, attributes, markup) {
    var made = W.el(tag, attributes);
    made.innerHTML = markup.replace(/\b(href|src)="(?!#|[a-z]+:|\/)/g, '$1="' + W.root);
    return made;
  };

  /* A script of the site, fetched once. */
  W.fetch = function (path) {
    if (!waiting[path]) {
      waiting[path] = new Promise(function (done, failed) {
        var script = W.el("script", { src: W.root + path });
        script.onload = done;
        script.onerror = function () { waiting[path] = null; script.remove(); failed(new Error(path)); };
        document.head.append(script);
      });
    }
    return waiting[path];
  };

  /* Data of the site: a script file, since a page opened from a folder may fetch nothing else. */
  W.data = function (name) {
    function there() { return root.wetmountData && root.wetmountData[name]; }
    return there() ? Promise.resolve(there()) : W.fetch("data/" + name + ".js").then(there);
  };

  /* Once what was just put on the screen is painted: a frame, and then when the browser has nothing else to do, soon at the latest. */
  W.afterPaint = function (action) {
    requestAnimationFrame(function () {
      setTimeout(function () { if (root.requestIdleCallback) { requestIdleCallback(action, { timeout: 1500 }); } else { action(); } });
    });
  };

  /* The engine over the whole library and the words for what it says: {E, faces}. Fetched at the first answer or when the page has
   * long been quiet; read file by file, so that a tap is answered in between. */
  W.engine = function () {
    W.opened = W.opened || Promise.all([W.data("engine"), W.data("faces")]).then(function (parts) {
      return new Promise(function (done) { setTimeout(function () { done(parts); }); });
    }).then(function (parts) {
      W.ready = { E: root.wetmountEngine.open(parts[0]), faces: parts[1] };
      return W.ready;
    });
    W.opened.catch(function () { W.opened = null; });
    return W.opened;
  };

  /* Whether one group or entry lies within another. */
  W.within = function (E, inner, outer) {
    var held = E.members ? E.members(outer) : [];
    return held.length > 0 && E.members(inner).every(function (each) { return held.indexOf(each) >= 0; });
  };

  /* Chances rest on estimates, so they are never given finer than one in twenty. */
  W.odds = function (chance) {
    var of100 = 5 * Math.round(20 * chance);
    return chance < 0.05 ? "under 5" : of100 > 95 ? "over 95" : String(of100);
  };

  W.store = {
    get: function (name) { try { return localStorage.getItem("wetmount." + name); } catch (error) { return null; } },
    set: function (name, value) {
      try { if (value === null) { localStorage.removeItem("wetmount." + name); } else { localStorage.setItem("wetmount." + name, value); } } catch (error) { /* holds until the page is left */ }
    }
  };

  W.fragment = function () {
    try { return decodeURIComponent(location.hash.slice(1)); } catch (error) { return location.hash.slice(1); }
  };

  /* Puts a link to what is shown on the clipboard, or into a box to be taken by hand. */
  W.copyLink = function (into) {
    function byHand() {
      var box = W.el("input", { type: "text", readonly: true, "aria-label": "Link to this", "class": "wm-link" });
      box.value = location.href;
      into.replaceChildren(box);
      box.select();
    }
    try {
      navigator.clipboard.writeText(location.href).then(function () { into.replaceChildren("Link copied."); }, byHand);
    } catch (error) { byHand(); }
  };

  /* Small picture of an entry or a state on its paper; empty paper where there is none. */
  W.thumb = function (src, tall) {
    return W.el("span", { "class": tall ? "thumb tall" : "thumb", "aria-hidden": "true" },
      src ? W.el("img", { src: W.root + src, alt: "", loading: "lazy", decoding: "async" }) : null);
  };

  W.pictureOf = function (faces, id) { return faces.entries[id] && faces.entries[id].drawn ? "drawings/" + id + ".svg" : ""; };
  W.pictureOfState = function (faces, character, state) {
    var known = faces.characters[character];
    return known && known.states[state] && known.states[state].drawn ? "drawings/states/" + character + "--" + state + ".svg" : "";
  };
  W.hrefOf = function (faces, id) { return W.root + (faces.entries[id] ? "entries/" : "keys/") + id + ".html"; };
  /* A sentence of `keydata/sentences` with its words put in; where it has forms, the number n decides by the plural rules of Unicode. */
  W.tell = function (faces, id, words) {
    var said = faces.say[id];
    if (typeof said !== "string") { said = said[new Intl.PluralRules(faces.language).select(Number(words.n))] || said.other; }
    return said.replace(/\{(\w+)\}/g, function (whole, name) { return words[name]; });
  };
  W.nameOf = function (faces, id) { return (faces.entries[id] || faces.keys[id] || { name: id }).name; };
})(self);
