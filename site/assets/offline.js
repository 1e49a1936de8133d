/* Hands the site to its worker (sw.js), which keeps it for use without a network.
 *
 * Only where browsers allow it: over https, or from this machine. From a folder there is nothing
 * to do. A new version waits until the reader asks for it, so that no walk is cut short.
 */
(function () {
  "use strict";
  var at = document.currentScript.src;
  var local = /^(localhost|127\.0\.0\.1|\[::1\])$/.test(location.hostname);
  if (!("serviceWorker" in navigator) || !(location.protocol === "https:" || local)) { return; }
  var workers = navigator.serviceWorker;
  var asked = false;

  var link = document.createElement("link");
  link.rel = "manifest";
  link.href = new URL("site.webmanifest", at).href;
  document.head.append(link);

  /* Politely: when the page has long been quiet, and not where the device asks to save data (then only with the button). */
  var saves = navigator.connection && navigator.connection.saveData;
  function quiet(then) {
    function later() { window.setTimeout(function () { (window.requestIdleCallback || function (run) { run(); })(then); }, document.querySelector("[data-keep]") ? 0 : 3000); }
    if (document.readyState === "complete") { later(); } else { window.addEventListener("load", later); }
  }
  if (workers.controller || !saves || document.querySelector("[data-keep]")) { quiet(register); }
  function register() { workers.register(new URL("../sw.js", at)).then(function (registration) {
    if (registration.waiting && workers.controller) { offer(registration.waiting); }
    if (!saves) { workers.ready.then(function (ready) { ready.active.postMessage("keep what is told"); }); }
    registration.addEventListener("updatefound", function () {
      var coming = registration.installing;
      coming.addEventListener("statechange", function () {
        if (coming.state === "installed" && workers.controller) { offer(coming); }
      });
    });
  }, function () { /* the site works without it */ }); }
  workers.addEventListener("controllerchange", function () { if (asked) { location.reload(); } });

  function offer(worker) {
    if (document.querySelector(".newer")) { return; }
    var bar = document.createElement("div");
    var button = document.createElement("button");
    bar.className = "newer";
    bar.setAttribute("role", "status");
    button.type = "button";
    button.className = "btn";
    button.textContent = "Reload";
    button.addEventListener("click", function () {
      asked = true;
      worker.postMessage("take over");
    });
    bar.append("A newer version of this site is ready. ", button);
    document.querySelector("main").before(bar);
  }

  /* Where a page was not kept: which one, and back to the walk. */
  var wanted = /^#missing=(.+)$/.exec(location.hash), missing = document.getElementById("missing");
  if (wanted && missing) {
    missing.classList.add("is-wanted");
    var path = wanted[1];
    try { path = decodeURIComponent(path); } catch (error) { /* as it stands */ }
    missing.querySelector("[data-wanted]").textContent = "Wanted: " + path;
    missing.querySelector("[data-back]").addEventListener("click", function (event) {
      if (window.history.length > 1) {
        event.preventDefault();
        window.history.back();
      }
    });
  }

  /* On the page about working without a network: keep everything, and say how far that is. */
  var home = document.querySelector("[data-keep]");
  if (!home) { return; }
  var all = document.createElement("button");
  var said = document.createElement("p");
  all.type = "button";
  all.className = "btn main";
  all.textContent = "Keep everything on this device";
  said.setAttribute("role", "status");
  home.replaceChildren(all, said);
  function ask(words) { workers.ready.then(function (registration) { registration.active.postMessage(words); }); }
  all.addEventListener("click", function () {
    all.disabled = true;
    said.textContent = "Fetching …";
    ask("keep everything");
  });
  workers.addEventListener("message", function (event) {
    var told = event.data;
    if (told.done) { said.textContent = told.done + " of " + told.of + " files kept."; }
    if (told.failed) {
      all.disabled = false;
      said.textContent = "Not everything could be fetched. What came is kept; try again where the network is better.";
    }
    if (told.all) {
      all.hidden = true;
      said.textContent = "Everything is kept on this device.";
    }
  });
  workers.startMessages();
  ask("is everything kept?");
})();
