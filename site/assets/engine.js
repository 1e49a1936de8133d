/* Identification, the same as keytool.identify gives it: pure, no page, no network.
 *
 *   const engine = wetmountEngine.open(data)          data as keytool.identify.library_data makes it
 *   engine.parse(address, key) -> {trail, left}       never throws; left: what was left out, in plain sentences
 *   engine.write(trail) -> address
 *   engine.describe(trail) -> result                  everything that was told, weighed
 *   engine.walk(trail) -> {asks, asksCharacter, arrived, goesOn, holds, passed, likely, open, ends, result}
 *   engine.explain(trail, entry) -> [{sources, weight}]
 *   engine.fits(chance, observation) -> {means, likely}   for words heard; chance from engine.chances(trail), where(character) its conditions
 *
 * A trail: {sample, pictures: [], legs: [{key, answers: [{couplet, lead}]}], saw: [observation], called: [[id, tenths of a bit]]};
 * what words are like (called) may lack.
 * An observation: {character, states: [], negated} | {character, low, high, about} (base units, null where open)
 * | {character} (cannot tell), each also {pointed: true}.
 */
(function (root, make) {
  "use strict";
  if (typeof module === "object" && module.exports) module.exports = make();
  else root.wetmountEngine = make();
})(typeof self === "object" ? self : this, function () {
  "use strict";

  const CANNOT_TELL = "cannot-tell";
  const LEAST = 1e-9;
  const BINS = 16;
  const COUNTED = 0.0005;
  const NUMBER = /^(~)?(\d+(?:\.\d+)?)?(?:(\.\.)(\d+(?:\.\d+)?)?)?$/;

  const has = (map, name) => Object.prototype.hasOwnProperty.call(map, name);
  const sum = (values) => { let total = 0; for (const value of values) total += value; return total; };
  const nine = (value) => Math.round(value * 1e9) / 1e9;

  /* One small number for each entry, out of runs of the same. */
  function runs(packed, size, Kind) {
    const values = new Kind(size);
    for (let i = 0, at = 0; i < packed.length; i += 2) for (const end = at + packed[i + 1]; at < end; at++) values[at] = packed[i];
    return values;
  }

  /* What is worked out when it is first asked for, and then kept: a page opens the engine while somebody reads. */
  function once(object, name, make) {
    Object.defineProperty(object, name, {
      configurable: true, enumerable: true,
      get() { const value = make(); Object.defineProperty(object, name, { value, writable: true, enumerable: true }); return value; },
    });
    return object;
  }

  function stretches(packed) {
    const numbers = [];
    for (let i = 0; i < packed.length; i += 2) for (let n = 0; n < packed[i + 1]; n++) numbers.push(packed[i] + n);
    return numbers;
  }

  /* ---- values: a list of numbers of states, or [low, high) ---- */

  function meet(number, one, other) {
    if (!number) return one.filter((state) => other.includes(state));
    return [Math.max(one[0], other[0]), Math.min(one[1], other[1])];
  }

  const isEmpty = (number, value) => (number ? !(value[0] < value[1]) : value.length === 0);

  /* ---- the chance of what is seen, given what is there ---- */

  const log = (value) => (value === Infinity ? Infinity : value > 0 ? Math.log(value) : -Infinity);
  const share = (x, low, high) => Math.min(1, Math.max(0, (x - low) / (high - low)));

  function below(x, low, high, blur) {
    if (x === Infinity) return 1;
    if (x === -Infinity) return 0;
    const width = Math.max(high - low, 1e-6);
    const ramp = (t) => (t > 0 ? (t * t) / 2 : 0);
    const a = x - low, b = x - low - width;
    return Math.min(1, Math.max(0, (ramp(a + blur) - ramp(a - blur) - ramp(b + blur) + ramp(b - blur)) / (2 * blur * width)));
  }

  function entropy(weights) {
    const total = sum(weights);
    if (!(total > 0)) return 0;
    let bits = 0;
    for (const weight of weights) if (weight > 0) bits -= (weight / total) * Math.log2(weight / total);
    return bits;
  }

  /* How much an outcome tells of the kind of a thing: how likely each kind comes with each outcome, kind after kind; a total of them. */
  function information(joint, count, total) {
    const outcomes = new Float64Array(count);
    let left = 0;
    for (let from = 0; from < joint.length; from += count) {
      const each = joint.subarray(from, from + count);
      let held = 0;
      for (let i = 0; i < count; i++) { outcomes[i] += each[i]; held += each[i]; }
      if (held > 0) left += held * entropy(each);
    }
    return Math.max(0, entropy(outcomes) - left / total);
  }

  function open(data) {
    const figures = data.figures;
    const entries = data.entries;
    const size = entries.length;
    const indexOf = new Map(entries.map((id, number) => [id, number]));
    const soft = Math.log(1 + figures["soft-edge"]);
    const prior = data.prior;

    const tables = new Map();
    for (const [id, raw] of Object.entries(data.characters)) {
      const number = !raw.states;
      const table = {
        id, number, rows: raw.rows, states: raw.states || [], domain: raw.domain, power: raw.power, effort: raw.effort,
        where: raw.where || {}, settled: raw.settled || [], span: raw.span, misread: raw.misread, error: raw.error,
        outcomes: null,
      };
      once(table, "row", () => runs(raw.row, size, Int32Array));
      once(table, "has", () => (raw.has === 1 ? null : runs(raw.has, size, Uint8Array)));
      tables.set(id, table);
    }
    const groups = new Map(Object.entries(data.groups).map(([id, packed]) => [id, stretches(packed)]));
    const domains = data.domains.map((packed) => new Set(stretches(packed)));
    const cautions = Object.entries(data.cautions).map(([id, packed]) => [id, stretches(packed)]);
    const pictures = new Map(Object.entries(data.pictures).map(([id, packed]) => [id, new Set(stretches(packed))]));
    const pictured = new Array(size).fill(0);
    for (const like of pictures.values()) for (const number of like) pictured[number] += 1;
    const samples = new Map(Object.entries(data.samples));

    const members = (id) => (groups.has(id) ? groups.get(id) : [indexOf.get(id)]);
    const keys = new Map();
    for (const [id, raw] of Object.entries(data.keys)) {
      const key = { id, first: raw.first, scopeOf: raw.scope };
      once(key, "scope", () => new Set(raw.scope.flatMap(members)));
      once(key, "couplets", () => new Map(Object.entries(raw.couplets).map(([name, each]) => [name, coupletOf(name, each)])));
      once(key, "within", () => withinOf(key));
      once(key, "ways", () => waysOf(key));
      keys.set(id, key);
    }

    function coupletOf(id, raw) {
      const leads = new Map(Object.entries(raw.leads).map(([lead, what]) => [lead, {
        couplet: what.couplet || "", key: what.key || "", end: what.end || "", goes: what.couplet || what.key || what.end,
        boxes: what.boxes.map((box) => new Map(Object.entries(box).map(([character, value]) => [
          character, tables.get(character).number ? [value[0] === null ? -Infinity : value[0], value[1] === null ? Infinity : value[1]] : value,
        ]))),
      }]));
      return { id, asks: raw.asks, leads };
    }

    /* How many ways lead to each couplet of a key. */
    function waysOf(key) {
      const ways = new Map([[key.first, 1]]);
      for (const couplet of key.couplets.values()) {
        for (const lead of couplet.leads.values()) if (lead.couplet) ways.set(lead.couplet, (ways.get(lead.couplet) || 0) + (ways.get(couplet.id) || 0));
      }
      return ways;
    }

    /* What each end of a key holds of it. */
    function withinOf(key) {
      const within = new Map();
      for (const couplet of key.couplets.values()) {
        for (const lead of couplet.leads.values()) {
          if (lead.couplet || within.has(lead.goes)) continue;
          const held = lead.end ? members(lead.end) : keys.get(lead.key).scopeOf.flatMap(members);
          within.set(lead.goes, [...new Set(held)].filter((number) => key.scope.has(number)).sort((a, b) => a - b));
        }
      }
      return within;
    }

    /* ---- tables ---- */

    function blind(table, value) {
      if (!table.number) return value.length / table.states.length;
      const low = Math.log(table.span[0]), high = Math.log(table.span[1]);
      return Math.max(share(log(value[1]), low, high) - share(log(value[0]), low, high), LEAST);
    }

    function rowChances(table, value) {
      if (!table.number) {
        return table.rows.map((row) => { let total = 0; for (const state of value) total += row[state]; return Math.max(total, LEAST); });
      }
      const unknown = blind(table, value), top = log(value[1]), bottom = log(value[0]);
      return table.rows.map((row) => {
        if (!row.length) return unknown;
        const low = Math.log(row[0]), high = Math.log(row[1]);
        return Math.max((1 - table.misread) * (below(top, low, high, soft) - below(bottom, low, high, soft)) + table.misread * unknown, LEAST);
      });
    }

    function outcomes(table) {
      if (table.outcomes) return table.outcomes;
      if (!table.number) return (table.outcomes = table.rows);
      const low = Math.log(table.span[0]), high = Math.log(table.span[1]);
      const ends = [-Infinity];
      for (let step = 1; step < BINS; step++) ends.push(low + ((high - low) * step) / BINS);
      ends.push(Infinity);
      table.outcomes = table.rows.map((row) => {
        if (!row.length) return new Array(BINS).fill(1 / BINS);
        const a = Math.log(row[0]), b = Math.log(row[1]);
        const under = ends.map((end) => below(end, a, b, soft));
        return Array.from({ length: BINS }, (_, i) => (1 - table.misread) * (under[i + 1] - under[i]) + table.misread / BINS);
      });
      return table.outcomes;
    }

    /* ---- what was told ---- */

    function valueOf(observation) {
      const table = tables.get(observation.character);
      if (!table.number) {
        const named = observation.states;
        const numbers = table.states.map((_, number) => number);
        return numbers.filter((number) => named.includes(table.states[number]) !== Boolean(observation.negated));
      }
      const width = figures[observation.about ? "about-share" : "reading-share"];
      const low = observation.low === null ? -Infinity : observation.low;
      const high = observation.high === null ? Infinity : observation.high;
      return [
        low === -Infinity ? -Infinity : low - Math.max(table.error, width * low),
        high === Infinity ? Infinity : high + Math.max(table.error, width * high),
      ];
    }

    const isUnsure = (observation) => !(observation.states && observation.states.length) && (observation.low === undefined);
    const charactersOf = (look) => new Set(look.boxes.flatMap((box) => [...box.keys()]));

    function met(one, other) {
      const found = [];
      for (const a of one) {
        for (const b of other) {
          const both = new Map(a);
          let empty = false;
          for (const [name, value] of b) {
            const number = tables.get(name).number;
            const left = both.has(name) ? meet(number, both.get(name), value) : value;
            both.set(name, left);
          }
          for (const [name, value] of both) if (isEmpty(tables.get(name).number, value)) empty = true;
          if (!empty) found.push(both);
        }
      }
      return found;
    }

    function implied(told) {
      const found = new Map();
      const waiting = [...told].sort();
      while (waiting.length) {
        const where = tables.get(waiting.shift()).where;
        for (const [name, states] of Object.entries(where)) {
          if (!told.has(name) && !found.has(name)) {
            found.set(name, { boxes: [new Map([[name, states]])], source: [name], pointed: false });
            waiting.push(name);
          }
        }
      }
      return [...found.values()];
    }

    function evidence(trail) {
      const looks = [], unsure = new Set(), alone = new Set();
      for (const leg of trail.legs) {
        const key = keys.get(leg.key);
        for (const answer of leg.answers) {
          const couplet = key.couplets.get(answer.couplet);
          if (answer.lead === CANNOT_TELL) couplet.asks.forEach((name) => { unsure.add(name); if (couplet.asks.length === 1) alone.add(name); });
          else looks.push({ boxes: couplet.leads.get(answer.lead).boxes, source: [leg.key, answer.couplet, answer.lead], pointed: false });
        }
      }
      for (const observation of trail.saw) {
        if (isUnsure(observation)) { unsure.add(observation.character); alone.add(observation.character); }
        else looks.push({ boxes: [new Map([[observation.character, valueOf(observation)]])], source: [observation.character], pointed: Boolean(observation.pointed) });
      }
      looks.forEach((look) => { look.characters = charactersOf(look); });
      const firm = looks.filter((look) => !look.pointed);
      const told = new Set(firm.flatMap((look) => [...look.characters]));
      for (const look of implied(told)) { look.characters = charactersOf(look); firm.push(look); }
      let parts = [];
      const conflicts = [];
      for (const look of firm.slice().reverse()) {
        const near = parts.filter((part) => part.looks.some((each) => [...each.characters].some((name) => look.characters.has(name))));
        let boxes = look.boxes;
        for (const part of near) boxes = met(boxes, part.boxes);
        if (!boxes.length) { conflicts.push(look); continue; }
        parts = parts.filter((part) => !near.includes(part));
        parts.push({ looks: [...near.flatMap((part) => part.looks), look], boxes });
      }
      return {
        parts, conflicts, told,
        pointed: looks.filter((look) => look.pointed && ![...look.characters].some((name) => told.has(name))),
        unsure: new Set([...unsure].filter((name) => !told.has(name))),
        partly: new Set([...unsure].filter((name) => !told.has(name) && !alone.has(name))),
        pictures: trail.pictures || [], scopes: trail.legs.map((leg) => leg.key), sample: trail.sample || "", called: trail.called || [],
      };
    }

    /* Kept for the statements of the keys and whatever else is asked again: not to be changed by who gets it. */
    const likelihoods = new WeakMap();

    function likelihood(boxes) {
      if (likelihoods.has(boxes)) return likelihoods.get(boxes);
      const total = new Float64Array(size);
      likelihoods.set(boxes, total);
      for (const box of boxes) {
        const each = new Float64Array(size).fill(1);
        for (const [name, value] of box) {
          const table = tables.get(name), chances = rowChances(table, value), row = table.row;
          for (let i = 0; i < size; i++) each[i] *= chances[row[i]];
        }
        for (let i = 0; i < size; i++) total[i] += each[i];
      }
      return total;
    }

    function blindOf(boxes) {
      let total = 0;
      for (const box of boxes) {
        let product = 1;
        for (const [name, value] of box) product *= blind(tables.get(name), value);
        total += product;
      }
      return total;
    }

    function before(found) {
      const weights = Float64Array.from(prior);
      if (found.sample) for (const [number, factor] of Object.entries(samples.get(found.sample))) weights[Number(number)] *= factor;
      if (found.scopes.length) {
        const scope = keys.get(found.scopes[0]).scope, wrong = figures["wrong-key-rate"];
        let held = 0;
        for (let i = 0; i < size; i++) if (scope.has(i)) held += weights[i];
        const rest = sum(weights) - held;
        const factor = rest > 0 ? Math.min(1, ((wrong / (1 - wrong)) * held) / rest) : 1;
        for (let i = 0; i < size; i++) if (!scope.has(i)) weights[i] *= factor;
      }
      const rate = figures["pointed-rate"];
      for (const picture of found.pictures) {
        const like = pictures.get(picture);
        for (let i = 0; i < size; i++) weights[i] *= like.has(i) ? (1 - rate) / pictured[i] : rate / pictures.size;
      }
      return weights;
    }

    /* How much likelier each entry is by what the user's own words are like, 1 on average. */
    function calledSo(called) {
      const bits = new Float64Array(size);
      for (const [id, tenths] of called) for (const number of members(id)) bits[number] = Math.max(bits[number], tenths);
      let mean = 0;
      const factors = bits.map((each) => 2 ** (each / 10));
      for (let i = 0; i < size; i++) mean += factors[i] * prior[i];
      return factors.map((each) => each / mean);
    }

    function describedSo(found) {
      const rate = figures["elsewhere-rate"], again = figures["elsewhere-again"];
      const counts = new Map();
      for (const name of found.told) {
        const domain = tables.get(name).domain;
        if (domain !== -1) counts.set(domain, (counts.get(domain) || 0) + 1);
      }
      let clusters = [];
      for (const number of [...counts.keys()].sort((a, b) => a - b)) {
        const domain = domains[number];
        const near = clusters.filter((cluster) => [...domain].some((each) => cluster.all.has(each)));
        clusters = clusters.filter((cluster) => !near.includes(cluster));
        const all = new Set(domain);
        for (const cluster of near) for (const each of cluster.all) all.add(each);
        clusters.push({ all, numbers: [number, ...near.flatMap((cluster) => cluster.numbers)] });
      }
      const factors = new Float64Array(size).fill(1);
      for (const cluster of clusters) {
        for (let i = 0; i < size; i++) {
          let outside = 0;
          for (const number of cluster.numbers) if (!domains[number].has(i)) outside += counts.get(number);
          if (outside) factors[i] *= rate * again ** (outside - 1);
        }
      }
      return factors;
    }

    function posterior(trail) {
      const found = evidence(trail);
      const weights = before(found);
      const start = sum(weights);
      let unknown = 1;
      for (const part of found.parts) {
        const chances = likelihood(part.boxes);
        for (let i = 0; i < size; i++) weights[i] *= chances[i];
        unknown *= blindOf(part.boxes);
      }
      for (const look of found.pointed) {
        const rate = figures["pointed-rate"], right = likelihood(look.boxes);
        let mean = 0;
        for (let i = 0; i < size; i++) mean += right[i] * prior[i];
        for (let i = 0; i < size; i++) weights[i] *= (1 - rate) * right[i] + rate * mean;
        unknown *= blindOf(look.boxes);
      }
      const factors = describedSo(found);
      for (let i = 0; i < size; i++) weights[i] *= factors[i];
      if (found.called.length) {
        const called = calledSo(found.called);
        for (let i = 0; i < size; i++) weights[i] *= called[i];
      }
      const total = sum(weights), outsidePrior = figures["outside-prior"];
      const outside = (outsidePrior * unknown) / (outsidePrior * unknown + ((1 - outsidePrior) * total) / start);
      for (let i = 0; i < size; i++) weights[i] /= total;
      return { chance: weights, outside, evidence: found };
    }

    /* ---- what to look at next ---- */

    const mass = (chance, numbers) => { let total = 0; for (const number of numbers) total += chance[number]; return total; };

    function applying(table, chance) {
      const having = table.has;
      if (!having) return sum(chance);
      let total = 0;
      for (let i = 0; i < size; i++) if (having[i]) total += chance[i];
      return total;
    }

    /* How something heard fits what is likely: how far its character has a meaning there, and its likelihood over chance. */
    function fits(chance, observation) {
      const table = tables.get(observation.character), means = applying(table, chance);
      if (isUnsure(observation)) return { means, likely: 1 };
      const value = valueOf(observation), chances = rowChances(table, value), row = table.row;
      let likely = 0;
      for (let i = 0; i < size; i++) likely += chance[i] * chances[row[i]];
      return { means, likely: likely / blind(table, value) };
    }

    function where(character) {
      return Object.fromEntries(Object.entries(tables.get(character).where).map(([name, numbers]) => [name, numbers.map((number) => tables.get(name).states[number])]));
    }

    function powerAtHand(after) {
      let power = 0;
      for (const looked of [after.evidence.told, after.evidence.unsure]) for (const name of looked) power = Math.max(power, tables.get(name).power);
      return power || 40;
    }

    const effortOf = (table, power) => data.effort[table.effort] + (table.power > power ? figures["change-power-cost"] : 0);

    const wasAsked = (table, after) => after.evidence.told.has(table.id) || after.evidence.unsure.has(table.id)
      || table.settled.some((name) => after.evidence.told.has(name));
    /* How likely what it takes for granted is: a spear, for the length of one. 1 where that was told, or where it takes nothing. */
    function granted(table, after) {
      let found = 1;
      for (const [name, states] of Object.entries(table.where)) {
        if (after.evidence.told.has(name)) continue;
        const parent = tables.get(name), chances = rowChances(parent, states), row = parent.row;
        let held = 0;
        for (let i = 0; i < size; i++) held += after.chance[i] * chances[row[i]];
        found = Math.min(found, held);
      }
      return found;
    }

    /* Whether it has a meaning only if another thing is so, of which it could not be told whether it is, or was told that it is not. */
    function takesOpen(table, after) {
      const wanted = Object.entries(table.where);
      if (wanted.some(([name]) => after.evidence.unsure.has(name))) return true;
      const mayBe = (box) => wanted.every(([name, states]) => !box.has(name) || box.get(name).some((state) => states.includes(state)));
      return after.evidence.parts.some((part) => part.boxes.some((box) => wanted.some(([name]) => box.has(name))) && !part.boxes.some(mayBe));
    }

    function gainOfCharacter(table, after, kinds) {
      const chance = after.chance, row = table.row, seen = outcomes(table), rows = seen.length, count = seen[0].length;
      const many = kinds ? kinds.count : rows, masses = new Float64Array(many * rows), joint = new Float64Array(many * count);
      let total = 0;
      for (let i = 0; i < size; i++) {
        masses[(kinds ? kinds.of[i] : row[i]) * rows + row[i]] += chance[i];
        total += chance[i];
      }
      for (let kind = 0, at = 0; kind < many; kind++) {
        for (let each = 0; each < rows; each++, at++) {
          const mass = masses[at];
          if (mass > 0) for (let outcome = 0; outcome < count; outcome++) joint[kind * count + outcome] += mass * seen[each][outcome];
        }
      }
      return information(joint, count, total);
    }

    function questions(after, kinds, least) {
      const power = powerAtHand(after), found = [];
      for (const table of tables.values()) {
        if ((wasAsked(table, after) && !after.evidence.partly.has(table.id)) || takesOpen(table, after)) continue;
        const usual = figures["asks-share"];
        if (applying(table, after.chance) < (least || usual) || granted(table, after) < usual) continue;
        const gain = gainOfCharacter(table, after, kinds);
        if (gain >= figures["least-gain"]) {
          const effort = effortOf(table, power);
          found.push({ character: table.id, gain, effort, worth: gain / effort });
        }
      }
      return found.sort((a, b) => nine(b.worth) - nine(a.worth) || (a.character < b.character ? -1 : 1));
    }

    /* ---- what it comes to ---- */

    const wordOf = (chance) => data.sureness.find(([, from]) => nine(chance) >= from)[0];
    const named = (id, chance) => ({ id, chance, word: wordOf(chance) });

    function narrowest(chance, least, sets) {
      let best = null;
      for (const [id, numbers] of sets) {
        const held = mass(chance, numbers);
        if (held < least) continue;
        const each = { id, size: numbers.length, held };
        if (!best || each.size < best.size || (each.size === best.size && (nine(each.held) > nine(best.held) || (nine(each.held) === nine(best.held) && id < best.id)))) best = each;
      }
      return best ? named(best.id, best.held) : null;
    }

    const everySet = [...entries.map((id, number) => [id, [number]]), ...groups];

    function feeding(chance, least, whole) {
      const shares = new Map();
      entries.forEach((id, number) => {
        const eats = has(data.feeding, id) ? data.feeding[id] : [];
        for (const each of eats) shares.set(each, (shares.get(each) || 0) + chance[number] / (whole ? 1 : eats.length));
      });
      return [...shares].filter(([, held]) => held >= figures[least])
        .sort((a, b) => nine(b[1]) - nine(a[1]) || (a[0] < b[0] ? -1 : 1)).map(([id, held]) => named(id, held));
    }

    function identification(after) {
      const chance = after.chance;
      const rounded = chance.map(nine);
      const ranked = entries.map((id, number) => number)
        .sort((a, b) => rounded[b] - rounded[a] || (entries[a] < entries[b] ? -1 : 1));
      const listed = ranked.slice(0, figures["names-most"]).filter((number) => chance[number] >= figures["name-share"]);
      const rest = ranked.filter((number) => !listed.includes(number) && chance[number] >= COUNTED);
      const verdict = narrowest(chance, figures["holds-share"], everySet);
      const first = chance[ranked[0]], second = ranked.length > 1 ? chance[ranked[1]] : 0;
      const result = {
        chance: Object.fromEntries(entries.map((id, number) => [id, chance[number]])),
        verdict,
        leading: verdict ? null : narrowest(chance, figures["leads-share"], everySet),
        names: listed.map((number) => named(entries[number], chance[number])),
        rest: { count: rest.length, chance: 1 - mass(chance, listed) },
        settled: verdict !== null || first >= figures["settled-lead"] * second,
        feeding: feeding(chance, "name-share", false),
        lives: feeding(chance, "holds-share", true),
        cautions: [...cautions].filter(([, numbers]) => mass(chance, numbers) >= figures["caution-share"]).map(([id]) => id),
        outside: after.outside,
        fits: after.outside < figures["outside-share"],
        conflicts: after.evidence.conflicts.map((look) => ({ source: look.source })),
      };
      once(result, "next", () => questions(after));   // dear, and not every page asks for it
      return once(result, "look", () => (result.next.length ? result.next[0].character : ""));
    }

    const describe = (trail) => identification(posterior(trail));

    function explain(trail, entry) {
      const after = posterior(trail), number = indexOf.get(entry), rest = 1 - after.chance[number];
      const bits = (chances) => {
        if (rest <= 0) return 0;
        let without = 0, others = 0;
        for (let i = 0; i < size; i++) {
          without += after.chance[i] / chances[i];
          if (i !== number) others += after.chance[i];
        }
        without -= after.chance[number] / chances[number];
        return Math.log2(chances[number] / (without > 0 ? others / without : 1));
      };
      const reasons = [
        ...after.evidence.parts.map((part) => ({ sources: part.looks.map((look) => look.source), weight: bits(likelihood(part.boxes)) })),
        ...after.evidence.pointed.map((look) => ({ sources: [look.source], weight: bits(likelihood(look.boxes)) })),
      ];
      return reasons.sort((a, b) => Math.abs(nine(b.weight)) - Math.abs(nine(a.weight)));
    }

    /* ---- walks ---- */

    function toldOf(couplet, after) {
      let told = [new Map()];
      for (const part of after.evidence.parts) {
        if (part.looks.some((look) => couplet.asks.some((name) => look.characters.has(name)))) told = met(told, part.boxes);
      }
      return told;
    }

    function settledLead(couplet, after) {
      const told = toldOf(couplet, after);
      if (!told.some((box) => box.size)) return "";
      const fitting = [...couplet.leads].filter(([, lead]) => met(told, lead.boxes).length).map(([id]) => id);
      return fitting.length === 1 ? fitting[0] : "";
    }

    function leadChances(leads) {
      const each = [...leads].map(([lead, boxes]) => [lead, likelihood(boxes).slice()]);
      const totals = new Float64Array(size);
      for (const [, chances] of each) for (let i = 0; i < size; i++) totals[i] += chances[i];
      for (const [, chances] of each) for (let i = 0; i < size; i++) chances[i] /= totals[i];
      return each;
    }

    /* The same while nothing was told of it, so worked out once. */
    const unseen = (couplet) => couplet.flows || (couplet.flows = leadChances(boxesOf(couplet)));

    const boxesOf = (couplet) => [...couplet.leads].map(([id, lead]) => [id, lead.boxes]);

    const leadsLeft = (couplet, after) => {
      const told = toldOf(couplet, after);
      return boxesOf(couplet).map(([lead, boxes]) => [lead, met(told, boxes)]).filter(([, boxes]) => boxes.length);
    };

    function likelyLead(key, couplet, after, least) {
      if (!after.evidence.told.size) return ["", 0];
      const scope = mass(after.chance, key.scope);
      for (const [lead, chances] of leadChances(leadsLeft(couplet, after))) {
        let held = 0;
        for (const number of key.scope) if (chances[number] >= figures["takes-share"]) held += after.chance[number];
        if (held / scope >= least) return [lead, held / scope];
      }
      return ["", 0];
    }

    function gainOf(couplet, after, kinds) {
      const chances = leadChances(leadsLeft(couplet, after));
      const count = chances.length, joint = new Float64Array(kinds.count * count);
      let total = 0;
      for (let i = 0; i < size; i++) {
        const mass = after.chance[i];
        total += mass;
        if (mass > 0) for (let lead = 0; lead < count; lead++) joint[kinds.of[i] * count + lead] += mass * chances[lead][1][i];
      }
      return information(joint, count, total);
    }

    function reaching(key, given) {
      const found = new Map();
      const start = new Float64Array(size);
      for (const number of key.scope) start[number] = 1;
      found.set(key.first, start);
      for (const couplet of key.couplets.values()) {
        if (!found.has(couplet.id)) continue;
        const here = found.get(couplet.id);
        const taken = given.has(couplet.id) ? given.get(couplet.id) : CANNOT_TELL;
        const flows = taken !== CANNOT_TELL ? [[taken, null]] : unseen(couplet);
        for (const [lead, chances] of flows) {
          const goes = couplet.leads.get(lead).couplet;
          if (!goes) continue;
          const flow = here.map((value, i) => (chances ? value * chances[i] : value));
          found.set(goes, found.has(goes) ? found.get(goes).map((value, i) => value + flow[i]) : flow);
        }
      }
      return found;
    }

    /* How many kinds there are, and for each entry a number that is the same for entries that the key brings to the same ends. */
    function endOf(key) {
      if (key.kinds) return key.kinds;
      const ends = entries.map(() => ""), numbers = new Map([["", 0]]);
      for (const [end, held] of key.within) for (const number of held) ends[number] += " " + end;
      const of = Int32Array.from(ends, (each) => { if (!numbers.has(each)) numbers.set(each, numbers.size); return numbers.get(each); });
      key.kinds = { of, count: numbers.size };
      return key.kinds;
    }

    function bestQuestion(key, given, after) {
      for (const least of [figures["asks-share"], figures["asks-least"]]) {
        const found = bestOf(key, given, after, least);
        if (found.worth > 0) return found;
      }
      return { asks: "", asksCharacter: "", worth: 0 };
    }

    function bestOf(key, given, whole, least) {
      const reached = reaching(key, given), power = powerAtHand(whole), kinds = endOf(key), scope = mass(whole.chance, key.scope);
      const after = { ...whole, chance: whole.chance.map((chance, i) => (key.scope.has(i) ? chance / scope : 0)) };
      const clearly = figures["clearly-better"], gain = figures["least-gain"], unsure = after.evidence.unsure;
      let worth = 0, asks = "", asksCharacter = "";
      for (const couplet of key.couplets.values()) {
        const asked = couplet.asks.map((name) => tables.get(name));
        if (given.has(couplet.id) || !reached.has(couplet.id) || asked.every((table) => wasAsked(table, after))) continue;
        if (asked.some((table) => unsure.has(table.id) || takesOpen(table, after))) continue;
        const flow = reached.get(couplet.id);
        let arriving = 0;
        for (let i = 0; i < size; i++) arriving += after.chance[i] * flow[i];
        if (arriving < least) continue;
        const each = gainOf(couplet, after, kinds) / Math.max(...asked.map((table) => effortOf(table, power)));
        if (each >= gain && nine(each) > nine(clearly * worth)) { worth = each; asks = couplet.id; }
      }
      const ahead = new Set([...reached.keys()].filter((id) => !given.has(id)).flatMap((id) => key.couplets.get(id).asks));
      const next = questions(after, kinds, least).filter((each) => each.worth >= gain);
      for (const question of [...next.filter((each) => ahead.has(each.character)), ...next.filter((each) => !ahead.has(each.character))]) {
        if (nine(question.worth) > nine(clearly * worth)) { worth = question.worth; asks = ""; asksCharacter = question.character; }
      }
      return { asks, asksCharacter, worth };
    }

    const unsureLooks = (trail) => sum(trail.legs.map((leg) => leg.answers.filter((each) => each.lead === CANNOT_TELL).length)) + trail.saw.filter(isUnsure).length;

    /* The key not opened yet that holds most, at least a share. */
    function mostHeld(key, after, trail, least) {
      const opened = trail.legs.map((leg) => leg.key), near = mass(after.chance, key.scope) >= figures["goes-on-unsure"];
      let best = null;
      for (const other of keys.values()) {
        if (opened.includes(other.id) || (near && !key.within.has(other.id))) continue;
        const each = { id: other.id, held: nine(mass(after.chance, other.scope)), size: other.scope.size };
        if (each.held < least) continue;
        if (!best || each.held > best.held || (each.held === best.held && (each.size < best.size || (each.size === best.size && each.id > best.id)))) best = each;
      }
      return best ? best.id : "";
    }

    /* After a "cannot tell": {asks, asksCharacter, end}, one of the three or none. */
    function undecided(key, given, after, trail) {
      const unsure = unsureLooks(trail), nothing = { asks: "", asksCharacter: "", end: "" };
      const many = figures["unsure-most"] + figures["unsure-more"] * (trail.legs.length - 1);
      if (!after.evidence.told.size) {
        return unsure < many ? { ...bestQuestion(key, given, after), end: "" } : nothing;
      }
      const held = narrowest(after.chance, figures["holds-share"], key.within);
      const most = (name) => mostHeld(key, after, trail, figures[name]);
      const sure = held ? held.id : most("goes-on-share");
      if (sure) return { ...nothing, end: sure };
      const best = bestQuestion(key, given, after);
      if (unsure > 1 && best.worth < figures["splits-worth"]) {
        const end = most("goes-on-unsure");
        if (end) return { ...nothing, end };
      }
      if (best.worth > 0 && unsure < many) return { ...best, end: "" };
      const ends = endsOf(key, after.chance);
      const leads = ends.length && ends[0].chance >= figures["leads-share"] && (ends.length === 1 || ends[0].chance >= figures["settled-lead"] * ends[1].chance);
      return { ...nothing, end: leads ? ends[0].id : most("goes-on-least") };
    }

    /* Whether one key is walked and everything asked was told: then a page says beforehand what comes, so a question to which several
       ways lead is not passed over as likely. Couplets stand in reading order, so all ways to one are counted before it. */
    const isPlain = (trail) => trail.legs.length === 1 && !(trail.pictures || []).length && unsureLooks(trail) === 0;

    function endsOf(key, chance) {
      return [...key.within].map(([id, numbers]) => [id, mass(chance, numbers)])
        .sort((a, b) => nine(b[1]) - nine(a[1]) || (a[0] < b[0] ? -1 : 1))
        .filter(([, held]) => held >= figures["name-share"]).map(([id, held]) => named(id, held));
    }

    function walk(trail) {
      const leg = trail.legs[trail.legs.length - 1];
      const key = keys.get(leg.key);
      const given = new Map(leg.answers.map((answer) => [answer.couplet, answer.lead]));
      const after = posterior(trail);
      const result = identification(after);
      const passed = {}, likely = {}, plainly = isPlain(trail);
      let at = key.first, end = "", asks = "", asksCharacter = "", holds = 1;
      for (;;) {
        const couplet = key.couplets.get(at);
        let lead = given.has(at) ? given.get(at) : "";
        if (lead === "" || lead === CANNOT_TELL) {
          const least = figures[lead ? "holds-share" : "passes-share"];
          lead = settledLead(couplet, after);
          if (!lead && !(plainly && (at === key.first || key.ways.get(at) > 1))) {
            const found = likelyLead(key, couplet, after, least);
            if (found[0]) { lead = found[0]; likely[at] = found[1]; }
          }
          if (!lead) break;
          passed[at] = lead;
        }
        const taken = couplet.leads.get(lead);
        if (!taken.couplet) { at = ""; end = taken.goes; break; }
        at = taken.couplet;
      }
      if (trail.legs.some((each) => each.key === end)) end = "";
      const again = at && key.couplets.get(at).asks.every((name) => after.evidence.unsure.has(name));
      if (at && given.get(at) !== CANNOT_TELL && !again) asks = at;
      else if (at) {
        ({ asks, asksCharacter, end } = undecided(key, given, after, trail));
      }
      const goesOn = keys.has(end) ? end : "";
      if (goesOn && (at || Object.keys(likely).length)) holds = mass(after.chance, keys.get(end).scope);
      return {
        asks, asksCharacter, arrived: goesOn ? "" : end, goesOn, holds, passed, likely,
        open: [...key.couplets.keys()].filter((id) => given.get(id) === CANNOT_TELL), ends: endsOf(key, after.chance), result,
      };
    }

    /* ---- addresses ---- */

    const figure = (value) => (value === null ? "" : value.toFixed(6).replace(/0+$/, "").replace(/\.$/, ""));

    function observed(observation) {
      if (isUnsure(observation)) return CANNOT_TELL;
      if (observation.states && observation.states.length) return (observation.negated ? "!" : "") + observation.states.join(",");
      const low = figure(observation.low), high = figure(observation.high);
      return (observation.about ? "~" : "") + (low === high ? low : `${low}..${high}`);
    }

    function write(trail) {
      const parts = [];
      if (trail.sample) parts.push(`from:${trail.sample}`);
      for (const picture of trail.pictures || []) parts.push(`at:${picture}`);
      if (trail.called && trail.called.length) parts.push(`called:${trail.called.map(([id, tenths]) => `${id}=${tenths}`).join(",")}`);
      for (const leg of trail.legs || []) {
        parts.push(`key:${leg.key}`);
        for (const answer of leg.answers) parts.push(`${answer.couplet}=${answer.lead}`);
      }
      for (const each of trail.saw || []) parts.push(`saw:${each.pointed ? "~" : ""}${each.character}=${observed(each)}`);
      return parts.join("/");
    }

    function short(text) {
      const clean = [...text].map((letter) => (/[\p{C}\p{Z}]/u.test(letter) && letter !== " " ? "?" : letter)).join("");
      return [...clean].length <= 40 ? clean : [...clean].slice(0, 39).join("") + "…";
    }

    function observationOf(name, said) {
      const table = tables.get(name);
      if (said === CANNOT_TELL) return { character: name };
      if (table.number) {
        const match = NUMBER.exec(said);
        if (!match || !(match[2] || match[4])) return `'${short(said)}' is no number for '${name}'.`;
        const low = match[2] ? Number(match[2]) : null;
        const high = match[4] ? Number(match[4]) : match[3] ? null : low;
        if (low !== null && high !== null && low > high) return `'${short(said)}' for '${name}' runs backwards.`;
        if (low === 0 && high === 0) return `Nothing is 0 of '${name}'.`;
        return { character: name, low, high, about: Boolean(match[1]) };
      }
      const negated = said.startsWith("!");
      const states = (negated ? said.slice(1) : said).split(",");
      for (const state of states) {
        if (!table.states.includes(state)) return `'${short(state)}' is not a state of '${name}': ${table.states.join(", ")}.`;
      }
      const chosen = table.states.filter((state) => states.includes(state));
      if (negated && chosen.length === table.states.length) return `Not one state of '${name}' is left.`;
      return { character: name, states: chosen, negated };
    }

    function decoded(part) {
      try { return decodeURIComponent(part).trim(); } catch (error) { return part.trim(); }
    }

    function parse(address, first) {
      const trail = { sample: "", pictures: [], legs: first ? [{ key: first, answers: [] }] : [], saw: [] };
      const left = [];
      const unknown = (what, name) => left.push(`There is no ${what} '${short(name)}'.`);
      const takeKey = (id) => {
        if (!keys.has(id)) unknown("key", id);
        else if (!trail.legs.length || trail.legs[trail.legs.length - 1].key !== id) trail.legs.push({ key: id, answers: [] });
      };
      for (const raw of String(address).split(/[/#]/)) {
        if (!raw) continue;
        const part = decoded(raw);
        const colon = part.indexOf(":"), name = colon < 0 ? part : part.slice(0, colon), rest = colon < 0 ? "" : part.slice(colon + 1);
        if (colon >= 0 && name === "from") {
          if (samples.has(rest)) trail.sample = rest; else unknown("kind of sample", rest);
        } else if (colon >= 0 && name === "at") {
          if (!pictures.has(rest)) unknown("picture", rest); else if (!trail.pictures.includes(rest)) trail.pictures.push(rest);
        } else if (colon >= 0 && name === "called") {
          const found = [];
          for (const each of rest.split(",")) {
            const equals = each.indexOf("="), id = equals < 0 ? each : each.slice(0, equals), tenths = equals < 0 ? "" : each.slice(equals + 1);
            if (!groups.has(id) && !indexOf.has(id)) unknown("entry", id);
            else if (!/^[1-9][0-9]{0,2}$/.test(tenths)) left.push(`'${short(tenths)}' does not say how much the words are like '${id}'.`);
            else if (!found.some(([one]) => one === id)) found.push([id, Math.min(Number(tenths), 10 * figures["like-most"])]);
          }
          trail.called = found;
        } else if (colon >= 0 && name === "key") {
          takeKey(rest);
        } else if (colon >= 0 && name === "saw") {
          const equals = rest.indexOf("=");
          const told = equals < 0 ? rest : rest.slice(0, equals);
          const pointed = told.startsWith("~"), character = pointed ? told.slice(1) : told;
          if (!tables.has(character)) { unknown("character", character); continue; }
          const found = observationOf(character, equals < 0 ? CANNOT_TELL : rest.slice(equals + 1));
          if (typeof found === "string") left.push(found);
          else {
            if (pointed) found.pointed = true;
            trail.saw = [...trail.saw.filter((each) => each.character !== character), found];
          }
        } else if (colon < 0 && part.includes("=")) {
          const couplet = part.slice(0, part.indexOf("=")), lead = part.slice(part.indexOf("=") + 1);
          if (!trail.legs.length) { left.push(`'${short(couplet)}' was answered before any key was opened.`); continue; }
          const leg = trail.legs[trail.legs.length - 1], key = keys.get(leg.key);
          if (!key.couplets.has(couplet)) unknown(`question of ${leg.key}`, couplet);
          else if (lead !== CANNOT_TELL && !key.couplets.get(couplet).leads.has(lead)) unknown(`answer to '${couplet}'`, lead);
          else {
            const answers = leg.answers.filter((each) => each.couplet !== couplet);
            if (answers.length < leg.answers.length) left.push(`'${couplet}' was answered twice; the later answer counts.`);
            leg.answers = [...answers, { couplet, lead }];
          }
        } else if (keys.has(part)) takeKey(part);
        else left.push(`'${short(part)}' says nothing that this library knows.`);
      }
      return { trail, left };
    }

    return { describe, explain, walk, parse, write, fits, where, chances: (trail) => posterior(trail).chance, keys: [...keys.keys()], entries, members, holds: figures["holds-share"] };
  }

  return { open, CANNOT_TELL };
});
