/* What is wrong with what was typed, by the rules of `wetmount check` and in its words, which come with the data. */
(function (W) {
  "use strict";

  function filled(sentence, words) {
    return sentence.replace(/\{([a-z]+)\}/g, (whole, name) => (name in words ? words[name] : whole));
  }
  function wrong(field, said, words) {
    return { field, message: filled(said.message, words), allowed: filled(said.allowed || "", words), tip: filled(said.tip || "", words) };
  }
  /** The same for what is chosen: what is allowed stands there to be chosen from, and how it is written in the file is no concern of the one who chooses. */
  function chosen(field, said, words) {
    return { ...wrong(field, said, words), chosen: true };
  }
  const NEEDED = ["id", "common", "summary", "contributor", "reviewed"];
  const length = text => Array.from(text).length;
  const counted = number => number + (number === 1 ? " character" : " characters");

  /** What is wrong with texts that were typed, by the limits and sentences of their fields. */
  function checkTyped(fields, typed, needed) {
    const found = [];
    for (const [name, field] of Object.entries(fields)) {
      const value = typed[name] || "", said = field.says, words = { value, length: counted(length(value)), id: typed.id || "" };
      const rule = !value ? (needed.includes(name) ? "missing" : "") : field.pattern && !new RegExp(field.pattern, "u").test(value) ? "pattern"
        : field.minLength && length(value) < field.minLength ? "short" : field.maxLength && length(value) > field.maxLength ? "long" : "";
      if (rule) found.push(wrong(name, said[rule], words));
    }
    return found;
  }
  /** Everything that is wrong with what was typed: one item for each field at fault. `typed` holds texts, `raw` the file as data, `shows` what it shows. */
  function check(data, typed, raw, shows) {
    const found = [];
    const needed = [...NEEDED, ...(raw.kind === "cannot-be-told" ? ["would-tell"] : [])];
    found.push(...checkTyped(data.fields, typed, needed));
    if (data.taken[raw.id]) found.push(wrong("id", data.says.taken, { id: raw.id, file: data.taken[raw.id] }));
    if (raw.kind === "group") found.push(wrong("kind", data.says.members, { entry: raw.id || "" }));
    else if (!raw.commonness) found.push(chosen("commonness", data.says.commonness, { entry: raw.id || "" }));
    if (data.fedThemes.includes(raw.theme) && !raw.feeding) found.push(chosen("feeding", data.says.feeding, { entry: raw.id || "" }));
    for (const [id, each] of Object.entries(raw.characters || {})) {
      if (each.low !== undefined && each.high !== undefined && each.low > each.high) {
        found.push(wrong("shows-" + id, data.says["low-high"], { low: each.low, high: each.high }));
      }
    }
    for (const basis of bases(raw)) {
      for (const id of basis.sources || []) {
        const said = data.says["unread " + basis.value + " " + data.sources[id].read];
        if (said && !found.some(each => each.field === "basis")) found.push(wrong("basis", said, { source: id }));
      }
    }
    (raw["mistaken-for"] || []).forEach((each, at, all) => {
      const say = data.mistakes.says, field = data.fields.summary, words = { entry: each.entry, value: each.by, length: counted(length(each.by)), inside: "" };
      const rule = !each.entry ? "" : each.entry === raw.id ? "itself" : !data.entries[each.entry] ? "unknown"
        : all.findIndex(other => other.entry === each.entry) < at ? "twice" : !each.by ? "missing"
        : !new RegExp(field.pattern, "u").test(each.by) ? "pattern" : length(each.by) < field.minLength ? "short" : length(each.by) > field.maxLength ? "long" : "";
      if (rule) found.push(wrong("mistaken-" + at, say[rule], words));
    });
    return [...found, ...figure(data, raw, shows || {})];
  }
  /** What is wrong with the parameters of a drawing; `shows` is what the entry shows, with what its groups say. */
  function figure(data, raw, shows) {
    const { kind, ...params } = raw.figure || {}, found = [];
    for (const [name, value] of Object.entries(params)) {
      const param = data.kinds[kind].params[name], ends = value.of && shows[value.of];
      if (value.of && !(ends && ends.every(each => typeof each === "number"))) {
        found.push(wrong("figure-" + name, data.says["half-range"], { entry: raw.id || "", character: value.of }));
      } else if (!value.of && param.says && !(value >= param.low && value <= param.high)) {
        found.push(wrong("figure-" + name, { message: param.says }, { value }));
      }
    }
    return found;
  }
  function bases(value) {
    if (!value || typeof value !== "object") return [];
    return [...(value.kind && value.value ? [value] : []), ...Object.values(value).flatMap(bases)];
  }

  Object.assign(W, { filled, wrong, chosen, length, check, checkTyped });
})(self.WetmountContribute = self.WetmountContribute || {});
