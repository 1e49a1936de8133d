/* The filter of a list of specimens: by words, by letter, by theme. Without a script the list stands whole, with links to its themes. */
(function () {
  "use strict";
  var home = document.querySelector("[data-filter]");
  if (!home) { return; }
  var parts = [].slice.call(document.querySelectorAll(".part")).filter(function (part) { return part.querySelector(".drawer"); });
  var items = [];
  parts.forEach(function (part) {
    part.querySelectorAll(".drawer > li").forEach(function (item) {
      var name = item.querySelector(".t").textContent;
      items.push({ item: item, part: part, letter: fold(name).charAt(0), words: fold(name + " " + (item.dataset.words || "")) });
    });
  });
  var state = { words: "", letter: "", theme: "" };

  /* Small letters without accents, so that a phone's keyboard finds them all. */
  function fold(text) { return text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, ""); }
  function el(tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes).forEach(function (name) { made.setAttribute(name, attributes[name]); });
    made.append.apply(made, children || []);
    return made;
  }

  var box = el("input", { type: "search", "aria-label": "Filter the entries", placeholder: home.dataset.filter, autocomplete: "off", enterkeyhint: "search" });
  var icon = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  icon.setAttribute("viewBox", "0 0 24 24");
  icon.setAttribute("aria-hidden", "true");
  icon.innerHTML = '<circle cx="10" cy="10" r="6"/><path d="m15 15 6 6"/>';
  var letters = el("div", { "class": "abc", role: "group", "aria-label": "By first letter" });
  "abcdefghijklmnopqrstuvwxyz".split("").forEach(function (letter) {
    var button = el("button", { type: "button", "aria-pressed": "false", "aria-label": "Letter " + letter.toUpperCase() }, [letter.toUpperCase()]);
    button.disabled = !items.some(function (each) { return each.letter === letter; });
    button.addEventListener("click", function () {
      state.letter = state.letter === letter ? "" : letter;
      show();
    });
    letters.append(button);
  });
  var said = el("p", { "class": "label", role: "status" });
  var themes = [].slice.call(home.querySelectorAll(".themes a"));
  themes.forEach(function (link) {
    link.addEventListener("click", function (event) {
      event.preventDefault();
      var theme = link.hash.slice(1);
      state.theme = state.theme === theme ? "" : theme;
      show();
    });
  });
  box.addEventListener("input", function () {
    state.words = fold(box.value).trim();
    show();
  });
  home.prepend(el("div", { "class": "box" }, [icon, box]), letters);
  home.append(said);

  function show() {
    var wanted = state.words.split(/\s+/), left = 0;
    items.forEach(function (each) {
      var theme = each.part.querySelector("h2").id;
      var is = (!state.theme || theme === state.theme) && (!state.letter || each.letter === state.letter) &&
        wanted.every(function (word) { return each.words.indexOf(word) >= 0; });
      each.item.hidden = !is;
      left += is ? 1 : 0;
    });
    parts.forEach(function (part) { part.hidden = !part.querySelector(".drawer > li:not([hidden])"); });
    themes.forEach(function (link) {
      if (link.hash.slice(1) === state.theme) { link.setAttribute("aria-current", "true"); } else { link.removeAttribute("aria-current"); }
    });
    letters.querySelectorAll("button").forEach(function (button) {
      button.setAttribute("aria-pressed", String(button.textContent.toLowerCase() === state.letter));
    });
    var isAll = !state.words && !state.letter && !state.theme;
    said.textContent = isAll ? "" : left ? left + (left === 1 ? " entry" : " entries") : "Nothing by that name here. Try fewer letters, or take the theme away.";
  }
})();
