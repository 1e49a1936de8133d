/* The form itself: asks what the command `wetmount new entry` asks, and shows where the entry comes out. */
(function (W) {
  "use strict";
  const { additions, check, Couplets, el, Figure, fileName, fileText, filled, Giving, idOf, inherited, kindAndGroups, listedAs, Mistaken, showing, slug, stillAsked, thatMatter, told, unknownEntry, withoutEmpty } = W;

  class EntryForm extends Giving {
    constructor(data, kind) {
      super(data, kind);
      this.slugged = true;
      this.statements = {};
      this.build();
    }
    build() {
      const { data } = this, words = data.words;
      const choose = (name, label, list, about) => this.row(name, label, about, el("select", { id: "wm-" + name, name },
        el("option", { value: "" }, "Choose"), ...list.map(each => el("option", { value: each.id }, each.label))));
      const holding = Object.entries(data.entries).filter(([, each]) => data.holdingKinds.includes(each.kind));
      const group = (name, label, about) => this.row(name, label, about, el("select", { id: "wm-" + name, name }, el("option", { value: "" }, "Choose"),
        ...this.grouped(holding.map(([id, each]) => [id, listedAs(each)]), id => data.entries[id].theme)));
      const like = this.row("like", "What is it nearest to?", "Type part of any of its names. Its group, kind and theme are then proposed.",
        el("input", { id: "wm-like", name: "like", list: "wm-entries" }));
      this.beside = el("div", { class: "wm-beside", "aria-live": "polite" });
      like.append(this.beside);
      this.shown = el("div", {});
      this.mistaken = new Mistaken(this);
      this.figure = new Figure(this);
      this.couplets = new Couplets(this);
      this.more = el("select", { id: "wm-more" });
      this.offerMore();
      this.outcome = el("div", { "aria-live": "polite" });
      this.form.append(
        this.begin(), like, this.text("common", "Common name"), this.text("scientific", "Scientific name"),
        this.row("id", "Id", "Made from its name: lower-case words joined by '-'. It becomes its address, and never changes once published.", el("input", { id: "wm-id", name: "id", autocapitalize: "none", spellcheck: "false" })),
        choose("kind", "Kind of thing", words["entry-kind"], "A group holds others; an organism is a kind of living thing that is no one family or genus."), choose("theme", "Theme", words.theme, "What it will be listed under."),
        group("within", "Group that holds it", data.comments.within), group("within2", "A second group", "Only where it stands in two."),
        this.text("summary", "What one sees", true), this.text("would-tell", "What would tell it", true),
        choose("commonness", "How often in soil drops", words.commonness, data.comments.commonness),
        this.row("feeding", "What it lives on", data.comments.feeding, this.choices("feeding", words.feeding.map(each => [each.id, each.label])), true),
        this.basis("basis", "What your statements rest on", true),
        el("h2", {}, "What it shows"),
        el("p", { class: "wm-about" }, "What its groups say is known already. Here is what the keys ask on its way; more questions follow as you answer."),
        this.shown, this.row("more", "State something else", "Anything it shows that tells it apart.", this.more),
        el("h2", {}, "What it is taken for"), this.mistaken.root,
        el("h2", {}, "Its drawing"), this.figure.root,
        el("h2", {}, "Who and when"), this.text("contributor", "Your name"), this.text("reviewed", "Date"),
        el("h2", {}, "Where it comes out"), this.outcome, this.couplets.root,
        ...this.end("file"));
      this.field("reviewed").value = new Date().toISOString().slice(0, 10);
    }
    text(name, label, long) {
      return this.row(name, label, this.data.fields[name].about, el(long ? "textarea" : "input", { id: "wm-" + name, name }));
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
        characters, "mistaken-for": this.mistaken.raw(basis), figure: this.figure.raw(), "would-tell": this.value("kind") === "cannot-be-told" ? typed["would-tell"] : "",
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
        el("details", { class: "wm-fold" }, el("summary", {}, "This rests on something else"), this.basis("basis-" + id, "What this statement rests on", false))), true);
      this.shown.append(this.statements[id]);
    }
    /** The characters to choose from: those first that matter for what it is nearest to. */
    offerMore() {
      const { data } = this, like = idOf(data, this.value("like")), open = id => !this.statements[id];
      const first = like ? thatMatter(data, like).filter(open) : [], rest = Object.keys(data.characters).filter(id => open(id) && !first.includes(id));
      const own = first.map(id => el("option", { value: id }, data.characters[id].name));
      this.more.replaceChildren(el("option", { value: "" }, "Choose"),
        ...(own.length ? [el("optgroup", { label: "Matters for " + data.entries[like].name }, ...own)] : []), ...this.characterOptions(rest));
    }
    changed(event) {
      const name = event.target.name || "";
      if (name === "like") this.propose(event.type === "change");
      if (event.target === this.more && this.more.value) {
        const id = this.more.value;
        this.ask(id); this.offerMore();
        (this.statements[id].querySelector("input") || this.more).focus();
      }
      if (name === "figure") this.figure.show();
      if (name === "id") this.slugged = false;
      if (["common", "scientific"].includes(name) && this.slugged) this.field("id").value = slug(this.value("scientific") || this.value("common"));
      if (event.type === "change") this.touched.add(name.replace(/-(kind|source|value|how)$/, "").replace(/^(.*)-(low|high|unit)$/, "shows-$1").replace(/^any-/, "shows-")
        .replace(/^(mistaken-\d+)-.*$/, "$1").replace(/^(figure-.*)-of$/, "$1"));
      this.update();
    }
    /** Proposes what follows from the nearest thing; where none is named any more, what it proposed goes, once the field is left. */
    propose(isLeft) {
      const id = idOf(this.data, this.value("like")), like = this.data.entries[id];
      this.showBeside(id);
      if (this.like === id) return;
      if (like) this.figure.propose(like);
      else if (!this.like || !isLeft) return;
      const [kind, within] = like ? kindAndGroups(this.data, id) : ["", []], proposed = { kind, theme: like ? like.theme : "", within: within[0] || "", within2: within[1] || "" };
      for (const [name, value] of Object.entries(proposed)) {
        const before = this.proposed && this.proposed[name];
        if (like || this.value(name) === before) this.field(name).value = value;  // what was chosen by hand stays where nothing is near any more
      }
      this.like = id; this.proposed = proposed;
      this.offerMore();
    }
    /** The drawing of what it is nearest to, with its names, so that one sees what was chosen. */
    showBeside(id) {
      const like = this.data.entries[id];
      if (!like) { this.beside.replaceChildren(); return; }
      const image = el("img", { src: "../drawings/" + id + ".svg", alt: "", loading: "lazy" });
      image.addEventListener("error", () => image.remove());
      this.beside.replaceChildren(image, el("p", {}, listedAs(like) + (like.also.length ? ". Also called " + like.also.join(", ") : "") + "."));
    }
    update() {
      this.showNeeded();
      this.form.querySelector("[data-row='would-tell']").hidden = this.value("kind") !== "cannot-be-told";
      this.form.querySelector("[data-row='commonness']").hidden = this.value("kind") === "group";
      let raw = this.raw();
      for (const id of stillAsked(this.data, this.entry(raw))) this.ask(id);
      raw = this.raw();
      const entry = this.entry(raw);
      this.couplets.update(entry);
      const drafts = this.couplets.wanted(), faults = [...this.unfinished(raw), ...check(this.data, this.typed(), raw, entry.shows), ...this.couplets.faults()];
      for (const each of faults) each.field = each.field.replace(/^mistaken-(\d+)$/, (whole, at) => "mistaken-" + this.mistaken.filled()[at]);
      const sentences = raw.within ? told(drafts.length ? this.couplets.data() : this.data, entry) : [];
      this.say(this.outcome, sentences.map(each => el("p", { class: each.fault && each.fault !== "unstated" ? "wm-collides" : "" }, each.text)), el("p", {}, "Choose the group that holds it, and it is walked through the keys."));
      const collides = sentences.filter(each => each.fault && each.fault !== "no-key").length;
      this.offer(raw.id && raw.theme ? fileName(raw) : "entry.yaml", fileText(this.data, raw) + additions(this.data, raw, drafts), faults,
        (collides ? "The file is right, but a key does not end rightly with it yet. Send it all the same: whoever takes it in adds the couplet." : "The file is right, and every key ends rightly with it.") + this.lacks(raw), raw);
    }
    /** What may be missing, and what its page then lacks. */
    lacks(raw) {
      const missing = [...(raw.figure ? [] : ["a drawing"]), ...(raw["mistaken-for"] ? [] : ["what it is taken for"])];
      return missing.length ? " Not given, and welcome: " + missing.join(", and ") + "." : "";
    }
    kept() { return { ...super.kept(), slugged: this.slugged, like: this.like, proposed: this.proposed, statements: Object.keys(this.statements), mistaken: this.mistaken.rows.length }; }
    putBack(before) {
      this.slugged = before.slugged; this.like = before.like; this.proposed = before.proposed;
      for (const id of before.statements) if (this.data.characters[id]) this.ask(id);
      while (this.mistaken.rows.length < before.mistaken) this.mistaken.add();
      super.putBack(before);
      if (this.data.entries[this.like]) { this.figure.propose(this.data.entries[this.like]); this.showBeside(this.like); }
      this.figure.show();
      super.putBack(before);
      this.offerMore();
      this.update();
      super.putBack(before);
    }
    /** What the form itself can see is missing: a choice not made, a basis not complete. */
    unfinished(raw) {
      const needs = (name, label) => ({ field: name, message: "'" + label + "' is missing.", allowed: "", tip: "" });
      const found = ["kind", "theme"].filter(name => !raw[name]).map(name => needs(name, name));
      (raw["mistaken-for"] || []).forEach((each, at) => { if (!each.entry) found.push(needs("mistaken-" + at, "entry")); });
      if (this.value("like") && !idOf(this.data, this.value("like"))) found.push({ field: "like", ...unknownEntry(this.data, this.value("like")) });
      for (const id of Object.keys(this.statements)) for (const end of ["low", "high"]) {
        const text = this.value(id + "-" + end), said = this.data.says[end + " no number"];
        if (text && !isFinite(text.replace(",", "."))) found.push({ field: "shows-" + id, message: filled(said.message, { value: text }), allowed: said.allowed, tip: "" });
      }
      for (const name of ["basis", ...Object.keys(this.statements).map(id => "basis-" + id), ...this.mistaken.bases()]) found.push(...this.basisFaults(name));
      return found;
    }
    say(place, wanted, otherwise) {
      const fresh = wanted.length ? wanted : [otherwise];
      if (place.textContent !== fresh.map(each => each.textContent).join("")) place.replaceChildren(...fresh);
    }
  }

  Object.assign(W, { EntryForm });
})(self.WetmountContribute = self.WetmountContribute || {});
