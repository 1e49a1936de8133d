/* What parts an entry from those it comes out with, and the couplet that asks for it, as keytool/contribute/parting.py drafts it. */
(function (W) {
  "use strict";
  const { filled, flow, high, isEmpty, isStretch, length, low, meet, pair, scalar } = W;

  /** A bench quantity that lies between two stretches of numbers, so that a lead can ask for it; none for states. */
  function between(data, own, theirs) {
    if (!isStretch(own)) return null;
    const least = Math.min(...theirs.map(low)), most = Math.max(...theirs.map(high));
    const [below, above] = high(own) <= least ? [high(own), least] : most <= low(own) ? [most, low(own)] : [1, 0];
    return Object.keys(data.quantities).find(id => below <= data.quantities[id] && data.quantities[id] <= above) || null;
  }
  /** The characters that part an entry { id, name, shows } from all the others, the least often misread first. */
  function partings(data, entry, ids, magnification) {
    const rivals = ids.map(id => data.entries[id]), found = [];
    for (const [id, own] of Object.entries(entry.shows)) {
      const character = data.characters[id], theirs = rivals.map(each => each.shows[id]).filter(Boolean);
      const comparable = rivals.length && theirs.length === rivals.length && character.magnification <= magnification;
      if (comparable && theirs.every(each => isEmpty(meet(own, each)))) found.push({ character: id, own, theirs, at: between(data, own, theirs) });
    }
    const order = each => [Number(Boolean(data.characters[each.character].unit && !each.at)), data.characters[each.character].misread, each.character];
    return found.sort((one, other) => {
      const [a, b] = [order(one), order(other)], at = a.findIndex((value, index) => value !== b[index]);
      return at < 0 ? 0 : a[at] < b[at] ? -1 : 1;
    });
  }
  /** Characters that every one of the others states and this entry does not. */
  function notStated(data, entry, ids) {
    return ids.length ? Object.keys(data.entries[ids[0]].shows).filter(name => !entry.shows[name] && ids.every(id => data.entries[id].shows[name])) : [];
  }
  function whens(data, parting) {
    if (!isStretch(parting.own)) {
      const theirs = new Set(parting.theirs.flat()), order = Object.keys(data.characters[parting.character].states);
      return [order.filter(id => parting.own.includes(id)), order.filter(id => theirs.has(id))];
    }
    if (!parting.at) return null;
    const smaller = high(parting.own) <= low(parting.theirs[0]);
    return smaller ? [{ below: parting.at }, { from: parting.at }] : [{ from: parting.at }, { below: parting.at }];
  }
  const capital = text => text.slice(0, 1).toUpperCase() + text.slice(1);
  function seen(character, wanted) {
    if (Array.isArray(wanted)) return capital(wanted.map(id => character.states[id]).join(" or "));
    return capital("from" in wanted ? character.name + " {" + wanted.from + "} or more" : character.name + " below {" + wanted.below + "}");
  }
  /** A slug that the key has not used yet. */
  function freeSlug(key, wanted) {
    const slug = wanted.slice(0, 44).replace(/^-+|-+$/g, "");
    if (!key.couplets[slug]) return slug;
    for (let n = 2; ; n++) if (!key.couplets[slug + "-" + n]) return slug + "-" + n;
  }
  /** The couplet that would part an entry at the last lead of a way: { key, couplet, lead, was, slug, raw }; null where no quantity parts numbers. */
  function coupletDraft(data, entry, way, parting) {
    const character = data.characters[parting.character], longest = data.couplets.longest, wanted = whens(data, parting);
    if (!wanted) return null;
    const [own, rest] = wanted, key = data.keys[way.key], [couplet, lead] = way.steps[way.steps.length - 1], before = key.couplets[couplet].leads[lead];
    const ownText = seen(character, own), restText = seen(character, rest);
    const takesAll = Array.isArray(own) && new Set([...own, ...rest]).size !== Object.keys(character.states).length;
    const goesOn = before.key ? { key: before.key } : { end: before.end };
    return {
      key: way.key, couplet, lead, was: goesOn, slug: freeSlug(key, entry.id + "-" + parting.character),
      raw: {
        asks: length(character.asksWritten) <= longest.question ? character.asksWritten : "Which is it: " + entry.name.toLowerCase() + ", or another?",
        leads: {
          [entry.id]: { text: length(ownText) <= longest.lead ? ownText : seen(character, own.slice(0, 1)), when: { [parting.character]: own }, end: entry.id },
          "the-rest": { text: length(restText) <= longest.lead ? restText : "Anything else",
            ...(takesAll ? { otherwise: true } : { when: { [parting.character]: rest } }), ...goesOn },
        },
      },
    };
  }
  const indented = (text, by) => text.replace(/^(?=.)/gm, " ".repeat(by));
  const block = (data, raw) => Object.entries(raw).map(([name, each]) => pair(data, name, each, 0)).join("");
  /** A couplet as it stands in the file of its key, without indentation. */
  function coupletText(data, draft) {
    const { leads, ...rest } = draft.raw;
    const written = Object.entries(leads).map(([slug, lead]) => scalar(slug) + ":\n" + indented(block(data, lead), 2)).join("");
    return draft.slug + ":\n" + indented(block(data, rest), 2) + "  leads:\n" + indented(written, 4).replace(/\n$/, "");
  }
  /** The data as they would be with a couplet put in, to walk the keys with. */
  function withCouplet(data, draft) {
    const key = data.keys[draft.key], before = key.couplets[draft.couplet];
    const limits = wanted => (Array.isArray(wanted) ? wanted : [wanted.from ? data.quantities[wanted.from] : null, wanted.below ? data.quantities[wanted.below] : null]);
    const leads = Object.fromEntries(Object.entries(draft.raw.leads).map(([slug, lead]) => [slug, lead.when
      ? { ...lead, when: Object.fromEntries(Object.entries(lead.when).map(([id, wanted]) => [id, limits(wanted)])) } : lead]));
    const characters = Object.keys(Object.values(draft.raw.leads)[0].when);
    const couplets = { ...key.couplets,
      [draft.couplet]: { ...before, leads: { ...before.leads, [draft.lead]: { ...before.leads[draft.lead], end: undefined, key: undefined, couplet: draft.slug } } },
      [draft.slug]: { number: "new", asks: draft.raw.asks, characters, leads } };
    return { ...data, keys: { ...data.keys, [draft.key]: { ...key, couplets } } };
  }
  /** What belongs into other files, as comments at the end of the file of an entry: its name in its look-alikes, and new couplets. */
  function additions(data, raw, drafts) {
    const lines = [];
    for (const mistake of raw["mistaken-for"] || []) {
      if (data.entries[mistake.entry]) lines.push("In " + data.taken[mistake.entry] + ", under mistaken-for:", "  - " + flow({ ...mistake, entry: raw.id }));
    }
    for (const draft of drafts) {
      const [[goes, id]] = Object.entries(draft.was);
      lines.push("In " + data.taken[draft.key] + ", at couplets." + draft.couplet + ".leads." + draft.lead + ", write couplet: " + draft.slug + " instead of " + goes + ": " + id,
        "and under couplets:", ...coupletText(data, draft).split("\n").map(line => "  " + line));
    }
    return lines.length ? "\n# Belongs into other files:\n" + lines.map(line => "# " + line + "\n").join("") : "";
  }
  /** What is wrong with the texts of a couplet: a sentence, or nothing. */
  function tooLong(data, draft) {
    const said = (name, text) => (length(text) > data.couplets.longest[name] ? [filled(data.couplets.says[name].message, { length: length(text) }) + " Allowed: " + data.couplets.says[name].allowed + "."] : []);
    return [...said("question", draft.raw.asks), ...Object.values(draft.raw.leads).flatMap(lead => said("lead", lead.text))].join(" ");
  }

  Object.assign(W, { partings, notStated, coupletDraft, coupletText, withCouplet, additions, tooLong });
})(self.WetmountContribute = self.WetmountContribute || {});
