// The baker writes VERSION, FILES and PACK above this line; every address is relative to the worker's scope.
// PACK is what no first screen needs: name, line's end and text of each, one answer in place of fifty.

const SCOPE = new URL(self.registration.scope);
const CACHE_PREFIX = `sixteenth ${SCOPE.pathname} `;
const CACHE = `${CACHE_PREFIX}${VERSION}`;
const INDEX = SCOPE.href;
const OWN = new Set(FILES.map((name) => new URL(name, SCOPE).href));
const TYPES = {
  js: "text/javascript; charset=utf-8",
  html: "text/html; charset=utf-8",
  svg: "image/svg+xml",
  webmanifest: "application/manifest+json",
};
const LEFT_TO_THE_SERVER = new Set(["plan", "desk"]);

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => event.waitUntil(listen(event)));
self.addEventListener("fetch", (event) => {
  const answer = answerFor(event.request);
  if (answer) event.respondWith(answer);
});

async function install() {
  try {
    const cache = await caches.open(CACHE);
    const packed = unpack(cache);
    await Promise.all([INDEX, ...OWN].map(async (address) => (await packed).has(address) || put(cache, address)));
  } catch (error) {
    // An opened cache would stay behind half filled, and pass for a version.
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(CACHE_PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function listen(event) {
  if (event.data?.say === "take over") await self.skipWaiting();
  if (event.data?.say === "are you whole") event.ports[0].postMessage({ version: VERSION, missing: await mend() });
}

async function unpack(cache) {
  const text = await (await fetchWhole(PACK, "default")).text();
  const addresses = text.split("\0").map(async (entry) => {
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
  const missing = await missingFiles();
  if (missing.length === 0) return missing;
  const cache = await caches.open(CACHE);
  await Promise.all(missing.map((address) => put(cache, address).catch(() => {})));
  return missingFiles();
}

async function missingFiles() {
  const cache = await caches.open(CACHE);
  const found = new Set((await cache.keys()).map((request) => request.url));
  return [INDEX, ...OWN].filter((address) => !found.has(address));
}

function answerFor(request) {
  const address = new URL(request.url);
  if (request.method !== "GET" || !address.href.startsWith(SCOPE.href)) return null;
  const path = address.pathname.slice(SCOPE.pathname.length);
  const bare = `${SCOPE.href}${path}`;
  if (OWN.has(bare)) return fromCache(bare);
  if (request.mode !== "navigate" || LEFT_TO_THE_SERVER.has(path.split("/")[0])) return null;
  return path === "" || path === "index.html" ? fromCache(INDEX) : Response.redirect(INDEX);
}

async function fromCache(address) {
  return (await caches.match(address, { cacheName: CACHE, ignoreVary: true })) ?? fetch(address);
}
