/* Keeps the count sheet on the device, at every tap. Nothing tallied is lost: not when storage is full or shut, nor with two tabs
 * open, nor when a phone locks in the middle of a field. */
(function (bench) {
  "use strict";
  var KEPT = "wetmount.count", BEFORE = "wetmount.count.before";

  /* onChange(state): another tab wrote. onTrouble(words): what is tallied is not kept on the device; "" when it is again. */
  function Store(onChange, onTrouble) {
    this.memory = null;               // the last text of this tab, where the device keeps nothing
    this.seen = null;                 // the last text this tab wrote or read
    this.kept = true;
    this.onTrouble = onTrouble;
    var store = this;
    window.addEventListener("storage", function (event) {
      if (event.key === KEPT && event.newValue && event.newValue !== store.seen) {
        var state = parsed(event.newValue);
        if (state && store.kept) { store.seen = event.newValue; onChange(state); }
      }
    });
    window.addEventListener("beforeunload", function (event) {
      if (!store.kept) { event.preventDefault(); event.returnValue = ""; }
    });
  }

  function parsed(text) {
    try {
      var state = JSON.parse(text);
      return state && state.version === 1 && state.record && Array.isArray(state.record.samples) && state.record.samples.length && state.now ? state : null;
    } catch (error) { return null; }
  }

  Store.prototype.read = function () {
    var text = null;
    try { text = window.localStorage.getItem(KEPT); } catch (error) { text = this.memory; }
    if (text === null || !this.kept) { text = this.memory || text; }
    this.seen = text;
    var state = text === null ? null : parsed(text);
    if (text !== null && !state) {     // what cannot be read is put aside, not written over
      try { window.localStorage.setItem(BEFORE, text); } catch (error) { /* it stays where it is until the first tap */ }
    }
    return state;
  };

  /* The newest state: another tab may have tallied since. */
  Store.prototype.newest = function (state) {
    var text = null;
    try { text = window.localStorage.getItem(KEPT); } catch (error) { return state; }
    if (!this.kept || text === null || text === this.seen) { return state; }
    this.seen = text;
    return parsed(text) || state;
  };

  Store.prototype.write = function (state) {
    var text = JSON.stringify(state), was = this.kept;
    this.memory = text;
    try {
      window.localStorage.setItem(KEPT, text);
      this.seen = text;
      this.kept = window.localStorage.getItem(KEPT) === text;
    } catch (error) { this.kept = false; }
    if (this.kept !== was || !this.kept) {
      this.onTrouble(this.kept ? "" : "This device keeps nothing for this page (storage is full, or the window is private). What you tally stays as long as this page is open: save it as a file before you leave.");
    }
  };

  bench.Store = Store;
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
