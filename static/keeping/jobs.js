// The jobs on this phone: listed, deleted with undo, brought back from a snapshot.
import { checksum, recordOf } from "./persistence.js";
import { newId } from "./store.js";

/**
 * List the jobs as {id, name, at: Date}, the one last changed first.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function listJobs(storage) {
  const rows = (await storage.base.entries("jobs")).map(([id, { name, at }]) => ({ id, name, at: new Date(at) }));
  return rows.sort((one, other) => other.at - one.at || one.name.localeCompare(other.name));
}

/** Delete a job; the function that comes back puts it there again, and opens it if it was open. */
export async function removeJob(storage, id) {
  await storage.settled();
  const record = await storage.base.read("jobs", id);
  const open = storage.openId;
  await storage.change([["jobs", id, undefined]], open === id ? null : open);
  return () => storage.change([["jobs", id, record]], open);
}

/** Put back what is missing, damaged or older than a snapshot, and return the job that was open then, or null. */
export async function restoreSnapshot(storage, { at, jobs, cards, open }) {
  const date = at.toISOString();
  const stored = new Map(await storage.base.entries("jobs"));
  const lost = jobs.filter((job) => !isWhole(stored.get(job.id)) || stored.get(job.id).at < date);
  const ownCards = cards.map((card) => ["cards", card.name, card]);
  await storage.change([...lost.map((job) => ["jobs", job.id, recordOf(job, date)]), ...ownCards], null);
  storage.problem = null;
  const opened = jobs.find((job) => job.id === open) ?? jobs[0];
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
  const taken = job.id ? await storage.base.read("jobs", job.id) : null;
  const isAnother = !job.id || (taken && taken.text !== JSON.stringify(whole));
  const adopted = isAnother ? { ...whole, id: newId("job") } : whole;
  storage.save(adopted);
  await storage.settled();
  return adopted;
}

function isWhole(record) {
  return Boolean(record) && checksum(record.text) === record.sum;
}
