/* Puts a live field into every element with `data-live-field` that holds its JSON.
 *
 * What moves and how it is drawn is in live-field.js; here are the canvas, the controls and the
 * words. With reduced motion asked for, and in print, it is a still picture with trails.
 */
(function () {
  "use strict";
  var KEPT = "wetmount.optics";
  var LEAD_IN = 4;                    // s that have gone by when it is first seen, so that there are trails
  var PRINT = { ink: "#000", paper: "#fff" };
  var less = window.matchMedia("(prefers-reduced-motion: reduce)");
  var fields = [];

  /* An element with its attributes and children; text is always text, never markup. */
  function el(tag, attributes, children) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) {
      if (name.slice(0, 2) === "on") { made.addEventListener(name.slice(2), attributes[name]); } else { made.setAttribute(name, attributes[name]); }
    });
    [].concat(children || []).forEach(function (child) {
      if (child) { made.append(child); }
    });
    return made;
  }

  /* The optics people entered, on this device only; storage may be shut. */
  function keptOptics() {
    try { return JSON.parse(window.localStorage.getItem(KEPT)) || {}; } catch (error) { return {}; }
  }

  function keepOptics(optics) {
    try { window.localStorage.setItem(KEPT, JSON.stringify(optics)); } catch (error) { /* shown, not kept */ }
  }

  function withKept(given) {
    var kept = keptOptics();
    function positive(value, otherwise) { return value > 0 && value < 1000 ? Number(value) : otherwise; }
    return {
      fieldNumber: positive(kept["field-number"], given["field-number"]), eyepiece: given.eyepiece,
      low: { objective: positive(kept.low, given.low.objective), aperture: given.low.aperture },
      high: { objective: positive(kept.high, given.high.objective), aperture: given.high.aperture }
    };
  }

  function across(um) { return um >= 1000 ? Number((um / 1000).toPrecision(2)) + " mm" : Number(um.toPrecision(2)) + " µm"; }

  function LiveField(home, data) {
    this.home = home;
    this.data = data;
    this.power = data.start;
    this.playing = !less.matches;
    this.stilled = less.matches;
    this.half = false;
    this.trails = less.matches;
    this.drifts = false;
    this.inView = false;
    this.printing = false;
    this.build();
    this.fill();
    this.watch();
  }

  LiveField.prototype = {
    /* ---------- what is in it ---------- */

    diameter: function () { return 1000 * this.optics.fieldNumber / this.optics[this.power].objective; },

    on: function () { return this.data.movers.filter(function (mover) { return mover.on; }); },

    total: function (power) { return this.optics[power].objective * this.optics.eyepiece + "×"; },

    /* Makes the field anew: after a change of power, optics or what is in it. */
    fill: function () {
      var self = this;
      this.optics = withKept(this.data.optics);
      this.field = WetmountField.createField({
        seed: this.data.seed, diameter_um: this.diameter(), temperature: this.data.temperature, viscosity: this.data.viscosity,
        drift: this.drifts ? { speed: this.data.drift.parameters.speed, direction: -0.35 } : null,
        movers: this.on().map(function (mover) {
          return { id: mover.id, motion: mover.motion, body: mover.body, holds: mover.holds, count: mover.together[self.power],
            parameters: mover.parameters };
        })
      });
      WetmountField.step(this.field, LEAD_IN);
      this.say();
      this.paint();
    },

    unseen: function (mover) {
      var most = function (range) { return typeof range === "number" ? range : range[1]; };
      var resolved = WetmountField.resolution(this.optics[this.power].aperture);
      return !WetmountField.seen(most(mover.parameters.length), most(mover.parameters.width), resolved);
    },

    /* ---------- words ---------- */

    line: function (mover) {
      var count = mover.together[this.power];
      if (!count) { return mover.name + ": none in this field."; }
      if (this.unseen(mover)) { return mover.name + ", " + mover.says + ": too small to be seen at " + this.total(this.power) + "."; }
      return count + " × " + mover.name + ", " + mover.says + ", " + mover.rests + ": " + mover.label + ".";
    },

    alternative: function () {
      var still = this.playing ? "" : this.trails ? " Still picture; a thin line shows where each went in the last " +
        WetmountField.trailSeconds + " seconds, with a dot for every second." : " Still picture.";
      var drift = this.drifts ? " " + this.data.drift.name + ": " + this.data.drift.label + "." : "";
      return "Round field of view, " + across(this.diameter()) + " across, at " + this.total(this.power) + ", in ink." + drift + " " +
        this.on().map(this.line, this).join(" ") + still;
    },

    state: function () {
      if (this.stilled && !this.playing) { return "Still, with trails: your device asks for less motion. Press Play to see it move."; }
      return !this.playing ? "Paused." : this.half ? "Moving at half its true speed." : "Moving at true speed.";
    },

    say: function () {
      var self = this, on = this.on();
      this.canvas.setAttribute("aria-label", this.alternative());
      this.status.textContent = this.state();
      this.buttons.low.textContent = this.total("low");
      this.buttons.high.textContent = this.total("high");
      this.buttons.play.textContent = this.playing ? "Pause" : "Play";
      var pressed = { low: this.power === "low", high: this.power === "high", half: this.half, trails: this.trails, drift: this.drifts };
      Object.keys(pressed).forEach(function (name) { self.buttons[name].setAttribute("aria-pressed", String(pressed[name])); });
      this.width.textContent = across(this.diameter()) + " across";
      this.list.replaceChildren.apply(this.list, on.map(function (mover) {
        var hidden = !mover.together[self.power] ? "none in this field" : self.unseen(mover) ? "too small to be seen at " + self.total(self.power) : "";
        return el("li", { "class": hidden ? "wm-live-unseen" : "" }, [
          el("strong", {}, mover.name), ", ", mover.says, " ", el("span", { "class": "wm-live-mark" }, "(" + mover.mark + " " + mover.rests + ")"),
          el("span", { "class": "wm-live-manner" }, hidden ? hidden : mover.label + ".")
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
    },

    /* ---------- the element ---------- */

    build: function () {
      var self = this;
      this.optics = withKept(this.data.optics);
      this.buttons = {};
      function button(name, words, action) {
        self.buttons[name] = el("button", { type: "button", "class": "wm-live-button", onclick: action }, words);
        return self.buttons[name];
      }
      this.canvas = el("canvas", { role: "img", "class": "wm-live-canvas" });
      this.status = el("p", { role: "status", "class": "wm-live-status" });
      this.width = el("span", { "class": "wm-live-width" });
      this.list = el("ul", { "class": "wm-live-list" });
      this.rests = el("div", {});
      var look = el("div", { "class": "wm-live-look" }, [this.canvas, this.status]);
      var controls = el("div", { role: "group", "aria-label": "Controls of the live field", "class": "wm-live-controls" }, [
        button("low", "", function () { self.turnTo("low"); }), button("high", "", function () { self.turnTo("high"); }), this.width,
        button("play", "", function () { self.play(!self.playing); }),
        button("half", "Half speed", function () { self.half = !self.half; self.say(); }),
        button("trails", "Trails", function () { self.trails = !self.trails; self.say(); self.paint(); }),
        button("drift", "Drift", function () { self.drifts = !self.drifts; self.fill(); })
      ]);
      var parts = [el("p", { "class": "wm-live-title" }, this.data.title), look, controls];
      if (this.data.movers.length > 1) { parts.push(this.chooser()); }
      if (this.home.getAttribute("data-live-field") === "whole") { parts.push(this.ownOptics()); }
      parts.push(this.list, el("details", { "class": "wm-live-rests" }, [el("summary", {}, "Figures, and what they rest on"), this.rests]));
      Array.prototype.slice.call(this.home.childNodes).forEach(function (node) {
        if (node.nodeName !== "SCRIPT") { node.remove(); }
      });
      this.home.classList.add("wm-live");
      this.home.append.apply(this.home, parts);
    },

    chooser: function () {
      var self = this;
      return el("details", { "class": "wm-live-chooser" }, [el("summary", {}, "What is in it"),
        el("div", { role: "group", "aria-label": "What is in it" }, this.data.movers.map(function (mover) {
          var box = el("input", { type: "checkbox", onchange: function () { mover.on = box.checked; self.fill(); } });
          box.checked = mover.on;
          return el("label", {}, [box, el("span", {}, mover.name)]);
        }))]);
    },

    ownOptics: function () {
      var self = this;
      var asked = [["field-number", "Field number, on the eyepiece", this.optics.fieldNumber], ["low", "Low objective", this.optics.low.objective],
        ["high", "High objective", this.optics.high.objective]];
      return el("fieldset", { "class": "wm-live-optics" }, [el("legend", {}, "Your microscope")].concat(asked.map(function (each) {
        var input = el("input", { type: "number", min: "1", max: "200", step: "any", inputmode: "decimal", onchange: function () {
          var kept = keptOptics();
          kept[each[0]] = Number(input.value);
          keepOptics(kept);
          fields.forEach(function (field) { field.fill(); });
        } });
        input.value = each[2];
        return el("label", {}, [el("span", {}, each[1]), input]);
      })));
    },

    /* ---------- acting ---------- */

    turnTo: function (power) {
      this.power = power;
      this.fill();
    },

    play: function (playing) {
      this.playing = playing;
      if (playing && this.stilled) {
        this.stilled = false;
        this.trails = false;
      }
      this.say();
      this.paint();
      this.go();
    },

    go: function () {
      if (this.playing && this.inView && !document.hidden && !this.frame) {
        this.last = 0;
        this.frame = window.requestAnimationFrame(this.tick.bind(this));
      }
    },

    tick: function (now) {
      this.frame = 0;
      var gone = this.last ? Math.min(0.1, (now - this.last) / 1000) : 0;
      WetmountField.step(this.field, this.half ? gone / 2 : gone);
      this.paint();
      this.go();
      this.last = now;
    },

    paint: function () {
      var size = this.canvas.clientWidth;
      if (!size) { return; }
      var density = Math.min(2, window.devicePixelRatio || 1), whole = Math.round(size * density);
      if (this.canvas.width !== whole) { this.canvas.width = this.canvas.height = whole; }
      if (!this.inks) { this.readInks(); }
      var ctx = this.canvas.getContext("2d"), inks = this.printing ? PRINT : this.inks;
      ctx.setTransform(whole / size, 0, 0, whole / size, 0, 0);
      WetmountField.draw(ctx, this.field, {
        pixels: size, ink: inks.ink, paper: inks.paper, font: this.inks.font,
        trails: this.trails || this.printing, aperture: this.optics[this.power].aperture
      });
    },

    readInks: function () {
      var style = window.getComputedStyle(this.canvas);
      this.inks = { ink: style.color, paper: style.backgroundColor, font: "600 13px " + style.fontFamily };
    },

    watch: function () {
      var self = this;
      new IntersectionObserver(function (entries) {
        self.inView = entries[entries.length - 1].isIntersecting;
        self.go();
      }).observe(this.home);
      new ResizeObserver(function () { self.paint(); }).observe(this.canvas);
    }
  };

  function everyField(act) { fields.forEach(act); }

  function recolour() {
    everyField(function (field) {
      field.inks = null;
      field.paint();
    });
  }

  function start() {
    fields = fields.filter(function (field) { return field.home.isConnected; });
    document.querySelectorAll("[data-live-field]:not(.wm-live)").forEach(function (home) {
      var source = home.querySelector('script[type="application/json"]');
      if (source && window.WetmountField) { fields.push(new LiveField(home, JSON.parse(source.textContent))); }
    });
  }

  document.addEventListener("visibilitychange", function () { everyField(function (field) { field.go(); }); });
  less.addEventListener("change", function () {
    if (less.matches) {
      everyField(function (field) {
        field.stilled = field.trails = true;
        field.play(false);
      });
    }
  });
  function print(printing) {
    everyField(function (field) {
      field.printing = printing;
      field.paint();
    });
  }

  window.addEventListener("beforeprint", function () { print(true); });
  window.addEventListener("afterprint", function () { print(false); });
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", recolour);
  [document.documentElement, document.body].forEach(function (node) {
    new MutationObserver(recolour).observe(node, { attributes: true });
  });
  if (window.document$) { window.document$.subscribe(start); } else { start(); }
})();
