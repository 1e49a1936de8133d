/* Things of the library by what people call them. */
(function (W) {
  "use strict";
  const { el } = W;

  const plain = words => words.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").trim().replace(/\s+/g, " ").toLowerCase();
  const called = (id, each) => [id, each.name, each.scientific, ...each.also].filter(Boolean).map(plain);
  /** What an entry is listed as: its name, with the scientific one where it has both. */
  const listedAs = each => each.name + (each.scientific && each.scientific !== each.name ? " (" + each.scientific + ")" : "");

  /** The id of an entry, from its id or any of its names as typed, in large or small letters; nothing where none, or more than one, is meant. */
  function idOf(data, words) {
    const wanted = plain(words), entries = Object.entries(data.entries);
    if (Object.hasOwn(data.entries, wanted)) return wanted;
    for (const names of [each => [each.name, listedAs(each)], each => [each.scientific], each => each.also]) {
      const found = entries.filter(([, each]) => names(each).some(name => name && plain(name) === wanted));
      if (found.length) return found.length === 1 ? found[0][0] : "";
    }
    return "";
  }
  /** What is said where no entry is meant: that there is none, and those whose name holds what was typed. */
  function unknownEntry(data, words) {
    const wanted = plain(words);
    const near = Object.entries(data.entries).filter(([id, each]) => called(id, each).some(name => name.includes(wanted))).map(([, each]) => listedAs(each)).sort();
    const said = W.wrong("", data.mistakes.says.unknown, { entry: words });
    return { message: said.message, allowed: "", tip: near.length && near.length <= 16 ? "Is it one of these: " + near.join("; ") + "?" : "Type part of its name and choose from the list, or leave it empty." };
  }
  /** The list that completes the name of an entry; one for the whole page. */
  function entryList(data) {
    const names = Object.values(data.entries).map(each => [listedAs(each), each.also.join(", ")]).sort(([one], [other]) => one.localeCompare(other, "en"));
    return el("datalist", { id: "wm-entries" }, ...names.map(([name, also]) => el("option", { value: name }, also)));
  }
  /** The characters that matter for something like an entry: what the keys ask of it, what tells it from others, what it states itself. */
  function thatMatter(data, id) {
    const like = data.entries[id];
    const asked = W.ways(data, { id, ...like }).flatMap(way => way.steps.flatMap(([couplet]) => data.keys[way.key].couplets[couplet].characters));
    return [...new Set([...asked, ...like.told, ...like.own])];
  }

  /** The kind of thing and the groups that are proposed for something like an entry: what is like a group stands within it. */
  function kindAndGroups(data, id) {
    const like = data.entries[id];
    if (like.kind !== "group") return [like.kind, like.within];
    const member = Object.values(data.entries).find(each => each.within.includes(id) && each.kind !== "group");
    return [member ? member.kind : "organism", [id]];
  }

  Object.assign(W, { kindAndGroups, idOf, listedAs, unknownEntry, entryList, thatMatter });
})(self.WetmountContribute = self.WetmountContribute || {});
