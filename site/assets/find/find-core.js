// What a typed search finds: wetmountFind.open(MiniSearch, folding, data) gives {find(text) -> {hits, shownFor, nearest}}. No page in here.
// Matching of words is MiniSearch's; here stand the order of the hits and what is forgiven.
(function (root, make) {
  if (typeof module === "object" && module.exports) module.exports = make();
  else root.wetmountFind = make();
})(typeof self !== "undefined" ? self : this, function () {
  "use strict";
  const [KIND, TITLE, SECOND, ADDRESS, PICTURE, SUMMARY, NAMES, ASKS, MORE, GENERAL] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
  const BOOST = {title: 5, names: 4, asks: 3, summary: 1.2, more: 0.5};
  const EXACT = {title: 120, names: 70, asks: 80}, SEVERAL = 200, LATER = 12, WORD = 0.6, FEATURE = 0.5, INSIDE = 0.8;
  const ALIKE = 0.45, QUESTION = 1.5, ASKED = 1.8, PART = 25, FEWEST = 0.34;
  const ASKING = /^(?:what|whats|why|how|is|are|can|could|do|does|did|should|will|would|where|when|which|who|am|may|any)\b/i;
  const MEANING = /\b(?:mean|means|meaning|define|definition)\b/i, MEANT = 4;
  const ANSWERS = new Set(["guide", "take care", "look-alikes"]);

  function open(MiniSearch, folding, data) {
    const words = (text) => folding.keywords(text, data.spelling);
    const keyOf = (list) => [...new Set(list)].sort().join(" ");
    const mini = new MiniSearch({
      idField: "number",
      fields: Object.keys(BOOST),
      tokenize: (text) => text.split(/[ ;]+/).filter(Boolean),
      processTerm: (term) => term,
      searchOptions: {boost: BOOST},
    });
    const exact = {title: new Map(), names: new Map(), asks: new Map()};
    const enter = (map, key, number) => {
      if (!key) return;
      if (!map.has(key)) map.set(key, []);
      map.get(key).push(number);
    };
    mini.addAll(data.rows.map((row, number) => {
      const title = words(row[TITLE]);
      for (const called of [row[TITLE], row[SECOND]].filter(Boolean)) {
        const key = keyOf(words(called));
        enter(key.split(" ").length === called.split(/[\s-]+/).length ? exact.title : exact.names, key, number);
      }
      for (const phrase of row[NAMES].split(";")) enter(exact.names, keyOf(phrase.split(" ")), number);
      for (const phrase of row[ASKS].split(";")) enter(exact.asks, keyOf(phrase.split(" ")), number);
      return {number, title: title.join(" "), names: row[NAMES], asks: row[ASKS], summary: words(row[SUMMARY]).join(" "), more: row[MORE]};
    }));
    const within = {names: byRarest(exact.names), asks: byRarest(exact.asks)};
    const known = new Set();
    for (const row of data.rows) for (const word of [...words(row[TITLE]), ...row[NAMES].split(/[ ;]+/), ...row[ASKS].split(/[ ;]+/), ...words(row[SUMMARY]), ...row[MORE].split(" ")]) if (word) known.add(word);
    const rare = new Map();
    const alike = new Map();
    for (const group of data.alike) {
      if (!group.some((word) => known.has(word))) continue;
      for (const word of group) {
        alike.set(word, new Set([...(alike.get(word) || []), ...group]));
        known.add(word);
      }
    }

    const vocabulary = [...known];

    /** Phrases by each of their words, so that those a search holds whole are found. */
    function byRarest(phrases) {
      const found = new Map();
      for (const key of phrases.keys()) enter(found, key.split(" ")[0], key);
      return found;
    }

    /** The words searched for: known ones as they are, joined or parted ones brought together, others by the nearest known word. */
    function read(text) {
      const said = words(text), unfinished = /[\p{L}\p{N}]$/u.test(text), done = [];
      let mended = false;
      for (let at = 0; at < said.length; at += 1) {
        const word = said[at], last = at === said.length - 1 && unfinished;
        const joined = at + 1 < said.length ? folding.letters(word + said[at + 1]) : "";
        if (joined && known.has(joined)) {
          done.push({word: joined, begun: false}); // "pot worm" where "potworm" stands too
          if (known.has(word) && known.has(said[at + 1])) done.push({word, begun: false}, {word: said[at + 1], begun: false});
          at += 1;
          continue;
        }
        if (known.has(word) || !Number.isNaN(Number(word))) {
          done.push({word, begun: last && word.length > 3});
          continue;
        }
        const parted = part(word);
        if (parted) {
          done.push(...parted.map((each) => ({word: each, begun: false})));
          continue;
        }
        if (last && word.length > 1 && vocabulary.some((each) => each.startsWith(word))) {
          done.push({word, begun: true});
          continue;
        }
        const near = folding.nearest(word, vocabulary);
        if (near) mended = true;
        done.push({word: near || word, begun: false, slip: near ? word : ""});
      }
      return {done, mended};
    }

    function part(word) {
      for (let at = 3; at <= word.length - 3; at += 1) {
        const first = alone(word.slice(0, at)), second = alone(word.slice(at));
        if (first && second) return [first, second];
      }
      return null;
    }

    /** The known word that a part of a joined one is by itself: "stubi" of "stubbyroot" is "stubby"; empty where it is none. */
    function alone(half) {
      if (known.has(half)) return half;
      const bare = half.endsWith("i") ? half.slice(0, -1) : "";
      return [bare, bare && folding.fold(bare + "y", data.spelling.forms)].find((each) => each.length > 2 && known.has(each)) || "";
    }

    function find(text) {
      const typed = text.trim().slice(0, 200);
      if (!typed) return {hits: [], shownFor: "", nearest: []};
      const {done, mended} = read(MEANING.test(typed) ? typed.replace(MEANING, " ") : typed);
      const scores = new Map(), met = new Map(), asked = new Set();
      let total = 0;
      for (const {word, begun} of done) {
        const best = new Map();
        const add = (results, factor) => {
          for (const {id, score} of results) if (score * factor > (best.get(id) || 0)) best.set(id, score * factor);
        };
        const own = mini.search(word, {prefix: begun});
        add(own, 1);
        for (const {id, match} of own) if (Object.values(match).some((fields) => fields.includes("asks"))) asked.add(id);
        for (const other of alike.get(word) || []) if (other !== word) add(mini.search(other), ALIKE);
        const weight = Math.log(1 + data.rows.length / (1 + own.length));
        total += weight;
        for (const [id, score] of best) {
          scores.set(id, (scores.get(id) || 0) + score);
          met.set(id, (met.get(id) || 0) + weight);
        }
      }
      const asking = ASKING.test(typed), meaning = MEANING.test(typed), {bonus, offered} = exactly(done.map((each) => each.word), asking);
      for (const id of [...bonus.keys(), ...offered.keys()]) if (!scores.has(id)) [scores, met].forEach((map) => map.set(id, map === met ? total : 0));
      const ranked = [];
      for (const [id, score] of scores) {
        const share = total ? met.get(id) / total : 0, row = data.rows[id], exactBonus = bonus.get(id) || 0, firstly = offered.get(id) || 0;
        if (share < FEWEST && !exactBonus && !firstly) continue;
        const general = 1 + row[GENERAL] / PART;
        let value = (score * share * share * share + exactBonus) * general + 2 * firstly;
        if (row[KIND] === "what to look at") value *= FEATURE;
        if (meaning && row[KIND] === "word") value *= MEANT;
        if (asking && asked.has(id)) value *= ASKED;
        if (asking && ANSWERS.has(row[KIND])) value *= QUESTION;
        ranked.push({id, value});
      }
      ranked.sort((a, b) => b.value - a.value || a.id - b.id);
      const pages = new Set();
      const hits = ranked.map(({id}) => data.rows[id]).filter((row) => {
        const page = row[ADDRESS];
        return pages.has(page) ? false : pages.add(page);
      });
      const shownFor = mended && hits.length ? done.map((each) => each.word) : [];
      return {hits: hits.map(hit), shownFor: shownFor.length ? done.filter((each) => each.slip).map((each) => each.slip) : [], nearest: hits.length ? [] : nearest(typed)};
    }

    function rarity(word) {
      if (!rare.has(word)) rare.set(word, Math.log(1 + data.rows.length / (1 + mini.search(word).length)));
      return rare.get(word);
    }

    /** What a whole search is called, named or asked, word for word. */
    function exactly(list, asking) {
      const bonus = new Map(), offered = new Map(), key = keyOf(list);
      const give = (id, value) => bonus.set(id, Math.max(bonus.get(id) || 0, value));
      const several = folding.has(data.several, key) ? data.several[key] : [];
      several.forEach((id, at) => {
        if (folding.has(data.ids, id)) offered.set(data.ids[id], SEVERAL * (asking ? 0.6 : several.length > 1 ? 1.6 : 1) - LATER * at);
      });
      for (const [field, map] of Object.entries(exact)) for (const id of map.get(key) || []) give(id, EXACT[field] * (data.rows[id][KIND] === "word" ? WORD : 1));
      const said = new Set(list), weigh = (all) => all.reduce((sum, word) => sum + rarity(word), 0), whole = weigh([...said]);
      for (const [field, map] of Object.entries(within)) {
        for (const first of said) {
          for (const phrase of map.get(first) || []) {
            const parts = phrase.split(" ");
            if (parts.length >= said.size || !parts.every((word) => said.has(word))) continue;
            const share = weigh(parts) / whole;
            for (const id of exact[field].get(phrase)) give(id, EXACT[field] * INSIDE * share * share);
          }
        }
      }
      return {bonus, offered};
    }

    /** Titles whose words come nearest to what was typed. */
    function nearest(typed) {
      const said = words(typed).filter((word) => word.length > 2);
      const far = (row) => Math.min(...said.flatMap((word) => words(row[TITLE]).map((other) => folding.slips(word, other, 4) / Math.max(word.length, other.length))), 9);
      return data.rows.filter((row) => row[KIND] !== "what to look at").map((row) => [far(row), row]).filter(([distance]) => distance < 0.6)
        .sort((a, b) => a[0] - b[0] || b[1][GENERAL] - a[1][GENERAL]).slice(0, 4).map(([, row]) => hit(row));
    }

    function hit(row) {
      return {kind: row[KIND], title: row[TITLE], second: row[SECOND], address: row[ADDRESS], picture: row[PICTURE], summary: row[SUMMARY]};
    }

    return {find};
  }

  return {open};
});
