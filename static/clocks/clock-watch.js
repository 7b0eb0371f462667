// Watches every clock of the job, on the bench or not, and rings when one ends.
import { anyRunning, ringing, ringSentence, runningClocks } from "./clocks.js";

/**
 * Ring the clocks of a job as they end; ticks only while one runs.
 * @param {object} parts
 * @param {() => object} parts.jobNow
 * @param {(listener: () => void) => void} parts.subscribe to changes of the job
 * @param {object} parts.ticking
 * @param {object} parts.reminders
 */
export function watchClocks({ jobNow, subscribe, ticking, reminders }) {
  let seen = ticking.now();
  let stop = null;
  const look = (now) => {
    const rings = ringing(runningClocks(jobNow()), seen, now);
    seen = now;
    if (rings.length) reminders.ring(rings.map((ring) => ringSentence(ring, now)).join(" "));
  };
  const follow = () => {
    const isRunning = anyRunning(jobNow());
    if (isRunning && !stop) {
      seen = ticking.now();
      stop = ticking.subscribe(look);
    } else if (!isRunning && stop) {
      stop();
      stop = null;
    }
  };
  subscribe(follow);
  follow();
}
