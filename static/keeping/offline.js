// Readiness for flight mode: registers the worker, says "ready" only when every file is found, offers a new version.

const WORKER = "service-worker.js";
const NO_WORKER = "Not kept for offline: this needs an https address, or localhost, and no private window.";
const ELSEWHERE = "A cup runs in another window, or that window sleeps. Close it, then take the new version.";
const OWN_VERSION = import.meta.url.match(/\/v-([^/]+)\//)?.[1];
const BROKEN_OFF = "Not yet ready for offline: the download broke off. Stay online and come back to this page.";
// In milliseconds: a download that broke off is begun again, beside whenever somebody looks.
const TRIED_AGAIN_AFTER = 60_000;

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
 * @returns {Promise<{look: () => void, offer: () => void, takeOver: () => void}>} `look` tells how it is now, `offer`
 * asks anew once the bench is free
 */
export async function watchOffline({ tell, isBusy }) {
  const notReady = (says) => tell({ state: "not ready", says });
  if (!("serviceWorker" in navigator)) {
    notReady(NO_WORKER);
    return { look() {}, offer() {}, takeOver() {} };
  }
  // The newer version waits, or after a relaunch is at work already and serves the old one.
  const newer = async () => {
    const { waiting, active } = (await navigator.serviceWorker.getRegistration()) ?? {};
    if (waiting) return waiting;
    return active && (await ask(active, "which version")).version !== OWN_VERSION ? active : null;
  };
  const offer = async () => {
    if (isBusy()) return;
    const next = await newer();
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
      else {
        notReady(BROKEN_OFF);
        setTimeout(lookAgain, TRIED_AGAIN_AFTER);
      }
      offer();
    } catch {
      if (navigator.serviceWorker.controller) await tellReadiness(navigator.serviceWorker.controller, tell);
      else notReady(NO_WORKER);
    }
  };
  answerWorkers(isBusy);
  // Where a cup runs the old version goes on, and its worker's successor serves it.
  whenTaken(() => isBusy() || location.reload());
  const lookAgain = async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    if (!registration?.active) registered = null;
    // While hands are on a cup nothing new is fetched, but what is gone is told and mended.
    else if (!isBusy()) registration.update().catch(() => {});
    await look();
  };
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") lookAgain();
  });
  globalThis.addEventListener("online", lookAgain);
  look();
  const takeOver = async () => {
    const next = await newer();
    const { isTaken } = await ask(next, "take over");
    if (!isTaken) tell({ state: "new version", says: ELSEWHERE });
    else if (next.state === "activated" && !isBusy()) location.reload();
  };
  return { look: lookAgain, offer, takeOver };
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

/** Tell a worker which version this window is of, and whether it may be reloaded. */
function answerWorkers(isBusy) {
  navigator.serviceWorker.addEventListener("message", ({ ports }) => {
    ports[0]?.postMessage({ version: OWN_VERSION, isBusy: isBusy() });
  });
  navigator.serviceWorker.startMessages();
}

/** Call back when another worker has taken over from the one that served this page. */
function whenTaken(taken) {
  let before = navigator.serviceWorker.controller;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (before) taken();
    before = navigator.serviceWorker.controller;
  });
}

async function tellReadiness(worker, tell) {
  let { missing, groups } = await ask(worker, "are you whole");
  if (missing.length) {
    // What is missing is told before it is mended, as that may take long.
    tellMissing(missing, tell);
    ({ missing, groups } = await ask(worker, "mend"));
  }
  if (missing.length) tellMissing(missing, tell);
  else tell({ state: "ready", says: "Ready for offline" });
  tell({ state: "groups", groups });
  // However long a group takes, nothing waits for it.
  if (missing.length === 0) ask(worker, "take the groups").then((answer) => tell({ state: "groups", ...answer }));
}

function tellMissing({ length }, tell) {
  const files = `${length} ${length === 1 ? "file" : "files"}`;
  tell({ state: "not ready", says: `Not yet ready for offline: ${files} missing. Stay online.` });
}

function ask(worker, say) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = (event) => resolve(event.data);
    worker.postMessage({ say }, [port2]);
  });
}
