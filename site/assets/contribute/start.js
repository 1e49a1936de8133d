/* Puts the form where the page leaves a place for it: one form at a time, chosen at the top and named by the address. */
(function (W) {
  "use strict";
  const { CoupletForm, el, EntryForm, entryList, LookAlikeForm, PhotoForm, StateForm } = W;
  const FORMS = {
    thing: ["Something you have met", EntryForm], "look-alikes": ["Things that are taken for each other", LookAlikeForm], photo: ["A photograph", PhotoForm],
    couplet: ["A couplet between things that are here", CoupletForm], state: ["One more state of a character", StateForm],
  };

  function open(data, place) {
    const room = el("div", {}), named = () => (Object.hasOwn(FORMS, location.hash.slice(1)) ? location.hash.slice(1) : "thing");
    const what = el("select", { id: "wm-what" }, ...Object.entries(FORMS).map(([name, [label]]) => el("option", { value: name }, label)));
    let shown = "";
    const show = () => {
      const name = named();
      if (name === shown) return;
      what.value = shown = name;
      room.replaceChildren(new FORMS[name][1](data, name).open());
    };
    what.addEventListener("change", () => { location.hash = what.value; });
    addEventListener("hashchange", show);
    place.replaceChildren(el("div", { class: "wm-form wm-what" }, el("label", { for: what.id }, "What do you want to add?"), what), entryList(data), room);
    show();
  }
  const begin = () => { for (const place of document.querySelectorAll("[data-contribute]")) open(self.WETMOUNT_CONTRIBUTE, place); };
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", begin); else begin();
})(self.WetmountContribute = self.WetmountContribute || {});
