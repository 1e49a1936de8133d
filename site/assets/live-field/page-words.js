/* What a live field says: in words for those who do not see it, and the list under the picture. */
(function (field) {
  "use strict";
  var el = field.page.el, across = field.page.across, said = field.LiveField.prototype;

  said.diameter = function () { return 1000 * this.optics.fieldNumber / this.optics[this.power].objective; };

  said.on = function () { return this.data.movers.filter(function (mover) { return mover.on; }); };

  said.total = function (power) { return this.optics[power].objective * this.optics.eyepiece + "×"; };

  function most(range) { return typeof range === "number" ? range : range[1]; }

  /* Why a mover is not to be seen in the field as it is now; empty where it is. */
  said.hidden = function (mover) {
    if (!mover.together[this.power]) { return "none in this field"; }
    var resolved = field.resolution(this.optics[this.power].aperture);
    return field.seen(most(mover.parameters.length), most(mover.parameters.width), resolved) ? "" : "too small to be seen at " + this.total(this.power);
  };

  said.line = function (mover) {
    var hidden = this.hidden(mover);
    if (!mover.together[this.power]) { return mover.name + ": " + hidden + "."; }
    if (hidden) { return mover.name + ", " + mover.says + ": " + hidden + "."; }
    return mover.together[this.power] + " × " + mover.name + ", " + mover.says + ", " + mover.rests + ": " + mover.label + ".";
  };

  said.alternative = function () {
    var still = this.playing ? "" : this.trails ? " Still picture; a thin line shows where each went in the last " +
      field.trailSeconds + " seconds, with a dot for every second." : " Still picture.";
    var drift = this.drifts ? " " + this.data.drift.name + ": " + this.data.drift.label + "." : "";
    return "Round field of view, " + across(this.diameter()) + " across, at " + this.total(this.power) + ", in ink." + drift + " " +
      this.on().map(this.line, this).join(" ") + still;
  };

  said.state = function () {
    if (this.stilled && !this.playing) { return "Still, with trails: your device asks for less motion. Press Play to see it move."; }
    return !this.playing ? "Paused." : this.half ? "Moving at half its true speed." : "Moving at true speed.";
  };

  said.say = function () {
    var self = this, on = this.on();
    this.canvas.setAttribute("aria-label", this.alternative());
    this.status.textContent = this.state();
    ["low", "high"].forEach(function (power) {
      self.buttons[power].textContent = self.total(power);
      self.buttons[power].setAttribute("aria-label", self.total(power) + ", " + power + " power");
    });
    var asked = { "field-number": this.optics.fieldNumber, low: this.optics.low.objective, high: this.optics.high.objective };
    Object.keys(this.asked).forEach(function (name) { self.asked[name].value = asked[name]; });
    this.buttons.play.textContent = this.playing ? "Pause" : "Play";
    var pressed = { low: this.power === "low", high: this.power === "high", half: this.half, trails: this.trails, drift: this.drifts };
    Object.keys(pressed).forEach(function (name) { self.buttons[name].setAttribute("aria-pressed", String(pressed[name])); });
    this.width.textContent = across(this.diameter()) + " across";
    this.list.replaceChildren.apply(this.list, on.map(function (mover) {
      var hidden = self.hidden(mover);
      return el("li", { "class": hidden ? "wm-live-unseen" : "" }, [
        el("strong", {}, mover.name), ", ", mover.says, " ", el("span", { "class": "wm-live-mark" }, "(" + mover.mark + " " + mover.rests + ")"),
        el("span", { "class": "wm-live-manner" }, hidden || mover.label + ".")
      ]);
    }));
    this.rests.replaceChildren.apply(this.rests, on.concat(this.drifts ? [this.data.drift] : []).map(function (mover) {
      return el("section", {}, [
        el("p", { "class": "wm-live-name" }, mover.name), el("p", {}, mover.about + " (" + mover.basis + ")"),
        el("ul", {}, mover.figures.map(function (figure) {
          return el("li", {}, [figure.name + ": " + figure.words + " ", el("span", { "class": "wm-live-mark" }, figure.mark), " " + figure.basis]);
        }))
      ]);
    }));
  };
})(self.WetmountField);
