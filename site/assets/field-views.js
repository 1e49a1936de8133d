/* The views of an entry in the round field, set anew for the user's own field number and objectives.
 *
 * The page holds both views for an example microscope; here nothing is drawn, only moved and scaled. What people enter
 * stays on this device, in the same place as for the live field.
 */
(function () {
  "use strict";
  var KEPT = "wetmount.optics";
  var ASKED = [["field-number", "Field number, after the slash on the eyepiece (10×/18), mm", 5, 30],
    ["low", "Low objective", 1, 150], ["high", "High objective", 1, 150]];

  function kept() {
    try { return JSON.parse(window.localStorage.getItem(KEPT)) || {}; } catch (error) { return {}; }
  }
  function keep(optics) {
    try { window.localStorage.setItem(KEPT, JSON.stringify(optics)); } catch (error) { /* shown, not kept */ }
  }
  function el(tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) { made.setAttribute(name, attributes[name]); });
    [].concat(children || []).forEach(function (child) { made.append(child); });
    return made;
  }
  function plain(value, digits) { return String(Number(value.toPrecision(digits))); }
  function across(um) { return um >= 1000 ? plain(um / 1000, 2) + "\u00a0mm" : plain(um, 2) + "\u00a0µm"; }
  function share(part) { return part < 0.01 ? "under 1\u00a0%" : plain(100 * part, 2) + "\u00a0%"; }
  /* The largest of 1, 2, 5 times a power of ten that is not longer. */
  function roundLength(most) {
    var decade = Math.pow(10, Math.floor(Math.log10(most)));
    return [5, 2, 1].map(function (step) { return step * decade; }).filter(function (each) { return each <= most * (1 + 1e-9); })[0];
  }

  function between(value, low, high, otherwise) { return value >= low && value <= high ? Number(value) : otherwise; }

  /* The optics to show: what people entered, and the example's where they entered nothing. */
  function chosen(data) {
    var own = kept();
    return { "field-number": between(own["field-number"], 5, 30, data.fieldNumber),
      low: between(own.low, 1, 150, data.low), high: between(own.high, 1, 150, data.high) };
  }

  function show(home, data) {
    var optics = chosen(data);
    home.querySelectorAll("[data-power]").forEach(function (figure) {
      var power = figure.dataset.power, objective = optics[power];
      var diameter = 1000 * optics["field-number"] / objective;
      var unit = data.radius / (diameter / 2), size = unit / data.scale;
      var at = data.reach > diameter ? data.spot : data.middle;
      var thing = figure.querySelector("[data-thing]");
      if (thing) {
        thing.setAttribute("transform", "scale(" + size + ") translate(" + -at[0] + " " + -at[1] + ")");
        thing.setAttribute("stroke-width", Math.max(0, data.line / size - data.pen * data.scale));
      }
      figure.querySelectorAll("[data-dot]").forEach(function (dots) {
        dots.setAttribute("stroke-width", Math.max(data.dot, dots.dataset.dot * unit));
      });
      var bar = figure.querySelector(".wm-field-bar"), from = bar.getAttribute("d").split("h")[0], long = roundLength(0.3 * diameter);
      bar.setAttribute("d", from + "h" + long * unit);
      figure.querySelector("text").setAttribute("x", Number(from.slice(1).split(" ")[0]) + long * unit + 5);
      figure.querySelector("text").textContent = long >= 1000 ? long / 1000 + " mm" : long + " µm";
      var says = { times: plain(objective * data.eyepiece, 6) + "×", field: across(diameter), share: share(data.longest / diameter) };
      figure.querySelectorAll("[data-says]").forEach(function (each) { each.textContent = says[each.dataset.says]; });
      figure.querySelector("title").textContent = figure.querySelector("title").textContent.replace(/[^ ]+$/, says.times);
    });
    var isOwn = Object.keys(kept()).length > 0;
    home.querySelector("[data-field-example]").hidden = isOwn;
    return optics;
  }

  function form(home, data) {
    var optics = chosen(data);
    var inputs = ASKED.map(function (each) {
      var input = el("input", { type: "number", min: each[2], max: each[3], step: "any", inputmode: "decimal", required: "" });
      input.value = optics[each[0]];
      input.addEventListener("change", function () {
        if (!input.reportValidity()) { return; }
        var own = kept();
        own[each[0]] = Number(input.value);
        keep(own);
        show(home, data);
      });
      return input;
    });
    var back = el("button", { type: "button", "class": "btn" }, "Back to the example");
    back.addEventListener("click", function () {
      try { window.localStorage.removeItem(KEPT); } catch (error) { /* nothing was kept */ }
      optics = show(home, data);
      inputs.forEach(function (input, at) { input.value = optics[ASKED[at][0]]; });
    });
    return el("details", { "class": "wm-own-optics" }, [el("summary", {}, "Your own microscope")].concat(
      ASKED.map(function (each, at) { return el("label", {}, [el("span", {}, each[1]), inputs[at]]); }),
      el("p", { "class": "wm-aside" }, "The field is the field number over the objective. It stays on this device, for all pages."), back));
  }

  /* On a desk one view at a time stands beside the drawing; on a phone both do. */
  function powers(home) {
    var buttons = [].map.call(home.querySelectorAll("[data-power]"), function (figure) {
      var button = el("button", { type: "button" }, figure.querySelector("[data-says=times]").textContent);
      button.dataset.of = figure.dataset.power;
      button.addEventListener("click", function () { turn(figure.dataset.power); });
      return button;
    });
    function turn(power) {
      home.dataset.shown = power;
      buttons.forEach(function (button) { button.setAttribute("aria-pressed", String(button.dataset.of === power)); });
    }
    home.querySelector("[data-field-example]").before(el("div", { "class": "power", role: "group", "aria-label": "Power" }, buttons));
    turn("high");
  }

  document.querySelectorAll("[data-field-views]").forEach(function (home) {
    var data = JSON.parse(home.dataset.fieldViews);
    show(home, data);
    powers(home);
    home.append(form(home, data));
  });
})();
