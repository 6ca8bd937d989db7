/* Keeps the book for a phone without signal: what every page needs from the start, other pages once they were opened. BOOK and SHELL
   are put in at build time: a hash of everything in the site, and the files that every page needs with the hash of each.
   Several books may stand on one host: each keeps its pages under its own address (the scope), and drops none but its own. */
"use strict";
const MINE = "swardbook-" + self.registration.scope + "#"; /* No address has a # in it before its fragment. */
const KEPT = MINE + BOOK;
const OF_EARLIER_EDITIONS = /^swardbook-[0-9a-f]{16}$/;

function plain(address) { return address.split("#")[0].split("?")[0]; }
function isOurs(address) { return address.startsWith(self.registration.scope); }

async function fetched(address) {
  const answer = await fetch(plain(address), { cache: "no-cache" });
  if (answer.ok && answer.type === "basic") { await (await caches.open(KEPT)).put(plain(address), answer.clone()); }
  return answer;
}

/* One that cannot be had now is fetched when it is asked for. */
function fetchedAll(addresses) { return Promise.all(addresses.map((each) => fetched(each).catch(() => null))); }

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(fetchedAll(Object.keys(SHELL).map((path) => new URL(path, self.registration.scope).href)));
});

/* Editions before named what they kept by their hash alone: it is this book's where all of it is, its front page too. */
async function isMine(name) {
  if (name.startsWith(MINE)) { return true; }
  if (!OF_EARLIER_EDITIONS.test(name)) { return false; }
  const kept = (await (await caches.open(name)).keys()).map((request) => request.url);
  return kept.every(isOurs) && kept.includes(self.registration.scope + "index.html");
}

/* A new edition of the book fetches anew what a reader had opened in the old one, then drops the old. */
self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name === KEPT || !(await isMine(name))) { continue; }
      const opened = await (await caches.open(name)).keys();
      await fetchedAll(opened.map((request) => request.url));
      await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

self.addEventListener("message", (event) => { event.waitUntil(fetchedAll(event.data.filter(isOurs))); });

self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET" || !isOurs(event.request.url)) { return; }
  event.respondWith(caches.open(KEPT).then((cache) => cache.match(plain(event.request.url))).then((kept) => kept || fetched(event.request.url)));
});
