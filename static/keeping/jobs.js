// The jobs on this phone: listed, deleted with undo, brought back from a snapshot.
import { ask } from "./disk.js";
import { recordOf } from "./persistence.js";
import { changesOf, snapshots } from "./snapshots.js";
import { newId } from "./store.js";
import { inTrash } from "./trash.js";

/**
 * List the jobs as {id, name, at: Date}, the one last changed first.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function listJobs(storage) {
  const records = await ask(storage, (base) => base.entries("jobs"));
  const rows = records.map(([id, record]) => (
    { id, name: String(record?.name ?? ""), at: new Date(Date.parse(record?.at) || 0) }
  ));
  return rows.sort((one, other) => other.at - one.at || one.name.localeCompare(other.name));
}

/** Read a job of the list without opening it; null where it is missing or damaged. */
export async function readJob(storage, id) {
  await storage.settled();
  return storage.whole(id, await ask(storage, (base) => base.read("jobs", id)));
}

/** Open a job of the list: as it is, or where it is damaged as the newest snapshot has it. */
export async function openJobOf(storage, id) {
  const job = await storage.open(id);
  if (job) return { job };
  for (const { at, records } of await snapshots(storage)) {
    const change = changesOf({ records, cards: [] }).find(([, each]) => each === id);
    if (!change) continue;
    await storage.change([change]);
    return { job: await storage.open(id), from: at };
  }
  return { job: null };
}

/** Delete a job; for a day it can be taken back. */
export async function removeJob(storage, id) {
  await storage.settled();
  const record = await ask(storage, (base) => base.read("jobs", id));
  const trash = inTrash({ kind: "job", id, name: record.name, record });
  await storage.change([["jobs", id, undefined], trash], storage.openId === id ? null : storage.openId);
}

/** Put back what is missing, damaged or older than a snapshot, and return the job that was open then, or null. */
export async function restoreSnapshot(storage, { records, cards, open }) {
  const stored = new Map(await ask(storage, (base) => base.entries("jobs")));
  const isLost = async ({ id, at }) => !(await storage.whole(id, stored.get(id))) || stored.get(id).at < at;
  const lost = await Promise.all(records.map(isLost));
  await storage.change(changesOf({ records: records.filter((_, place) => lost[place]), cards }), null);
  storage.problem = null;
  const opened = records.find(({ id }) => id === open) ?? records[0];
  return opened ? storage.open(opened.id) : null;
}

/** Take what is stored for the truth, even if it is nothing: a recovery is over. */
export async function startAfresh(storage) {
  await storage.change([], null);
  storage.problem = null;
}

/** Take a job from a file: a job that the phone has already is never written over, so it gets an id of its own. */
export async function adoptJob(storage, job) {
  await storage.settled();
  const whole = { units: {}, room: {}, card: {}, bench: {}, colours: [], ...job };
  const taken = job.id ? await ask(storage, (base) => base.read("jobs", job.id)) : null;
  const isAnother = !job.id || (taken && taken.text !== recordOf(whole, "").text);
  const adopted = isAnother ? { ...whole, id: newId("job") } : whole;
  storage.save(adopted);
  await storage.settled();
  return adopted;
}
