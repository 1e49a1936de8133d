/* A dotted word is explained where it stands: the first tap says what it means, a link in the explanation goes to the page of words. */
(function () {
  "use strict";
  var W = self.wetmount;

  function close(link) {
    var open = document.getElementById(link.getAttribute("aria-controls"));
    if (open) { open.remove(); }
    link.removeAttribute("aria-expanded");
    link.removeAttribute("aria-controls");
  }

  function open(link, title) {
    var id = "meaning-" + Math.random().toString(36).slice(2, 8);
    var note = W.el("span", { "class": "wm-meaning", id: id, role: "note" }, [
      W.el("b", {}, link.textContent + ": "), title, " ",
      W.el("a", { href: link.href, "class": "wm-meaning-more" }, "More"),
      W.el("button", { type: "button", "class": "off", "aria-label": "Close the explanation", onclick: function () { close(link); link.focus(); } }, "×")
    ]);
    link.setAttribute("aria-expanded", "true");
    link.setAttribute("aria-controls", id);
    (link.closest("p, li, dd, h2, h3, .wm-said") || link).append(note);
    W.said(link.textContent + ": " + title);
  }

  /* Says something to a screen reader that is seen elsewhere already. */
  W.said = function (text) {
    var place = document.getElementById("wm-said-aloud") || document.body.appendChild(W.el("p", { id: "wm-said-aloud", "class": "unseen", role: "status" }));
    place.textContent = text;
  };

  document.addEventListener("click", function (event) {
    var link = event.target.closest && event.target.closest("a.wm-term, a.wm-quantity");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey || link.closest("a.wm-lead")) { return; }
    var from = link.querySelector("[title]") || link;
    var title = from.getAttribute("title") || from.dataset.meaning;
    if (!title) { return; }
    event.preventDefault();
    if (link.getAttribute("aria-expanded")) { close(link); } else { open(link, title); }
  });
})();
