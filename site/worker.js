/* Keeps the site on the device, so that it opens without a network.
 *
 * The lists are put in when the site is built. "core" is kept at once: the keys, the guides, what they load. "told"
 * follows when the page is quiet: all entries as text. "rest" is kept when someone asks for it, and from then on with each new version; and whatever was
 * opened stays. A new version waits until a reader takes it over, so that nothing changes under a walk.
 */
"use strict";
var BUILT = {"version": "", "core": [], "told": [], "rest": []};

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

/* What is told of entries, the frame last: where it is kept, all is. */
async function keepTold() {
  if (!await (await caches.open(NAME)).match("offline/frame.json")) { await keep(BUILT.told); }
}

async function keepRest(told) {
  await keepTold();
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

/* The path of an address within the site: "entries/plectus.html". */
function pathOf(address) {
  var path = address.split(/[?#]/)[0].slice(self.registration.scope.length);
  return path === "" || path.slice(-1) === "/" ? path + "index.html" : path;
}

/* The contents of one of the files under offline/. */
async function told(cache, folder, name) {
  var kept = await cache.match("offline/" + folder + "-" + name.charAt(0) + ".json");
  return kept ? (await kept.json())[name] : null;
}

/* A page of an entry or of look-alikes put together from what is told of it, and a drawing from its small picture. */
async function composed(cache, path) {
  var page = /^(entries|look-alikes)\/([^/]+)\.html$/.exec(path), drawing = /^drawings\/(?:small\/)?([^/]+)\.svg$/.exec(path);
  if (drawing) {
    var svg = await told(cache, "drawings", drawing[1]);
    return svg ? new Response(svg, { headers: { "Content-Type": "image/svg+xml" } }) : null;
  }
  var frame = page && await cache.match("offline/frame.json"), body = frame && await told(cache, page[1], page[2]);
  if (!body) { return null; }
  var parts = { title: body[0], kind: body[1], main: body[2] };
  var html = (await frame.json())[page[1]].replace(/<!--(title|kind|main)-->/g, function (all, name) { return parts[name]; });
  return new Response(html, { headers: { "Content-Type": "text/html; charset=utf-8" } });
}

/* Kept, or fetched and then kept too, or put together, or the page that says what is missing. */
async function answer(request) {
  var cache = await caches.open(NAME), path = pathOf(request.url);
  var kept = await cache.match(path);
  if (kept) { return kept; }
  try {
    var fetched = await fetch(request);
    if (BUILT.version !== "edited" && fetched.status === 200 && fetched.type === "basic" && !fetched.redirected) { cache.put(path, fetched.clone()).catch(function () { /* no room */ }); }
    return fetched;
  } catch (error) {
    var instead = await composed(cache, path);
    if (instead) { return instead; }
    if (request.mode !== "navigate" || !await cache.match("offline.html")) { throw error; }
    return Response.redirect(new URL("offline.html#missing=" + encodeURIComponent(path), self.registration.scope), 302);
  }
}

self.addEventListener("install", function (event) { event.waitUntil(install()); });
self.addEventListener("activate", function (event) { event.waitUntil(activate()); });
self.addEventListener("fetch", function (event) {
  if (event.request.method === "GET" && new URL(event.request.url).origin === self.location.origin) { event.respondWith(answer(event.request)); }
});
self.addEventListener("message", function (event) {
  function tell(words) { event.source.postMessage(words); }
  if (event.data === "keep what is told") { event.waitUntil(keepTold().catch(function () { /* another time */ })); }
  if (event.data === "take over") { self.skipWaiting(); }
  if (event.data === "is everything kept?") {
    event.waitUntil(caches.open(NAME).then(function (cache) { return cache.match(ALL); }).then(function (all) { tell({ all: Boolean(all) }); }));
  }
  if (event.data === "keep everything") {
    event.waitUntil(keepRest(function (done, of) { tell({ done: done, of: of }); })
      .then(function () { tell({ all: true }); }, function () { tell({ failed: true }); }));
  }
});
