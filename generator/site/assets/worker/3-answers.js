/* What the worker answers: to the browser, and to the pages of the book (assets/offline.js). */
function isAPage(address) { return /(^|\/)[^/.]*(\.html)?$/.test(pathOf(address)); }

/* For a page that nobody can have just now: the book's own, which says so. A client's details after the # stay in the browser. */
function notKept(address) {
  if (pathOf(address) === "kept.html") { return Response.error(); }
  return Response.redirect(SCOPE + "kept.html?asked=" + encodeURIComponent(pathOf(address)), 302);
}

async function fromServer(request, name) {
  const answer = await fetch(new Request(request, { cache: "no-cache" }));
  if (isGood(answer) && !request.url.includes("?")) {
    const copy = answer.clone();
    const address = plain(request.url).endsWith("/") ? plain(request.url) + "index.html" : plain(request.url);
    await packed(copy, "").then(async (made) => (await caches.open(name)).put(address, made)).catch(() => null); /* No room: shown all the same. */
  }
  return answer;
}

async function page(event) {
  const id = event.resultingClientId, address = event.request.url, up = await editionUp();
  if (up && up !== BOOK) {
    const answer = await fromServer(event.request, MINE + up).catch(() => null);
    if (answer && answer.status < 500) {
      await remember(id, up);
      return answer;
    }
  }
  const kept = await found(KEPT, address);
  if (kept) {
    await remember(id, BOOK);
    return kept;
  }
  try {
    const answer = await fromServer(event.request, KEPT);
    await remember(id, BOOK);
    return answer;
  } catch (problem) {
    for (const name of await othersOfMine()) {
      const older = name.startsWith(MINE) && await found(name, address);
      if (older) {
        await remember(id, name.slice(MINE.length));
        return older;
      }
    }
    return isAPage(address) ? notKept(address) : Response.error();
  }
}

/* A script, a style or a picture, of the edition that its page is of. */
async function part(event) {
  const edition = (await remembered(event.clientId)) || BOOK;
  const kept = await found(MINE + edition, event.request.url);
  if (kept) { return kept; }
  if (edition !== (latest || BOOK)) { return Response.error(); }
  return fromServer(event.request, MINE + edition);
}

async function tellOthers() {
  for (const each of await self.clients.matchAll({ includeUncontrolled: true })) {
    const edition = await remembered(each.id);
    if (edition && edition !== BOOK) { each.postMessage({ newer: BOOK }); }
  }
}

async function state() {
  const list = await listed(), cache = await caches.open(KEPT);
  const there = (await cache.keys()).map((request) => request.url).filter((each) => !each.includes("?")).map(pathOf);
  return {
    whole: Boolean(await cache.match(WHOLE)), pages: there.filter((path) => path.endsWith(".html")).sort(), known: Boolean(list),
    kept: list ? there.filter((path) => path in list.files).length : there.length, of: list ? Object.keys(list.files).length : 0,
    bytes: list ? list.bytes : 0, packed: list ? list.packed_bytes : 0
  };
}

/* told: {page, parts, grass, place}. The first page that is opened was fetched before the worker began. */
async function fill(told, id) {
  if (!(await remembered(id))) { await remember(id, BOOK); }
  const list = await listed(), edition = await remembered(id);
  const own = edition === BOOK ? [told.page, ...told.parts].filter(isOurs).map((each) => pathOf(each).replace(/(^|\/)$/, "$1index.html")) : [];
  const said = await keepAll(hashed(list, [...own, ...(list ? needed(list, told) : [])]));
  await carry();
  return { ...said, ...(await state()), newer: edition !== BOOK };
}

let filling = Promise.resolve(); /* One after another. */
const DO = {
  fill: (told, id) => { filling = filling.catch(() => null).then(() => fill(told, id)); return filling; },
  state,
  /* Some more of the whole book: the page asks again until all of it is there, so that it can be stopped, and goes on another day. */
  more: async () => {
    const list = await listed(), cache = await caches.open(KEPT);
    if (!list) { return { ...(await state()), lost: 1, full: false }; }
    await cache.put(WHOLE, new Response("")).catch(() => null);
    const there = new Set((await cache.keys()).map((request) => pathOf(request.url)));
    const said = await keepAll(hashed(list, Object.keys(list.files).filter((path) => !there.has(path)).slice(0, IN_ONE_GO)));
    return { ...(await state()), ...said };
  },
  stop: async () => {
    await (await caches.open(KEPT)).delete(WHOLE);
    return state();
  },
  only: async (told) => {
    const list = await listed(), cache = await caches.open(KEPT);
    await cache.delete(WHOLE);
    const stay = new Set([...Object.keys(SHELL), ...(list ? needed(list, told) : [])].map(addressOf).concat(LIST));
    for (const request of list ? await cache.keys() : []) {
      if (!stay.has(request.url) && !request.url.startsWith(CLIENT)) { await cache.delete(request); }
    }
    return state();
  }
};

self.addEventListener("install", (event) => {
  event.waitUntil((async () => {
    const told = await keepAll(Object.entries(SHELL)), up = await editionUp();
    if (told.lost || (up && up !== BOOK)) { throw new Error("not all of this edition is there"); } /* The one before stays, whole. */
    await self.skipWaiting();
  })());
});

/* Where the practice's own site stood and the one for clients took its place, nothing of the former stays. */
self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of BOOK.startsWith("c") ? await othersOfMine() : []) {
      if (!name.startsWith(MINE + "c")) { await caches.delete(name); }
    }
    await self.clients.claim();
    await tellOthers();
    carry().catch(() => null); /* Not waited for: the browser answers nothing until then. The next page goes on with it. */
  })());
});

self.addEventListener("message", (event) => {
  const told = event.data || {}, answer = event.ports[0];
  if (!Object.prototype.hasOwnProperty.call(DO, told.do)) { return; }
  event.waitUntil(DO[told.do](told, event.source ? event.source.id : "").then((said) => answer && answer.postMessage(said), () => answer && answer.postMessage(null)));
});

self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET" || !isOurs(event.request.url) || [LIST, EDITION].includes(plain(event.request.url))) { return; }
  event.respondWith(event.request.mode === "navigate" ? page(event) : part(event));
});
