/* Keeps the site on the device, so that it opens without a network.
 *
 * The lists are put in when the site is built. "core" is kept at once: the keys, the guides and
 * what they load. "rest" is kept when someone asks for it, and from then on with each new version.
 */
"use strict";
var BUILT = {"version": "", "core": [], "rest": []};

var PREFIX = "wetmount-";
var NAME = PREFIX + BUILT.version;
var ALL = "everything-is-kept";
var AT_ONCE = 20;

/* Keeps files a few at a time, past the browser's own store, so that versions never mix. */
async function keep(paths, told) {
  var cache = await caches.open(NAME);
  for (var at = 0; at < paths.length; at += AT_ONCE) {
    await cache.addAll(paths.slice(at, at + AT_ONCE).map(function (path) { return new Request(path, { cache: "reload" }); }));
    if (told) { told(Math.min(at + AT_ONCE, paths.length), paths.length); }
  }
}

async function keepRest(told) {
  await keep(BUILT.rest, told);
  await (await caches.open(NAME)).put(ALL, new Response(""));
}

async function ours() {
  return (await caches.keys()).filter(function (name) { return name.indexOf(PREFIX) === 0; });
}

async function install() {
  var kept = await Promise.all((await ours()).map(async function (name) { return (await caches.open(name)).match(ALL); }));
  await keep(BUILT.core);
  if (kept.some(Boolean)) { await keepRest(); }
}

async function activate() {
  await Promise.all((await ours()).map(function (name) { return name === NAME ? null : caches.delete(name); }));
}

async function answer(request) {
  var cache = await caches.open(NAME);
  var address = request.url.split(/[?#]/)[0];
  var kept = await cache.match(address.slice(-1) === "/" ? address + "index.html" : address);
  if (kept) { return kept; }
  try { return await fetch(request); } catch (error) {
    var instead = request.mode === "navigate" && await cache.match("offline.html");
    if (!instead) { throw error; }
    return Response.redirect(new URL("offline.html#missing", self.registration.scope), 302);
  }
}

self.addEventListener("install", function (event) { event.waitUntil(install()); });
self.addEventListener("activate", function (event) { event.waitUntil(activate()); });
self.addEventListener("fetch", function (event) {
  if (event.request.method === "GET" && new URL(event.request.url).origin === self.location.origin) { event.respondWith(answer(event.request)); }
});
self.addEventListener("message", function (event) {
  function tell(words) { event.source.postMessage(words); }
  if (event.data === "take over") { self.skipWaiting(); }
  if (event.data === "is everything kept?") {
    event.waitUntil(caches.open(NAME).then(function (cache) { return cache.match(ALL); }).then(function (all) { tell({ all: Boolean(all) }); }));
  }
  if (event.data === "keep everything") {
    event.waitUntil(keepRest(function (done, of) { tell({ done: done, of: of }); })
      .then(function () { tell({ all: true }); }, function () { tell({ failed: true }); }));
  }
});
