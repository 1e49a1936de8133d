"use strict";
/* Runs site/assets/engine.js on cases that Python has worked out; exit code 1 where anything differs by more than 1e-9. */
const fs = require("fs");
const path = require("path");
const [script, folder] = process.argv.slice(2);
const read = (name) => JSON.parse(fs.readFileSync(path.join(folder, name), "utf8"));
const engine = require(path.resolve(script)).open(read("data.json"));
let wrong = 0;

function compare(one, other, where) {
  if (typeof one === "number" && typeof other === "number") {
    if (!(Math.abs(one - other) <= 1e-9)) report(where, one, other);
  } else if (Array.isArray(one) && Array.isArray(other) && one.length === other.length) {
    one.forEach((each, i) => compare(each, other[i], `${where}.${i}`));
  } else if (JSON.stringify(one) !== JSON.stringify(other)) report(where, one, other);
}

function report(where, one, other) {
  wrong += 1;
  if (wrong < 20) console.log(where, JSON.stringify(one), JSON.stringify(other));
}

for (const each of read("cases.json")) {
  const { trail, left } = engine.parse(each.address);
  const result = engine.describe(trail);
  const got = {
    address: each.address,
    left,
    chance: Object.values(result.chance),
    verdict: result.verdict && [result.verdict.id, result.verdict.chance, result.verdict.word],
    names: result.names.map((name) => [name.id, name.chance, name.word]),
    more: [result.rest.count, result.rest.chance],
    settled: result.settled,
    leading: result.leading && [result.leading.id, result.leading.chance],
    lives: result.lives.map((name) => [name.id, name.chance]),
    feeding: result.feeding.map((name) => [name.id, name.chance]),
    cautions: result.cautions,
    outside: result.outside,
    fits: result.fits,
    next: result.next.map((question) => [question.character, question.gain, question.effort]),
    conflicts: result.conflicts.map((conflict) => conflict.source),
    explain: [each.explain[0], engine.explain(trail, each.explain[0]).map((reason) => [reason.sources, reason.weight])],
  };
  if (each.walk) {
    const walk = engine.walk(trail);
    got.walk = [walk.asks, walk.asksCharacter, walk.arrived, walk.goesOn, walk.holds, walk.passed, Object.entries(walk.likely), walk.open, walk.ends.map((end) => [end.id, end.chance])];
  }
  if (!left.length && engine.write(trail) !== each.address) report("address", each.address, engine.write(trail));
  for (const name of Object.keys(each)) compare(each[name], got[name], `${each.address} ${name}`);
}
process.exit(wrong ? 1 : 0);
