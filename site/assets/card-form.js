/* Writes the command of a bench card from what is chosen in the form. */
(function () {
  "use strict";
  var form = document.querySelector("[data-card-form]");
  var command = document.querySelector("[data-card-command]");
  if (!form || !command) { return; }

  function all(selector) { return Array.prototype.slice.call(form.querySelectorAll(selector)); }

  /* A word as a shell takes it: quoted where it has more than letters, figures and a few harmless signs. */
  function word(text) { return /^[\w@%+=:,.\/-]+$/.test(text) ? text : "'" + text.replace(/'/g, "'\\''") + "'"; }

  /* What is typed in a box, or chosen of one name; empty where the form has no such choice. */
  function typed(name) {
    var box = form.querySelector("[name=" + name + "]");
    return box ? box.value.trim() : "";
  }
  function chosen(name) {
    var box = form.querySelector("[name=" + name + "]:checked");
    return box ? box.value : "";
  }

  function write() {
    var asked = [];
    all("[name=key]:checked").forEach(function (box) { asked.push("--key", box.value); });
    if (typed("look-alike")) { asked.push("--look-alike", typed("look-alike")); }
    typed("entries").split(/[\s,]+/).filter(Boolean).forEach(function (id) { asked.push("--entry", id); });
    if (!asked.length) { command.textContent = "Choose at least one key, look-alike set or entry."; return; }

    var words = ["wetmount", "card"].concat(asked);
    if (typed("paper") && typed("paper") !== "A4") { words.push("--paper", typed("paper")); }
    if (chosen("form") && chosen("form") !== "sheet") { words.push("--form", chosen("form")); }
    if (chosen("ink") && chosen("ink") !== "normal") { words.push("--ink", chosen("ink")); }
    if (all("[name=dense]:checked").length) { words.push("--dense"); }
    if (chosen("way")) { words.push(chosen("way")); }
    if (chosen("flip")) { words.push("--flip", chosen("flip")); }
    ["field", "division"].forEach(function (name) {
      all("[name=" + name + "]").forEach(function (box) {
        if (Number(box.value) > 0) { words.push("--" + name, box.dataset.objective + "=" + Number(box.value)); }
      });
    });
    if (typed("address")) { words.push("--address", typed("address")); }
    words.push("-o", "card.pdf");
    command.textContent = words.map(word).join(" ");
  }

  form.addEventListener("input", write);
  form.addEventListener("change", write);
  write();
})();
