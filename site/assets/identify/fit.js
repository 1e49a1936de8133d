/* All answers above the bar: where a question is too tall for the window its drawings are made smaller, then its advice is folded.
 *
 * This file is read before the first question of a page is, so that the question is fitted before anybody sees it: nothing jumps.
 */
(function () {
  "use strict";
  var W = self.wetmount = self.wetmount || {};
  var STEPS = ["", "wm-fit-1", "wm-fit-2", "wm-fit-3", "wm-fit-4"];
  var QUESTION = ".wm-key > .wm-couplet";

  function room() {
    var dock = document.querySelector(".wm-walk-dock");
    var box = dock && dock.getBoundingClientRect();
    return box && box.height && box.width > window.innerWidth / 2 ? Math.min(box.top, window.innerHeight - box.height) : window.innerHeight;
  }

  function step(part, name) {
    part.classList.remove.apply(part.classList, STEPS.filter(Boolean));
    if (name) { part.classList.add(name); }
  }

  /* The first of the steps at which the last answer is above the bar; where none is, advice is not folded for nothing. */
  W.fit = function (part) {
    var leads = part.querySelector(".wm-leads"), look = part.querySelector(".wm-look"), more = part.querySelector(".wm-look-more");
    if (!leads) { return; }
    if (more) { more.remove(); }
    var top = part.getBoundingClientRect().top + window.scrollY, limit = room() - 4;
    var fits = STEPS.some(function (each) {
      step(part, each);
      return top + leads.getBoundingClientRect().bottom - part.getBoundingClientRect().top <= limit;
    });
    if (!fits) { step(part, "wm-fit-2"); }
    if (look && look.scrollHeight > look.clientHeight + 4) { look.before(unfolding(part, look)); }
  };

  /* Folded advice is opened by a tap on it, or by its button. */
  function unfolding(part, look) {
    var button = document.createElement("button");
    button.type = "button";
    button.className = "wm-look-more";
    button.setAttribute("aria-label", "Show all of how to look");
    button.textContent = "more";
    function open(event) {
      if (event.target.closest("a")) { return; }
      part.classList.add("wm-unfolded");
      button.remove();
    }
    button.addEventListener("click", open);
    look.addEventListener("click", open);
    return button;
  }

  window.addEventListener("resize", function () {
    var part = document.querySelector(QUESTION);
    if (part) { W.fit(part); }
  });

  if (document.querySelector(".wm-walk-dock")) { return; }
  new MutationObserver(function (changes, watching) {
    var part = document.querySelector(QUESTION);
    if (!part || !document.querySelector(".wm-walk-dock .btn")) { return; }
    watching.disconnect();
    W.fit(part);
  }).observe(document.documentElement, { childList: true, subtree: true });
})();
