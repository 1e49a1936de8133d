/* Where the thing comes out at another: what parts the two, and the couplet that asks for it, to be changed and sent along. */
(function (W) {
  "use strict";
  const { coupletDraft, coupletText, el, filled, isStretch, nameOf, notStated, others, partings, tooLong, ways, withCouplet } = W;

  class Couplets {
    constructor(form) {
      this.form = form;
      this.blocks = new Map();
      this.root = el("div", {});
    }
    /** One block for each last lead at which the entry comes out together with others. */
    update(entry) {
      const data = this.form.data, met = new Map();
      for (const way of entry.within.length ? ways(data, entry) : []) {
        const last = way.steps[way.steps.length - 1], collides = way.fault === "wrong-end";
        const rivals = last && (collides || (!way.fault && way.end !== entry.id && !data.keys[way.end])) ? others(data, way, entry.id) : [];
        if (rivals.length) met.set(way.key + "/" + last.join("/"), { way, rivals, collides });
      }
      for (const [name, block] of this.blocks) if (!met.has(name)) { block.root.remove(); this.blocks.delete(name); }
      for (const [name, { way, rivals, collides }] of met) {
        const found = partings(data, entry, rivals, data.keys[way.key].magnification);
        const sign = JSON.stringify([entry.id, entry.name, rivals, found]);
        if ((this.blocks.get(name) || {}).sign === sign) continue;
        const block = new Block(this.form, name, { entry, way, rivals, collides, found }), old = this.blocks.get(name);
        block.sign = sign;
        if (old) old.root.replaceWith(block.root); else this.root.append(block.root);
        this.blocks.set(name, block);
      }
    }
    wanted() { return [...this.blocks.values()].map(block => block.draft()).filter(Boolean); }
    faults() { return [...this.blocks.values()].flatMap(block => block.faults()); }
    /** The data with every couplet that is wanted put in. */
    data() { return this.wanted().reduce(withCouplet, this.form.data); }
  }

  class Block {
    constructor(form, name, found) {
      Object.assign(this, { form, name, ...found });
      const data = form.data, { entry, rivals } = found, n = Math.abs([...name].reduce((sum, sign) => (sum * 31 + sign.codePointAt(0)) | 0, 7));
      const names = rivals.slice(0, data.mostNamed).map(id => nameOf(data, id)).join(", ") + (rivals.length > data.mostNamed ? " and " + (rivals.length - data.mostNamed) + " more" : "");
      this.id = "wm-couplet-" + n;
      this.drafts = found.found.map(parting => coupletDraft(data, entry, found.way, parting));
      const open = this.drafts.findIndex(Boolean);
      const parts = [el("summary", {}, "A couplet that parts it from " + names)];
      if (open < 0) parts.push(...this.nothing(names));
      else parts.push(...this.asked(open));
      this.root = el("details", { class: "wm-fold", "data-couplet": name, open: found.collides }, ...parts);
    }
    nothing(names) {
      const { form: { data }, entry, rivals, found } = this, missing = notStated(data, entry, rivals).map(id => data.characters[id].name.toLowerCase()).join(", ");
      if (found.length) return found.map(each => el("p", {}, filled(data.sentences["no-quantity"], { words: data.characters[each.character].name })));
      return [el("p", {}, filled(data.sentences["nothing-parts"], { entry: entry.name, others: names })), ...(missing ? [el("p", {}, filled(data.sentences["not-stated"], { missing }))] : [])];
    }
    asked(open) {
      const data = this.form.data, input = (part, label) => { const made = el("input", { id: this.id + "-" + part, name: this.id + "-" + part }); return [made, el("div", { class: "wm-row" }, el("label", { for: made.id }, label), made)]; };
      this.by = el("select", { id: this.id + "-by", name: this.id + "-by" }, ...this.found.map((each, at) => el("option", { value: at, selected: at === open, disabled: !this.drafts[at] }, this.words(each))));
      const [question, asksRow] = input("asks", "The question"), [own, ownRow] = input("own", "What is seen of " + this.entry.name), [rest, restRow] = input("rest", "What is seen of the rest");
      Object.assign(this, { question, own, rest, send: el("input", { type: "checkbox", name: this.id + "-send", value: "send" }), wrong: el("p", { "aria-live": "polite", class: "wm-wrong" }), text: el("pre", { tabindex: "0", "aria-label": "The couplet" }) });
      this.by.addEventListener("change", () => this.fill());
      this.fill();
      return [el("div", { class: "wm-row" }, el("label", { for: this.by.id }, "By which character"), this.by), asksRow, ownRow, restRow, this.wrong,
        el("div", { class: "wm-choices" }, el("label", {}, this.send, "Send this couplet with the file")), this.text];
    }
    words(parting) {
      const data = this.form.data, character = data.characters[parting.character];
      return character.name + (isStretch(parting.own) ? (parting.at ? "" : " (no bench quantity lies between)") : ": " + parting.own.map(id => character.states[id]).join(" or "));
    }
    fill() {
      const { raw } = this.drafts[this.by.value], [own, rest] = Object.values(raw.leads);
      this.question.value = raw.asks; this.own.value = own.text; this.rest.value = rest.text;
    }
    /** The couplet as it was changed, or nothing where there is none. */
    changed() {
      const draft = this.by ? this.drafts[this.by.value] : null;
      if (!draft) return null;
      const [[ownSlug, own], [restSlug, rest]] = Object.entries(draft.raw.leads);
      return { ...draft, raw: { asks: this.question.value.trim(), leads: { [ownSlug]: { ...own, text: this.own.value.trim() }, [restSlug]: { ...rest, text: this.rest.value.trim() } } } };
    }
    draft() {
      const draft = this.changed();
      if (!draft) return null;
      this.text.textContent = coupletText(this.form.data, draft);
      this.wrong.textContent = tooLong(this.form.data, draft);
      return this.send.checked ? draft : null;
    }
    faults() {
      const draft = this.draft(), empty = draft && [draft.raw.asks, ...Object.values(draft.raw.leads).map(each => each.text)].some(each => !each);
      const message = draft ? tooLong(this.form.data, draft) || (empty ? "A question or a lead is empty." : "") : "";
      return message ? [{ field: "couplet", message, allowed: "", tip: "" }] : [];
    }
  }

  Object.assign(W, { Couplets });
})(self.WetmountContribute = self.WetmountContribute || {});
