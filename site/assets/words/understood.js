// A whole text understood at once, with what is likely: the same answers as keytool/words/understood.py.
// wetmountUnderstood.understand(engine, data, trail, text, {typing}) gives {places: [{start, end, observation | picture | sample}], heard, called};
// .addedTo(trail, places, called) the trail with all of it.
(function (root, make) {
  if (typeof module === "object" && module.exports) module.exports = make(require("./fold.js"), require("./hear.js"), require("./likeness.js"));
  else root.wetmountUnderstood = make(root.wetmountFold, root.wetmountWords, root.wetmountLikeness);
})(typeof self !== "undefined" ? self : this, function (folding, words, like) {
  "use strict";
  const {WORD, plain, fold, tokens, byFirst, begins, has} = folding, {likeness, together} = like;
  const LEAST = 0.35, FIRM = 0.5, PLAIN = 0.8, ROUNDS = 3, NO_MEANING = 0.5, STRANGE = 0.4, FITTING = 1.3, BENT = 0.2, RIVAL = 0.8, AT_ONE_PLACE = 2, LONGER = 0.7, SAMPLE_REACH = 3;

  function understand(engine, data, trail, text, {typing = false} = {}) {
    const heard = words.hear(data, text, {typing});
    const isNew = !trail.pictures.length && !trail.saw.length && !trail.legs.some((leg) => leg.answers.length);
    const first = [isNew ? firstLook(data, text) : null, sampleOf(data, text)].filter(Boolean);
    const called = likeness(data, text);
    const before = addedTo(trail, first, called);
    let picked = chosen(heard.map((each) => [each.score, each])).map(([, each]) => [0, each]);
    for (let round = 0; round < ROUNDS; round += 1) {
      const chance = engine.chances(put(before, picked.map(([rate, each]) => observed(rate, each))));
      picked = withMeaning(engine, chosen(heard.map((each) => [weighed(engine, chance, each), each])));
    }
    const named = first.filter((each) => each.picture);
    const seen = picked.filter(([, each]) => !named.some((one) => one.start === each.start && one.end === each.end)).map(([rate, each]) => ({start: each.start, end: each.end, observation: observed(rate, each)}));
    return {places: [...first, ...seen].sort((a, b) => a.start - b.start || a.end - b.end), heard, called};
  }

  /** A trail with all that was understood. Of one character only what was told last is kept; a sample that is known already stays. */
  function addedTo(trail, places, called = []) {
    let next = {...trail, pictures: [...trail.pictures], saw: [...trail.saw]};
    if (called.length) next.called = together(trail.called || [], called);
    for (const each of places) {
      if (each.observation) next = put(next, [each.observation]);
      else if (each.picture && !next.pictures.includes(each.picture)) next.pictures.push(each.picture);
      else if (each.sample && !next.sample) next.sample = each.sample;
    }
    return next;
  }

  function put(trail, observations) {
    let saw = trail.saw;
    for (const each of observations) saw = [...saw.filter((other) => other.character !== each.character), each];
    return {...trail, saw};
  }

  /** The picture pointed at by what the thing is called at first. */
  function firstLook(data, text) {
    const pointed = data["first-looks"], said = new Map(tokens(text, data.spelling).map((each) => [each.start, each]));
    const all = [...text.matchAll(WORD)], bare = all.map((found) => plain(found[0]).replace(/'/g, ""));
    const phrases = byFirst(data.spelling.passing);
    let skip = -1, passing = false;
    for (const [at, found] of all.entries()) {
      const word = bare[at];
      skip = Math.max(skip, at + begins(phrases, bare, at)); // "heaps of spores" are spores
      if (at < skip) continue;
      if (data.spelling["not-first"].includes(word)) passing = true;
      else if (!/^[\p{L}\p{N}]/u.test(word) || data.spelling.breaks.includes(word)) passing = false;
      let token = said.get(found.index);
      if (!token || passing || token.aside || token.denied || !has(pointed, token.word)) continue;
      if (bare[at + 1] === "inside") continue;
      for (let next = nextWord(text, token.end, said); next && has(pointed, next.word) && !next.denied; next = nextWord(text, token.end, said)) token = next; // a spider web is a web
      return pointed[token.word] ? {start: token.start, end: token.end, picture: pointed[token.word]} : null;
    }
    return null;
  }

  /** The word that follows at once, without a stop between. */
  function nextWord(text, end, said) {
    let start = end;
    while (text[start] === " " || text[start] === "-") start += 1;
    return start > end ? said.get(start) : undefined;
  }

  /** The kind of sample the drop is from, where that is said. */
  function sampleOf(data, text) {
    const all = [...text.matchAll(WORD)].map((found) => ({word: plain(found[0]).replace(/'/g, ""), start: found.index, end: found.index + found[0].length}));
    const folded = all.map((each) => fold(each.word, data.spelling.forms));
    let best = null;
    for (const [phrase, id] of data.samples) {
      const size = phrase.length;
      for (let at = 0; at + size <= all.length; at += 1) {
        if (!phrase.every((word, more) => folded[at + more] === word) || (best && size <= best.size)) continue;
        const lead = ` ${all.slice(Math.max(0, at - SAMPLE_REACH), at).map((each) => each.word).join(" ")} `;
        if (data.spelling["sample-before"].some((before) => lead.includes(` ${before} `))) best = {size, at, id};
      }
    }
    return best && {start: all[best.at].start, end: all[best.at + best.size - 1].end, sample: best.id};
  }

  function weighed(engine, chance, heard) {
    const {means, likely} = engine.fits(chance, observed(1, heard));
    let factor = NO_MEANING + (1 - NO_MEANING) * means;
    if (heard.says !== "unsure") factor *= Math.min(FITTING, Math.max(STRANGE, likely ** BENT));
    return Math.floor(heard.score * factor * 1e6 + 0.5) / 1e6;
  }

  /** Of each character one reading, the best; of the same words no more than two, and none that is much weaker than another. */
  function chosen(given) {
    const order = (a, b) => (a < b ? -1 : a > b ? 1 : 0);
    const rated = [...given].sort((a, b) => b[0] - a[0] || order(a[1].says !== "is", b[1].says !== "is") || order(a[1].character, b[1].character) || order(a[1].state, b[1].state));
    const done = new Map();
    for (const [rate, each] of rated) {
      if (rate < LEAST || each.score < LEAST || done.has(each.character)) continue;
      const around = rated.filter(([, one]) => one.start <= each.start && each.end <= one.end);
      if (around.some(([other]) => rate < RIVAL * other)) continue;
      if (around.some(([other, one]) => one.character === each.character && one.end - one.start > each.end - each.start && other >= LONGER * rate)) continue;
      if ([...done.values()].filter(([, one]) => one.start === each.start && one.end === each.end).length < AT_ONE_PLACE) done.set(each.character, [rate, each]);
    }
    return [...done.values()];
  }

  /** Readings of which none makes another meaningless: a mouth that is shut has no straight spear. Of two the surer stays. */
  function withMeaning(engine, picked) {
    const told = new Map(picked.filter(([, each]) => each.says === "is" && each.state).map(([rate, each]) => [each.character, [rate, each.state]]));
    const left = new Set();
    for (const [rate, each] of picked) {
      for (const [name, states] of Object.entries(engine.where(each.character))) {
        if (told.has(name) && !states.includes(told.get(name)[1])) left.add(told.get(name)[0] >= rate || each.says !== "is" ? each.character : name);
      }
    }
    return picked.filter(([, each]) => !left.has(each.character));
  }

  function observed(rate, heard) {
    if (heard.says === "unsure") return {character: heard.character};
    if (heard.state) {
      const seen = {character: heard.character, states: [heard.state], negated: heard.says === "not"};
      const isPlain = heard.score >= PLAIN && heard.words > 1;
      if (heard.doubted || (Math.min(rate, heard.score) < FIRM && !isPlain)) seen.pointed = true;
      return seen;
    }
    return {character: heard.character, low: heard.low, high: heard.high, about: heard.low === heard.high};
  }

  return {understand, addedTo, firstLook, sampleOf};
});
