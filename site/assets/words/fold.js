// One form for the many spellings of a word, and the tokens of a text with what is denied and what was not made out.
// The same as keytool/words/fold.py, letter for letter.
(function (root, make) {
  if (typeof module === "object" && module.exports) module.exports = make();
  else root.wetmountFold = make();
})(typeof self !== "undefined" ? self : this, function () {
  "use strict";
  const WORD = /[\p{L}\p{N}]+(?:['’][\p{L}\p{N}]+)*|[.;:!?\n]|,/gu;
  const SENTENCE_ENDS = ".;:!?\n";
  const REACH = 5;
  const has = (object, name) => Object.prototype.hasOwnProperty.call(object, name);

  function plain(word) {
    return word.normalize("NFKD").replace(/\p{Mn}/gu, "").toLowerCase().replace(/\u03bc/g, "u").replace(/’/g, "'");
  }

  // A page's words are folded again and again, so each is remembered for as long as the forms are the same.
  let known = new Map(), knownForms = null;

  function fold(word, forms) {
    if (forms !== knownForms || known.size > 20000) [known, knownForms] = [new Map(), forms];
    if (!known.has(word)) known.set(word, folded(word, forms));
    return known.get(word);
  }

  function folded(word, forms) {
    let here = plain(word);
    if (here.endsWith("'s")) here = here.slice(0, -2);
    here = here.replace(/'/g, "");
    if (has(forms, here)) return formed(forms[here]);
    const bare = singular(here);
    return has(forms, bare) ? formed(forms[bare]) : letters(stem(bare));
  }

  function formed(form) {
    return form.startsWith("not ") ? "not " + letters(stem(form.slice(4))) : letters(stem(form));
  }

  function singular(word) {
    if (word.length < 4 || !word.endsWith("s")) return word;
    if (word.endsWith("ies") && word.length > 4) return word.slice(0, -3) + "y";
    if (/(?:sses|shes|ches|xes|zes)$/.test(word)) return word.slice(0, -2);
    return /(?:ss|us|is|as)$/.test(word) ? word : word.slice(0, -1);
  }

  function stem(word) {
    const size = word.length;
    if (size > 4 && word.endsWith("ae")) return word.slice(0, -1);
    if (size > 5 && word.endsWith("um")) return word.slice(0, -2) + "a";
    if (size > 4 && word.endsWith("i")) return word.slice(0, -1) + "us";
    for (const ending of ["ing", "ed"]) {
      const base = word.slice(0, -ending.length);
      if (word.endsWith(ending) && !word.endsWith("eed") && base.length > 2 && /[aeiouy]/.test(base)) return mended(base);
    }
    if (/(?:bb|gg|dd|pp|zz|ck|nk)ly$/.test(word)) return word.slice(0, -1) + "e";
    if (size > 5 && word.endsWith("ly")) return word.slice(0, -2);
    if (size > 6 && word.endsWith("ish")) return mended(word.slice(0, -3));
    if (size > 4 && word.endsWith("y") && !"aeiou".includes(word[size - 2])) return mended(word.slice(0, -1));
    return word;
  }

  function mended(base) {
    if (/([bdgkmnprt])\1$/.test(base)) return base.slice(0, -1);
    const needsE = /(?:[bcdgkptz]l|nc|rv|lv|dg|lg|rg|ls|v|z|[aeiouy][^aeiouy]+at)$/.test(base);
    return needsE || /^[^aeiouy]*[aeiouy][^aeiouywx]$/.test(base) ? base + "e" : base;
  }

  function letters(word) {
    let here = word.replace(/ae/g, "e").replace(/oe(?=.)/g, "e");
    if (here.length > 4) here = here.replace(/our$/, "or").replace(/([^aeiou])re$/, "$1er");
    here = here.replace(/oul(?=[dt])/g, "ol").replace(/ph/g, "f").replace(/rrh/g, "r").replace(/rh/g, "r").replace(/ck/g, "k");
    here = here.replace(/c(?=[eiy])/g, "s").replace(/c(?!h)/g, "k").replace(/^ps/, "s").replace(/z/g, "s").replace(/y/g, "i");
    return here.replace(/(.)\1+/gu, "$1");
  }

  const prepare = new WeakMap();

  /** Phrases as lists of words, by their first word. */
  function byFirst(phrases) {
    const found = new Map();
    for (const phrase of phrases) {
      const words = phrase.split(" ");
      found.set(words[0], [...(found.get(words[0]) || []), words]);
    }
    return found;
  }

  /** How many words the phrase has that begins at a word; 0 where none does. */
  function begins(phrases, said, at) {
    const found = (phrases.get(said[at]) || []).find((each) => each.every((part, more) => said[at + more] === part));
    return found ? found.length : 0;
  }

  function prepared(spelling) {
    if (!prepare.has(spelling)) {
      const kept = new Set(spelling.kept);
      prepare.set(spelling, {
        stops: new Set(spelling.stops.filter((each) => !kept.has(each))), negating: new Set(spelling.negating),
        breaks: new Set(spelling.breaks), counts: spelling["count-words"],
        ...Object.fromEntries(["unsure", "doubtful", "passing", "asides", "asides-back", "negating-back"].map((name) => [name, byFirst(spelling[name] || [])])),
        agreeing: new Set(spelling.agreeing || []),
      });
    }
    return prepare.get(spelling);
  }

  /** The words of a text that say something: {word, denied, unclear, sentence, clause, start, end, doubted, aside}. */
  function tokens(text, spelling) {
    const words = [...text.matchAll(WORD)].map((found) => ({word: found[0], start: found.index, end: found.index + found[0].length}));
    const said = words.map((each) => plain(each.word).replace(/'/g, ""));
    const ready = prepared(spelling), {stops, negating, breaks, counts} = ready;
    const done = [];
    let sentence = 0, clause = 0, reach = 0, unclear = false, aside = false, skip = -1;
    const doubted = new Set(), around = new Set(), turned = new Set();
    words.forEach((word, at) => {
      const here = said[at];
      if (begins(ready.doubtful, said, at)) doubted.add(clause);
      if (begins(ready["asides-back"], said, at)) around.add(clause);
      if (begins(ready.asides, said, at)) aside = true;
      if (at < skip) return;
      const ends = SENTENCE_ENDS.includes(here);
      if (ends || here === "," || breaks.has(here)) {
        if (here === "?") {
          const answer = said.slice(at + 1).find((each) => each !== "\n");
          const marked = negating.has(answer) ? turned : ready.agreeing.has(answer) ? null : doubted;
          if (marked) for (const each of done) if (each.sentence === sentence) marked.add(each.clause);
        }
        reach = 0;
        unclear = aside = false;
        clause += 1;
        if (ends) sentence += 1;
        return;
      }
      const phrase = begins(ready.unsure, said, at);
      if (phrase) {
        reach = REACH;
        unclear = true;
        skip = at + phrase;
        return;
      }
      const passing = begins(ready.passing, said, at);
      if (passing) {
        skip = at + passing;
        return;
      }
      const back = begins(ready["negating-back"], said, at);
      if (back) {
        for (const each of done) if (each.clause === clause) each.denied = true;
        skip = at + back;
        return;
      }
      if (negating.has(here)) {
        reach = REACH;
        return;
      }
      if (stops.has(here)) return;
      const less = here.length > 6 && here.endsWith("less") && !has(spelling.forms, here);
      const count = here.endsWith("s") && !has(counts, here) ? here.slice(0, -1) : here;
      const form = has(counts, count) ? String(counts[count]) : fold(less ? here.slice(0, -4) : here, spelling.forms);
      const isTurned = less || form.startsWith("not ");
      const denied = (reach > 0) !== isTurned;
      done.push({
        word: form.startsWith("not ") ? form.slice(4) : form,
        denied, unclear: unclear && reach > 0, sentence, clause, start: word.start, end: word.end, doubted: false, aside,
      });
      if (reach > 0) reach -= 1;
    });
    const held = new Set(done.map((each) => each.clause)); // "..., I think" speaks of what stands before
    for (const each of [...doubted]) if (!held.has(each)) doubted.add(Math.max(...[...held].filter((other) => other < each), -1));
    for (const each of done) {
      each.denied = each.denied || turned.has(each.clause);
      each.doubted = doubted.has(each.clause);
      each.aside = each.aside || around.has(each.clause);
    }
    return done;
  }

  /** The folded words of a text by which it is searched: those that say something, or all of them where none does; "no" before what is denied. */
  function keywords(text, spelling) {
    const said = tokens(text, spelling).flatMap((each) => (each.denied && !each.unclear ? ["no", each.word] : [each.word]));
    if (said.length) return said;
    const words = (text.match(WORD) || []).filter((word) => /^[\p{L}\p{N}]/u.test(word));
    return words.map((word) => fold(word, spelling.forms)).map((word) => (word.startsWith("not ") ? word.slice(4) : word));
  }

  /** How many letters were left out, put in, changed or swapped; more than `allowed` may be said too low. */
  function slips(one, other, allowed) {
    let before = [], row = Array.from({length: other.length + 1}, (_, at) => at);
    for (let i = 1; i <= one.length; i += 1) {
      const above = row;
      row = [i];
      for (let j = 1; j <= other.length; j += 1) {
        let least = Math.min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) least = Math.min(least, before[j - 2] + 1);
        row.push(least);
      }
      if (Math.min(...row) > allowed) return allowed + 1;
      before = above;
    }
    return row[row.length - 1];
  }

  /** The known word one slip away, two for long words: the nearest, then the first by the alphabet. Empty when there is none. */
  function nearest(word, known) {
    const allowed = word.length < 4 ? 0 : word.length < 8 ? 1 : 2;
    let least = allowed + 1, best = "";
    if (allowed) {
      for (const other of known) {
        if (Math.abs(other.length - word.length) > allowed) continue;
        const far = slips(word, other, allowed);
        if (far < least || (far === least && far <= allowed && other < best)) [least, best] = [far, other];
      }
    }
    return best;
  }

  return {WORD, plain, fold, letters, tokens, keywords, byFirst, begins, slips, nearest, has};
});
