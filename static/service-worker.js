// The baker writes VERSION, FILES, PACK, GROUPS and SUMS above this line; every address is relative to the worker's
// scope. A pack is one answer in place of fifty: name, line's end, text and a closing mark of each. PACK is what no
// first screen needs; each of GROUPS has one of its own. The core and every group lie in caches of their own.
// SUMS has a hash of every file: what does not agree with it enters no cache.

// As in webapp/baker/writer.py.
const SUM_LENGTH = 12;
const SCOPE = new URL(self.registration.scope);
const CACHE_PREFIX = `sixteenth ${SCOPE.pathname} `;
const INDEX = SCOPE.href;
const CORE = { cache: `${CACHE_PREFIX}${VERSION}`, pack: PACK, addresses: [INDEX, ...addressesOf(FILES)] };
const BESIDE = GROUPS.map(({ name, says, pack, files }) => (
  { says, cache: `${CORE.cache} ${name}`, pack, addresses: addressesOf(files), taking: null }
));
const CACHE_OF = new Map([CORE, ...BESIDE].flatMap(({ cache, addresses }) => addresses.map((each) => [each, cache])));
const TYPES = {
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  html: "text/html; charset=utf-8",
  svg: "image/svg+xml",
  webmanifest: "application/manifest+json",
};
// Which version a page is opened in is a person's choice, and outlives relaunches and newer workers.
const CHOSEN = `sixteenth-chosen ${SCOPE.pathname}`;
const ANSWERS_WITHIN = 1000;
// In milliseconds: a download that is silent for so long has broken off.
const LONGEST_SILENCE = 20_000;
const LEFT_TO_THE_SERVER = new Set(["plan", "desk"]);

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => event.waitUntil(listen(event)));
self.addEventListener("fetch", (event) => {
  const answer = answerFor(event.request);
  if (answer) event.respondWith(answer);
});

function addressesOf(names) {
  return names.map((name) => new URL(name, SCOPE).href);
}

async function install() {
  const before = (await versionsKept()).pop() ?? VERSION;
  await take(CORE);
  if (!(await chosen())) await choose(self.registration.active ? before : VERSION);
}

async function activate() {
  await self.clients.claim();
}

async function listen(event) {
  if (event.data?.say === "take over") event.ports[0].postMessage({ isTaken: await takeOver(event.source) });
  if (event.data?.say === "are you whole") {
    event.ports[0].postMessage({ missing: await missingFrom(CORE), groups: await statesOfGroups() });
    await letGo();
  }
  if (event.data?.say === "mend") {
    event.ports[0].postMessage({ missing: await mend(), groups: await statesOfGroups() });
  }
  if (event.data?.say === "which version") event.ports[0].postMessage({ version: VERSION });
  if (event.data?.say === "take the groups") {
    await Promise.all(BESIDE.map(takeOnce));
    event.ports[0].postMessage({ groups: await statesOfGroups() });
  }
}

/** Take this version as the one to open pages in, unless a cup runs in another window; that one would be reloaded. */
async function takeOver(asking) {
  const others = (await windows()).filter(({ id }) => id !== asking.id);
  if (!(await Promise.all(others.map(told))).every((answer) => answer && !answer.isBusy)) return false;
  await choose(VERSION);
  await self.skipWaiting();
  return true;
}

/** Let go of the versions that no window has open and nobody has chosen; who does not answer may have any. */
async function letGo() {
  const answers = await Promise.all((await windows()).map(told));
  const needed = [VERSION, await chosen(), ...answers.map((answer) => answer?.version)];
  const names = await caches.keys();
  // One that is on its way in is not open yet.
  if (answers.includes(null) || self.registration.installing || self.registration.waiting) return;
  const old = names.filter((name) => name.startsWith(CACHE_PREFIX) && !needed.includes(versionOf(name)));
  await Promise.all(old.map((name) => caches.delete(name)));
}

function windows() {
  return self.clients.matchAll({ type: "window", includeUncontrolled: true });
}

/** What a window says of itself, {version, isBusy}; null where it says nothing. */
function told(client) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(resolve, ANSWERS_WITHIN, null);
    client.postMessage({ ask: "what runs" }, [port2]);
  });
}

function versionOf(name) {
  return name.slice(CACHE_PREFIX.length).split(" ")[0];
}

async function versionsKept() {
  const names = (await caches.keys()).filter((name) => name.startsWith(CACHE_PREFIX));
  return [...new Set(names.map(versionOf))].filter((version) => version !== VERSION);
}

async function choose(version) {
  await (await caches.open(CHOSEN)).put(INDEX, new Response(version));
}

async function chosen() {
  const kept = await caches.match(INDEX, { cacheName: CHOSEN });
  return kept ? kept.text() : null;
}

/** Take the core or a group into its cache, whole or not at all. */
async function take({ cache: name, pack, addresses }) {
  try {
    const cache = await caches.open(name);
    const packed = unpack(cache, pack);
    await Promise.all(addresses.map(async (address) => (await packed).has(address) || put(cache, address)));
  } catch (error) {
    // An opened cache would stay behind half filled, and pass for a whole one.
    await caches.delete(name);
    throw error;
  }
}

/** Take a group that is not here; two windows that ask for it at the same time share one download. */
async function takeOnce(group) {
  if ((await missingFrom(group)).length === 0) return;
  group.taking ??= take(group).catch(() => {}).finally(() => {
    group.taking = null;
  });
  await group.taking;
}

function statesOfGroups() {
  return Promise.all(BESIDE.map(async (group) => ({ says: group.says, missing: (await missingFrom(group)).length })));
}

async function unpack(cache, pack) {
  const entries = (await (await fetchTrue(pack)).text()).split("\0");
  entries.pop();
  const addresses = entries.map(async (entry) => {
    const [name] = entry.split("\n", 1);
    const headers = { "Content-Type": TYPES[name.split(".").pop()] };
    const address = new URL(name, SCOPE).href;
    await cache.put(address, new Response(entry.slice(name.length + 1), { headers }));
    return address;
  });
  return new Set(await Promise.all(addresses));
}

async function put(cache, address) {
  await cache.put(address, await fetchTrue(address));
}

/** Fetch a file that agrees with its hash. */
async function fetchTrue(address) {
  const { href } = new URL(address, SCOPE);
  const sum = SUMS[href === INDEX ? "index.html" : href.slice(SCOPE.href.length)];
  // An address with the version in it never changes, so the copy just loaded will do, unless that one is torn; for
  // another the host is asked whether its copy still holds, and where it answers poorly, for the file itself.
  const first = href.startsWith(new URL(`v-${VERSION}/`, SCOPE).href) ? "default" : "no-cache";
  for (const cache of [first, "reload"]) {
    const response = await fetchWhole(href, cache);
    if ((await sumOf(response.clone())) === sum) return response;
  }
  throw new Error(`${address} is not what was baked`);
}

async function fetchWhole(address, cache) {
  const quiet = new AbortController();
  const timer = setTimeout(() => quiet.abort(), LONGEST_SILENCE);
  const response = await fetch(address, { cache, credentials: "same-origin", signal: quiet.signal });
  clearTimeout(timer);
  if (!response.ok || response.redirected) throw new Error(`${address} answered ${response.status}`);
  return response;
}

async function sumOf(response) {
  const bytes = await bytesOf(response);
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("").slice(0, SUM_LENGTH);
}

/** Read an answer to its end, or until it has been silent for too long. */
async function bytesOf(response) {
  const reader = response.body.getReader();
  const parts = [];
  for (;;) {
    let timer = 0;
    const silence = new Promise((_, reject) => {
      timer = setTimeout(() => reject(new Error(`${response.url} broke off`)), LONGEST_SILENCE);
    });
    const { done, value } = await Promise.race([reader.read(), silence]).finally(() => clearTimeout(timer));
    if (done) return new Blob(parts).arrayBuffer();
    parts.push(value);
  }
}

async function mend() {
  // A cache that is gone altogether comes back by the pack, as it came at first.
  if (!(await caches.has(CORE.cache))) await take(CORE).catch(() => {});
  const missing = await missingFrom(CORE);
  if (missing.length === 0 || !(await caches.has(CORE.cache))) return missing;
  const cache = await caches.open(CORE.cache);
  await Promise.all(missing.map((address) => put(cache, address).catch(() => {})));
  return missingFrom(CORE);
}

async function missingFrom({ cache: name, addresses }) {
  // To open a cache that is not there would leave an empty one.
  if (!(await caches.has(name))) return addresses;
  const cache = await caches.open(name);
  const found = new Set((await cache.keys()).map((request) => request.url));
  return addresses.filter((address) => !found.has(address));
}

function answerFor(request) {
  const address = new URL(request.url);
  if (request.method !== "GET" || !address.href.startsWith(SCOPE.href)) return null;
  const path = address.pathname.slice(SCOPE.pathname.length);
  const bare = `${SCOPE.href}${path}`;
  if (bare !== INDEX && CACHE_OF.has(bare)) return fromCache(bare);
  // A page of an older version that is still open loads what it has not yet loaded.
  if (path.startsWith("v-") && request.mode !== "navigate") return fromAnyVersion(bare);
  if (request.mode !== "navigate" || LEFT_TO_THE_SERVER.has(path.split("/")[0])) return null;
  return path === "" || path === "index.html" ? fromChosen() : Response.redirect(INDEX);
}

async function fromChosen() {
  const cacheName = `${CACHE_PREFIX}${(await chosen()) ?? VERSION}`;
  return (await caches.match(INDEX, { cacheName, ignoreVary: true })) ?? fromCache(INDEX);
}

async function fromAnyVersion(address) {
  const [version] = address.slice(SCOPE.href.length + "v-".length).split("/");
  for (const cacheName of (await caches.keys()).filter((name) => versionOf(name) === version)) {
    const kept = await caches.match(address, { cacheName, ignoreVary: true });
    if (kept) return kept;
  }
  return fetch(address);
}

async function fromCache(address) {
  return (await caches.match(address, { cacheName: CACHE_OF.get(address), ignoreVary: true })) ?? fetch(address);
}
