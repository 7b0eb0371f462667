// Readiness for flight mode: registers the worker, says "ready" only when every file is found, offers a new version.

const WORKER = "service-worker.js";

/**
 * Register the worker and tell what becomes of it.
 * @param {object} options
 * @param {(news: {state: "ready" | "not ready" | "new version", says: string}) => void} options.tell
 * @param {() => boolean} options.isBusy true while a bench stage up to the last mist runs
 * @returns {Promise<{offer: () => void, takeOver: () => void}>} `offer` asks anew once the bench is free
 */
export async function watchOffline({ tell, isBusy }) {
  const silent = { offer() {}, takeOver() {} };
  if (!("serviceWorker" in navigator)) {
    tell({ state: "not ready", says: "Not kept for offline: this needs an https address, or localhost." });
    return silent;
  }
  try {
    const registration = await register();
    reloadWhenTaken();
    const offer = () => {
      if (registration.waiting && navigator.serviceWorker.controller && !isBusy()) {
        tell({ state: "new version", says: "A new version is here, whole. Your work stays." });
      }
    };
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", offer);
    });
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && !isBusy()) registration.update().catch(() => {});
    });
    offer();
    reportReadiness(tell);
    return { offer, takeOver: () => registration.waiting?.postMessage({ say: "take over" }) };
  } catch {
    tell(await unregistered());
    return silent;
  }
}

/**
 * Resolve once a worker serves this page, or when none will: the worker brings the rarer modules in one answer,
 * so it pays to wait for it on the very first visit.
 */
export async function served() {
  if (!("serviceWorker" in navigator) || navigator.serviceWorker.controller) return;
  try {
    const { active, installing } = await register();
    if (!active && installing) await reached(installing, ["activated", "redundant"]);
  } catch {
    // Without a worker the modules come over the network, one by one.
  }
}

let registration = null;

function register() {
  registration = registration ?? registerOnce();
  return registration;
}

function registerOnce() {
  const address = new URL(WORKER, document.baseURI).href;
  const policy = globalThis.trustedTypes?.createPolicy("script-address", { createScriptURL: () => address });
  const trusted = policy ? policy.createScriptURL(WORKER) : address;
  return navigator.serviceWorker.register(trusted, { scope: "./", updateViaCache: "none" });
}

/** A page of the old version can no longer load its rarer screens once the new worker has taken over. */
function reloadWhenTaken() {
  let hadWorker = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (hadWorker) location.reload();
    hadWorker = true;
  });
}

async function reportReadiness(tell) {
  const { active } = await navigator.serviceWorker.ready;
  await reached(active, ["activated"]);
  const { missing } = await ask(active, "are you whole");
  if (missing.length === 0) {
    tell({ state: "ready", says: "Ready for offline" });
  } else {
    tell({ state: "not ready", says: `Not yet ready for offline: ${missing.length} files missing. Stay online.` });
  }
}

function reached(worker, states) {
  if (states.includes(worker.state)) return Promise.resolve();
  return new Promise((resolve) => {
    worker.addEventListener("statechange", () => states.includes(worker.state) && resolve());
  });
}

function ask(worker, say) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = (event) => resolve(event.data);
    worker.postMessage({ say }, [port2]);
  });
}

/** Offline, a registration may be refused although an earlier one still serves every file. */
async function unregistered() {
  const worker = navigator.serviceWorker.controller;
  if (worker && (await ask(worker, "are you whole")).missing.length === 0) {
    return { state: "ready", says: "Ready for offline" };
  }
  return { state: "not ready", says: "Not kept for offline: the browser refused it. A private window does." };
}
