/* The form for what goes along with a photograph: who took it, what it shows, its licence and its scale, as the command that takes it in. */
(function (W) {
  "use strict";
  const { checkTyped, el, Giving, idOf, unknownEntry, wrong } = W;
  const quoted = words => "'" + words.replace(/'/g, "'\\''") + "'";
  const number = text => Number(text.replace(",", "."));

  class PhotoForm extends Giving {
    constructor(data, kind) {
      super(data, kind);
      const say = data.photo.fields, plain = (name, label, about, long) => this.row(name, label, about, el(long ? "textarea" : "input", { id: "wm-" + name, name }));
      const figure = (name, label, about) => this.row(name, label, about, el("input", { id: "wm-" + name, name, inputmode: "decimal" }));
      const only = (scale, ...rows) => el("div", { "data-only": "scale=" + scale }, ...rows);
      this.form.append(this.begin(), el("p", {}, "Send the photograph as it came from the camera, and this text with it. Place, time and maker are stripped when it is taken in, and the scale bar is drawn then."),
        this.row("entry", "Which entry it shows", "Type part of a name.", el("input", { id: "wm-entry", name: "entry", list: "wm-entries" })),
        plain("shows", "What is seen", say.shows.about, true), plain("author", "Who took it", say.author.about),
        this.row("licence", "The licence it is given under", "Only the one who took it can give one.", this.select("licence", data.words.licence.map(each => [each.id, each.label + ": " + each.about]))),
        this.row("scale", "How its scale is known", "Without a scale a photograph is not taken.", this.select("scale", [["micrometer", "I send a picture of a stage micrometer, same objective and camera"], ["known", "I know the micrometres to one pixel"]])),
        only("micrometer", figure("division", "How far apart its lines are, µm", "Mostly 10."), figure("divisions", "How many divisions you count across that picture", "Guards against misreading it; may be left out.")),
        only("known", figure("um", "Micrometres to one pixel", "")), ...this.end("text"));
      this.isTaken = false;  // it is itself a command
      this.field("division").value = "10";
    }
    changed(event) {
      if (event.type === "change") this.touched.add(event.target.name || "");
      this.update();
    }
    faults(id) {
      const { data } = this, words = this.value("entry"), scale = this.value("scale"), found = [];
      const needs = (field, name) => found.push({ field, message: "'" + name + "' is missing.", allowed: "", tip: "" });
      if (!words) needs("entry", "entry"); else if (!id) found.push({ field: "entry", ...unknownEntry(data, words) });
      found.push(...checkTyped(data.photo.fields, { author: this.value("author"), shows: this.value("shows") }, ["author", "shows"]));
      for (const name of ["licence", "scale"]) if (!this.value(name)) needs(name, name);
      if (scale === "known") {
        const um = number(this.value("um"));
        if (!this.value("um")) needs("um", "um-per-pixel");
        else if (!(um >= data.photo.least && um <= data.photo.most)) found.push(wrong("um", data.photo.says, { value: this.value("um") }));
      }
      const counted = this.value("divisions");
      if (scale === "micrometer" && !(number(this.value("division")) > 0)) found.push(wrong("division", { message: "'{value}' cannot be. Stage micrometers are mostly ruled every 10 µm." }, { value: this.value("division") }));
      if (scale === "micrometer" && counted && !/^[1-9][0-9]*$/.test(counted)) found.push(wrong("divisions", { message: "'{value}' is no count of divisions." }, { value: counted }));
      return found;
    }
    update() {
      this.showNeeded();
      const id = idOf(this.data, this.value("entry")), counted = this.value("divisions");
      const scale = this.value("scale") === "known" ? ["--um-per-pixel " + number(this.value("um"))]
        : ["--micrometer MICROMETER", "--division-um " + number(this.value("division")), ...(counted ? ["--divisions " + counted] : [])];
      const lines = ["wetmount photo add PHOTOGRAPH", "--entry " + id, "--shows " + quoted(this.value("shows").replace(/\s+/g, " ")), "--author " + quoted(this.value("author")), "--licence " + this.value("licence"), ...scale];
      this.offer("", lines.join(" ") + "\n", this.faults(id), "Send this text with the photograph" + (this.value("scale") === "micrometer" ? " and the picture of the stage micrometer" : "") + ".");
    }
  }

  Object.assign(W, { PhotoForm });
})(self.WetmountContribute = self.WetmountContribute || {});
