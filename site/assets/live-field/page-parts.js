/* What the page side is made of: elements, and the optics people entered. */
(function (field) {
  "use strict";
  var KEPT = "wetmount.optics";
  field.page = {};

  /* An element with its attributes and children; text is always text, never markup. */
  field.page.el = function (tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) {
      if (name.slice(0, 2) === "on") { made.addEventListener(name.slice(2), attributes[name]); } else { made.setAttribute(name, attributes[name]); }
    });
    [].concat(children || []).forEach(function (child) {
      if (child) { made.append(child); }
    });
    return made;
  };

  /* The optics people entered, on this device only; storage may be shut. */
  function keptOptics() {
    try { return JSON.parse(window.localStorage.getItem(KEPT)) || {}; } catch (error) { return {}; }
  }

  field.page.keepOptics = function (name, value) {
    var kept = keptOptics();
    kept[name] = value;
    try { window.localStorage.setItem(KEPT, JSON.stringify(kept)); } catch (error) { /* shown, not kept */ }
  };

  /* The optics of the page, with what people entered in place of the example. */
  field.page.withKept = function (given) {
    var kept = keptOptics();
    function positive(value, otherwise) { return value > 0 && value < 1000 ? Number(value) : otherwise; }
    return {
      fieldNumber: positive(kept["field-number"], given["field-number"]), eyepiece: given.eyepiece,
      low: { objective: positive(kept.low, given.low.objective), aperture: given.low.aperture },
      high: { objective: positive(kept.high, given.high.objective), aperture: given.high.aperture }
    };
  };

  field.page.across = function (um) { return um >= 1000 ? Number((um / 1000).toPrecision(2)) + " mm" : Number(um.toPrecision(2)) + " µm"; };

  /* One live field of a page: its element, its data and how it is shown. */
  field.LiveField = function (home, data, still) {
    this.home = home;
    this.data = data;
    this.power = data.start;
    this.playing = !still;
    this.stilled = still;
    this.half = false;
    this.trails = still;
    this.drifts = false;
    this.inView = false;
    this.printing = false;
    this.build();
    this.fill();
    this.watch();
  };
})(self.WetmountField);
