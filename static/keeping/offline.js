// Readiness for flight mode: registers the worker, says "ready" only when every file is found, offers a new version.

const WORKER = "service-worker.js";
const NO_WORKER = "Not kept for offline: this needs an https address, or localhost, and no private window.";
const BROKEN_OFF = "Not yet ready for offline: the download broke off. Stay online and come back to this page.";

let trustedAddress = null;
let registered = null;

/**
 * Resolve once a worker serves this page, or when none will: the worker brings the rarer modules in one answer,
 * so it pays to wait for it on the very first visit.
 */
export async function served() {
  if (!("serviceWorker" in navigator) || navigator.serviceWorker.controller) return;
  // Without a worker the modules come over the network, one by one.
  await register().then(installed).catch(() => {});
}

/**
 * Register the worker and tell what becomes of it.
 * @param {object} options
 * @param {(news: {state: "ready" | "not ready" | "new version", says: string} | {state: "groups", groups: object[]})
 *   => void} options.tell what of the groups beside the core is here comes as {says, missing} for each
 * @param {() => boolean} options.isBusy true while a bench stage up to the last mist runs
 * @returns {Promise<{offer: () => void, takeOver: () => void}>} `offer` asks anew once the bench is free
 */
export async function watchOffline({ tell, isBusy }) {
  const notReady = (says) => tell({ state: "not ready", says });
  if (!("serviceWorker" in navigator)) {
    notReady(NO_WORKER);
    return { offer() {}, takeOver() {} };
  }
  const waiting = async () => (await navigator.serviceWorker.getRegistration())?.waiting;
  const offer = async () => {
    const next = await waiting();
    if (navigator.serviceWorker.controller && !isBusy() && next) {
      // What lies beside the core is fetched for the new version too, before the old one goes with its own.
      ask(next, "take the groups");
      tell({ state: "new version", says: "A new version is here, whole. Your work stays." });
    }
  };
  const look = async () => {
    try {
      const registration = await register();
      registration.onupdatefound = () => registration.installing?.addEventListener("statechange", offer);
      if (await installed(registration)) await tellReadiness(registration.active, tell);
      else notReady(BROKEN_OFF);
      offer();
    } catch {
      if (navigator.serviceWorker.controller) await tellReadiness(navigator.serviceWorker.controller, tell);
      else notReady(NO_WORKER);
    }
  };
  reloadWhenTaken();
  document.addEventListener("visibilitychange", async () => {
    if (document.visibilityState !== "visible" || isBusy()) return;
    const registration = await navigator.serviceWorker.getRegistration();
    if (!registration) registered = null;
    if (registration?.active) registration.update().catch(() => {});
    else look();
  });
  look();
  return { offer, takeOver: async () => (await waiting())?.postMessage({ say: "take over" }) };
}

function register() {
  registered = registered ?? navigator.serviceWorker.register(address(), { scope: "./", updateViaCache: "none" });
  return registered;
}

function address() {
  const { href } = new URL(WORKER, document.baseURI);
  const policy = { createScriptURL: () => href };
  trustedAddress = trustedAddress
    ?? (globalThis.trustedTypes?.createPolicy("script-address", policy) ?? policy).createScriptURL(WORKER);
  return trustedAddress;
}

/** Wait until a registration has a worker at work; false where its download broke off. */
async function installed(registration) {
  const worker = registration.active ?? registration.waiting ?? registration.installing;
  if (!worker) return false;
  await reached(worker, ["activated", "redundant"]);
  return worker.state === "activated";
}

function reached(worker, states) {
  if (states.includes(worker.state)) return Promise.resolve();
  return new Promise((resolve) => {
    worker.addEventListener("statechange", () => states.includes(worker.state) && resolve());
  });
}

/** A page of the old version can no longer load its rarer screens once the new worker has taken over. */
function reloadWhenTaken() {
  let hadWorker = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (hadWorker) location.reload();
    hadWorker = true;
  });
}

async function tellReadiness(worker, tell) {
  const { missing, groups } = await ask(worker, "are you whole");
  if (missing.length === 0) tell({ state: "ready", says: "Ready for offline" });
  else tell({ state: "not ready", says: `Not yet ready for offline: ${missing.length} files missing. Stay online.` });
  tell({ state: "groups", groups });
  // However long a group takes, nothing waits for it.
  if (missing.length === 0) ask(worker, "take the groups").then((answer) => tell({ state: "groups", ...answer }));
}

function ask(worker, say) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = (event) => resolve(event.data);
    worker.postMessage({ say }, [port2]);
  });
}
