/* What the thing is taken for: one set of fields for each look-alike, and one more for the next. */
(function (W) {
  "use strict";
  const { el } = W;

  class Mistaken {
    constructor(form) {
      this.form = form;
      this.rows = [];
      this.list = el("div", {});
      this.more = el("button", { type: "button" }, "Add a look-alike");
      this.more.addEventListener("click", () => { this.add(); form.update(); form.keep(); this.rows[this.rows.length - 1].querySelector("input").focus(); });
      this.root = el("div", {}, el("p", { class: "wm-about" }, form.data.mistakes.about), this.list, this.more);
    }
    add() {
      const form = this.form, name = "mistaken-" + this.rows.length, id = part => "wm-" + name + "-" + part;
      const field = (part, label, control) => [el("label", { for: control.id }, label), control];
      const fault = el("p", { "aria-live": "polite", class: "wm-wrong", id: id("wrong") });
      const entry = el("input", { id: id("entry"), name: name + "-entry", list: "wm-entries", autocomplete: "off" });
      const by = el("textarea", { id: id("by"), name: name + "-by" });
      const character = form.characterSelect(name + "-character", Object.keys(form.data.characters), "None by itself");
      const row = el("fieldset", { "data-row": name, "aria-describedby": fault.id }, el("legend", {}, "Taken for"),
        ...field("entry", "Entry: type part of a name", entry), ...field("by", form.data.mistakes.by, by),
        ...field("character", "The character that tells them apart", character), fault,
        el("details", { class: "wm-fold" }, el("summary", {}, "This rests on something else"), form.basis("basis-" + name, "What this rests on", false)));
      this.rows.push(row);
      this.list.append(row);
    }
    /** The look-alikes as they stand in the file; a set of fields in which nothing is written is none. */
    raw(basis) {
      const form = this.form;
      return this.filled().map(at => {
        const name = "mistaken-" + at, value = part => form.value(name + "-" + part);
        const character = value("character") ? { character: value("character") } : {};
        return { entry: W.idOf(form.data, value("entry")) || value("entry"), by: value("by"), ...character, basis: form.basisOf("basis-" + name) || basis };
      });
    }
    /** The numbers of the sets of fields in which something is written. */
    filled() { return this.rows.map((row, at) => at).filter(at => ["entry", "by"].some(part => this.form.value("mistaken-" + at + "-" + part))); }
    bases() { return this.rows.map((row, at) => "basis-mistaken-" + at); }
  }

  Object.assign(W, { Mistaken });
})(self.WetmountContribute = self.WetmountContribute || {});
