/* Keeps a hosted book for a phone without signal. BOOK and SHELL are put in at build time: which edition this is, and what has to be there
   before it takes over, path to hash. Every edition has a store of its own, and a page takes all that it is made of from the edition that
   it is of itself: so that no page meets the scripts of another edition.
   Several books may stand on one host: each keeps its pages under its own address (the scope), and drops none but its own. */
"use strict";
const SCOPE = self.registration.scope, MINE = "swardbook-" + SCOPE + "#"; /* No address has a # in it before its fragment. */
const KEPT = MINE + BOOK, LIST = SCOPE + "offline-files.json", EDITION = SCOPE + "offline-edition.json", WHOLE = SCOPE + "?whole", CLIENT = SCOPE + "?client=";
const OF_EARLIER_EDITIONS = /^swardbook-[0-9a-f]{16}$/, AN_EDITION = /^c?[0-9a-f]{16}$/, AN_ID = /^[a-z0-9-]+$/;
/* How long a page waits to hear which edition is up, and for how long none waits after one that heard nothing. */
const PATIENCE_MS = 2000, WITHOUT_ASKING_MS = 30000;
/* A page that was asked for may not be there yet when old stores are swept. */
const ARRIVING_MS = 10000;
const pages = new Map();
let unheard = 0, latest = "";

function plain(address) { return address.split("#")[0].split("?")[0]; }
function isOurs(address) { return address.startsWith(SCOPE); }
function addressOf(path) { return new URL(path, SCOPE).href; }
function pathOf(address) { return plain(address).slice(SCOPE.length); }

/* Editions before named what they kept by their hash alone: it is this book's where all of it is, its front page too. */
async function isMine(name) {
  if (name.startsWith(MINE)) { return true; }
  if (!OF_EARLIER_EDITIONS.test(name)) { return false; }
  const kept = (await (await caches.open(name)).keys()).map((request) => request.url);
  return kept.every(isOurs) && kept.includes(SCOPE + "index.html");
}

async function othersOfMine() {
  const found = [];
  for (const name of await caches.keys()) { if (name !== KEPT && await isMine(name)) { found.push(name); } }
  return found;
}

/* Which edition the server has; empty where nobody says so in time. A page answers for its cautions, so each one asks before it is shown from
   what is kept: that is a file of some bytes, and a phone without signal knows at once. */
async function editionUp() {
  if (!navigator.onLine) { return ""; }
  const heard = fetch(EDITION, { cache: "no-store" }).then((answer) => answer.ok ? answer.json() : null).then((told) => {
    latest = told && AN_EDITION.test(told.edition) ? told.edition : "";
    if (latest && latest !== BOOK) { self.registration.update().catch(() => null); }
    return latest;
  }).catch(() => "");
  if (Date.now() < unheard) { return ""; }
  const late = new Promise((done) => setTimeout(done, PATIENCE_MS, null));
  const up = await Promise.race([heard, late]);
  if (up === null) { unheard = Date.now() + WITHOUT_ASKING_MS; }
  return up || "";
}

/* Which edition a page is of is written down beside what is kept of that edition: a browser ends a worker whenever it likes. */
async function remember(id, edition) {
  if (!id) { return; }
  pages.set(id, edition);
  await (await caches.open(MINE + edition)).put(CLIENT + id, new Response(String(Date.now()))).catch(() => null);
}

/* Empty for a page of which nobody has said. */
async function remembered(id) {
  if (pages.has(id)) { return pages.get(id); }
  for (const name of await caches.keys()) {
    if (name.startsWith(MINE) && await (await caches.open(name)).match(CLIENT + id)) {
      pages.set(id, name.slice(MINE.length));
      return pages.get(id);
    }
  }
  return "";
}

async function inUse(cache) {
  const open = (await self.clients.matchAll({ includeUncontrolled: true })).map((each) => CLIENT + each.id);
  for (const request of await cache.keys()) {
    if (!request.url.startsWith(CLIENT)) { continue; }
    const since = Number(await (await cache.match(request)).text());
    if (open.includes(request.url) || Date.now() - since < ARRIVING_MS) { return true; }
    await cache.delete(request);
  }
  return false;
}
