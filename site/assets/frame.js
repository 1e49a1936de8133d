/* What every page does with a script: the lamp, the menu, and the address in its citation. */
(function () {
  "use strict";
  var root = document.documentElement;
  var KEPT = "wetmount.scheme";
  var SCHEMES = ["light", "dark", "dim"];
  var SAID = { light: "paper", dark: "evening", dim: "dim room" };
  var evening = window.matchMedia("(prefers-color-scheme: dark)");

  /* --- the lamp goes round three schemes; where the chosen one is the device's own, the device is followed again --- */
  var lamp = document.querySelector(".lamp");
  function shown() { return root.dataset.scheme || (evening.matches ? "dark" : "light"); }
  function name() { lamp.setAttribute("aria-label", "Lamp: " + SAID[shown()] + ". Change to " + SAID[SCHEMES[(SCHEMES.indexOf(shown()) + 1) % 3]]); }
  if (lamp) {
    lamp.hidden = false;
    name();
    evening.addEventListener("change", name);
    lamp.addEventListener("click", function () {
      var next = SCHEMES[(SCHEMES.indexOf(shown()) + 1) % 3];
      var own = evening.matches ? "dark" : "light";
      if (next === own) { delete root.dataset.scheme; } else { root.dataset.scheme = next; }
      try {
        if (next === own) { window.localStorage.removeItem(KEPT); } else { window.localStorage.setItem(KEPT, next); }
      } catch (error) { /* shown, not kept */ }
      name();
    });
  }

  /* --- the menu: Escape closes it and gives the focus back, so does a tap beside it --- */
  var menu = document.querySelector(".menu");
  if (menu) {
    menu.addEventListener("keydown", function (event) {
      if (event.key === "Escape" && menu.open) {
        menu.open = false;
        menu.querySelector("summary").focus();
      }
    });
    document.addEventListener("click", function (event) {
      if (menu.open && !menu.contains(event.target)) { menu.open = false; }
    });
    menu.addEventListener("focusout", function (event) {
      if (menu.open && event.relatedTarget && !menu.contains(event.relatedTarget)) { menu.open = false; }
    });
  }

  /* --- the citation names the address it was read at, without what stands behind # --- */
  var cite = document.querySelector("[data-cite]");
  if (cite && /^https?:$/.test(location.protocol) && cite.textContent.indexOf("://") < 0) {
    cite.textContent = cite.textContent.replace(cite.dataset.cite, location.origin + location.pathname);
  }
})();
