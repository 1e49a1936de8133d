/* The form for a new entry: asks what the command `wetmount new entry` asks, checks by the same rules in the same words
   (both come from contribute-data.js, which is made from the library), shows where the entry comes out in the keys, and
   writes the same file. Nothing leaves the page. The first half knows nothing of the page and runs in node as well. */
(function (root, make) {
  const api = make();
  if (typeof module === "object" && module.exports) module.exports = api;
  else { root.WetmountContribute = api; api.start(root); }
})(typeof self === "undefined" ? this : self, function () {
  "use strict";

  // --- the file, written as keytool/contribute/yaml_text.py and draft.py write it ---------------------------------

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
  /** The whole text of the file of an entry. */
  function fileText(data, raw) {
    let text = "# yaml-language-server: $schema=../../../" + data.schemaFolder + "/entry.schema.json\n";
    const left = [];
    for (const [field, about] of Object.entries(data.comments)) {
      if (!(field in raw)) { left.push([field, about]); continue; }
      text += comment(data, about);
      if (field !== "characters") { text += pair(data, field, raw[field], 0); continue; }
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

  // --- the rules --------------------------------------------------------------------------------------------------

  function filled(sentence, words) {
    return sentence.replace(/\{([a-z]+)\}/g, (whole, name) => (name in words ? words[name] : whole));
  }
  function wrong(field, said, words) {
    return { field, message: filled(said.message, words), allowed: filled(said.allowed || "", words), tip: filled(said.tip || "", words) };
  }
  const NEEDED = ["id", "common", "summary", "contributor", "reviewed"];
  const length = text => Array.from(text).length;

  /** Everything that is wrong with what was typed: one item for each field at fault. `typed` holds texts, `raw` the file as data. */
  function check(data, typed, raw) {
    const found = [];
    for (const [name, field] of Object.entries(data.fields)) {
      const value = typed[name] || "", said = field.says;
      if (!value) {
        const needed = NEEDED.includes(name) || (name === "would-tell" && raw.kind === "cannot-be-told");
        if (needed) found.push(wrong(name, said.missing, {}));
      } else if (field.pattern && !new RegExp(field.pattern, "u").test(value)) found.push(wrong(name, said.pattern, { value }));
      else if (field.minLength && length(value) < field.minLength) found.push(wrong(name, said.short, {}));
      else if (field.maxLength && length(value) > field.maxLength) found.push(wrong(name, said.long, { length: length(value) }));
    }
    if (data.taken[raw.id]) found.push(wrong("id", data.says.taken, { id: raw.id, file: data.taken[raw.id] }));
    if (raw.kind === "group") found.push(wrong("kind", data.says.members, { id: raw.id || "" }));
    else if (!raw.commonness) found.push(wrong("commonness", data.says.commonness, { id: raw.id || "" }));
    if (raw.theme === data.fedTheme && !raw.feeding) found.push(wrong("feeding", data.says.feeding, { id: raw.id || "" }));
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
    return found;
  }
  function bases(value) {
    if (!value || typeof value !== "object") return [];
    return [...(value.kind && value.value ? [value] : []), ...Object.values(value).flatMap(bases)];
  }

  // --- the ways through the keys, as keytool/contribute/outcome.py walks them -------------------------------------

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
      const groups = Object.values(data.keys).flatMap(key => key.scope.map(group => group + " (" + key.title + ")")).join(", ");
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

  // --- the page ---------------------------------------------------------------------------------------------------

  function el(tag, attributes, ...children) {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes || {})) {
      if (value === true) made.setAttribute(name, ""); else if (value !== false && value !== null && value !== undefined) made.setAttribute(name, value);
    }
    made.append(...children.filter(each => each !== null && each !== undefined));
    return made;
  }
  const STYLE = `
    .wm-form { --wm-gap: .6rem; } .wm-form [hidden] { display: none !important; }
    .wm-form label, .wm-form legend { font-weight: 600; display: block; padding: 0; }
    .wm-form .wm-row, .wm-form fieldset { margin: 0 0 1rem; border: 0; padding: 0; min-width: 0; }
    .wm-form fieldset { border-left: 3px solid var(--wm-rule, #999); padding-left: var(--wm-gap); }
    .wm-form input:not([type=checkbox]):not([type=radio]), .wm-form select, .wm-form textarea {
      font: inherit; color: inherit; background: var(--wm-sheet, Field); border: 1px solid var(--wm-soft, #666); border-radius: .3rem;
      min-height: 48px; padding: .3rem .6rem; width: 100%; box-sizing: border-box; }
    .wm-form textarea { min-height: 6rem; }
    .wm-form [aria-invalid=true] { border: 2px solid var(--wm-accent, #a30); }
    .wm-form .wm-about { color: var(--wm-soft, #555); font-size: .9em; margin: 0 0 .2rem; }
    .wm-form .wm-wrong { color: var(--wm-accent, #a30); margin: .2rem 0 0; font-size: .9em; }
    .wm-form .wm-wrong:empty { display: none; }
    .wm-form .wm-choices { display: flex; flex-wrap: wrap; gap: .3rem; }
    .wm-form .wm-choices label { display: inline-flex; align-items: center; gap: .5rem; min-height: 48px; padding: 0 .8rem; font-weight: 400;
      border: 1px solid var(--wm-rule, #999); border-radius: .3rem; cursor: pointer; }
    .wm-form .wm-choices input { width: 1.3rem; height: 1.3rem; margin: 0; accent-color: var(--wm-accent, #a30); }
    .wm-form .wm-numbers { display: grid; grid-template-columns: 1fr 1fr 1fr; gap: .4rem; }
    .wm-form button { font: inherit; font-weight: 600; min-height: 48px; padding: .4rem 1rem; border-radius: .3rem; cursor: pointer;
      border: 2px solid var(--wm-accent, #a30); background: none; color: inherit; margin: 0 .4rem .4rem 0; }
    .wm-form button.wm-main { background: var(--wm-accent, #a30); color: var(--wm-on-accent, #fff); }
    .wm-form button[data-waits] { border-style: dashed; opacity: .75; }
    .wm-form pre { overflow: auto; max-height: 24rem; padding: .6rem; background: var(--wm-sheet, #eee); border: 1px solid var(--wm-rule, #999); font-size: .8em; }
    .wm-form .wm-collides { border-left: 5px solid var(--wm-accent, #a30); padding-left: .6rem; font-weight: 600; }`;

  function start(root) {
    if (typeof document === "undefined") return;
    const open = () => {
      for (const place of document.querySelectorAll("[data-contribute]")) {
        const inside = place.querySelector("script[type='application/json']");
        const data = inside ? JSON.parse(inside.textContent) : root.WETMOUNT_CONTRIBUTE;
        if (data) new Form(data, place);
      }
    };
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", open); else open();
  }

  class Form {
    constructor(data, place) {
      this.data = data;
      this.touched = new Set();
      this.slugged = true;
      this.statements = {};
      if (!document.getElementById("wm-form-style")) document.head.append(el("style", { id: "wm-form-style" }, STYLE));
      this.form = el("form", { class: "wm-form", novalidate: true, autocomplete: "off" });
      this.form.addEventListener("submit", event => event.preventDefault());
      this.build();
      place.replaceChildren(this.form);
      this.form.addEventListener("input", event => this.changed(event));
      this.form.addEventListener("change", event => this.changed(event));
      this.update();
    }
    build() {
      const { data } = this, words = data.words;
      const choose = (name, label, list, about) => this.row(name, label, about, el("select", { id: "wm-" + name, name },
        el("option", { value: "" }, "Choose"), ...list.map(each => el("option", { value: each.id }, each.label))));
      const groups = Object.entries(data.entries).filter(([, each]) => data.holdingKinds.includes(each.kind)).map(([id, each]) => ({ id, label: each.name + " (" + id + ")" }));
      const like = this.row("like", "What is it nearest to?", "Type part of a name. Its group, kind and theme are then proposed.",
        el("input", { id: "wm-like", name: "like", list: "wm-like-list" }));
      like.append(el("datalist", { id: "wm-like-list" }, ...Object.entries(data.entries).map(([id, each]) => el("option", { value: id }, each.name + (each.scientific ? ", " + each.scientific : "")))));
      this.shown = el("div", {});
      this.more = el("select", { id: "wm-more" }, el("option", { value: "" }, "Choose"),
        ...Object.entries(data.characters).map(([id, each]) => el("option", { value: id }, each.name)));
      this.status = el("p", { role: "status", "aria-live": "polite", class: "wm-status" });
      this.outcome = el("div", { "aria-live": "polite" });
      this.preview = el("pre", { tabindex: "0", "aria-label": "The file" });
      this.copy = el("button", { type: "button", class: "wm-main" }, "Copy the file");
      this.download = el("button", { type: "button" }, "Download the file");
      this.copy.addEventListener("click", () => this.give(() => this.toClipboard()));
      this.download.addEventListener("click", () => this.give(() => this.toDisk()));
      this.form.append(
        like, this.text("common", "Common name"), this.text("scientific", "Scientific name"), this.text("id", "Id"),
        choose("kind", "Kind of thing", words["entry-kind"], data.comments.kind), choose("theme", "Theme", words.theme, "What it will be listed under."),
        choose("within", "Group that holds it", groups, data.comments.within), choose("within2", "A second group", groups, "Only where it stands in two."),
        this.text("summary", "What one sees", true), this.text("would-tell", "What would tell it", true),
        choose("commonness", "How often in soil drops", words.commonness, data.comments.commonness),
        this.row("feeding", "What it lives on", data.comments.feeding, this.choices("feeding", words.feeding.map(each => [each.id, each.label])), true),
        this.basis("basis", "What your statements rest on", true),
        el("h2", {}, "What it shows"),
        el("p", { class: "wm-about" }, "What its groups say is known already. Here is what the keys ask on its way; more questions follow as you answer."),
        this.shown, this.row("more", "State something else", "Anything it shows that tells it apart.", this.more),
        el("h2", {}, "Who and when"), this.text("contributor", "Your name"), this.text("reviewed", "Date"),
        el("h2", {}, "Where it comes out"), this.outcome,
        el("h2", {}, "The file"), this.status, this.preview, el("p", {}, this.copy, this.download));
      this.field("reviewed").value = new Date().toISOString().slice(0, 10);
    }
    field(name) { return this.form.querySelector("#wm-" + name); }
    value(name) { return (this.field(name) || { value: "" }).value.trim(); }
    picked(name) { return [...this.form.querySelectorAll("input[name='" + name + "']:checked")].map(each => each.value); }
    text(name, label, long) {
      return this.row(name, label, this.data.fields[name].about, el(long ? "textarea" : "input", { id: "wm-" + name, name }));
    }
    row(name, label, about, control, isSet) {
      const help = el("p", { class: "wm-about", id: "wm-" + name + "-about" }, about || ""), fault = el("p", { class: "wm-wrong", id: "wm-" + name + "-wrong" });
      const described = help.id + " " + fault.id;
      if (isSet) return el("fieldset", { "data-row": name, "aria-describedby": described }, el("legend", {}, label), help, control, fault);
      control.setAttribute("aria-describedby", described);
      return el("div", { class: "wm-row", "data-row": name }, el("label", { for: control.id }, label), help, control, fault);
    }
    choices(name, pairs) {
      return el("div", { class: "wm-choices" }, ...pairs.map(([id, label]) => el("label", {}, el("input", { type: "checkbox", name, value: id }), label)));
    }
    basis(name, legend, whole) {
      const words = this.data.words, part = word => name + "-" + word;
      const kind = el("select", { id: "wm-" + part("kind"), name: part("kind") }, ...(whole ? [] : [el("option", { value: "" }, "As above")]),
        ...words.basis.map(each => el("option", { value: each.id, selected: whole && each.id === "memory" }, each.label)));
      const source = el("select", { id: "wm-" + part("source"), name: part("source") }, el("option", { value: "" }, "Choose"),
        ...Object.entries(this.data.sources).map(([id, each]) => el("option", { value: id }, each.cite.slice(0, 90))));
      const value = el("select", { id: "wm-" + part("value"), name: part("value") }, ...words.value.map(each => el("option", { value: each.id }, each.label)));
      const how = el("input", { id: "wm-" + part("how"), name: part("how") });
      const only = (wanted, label, control) => el("div", { "data-only": part("kind") + "=" + wanted, class: "wm-row" }, el("label", { for: control.id }, label), control);
      const fault = el("p", { class: "wm-wrong", id: "wm-" + name + "-wrong" });
      return el("fieldset", { "data-row": name, "aria-describedby": fault.id }, el("legend", {}, legend),
        el("label", { for: kind.id }, "Basis"), kind, only("published", "Source", source), only("published", "How you know the value", value),
        only("computed", "Formula with its figures", how), fault);
    }
    basisOf(name) {
      const kind = this.value(name + "-kind");
      if (!kind) return null;
      if (kind === "published") return { kind, sources: [this.value(name + "-source")].filter(Boolean), value: this.value(name + "-value") };
      return kind === "computed" ? { kind, how: this.value(name + "-how") } : { kind };
    }
    within() { return [...new Set([this.value("within"), this.value("within2")].filter(Boolean))]; }
    typed() { return Object.fromEntries(Object.keys(this.data.fields).map(name => [name, this.value(name)])); }
    raw() {
      const typed = this.typed(), basis = this.basisOf("basis"), characters = {};
      for (const id of Object.keys(this.statements)) {
        const each = this.statement(id);
        if (each) characters[id] = { ...each, basis: this.basisOf("basis-" + id) || basis };
      }
      const commonness = this.value("commonness"), feeding = this.picked("feeding");
      return withoutEmpty({ id: typed.id, kind: this.value("kind"), theme: this.value("theme"),
        names: { common: typed.common, scientific: typed.scientific }, within: this.within(), summary: typed.summary,
        commonness: commonness && this.value("kind") !== "group" ? { class: commonness, basis } : {}, feeding: feeding.length ? { groups: feeding, basis } : {},
        characters, "would-tell": this.value("kind") === "cannot-be-told" ? typed["would-tell"] : "",
        contributors: [typed.contributor].filter(Boolean), reviewed: typed.reviewed });
    }
    statement(id) {
      const character = this.data.characters[id];
      if (this.picked("any-" + id).length) return { any: true };
      if (!character.unit) {
        const states = this.picked("shows-" + id);
        return states.length ? { states: Object.keys(character.states).filter(each => states.includes(each)) } : null;
      }
      const number = end => { const text = this.value(id + "-" + end).replace(",", "."); return text === "" || !isFinite(text) ? undefined : Number(text); };
      const ends = Object.fromEntries([["low", number("low")], ["high", number("high")]].filter(([, each]) => each !== undefined));
      return Object.keys(ends).length ? { ...ends, unit: this.value(id + "-unit") } : null;
    }
    entry(raw) {
      const shows = inherited(this.data, raw.within || []);
      for (const [id, each] of Object.entries(raw.characters || {})) shows[id] = showing(this.data, id, each);
      return { id: raw.id || "?", name: (raw.names && raw.names.common) || "It", within: raw.within || [], shows };
    }
    ask(id) {
      if (this.statements[id]) return;
      const character = this.data.characters[id], units = this.data.words.unit;
      const any = el("label", {}, el("input", { type: "checkbox", name: "any-" + id, value: "any" }), "any, or not known");
      let control;
      if (character.unit) {
        const same = units.filter(each => each.dimension === units.find(unit => unit.id === character.unit).dimension);
        const number = (end, label) => el("div", {}, el("label", { for: "wm-" + id + "-" + end }, label), el("input", { id: "wm-" + id + "-" + end, name: id + "-" + end, inputmode: "decimal" }));
        control = el("div", {}, el("div", { class: "wm-numbers" }, number("low", "From"), number("high", "To"),
          el("div", {}, el("label", { for: "wm-" + id + "-unit" }, "Unit"), el("select", { id: "wm-" + id + "-unit", name: id + "-unit" },
            ...same.map(each => el("option", { value: each.id, selected: each.id === character.unit }, each.id))))), el("div", { class: "wm-choices" }, any));
      } else {
        control = this.choices("shows-" + id, Object.entries(character.states));
        control.append(any);
      }
      this.statements[id] = this.row("shows-" + id, character.name + ": " + character.asks, character.look, el("div", {}, control,
        el("details", {}, el("summary", {}, "This rests on something else"), this.basis("basis-" + id, "What this statement rests on", false))), true);
      this.shown.append(this.statements[id]);
    }
    changed(event) {
      const name = event.target.name || "";
      if (name === "like") this.propose();
      if (event.target === this.more && this.more.value) { this.ask(this.more.value); this.more.value = ""; }
      if (name === "id") this.slugged = false;
      if (["common", "scientific"].includes(name) && this.slugged) this.field("id").value = slug(this.value("scientific") || this.value("common"));
      if (event.type === "change") this.touched.add(name.replace(/-(kind|source|value|how)$/, "").replace(/^(.*)-(low|high|unit)$/, "shows-$1").replace(/^any-/, "shows-"));
      this.update();
    }
    propose() {
      const like = this.data.entries[this.value("like")];
      if (!like) return;
      this.field("kind").value = like.kind; this.field("theme").value = like.theme;
      this.field("within").value = like.within[0] || ""; this.field("within2").value = like.within[1] || "";
    }
    update() {
      for (const each of this.form.querySelectorAll("[data-only]")) {
        const [name, wanted] = each.dataset.only.split("=");
        each.hidden = this.value(name) !== wanted;
      }
      this.form.querySelector("[data-row='would-tell']").hidden = this.value("kind") !== "cannot-be-told";
      this.form.querySelector("[data-row='commonness']").hidden = this.value("kind") === "group";
      let raw = this.raw();
      for (const id of stillAsked(this.data, this.entry(raw))) this.ask(id);
      raw = this.raw();
      const entry = this.entry(raw), faults = [...this.unfinished(raw), ...check(this.data, this.typed(), raw)];
      this.showFaults(faults);
      const sentences = raw.within ? told(this.data, entry) : [];
      this.say(this.outcome, sentences.map(each => el("p", { class: each.fault && each.fault !== "unstated" ? "wm-collides" : "" }, each.text)), el("p", {}, "Choose the group that holds it, and it is walked through the keys."));
      const collides = sentences.filter(each => each.fault && each.fault !== "no-key").length;
      this.sound = !faults.length;
      const words = faults.length ? faults.length + (faults.length === 1 ? " thing is" : " things are") + " still to be filled in or mended: " + faults.map(each => this.label(each.field)).join(", ") + "."
        : collides ? "The file is right, but a key does not end rightly with it yet. Send it all the same: whoever takes it in adds the couplet." : "The file is right, and every key ends rightly with it.";
      if (this.status.textContent !== words) this.status.textContent = words;
      this.file = fileText(this.data, raw);
      this.name = raw.id && raw.theme ? fileName(raw) : "entry.yaml";
      this.preview.textContent = "# " + this.name + "\n" + this.file;
      for (const button of [this.copy, this.download]) button.toggleAttribute("data-waits", !this.sound);
    }
    /** What the form itself can see is missing: a choice not made, a basis not complete. */
    unfinished(raw) {
      const needs = (name, label) => ({ field: name, message: "'" + label + "' is missing.", allowed: "", tip: "" });
      const found = ["kind", "theme"].filter(name => !raw[name]).map(name => needs(name, name));
      for (const name of ["basis", ...Object.keys(this.statements).map(id => "basis-" + id)]) {
        const basis = this.basisOf(name);
        if (basis && basis.kind === "published" && !basis.sources.length) found.push(needs(name, "sources"));
        if (basis && basis.kind === "computed" && !basis.how) found.push(needs(name, "how"));
      }
      return found;
    }
    showFaults(faults) {
      const by = new Map(faults.map(each => [each.field, each]));
      for (const row of this.form.querySelectorAll("[data-row]")) {
        const name = row.dataset.row, fault = this.touched.has(name) || this.asked ? by.get(name) : undefined;
        const place = this.form.querySelector("#wm-" + CSS.escape(name) + "-wrong");
        const words = fault ? [fault.message, fault.allowed && "Allowed: " + fault.allowed + ".", fault.tip].filter(Boolean).join(" ") : "";
        if (place && place.textContent !== words) place.textContent = words;
        for (const control of row.querySelectorAll(":scope > input, :scope > select, :scope > textarea")) control.setAttribute("aria-invalid", String(Boolean(fault)));
      }
    }
    label(name) {
      const row = this.form.querySelector("[data-row='" + name + "']"), said = row && row.querySelector("label, legend");
      return said ? said.textContent : name;
    }
    say(place, wanted, otherwise) {
      const fresh = wanted.length ? wanted : [otherwise];
      if (place.textContent !== fresh.map(each => each.textContent).join("")) place.replaceChildren(...fresh);
    }
    give(how) {
      if (this.sound) { how(); return; }
      this.asked = true;
      this.update();
      const first = this.form.querySelector("[aria-invalid='true']") || [...this.form.querySelectorAll(".wm-wrong")].find(each => each.textContent);
      if (first) { first.scrollIntoView({ block: "center" }); if (first.focus) first.focus(); }
    }
    toClipboard() {
      const done = () => { this.status.textContent = "Copied. It belongs into " + this.name + "."; };
      const select = () => {
        const range = document.createRange();
        range.selectNodeContents(this.preview);
        getSelection().removeAllRanges(); getSelection().addRange(range);
        this.status.textContent = "This browser does not let the page copy. The file is selected; copy it by hand.";
      };
      if (navigator.clipboard && navigator.clipboard.writeText) navigator.clipboard.writeText(this.file).then(done, select); else select();
    }
    toDisk() {
      const address = URL.createObjectURL(new Blob([this.file], { type: "application/yaml" }));
      const link = el("a", { href: address, download: this.name.split("/").pop() });
      document.body.append(link); link.click(); link.remove();
      URL.revokeObjectURL(address);
      this.status.textContent = "Downloaded. It belongs into " + this.name + ".";
    }
  }

  return { scalar, flow, fileText, fileName, slug, withoutEmpty, check, ways, told, stillAsked, inherited, showing, start };
});
