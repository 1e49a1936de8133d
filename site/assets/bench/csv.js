/* A count sheet as CSV and back: the twin of keytool/bench/sheet_csv.py. */
(function (bench) {
  "use strict";
  var TEXTS = ["place", "kind", "taken", "looked", "by", "depth-cm", "note"];
  var NUMBERS = { "field-number-mm": "field-number-mm", "low-objective": "low", "high-objective": "high", "soil-g": "soil", "soil-mL": "soil",
    "total-mL": "total-ml", "drop-mL": "drop-ml", "slip-width-mm": "slip-width-mm", "slip-length-mm": "slip-length-mm",
    "moisture-g-per-g": "moisture", "bulk-density-g-per-mL": "bulk-density", "eyepiece-line-um": "line-um" };
  var NEEDED = ["sample", "slide", "at", "field", "count-of", "count"];
  var COLUMNS = ["sample"].concat(TEXTS, ["invented"], Object.keys(NUMBERS), ["slide", "at", "field", "count-of", "name", "count"]);
  var FORMULA = /^[=+\-@\t\r']/, SHOWN = 8, MOST = 20000000;

  /* A text that no spreadsheet takes for a formula, and back. */
  function safe(text) { return FORMULA.test(text) ? "'" + text : text; }
  function plain(text) { return text.charAt(0) === "'" && FORMULA.test(text.slice(1)) ? text.slice(1) : text; }
  function cell(text) { text = String(text); return /[",\r\n]/.test(text) ? "\"" + text.replace(/"/g, "\"\"") + "\"" : text; }

  function toCsv(record, data) {
    var out = [COLUMNS];
    bench.sheet.tidy(record).samples.forEach(function (sample) {
      var unit = sample.setup["soil-unit"] || "g";
      var ahead = [safe(sample.name)].concat(TEXTS.map(function (name) { return safe(sample[name]); }), [sample.invented ? "yes" : ""],
        Object.keys(NUMBERS).map(function (column) {
          var value = sample.setup[NUMBERS[column]], other = column.indexOf("soil-") === 0 && column !== "soil-" + unit;
          return value === undefined || value === null || other ? "" : String(value);
        }));
      var any = false;
      function unitRows(slide, at, number, tally) {
        var ids = sample[at === "drop" ? "at-drop" : "at-field"];
        any = true;
        (ids.length ? ids : [""]).forEach(function (id) {
          out.push(ahead.concat([safe(slide.name), at, number], id ? [safe(id), safe(bench.results.label(data, id)), tally[id] || 0] : ["", "", ""]));
        });
      }
      sample.slides.forEach(function (slide) {
        if (slide.drop) { unitRows(slide, "drop", "", slide.drop); }
        slide.fields.forEach(function (tally, n) { unitRows(slide, "field", n + 1, tally); });
        if (!slide.drop && !slide.fields.length) { any = true; out.push(ahead.concat([safe(slide.name), "", "", "", "", ""])); }
      });
      [["drop", "at-drop"], ["field", "at-field"]].forEach(function (each) {
        if (bench.results.units(sample, each[0]).length) { return; }
        sample[each[1]].forEach(function (id) {      // looked for, though no drop or field has been ended yet
          any = true;
          out.push(ahead.concat(["", each[0], "", safe(id), safe(bench.results.label(data, id)), ""]));
        });
      });
      if (!any) { out.push(ahead.concat(["", "", "", "", "", ""])); }
    });
    return out.map(function (row) { return row.map(cell).join(","); }).join("\r\n") + "\r\n";
  }

  /* The nearest allowed word, by how many letters must change (a third of them at most), or an empty text. */
  function meant(word, allowed) {
    var best = "", least = Math.floor(word.length / 3) + 0.5;
    allowed.forEach(function (each) {
      if (!each || Math.abs(each.length - word.length) > least) { return; }
      var before = [], m, n;
      for (n = 0; n <= each.length; n += 1) { before.push(n); }
      for (m = 1; m <= word.length; m += 1) {
        var here = [m];
        for (n = 1; n <= each.length; n += 1) { here.push(Math.min(before[n] + 1, here[n - 1] + 1, before[n - 1] + (word.charAt(m - 1) === each.charAt(n - 1) ? 0 : 1))); }
        before = here;
      }
      if (before[each.length] < least) { least = before[each.length]; best = each; }
    });
    return best;
  }
  function did(word, allowed) { var near = meant(word, allowed); return near ? "Did you mean '" + near + "'?" : ""; }

  /* Rows of cells, each with the number of the line it begins on. */
  function rowsOf(text, between) {
    var rows = [], row = [], field = "", quoted = false, line = 1, start = 1, i = 0;
    while (i < text.length) {
      var c = text.charAt(i);
      if (quoted) {
        if (c === "\"" && text.charAt(i + 1) === "\"") { field += "\""; i += 1; } else if (c === "\"") { quoted = false; } else { field += c; if (c === "\n") { line += 1; } }
      } else if (c === "\"" && field === "") { quoted = true; } else if (c === between) { row.push(field); field = ""; } else if (c === "\n" || c === "\r") {
        if (c === "\r" && text.charAt(i + 1) === "\n") { i += 1; }
        row.push(field);
        rows.push([rows.length + 1, row]);
        row = []; field = ""; line += 1; start = line;
      } else { field += c; }
      i += 1;
    }
    if (field !== "" || row.length) { row.push(field); rows.push([rows.length + 1, row]); }
    return rows;
  }

  /* The record of a CSV text. Throws an Error with up to eight faults, each with row and column; nothing is taken then. */
  function fromCsv(text, data) {
    if (text.length > MOST) { throw new Error("The file is over 20 MB. Split it by sample."); }
    if (text.indexOf("\0") >= 0) { throw new Error("This is not text but something else, such as a spreadsheet file. Save the sheet as CSV."); }
    text = text.replace(/^\ufeff/, "").replace(/^sep=.\r?\n/, "");      // a mark and a line some spreadsheets put first
    var head = text.split("\n", 1)[0];
    function times(sign) { return head.split(sign).length; }
    var between = [",", ";", "\t"].reduce(function (best, each) { return times(each) > times(best) ? each : best; });
    var rows = rowsOf(text, between), header = (rows.length ? rows[0][1] : []).map(function (each) { return each.trim(); }), columns = {}, faults = [];
    NEEDED.forEach(function (each) {
      if (header.indexOf(each) < 0 && !faults.length) {
        var missing = NEEDED.filter(function (one) { return header.indexOf(one) < 0; }).map(function (one) { return meant(one, header); }).filter(Boolean)[0];
        faults.push("row 1: the column '" + each + "' is missing. Needed: " + NEEDED.join(", ") + "." + (missing ? " Rename the column '" + missing + "'?" : "") + " 'wetmount count --empty' prints a sheet to fill in; so does Save as table (CSV).");
      }
    });
    header.forEach(function (each, n) {
      if (each && Object.prototype.hasOwnProperty.call(columns, each)) { faults.push("row 1: the column '" + each + "' stands twice. Keep one of the two."); }
      columns[each] = n;
    });
    header.forEach(function (each, n) {
      if (each && COLUMNS.indexOf(each) < 0) { faults.push("row 1, column " + (n + 1) + ": '" + each + "' is no column of a count sheet. " + (did(each, COLUMNS) || "Allowed: " + COLUMNS.join(", ") + ".")); }
    });
    if (faults.length) { throw new Error(faults[0]); }
    var samples = {}, order = [];
    function fault(row, column, message) { faults.push("row " + row + ", column " + ((columns[column] || 0) + 1) + " (" + column + "): " + message); }
    rows.slice(1).forEach(function (numbered) {
      var n = numbered[0], row = numbered[1];
      if (!row.some(function (each) { return each.trim(); })) { return; }
      if (row.length > header.length) { faults.push("row " + n + ": " + row.length + " cells, but " + header.length + " columns. A text with a comma in it needs quotes."); return; }
      function get(column) { return Object.prototype.hasOwnProperty.call(columns, column) && columns[column] < row.length ? plain(row[columns[column]].replace(/^ +| +$/g, "")) : ""; }
      function number(column) {
        var value = get(column).trim();
        if (!value) { return null; }
        if (between === ";" && /^[0-9]+,[0-9]+$/.test(value)) { value = value.replace(",", "."); }
        if (/^[0-9]+(\.[0-9]+)?(e-?[0-9]{1,2})?$/.test(value)) {
          if (Number(value) > 0 || column === "moisture-g-per-g") { return Number(value); }
          fault(n, column, "0 cannot be. Leave it empty where it is not known.");
        } else if (/^[0-9]+,[0-9]+$/.test(value)) { fault(n, column, "'" + value + "' has a comma. Write " + value.replace(",", ".") + ", or part the cells by semicolons.");
        } else if (/^[0-9.,]+ *[^0-9.,]/.test(value)) { fault(n, column, "'" + value.slice(0, 40) + "' is more than a number. The unit stands in the name of the column; write the number alone.");
        } else { fault(n, column, "'" + value.slice(0, 40) + "' is no number. Write plain digits, such as 18 or 0.05."); }
        return null;
      }
      var name = get("sample"), texts = {}, numbers = {};
      TEXTS.forEach(function (each) { texts[each] = get(each); });
      Object.keys(NUMBERS).forEach(function (each) { numbers[each] = number(each); });
      if (numbers["soil-g"] !== null && numbers["soil-mL"] !== null) { fault(n, "soil-mL", "soil is given in g and in mL. Fill one of the two; bulk-density-g-per-mL joins them."); }
      if (["", "yes", "no"].indexOf(get("invented")) < 0) { fault(n, "invented", "'" + get("invented") + "' is not allowed. Allowed: yes, or empty."); }
      var key = "s " + name;
      if (!samples[key]) {
        samples[key] = { row: n, name: name, texts: texts, numbers: numbers, invented: get("invented") === "yes", "at-drop": [], "at-field": [], slides: {}, order: [] };
        order.push(key);
      }
      var sample = samples[key], ONE = " of the same sample '" + name + "'. A sample has one; give the other a name of its own.";
      TEXTS.forEach(function (each) { if (texts[each] && texts[each] !== sample.texts[each]) { fault(n, each, texts[each] + " here, but " + (sample.texts[each] || "nothing") + " in row " + sample.row + ONE); } });
      Object.keys(NUMBERS).forEach(function (each) {
        if (numbers[each] !== null && numbers[each] !== sample.numbers[each]) { fault(n, each, numbers[each] + " here, but " + (sample.numbers[each] === null ? "nothing" : sample.numbers[each]) + " in row " + sample.row + ONE); }
      });
      var at = get("at"), id = get("count-of"), slide = get("slide"), count = get("count").trim(), field = get("field");
      if (["drop", "field", ""].indexOf(at) < 0) { fault(n, "at", "'" + at + "' is not allowed. Allowed: drop (all of it, at low power), field (at high power)."); return; }
      if (id && !bench.results.isKnown(data, id)) { fault(n, "count-of", "nothing is called '" + id.slice(0, 40) + "'. " + (did(id, Object.keys(data.tally).concat(Object.keys(data.entries))) || "For what is not in the library write other: and a name.")); return; }
      var number1 = null;
      if (count) {
        var wholes = count.replace(/[.,]0+$/, ""), tip = " Allowed: whole numbers from 0 to a million. None seen is 0; what was not looked for is left empty.";   // some programs write 3 as 3.0
        if (/^[0-9]{1,7}$/.test(wholes) && Number(wholes) <= 1000000) { number1 = Number(wholes); } else if (/^-[0-9.,]+$/.test(count)) { fault(n, "count", count + " is below none." + tip);
        } else if (/^[0-9]+[.,][0-9]+$/.test(count)) { fault(n, "count", count + " is not whole; half a thing is counted or it is not." + tip); } else { fault(n, "count", "'" + count.slice(0, 40) + "' is no count." + tip); }
      }
      function slideOf() {
        if (!sample.slides["s " + slide]) { sample.slides["s " + slide] = { name: slide, drop: null, fields: {} }; sample.order.push("s " + slide); }
        return sample.slides["s " + slide];
      }
      if (!at) { if (slide) { slideOf(); } if (id) { fault(n, "at", "is empty. Allowed: drop, field."); } return; }
      var list = sample[at === "drop" ? "at-drop" : "at-field"], into;
      if (id && list.indexOf(id) < 0) { list.push(id); }
      if (at === "drop") {
        if (field) { fault(n, "field", "a whole drop has no field number. Leave it empty."); return; }
        if (!slide && !count) { return; }
        into = slideOf().drop = slideOf().drop || {};
      } else {
        if (!field && !count) { return; }
        if (!/^[1-9][0-9]{0,4}$/.test(field)) { fault(n, "field", "'" + field + "' is no field number. Allowed: 1, 2, 3 and so on, in the order they were looked at."); return; }
        into = slideOf().fields[field] = slideOf().fields[field] || {};
      }
      if (!id || number1 === null) { if (id && !count) { fault(n, "count", "is empty. Write 0 for none seen; take the row out where it was not looked for."); } return; }
      if (Object.prototype.hasOwnProperty.call(into, id)) { fault(n, "count-of", "'" + id + "' stands twice in this " + at + ". Keep one of the two rows, or give the field another number."); return; }
      into[id] = number1;
    });
    if (faults.length) { throw new Error(faults.slice(0, SHOWN).join("\n") + (faults.length > SHOWN ? "\nand " + (faults.length - SHOWN) + " more." : "")); }
    return bench.sheet.tidy({ samples: order.map(function (key) {
      var each = samples[key], setup = {};
      Object.keys(NUMBERS).forEach(function (column) { if (each.numbers[column] !== null) { setup[NUMBERS[column]] = each.numbers[column]; } });
      setup["soil-unit"] = each.numbers["soil-mL"] !== null ? "mL" : "g";
      return Object.assign({ name: each.name }, each.texts, { invented: each.invented, setup: setup, "at-drop": each["at-drop"], "at-field": each["at-field"],
        slides: each.order.map(function (at) {
          var one = each.slides[at];
          return { name: one.name, drop: one.drop, fields: Object.keys(one.fields).map(Number).sort(function (a, b) { return a - b; }).map(function (k) { return one.fields[k]; }) };
        }) });
    }) });
  }

  bench.csv = { toCsv: toCsv, fromCsv: fromCsv };
  if (typeof module === "object" && module.exports) { require("./sheet.js"); module.exports = bench; }
})(globalThis.wetmountBench = globalThis.wetmountBench || {});
