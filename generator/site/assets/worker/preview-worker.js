/* A live preview keeps nothing: what an earlier, built book left in this browser under this address goes, and nothing of anybody else's. */
"use strict";
const MINE = "swardbook-" + self.registration.scope + "#";
const OF_EARLIER_EDITIONS = /^swardbook-[0-9a-f]{16}$/;

async function isMine(name) {
  if (name.startsWith(MINE)) { return true; }
  if (!OF_EARLIER_EDITIONS.test(name)) { return false; }
  return (await (await caches.open(name)).keys()).every((request) => request.url.startsWith(self.registration.scope));
}

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) { if (await isMine(name)) { await caches.delete(name); } }
    await self.registration.unregister();
  })());
});
