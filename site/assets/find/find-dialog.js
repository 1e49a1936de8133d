// The search as a dialog: what is typed, and what is found. Arrow keys go through the hits, Enter opens the first, Esc closes.
(function () {
  "use strict";
  const FIRST = 8, MORE = 30;
  let dialog = null, input, note, list, ways, finder, root, shown = FIRST, timer = 0;

  function el(tag, attributes, ...children) {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes || {})) made.setAttribute(name, value);
    made.append(...children.filter((each) => each !== null));
    return made;
  }

  function build() {
    input = el("input", {
      type: "search", id: "find-words", autocomplete: "off", autocapitalize: "none", spellcheck: "false", enterkeyhint: "search",
      placeholder: "A name, or what it looks like",
    });
    note = el("p", {class: "find-note", role: "status"});
    list = el("ul", {class: "find-hits", role: "list"});
    ways = el("p", {class: "find-ways"});
    const close = el("button", {type: "button", class: "find-close"}, "Close");
    const label = el("label", {for: "find-words", class: "find-unseen"}, "Find a name or a word");
    dialog = el("dialog", {class: "find", "aria-label": "Find"},
      el("form", {class: "find-say", role: "search", action: root + "find.html"}, label, input, close), el("div", {class: "find-found"}, note, list, ways));
    close.addEventListener("click", () => dialog.close());
    input.addEventListener("input", () => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        shown = FIRST;
        show();
      }, 60);
    });
    dialog.querySelector("form").addEventListener("submit", (event) => {
      event.preventDefault();
      show();
      const first = list.querySelector("a");
      if (first) location.href = first.href;
    });
    dialog.addEventListener("keydown", step);
    dialog.addEventListener("click", (event) => {
      if (event.target === dialog) dialog.close();
      if (event.target.closest("a")) dialog.close();
    });
    document.body.append(dialog);
  }

  function step(event) {
    if (!["ArrowDown", "ArrowUp", "Home", "End"].includes(event.key)) return;
    const links = [...dialog.querySelectorAll(".find-found a, .find-found button")], at = links.indexOf(document.activeElement);
    if (at < 0 && event.key !== "ArrowDown") return;
    event.preventDefault();
    const to = event.key === "ArrowDown" ? Math.min(at + 1, links.length - 1) : event.key === "Home" ? 0 : event.key === "End" ? links.length - 1 : at - 1;
    (to < 0 ? input : links[to] || input).focus();
  }

  function show() {
    const typed = input.value.trim(), found = finder.find(typed);
    if (!typed) {
      note.textContent = "";
      list.replaceChildren();
      ways.replaceChildren(link("find.html", "Everything, A to Z"));
      return;
    }
    const none = !found.hits.length;
    const hits = none ? found.nearest : found.hits.slice(0, shown);
    if (none) note.textContent = hits.length ? `Nothing is called “${typed}”. The nearest names:` : `Nothing is called “${typed}”, nor anything like it.`;
    else note.textContent = `${found.hits.length} found` + (found.shownFor.length ? `, spelt a little otherwise than “${typed}”` : "");
    list.replaceChildren(...hits.map(row));
    const rest = found.hits.length - hits.length;
    ways.replaceChildren(...(none ? onward() : []));
    if (rest > 0 && !none) {
      const more = el("button", {type: "button", class: "find-more"}, `${Math.min(rest, MORE)} more`);
      more.addEventListener("click", () => {
        const first = shown;
        shown += MORE;
        show();
        const next = list.children[first];
        if (next) next.querySelector("a").focus();
      });
      ways.append(more);
    }
  }

  function onward() {
    const look = document.querySelector('a[href*="describe.html"]');
    return [
      look ? link("describe.html", "Tell what you saw, in your own words") : link("keys/first-look.html", "Answer questions about what you see"),
      link("find.html", "Everything, A to Z"),
    ];
  }

  function link(address, words) {
    return el("a", {href: root + address}, words);
  }

  function row(hit) {
    const thumb = el("span", {class: "find-thumb" + (hit.picture ? "" : " find-plain"), "aria-hidden": "true"});
    if (hit.picture) {
      const picture = el("img", {src: root + hit.picture, alt: "", loading: "lazy", decoding: "async", width: 48, height: 48});
      picture.addEventListener("error", () => picture.remove());
      thumb.append(picture);
    }
    const title = [el("b", {}, hit.title), hit.second ? el("i", {}, ` ${hit.second}`) : null, el("span", {class: "find-kind"}, ` ${hit.kind}`)];
    return el("li", {}, el("a", {href: root + hit.address}, thumb, el("span", {class: "find-told"}, el("span", {class: "find-title"}, ...title.filter(Boolean)),
      el("span", {class: "find-line"}, hit.summary))));
  }

  function open(from) {
    root = from;
    if (!dialog) {
      finder = window.wetmountFind.open(window.MiniSearch, window.wetmountFold, window.wetmountFindData);
      build();
    }
    if (!dialog.open) dialog.showModal();
    input.focus();
    input.select();
    show();
  }

  window.wetmountFindDialog = {open};
})();
