/* The form for a couplet between things that are here already, as the command `wetmount new couplet --for` drafts it. */
(function (W) {
  "use strict";
  const { additions, Couplets, el, Giving, idOf, told, unknownEntry } = W;

  class CoupletForm extends Giving {
    constructor(data, kind) {
      super(data, kind);
      this.couplets = new Couplets(this);
      this.outcome = el("div", { "aria-live": "polite" });
      this.form.append(this.begin(), this.row("entry", "The thing a key shall tell from others", "Type part of a name.", el("input", { id: "wm-entry", name: "entry", list: "wm-entries" })),
        el("h2", {}, "Where it comes out"), this.outcome,
        this.row("couplet", "The couplet", "Open one, change its words, and tick that it is to be sent.", this.couplets.root, true), ...this.end("change"));
    }
    changed(event) {
      if (event.type === "change") this.touched.add(event.target.name || "");
      this.update();
    }
    update() {
      const { data } = this, words = this.value("entry"), id = idOf(data, words), faults = [];
      if (words && !id) faults.push({ field: "entry", ...unknownEntry(data, words) });
      if (!words) faults.push({ field: "entry", message: "'entry' is missing.", allowed: "", tip: "" });
      const entry = { id: id || "?", name: id ? data.entries[id].name : "", within: id ? data.entries[id].within : [], shows: id ? data.entries[id].shows : {} };
      this.couplets.update(entry);
      const drafts = this.couplets.wanted();
      this.outcome.replaceChildren(...(id ? told(drafts.length ? this.couplets.data() : data, entry).map(each => el("p", {}, each.text)) : []));
      if (id && !drafts.length) faults.push({ field: "couplet", message: this.couplets.blocks.size ? "No couplet is to be sent." : "Nothing comes out together with it, so no couplet is needed.", allowed: "", tip: "" });
      this.offer("", additions(data, {}, drafts).trimStart(), [...faults, ...this.couplets.faults()], "This says what to write where. Whoever takes it in runs every check once more.");
    }
    putBack(before) {
      super.putBack(before);
      this.update();
      super.putBack(before);
    }
  }

  Object.assign(W, { CoupletForm });
})(self.WetmountContribute = self.WetmountContribute || {});
