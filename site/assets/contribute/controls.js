/* The rows of a form: a label, what it is about, the control, and what is wrong with it, said where it is read out. */
(function (W) {
  "use strict";
  const { el } = W;

  class Controls {
    field(name) { return this.form.querySelector("#wm-" + CSS.escape(name)); }
    value(name) { return (this.field(name) || { value: "" }).value.trim(); }
    picked(name) { return [...this.form.querySelectorAll("input[name='" + name + "']:checked")].map(each => each.value); }
    select(name, pairs, first) {
      return el("select", { id: "wm-" + name, name }, el("option", { value: "" }, first || "Choose"), ...pairs.map(([id, label]) => el("option", { value: id }, label)));
    }
    /** Options for pairs of id and label, under the theme of each and in the order of what is shown; what belongs to several themes comes first. */
    grouped(pairs, themeOf) {
      const byLabel = (one, other) => one[1].localeCompare(other[1], "en") || (one[0] < other[0] ? -1 : 1);
      const options = list => list.sort(byLabel).map(([id, label]) => el("option", { value: id }, label));
      const themes = [{ id: "", label: "Seen on several kinds of thing" }, ...this.data.words.theme];
      return themes.map(theme => [theme.label, pairs.filter(([id]) => themeOf(id) === theme.id)]).filter(([, list]) => list.length)
        .map(([label, list]) => el("optgroup", { label }, ...options(list)));
    }
    /** Options for characters, by what they are called. */
    characterOptions(ids) { return this.grouped(ids.map(id => [id, this.data.characters[id].name]), id => this.data.characters[id].theme); }
    characterSelect(name, ids, first) { return el("select", { id: "wm-" + name, name }, el("option", { value: "" }, first || "Choose"), ...this.characterOptions(ids)); }
    row(name, label, about, control, isSet) {
      const help = el("p", { class: "wm-about", id: "wm-" + name + "-about" }, about || ""), fault = el("p", { "aria-live": "polite", class: "wm-wrong", id: "wm-" + name + "-wrong" });
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
      const fault = el("p", { "aria-live": "polite", class: "wm-wrong", id: "wm-" + name + "-wrong" });
      return el("fieldset", { "data-row": name, "aria-describedby": fault.id }, el("legend", {}, legend),
        el("label", { for: kind.id }, "Basis"), kind, only("published", "Source", source), only("published", "How you know the value", value),
        only("computed", "Formula with its figures", how), fault);
    }
    /** What is missing of a basis, beside which it is said. */
    basisFaults(name) {
      const basis = this.basisOf(name), needs = word => [{ field: name, message: "'" + word + "' is missing.", allowed: "", tip: "" }];
      if (basis && basis.kind === "published" && !basis.sources.length) return needs("sources");
      return basis && basis.kind === "computed" && !basis.how ? needs("how") : [];
    }
    /** Shows the parts of each basis that its kind needs. */
    showNeeded() {
      for (const each of this.form.querySelectorAll("[data-only]")) {
        const [name, wanted] = each.dataset.only.split("=");
        each.hidden = this.value(name) !== wanted;
      }
    }
    basisOf(name) {
      const kind = this.value(name + "-kind");
      if (!kind) return null;
      if (kind === "published") return { kind, sources: [this.value(name + "-source")].filter(Boolean), value: this.value(name + "-value") };
      return kind === "computed" ? { kind, how: this.value(name + "-how") } : { kind };
    }
  }

  Object.assign(W, { Controls });
})(self.WetmountContribute = self.WetmountContribute || {});
