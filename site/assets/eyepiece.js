/* Knobs beneath a computed picture: focus and iris. The series of planes is fetched at the first touch; until then,
 * and without a script, the still stands. One file holds all planes: focus from left to right, irises from top to bottom.
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
  function start(figure) {
    var given = JSON.parse(figure.getAttribute("data-eyepiece"));
    var round = figure.querySelector(".wm-still-round");
    var says = figure.querySelector("[data-says='knobs']");
    var knobs = make("div", "wm-knobs"), label = make("label", "", "Focus"), focus = make("input"), iris = make("button", "btn");
    var planes = given.focus.length, rows = given.irises.length, row = 0, screen = null;
    focus.type = "range"; focus.min = 0; focus.max = planes - 1; focus.step = 1; focus.value = nearest(given.focus, given.at);
    iris.type = "button";
    label.append(focus); knobs.append(label, iris);
    function say() {
      var text = "Focus " + signed(given.focus[focus.value]) + " from its middle, iris " + given.irises[row] + ".";
      focus.setAttribute("aria-valuetext", signed(given.focus[focus.value]));
      iris.textContent = row ? "Close the iris" : "Open the iris";
      return text;
    }
    function show() {
      says.textContent = say();
      if (!screen) {
        screen = make("div", "wm-still-plane");
        var file = new Image();
        file.onload = function () {
          screen.style.backgroundImage = "url('" + given.src + "')";
          screen.style.backgroundSize = 100 * planes + "% " + 100 * rows + "%";
          round.append(screen);
        };
        file.onerror = function () { says.textContent = "The planes of focus are not on this device yet; they come with the network."; screen = null; };
        file.src = given.src;
      }
      screen.style.backgroundPosition = (planes > 1 ? 100 * focus.value / (planes - 1) : 0) + "% " + (rows > 1 ? 100 * row / (rows - 1) : 0) + "%";
    }
    focus.addEventListener("input", show);
    iris.addEventListener("click", function () { row = (row + 1) % rows; show(); });
    say();
    figure.querySelector("figcaption").before(knobs);
  }
  document.querySelectorAll("[data-eyepiece]").forEach(start);
})();
