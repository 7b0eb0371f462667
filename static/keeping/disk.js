// What a list of the jobs asks of the disk, and what becomes of a disk that is not as it was left.

/**
 * Ask the stores; those in memory where the disk does not answer. A browser may close it under a sleeping page.
 * @param {import("./persistence.js").JobStorage} storage
 * @param {(base: object) => Promise<object>} act
 */
export async function ask(storage, act) {
  const asked = () => storage.inTime(act(storage.base));
  try {
    return await asked();
  } catch (error) {
    return rescue(storage, error, asked);
  }
}

/** Read a job and remember it as the open one; null where it is missing or damaged. */
export async function open(storage, id) {
  await storage.settled();
  const job = await storage.whole(id, await ask(storage, (base) => base.read("jobs", id)));
  if (job) await storage.change([], id);
  return job;
}

/** Try again what the disk refused, once that can help; else the error is thrown. */
export async function rescue(storage, error, again) {
  if (error?.name === "Apart") storage.mend = (await import("./mend.js")).mend;
  else if (error?.name === "Hangs") await goToMemory(storage, error);
  else if (error?.name === "InvalidStateError") await openAgain(storage);
  else throw error;
  try {
    return await again();
  } catch (next) {
    // A disk that was opened again may have been emptied, or may not answer; the same twice is no help.
    if (next?.name === error.name) throw next;
    return rescue(storage, next, again);
  }
}

async function openAgain(storage) {
  try {
    storage.base = await storage.inTime(storage.openDatabase());
  } catch (error) {
    await goToMemory(storage, error);
  }
}

async function goToMemory(storage, error) {
  const { workInMemory } = await import("./memory.js");
  await workInMemory(storage, error, { jobs: 0 });
}

/** Open a database whose version is a newer app's, which is left as it is, or that has lost some of its stores. */
export async function mended(database, connect, stores) {
  const opened = database ?? (await connect());
  if (stores.every((store) => opened.objectStoreNames.contains(store))) return opened;
  opened.close();
  return connect(opened.version + 1);
}
