/* Writes the command of a bench card from what is chosen in the form. */
(function () {
  "use strict";
  var form = document.querySelector("[data-card-form]");
  var command = document.querySelector("[data-card-command]");
  if (!form || !command) { return; }

  function all(selector) { return Array.prototype.slice.call(form.querySelectorAll(selector)); }

  /* A word as a shell takes it: quoted where it has more than letters, figures and a few harmless signs. */
  function word(text) { return /^[\w@%+=:,.\/-]+$/.test(text) ? text : "'" + text.replace(/'/g, "'\\''") + "'"; }

  function write() {
    var words = ["wetmount", "card"];
    all("[name=key]:checked").forEach(function (box) { words.push("--key", box.value); });
    var paper = form.querySelector("[name=paper]").value.trim();
    if (paper && paper !== "A4") { words.push("--paper", paper); }
    var way = form.querySelector("[name=way]:checked").value;
    if (way) { words.push(way); }
    all("[name=field]").forEach(function (box) {
      if (Number(box.value) > 0) { words.push("--field", box.dataset.objective + "=" + Number(box.value)); }
    });
    var address = form.querySelector("[name=address]").value.trim();
    if (address) { words.push("--address", address); }
    words.push("-o", "card.pdf");
    var chosen = all("[name=key]:checked").length;
    command.textContent = chosen ? words.map(word).join(" ") : "Choose at least one key.";
  }

  form.addEventListener("input", write);
  form.addEventListener("change", write);
  write();
})();
