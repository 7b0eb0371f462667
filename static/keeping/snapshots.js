// The ring: the last three snapshots of all jobs and cards, with checksums, in another store than the jobs' own.
// And the judgement whether the stored work is what was saved.
import { file } from "../printed.js";

const RING = "sixteenth-snapshots";
const SLOTS = [0, 1, 2];
const SUM_HEADER = "X-Checksum";
const PATIENCE = 3000;

/**
 * Put all that a storage holds into the place of the oldest snapshot, or of a damaged one; a copy stays in the page.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function keepSnapshot(storage) {
  // Asked once there is something to lose; a browser may say no without a word.
  if (!storage.copy) navigator.storage?.persist?.().catch(() => {});
  const [jobs, cards] = await Promise.all(["jobs", "cards"].map((store) => storage.base.entries(store)));
  const whole = jobs.filter(([, record]) => storage.isWhole(record)).map(([id, record]) => ({ id, ...record }));
  const content = {
    records: whole.sort((one, other) => (one.at < other.at ? 1 : -1)),
    cards: cards.map(([, card]) => card),
    open: storage.openId,
  };
  storage.copy = JSON.stringify(content);
  const slots = await Promise.all(SLOTS.map((slot) => readSlot(storage, slot)));
  const [newest, oldest] = [Math.max, Math.min].map((end) => {
    const at = end(...slots.map((slot) => slot.at));
    return slots.find((slot) => Number(slot.at) === at);
  });
  if (sumsOf(newest) === sumsOf(content)) return;
  const text = JSON.stringify({ at: new Date().toISOString(), ...content });
  const headers = { "Content-Type": "application/json", [SUM_HEADER]: storage.checksum(text) };
  const cache = await caches.open(RING);
  await cache.put(addressOf(oldest.slot), new Response(text, { headers }));
}

/** What tells two snapshots apart. */
function sumsOf({ records, cards, open }) {
  return records && JSON.stringify([records.map(({ id, sum }) => [id, sum]), cards, open]);
}

/** List a storage's snapshots that are whole as {at: Date, records, cards, open}, the newest first. */
export async function snapshots(storage) {
  const tooLate = new Promise((resolve) => setTimeout(resolve, PATIENCE, []));
  return Promise.race([tooLate, read(storage)]);
}

async function read(storage) {
  if (!(await hasSnapshots())) return [];
  const slots = await Promise.all(SLOTS.map((slot) => readSlot(storage, slot)));
  return slots.filter((each) => each.records).sort((one, other) => other.at - one.at);
}

/** Whether the ring of snapshots was ever begun. */
async function hasSnapshots() {
  return globalThis.caches ? caches.has(RING).catch(() => false) : false;
}

/** What has to be written to have the jobs and cards of a snapshot again. */
export function changesOf({ records, cards }) {
  return [
    ...records.map(({ id, ...record }) => ["jobs", id, record]),
    ...cards.map((card) => ["cards", card.name, card]),
  ];
}

/**
 * Judge what is stored against the sentinel: {kind, says}, or null where all is well.
 * The sentinel may lag behind, since a kill takes the last seconds of it; it can never be ahead.
 */
export async function judge(storage, { last, count, open, record, sentinel }) {
  const date = sentinel.at ? ` Last saved ${new Date(sentinel.at).toLocaleString()}.` : "";
  const had = sentinel.jobs === 1 ? "1 job" : `${sentinel.jobs || "some"} jobs`;
  if (!last && !count && (sentinel.jobs || (await hasSnapshots()))) {
    return { kind: "emptied", says: `This phone had ${had}, and now it has none.${date}` };
  }
  if (last && sentinel.saves > last.saves) {
    return { kind: "older", says: `What this phone has is older than what was saved.${date}` };
  }
  if (count < sentinel.jobs && (!last || sentinel.saves === last.saves)) {
    return { kind: "missing", says: `This phone had ${had}, and now it has ${count || "none"}.${date}` };
  }
  if (open && !storage.job && last) {
    return isNewer(storage, record)
      ? { kind: "newer", says: "Your job was saved by a newer version of this app. Close all its windows and open it." }
      : { kind: "damaged", says: `The job you worked on last is damaged or missing.${date}` };
  }
  if (!last && !storage.job) await openLatest(storage);
  return null;
}

function isNewer(storage, record) {
  try {
    return storage.isWhole(record) && JSON.parse(record.text).version > file.version;
  } catch {
    return false;
  }
}

/** Where it is not known which job was open, it was the one last changed. */
async function openLatest(storage) {
  const jobs = await storage.base.entries("jobs");
  const [latest] = jobs.sort(([, one], [, other]) => (one.at < other.at ? 1 : -1));
  storage.job = await storage.whole(...latest);
  storage.openId = storage.job?.id ?? null;
}

async function readSlot(storage, slot) {
  const empty = { slot, at: new Date(0), records: null };
  try {
    const cache = await caches.open(RING);
    const response = await cache.match(addressOf(slot));
    const text = await response.text();
    if (storage.checksum(text) !== response.headers.get(SUM_HEADER)) return empty;
    const { at, jobs, ...content } = JSON.parse(text);
    // Until version 4 a snapshot held the jobs themselves.
    const records = jobs?.map((job) => ({ id: job.id, ...storage.recordOf(job, at) }));
    return { slot, at: new Date(at), records, ...content };
  } catch {
    return empty;
  }
}

function addressOf(slot) {
  return new URL(`snapshot-${slot}`, document.baseURI).href;
}
