/* Runs every live field of a page: puts one into each element with `data-live-field` that holds its JSON.
 * With reduced motion asked for, and in print, it is a still picture with trails.
 */
(function (field) {
  "use strict";
  var LEAD_IN = field.trailSeconds;   // s that have gone by when it is first seen, so that there are trails
  var PRINT = { ink: "#000", paper: "#fff" };
  var less = window.matchMedia("(prefers-reduced-motion: reduce)");
  var SLICE = 0.25;                   // s of the field in one piece of that, so that a slow phone is free in between
  var fields = [], shownFor = field.page.written(), runs = field.LiveField.prototype;
  /* Makes the field anew: after a change of power, optics or what is in it. */
  runs.fill = function (atFirst) {
    var self = this;
    this.optics = field.page.withKept(this.data.optics);
    this.field = field.createField({
      seed: this.data.seed, diameter_um: this.diameter(), temperature: this.data.temperature, viscosity: this.data.viscosity,
      drift: this.drifts ? { speed: this.data.drift.parameters.speed, direction: -0.35 } : null,
      movers: this.on().map(function (mover) {
        return { id: mover.id, motion: mover.motion, body: mover.body, shape: mover.shape, deforms: mover.deforms, holds: mover.holds, count: mover.together[self.power], parameters: mover.parameters };
      })
    });
    this.say();
    if (atFirst && !this.stilled) { this.begin(); return; }   // one that is to be still is painted once
    this.begun = this.shown = true;
    field.step(this.field, LEAD_IN);
    this.paint();
    this.go();
  };

  /* Once the page is there a still picture; the time before it goes by piece by piece, and only then it moves. */
  runs.begin = function () {
    var self = this, left = Math.round(LEAD_IN / SLICE);
    function on() {
      if (self.begun) { return; }     // filled anew meanwhile
      if (left > 0) {
        left -= 1;
        field.step(self.field, SLICE);
        pause(on);
        return;
      }
      self.begun = true;
      self.paint();
      self.go();
    }
    whenThere(function () { pause(function () { self.shown = true; self.paint(); pause(on); }); });
  };

  function whenThere(action) { if (document.readyState === "complete") { action(); } else { window.addEventListener("load", action); } }

  function pause(action) { if (window.requestIdleCallback) { window.requestIdleCallback(action, { timeout: 200 }); } else { window.setTimeout(action); } }

  runs.turnTo = function (power) {
    this.power = power;
    this.fill();
  };

  runs.play = function (playing) {
    if (!this.begun) { this.fill(); }   // whoever presses or prints waits for nothing
    this.playing = playing;
    if (playing && this.stilled) {
      this.stilled = false;
      this.trails = false;
    }
    this.say();
    this.paint();
    this.go();
  };

  runs.go = function () {
    if (this.begun && this.playing && this.inView && !document.hidden && !this.frame) {
      this.last = 0;
      this.frame = window.requestAnimationFrame(this.tick.bind(this));
    }
  };

  runs.tick = function (now) {
    this.frame = 0;
    var gone = this.last ? Math.min(0.1, (now - this.last) / 1000) : 0;
    field.step(this.field, this.half ? gone / 2 : gone);
    this.paint();
    this.go();
    this.last = now;
  };

  runs.paint = function () {
    var size = this.canvas.clientWidth;
    if (!size) { return; }
    var density = Math.min(2, window.devicePixelRatio || 1), whole = Math.round(size * density);
    if (this.canvas.width !== whole) { this.canvas.width = this.canvas.height = whole; }
    if (!this.inks) { this.readInks(); }
    var inks = this.printing ? PRINT : this.inks;
    field.draw(this.canvas.getContext("2d"), this.field, {
      pixels: size, density: whole / size, ink: inks.ink, paper: inks.paper, font: this.inks.font,
      trails: this.trails || this.printing, aperture: this.optics[this.power].aperture
    });
  };

  runs.readInks = function () {
    var style = window.getComputedStyle(this.canvas);
    this.inks = { ink: style.color, paper: style.backgroundColor, font: "600 13px " + style.fontFamily };
  };

  runs.watch = function () {
    var self = this;
    new IntersectionObserver(function (entries) {
      self.inView = entries[entries.length - 1].isIntersecting;
      self.go();
    }).observe(this.home);
    new ResizeObserver(function () { if (self.shown) { self.paint(); } }).observe(this.canvas);
  };

  function recolour() {
    fields.forEach(function (each) {
      each.inks = null;
      each.paint();
    });
  }

  function start() {
    fields = fields.filter(function (each) { return each.home.isConnected; });
    document.querySelectorAll("[data-live-field]:not(.wm-live)").forEach(function (home) {
      var source = home.querySelector('script[type="application/json"]');
      if (source) { fields.push(new field.LiveField(home, JSON.parse(source.textContent), less.matches)); }
    });
  }

  /* Whatever part of this or another page has written one's own microscope: every field follows at once. */
  function follow() {
    var now = field.page.written();
    if (now === shownFor) { return; }
    shownFor = now;
    fields.forEach(function (each) { each.fill(); });
  }

  function print(printing) {
    fields.forEach(function (each) {
      each.printing = printing;
      if (!each.begun) { each.fill(); }
      each.paint();
    });
  }

  ["change", "click"].forEach(function (done) { document.addEventListener(done, follow); });   // they bubble: the form has written by now
  ["storage", "pageshow"].forEach(function (came) { window.addEventListener(came, follow); });
  document.addEventListener("visibilitychange", function () { fields.forEach(function (each) { each.go(); }); });
  less.addEventListener("change", function () {
    if (less.matches) {
      fields.forEach(function (each) {
        each.stilled = each.trails = true;
        each.play(false);
      });
    }
  });
  window.addEventListener("beforeprint", function () { print(true); });
  window.addEventListener("afterprint", function () { print(false); });
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", recolour);
  [document.documentElement, document.body].forEach(function (node) {
    new MutationObserver(recolour).observe(node, { attributes: true });
  });
  field.start = start;   // for what is put into a page after it was read
  if (window.document$) { window.document$.subscribe(start); } else { start(); }
})(self.WetmountField);
