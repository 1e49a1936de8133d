/* What it is, in one line: the narrowest group that holds nine tenths, then at most five names; and what speaks for a name. */
(function () {
  "use strict";
  var W = self.wetmount, el = W.el;
  var HALF = 0.5;   // less often than that, what most of them eat says nothing of this one

  function isFeeder(each) { return each.id !== "not-applicable"; }

  function scale(chance, leading) {
    var bar = el("span", { "class": leading ? "scale lead-bar" : "scale", "aria-hidden": "true" });
    bar.style.setProperty("--n", Math.round(100 * chance));
    return bar;
  }

  function nameLine(faces, each, leading) {
    var entry = faces.entries[each.id] || {};
    return el("li", {}, [
      el("a", { href: W.hrefOf(faces, each.id) }, [el("b", {}, W.nameOf(faces, each.id)), entry.latin ? " " : null, entry.latin ? el("i", { "class": "soft" }, entry.latin) : null]),
      el("span", { "class": "num", "aria-label": W.odds(each.chance) + " in 100" }, W.odds(each.chance)),
      scale(each.chance, leading)
    ]);
  }

  function restLine(rest) {
    return rest && rest.count ? el("p", { "class": "label rest" }, "and " + rest.count + " more, together " + W.odds(rest.chance) + " in 100") : null;
  }

  W.verdict = {
    scale: scale,

    /* The names beneath a group; the group itself is not said twice. */
    names: function (faces, result) {
      var names = result.names.filter(function (each) { return !result.verdict || each.id !== result.verdict.id; });
      if (!names.length) { return result.rest && result.rest.count ? [el("p", { "class": "label rest" }, result.rest.count + " names are still possible, none of them likely by itself")] : []; }
      return [
        el("ul", { "class": "names", role: "list" }, names.map(function (each, index) { return nameLine(faces, each, index === 0); })),
        restLine(result.rest)
      ];
    },

    /* One line to be said aloud and to stand under a question. */
    words: function (faces, result, E) {
      var first = result.names[0];
      if (!result.fits) { return "Nothing in the library fits all of this."; }
      var group = result.leading || (!result.verdict && first && first.chance >= 0.2 ? first : null);
      if (!result.verdict) { return group ? "Not settled yet; likeliest " + W.nameOf(faces, group.id) + ", " + W.odds(group.chance) + " in 100." : "Not settled yet."; }
      return "So far: " + W.nameOf(faces, result.verdict.id) + ", " + W.odds(result.verdict.chance) + " in 100" +
        (first && first.id !== result.verdict.id ? "; likeliest " + W.nameOf(faces, first.id) : "") + ".";
    },

    /* The group or name that is nearly certain, large; where nothing is, that it is not settled. */
    head: function (faces, result, E) {
      var group = result.leading;
      if (!result.verdict) { return el("p", { "class": "big" }, group ? [el("a", { href: W.hrefOf(faces, group.id) }, W.nameOf(faces, group.id)), " ", el("span", { "class": "num odds" }, W.odds(group.chance) + " in 100, not settled yet")] : "Not settled yet"); }
      return el("p", { "class": "big" }, [el("a", { href: W.hrefOf(faces, result.verdict.id) }, W.nameOf(faces, result.verdict.id)), " ",
        el("span", { "class": "num odds" }, W.verdict.odds(faces, result.verdict))]);
    },

    /* "likely, 85 in 100". */
    odds: function (faces, each) { return (faces.sureness[each.word] ? faces.sureness[each.word] + ", " : "") + W.odds(each.chance) + " in 100"; },

    /* What it eats: what the entry says, with its basis; of a group of many feeders what nearly all that is likely eats, else how likely each is. */
    feeding: function (faces, id, result) {
      var entry = faces.entries[id], likely = result.feeding.filter(isFeeder).slice(0, 3), shared = result.lives.filter(isFeeder);
      if (entry && entry.feeding && !entry.eatsMany) { return W.html("p", { "class": "wm-feeding" }, entry.feeding); }
      var sum = likely.reduce(function (held, each) { return held + each.chance; }, 0);
      if (!shared.length && sum < HALF) { return null; }
      var words = shared.length ? "Nearly all that is likely: " + shared.map(function (each) { return faces.feeding[each.id]; }).join(", ")
        : "Most likely: " + likely.map(function (each) { return faces.feeding[each.id] + " " + W.odds(each.chance); }).join(", ") + " in 100";
      return el("p", { "class": "wm-feeding" }, words.charAt(0).toUpperCase() + words.slice(1) + ".");
    },

    /* What it means for the soil: only what all of the group share. */
    means: function (faces, id) {
      var entry = faces.entries[id];
      return entry && entry.means ? [W.html("div", { "class": "means" }, entry.means)] : [];
    },

    /* Those of the group named, and a legal one that most of what is likely carries. */
    cautions: function (faces, id, result) {
      var entry = faces.entries[id], own = entry ? entry.cautions : [];
      return own.concat(result.cautions.filter(function (each) { return own.indexOf(each) < 0; })).map(function (each) { return W.html("div", {}, faces.cautions[each]); });
    },

    /* What speaks for and against a name, the weightiest first; `tell` puts an observation or an answer into words. */
    weights: function (reasons, tell) {
      function lines(sign, words) {
        var some = reasons.filter(function (each) { return sign * each.weight > 0.1; }).sort(function (a, b) { return sign * (b.weight - a.weight); }).slice(0, 4);
        return some.length ? [el("b", {}, words), el("ul", {}, some.map(function (each) {
          return el("li", {}, each.sources.map(tell).join(" and ") + (Math.abs(each.weight) > 3 ? ", most of all" : Math.abs(each.weight) < 0.5 ? ", a little" : ""));
        }))] : null;
      }
      return [].concat(lines(1, "Speaks for it") || [], lines(-1, "Speaks against it") || ["Nothing speaks against it."]);
    }
  };
})();
