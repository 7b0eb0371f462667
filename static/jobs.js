// The jobs on this phone: listed, deleted with undo, brought back from a snapshot.
import { recordOf } from "./persistence.js";

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

/** Put the jobs and cards of a snapshot over what there is, and return the job that was open then, or null. */
export async function restoreSnapshot(storage, { jobs, cards, open }) {
  const at = new Date().toISOString();
  const opened = jobs.find((job) => job.id === open) ?? jobs[0] ?? null;
  const rows = jobs.map((job) => ["jobs", job.id, recordOf(job, at)]);
  const ownCards = cards.map((card) => ["cards", card.name, card]);
  await storage.change([...rows, ...ownCards], opened?.id ?? null);
  storage.problem = null;
  return opened;
}
