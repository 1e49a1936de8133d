/* The form for one more thing a character may show, as the command `wetmount new state` asks for it. */
(function (W) {
  "use strict";
  const { checkTyped, el, flow, Giving, slug, wrong } = W;
  const TYPED = ["name", "id", "about"];

  /** The couplets that ask for a character and have no lead that takes all the rest, so that a new state would fall between: [key, couplet]. */
  function closed(data, character) {
    return Object.entries(data.keys).flatMap(([key, { couplets }]) => Object.entries(couplets)
      .filter(([, couplet]) => couplet.characters.includes(character) && !Object.values(couplet.leads).some(lead => lead.otherwise)).map(([id]) => [key, id]));
  }
  /** Where the keys ask for a character, and what becomes there of a state that no lead names. */
  function asked(data, character) {
    const where = Object.values(data.keys).flatMap(key => Object.values(key.couplets).filter(each => each.characters.includes(character)).map(each => {
      const rest = Object.values(each.leads).find(lead => lead.otherwise);
      return key.title + ", couplet " + each.number + (rest ? " (without a word of yours, '" + rest.text + "' takes it)" : "");
    }));
    return where.length ? "Asked in " + where.join("; ") + "." : "No key asks for it, so whoever sees the new state finds its things only by telling what they saw.";
  }
  /** What to write where: into the character, into entries that show it, and into the leads that take it, [[key, couplet, lead]]. */
  function stateText(data, character, id, said, entries, leads) {
    return ["In " + data.taken[character] + ", under states:", "  " + id + ": " + flow(said),
      ...entries.map(entry => "In " + data.taken[entry] + ", at characters." + character + ".states, add: " + id),
      ...leads.map(([key, couplet, lead]) => "In " + data.taken[key] + ", at couplets." + couplet + ".leads." + lead + ".when." + character + ", add: " + id)].join("\n") + "\n";
  }

  class StateForm extends Giving {
    constructor(data, kind) {
      super(data, kind);
      const say = data.state.fields, text = (name, label, long) => this.row(name, label, name === "name" ? "" : say[name].about, el(long ? "textarea" : "input", { id: "wm-" + name, name }));
      const characters = Object.keys(data.characters).filter(id => !data.characters[id].unit);
      this.so = el("p", { class: "wm-about", "aria-live": "polite" });
      this.shown = el("div", {});
      this.form.append(this.begin(), this.row("character", "Which character may show it", "", this.characterSelect("character", characters)), this.so,
        text("name", "Its short name"), this.row("id", "Id", "Made from its name: lower-case words joined by '-'.", el("input", { id: "wm-id", name: "id", autocapitalize: "none", spellcheck: "false" })),
        text("about", "What one sees", true), this.shown, ...this.end("change"));
    }
    changed(event) {
      const name = event.target.name || "";
      if (name === "character") this.ask();
      if (name === "id") this.hasId = true;
      if (name === "name" && !this.hasId) this.field("id").value = slug(this.value("name"));
      if (event.type === "change") this.touched.add(name);
      this.update();
    }
    /** Asks which entries show it, and which lead of each couplet takes it. */
    ask() {
      const { data } = this, id = this.value("character"), character = data.characters[id];
      this.shown.replaceChildren();
      this.so.textContent = character ? character.asks + " So far: " + Object.values(character.states).join(", ") + ". " + asked(data, id) : "";
      if (!character) return;
      const own = Object.entries(data.entries).filter(([, each]) => each.own.includes(id)).map(([entry, each]) => [entry, each.name]).sort(([, one], [, other]) => one.localeCompare(other, "en"));
      const leads = closed(data, id).map(([key, couplet]) => {
        const asked = data.keys[key].couplets[couplet];
        return this.row("lead-" + key + "-" + couplet, data.keys[key].title + ", couplet " + asked.number + ": " + asked.asks, "The lead that takes it.",
          this.select("lead-" + key + "-" + couplet, Object.entries(asked.leads).map(([lead, each]) => [lead, each.text])));
      });
      this.shown.append(...(own.length ? [this.row("entries", "Which entries show it, besides what they show now", "None is right where it is only met in something new.", this.choices("entries", own), true)] : []), ...leads);
    }
    update() {
      const { data } = this, id = this.value("character"), typed = Object.fromEntries(TYPED.map(name => [name, this.value(name)])), couplets = id ? closed(data, id) : [];
      const needs = (field, words) => ({ field, message: "'" + words + "' is missing.", allowed: "", tip: "Choose one." }), lead = each => "lead-" + each.join("-");
      const faults = [...(id ? [] : [needs("character", "character")]), ...checkTyped(data.state.fields, typed, TYPED), ...couplets.filter(each => !this.value(lead(each))).map(each => needs(lead(each), "lead"))];
      if (id && data.characters[id].states[typed.id]) faults.push(wrong("id", { message: "'{state}' is a state of '{id}' already." }, { state: typed.id, id }));
      const same = id && Object.entries(data.characters[id].states).find(([, name]) => name.toLowerCase() === typed.name.toLowerCase());
      if (same) faults.push(wrong("name", { message: "'{state}' has that name already.", tip: "Name what tells them apart, or say of the entries that they show '{state}'." }, { state: same[0] }));
      const text = id ? stateText(data, id, typed.id, { name: typed.name, about: typed.about }, this.picked("entries"), couplets.map(each => [...each, this.value(lead(each))])) : "";
      this.offer("", text, faults, "This says what to write where. Whoever takes it in runs every check once more.");
    }
    kept() { return { ...super.kept(), hasId: this.hasId }; }
    putBack(before) {
      this.hasId = before.hasId;
      super.putBack(before);
      this.ask();
      super.putBack(before);
    }
  }

  Object.assign(W, { StateForm, stateText, closed });
})(self.WetmountContribute = self.WetmountContribute || {});
