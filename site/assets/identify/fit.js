/* All answers above the bar: where a question is too tall for the window its drawings are made smaller, then its advice is folded. */
(function () {
  "use strict";
  var W = self.wetmount;
  var STEPS = ["", "wm-fit-1", "wm-fit-2", "wm-fit-3", "wm-fit-4"];

  function room() {
    var dock = document.querySelector(".wm-walk-dock");
    var box = dock && dock.getBoundingClientRect();
    return box && box.height && box.width > window.innerWidth / 2 ? Math.min(box.top, window.innerHeight - box.height) : window.innerHeight;
  }

  /* The first of the steps at which the last answer is above the bar, else the last of them. */
  W.fit = function (part) {
    var leads = part.querySelector(".wm-leads");
    if (!leads) { return; }
    var top = part.getBoundingClientRect().top + window.scrollY;
    STEPS.some(function (step) {
      part.classList.remove.apply(part.classList, STEPS.filter(Boolean));
      if (step) { part.classList.add(step); }
      return top + leads.getBoundingClientRect().bottom - part.getBoundingClientRect().top <= room() - 4;
    });
  };

  window.addEventListener("resize", function () {
    var part = document.querySelector(".wm-key > .wm-couplet");
    if (part) { W.fit(part); }
  });
})();
