/* The element of a live field: the canvas, large controls, the choice of what is in it, one's own microscope. */
(function (field) {
  "use strict";
  var MANY = 8;                       // from more movers than this on, all can be taken out at once
  var el = field.page.el, built = field.LiveField.prototype;

  built.build = function () {
    var self = this;
    this.buttons = {};
    this.asked = {};
    function button(name, words, action, label) {
      self.buttons[name] = el("button", { type: "button", "class": "wm-live-button wm-live-" + name, onclick: action }, words);
      if (label) { self.buttons[name].setAttribute("aria-label", label); }
      return self.buttons[name];
    }
    this.canvas = el("canvas", { role: "img", "class": "wm-live-canvas" });
    this.status = el("p", { role: "status", "class": "wm-live-status" });
    this.width = el("span", { "class": "wm-live-width" });
    this.list = el("ul", { "class": "wm-live-list" });
    this.rests = el("div", {});
    var look = el("div", { "class": "wm-live-look" }, [this.canvas, el("div", { "class": "wm-live-said" }, [this.width, this.status])]);
    var controls = el("div", { role: "group", "aria-label": "Controls of the live field", "class": "wm-live-controls" }, [
      button("low", "", function () { self.turnTo("low"); }), button("high", "", function () { self.turnTo("high"); }),
      button("play", "", function () { self.play(!self.playing); }),
      button("half", "Half speed", function () { self.half = !self.half; self.say(); }),
      button("trails", "Trails", function () { self.trails = !self.trails; self.say(); self.paint(); }, "Trails: where each went"),
      button("drift", "Drift", function () { self.drifts = !self.drifts; self.fill(); }, "Drift of the water")
    ]);
    var whole = this.home.getAttribute("data-live-field") === "whole";
    var parts = [look, controls];
    if (!whole) { parts.unshift(el("p", { "class": "wm-live-title" }, this.data.title)); }   // the page's own heading says it
    if (this.data.movers.length > 1) { parts.push(this.chooser()); }
    if (whole) { parts.push(this.ownOptics()); }
    parts.push(this.list, el("details", { "class": "wm-live-rests" }, [el("summary", {}, "Figures, and what they rest on"), this.rests]));
    Array.prototype.slice.call(this.home.childNodes).forEach(function (node) {
      if (node.nodeName !== "SCRIPT") { node.remove(); }
    });
    this.home.classList.add("wm-live");
    this.home.append.apply(this.home, parts);
  };

  /* Boxes to choose what is in it, under the kinds of things; many can be taken out at once. */
  built.chooser = function () {
    var self = this, kinds = [], boxes = [];
    this.data.movers.forEach(function (mover) {
      if (kinds.indexOf(mover.among) < 0) { kinds.push(mover.among); }
    });
    function choice(mover) {
      var box = el("input", { type: "checkbox", onchange: function () { mover.on = box.checked; self.fill(); } });
      box.checked = mover.on;
      boxes.push(box);
      return el("label", {}, [box, el("span", {}, mover.name)]);
    }
    var groups = kinds.map(function (kind) {
      return el("div", { role: "group", "aria-label": kind }, [kinds.length > 1 && el("p", { "class": "wm-live-kind" }, kind)].concat(
        self.data.movers.filter(function (mover) { return mover.among === kind; }).map(choice)));
    });
    var empty = self.data.movers.length > MANY && el("button", { type: "button", "class": "wm-live-button", onclick: function () {
      self.data.movers.forEach(function (mover) { mover.on = false; });
      boxes.forEach(function (box) { box.checked = false; });
      self.fill();
    } }, "Take everything out");
    return el("details", { "class": "wm-live-chooser" }, [el("summary", {}, "What is in it"), empty].concat(groups));
  };

  built.ownOptics = function () {
    var self = this, asked = [["field-number", "Field number, on the eyepiece"], ["low", "Low objective"], ["high", "High objective"]];
    return el("fieldset", { "class": "wm-live-optics" }, [el("legend", {}, "Your microscope")].concat(asked.map(function (each) {
      var range = field.page.allowed[each[0]];
      var input = el("input", { type: "number", min: range[0], max: range[1], step: "any", inputmode: "decimal", onchange: function () {
        if (input.reportValidity()) { field.page.keepOptics(each[0], Number(input.value)); }
      } });
      self.asked[each[0]] = input;
      return el("label", {}, [el("span", {}, each[1]), input]);
    })));
  };
})(self.WetmountField);
