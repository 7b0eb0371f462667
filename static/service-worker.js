// The baker writes VERSION, FILES, PACK and GROUPS above this line; every address is relative to the worker's scope.
// A pack is one answer in place of fifty: name, line's end, text and a closing mark of each. PACK is what no first
// screen needs; each of GROUPS has one of its own. The core and every group lie in caches of their own.

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
    event.ports[0].postMessage({ missing: await mend(), groups: await statesOfGroups() });
    await letGo();
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
  const text = await (await fetchWhole(pack, "default")).text();
  const entries = text.split("\0");
  if (entries.pop() !== "") throw new Error(`${pack} broke off`);
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
  // An address with the version in it never changes, so the copy just loaded will do; another is asked for again.
  const isVersioned = address.startsWith(new URL(`v-${VERSION}/`, SCOPE).href);
  const fetched = address === INDEX ? fetchIndex() : fetchWhole(address, isVersioned ? "default" : "no-cache");
  await cache.put(address, await fetched);
}

async function fetchIndex() {
  // What the page has just loaded will do if the server says so; a host with poor validators is asked outright.
  for (const mode of ["no-cache", "reload"]) {
    const response = await fetchWhole(INDEX, mode);
    if ((await response.clone().text()).includes(`v-${VERSION}/`)) return response;
  }
  throw new Error("the index belongs to another version");
}

async function fetchWhole(address, mode) {
  const response = await fetch(new URL(address, SCOPE), { cache: mode, credentials: "same-origin" });
  if (!response.ok || response.redirected) throw new Error(`${address} answered ${response.status}`);
  return response;
}

async function mend() {
  const missing = await missingFrom(CORE);
  if (missing.length === 0) return missing;
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
