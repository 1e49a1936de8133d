/* The form for things that are taken for each other, as the command `wetmount new look-alike` asks for them. */
(function (W) {
  "use strict";
  const { checkTyped, el, fileText, Giving, idOf, isEmpty, meet, slug, unknownEntry, withoutEmpty, wrong } = W;
  const TYPED = ["title", "id", "about", "decisive"];

  /** The characters in which at least two entries have nothing in common, the least often misread first; else those in which two differ. */
  function worthComparing(data, ids) {
    const entries = ids.map(id => data.entries[id]), stated = [...new Set(entries.flatMap(each => Object.keys(each.shows)))];
    const differ = (name, wholly) => {
      const shown = entries.filter(each => each.shows[name]).map(each => each.shows[name]);
      return shown.some((one, at) => shown.slice(at + 1).some(other => (wholly ? isEmpty(meet(one, other)) : JSON.stringify(one) !== JSON.stringify(other))));
    };
    const wholly = stated.filter(name => differ(name, true)), found = wholly.length ? wholly : stated.filter(name => differ(name, false));
    const order = name => data.characters[name].misread;
    return found.sort((one, other) => order(one) - order(other) || (one < other ? -1 : 1));
  }

  class LookAlikeForm extends Giving {
    constructor(data, kind) {
      super(data, kind);
      const say = data.lookAlike.fields, text = (name, label, long) => this.row(name, label, say[name].about, el(long ? "textarea" : "input", { id: "wm-" + name, name }));
      const entries = Array.from({ length: data.lookAlike.most }, (each, at) => this.row("entry-" + at, "Entry " + (at + 1), at < data.lookAlike.least ? "Type part of a name." : "",
        el("input", { id: "wm-entry-" + at, name: "entry-" + at, list: "wm-entries" })));
      this.compared = el("div", { class: "wm-choices" });
      this.more = el("select", { id: "wm-more" }, el("option", { value: "" }, "Choose"), ...this.characterOptions(Object.keys(data.characters)));
      this.form.append(this.begin(), el("h2", {}, "Which things"), ...entries, el("h2", {}, "How to tell"), text("title", "The question people have"),
        this.row("id", "Id", "Made from the question: lower-case words joined by '-'.", el("input", { id: "wm-id", name: "id", autocapitalize: "none", spellcheck: "false" })),
        text("about", "Why they are taken for each other", true), text("decisive", "The one test to do first", true), this.basis("basis", "What that test rests on", true),
        this.row("characters", "What to compare", "Those in which they differ are proposed; take away what does not help.", this.compared, true),
        this.row("more", "Compare something else", "", this.more), ...this.end("file"));
    }
    entries() { return Array.from({ length: this.data.lookAlike.most }, (each, at) => idOf(this.data, this.value("entry-" + at))).filter(Boolean); }
    typed() { return Object.fromEntries(TYPED.map(name => [name, this.value(name)])); }
    compare(id, taken) {
      if (!this.data.characters[id] || this.compared.querySelector("[value='" + id + "']")) return;
      this.compared.append(el("label", {}, el("input", { type: "checkbox", name: "characters", value: id, checked: taken }), this.data.characters[id].name));
    }
    changed(event) {
      const name = event.target.name || "";
      if (event.target === this.more && this.more.value) { this.compare(this.more.value, true); this.more.value = ""; }
      if (name.startsWith("entry-")) this.propose();
      if (name === "id") this.hasId = true;
      if (name === "title") this.titled = true;
      if (!this.hasId) this.field("id").value = slug(this.value("title"));
      if (event.type === "change") this.touched.add(name.replace(/-(kind|source|value|how)$/, ""));
      this.update();
    }
    propose() {
      const { data } = this, ids = [...new Set(this.entries())], sign = ids.join();
      if (ids.length < 2 || sign === this.sign) return;
      this.sign = sign;
      const taken = this.picked("characters"), name = id => data.entries[id].name;
      this.compared.replaceChildren();
      for (const id of worthComparing(data, ids)) this.compare(id, true);
      for (const id of taken) this.compare(id, false);
      if (!this.titled) this.field("title").value = ids.slice(0, -1).map(name).join(", ") + " or " + name(ids[ids.length - 1]).toLowerCase() + "?";
    }
    raw() {
      const typed = this.typed();
      return { id: typed.id, title: typed.title, about: typed.about, entries: this.entries(), decisive: { text: typed.decisive, basis: this.basisOf("basis") }, characters: this.picked("characters") };
    }
    faults(raw) {
      const { data } = this, found = [], own = data.lookAlike;
      for (let at = 0; at < own.most; at++) {
        const words = this.value("entry-" + at), id = idOf(data, words);
        if (words && !id) found.push({ field: "entry-" + at, ...unknownEntry(data, words) });
        else if (id && raw.entries.filter(each => each === id).length > 1) found.push(wrong("entry-" + at, { message: "'entries' names '{id}' twice.", tip: "Keep one of the two." }, { id }));
      }
      if (raw.entries.length < own.least) found.push(wrong("entry-" + raw.entries.length, { ...own.few, message: own.few.message.replace("1", String(raw.entries.length)) }, {}));
      found.push(...checkTyped(own.fields, this.typed(), TYPED));
      if (data.taken[raw.id]) found.push(wrong("id", data.says.taken, { id: raw.id, file: data.taken[raw.id] }));
      if (!raw.characters.length) found.push({ field: "characters", message: "'characters' is missing.", allowed: "", tip: "Choose at least one." });
      return [...found, ...this.basisFaults("basis")];
    }
    update() {
      this.showNeeded();
      const raw = this.raw(), faults = this.faults(raw);
      this.offer(raw.id ? "keydata/look-alikes/" + raw.id + ".yaml" : "", fileText(this.data, withoutEmpty(raw), "look-alike"), faults, "The file is right. Whoever takes it in runs every check once more.", withoutEmpty(raw));
    }
    kept() { return { ...super.kept(), named: this.hasId, titled: this.titled, offered: [...this.compared.querySelectorAll("input")].map(each => each.value) }; }
    putBack(before) {
      this.hasId = before.named; this.titled = before.titled;
      for (const id of before.offered) this.compare(id, false);
      super.putBack(before);
      this.sign = [...new Set(this.entries())].join();
    }
  }

  Object.assign(W, { LookAlikeForm, worthComparing });
})(self.WetmountContribute = self.WetmountContribute || {});
