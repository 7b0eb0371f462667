// What was deleted stays on the phone for a day, so that it can be taken back after a relaunch too.
import { ask } from "./disk.js";
import { levels } from "../printed.js";

const DAY = 24 * 60 * 60_000;

/** The change that puts something into the trash: a job with its record, or a row with its place. */
export function inTrash({ id, ...what }) {
  return ["trash", id, { ...what, at: Date.now(), until: Date.now() + DAY }];
}

/** What goes into the trash, or out of it, together with a change of the store. */
export function besideOf(job, { removed, back }) {
  if (back) return [["trash", back, undefined]];
  if (!removed) return [];
  const { row, ...where } = removed;
  // Nothing done later in the page reaches what lies in the trash.
  const copy = JSON.parse(JSON.stringify(row));
  return [inTrash({ kind: "row", id: row.id, name: row.name, job: job.id, row: copy, ...where })];
}

/** What was deleted last and can still be taken back, as {id, name, at, ...}, or null. */
export async function lastDeleted(storage) {
  const kept = (await ask(storage, (base) => base.entries("trash"))).map(([id, what]) => ({ id, ...what }));
  const [last] = kept.filter(({ until }) => until > Date.now()).sort((one, other) => other.at - one.at);
  return last ?? null;
}

/** Let go of what was deleted more than a day ago. */
export async function emptyTrash(storage) {
  const kept = await ask(storage, (base) => base.entries("trash"));
  const old = kept.filter(([, { until }]) => !(until > Date.now())).map(([id]) => ["trash", id, undefined]);
  if (old.length) await storage.change(old);
}

/**
 * Take back what was deleted.
 * @param {import("./persistence.js").JobStorage} storage
 * @param {object} what one that `lastDeleted` gave
 * @param {object} openNow the job that is open
 * @returns {Promise<{job?: object, error?: string}>} the job that has the row again, to be opened
 */
export async function takeBack(storage, what, openNow) {
  const gone = ["trash", what.id, undefined];
  if (what.kind === "job") {
    // Another window may have gone on with it, and put it on the disk again.
    const stored = await ask(storage, (base) => base.read("jobs", what.id));
    await storage.change([...(stored ? [] : [["jobs", what.id, what.record]]), gone]);
    return {};
  }
  const job = openNow.id === what.job ? openNow : await storage.open(what.job);
  const place = job && placeOf(job, "job", what.parent, what.level);
  if (!place) return { error: `What ${what.name} stood in was deleted too. Take that back first.` };
  if (!place.some(({ id }) => id === what.id)) place.splice(what.place, 0, what.row);
  storage.save(job, { back: what.id });
  await storage.settled();
  return { job };
}

/** The list of a job in which the rows of a level stand below a parent, or null where that is gone. */
function placeOf(row, level, parent, wanted) {
  if (row.id === parent || (level === "job" && parent === "job")) {
    row[levels[wanted].rows] ??= [];
    return row[levels[wanted].rows];
  }
  for (const below of levels[level].held) {
    for (const each of row[levels[below].rows] ?? []) {
      const found = placeOf(each, below, parent, wanted);
      if (found) return found;
    }
  }
  return null;
}
