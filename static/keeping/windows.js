// Other windows with the same app: each is told at once what one has written, and takes over its own job from there.
import { ask } from "./disk.js";
import { mend } from "./mend.js";
import { besideOf, emptyTrash } from "./trash.js";

const ANSWERS_WITHIN = 1000;

/**
 * Tell other windows what this one writes, and hear from them.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function watchWindows(storage) {
  Object.assign(storage, { besideOf, mend });
  const channel = globalThis.BroadcastChannel ? new BroadcastChannel("sixteenth") : null;
  storage.written = (changes) => {
    const jobs = changes.filter(([store]) => store === "jobs").map(([, id]) => id);
    if (jobs.length) channel?.postMessage({ jobs });
  };
  let hasHeard = !channel;
  channel?.addEventListener("message", ({ data }) => {
    hasHeard = true;
    storage.isAlone = false;
    if (data.isNew) channel.postMessage({ jobs: [] });
    else if (data.jobs.includes(storage.openId)) look(storage);
  });
  channel?.postMessage({ isNew: true });
  setTimeout(() => {
    storage.isAlone = !hasHeard;
  }, ANSWERS_WITHIN);
  document.addEventListener("visibilitychange", () => turned(storage));
  globalThis.addEventListener("focus", () => look(storage));
  // What is needed once the stores are gone must not have to be fetched then.
  await Promise.all([import("./memory.js"), import("./snapshots.js")]);
  await emptyTrash(storage);
  // What was told while this page was still on its way.
  await look(storage);
}

function turned(storage) {
  if (document.visibilityState === "hidden") storage.snapshot();
  else if (storage.waiting.size) storage.saveWaiting();
  else look(storage);
}

/** Take over the open job where another window has written it; what is on its way is joined with it as it arrives. */
async function look(storage) {
  await storage.settled();
  const id = storage.openId;
  if (!id || !storage.isAtRest) return;
  const before = storage.known.get(id);
  const record = await ask(storage, (base) => base.read("jobs", id)).catch(() => null);
  if (!record || record.sum === before?.sum || !storage.isAtRest) return;
  const job = await storage.whole(id, record);
  if (!job) return;
  if (storage.isAtRest && id === storage.openId) storage.tell({ kind: "changed elsewhere", job });
  else storage.known.set(id, before);
}
