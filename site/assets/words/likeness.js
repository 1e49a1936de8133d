// What a text is like as a whole: the same as keytool/words/likeness.py gives, counted in whole numbers.
// wetmountLikeness.likeness(data, text) gives [[id, tenths of a bit]], the likest first; .together(one, other) what two texts are like.
(function (root, make) {
  if (typeof module === "object" && module.exports) module.exports = make(require("./fold.js"));
  else root.wetmountLikeness = make(root.wetmountFold);
})(typeof self !== "undefined" ? self : this, function (folding) {
  "use strict";
  const SCALE = 1000000, SAID = 10, DOUBTED = 5, TAKEN = 24;
  const opened = new WeakMap();

  const order = (a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0);

  /** The entries with their words, and how many of them each word stands in; read once for each library. */
  function docsOf(of) {
    if (opened.has(of)) return opened.get(of);
    const held = new Map();
    const docs = of.docs.map(([id, size, names, told]) => {
      const split = names ? names.split(";").map((name) => name.split(" ")) : [], own = new Set(split.flat()), summary = new Set(told.split(" "));
      for (const word of new Set([...own, ...summary])) held.set(word, (held.get(word) || 0) + 1);
      return {id, size, names: split, own, summary};
    });
    opened.set(of, {docs, held});
    return opened.get(of);
  }

  function likeness(data, text) {
    const of = data.likeness, {docs, held} = docsOf(of), groups = new Set(of.groups), tells = new Map(), said = new Map();
    for (const each of folding.tokens(text, data.spelling)) {
      if (!each.denied && !each.unclear && !each.aside) said.set(each.word, Math.max(said.get(each.word) || 0, each.doubted ? DOUBTED : SAID));
    }
    for (const [word, surely] of said) if (held.has(word)) tells.set(word, surely * of.rare[held.get(word)]);
    const found = [];
    for (const {id, size, names, own, summary} of docs) {
      let words = 0, whole = 0;
      for (const [word, much] of tells) words += (own.has(word) ? 10 * much : 0) + (summary.has(word) ? of.summary * much : 0);
      if (!words) continue;
      for (const name of names) if (name.every((word) => tells.has(word))) whole = Math.max(whole, name.reduce((total, word) => total + tells.get(word), 0));
      let score = words * size + 100 * of.name * whole;
      if (groups.has(id)) score = Math.floor((score * of.group) / 10);
      const bits = Math.min(of.most, Math.floor(((score - of.least) * of.bits) / SCALE));
      if (bits > 0) found.push([id, bits]);
    }
    return found.sort(order).slice(0, TAKEN);
  }

  function together(one, other) {
    const most = new Map(one);
    for (const [id, bits] of other) most.set(id, Math.max(bits, most.get(id) || 0));
    return [...most].sort(order).slice(0, TAKEN);
  }

  return {likeness, together};
});
