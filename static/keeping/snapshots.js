// The ring: the last three snapshots of all jobs and cards, with checksums, in another store than the jobs' own.
// And the judgement whether the stored work is what was saved.

const SLOTS = [0, 1, 2];
const SUM_HEADER = "X-Checksum";

/**
 * Put all that a storage holds into the place of the oldest snapshot, or of a damaged one.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function keepSnapshot(storage) {
  const [jobs, cards, ...slots] = await Promise.all([
    storage.base.entries("jobs"),
    storage.base.entries("cards"),
    ...SLOTS.map((slot) => readSlot(storage, slot)),
  ]);
  const text = JSON.stringify({
    at: new Date().toISOString(),
    jobs: jobs.map(([, record]) => JSON.parse(record.text)),
    cards: cards.map(([, card]) => card),
    open: storage.openId,
  });
  const oldest = slots.reduce((found, each) => (each.at < found.at ? each : found));
  const headers = { "Content-Type": "application/json", [SUM_HEADER]: storage.checksum(text) };
  const cache = await caches.open(storage.ring);
  await cache.put(addressOf(oldest.slot), new Response(text, { headers }));
}

/** List a storage's snapshots that are whole as {at: Date, jobs, cards, open}, the newest first. */
export async function snapshots(storage) {
  if (!(await storage.hasSnapshots())) return [];
  const slots = await Promise.all(SLOTS.map((slot) => readSlot(storage, slot)));
  return slots.filter((each) => each.jobs).sort((one, other) => other.at - one.at);
}

/**
 * Judge what is stored against the sentinel: {kind, says}, or null where all is well.
 * The sentinel may lag behind, since a kill takes the last seconds of it; it can never be ahead.
 */
export function problemOf({ last, count, job, sentinel, hasSnapshots }) {
  const date = sentinel.at ? ` Last saved ${new Date(sentinel.at).toLocaleString()}.` : "";
  const had = sentinel.jobs === 1 ? "1 job" : `${sentinel.jobs || "some"} jobs`;
  if (!last && (sentinel.jobs || hasSnapshots)) {
    return { kind: "emptied", says: `This phone had ${had}, and now it has none.${date}` };
  }
  if (last && sentinel.saves > last.saves) {
    return { kind: "older", says: `What this phone has is older than what was saved.${date}` };
  }
  if (last && sentinel.saves === last.saves && count < sentinel.jobs) {
    return { kind: "missing", says: `This phone had ${had}, and now it has ${count}.${date}` };
  }
  if (last?.open && !job) {
    return { kind: "damaged", says: `The job you worked on last is damaged or missing.${date}` };
  }
  return null;
}

async function readSlot(storage, slot) {
  const empty = { slot, at: new Date(0), jobs: null };
  try {
    const cache = await caches.open(storage.ring);
    const response = await cache.match(addressOf(slot));
    const text = await response.text();
    if (storage.checksum(text) !== response.headers.get(SUM_HEADER)) return empty;
    const { at, ...content } = JSON.parse(text);
    return { slot, at: new Date(at), ...content };
  } catch {
    return empty;
  }
}

function addressOf(slot) {
  return new URL(`snapshot-${slot}`, document.baseURI).href;
}
