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

  /* What people may enter: the least and the most of each, as in every form of the site that asks for it. */
  field.page.allowed = { "field-number": [5, 30], low: [1, 150], high: [1, 150] };

  /* What people entered, as text, on this device only: other parts of a page write it too. */
  var unkept = null;                  // for this page alone, where storage is shut
  field.page.written = function () {
    try { return window.localStorage.getItem(KEPT) || unkept; } catch (error) { return unkept; }
  };

  function entered() {
    try { return JSON.parse(field.page.written()) || {}; } catch (error) { return {}; }
  }

  field.page.keepOptics = function (name, value) {
    var own = entered();
    own[name] = value;
    try { window.localStorage.setItem(KEPT, JSON.stringify(own)); } catch (error) { unkept = JSON.stringify(own); }
  };

  /* The optics of the page, with what people entered in place of the example. */
  field.page.withKept = function (given) {
    var own = entered();
    function chosen(name, otherwise) {
      var range = field.page.allowed[name];
      return own[name] >= range[0] && own[name] <= range[1] ? Number(own[name]) : otherwise;
    }
    return {
      fieldNumber: chosen("field-number", given["field-number"]), eyepiece: given.eyepiece,
      low: { objective: chosen("low", given.low.objective), aperture: given.low.aperture },
      high: { objective: chosen("high", given.high.objective), aperture: given.high.aperture }
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
    this.optics = field.page.withKept(data.optics);
    this.build();
    this.fill(true);
    this.watch();
  };
})(self.WetmountField);
