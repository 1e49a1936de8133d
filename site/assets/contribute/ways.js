/* The ways of an entry through the keys, as keytool/contribute/outcome.py walks them, and what is said of them. */
(function (W) {
  "use strict";
  const { filled } = W;

  function nextUp(value) {
    if (value === 0) return Number.MIN_VALUE;
    const view = new DataView(new ArrayBuffer(8));
    view.setFloat64(0, value);
    view.setBigInt64(0, view.getBigInt64(0) + (value > 0 ? 1n : -1n));
    return view.getFloat64(0);
  }
  const isStretch = showing => showing.length === 2 && showing.every(each => each === null || typeof each === "number");
  const low = each => (each[0] === null ? -Infinity : each[0]), high = each => (each[1] === null ? Infinity : each[1]);
  function meet(one, other) {
    return isStretch(one) ? [Math.max(low(one), low(other)), Math.min(high(one), high(other))] : one.filter(each => other.includes(each));
  }
  const isEmpty = each => (isStretch(each) ? !(low(each) < high(each)) : !each.length);
  function without(one, other) {
    if (!isStretch(one)) return [one.filter(each => !other.includes(each))].filter(each => each.length);
    return [[low(one), Math.min(high(one), low(other))], [Math.max(low(one), high(other)), high(one)]].filter(each => !isEmpty(each));
  }
  function pieces(name, couplet, showing) {
    let found = [showing];
    for (const lead of Object.values(couplet.leads)) {
      const wanted = lead.when && lead.when[name];
      if (wanted) found = found.flatMap(piece => [meet(piece, wanted), ...without(piece, wanted)].filter(each => !isEmpty(each)));
    }
    return found;
  }
  function cells(couplet, shows) {
    let rows = [{}];
    for (const name of couplet.characters) rows = rows.flatMap(row => pieces(name, couplet, shows[name]).map(piece => ({ ...row, [name]: piece })));
    return rows.map(seen => {
      const leads = Object.entries(couplet.leads);
      const named = leads.filter(([, lead]) => lead.when && Object.entries(lead.when).every(([name, wanted]) => !isEmpty(meet(seen[name], wanted))));
      return { shows: { ...shows, ...seen }, leads: (named.length ? named : leads.filter(([, lead]) => lead.otherwise)).map(([id]) => id) };
    });
  }
  /** An entry and every group that holds it; `draft` is the entry being written, as { id, within }. */
  function ancestry(data, id, draft) {
    const found = new Set(), waiting = [id];
    while (waiting.length) {
      const here = waiting.pop(), entry = draft && here === draft.id ? draft : data.entries[here];
      if (entry && !found.has(here)) { found.add(here); waiting.push(...entry.within); }
    }
    return found;
  }
  /** Every way of an entry { id, within, shows } through a key: { key, steps: [[couplet, lead]], end, fault, about, missing }. */
  function waysThrough(data, keyId, entry) {
    const key = data.keys[keyId], above = ancestry(data, entry.id, entry), found = [];
    (function from(at, shows, steps) {
      const couplet = key.couplets[at];
      if (steps.some(step => step[0] === at)) { found.push({ key: keyId, steps, end: "", fault: "loop", about: at, missing: [] }); return; }
      const missing = couplet.characters.filter(name => !shows[name]);
      if (missing.length) { found.push({ key: keyId, steps, end: "", fault: "unstated", about: at, missing }); return; }
      for (const cell of cells(couplet, shows)) {
        if (cell.leads.length !== 1) {
          found.push({ key: keyId, steps, end: "", fault: cell.leads.length ? "overlap" : "gap", about: at, missing: [] });
          continue;
        }
        const lead = couplet.leads[cell.leads[0]], taken = [...steps, [at, cell.leads[0]]];
        if (lead.couplet) { from(lead.couplet, cell.shows, taken); continue; }
        const holds = lead.end ? above.has(lead.end) : data.keys[lead.key].scope.some(group => above.has(group));
        found.push({ key: keyId, steps: taken, end: lead.end || lead.key, fault: holds ? "" : "wrong-end", about: at, missing: [] });
      }
    })(key.first, entry.shows, []);
    return found;
  }
  const inScope = (data, keyId, above) => data.keys[keyId].scope.some(group => above.has(group));
  /** Every way of an entry, in every key that has it in scope. */
  function ways(data, entry) {
    const above = ancestry(data, entry.id, entry);
    return Object.keys(data.keys).filter(key => inScope(data, key, above)).flatMap(key => waysThrough(data, key, entry));
  }
  const together = new WeakMap();
  /** For each last lead of a key, the entries of the library that come out by it; worked out once. */
  function comeOut(data, keyId) {
    if (!together.has(data)) together.set(data, {});
    const known = together.get(data);
    if (!known[keyId]) {
      known[keyId] = {};
      for (const [id, entry] of Object.entries(data.entries)) {
        if (entry.holds || !inScope(data, keyId, ancestry(data, id))) continue;
        for (const way of waysThrough(data, keyId, { id, ...entry })) {
          const last = way.steps.length ? way.steps[way.steps.length - 1].join("/") : "";
          (known[keyId][last] = known[keyId][last] || new Set()).add(id);
        }
      }
    }
    return known[keyId];
  }
  /** The other entries that take the same last lead of a way. */
  function others(data, way, id) {
    const last = way.steps.length ? way.steps[way.steps.length - 1].join("/") : "";
    return [...(comeOut(data, way.key)[last] || [])].filter(other => other !== id);
  }
  const nameOf = (data, id, entry) => (entry && id === entry.id ? entry.name : data.entries[id] ? data.entries[id].name : data.keys[id] ? data.keys[id].title : id);
  /** What is said of the ways of an entry, one sentence each, with whether it is a collision. */
  function told(data, entry) {
    const say = data.sentences, all = ways(data, entry);
    if (!all.length) {
      const groups = Object.values(data.keys).flatMap(key => key.scope.map(group => data.entries[group].name + " (" + key.title + ")")).join(", ");
      return [{ fault: "no-key", text: filled(say["no-key"], { entry: entry.name, groups }) }];
    }
    return all.map(way => {
      const key = data.keys[way.key], couplet = key.couplets[way.about];
      const path = way.steps.map(([at, lead]) => key.couplets[at].number + " " + key.couplets[at].leads[lead].text).join(", ") || say["at-once"];
      let end;
      if (way.fault) {
        end = filled(say[way.fault], { number: couplet.number, asks: couplet.asks, end: nameOf(data, way.end, entry), entry: entry.name,
          missing: way.missing.map(name => data.characters[name].name.toLowerCase()).join(", ") });
      } else if (data.keys[way.end]) end = filled(say["on-to"], { end: nameOf(data, way.end, entry) });
      else {
        const with_ = way.end === entry.id ? [] : others(data, way, entry.id);
        const names = with_.slice(0, data.mostNamed).map(id => nameOf(data, id)).join(", ") + (with_.length > data.mostNamed ? " and " + (with_.length - data.mostNamed) + " more" : "");
        end = filled(say[with_.length ? "ends-together" : "ends"], { end: nameOf(data, way.end, entry), others: names });
      }
      return { fault: way.fault, text: filled(say.way, { key: key.title, path, end }) };
    });
  }
  /** The characters that the keys ask on the way of an entry and nothing was said of yet. */
  function stillAsked(data, entry) {
    return [...new Set(ways(data, entry).filter(way => way.fault === "unstated").flatMap(way => way.missing))];
  }
  /** What the groups of an entry say of each character. */
  function inherited(data, within) {
    return Object.assign({}, ...within.map(id => data.entries[id].shows));
  }
  /** A statement of the file as what is shown, in base units. */
  function showing(data, id, each) {
    const character = data.characters[id];
    if (!character.unit) return each.any ? Object.keys(character.states) : Object.keys(character.states).filter(state => each.states.includes(state));
    if (each.any) return [null, null];
    const factor = data.words.unit.find(unit => unit.id === each.unit).factor || 1;
    return [each.low === undefined ? null : each.low * factor, each.high === undefined ? null : nextUp(each.high * factor)];
  }

  Object.assign(W, { meet, isEmpty, isStretch, low, high, ancestry, ways, others, nameOf, told, stillAsked, inherited, showing });
})(self.WetmountContribute = self.WetmountContribute || {});
