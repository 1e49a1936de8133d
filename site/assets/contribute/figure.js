/* What to draw: a kind of drawing and its parameters, those first that drawings of this kind are mostly told. */
(function (W) {
  "use strict";
  const { el } = W;
  const FIRST = 6;

  class Figure {
    constructor(form) {
      this.form = form;
      this.kind = form.select("figure", Object.entries(form.data.kinds).map(([id, each]) => [id, id + ": " + each.about]), "No drawing yet");
      this.params = el("div", {});
      this.take = el("button", { type: "button", hidden: true });
      this.take.addEventListener("click", () => { this.kind.value = this.like.figure.kind; this.show(this.like.figure); form.update(); form.keep(); });
      this.root = el("div", {}, form.row("figure", "Kind of drawing", "Drawn to scale from these figures by a program. Leave it if you are not sure; others can add it. "
        + "A few choices exclude each other; whoever takes it in is told which.", this.kind), this.take, this.params);
    }
    /** Offers the drawing of the nearest entry to start from. */
    propose(like) {
      this.like = like;
      this.take.hidden = !like.figure;
      this.take.textContent = "Start from the drawing of " + like.name;
    }
    /** Shows the parameters of a kind, filled in as another drawing has them. */
    show(figure) {
      const data = this.form.data, kind = data.kinds[this.kind.value];
      this.params.replaceChildren();
      if (!kind) return;
      const like = Object.values(data.entries).filter(each => each.figure && each.figure.kind === this.kind.value).map(each => each.figure);
      const used = name => like.filter(each => name in each).length;
      const names = Object.keys(kind.params).sort((one, other) => used(other) - used(one));
      const rows = names.map(name => this.row(name, kind.params[name], (figure || {})[name]));
      this.params.append(...this.sample(), ...rows.slice(0, FIRST));
      if (rows.length > FIRST) this.params.append(el("details", { class: "wm-fold" }, el("summary", {}, "Everything else it can be told"), ...rows.slice(FIRST)));
    }
    /** The drawing of an entry of this kind, the nearest one if it is of this kind. */
    sample() {
      const data = this.form.data, isOne = id => data.entries[id] && data.entries[id].figure && data.entries[id].figure.kind === this.kind.value;
      const id = [W.idOf(data, this.form.value("like")), ...Object.keys(data.entries)].find(isOne);
      if (!id) return [];
      const image = el("img", { src: "../drawings/" + id + ".svg", alt: "" });
      const sheet = el("div", { class: "wm-sheet" }, el("figure", {}, image, el("figcaption", {}, "Such a drawing: " + data.entries[id].name)));
      image.addEventListener("error", () => sheet.remove());
      return [sheet];
    }
    row(name, param, given) {
      const form = this.form, id = "figure-" + name, plain = typeof given === "object" ? undefined : given;
      const otherwise = "default" in param ? " Otherwise " + (typeof param.default === "boolean" ? (param.default ? "yes" : "no") : param.default) + "." : "";
      const about = param.about + "." + otherwise;
      let control;
      if (param.type === "choice") control = form.select(id, param.choices.map(each => [each, each]), "As it comes");
      else if (param.type === "flag") control = form.select(id, [["true", "yes"], ["false", "no"]], "As it comes");
      else control = el("input", { id: "wm-" + id, name: id, inputmode: "decimal" });
      if (plain !== undefined) control.value = String(plain);
      const row = form.row(id, name + (param.type === "um" ? ", µm" : ""), about, control);
      if (param.type === "um") {
        const units = form.data.words.unit, isLength = each => each.unit && units.find(unit => unit.id === each.unit).dimension === "length";
        const of = form.select(id + "-of", Object.entries(form.data.characters).filter(([, each]) => isLength(each)).map(([id, each]) => [id, "the middle of its " + each.name.toLowerCase()]).sort(([, one], [, other]) => one.localeCompare(other, "en")), "or take it from what it shows");
        of.setAttribute("aria-label", name + ", taken from what it shows");
        if (given && typeof given === "object") of.value = given.of;
        row.append(of);
      }
      return row;
    }
    /** The figure as it stands in the file; a number that is none stays a text, for the check to see. */
    raw() {
      const form = this.form, kind = form.data.kinds[this.kind.value];
      if (!kind) return null;
      const figure = { kind: this.kind.value };
      for (const [name, param] of Object.entries(kind.params)) {
        const text = form.value("figure-" + name), of = form.value("figure-" + name + "-of");
        if (of) figure[name] = { of };
        else if (text && param.type === "flag") figure[name] = text === "true";
        else if (text && param.type === "choice") figure[name] = text;
        else if (text) figure[name] = isFinite(text.replace(",", ".")) ? Number(text.replace(",", ".")) : text;
      }
      return figure;
    }
  }

  Object.assign(W, { Figure });
})(self.WetmountContribute = self.WetmountContribute || {});
