// Typed lay words as ranked observations: the same answers as keytool/words/hear.py and sizes.py.
// wetmountWords.hear(data, text, {among, typing}) gives [{says, character, state, low, high, score, start, end, doubted, words}], the surest first.
(function (root, make) {
  if (typeof module === "object" && module.exports) module.exports = make(require("./fold.js"));
  else root.wetmountWords = make(root.wetmountFold);
})(typeof self !== "undefined" ? self : this, function (folding) {
  "use strict";
  const {plain, fold, tokens, nearest, has} = folding;
  const SURE = 0.5, LEAST = 0.2, ALIKE = 0.7, SLIP = 0.85, BEGUN = 0.8, HALF = 150;
  const OTHER_PART = 0.55, OTHER_KIND = 0.6, OWN_WORD = 1.1, DENIED = 0.75, CHATTER = 0.25, DENIES = 0.8, MOST = 2000, NEARLY = 0.95, RIVAL = 0.7, TOPIC_ONLY = 0.45, COMMON = 0.65, MANY_STATES = 20, TOO_LARGE = 1.5, MOST_AT_ONE_PLACE = 2, CLOSE = 1, FAR = 3, SCATTERED = 0.65, STREWN = 0.4;

  // ---- sizes
  const LEXEME = /[½¼¾]|^\.[0-9]+|\p{Nd}+(?:[.,]\p{Nd}+)?|(?:(?![½¼¾])[\p{L}\p{No}\p{Nl}])+|[^\s\p{L}\p{N}]/gu;
  const NUMBER = /^(?:\.[0-9]+|[0-9]+(?:[.,][0-9]+)?)$/, SIGNS = {"½": 0.5, "¼": 0.25, "¾": 0.75};
  const JOINS = ["-", "–", "to", "and", "or"], BETWEEN = ["by", "x", "×"], STOPS = [",", ".", ";"];
  const PASSED = ["of", "a", "an", "the", "in", "each", "every", "per", "/", "1", "one"];

  const BARE_POINT = /(^|[^\p{L}\p{N}_.,])\.(?=[0-9])/gu, BEFORE_A_PART = ["with", "on", "in", "at", "of", "from", "round", "around", "near", "through"];

  const POWER = /\b(100|200|400|1000) ?[x\u00d7]/i, FIELD = ["field", "view"], FIELD_REACH = 4;

  /** Which part of the field of view is named here, and where that ends: "a third of the field", "half my view". */
  function shareOfField(said, at, spelling) {
    if (!has(spelling["parts-of-one"], said(at))) return null;
    for (let behind = at + 1; behind <= at + FIELD_REACH; behind += 1) {
      if (FIELD.includes(said(behind))) return {part: spelling["parts-of-one"][said(at)], behind};
      if (!["of", "the", "my", "a", "whole"].includes(said(behind))) return null;
    }
    return null;
  }

  function sizes(text, data) {
    const spelling = data.spelling;
    text = text.replace(BARE_POINT, (all, before) => (before ? "0." : "."));
    const lexemes = [...text.matchAll(LEXEME)].map((found) => ({text: has(SIGNS, found[0]) ? found[0] : plain(found[0]), start: found.index, end: found.index + found[0].length}));
    const said = (at) => (at >= 0 && at < lexemes.length ? lexemes[at].text : "");
    const unitOf = {};
    for (const [unit, names] of Object.entries(spelling.units)) for (const name of names) unitOf[plain(name)] = spelling.sizes[unit];
    const kind = lexemes.map((lexeme) => fold(lexeme.text, spelling.forms)).find((each) => has(data.kinds, each)) || "";
    const found = [];
    const power = POWER.exec(text), field = power ? data["field-once"] / Number(power[1]) : 0;
    for (let at = 0; at < lexemes.length;) {
      const share = field ? shareOfField(said, at, spelling) : null;
      if (share) {
        found.push({character: "body-length", low: share.part * field, high: share.part * field, score: 0.55, start: lexemes[at].start, end: lexemes[share.behind].end});
        at = share.behind + 1;
        continue;
      }
      const read = readSize(said, at, spelling, unitOf);
      if (!read) {
        at += 1;
        continue;
      }
      const {values, by, after, isSpeed} = read;
      if (!isSpeed && isDistance(said, at, after, spelling)) {
        at = after;
        continue;
      }
      const start = lexemes[at].start;
      let end = lexemes[after - 1].end;
      let [along, told] = isSpeed || by ? ["speed", -1] : alongOf(said, at, after, spelling);
      if (told >= after) end = lexemes[told].end;
      const across = spelling["measured-across"];
      if (!along && has(across, kind) && Math.max(...values) < across[kind]) along = "wide";
      const ways = by && !isSpeed ? [["long", values.slice(0, 1)], ["wide", values.slice(1)]] : [[along, values]];
      for (const [way, given] of ways) {
        const [low, high] = bounds(said, at, given, spelling);
        found.push({character: characterOf(said, at, way || "long", given, data), low, high, score: way ? 0.9 : 0.55, start, end});
      }
      at = after;
    }
    return found;
  }

  /** Whether it is said how far off or how far apart something is, which is no size. */
  function isDistance(said, at, after, spelling) {
    const first = [at - 1, at - 2].filter((each) => each >= 0).map(said).find((word) => !["about", "some", "~"].includes(word)) || "";
    return spelling["distance-before"].includes(first) || [after, after + 1, after + 2].some((each) => spelling["distance-behind"].includes(said(each)));
  }

  function readSize(said, at, spelling, unitOf) {
    const one = readValue(said, at, spelling);
    if (!one) return null;
    let [value, after] = one, unit = 0;
    if (has(unitOf, said(after))) {
      unit = unitOf[said(after)];
      after += 1;
    }
    const join = said(after);
    if (BETWEEN.includes(join) || (JOINS.includes(join) && !unit)) {
      const other = readValue(said, after + 1, spelling);
      if (other && has(unitOf, said(other[1]))) {
        const second = unitOf[said(other[1])];
        const [end, isSpeed] = perSecond(said, other[1] + 1, spelling);
        return {values: [value * (unit || second), other[0] * second], by: BETWEEN.includes(join), after: end, isSpeed};
      }
    }
    if (!unit) return null;
    const [end, isSpeed] = perSecond(said, after, spelling);
    return {values: [value * unit], by: false, after: end, isSpeed};
  }

  function readValue(said, at, spelling) {
    const text = said(at), parts = spelling["parts-of-one"], counts = spelling["count-words"];
    if (text === "a" || text === "an") {
      const other = said(at + 1);
      if (Object.values(spelling.units).some((names) => names.some((name) => plain(name) === other))) return [1, at + 1];
      return has(counts, other) && counts[other] >= 100 ? readValue(said, at + 1, spelling) : null;
    }
    if (has(SIGNS, text)) return [SIGNS[text], at + 1];
    if (NUMBER.test(text)) {
      if (said(at + 1) === "/" && NUMBER.test(said(at + 2))) {
        const below = figures(said(at + 2));
        return below ? [figures(text) / below, at + 3] : null;
      }
      return has(SIGNS, said(at + 1)) ? [figures(text) + SIGNS[said(at + 1)], at + 2] : [figures(text), at + 1];
    }
    if (has(counts, text)) {
      let value = counts[text], after = at + 1;
      if (has(counts, said(after)) && counts[said(after)] >= 100 && value < 100) {
        value *= counts[said(after)];
        after += 1;
      }
      if (said(after) === "and" && said(after + 1) === "a" && has(parts, said(after + 2))) return [value + parts[said(after + 2)], after + 3];
      return [value, after];
    }
    if (has(parts, text)) {
      let after = at + 1;
      while (["of", "a", "an"].includes(said(after))) after += 1;
      return [parts[text], after];
    }
    return null;
  }

  function figures(text) {
    const comma = text.indexOf(",");
    return comma >= 0 && text.length - comma === 4 ? Number(text.replace(",", "")) : Number(text.replace(",", "."));
  }

  function perSecond(said, after, spelling) {
    let here = after;
    while (PASSED.includes(said(here))) here += 1;
    return here > after && spelling["per-second"].includes(said(here)) ? [here + 1, true] : [after, false];
  }

  function alongOf(said, at, after, spelling) {
    const ways = {};
    for (const [way, words] of Object.entries(spelling.along)) for (const word of words) ways[word] = way;
    const behind = [after, after + 1, after + 2], before = [1, 2, 3, 4, 5].map((back) => at - back).filter((place) => place >= 0);
    for (const places of [behind, before]) {
      for (const place of places) {
        if (STOPS.includes(said(place))) break;
        if (has(ways, said(place))) return [ways[said(place)], place];
      }
    }
    return ["", -1];
  }

  function bounds(said, at, values, spelling) {
    for (const place of [at - 1, at - 2, at - 3].filter((each) => each >= 0)) {
      if (STOPS.includes(said(place))) break;
      if (spelling.above.includes(said(place))) return [Math.max(...values), null];
      if (spelling.below.includes(said(place))) return [null, Math.max(...values)];
    }
    return [Math.min(...values), Math.max(...values)];
  }

  function characterOf(said, at, along, values, data) {
    const known = new Set([...data.sizes.flatMap(([, , of, notOf]) => [...of, ...notOf]), ...Object.keys(data.kinds), "bodi"]);
    const fitting = data.sizes.filter((each) => each[1] === along);
    const owners = new Set(fitting.flatMap(([, , of]) => of));
    let subject = "", passedStop = false;
    for (let place = at - 1; place >= 0 && said(place) !== "."; place -= 1) {
      if (subject && STOPS.includes(said(place))) break;
      passedStop = passedStop || STOPS.includes(said(place));
      if (isLikened(said, place) || (passedStop && [1, 2, 3].some((back) => place >= back && BEFORE_A_PART.includes(said(place - back))))) continue;
      const folded = fold(said(place), data.spelling.forms);
      if (owners.has(folded) || (!subject && known.has(folded))) subject = folded;
      if (owners.has(subject)) break;
    }
    const own = fitting.filter(([, , of, , most]) => of.includes(subject) && Math.max(...values) <= TOO_LARGE * most);
    const isPart = fitting.some(([, , of]) => of.includes(subject));
    const rest = fitting.filter(([, , of, notOf]) => !of.length && (isPart || !notOf.includes(subject)));
    return ((own.length ? own : rest)[0] || [""])[0];
  }

  /** Whether a word only says what something is like. */
  function isLikened(said, at) {
    for (let back = 1; back <= 4; back += 1) {
      if (at < back || STOPS.includes(said(at - back))) return false;
      if (said(at - back) === "like") return true;
    }
    return false;
  }

  // ---- phrases
  function hear(data, text, {among = null, typing = false} = {}) {
    text = text.slice(0, MOST);
    const blank = (from, start, end) => from.slice(0, start) + " ".repeat(end - start) + from.slice(end);
    let bare = text;
    for (const token of tokens(text, data.spelling)) if (token.aside) bare = blank(bare, token.start, token.end);
    const measured = sizes(bare, data);
    for (const size of measured) bare = blank(bare, size.start, size.end);
    const said = tokens(bare, data.spelling).filter((token) => !token.aside);
    const words = said.map((token) => wordOf(data, token, typing && token.end === bare.length));
    const topics = new Set(words.filter((word) => !word.token.denied).flatMap((word) => (has(data.kinds, word.token.word) ? data.kinds[word.token.word] : [])));
    const best = new Map();
    for (const each of [...measured].sort((a, b) => b.score - a.score)) {
      const key = `is ${each.character} `;
      if (each.character && (!among || among.includes(each.character)) && !best.has(key))
        best.set(key, {says: "is", character: each.character, state: "", low: each.low, high: each.high, score: each.score, start: each.start, end: each.end, doubted: false, words: 1});
    }
    for (const span of spans(words)) {
      const meant = meantBy(data, span);
      const numbers = new Set();
      for (const word of meant) for (const number of data.found[word]) numbers.add(number);
      for (const number of [...numbers].sort((a, b) => a - b)) {
        const [character, state, phrases] = data.states[number];
        if (among && !among.includes(character)) continue;
        for (const heard of held(data, span, character, state, phrases, topics, meant)) {
          const key = `${heard.says} ${heard.character} ${heard.state}`;
          if (!best.has(key) || heard.score > best.get(key).score) best.set(key, heard);
        }
      }
    }
    const order = (a, b) => (a < b ? -1 : a > b ? 1 : 0);
    return [...best.values()].filter((each) => each.score >= LEAST)
      .sort((a, b) => b.score - a.score || order(a.character, b.character) || order(a.state, b.state));
  }

  function meantBy(data, span) {
    const meant = new Set();
    for (const said of span) {
      for (const word of said.means.keys()) if (has(data.found, word)) meant.add(word);
      if (said.begun) for (const word of Object.keys(data.found)) if (word.startsWith(said.begun)) meant.add(word);
    }
    return meant;
  }

  const bareWords = new Map();

  function bareOf(phrase) {
    if (!bareWords.has(phrase)) bareWords.set(phrase, phrase.split(" ").map((each) => each.replace(/^[!?]+/, "")));
    return bareWords.get(phrase);
  }

  function* spans(words) {
    for (const level of ["clause", "sentence"]) {
      const grouped = new Map();
      for (const word of words) {
        const number = word.token[level];
        if (!grouped.has(number)) grouped.set(number, []);
        grouped.get(number).push(word);
      }
      for (const span of grouped.values())
        if (level === "clause" || span[0].token.clause !== span[span.length - 1].token.clause) yield span;
    }
  }

  function wordOf(data, token, unfinished) {
    const {weights, groups} = data;
    const isNoise = /^[^0-9]$/.test(token.word) && token.end - token.start > 2; // "zzz" folds to the letter of the S waves
    const known = !isNoise && (has(weights, token.word) || has(groups, token.word)) ? [[token.word, 1]] : [];
    let begun = "";
    if (!known.length && unfinished && token.word.length > 1) begun = token.word;
    else if (!known.length) {
      const near = nearest(token.word, Object.keys(weights));
      if (near) known.push([near, SLIP]);
    }
    const means = new Map(known);
    for (const [word, factor] of known) {
      if (!has(groups, word)) continue;
      for (const [other, numbers] of Object.entries(groups))
        if (!means.has(other) && numbers.some((number) => groups[word].includes(number))) means.set(other, factor * ALIKE);
    }
    const weighed = known.filter(([word]) => has(weights, word)).map(([word]) => weights[word]);
    return {token, means, begun, weight: weighed.length ? Math.max(...weighed) : 400};
  }

  function telling(data, phrase, share, said, own) {
    if (share < 1 && said.every((word) => own.includes(word))) return TOPIC_ONLY;
    const word = phrase.replace(/^[!?]+/, "");
    return has(data.found, word) && data.found[word].length > MANY_STATES && !said.some((each) => own.includes(each)) ? COMMON : 1;
  }

  function held(data, span, character, state, phrases, topics, meant) {
    const whole = span.reduce((sum, word) => sum + word.weight, 0);
    const best = new Map(), touched = new Map();
    for (const [weight, phrase] of phrases) {
      if (!bareOf(phrase).some((word) => meant.has(word))) continue;
      const {says, share, matched} = match(data, span, phrase);
      if (says === "is") for (const [at, factor] of matched) touched.set(at, Math.max(touched.get(at) || 0, factor));
      if (!share || (says === "not" && share < DENIES)) continue;
      let told = 0;
      for (const [at, factor] of matched) told += span[at].weight * factor;
      let score = share * share * (told / (told + HALF)) * (1 - CHATTER + CHATTER * (told / whole)) * weight / 100;
      const places = [...matched.keys()];
      const apart = Math.max(...places) - Math.min(...places) + 1 - places.length;
      score *= apart <= CLOSE ? 1 : apart <= FAR ? SCATTERED : STREWN;
      score *= says === "unsure" ? 1 : telling(data, phrase, share, places.map((at) => span[at].token.word), data.characters[character].words);
      if (score > (best.has(says) ? best.get(says).score : 0)) best.set(says, {score, words: [...matched.keys()].sort((a, b) => a - b).map((at) => span[at])});
    }
    const heard = [];
    for (const [says, {score: plainScore, words}] of best) {
      let score = plainScore;
      if (says === "is") {
        let union = 0;
        for (const [at, factor] of touched) union += span[at].weight * factor;
        union /= whole;
        score += 0.3 * (1 - score) * union * score;
      }
      score *= fitting(data, span, words, data.characters[character], topics) * (says === "is" ? 1 : DENIED);
      heard.push({
        says, character, state: says === "unsure" ? "" : state, low: null, high: null,
        score: Math.floor(Math.min(score, 1) * 1000 + 0.5) / 1000,
        start: Math.min(...words.map((word) => word.token.start)), end: Math.max(...words.map((word) => word.token.end)), doubted: words.some((word) => word.token.doubted), words: words.length,
      });
    }
    return heard;
  }

  function match(data, span, phrase) {
    let total = 0, met = 0, denied = 0, unclear = 0, agreed = 0;
    const matched = new Map();
    for (const each of phrase.split(" ")) {
      const sign = "!?".includes(each[0]) ? each[0] : "";
      const word = sign ? each.slice(1) : each;
      const weight = data.weights[word];
      total += weight;
      let here = -1, factor = 0;
      span.forEach((said, at) => {
        const means = said.means.has(word) ? said.means.get(word) : said.begun && word.startsWith(said.begun) ? BEGUN : 0;
        if (means > factor) [here, factor] = [at, means];
      });
      if (here < 0) continue;
      const token = span[here].token;
      if (sign && !token.denied) continue;
      const opposite = sign ? sign === "!" && token.unclear : token.denied;
      met += weight * factor;
      matched.set(here, Math.max(matched.get(here) || 0, factor));
      if (opposite) {
        denied += 1;
        if (token.unclear) unclear += 1;
      } else agreed += 1;
    }
    if (!matched.size) return {says: "is", share: 0, matched};
    if (!denied) return {says: "is", share: met / total, matched};
    if (agreed && denied < matched.size) return {says: "is", share: 0, matched: new Map()};
    return {says: unclear ? "unsure" : "not", share: met / total, matched};
  }

  function fitting(data, span, words, about, topics) {
    const spoken = span.filter((word) => data.parts.includes(word.token.word) && !word.token.denied);
    let factor = 1;
    if (spoken.length && !spoken.some((word) => about.words.includes(word.token.word) || words.includes(word))) factor *= OTHER_PART;
    if (topics.size && about.themes.length && !about.themes.some((theme) => topics.has(theme))) factor *= OTHER_KIND;
    return factor * (span.some((word) => about.words.includes(word.token.word)) ? OWN_WORD : about.wide / 100);
  }

  /** What may be taken unasked: sure, the best of each character, and said with words that stand for little else. */
  function taken(heard) {
    const sure = heard.filter((each) => each.score >= SURE), done = new Map();
    for (const each of [...sure.filter((one) => one.says === "is"), ...sure.filter((one) => one.says !== "is")]) {
      const around = sure.filter((other) => other.start <= each.start && each.end <= other.end && other.says === each.says);
      const equals = around.filter((other) => other.score >= RIVAL * each.score && other.start === each.start && other.end === each.end);
      const isBest = around.every((other) => each.score >= NEARLY * other.score);
      if (isBest && new Set(equals.map((other) => other.character)).size <= MOST_AT_ONE_PLACE && !done.has(each.character)) done.set(each.character, each);
    }
    return [...done.values()];
  }

  return {hear, taken, SURE};
});
