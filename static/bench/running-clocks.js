// The clocks that run while a person is at the job sheet: for each cup the next one, above the bar at the thumb.
import { clone, part, setHidden, setText } from "../lib/dom.js";
import { dayAndTime, shortly } from "../lib/moments.js";
import { anyRunning, clockTitle, lateSentence, runningClocks } from "../clocks/clocks.js";

const MOST = 2;
const SOON = 12 * 60 * 60 * 1000;

/**
 * Show the next clock of each cup in a list, and keep it going.
 * @param {Element} list
 * @param {object} parts
 * @param {object} parts.ticking
 * @param {() => object} parts.jobNow
 * @param {(listener: () => void) => void} parts.subscribe to changes of the job
 * @param {(cupId: string) => void} parts.open called with the cup that was tapped
 */
export function showRunningClocks(list, { ticking, jobNow, subscribe, open }) {
  let stop = null;
  let key = "";
  const show = (now) => {
    const clocks = nextOfEachCup(runningClocks(jobNow()), now).slice(0, MOST);
    const found = clocks.map((clock) => `${clock.id} ${clock.at}`).join();
    if (found !== key) list.replaceChildren(...clocks.map((clock) => lineOf(clock, open)));
    key = found;
    clocks.forEach((clock, place) => say(list.children[place], clock, now));
  };
  const follow = () => {
    const isRunning = anyRunning(jobNow());
    setHidden(list, !isRunning);
    document.body.toggleAttribute("data-running", isRunning);
    if (!isRunning) stop?.();
    stop = isRunning ? stop ?? ticking.subscribe(show) : null;
    show(ticking.now());
  };
  subscribe(follow);
  follow();
}

/** Of each cup what was missed or comes next; what may be done by now gives way to what is still to come. */
function nextOfEachCup(clocks, now) {
  const isPressing = (clock) => clock.at > now || clock.stage.bound !== "earliest";
  const ids = [...new Set(clocks.map((clock) => clock.cup.id))];
  return ids.map((id) => {
    const own = clocks.filter((clock) => clock.cup.id === id);
    return own.find(isPressing) ?? own[own.length - 1];
  }).sort((one, other) => one.at - other.at);
}

function lineOf(clock, open) {
  const line = clone("running-clock");
  setText(part("name", line), clockTitle(clock));
  line.querySelector(".dot").style.setProperty("--swatch", clock.colour.swatch || "");
  line.querySelector("button").addEventListener("click", () => open(clock.cup.id));
  return line;
}

function say(line, clock, now) {
  const isLate = clock.at <= now;
  const left = clock.at - now < SOON ? `${shortly(clock.at - now)} · ` : "";
  line.querySelector("button").classList.toggle("running__clock--late", isLate && clock.stage.bound !== "earliest");
  setText(part("when", line), isLate ? lateSentence(clock, now) : `${left}${dayAndTime(clock.at, now)}`);
}
