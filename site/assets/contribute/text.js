/* The file of an entry, written to the letter as keytool/contribute/yaml_text.py and draft.py write it. */
(function (W) {
  "use strict";

  const BARE = /^[A-Za-z\u00c0-\u00ffµ°][\p{L}\p{N}_ µ°×./+()'%;!-]*$/u;
  const TYPED = /^(?:true|false|null|-?[0-9][0-9.]*)$/;
  const REREAD = /^(?:no|yes|on|off|y|n|true|false|null|~)$/i;

  function scalar(value) {
    if (typeof value === "boolean") return String(value);
    if (typeof value === "number") return Number.isInteger(value) ? String(value) : value.toFixed(6).replace(/0+$/, "").replace(/\.$/, "");
    const safe = BARE.test(value) && !TYPED.test(value) && !REREAD.test(value) && value === value.trim();
    return safe ? value : JSON.stringify(value);
  }
  function flow(value) {
    if (Array.isArray(value)) return "[" + value.map(flow).join(", ") + "]";
    if (typeof value === "object") return "{" + Object.entries(value).map(([name, each]) => scalar(name) + ": " + flow(each)).join(", ") + "}";
    return scalar(value);
  }
  function isDeep(value) {
    const inner = Object.values(value);
    const held = each => typeof each === "object" && !Array.isArray(each);
    return inner.some(each => held(each) && (Array.isArray(value) || Object.values(each).some(held)));
  }
  function pair(data, name, value, indent) {
    const pad = " ".repeat(indent), line = flow(value);
    const fits = line.length + indent + name.length + 2 <= data.widths.line;
    if (typeof value !== "object" || !Object.keys(value).length || (fits && !isDeep(value))) return pad + scalar(name) + ": " + line + "\n";
    if (Array.isArray(value)) return pad + scalar(name) + ":\n" + value.map(each => pad + "  - " + flow(each) + "\n").join("");
    return pad + scalar(name) + ":\n" + Object.entries(value).map(([inner, each]) => pair(data, inner, each, indent + 2)).join("");
  }
  function comment(data, words, indent) {
    const pad = " ".repeat(indent || 0) + "# ";
    const lines = [];
    for (const word of words.split(/\s+/)) {
      const last = lines.length - 1;
      if (last >= 0 && (lines[last] + " " + word).length <= data.widths.comment) lines[last] += " " + word;
      else lines.push(pad + word);
    }
    return lines.join("\n") + "\n";
  }
  function asked(character) {
    const allowed = character.unit ? "In " + character.unit : "One or more of: " + Object.keys(character.states).join(", ");
    return character.name + ": " + character.asksWritten + " " + allowed + "; or any: true.";
  }
  /** The whole text of the file of an entry, or of a set of look-alikes, with what the schema says of each field. */
  function fileText(data, raw, kind) {
    const comments = kind === "look-alike" ? data.lookAlike.comments : data.comments, up = kind === "look-alike" ? "../../" : "../../../";
    let text = "# yaml-language-server: $schema=" + up + data.schemaFolder + "/" + (kind || "entry") + ".schema.json\n";
    const left = [];
    for (const [field, about] of Object.entries(comments)) {
      if (!(field in raw)) { left.push([field, about]); continue; }
      text += comment(data, about);
      if (field !== "characters" || kind === "look-alike") { text += pair(data, field, raw[field], 0); continue; }
      text += "characters:\n";
      for (const [id, each] of Object.entries(raw.characters)) text += comment(data, asked(data.characters[id]), 2) + "  " + id + ": " + flow(each) + "\n";
    }
    return text + (left.length ? "\n# What else can be said here:\n" + left.map(([field, about]) => comment(data, field + ": " + about)).join("") : "");
  }
  const fileName = raw => "keydata/entries/" + raw.theme + "/" + raw.id + ".yaml";
  /** An id made of a name: "Tarn End worm" gives "tarn-end-worm". */
  function slug(words) {
    const parts = words.normalize("NFKD").replace(/[^\x00-\x7f]/g, "").toLowerCase().match(/[a-z0-9]+/g) || [];
    while (parts.length && !/^[a-z]/.test(parts[0])) parts.shift();
    return parts.join("-").slice(0, 48).replace(/^-+|-+$/g, "");
  }
  /** The data without fields that nothing was said for. */
  function withoutEmpty(raw) {
    const left = {};
    for (const [name, value] of Object.entries(raw)) {
      const inner = value && typeof value === "object" && !Array.isArray(value) ? withoutEmpty(value) : value;
      const empty = inner === "" || inner === null || inner === undefined || (typeof inner === "object" && !Object.keys(inner).length);
      if (!empty) left[name] = inner;
    }
    return left;
  }

  Object.assign(W, { scalar, flow, pair, comment, fileText, fileName, slug, withoutEmpty });
})(self.WetmountContribute = self.WetmountContribute || {});
