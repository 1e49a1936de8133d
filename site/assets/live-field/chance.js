/* Chance for a live field: seeded streams of numbers, and draws from ranges.
 *
 * The live field is a set of plain scripts that share the one object `WetmountField`; they are listed
 * in order in keytool/pages/movement.py and work from a folder as well as from a web server.
 * Lengths are in µm, times in seconds, angles in radians, x to the right and y down from the middle
 * of the field. Figures of biology come from the caller; there are none in these scripts.
 */
(function (field) {
  "use strict";

  /* A stream of numbers in 0..1 (mulberry32), fixed by its seed. */
  field.chance = function (seed) {
    var a = seed >>> 0;
    return function () {
      a = (a + 0x6D2B79F5) | 0;
      var t = Math.imul(a ^ (a >>> 15), 1 | a);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
  };

  /* A seed from words (FNV-1a), so that one body's chance does not hang on which others are there. */
  field.seedOf = function (words) {
    var hash = 0x811c9dc5;
    for (var i = 0; i < words.length; i++) { hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193); }
    return hash >>> 0;
  };

  /* A draw from the standard normal distribution; each pair of draws gives two. */
  field.normal = function (b) {
    if (b.spare !== null) {
      var kept = b.spare;
      b.spare = null;
      return kept;
    }
    var r = Math.sqrt(-2 * Math.log(1 - b.rng()));
    var angle = 2 * Math.PI * b.rng();
    b.spare = r * Math.sin(angle);
    return r * Math.cos(angle);
  };

  field.exponential = function (b, mean) { return -mean * Math.log(1 - b.rng()); };

  /* The value at share `u` of a range, evenly in the logarithm: sizes and speeds are skewed. */
  field.at = function (range, u) {
    if (typeof range === "number") { return range; }
    var low = range[0] > 0 ? range[0] : range[1] / 20;
    return range[1] > 0 ? low * Math.pow(range[1] / low, u) : 0;
  };

  /* A new draw of one of a body's figures. */
  field.pick = function (b, name) { return field.at(b.ranges[name], b.rng()); };

  field.either = function (b) { return b.rng() < 0.5 ? -1 : 1; };
})(self.WetmountField = self.WetmountField || {});
