// A job that no screen can show: another is opened, and its own text is handed out as it was kept.
import { handOut } from "../lib/files.js";
import { listJobs } from "../keeping/jobs.js";
import { jobFileName } from "../keeping/transfer.js";

const aside = new Set();

/**
 * Put a job aside: it stays on the phone, but is no longer the open one.
 * @param {import("../keeping/persistence.js").JobStorage} storage
 * @param {object} job
 * @returns {Promise<{next: object | null, save: () => Promise<string>}>} the job to open instead, and what saves the
 * one put aside to a file, to be called from a tap
 */
export async function putAside(storage, job) {
  aside.add(job.id);
  const text = (await storage.base.read("jobs", job.id))?.text ?? JSON.stringify(job);
  const next = (await listJobs(storage)).find(({ id }) => !aside.has(id));
  if (!next) await storage.change([], null);
  const file = { name: jobFileName({ name: String(job.name ?? "job") }), type: "application/json", text: String(text) };
  return { next: next ? await storage.open(next.id) : null, save: () => handOut(file) };
}
