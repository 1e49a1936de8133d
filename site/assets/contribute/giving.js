/* What a form gives: a text to copy or to download, once nothing is wrong with it; and what was typed, kept on this device. */
(function (W) {
  "use strict";
  const { Controls, el } = W;
  const KEPT = "wetmount-contribute-";
  const TAKES = "# To take this over, with a look first at what it would change: wetmount take ";

  class Giving extends Controls {
    /** `kind` names the form; what was typed is kept under it. */
    constructor(data, kind) {
      super();
      this.data = data;
      this.kind = kind;
      this.touched = new Set();
      this.isTaken = true;
      this.form = el("form", { class: "wm-form", novalidate: true, autocomplete: "off" });
      this.form.addEventListener("submit", event => event.preventDefault());
    }
    /** Shows the form, with what was typed before in it. */
    open() {
      this.form.addEventListener("input", event => this.heard(event));
      this.form.addEventListener("change", event => this.heard(event));
      const before = this.before();
      if (before) {
        this.putBack(before);
        this.back.replaceChildren("What you typed before is back. ", this.afresh());
      }
      this.update();
      return this.form;
    }
    heard(event) {
      this.changed(event);
      this.keep();
    }
    /** The place at the top for what was put back, and the part at the end with the text and the buttons. */
    begin() { return (this.back = el("p", { role: "status", class: "wm-back" })); }
    end(label) {
      this.label = label;
      this.status = el("p", { role: "status", "aria-live": "polite", class: "wm-status" });
      this.preview = el("pre", { tabindex: "0", "aria-label": "The " + label });
      this.said = el("pre", { tabindex: "0", "aria-label": "What you said" });
      this.whole = el("details", { class: "wm-fold" }, el("summary", {}, "The whole " + label + ", as it is sent"), this.preview);
      this.copy = el("button", { type: "button", class: "wm-main" }, "Copy the " + label);
      this.download = el("button", { type: "button" }, "Download the " + label);
      this.copy.addEventListener("click", () => this.give(() => this.toClipboard()));
      this.download.addEventListener("click", () => this.give(() => this.toDisk()));
      return [el("h2", {}, "The " + label), this.status, this.said, this.whole, el("p", {}, this.copy, this.download, this.afresh()),
        el("p", { class: "wm-about" }, "What you type is kept on this device, so that a reload loses nothing. Start anew to remove it.")];
    }
    afresh() {
      const button = el("button", { type: "button" }, "Start anew");
      button.addEventListener("click", () => {
        if (!window.confirm("Remove everything typed into this form?")) return;
        this.forget();
        const fresh = new this.constructor(this.data, this.kind), form = fresh.open();
        this.form.replaceWith(form);
        (form.querySelector("input, select, textarea") || form).focus();
      });
      return button;
    }
    /** Takes the text as it is now, what is wrong with it, what is said where nothing is, and what of it was typed, where it is more than that. */
    offer(name, text, faults, fine, raw) {
      this.name = name; this.sound = !faults.length;
      this.file = text + (this.isTaken ? "\n" + TAKES + this.fileName() + "\n" : "");
      this.showFaults(faults);
      const words = faults.length ? faults.length + (faults.length === 1 ? " thing is" : " things are") + " still to be filled in or mended: "
        + faults.map(each => this.called(each.field)).join(", ") + "." : fine;
      if (this.status.textContent !== words) this.status.textContent = words;
      this.preview.textContent = this.file;
      this.said.textContent = raw ? Object.entries(raw).map(([field, each]) => W.pair(this.data, field, each, 0)).join("") : text.trim();
      this.whole.hidden = !raw && !this.isTaken;
      for (const button of [this.copy, this.download]) button.toggleAttribute("data-waits", !this.sound);
    }
    showFaults(faults) {
      const by = new Map(faults.map(each => [each.field, each]).reverse());
      for (const row of this.form.querySelectorAll("[data-row]")) {
        const name = row.dataset.row, fault = this.touched.has(name) || this.asked ? by.get(name) : undefined;
        const place = this.form.querySelector("#wm-" + CSS.escape(name) + "-wrong");
        const words = fault ? [fault.message, fault.allowed && !fault.chosen && "Allowed: " + fault.allowed + ".", !fault.chosen && fault.tip].filter(Boolean).join(" ") : "";
        if (place && place.textContent !== words) place.textContent = words;
        for (const control of row.querySelectorAll(":scope > input, :scope > select, :scope > textarea")) control.setAttribute("aria-invalid", String(Boolean(fault)));
      }
    }
    called(name) {
      const row = this.form.querySelector("[data-row='" + name + "']"), said = row && row.querySelector("label, legend");
      return said ? said.textContent : name;
    }
    give(how) {
      if (this.sound) { how(); return; }
      this.asked = true;
      this.update();
      const wrong = [...this.form.querySelectorAll(".wm-wrong")].find(each => each.textContent);
      const row = wrong && wrong.closest("[data-row], [data-couplet]");
      if (!row) return;
      for (let fold = row.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
      row.scrollIntoView({ block: "start" });
      const control = row.querySelector("input, select, textarea");
      if (control) control.focus({ preventScroll: true });
    }
    fileName() { return this.name ? this.name.split("/").pop() : this.kind + ".txt"; }
    toClipboard() {
      const done = () => { this.status.textContent = "Copied. " + this.where(); };
      const select = () => {
        this.whole.open = true;
        const range = document.createRange();
        range.selectNodeContents(this.whole.hidden ? this.said : this.preview);
        getSelection().removeAllRanges(); getSelection().addRange(range);
        this.status.textContent = "This browser does not let the page copy. The " + this.label + " is selected; copy it by hand.";
      };
      if (navigator.clipboard && navigator.clipboard.writeText) navigator.clipboard.writeText(this.file).then(done, select); else select();
    }
    toDisk() {
      const address = URL.createObjectURL(new Blob([this.file], { type: "text/plain" }));
      const link = el("a", { href: address, download: this.fileName() });
      document.body.append(link); link.click(); link.remove();
      URL.revokeObjectURL(address);
      this.status.textContent = "Downloaded. " + this.where();
    }
    /** How it is sent, to whom, and what they do with it. */
    where() {
      return "Send it as a file, by mail or on a stick, to whoever gave you this site or keeps it for your group"
        + (this.isTaken ? ". They take it over with one command: wetmount take " + this.fileName() + "." : ".") + (this.isTaken && this.name ? " It will stand in " + this.name + "." : "");
    }

    named() { return [...this.form.elements].filter(each => each.name); }
    /** What was typed: the value of each control by its name; of choices, those that are taken. */
    kept() {
      const values = {};
      for (const each of this.named()) {
        if (each.type === "checkbox" || each.type === "radio") { if (each.checked) (values[each.name] = values[each.name] || []).push(each.value); } else values[each.name] = each.value;
      }
      return { values };
    }
    putBack({ values }) {
      for (const each of this.named()) {
        if (each.type === "checkbox" || each.type === "radio") each.checked = (values[each.name] || []).includes(each.value);
        else if (each.name in values) each.value = values[each.name];
      }
    }
    before() { try { return JSON.parse(localStorage.getItem(KEPT + this.kind)); } catch (error) { return null; } }
    keep() { try { localStorage.setItem(KEPT + this.kind, JSON.stringify(this.kept())); } catch (error) { /* typed, not kept */ } }
    forget() { try { localStorage.removeItem(KEPT + this.kind); } catch (error) { /* nothing was kept */ } }
  }

  Object.assign(W, { Giving });
})(self.WetmountContribute = self.WetmountContribute || {});
