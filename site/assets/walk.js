/* The walk over one key, as pure functions: answers in, standing out.
 *
 * It gives the same answers as keytool/identify (walk.py, joint.py, arrive.py and doubt.py) from the plain data of
 * keytool.identify.data; recorded cases are run against both. Change them together.
 */
(function (root, make) {
  "use strict";
  var walk = make();
  if (typeof module === "object" && module.exports) { module.exports = walk; } else { root.wetmountWalk = walk; }
})(typeof self === "undefined" ? this : self, function () {
  "use strict";

  var CANNOT_TELL = "cannot-tell";
  var LEAST_GAIN = 1e-6;
  var LEAST_RIVAL = 0.005;
  var RIVALS = 2;

  function rounded(value, places) { return Number(value.toFixed(places)); }

  function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }

  function sum(values) { return values.reduce(function (total, each) { return total + each; }, 0); }

  function product(values) { return values.reduce(function (total, each) { return total * each; }, 1); }

  /* The first of `items` for which `score` is greatest. */
  function best(items, score) {
    return items.reduce(function (found, each) { return score(each) > score(found) ? each : found; });
  }

  /* Orders by falling score, then by name. */
  function byScore(score) {
    return function (a, b) { return score(b) - score(a) || (a < b ? -1 : a > b ? 1 : 0); };
  }

  function entropy(weights) {
    var total = sum(weights);
    if (!(total > 0)) { return 0; }
    return -sum(weights.filter(function (w) { return w > 0; }).map(function (w) { return w / total * Math.log2(w / total); }));
  }

  function leadsOf(ground, couplet) { return Object.keys(ground.couplets[couplet].leads); }

  function goesTo(lead) { return lead.couplet || lead.key || lead.end; }

  function told(answers) { return answers.filter(function (each) { return each.lead !== CANNOT_TELL; }); }

  function address(answers) {
    return answers.map(function (each) { return each.couplet + "=" + each.lead; }).join("/");
  }

  /* The answers of an address. Throws an Error that says which part this key does not have; its
   * `answers` are those before that part. */
  function answersAt(ground, text) {
    var answers = [];
    function refuse(message) {
      var error = new Error(message);
      error.answers = answers;
      throw error;
    }
    text.split("/").filter(Boolean).forEach(function (part) {
      var cut = part.indexOf("=");
      var couplet = cut < 0 ? part : part.slice(0, cut);
      var lead = cut < 0 ? "" : part.slice(cut + 1);
      if (!has(ground.couplets, couplet)) { refuse("'" + couplet + "' is not a couplet of " + ground.key + "."); }
      var allowed = leadsOf(ground, couplet).concat(CANNOT_TELL);
      if (allowed.indexOf(lead) < 0) { refuse("'" + lead + "' is not an answer to '" + couplet + "'. Answers: " + allowed.join(", ") + "."); }
      var asked = stand(ground, answers).asks;
      if (couplet !== asked) {
        refuse("'" + couplet + "' is not asked there; " + (asked ? "the question is '" + asked + "'." : "the walk is over."));
      }
      answers = answers.concat({ couplet: couplet, lead: lead });
    });
    return answers;
  }

  /* Where the answers lead: {asks, ends, possible, chance}. */
  function stand(ground, answers) {
    var given = {};
    answers.forEach(function (each) { given[each.couplet] = each.lead; });
    var chance = chances(ground, answers);
    var possible = fitting(ground, answers).sort(byScore(function (id) { return rounded(chance[id], 9); }));
    var ahead = reach(ground, given, possible, false);
    var ends = ahead.ends;
    var asks = "";
    if (ahead.couplets.length) {
      asks = ahead.couplets[0];
      var doubted = answers.some(function (each) { return each.lead === CANNOT_TELL; });
      if (doubted && (ahead.couplets.length > 1 || ends.length)) { asks = bestQuestion(ground, answers, given, ahead.couplets, possible, chance); }
    }
    if (asks) {
      ends = [];
    } else if (ahead.couplets.length) {
      ends = reach(ground, given, possible, true).ends;
    }
    var standing = { asks: asks, ends: ends, possible: possible, chance: chance };
    ends.sort(byScore(function (end) { return rounded(mass(standing, ground.within[end]), 9); }));
    return standing;
  }

  /* The chance of each entry after some answers: one look at each character, see joint.py. */
  function chances(ground, answers) {
    var ids = Object.keys(ground.entries);
    var weights = ids.map(function (id) { return ground.entries[id].prior; });
    parts(ground, told(answers)).forEach(function (part) {
      var chance = together(ground, part, ids);
      if (!some(chance)) { chance = apart(ground, part, ids); }
      weights = weights.map(function (weight, index) { return weight * chance[ids[index]]; });
    });
    if (!weights.some(Boolean)) { weights = ids.map(function (id) { return ground.entries[id].prior; }); }
    var total = sum(weights);
    var chance = {};
    ids.forEach(function (id, index) { chance[id] = weights[index] / total; });
    return chance;
  }

  /* For each lead of a couplet not answered yet, its chance with each of some entries after the answers given. */
  function nextChances(ground, answers, couplet, ids) {
    var leads = leadsOf(ground, couplet).map(function (lead) { return { couplet: couplet, lead: lead }; });
    var near = [].concat.apply([], parts(ground, told(answers)).filter(function (part) { return touches(ground, part, couplet); }));
    var before = near.length ? together(ground, near, ids) : {};
    if (!some(before)) { return leads.map(function (each) { return apart(ground, [each], ids); }); }
    return leads.map(function (each) {
      var after = together(ground, near.concat([each]), ids);
      Object.keys(after).forEach(function (id) { after[id] = before[id] ? after[id] / before[id] : 0; });
      return after;
    });
  }

  function some(chance) { return Object.keys(chance).some(function (id) { return chance[id]; }); }

  function touches(ground, answers, couplet) {
    return answers.some(function (each) {
      return ground.couplets[each.couplet].asks.some(function (name) { return ground.couplets[couplet].asks.indexOf(name) >= 0; });
    });
  }

  /* Answers sorted into parts that have no character in common; each in the order given. */
  function parts(ground, answers) {
    return answers.reduce(function (found, each) {
      var near = found.filter(function (part) { return touches(ground, part, each.couplet); });
      var merged = [].concat.apply([each], near);
      return found.filter(function (part) { return near.indexOf(part) < 0; })
        .concat([answers.filter(function (one) { return merged.indexOf(one) >= 0; })]);
    }, []);
  }

  /* The chance that all of the answers are given, for each of some entries; what one does not say is worked out as in joint.py. */
  function together(ground, answers, ids) {
    if (answers.length === 1) { return apart(ground, answers, ids); }
    if (!waysTo(ground, answers).length) { return perRow(ground, answers, ids, function () { return 0; }); }
    var even = answers.map(function (each, index) { return shareOfOpen(ground, answers.slice(0, index), each); });
    var ways = {};
    return perRow(ground, answers, ids, function (id) {
      var row = ground.entries[id].row;
      var stated = answers.filter(function (each) { return states(ground, id, each.couplet); });
      var rest = product(even.filter(function (_, index) { return stated.indexOf(answers[index]) < 0; }));
      var which = address(stated);
      ways[which] = ways[which] || waysTo(ground, stated);
      return rest * sum(ways[which].map(function (way) {
        return way.share * product(Object.keys(way.seen).map(function (name) { return ground.rows[name][row[name]][way.seen[name]]; }));
      }));
    });
  }

  /* A chance for each of some entries, worked out once for all that show the same of the characters asked. */
  function perRow(ground, answers, ids, chance) {
    var names = [].concat.apply([], answers.map(function (each) { return ground.couplets[each.couplet].asks; }));
    var known = {}, found = {};
    ids.forEach(function (id) {
      var row = ground.entries[id].row;
      var key = names.map(function (name) { return row[name]; }).join();
      if (!has(known, key)) { known[key] = chance(id); }
      found[id] = known[key];
    });
    return found;
  }

  function states(ground, id, couplet) {
    return ground.couplets[couplet].asks.every(function (name) { return has(ground.entries[id].row, name); });
  }

  /* The chance of the answers when each is a look of its own. */
  function apart(ground, answers, ids) {
    return perRow(ground, answers, ids, function (id) { return product(answers.map(function (each) { return alone(ground, id, each); })); });
  }

  /* The chance of one answer when nothing else was answered. */
  function alone(ground, id, answer) {
    var couplet = ground.couplets[answer.couplet], leads = leadsOf(ground, answer.couplet);
    if (!states(ground, id, answer.couplet)) { return 1 / leads.length; }
    var index = leads.indexOf(answer.lead), row = ground.entries[id].row;
    return sum(couplet.takes.map(function (take) {
      if (take[1].indexOf(index) < 0) { return 0; }
      return product(take[0].map(function (piece, place) {
        return ground.rows[couplet.asks[place]][row[couplet.asks[place]]][piece];
      })) / take[1].length;
    }));
  }

  /* Every way of seeing the characters asked about that may be answered so: {seen, share}. */
  function waysTo(ground, answers) {
    return answers.reduce(function (found, each) {
      var couplet = ground.couplets[each.couplet], index = leadsOf(ground, each.couplet).indexOf(each.lead);
      var fitting = couplet.takes.filter(function (take) { return take[1].indexOf(index) >= 0; });
      return [].concat.apply([], found.map(function (way) {
        return fitting.filter(function (take) {
          return take[0].every(function (piece, place) { return !has(way.seen, couplet.asks[place]) || way.seen[couplet.asks[place]] === piece; });
        }).map(function (take) {
          var seen = Object.assign({}, way.seen);
          take[0].forEach(function (piece, place) { seen[couplet.asks[place]] = piece; });
          return { seen: seen, share: way.share / take[1].length };
        });
      }));
    }, [{ seen: {}, share: 1 }]);
  }

  /* The chance of an answer when every lead that those before have left open is as likely. */
  function shareOfOpen(ground, before, answer) {
    return 1 / leadsOf(ground, answer.couplet).filter(function (lead) {
      return waysTo(ground, before.concat([{ couplet: answer.couplet, lead: lead }])).length;
    }).length;
  }

  function fitting(ground, answers) {
    var wanted = {};
    told(answers).forEach(function (each) {
      var when = ground.couplets[each.couplet].leads[each.lead].when;
      Object.keys(when).forEach(function (name) { (wanted[name] = wanted[name] || []).push(when[name]); });
    });
    return Object.keys(ground.entries).filter(function (id) {
      var entry = ground.entries[id];
      return told(answers).every(function (each) { return entry.may[each.couplet].indexOf(each.lead) >= 0; }) &&
        Object.keys(wanted).every(function (name) {
          return !has(entry.shows, name) || !isEmpty(wanted[name].reduce(meet, entry.shows[name]));
        });
    });
  }

  /* What two showings have in common: a list of states, or an interval whose open ends are null. */
  function meet(a, b) {
    if (Array.isArray(a)) { return a.filter(function (state) { return b.indexOf(state) >= 0; }); }
    return {
      low: a.low === null ? b.low : b.low === null ? a.low : Math.max(a.low, b.low),
      high: a.high === null ? b.high : b.high === null ? a.high : Math.min(a.high, b.high)
    };
  }

  function isEmpty(showing) {
    if (Array.isArray(showing)) { return showing.length === 0; }
    return showing.low !== null && showing.high !== null && !(showing.low < showing.high);
  }

  function reach(ground, given, possible, through) {
    var couplets = {}, ends = {}, seen = {}, waiting = [ground.first];
    while (waiting.length) {
      var at = waiting.pop();
      if (has(seen, at)) { continue; }
      seen[at] = true;
      var answered = has(given, at);
      if (!answered) {
        couplets[at] = true;
        if (!through) { continue; }
      }
      live(ground, at, answered ? given[at] : CANNOT_TELL, possible).forEach(function (id) {
        var lead = ground.couplets[at].leads[id];
        if (lead.couplet) { waiting.push(lead.couplet); } else { ends[goesTo(lead)] = true; }
      });
    }
    return {
      couplets: Object.keys(ground.couplets).filter(function (id) { return has(couplets, id); }),
      ends: Object.keys(ends)
    };
  }

  function live(ground, at, answer, possible) {
    if (answer !== CANNOT_TELL) { return [answer]; }
    var leads = leadsOf(ground, at);
    var open = leads.filter(function (lead) {
      return possible.some(function (id) { return ground.entries[id].may[at].indexOf(lead) >= 0; });
    });
    return open.length ? open : leads;
  }

  function bestQuestion(ground, answers, given, nearest, possible, chance) {
    var everywhere = reach(ground, given, possible, true);
    if (everywhere.ends.length < 2) { return ""; }
    return tellsMost(ground, answers, nearest, possible, chance) ||
      tellsMost(ground, answers, everywhere.couplets, possible, chance);
  }

  /* Of some couplets the one that tells most, or "" when none tells anything. */
  function tellsMost(ground, answers, couplets, possible, chance) {
    var gains = {};
    couplets.forEach(function (id) { gains[id] = gain(ground, answers, id, possible, chance); });
    var most = best(couplets, function (id) { return rounded(gains[id], 6); });
    return gains[most] > LEAST_GAIN ? most : "";
  }

  function gain(ground, answers, couplet, possible, chance) {
    var weights = possible.map(function (id) { return chance[id]; });
    var total = sum(weights);
    var after = sum(nextChances(ground, answers, couplet, possible).map(function (given) {
      var joint = possible.map(function (id) { return chance[id] * given[id]; });
      return total > 0 ? sum(joint) / total * entropy(joint) : 0;
    }));
    return entropy(weights) - after;
  }

  /* What the answers have left open, see doubt.py: {open, jumps, row}, questions by their numbers. */
  function doubt(ground, answers, standing) {
    function number(couplet) { return Object.keys(ground.couplets).indexOf(couplet) + 1; }
    function isOpen(each) { return each.lead === CANNOT_TELL; }
    function follows(last) {
      if (isOpen(last)) { return number(standing.asks) === number(last.couplet) + 1; }
      return ground.couplets[last.couplet].leads[last.lead].couplet === standing.asks;
    }
    var open = answers.filter(isOpen).map(function (each) { return number(each.couplet); }).sort(function (a, b) { return a - b; });
    var spoken = answers.length - 1;
    while (spoken >= 0 && isOpen(answers[spoken])) { spoken -= 1; }
    return {
      open: open,
      jumps: open.length > 0 && standing.asks !== "" && !follows(answers[answers.length - 1]),
      row: answers.length - 1 - spoken
    };
  }

  /* Which of the ends that can still be reached is likeliest, those that cannot be told among them: {end, chance}. */
  function likeliest(ground, answers, standing) {
    var given = {};
    answers.forEach(function (each) { given[each.couplet] = each.lead; });
    var end = reach(ground, given, standing.possible, true).ends
      .sort(byScore(function (each) { return rounded(mass(standing, ground.within[each]), 9); }))[0];
    return { end: end, chance: mass(standing, ground.within[end]) };
  }

  /* One arrival for each end still open: {end, sure, members, rivals: [{end, chance, entry, couplet}]}. */
  function arrivals(ground, answers, standing) {
    return standing.ends.map(function (end) {
      var here = ground.within[end];
      return {
        end: end,
        sure: mass(standing, here),
        members: standing.possible.filter(function (id) { return here.indexOf(id) >= 0; }),
        rivals: rivals(ground, answers, standing, here)
      };
    });
  }

  function rivals(ground, answers, standing, taken) {
    var found = [];
    while (found.length < RIVALS) {
      var nearest = likeliestFirst(standing, without(Object.keys(standing.chance), taken))
        .map(function (id) { return narrowest(ground, id); }).find(Boolean);
      if (!nearest || mass(standing, without(ground.within[nearest], taken)) < LEAST_RIVAL) { break; }
      found.push(rival(ground, answers, standing, nearest, without(ground.within[nearest], taken)));
      taken = taken.concat(ground.within[nearest]);
    }
    return found;
  }

  function rival(ground, answers, standing, end, rest) {
    var entry = likeliestFirst(standing, rest)[0];
    var spoken = told(answers);
    var against = spoken.length && best(spoken, function (each) {
      return -alone(ground, entry, each);
    });
    return { end: end, chance: mass(standing, rest), entry: entry, couplet: against ? against.couplet : "" };
  }

  function mass(standing, ids) { return sum(ids.map(function (id) { return standing.chance[id]; })); }

  function without(ids, others) { return ids.filter(function (id) { return others.indexOf(id) < 0; }); }

  function likeliestFirst(standing, ids) {
    return ids.slice().sort(byScore(function (id) { return rounded(standing.chance[id], 9); }));
  }

  /* The end that says most about an entry: of those that hold it, the one that holds fewest. */
  function narrowest(ground, entry) {
    return Object.keys(ground.within)
      .filter(function (end) { return ground.within[end].indexOf(entry) >= 0; })
      .sort(byScore(function (end) { return -ground.within[end].length; }))[0] || "";
  }

  return { CANNOT_TELL: CANNOT_TELL, address: address, answersAt: answersAt, stand: stand, arrivals: arrivals, likeliest: likeliest, doubt: doubt };
});
