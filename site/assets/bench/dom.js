/* Elements, words of numbers, and what is kept on the device: shared by the count sheet and the photograph page. */
(function (bench) {
  "use strict";
  var SVG = "http://www.w3.org/2000/svg", OPTICS = "wetmount.optics";

  function fill(made, attributes, children) {
    Object.keys(attributes || {}).forEach(function (name) {
      var value = attributes[name];
      if (name.slice(0, 2) === "on") { made.addEventListener(name.slice(2), value); } else if (value === true) { made.setAttribute(name, ""); } else if (value !== false && value !== null && value !== undefined) { made.setAttribute(name, value); }
    });
    [].concat(children === undefined ? [] : children).forEach(function (child) {
      if (Array.isArray(child)) { child.forEach(function (each) { made.append(each); }); } else if (child !== null && child !== undefined && child !== false) { made.append(child); }
    });
    return made;
  }
  function el(tag, attributes, children) { return fill(document.createElement(tag), attributes, children); }
  function svg(tag, attributes, children) { return fill(document.createElementNS(SVG, tag), attributes, children); }

  /* A number to so many figures, thousands parted by a narrow space. */
  function figures(value, digits) {
    if (!isFinite(value)) { return value > 0 ? "no upper end" : "no lower end"; }
    if (value === 0) { return "0"; }
    var places = (digits || 2) - 1 - Math.floor(Math.log10(Math.abs(value)));
    if (places <= 0) {
      var step = Math.pow(10, -places);
      return String(Math.round(value / step) * step).replace(/\B(?=(\d{3})+$)/g, "\u202f");
    }
    var text = value.toFixed(Math.min(12, places));
    return text.replace(/\.?0+$/, "");
  }
  function estimate(of) { return of.value ? figures(of.value) : "under " + figures(of.high); }
  function between(of) {
    if (!of.value) { return "none seen"; }
    if (isFinite(of.high) && of.low < of.value / 1000) { return "next to none to " + figures(of.high); }
    return isFinite(of.high) ? figures(of.low) + " to " + figures(of.high) : figures(of.low) + " or more";
  }
  function ratioWords(ratio) {
    var chance = "chance alone could do it: ";
    if (!isFinite(ratio.value)) { return ratio.low > 1 ? "more: met the second time only, at least " + figures(ratio.low) + " times as many" : chance + "met the second time only"; }
    if (ratio.value === 0) { return ratio.high < 1 ? "fewer: met the first time only, at most " + figures(ratio.high) + " times as many" : chance + "met the first time only"; }
    var limits = figures(ratio.value) + " times as many, between " + figures(ratio.low) + " and " + figures(ratio.high);
    return ratio.low > 1 ? "more: " + limits : ratio.high < 1 ? "fewer: " + limits : chance + limits;
  }

  /* The same in one or two words: more, fewer, or not told. */
  function sooner(ratio) { return ratio.low > 1 ? "more than then" : ratio.high < 1 ? "fewer than then" : "chance could do it"; }

  /* The microscope people entered anywhere on the site: {"field-number", low, high}. */
  function keptOptics() {
    try { return JSON.parse(window.localStorage.getItem(OPTICS)) || {}; } catch (error) { return {}; }
  }
  function keepOptics(name, value) {
    var own = keptOptics();
    own[name] = value;
    try { window.localStorage.setItem(OPTICS, JSON.stringify(own)); } catch (error) { /* shown on this page, not kept */ }
  }

  function download(name, type, text) {
    var address = URL.createObjectURL(new Blob([text], { type: type }));
    var link = el("a", { href: address, download: name });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(function () { URL.revokeObjectURL(address); }, 1000);
  }

  bench.dom = { el: el, svg: svg, figures: figures, estimate: estimate, between: between, ratioWords: ratioWords, sooner: sooner, keptOptics: keptOptics, keepOptics: keepOptics, download: download };
  if (typeof module === "object" && module.exports) { module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
