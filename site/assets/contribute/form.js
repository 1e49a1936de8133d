/* The form itself: asks what the command `wetmount new entry` asks, and shows where the entry comes out. */
(function (W) {
  "use strict";
  const { additions, check, Controls, Couplets, el, Figure, fileName, fileText, inherited, Mistaken, showing, slug, stillAsked, told, withoutEmpty } = W;

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

  class Form extends Controls {
    constructor(data, place) {
      super();
      this.data = data;
      this.touched = new Set();
      this.slugged = true;
      this.statements = {};
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
      this.mistaken = new Mistaken(this);
      this.figure = new Figure(this);
      this.couplets = new Couplets(this);
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
        el("h2", {}, "What it is taken for"), this.mistaken.root,
        el("h2", {}, "Its drawing"), this.figure.root,
        el("h2", {}, "Who and when"), this.text("contributor", "Your name"), this.text("reviewed", "Date"),
        el("h2", {}, "Where it comes out"), this.outcome, this.couplets.root,
        el("h2", {}, "The file"), this.status, this.preview, el("p", {}, this.copy, this.download));
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
    changed(event) {
      const name = event.target.name || "";
      if (name === "like") this.propose();
      if (event.target === this.more && this.more.value) { this.ask(this.more.value); this.more.value = ""; }
      if (name === "figure") this.figure.show();
      if (name === "id") this.slugged = false;
      if (["common", "scientific"].includes(name) && this.slugged) this.field("id").value = slug(this.value("scientific") || this.value("common"));
      if (event.type === "change") this.touched.add(name.replace(/-(kind|source|value|how)$/, "").replace(/^(.*)-(low|high|unit)$/, "shows-$1").replace(/^any-/, "shows-")
        .replace(/^(mistaken-\d+)-.*$/, "$1").replace(/^(figure-.*)-of$/, "$1"));
      this.update();
    }
    propose() {
      const like = this.data.entries[this.value("like")];
      if (!like) return;
      this.field("kind").value = like.kind; this.field("theme").value = like.theme;
      this.field("within").value = like.within[0] || ""; this.field("within2").value = like.within[1] || "";
      this.figure.propose(like);
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
      const entry = this.entry(raw);
      this.couplets.update(entry);
      const drafts = this.couplets.wanted(), faults = [...this.unfinished(raw), ...check(this.data, this.typed(), raw, entry.shows), ...this.couplets.faults()];
      for (const each of faults) each.field = each.field.replace(/^mistaken-(\d+)$/, (whole, at) => "mistaken-" + this.mistaken.filled()[at]);
      this.showFaults(faults);
      const sentences = raw.within ? told(drafts.length ? this.couplets.data() : this.data, entry) : [];
      this.say(this.outcome, sentences.map(each => el("p", { class: each.fault && each.fault !== "unstated" ? "wm-collides" : "" }, each.text)), el("p", {}, "Choose the group that holds it, and it is walked through the keys."));
      const collides = sentences.filter(each => each.fault && each.fault !== "no-key").length;
      this.sound = !faults.length;
      const words = faults.length ? faults.length + (faults.length === 1 ? " thing is" : " things are") + " still to be filled in or mended: " + faults.map(each => this.label(each.field)).join(", ") + "."
        : collides ? "The file is right, but a key does not end rightly with it yet. Send it all the same: whoever takes it in adds the couplet." : "The file is right, and every key ends rightly with it.";
      if (this.status.textContent !== words) this.status.textContent = words;
      this.file = fileText(this.data, raw) + additions(this.data, raw, drafts);
      this.name = raw.id && raw.theme ? fileName(raw) : "entry.yaml";
      this.preview.textContent = "# " + this.name + "\n" + this.file;
      for (const button of [this.copy, this.download]) button.toggleAttribute("data-waits", !this.sound);
    }
    /** What the form itself can see is missing: a choice not made, a basis not complete. */
    unfinished(raw) {
      const needs = (name, label) => ({ field: name, message: "'" + label + "' is missing.", allowed: "", tip: "" });
      const found = ["kind", "theme"].filter(name => !raw[name]).map(name => needs(name, name));
      (raw["mistaken-for"] || []).forEach((each, at) => { if (!each.entry) found.push(needs("mistaken-" + at, "entry")); });
      for (const name of ["basis", ...Object.keys(this.statements).map(id => "basis-" + id), ...this.mistaken.bases()]) {
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

  Object.assign(W, { start });
})(self.WetmountContribute = self.WetmountContribute || {});
