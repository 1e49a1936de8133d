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
      el("span", { "class": "num", "aria-label": W.tell(faces, "in-100", { n: W.odds(each.chance) }) }, W.odds(each.chance)),
      scale(each.chance, leading)
    ]);
  }

  function in100(faces, chance) { return W.tell(faces, "in-100", { n: W.odds(chance) }); }

  function restLine(faces, rest) {
    return rest && rest.count ? el("p", { "class": "label rest" }, W.tell(faces, "and-more", { n: rest.count, odds: in100(faces, rest.chance) })) : null;
  }

  W.verdict = {
    scale: scale,
    rest: restLine,

    /* The names beneath a group; the group itself is not said twice. */
    names: function (faces, result) {
      var names = result.names.filter(function (each) { return !result.verdict || each.id !== result.verdict.id; });
      if (!names.length) { return result.rest && result.rest.count ? [el("p", { "class": "label rest" }, W.tell(faces, "none-stands-out", { n: result.rest.count }))] : []; }
      return [
        el("ul", { "class": "names", role: "list" }, names.map(function (each, index) { return nameLine(faces, each, index === 0); })),
        restLine(faces, result.rest)
      ];
    },

    /* One line to be said aloud and to stand under a question. */
    words: function (faces, result, E) {
      var first = result.names[0];
      if (!result.fits) { return W.tell(faces, "nothing-fits"); }
      var group = result.leading || (!result.verdict && first && first.chance >= 0.2 ? first : null);
      if (!result.verdict) { return group ? W.tell(faces, "not-settled-likeliest", { name: W.nameOf(faces, group.id), odds: in100(faces, group.chance) }) : W.tell(faces, "not-settled-stop"); }
      var other = first && first.id !== result.verdict.id;
      return W.tell(faces, other ? "so-far-likeliest" : "so-far",
        { name: W.nameOf(faces, result.verdict.id), odds: in100(faces, result.verdict.chance), other: other ? W.nameOf(faces, first.id) : "" });
    },

    /* The group or name that is nearly certain, large; where nothing is, that it is not settled. */
    head: function (faces, result, E) {
      var group = result.leading;
      if (!result.verdict) { return el("p", { "class": "big" }, group ? [el("a", { href: W.hrefOf(faces, group.id) }, W.nameOf(faces, group.id)), " ", el("span", { "class": "num odds" }, W.tell(faces, "not-settled-odds", { odds: in100(faces, group.chance) }))] : W.tell(faces, "not-settled")); }
      return el("p", { "class": "big" }, [el("a", { href: W.hrefOf(faces, result.verdict.id) }, W.nameOf(faces, result.verdict.id)), " ",
        el("span", { "class": "num odds" }, W.verdict.odds(faces, result.verdict))]);
    },

    /* "likely, 85 in 100". */
    odds: function (faces, each) { return faces.sureness[each.word] ? W.tell(faces, "word-in-100", { word: faces.sureness[each.word], n: W.odds(each.chance) }) : in100(faces, each.chance); },

    /* What it eats: what the entry says, with its basis; of a group of many feeders what nearly all that is likely eats, else how likely each is. */
    feeding: function (faces, id, result) {
      var entry = faces.entries[id], likely = result.feeding.filter(isFeeder).slice(0, 3), shared = result.lives.filter(isFeeder);
      if (entry && entry.feeding && !entry.eatsMany) { return W.html("p", { "class": "wm-feeding" }, entry.feeding); }
      var sum = likely.reduce(function (held, each) { return held + each.chance; }, 0);
      if (!shared.length && sum < HALF) { return null; }
      var words = shared.length ? W.tell(faces, "all-likely-live-as", { what: shared.map(function (each) { return faces.feeding[each.id]; }).join(", ") })
        : W.tell(faces, "lives-most-likely", { what: likely.map(function (each) { return W.tell(faces, "lives-share", { what: faces.feeding[each.id], odds: in100(faces, each.chance) }); }).join(", ") });
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
    weights: function (faces, reasons, tell) {
      function lines(sign, words) {
        var some = reasons.filter(function (each) { return sign * each.weight > 0.1; }).sort(function (a, b) { return sign * (b.weight - a.weight); }).slice(0, 4);
        return some.length ? [el("b", {}, words), el("ul", {}, some.map(function (each) {
          var what = each.sources.map(tell).join(W.tell(faces, "and")), much = Math.abs(each.weight);
          return el("li", {}, much > 3 ? W.tell(faces, "most-of-all", { what: what }) : much < 0.5 ? W.tell(faces, "a-little", { what: what }) : what);
        }))] : null;
      }
      return [].concat(lines(1, W.tell(faces, "speaks-for")) || [], lines(-1, W.tell(faces, "speaks-against")) || [W.tell(faces, "nothing-against")]);
    }
  };
})();
