/* A live preview keeps nothing: whatever an earlier, built book left in this browser goes. */
"use strict";
self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => {
  event.waitUntil(caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name)))).then(() => self.registration.unregister()));
});
