// What is left where the browser keeps nothing, or the disk does not answer: stores that last as long as the page.
// A disk that answers after all is taken up again, with what was typed meanwhile.

import { changesOf, snapshots } from "./snapshots.js";

/** Open stores of these names, with the same verbs as the database's. */
function openMemory(names) {
  const stores = Object.fromEntries(names.map((name) => [name, new Map()]));
  return {
    isMemory: true,
    read: async (store, key) => stores[store].get(key),
    count: async (store) => stores[store].size,
    entries: async (store) => [...stores[store]],
    write: async (changes) => {
      for (const [store, key, value] of changes) {
        if (value === undefined) stores[store].delete(key);
        else stores[store].set(key, value);
      }
      return stores.jobs.size;
    },
  };
}

/**
 * Go on in memory, with all that the page has read or written so far, and say so.
 * @param {import("./persistence.js").JobStorage} storage
 * @param {Error & {late?: Promise<object>}} error what the disk said, or that it said nothing
 * @param {{jobs: number}} sentinel
 */
export async function workInMemory(storage, error, sentinel) {
  if (storage.isMemory) return;
  const disk = storage.base;
  storage.base = openMemory(storage.stores);
  storage.isMemory = true;
  await storage.base.write([
    ...(storage.copy ? changesOf(JSON.parse(storage.copy)) : []),
    ...[...storage.known].map(([id, record]) => ["jobs", id, record]),
  ]);
  const says = warning(error, disk || sentinel.jobs);
  if (!disk && (await snapshots(storage)).length) storage.problem = { kind: "memory", says };
  else storage.tell({ kind: "not saved", says });
  error.late?.then((found) => takeUp(storage, disk, found)).catch(() => {});
}

/** What was typed in memory goes to the disk, joined with what is there. */
async function takeUp(storage, disk, found) {
  const began = new Map(storage.known);
  const jobs = await storage.base.entries("jobs");
  if (disk) storage.base = disk;
  else await storage.take(found);
  storage.isMemory = false;
  // What to do with a loss was asked while the disk was silent.
  storage.problem = null;
  if (!disk && !found.last && jobs.length) {
    await storage.change(jobs.map(([id, record]) => ["jobs", id, record]), storage.openId);
  }
  for (const id of storage.waiting.keys()) if (began.has(id)) storage.known.set(id, began.get(id));
  if (storage.waiting.size) storage.saveWaiting();
  else if (!disk && storage.job) storage.tell({ kind: "changed elsewhere", job: storage.job });
}

function warning(error, hadJobs) {
  if (error.late) {
    return "This phone does not answer, so your work is kept only while this page is open: save the job to a file.";
  }
  return hadJobs
    ? "Your saved jobs cannot be opened just now: save what you do here to a file, then reload the page."
    : "This browser keeps nothing once it is closed: save the job to a file before you leave.";
}

/** Say why a job is not saved. */
export function refusal(error) {
  if (error?.name === "Newer") return error.message;
  const why = error?.name === "QuotaExceededError" ? "this phone is full" : "the browser refused it";
  return `Not saved: ${why}. Save the job to a file now.`;
}
