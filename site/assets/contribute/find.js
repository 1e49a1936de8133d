/* Things of the library by what people call them. */
(function (W) {
  "use strict";
  const { el } = W;

  /** The id of an entry, from its id or one of its names as typed; nothing where none is meant. */
  function idOf(data, words) {
    const wanted = words.trim().toLowerCase();
    if (data.entries[wanted]) return wanted;
    const found = Object.entries(data.entries).filter(([, each]) => [each.name, each.scientific].some(name => name && name.toLowerCase() === wanted));
    return found.length === 1 ? found[0][0] : "";
  }
  /** What is said where no entry is meant: that there is none, and those whose name holds what was typed. */
  function unknownEntry(data, words) {
    const wanted = words.trim().toLowerCase();
    const near = Object.entries(data.entries).filter(([id, each]) => [id, each.name, each.scientific].some(name => name && name.toLowerCase().includes(wanted))).map(([id]) => id);
    const said = W.wrong("", data.mistakes.says.unknown, { entry: words });
    return { message: said.message, allowed: "", tip: near.length && near.length <= 16 ? "Is it one of these: " + near.join(", ") + "?" : "Choose one from the list." };
  }
  /** The list that completes the name of an entry; one for the whole page. */
  function entryList(data) {
    return el("datalist", { id: "wm-entries" }, ...Object.entries(data.entries).map(([id, each]) => el("option", { value: id }, each.name + (each.scientific ? ", " + each.scientific : ""))));
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

  Object.assign(W, { kindAndGroups, idOf, unknownEntry, entryList, thatMatter });
})(self.WetmountContribute = self.WetmountContribute || {});
