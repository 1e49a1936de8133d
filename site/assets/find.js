// Opens the search from any link marked data-find, or with "/". All else is fetched at the first use; without script the link leads to
// the list of everything.
(function () {
  "use strict";
  const NEEDED = ["assets/vendor/minisearch.js", "assets/words/fold.js", "assets/find/find-core.js", "data/find.js", "assets/find/find-dialog.js"];
  let ready = null;

  function base() {
    const link = document.querySelector("a[data-find]");
    return link ? link.href.replace(/find\.html.*$/, "") : null;
  }

  function script(address) {
    return new Promise((done, failed) => {
      const each = document.createElement("script");
      each.src = address;
      each.onload = done;
      each.onerror = failed;
      document.head.append(each);
    });
  }

  function style(address) {
    return new Promise((done) => {
      const each = document.createElement("link");
      each.rel = "stylesheet";
      each.href = address;
      each.onload = each.onerror = done;
      document.head.append(each);
    });
  }

  function open(link) {
    const root = base();
    if (root === null) return;
    ready = ready || Promise.all([style(root + "assets/find/find.css"), ...NEEDED.slice(0, 2).map((each) => script(root + each)), script(root + NEEDED[3])])
      .then(() => script(root + NEEDED[2])).then(() => script(root + NEEDED[4]));
    ready.then(() => window.wetmountFindDialog.open(root), () => {
      ready = null;
      if (link) location.href = link.href; // the list needs no script
    });
  }

  document.addEventListener("click", (event) => {
    const link = event.target.closest ? event.target.closest("a[data-find]") : null;
    if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    open(link);
  });
  document.addEventListener("keydown", (event) => {
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    if (event.target.closest && event.target.closest("input, textarea, select, [contenteditable], dialog[open]")) return;
    if (base() === null) return;
    event.preventDefault();
    open(null);
  });
})();
