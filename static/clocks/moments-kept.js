// What is brought back after a loss has the cup in hand: a snapshot is taken at each moment that a clock hangs on.
import { contactOf, endOfPour, isLive } from "./cup-record.js";
import { allCups } from "./turns.js";

/**
 * Take a snapshot at contact, at the end of the pour and at the cover of each cup.
 * @param {object} parts
 * @param {() => object} parts.jobNow
 * @param {(listener: (change: {kind: string}) => void) => void} parts.subscribe to changes of the job
 * @param {{settled: () => Promise<void>, snapshot: () => void}} parts.storage
 */
export function keepMoments({ jobNow, subscribe, storage }) {
  let before = momentsOf(jobNow());
  subscribe(async ({ kind }) => {
    const now = momentsOf(jobNow());
    const isMore = kind === "bench" && now > before;
    before = now;
    if (!isMore) return;
    await storage.settled();
    storage.snapshot();
  });
}

function momentsOf(job) {
  const isCovered = (cup) => endOfPour(cup) !== null && !isLive(cup);
  const reached = ({ cup }) => [contactOf(cup) !== null, endOfPour(cup) !== null, isCovered(cup)].filter(Boolean);
  return allCups(job).flatMap(reached).length;
}
