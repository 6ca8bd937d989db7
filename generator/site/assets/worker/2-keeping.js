/* What is kept, packed: a page of the book is a sixth of its size so. A browser that cannot pack keeps it as it is. */
const PACKED = "x-swardbook-packed", HASH = "x-swardbook-hash", AT_A_TIME = 6, IN_ONE_GO = 40;

function headersOf(answer, without) {
  const headers = new Headers(answer.headers);
  without.forEach((each) => headers.delete(each));
  return headers;
}

async function packed(answer, hash) {
  const headers = headersOf(answer, ["content-encoding", "content-length", "vary"]);
  if (hash) { headers.set(HASH, hash); }
  if (!self.CompressionStream) { return new Response(await answer.arrayBuffer(), { headers }); }
  headers.set(PACKED, "gzip");
  return new Response(await new Response(answer.body.pipeThrough(new CompressionStream("gzip"))).arrayBuffer(), { headers });
}

function unpacked(kept) {
  if (!kept || !kept.headers.has(PACKED)) { return kept; }
  return new Response(kept.body.pipeThrough(new DecompressionStream("gzip")), { headers: headersOf(kept, [PACKED, HASH]) });
}

/* A folder is its first page; a host may leave the ending of a page out of its address. */
async function found(name, address) {
  const path = plain(address), cache = await caches.open(name);
  const kept = await cache.match(path.endsWith("/") ? path + "index.html" : path);
  return unpacked(kept || (/\/[^/.]+$/.test(path) ? await cache.match(path + ".html") : undefined));
}

function isGood(answer) { return answer.ok && answer.type === "basic"; }

async function fetched(address, name, hash) {
  const answer = await fetch(address, { cache: "no-cache" });
  if (isGood(answer)) { await (await caches.open(name)).put(address, await packed(answer.clone(), hash)); }
  return answer;
}

/* What did not change is taken over from the edition before. */
async function taken(address, hash, older) {
  for (const name of hash ? older : []) {
    const kept = await (await caches.open(name)).match(address);
    if (kept && kept.headers.get(HASH) === hash) { return kept; }
  }
  return null;
}

/* wanted: [[path, hash]]. Returns {lost, full}: how many could not be had just now, and whether the device has no room for more. */
async function keepAll(wanted) {
  const cache = await caches.open(KEPT), older = await othersOfMine(), left = wanted.slice(), told = { lost: 0, full: false };
  async function one(path, hash) {
    const address = addressOf(path);
    if (await cache.match(address)) { return; }
    try {
      const kept = await taken(address, hash, older);
      if (kept) { await cache.put(address, kept); } else { await fetched(address, KEPT, hash); }
    } catch (problem) {
      if (problem.name === "QuotaExceededError") { told.full = true; } else { told.lost += 1; }
    }
  }
  async function some() { while (left.length && !told.full) { await one(...left.shift()); } }
  await Promise.all(Array.from({ length: AT_A_TIME }, some));
  return told;
}

/* {edition, files: path to hash, at_once: [path], chosen: [pattern], bytes, packed_bytes}; null where it cannot be had. */
async function listed() {
  try {
    const list = await ((await found(KEPT, LIST)) || await fetched(LIST, KEPT, "")).json();
    if (list.edition === BOOK) { return list; }
    await (await caches.open(KEPT)).delete(LIST);
  } catch (problem) { /* Without a signal, or without such a list. */ }
  return null;
}

/* What is kept for a reader who chose a grass and a place: [path]. */
function needed(list, chosen) {
  const ids = ["grass", "place"].filter((each) => AN_ID.test(chosen[each] || ""));
  const filled = list.chosen.map((pattern) => ids.reduce((text, each) => text.split("{" + each + "}").join(chosen[each]), pattern));
  const like = filled.filter((each) => !each.includes("{")).map((each) => new RegExp("^" + each.split("*").map((part) => part.replace(/[.+]/g, "\\$&")).join("[^/]*") + "$"));
  return [...list.at_once, ...Object.keys(list.files).filter((path) => like.some((each) => each.test(path)))];
}

function hashed(list, paths) { return paths.map((path) => [path, list ? list.files[path] || "" : ""]); }

/* What a reader had opened in the edition before is kept of this one too; then the other goes, unless a page of it is still open. */
async function carry() {
  const list = await listed();
  for (const name of await othersOfMine()) {
    if (name === MINE + latest) { continue; } /* The next one, whose worker is not there yet. */
    const before = await caches.open(name), opened = (await before.keys()).map((request) => request.url);
    if (opened.includes(WHOLE)) { await (await caches.open(KEPT)).put(WHOLE, new Response("")); }
    const paths = opened.filter((each) => !each.includes("?")).map(pathOf).filter((path) => !list || path in list.files);
    const told = await keepAll(hashed(list, paths));
    if (!told.lost && !(await inUse(before))) { await caches.delete(name); }
  }
}
