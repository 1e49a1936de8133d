/* Knobs beneath computed pictures: focus and iris, one pair for all that stand side by side. The series of planes is
 * fetched at the first touch; until then, and without a script, the stills stand. One file holds all planes of a
 * picture: focus from left to right, irises from top to bottom.
 */
(function () {
  "use strict";
  function make(tag, className, text) {
    var made = document.createElement(tag);
    if (className) { made.className = className; }
    if (text) { made.textContent = text; }
    return made;
  }
  function nearest(list, value) {
    return list.reduce(function (best, each, k) { return Math.abs(each - value) < Math.abs(list[best] - value) ? k : best; }, 0);
  }
  function signed(um) { return (um > 0 ? "+" : um < 0 ? "\u2212" : "") + Math.abs(um) + "\u00a0µm"; }
  function share(k, of) { return (of > 1 ? 100 * k / (of - 1) : 0) + "%"; }
  function sheet(figure, told) {
    var given = JSON.parse(figure.getAttribute("data-eyepiece")), planes = given.focus.length, rows = given.irises.length, screen = null;
    return {
      given: given,
      show: function (um, row) {
        if (!screen) {
          screen = make("div", "wm-still-plane");
          var file = new Image(), own = screen;
          file.onload = function () {
            own.style.backgroundImage = "url('" + given.src + "')";
            own.style.backgroundSize = 100 * planes + "% " + 100 * rows + "%";
            figure.querySelector(".wm-still-round").append(own);
          };
          file.onerror = function () { told("The planes of focus are not on this device yet; they come with the network."); screen = null; };
          file.src = given.src;
        }
        screen.style.backgroundPosition = share(nearest(given.focus, um), planes) + " " + share(Math.min(row, rows - 1), rows);
      }
    };
  }
  function start(group, figures) {
    var says = group.querySelector("[data-says='knobs']");
    function told(text) { says.textContent = text; }
    var sheets = figures.map(function (each) { return sheet(each, told); });
    var given = sheets.reduce(function (most, each) { return each.given.focus.length > most.focus.length ? each.given : most; }, sheets[0].given);
    var knobs = make("div", "wm-knobs"), label = make("label", "", "Focus"), focus = make("input"), iris = make("button", "btn"), row = 0;
    focus.type = "range"; focus.min = 0; focus.max = given.focus.length - 1; focus.step = 1; focus.value = nearest(given.focus, given.at);
    iris.type = "button";
    label.append(focus); knobs.append(label, iris);
    function say() {
      focus.setAttribute("aria-valuetext", signed(given.focus[focus.value]));
      iris.textContent = row ? "Close the iris" : "Open the iris";
    }
    function show() {
      say();
      told("Focus " + signed(given.focus[focus.value]) + " from the middle, iris " + given.irises[row] + ".");
      sheets.forEach(function (each) { each.show(given.focus[focus.value], row); });
    }
    focus.addEventListener("input", show);
    iris.addEventListener("click", function () { row = (row + 1) % given.irises.length; show(); });
    say();
    return knobs;
  }
  document.querySelectorAll("figure[data-eyepiece]").forEach(function (figure) {
    if (!figure.closest(".wm-through")) { figure.querySelector("figcaption").before(start(figure, [figure])); }
  });
  document.addEventListener("toggle", function (event) {
    var fold = event.target, figures;
    if (!fold.matches || !fold.matches(".wm-through") || !fold.open || fold.querySelector(".wm-knobs")) { return; }
    figures = Array.from(fold.querySelectorAll("figure[data-eyepiece]"));
    if (figures.length) { fold.querySelector(".wm-through-row").after(start(fold, figures)); }
  }, true);
})();
