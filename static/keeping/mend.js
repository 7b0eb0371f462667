// What is written beside a job where another window has written meanwhile, or where the stores were emptied under it.
import { file } from "../printed.js";
import { lift } from "./lift.js";
import { merged } from "./merge.js";
import { changesOf } from "./snapshots.js";

/** The job on the disk is of a newer version of the app than this page. */
class Newer extends Error {
  name = "Newer";
}

const NEWER = "Not saved: a newer version of this app has this job open. Save the job to a file, then reload the page.";

/**
 * Join what is about to be written with what is stored.
 * @param {import("./persistence.js").JobStorage} storage
 * @param {object} parts
 * @param {Array[]} parts.changes as `storage.change` takes them
 * @param {object[]} parts.found what is stored at their keys
 * @param {((store: string) => IDBObjectStore) | null} parts.objects the stores, in the transaction that writes them
 * @param {boolean} parts.isEmptied whether all stores were emptied
 * @returns {() => void} what to do once it is written
 */
export function mend(storage, { changes, found, objects, isEmptied }) {
  const joined = changes.flatMap(([store, id, record], place) => {
    const [known, stored] = [storage.known.get(id), found[place]];
    const isApart = store === "jobs" && record && known && stored && known.sum !== stored.sum;
    return isApart && storage.isWhole(stored) ? [joinedWith(storage, id, known, stored, record)] : [];
  });
  const rows = joined.map(({ id, record }) => ["jobs", id, record]);
  if (objects) for (const [store, id, record] of rows) objects(store).put(record, id);
  return () => {
    // A window that was taken for alone has written over the other's work, which is joined at once.
    if (!objects && rows.length) storage.change(rows);
    for (const each of joined) tellOf(storage, each, Boolean(objects));
    if (isEmptied) putBack(storage);
  };
}

/** What the page still has of other jobs and cards goes back where they are gone. */
async function putBack(storage) {
  const kept = storage.copy ? changesOf(JSON.parse(storage.copy)) : [];
  const stored = await Promise.all(kept.map(([store, key]) => storage.base.read(store, key)));
  const gone = kept.filter((_, place) => !stored[place]);
  if (gone.length) await storage.change(gone);
  storage.tell({ kind: "emptied", says: emptied(gone.length > 0) });
}

function joinedWith(storage, id, known, stored, record) {
  const [base, theirs, mine] = [known, stored, record].map(read);
  const job = record.at >= stored.at ? merged(base, theirs, mine) : merged(base, mine, theirs);
  const at = record.at >= stored.at ? record.at : stored.at;
  return { id, mine, job, record: storage.recordOf(job, at) };
}

/** What was typed while the disk was busy stands too. */
function tellOf(storage, { id, mine, job, record }, isWritten) {
  if (isWritten) storage.known.set(id, record);
  const waiting = storage.waiting.get(id);
  const now = waiting ? merged(mine, job, waiting.job) : job;
  if (waiting) storage.waiting.set(id, { ...waiting, job: now });
  storage.tell({ kind: "changed elsewhere", job: now });
}

function read({ text }) {
  const job = JSON.parse(text);
  if (job.version > file.version) throw new Newer(NEWER);
  return job.version === file.version ? job : lift(job);
}

function emptied(hadMore) {
  return hadMore
    ? "The browser cleared what this phone keeps. Your jobs are put back; save them to files."
    : "The browser cleared what this phone keeps. This job is saved again; save it to a file.";
}
