import { inputs } from "../printed.js";
import { stages } from "../sentences.js";
import { inSentence } from "../sheet/quantities.js";
import { rowTitle } from "../sheet/reasons.js";
import { rowOf, state } from "../keeping/store.js";
import { part, setAttribute, setHidden, setText } from "../lib/dom.js";
import { stageOf } from "../clocks/cup-record.js";
import { cupToResume, nextCup } from "../clocks/turns.js";
import { jumpTo } from "./jump.js";

const FIRST_STAGE = "part_a";

/** Bring the bar at the thumb to life: it always holds the one next thing to do. Ticks follow what is done. */
export function join(page) {
  page.acts.next = () => go(page);
  page.draw.begin = (node, row) => {
    const next = state.job.example ? null : nextCup({ cups: [], ...rowOf(row.id).row }, state.sheet);
    setHidden(node, !next);
    if (!next) return;
    setText(node.lastElementChild, `To the bench: cup ${next.number}${next.cups ? ` of ${next.cups}` : ""}`);
    setAttribute(node, "data-colour", row.id);
  };
  part("next").hidden = false;
  page.after.push(() => {
    const { what, where } = nextThing();
    setText(part("next").querySelector(".next__what"), what);
    setText(part("next").querySelector(".next__where"), where);
    for (const step of document.querySelectorAll(".step")) tick(step, isDone(step.dataset.step));
  });
  page.requestRender();
}

/** What there is to do next: {what, where} in words, and where it leads. */
function nextThing() {
  const { job, sheet } = state;
  const face = sheet.rows.colour[0]?.rows.face[0];
  if (job.example && face) {
    return { what: "Next: type your own face", where: "This one is an example", row: face.id, name: "width" };
  }
  const live = cupToResume(job);
  if (live) return onBench(job.colours.find((colour) => colour.cups?.includes(live)), live);
  const blank = firstBlank(sheet);
  if (blank) return atBlank(blank);
  for (const colour of job.colours) {
    const next = nextCup({ cups: [], ...colour }, sheet);
    if (next) return toBegin(colour, next);
  }
  return { what: "All cups are poured", where: "Next: save the job to a file", act: "save-file" };
}

function firstBlank(sheet) {
  if (!sheet.rows.colour.length) return { kind: "empty", name: "colour", row: sheet };
  const colours = sheet.rows.colour;
  const unmade = sheet.checks.filter(({ severity, state: at, blank }) => severity === "stop" && at === "unchecked"
    && inputs[blank.name]?.section === "room");
  const needed = colours.flatMap((colour) => [colour.cells.total_face_volume, colour.rows.cup[0].cells.mix_volume]);
  return firstRefused(sheet) ?? needed.find((cell) => cell?.blank)?.blank ?? unmade[0]?.blank ?? null;
}

/** The first input that cannot be read, from the top of the page down. */
function firstRefused(row) {
  for (const name of Object.keys(row.typed)) {
    if (row.cells[name]?.blank?.kind === "refused") return row.cells[name].blank;
  }
  for (const rows of Object.values(row.rows)) {
    for (const below of rows) {
      const found = firstRefused(below);
      if (found) return found;
    }
  }
  return null;
}

function atBlank({ kind, name, row }) {
  const where = row.level === "job" ? whereIs(name) : rowTitle(row);
  const label = inSentence(name);
  const words = {
    refused: `Next: fix the ${label}`,
    missing: inputs[name]?.kind === "choice" ? `Next: choose the ${label}` : `Next: type the ${label}`,
    empty: `Next: add a ${label}`,
  };
  return { what: words[kind] || `Look at the ${label}`, where, row: row.id, name };
}

function whereIs(name) {
  return { room: "Room", card: "Resin card", bench: "Your cup and how you work" }[inputs[name]?.section] || "The job";
}

function onBench(colour, cup) {
  const stage = stageOf(cup);
  return { ...onTheBench(colour, cup, lower(stage.title)), cup: cup.id };
}

function toBegin(colour, next) {
  const first = stages.find((stage) => stage.name === FIRST_STAGE);
  return onTheBench(colour, next, `measure ${lower(first.title)}`);
}

function onTheBench(colour, cup, next) {
  return { what: `Next: ${next}`, where: cupInWords(colour, cup), act: "bench", colour: colour.id };
}

function cupInWords(colour, { coat, number, cups, coats, amounts }) {
  const all = cups ?? amounts?.cups;
  const allCoats = coats ?? amounts?.coats_to_pour ?? 1;
  const ofAll = all ? ` of ${all}` : "";
  return `${colour.name}, cup ${number}${ofAll}${allCoats > 1 ? `, coat ${coat} of ${allCoats}` : ""}`;
}

function lower(title) {
  return title[0].toLowerCase() + title.slice(1);
}

async function go(page) {
  const next = nextThing();
  if (next.act) {
    const button = part("next").querySelector(".next__button");
    button.dataset.colour = next.colour ?? "";
    button.dataset.cup = next.cup ?? "";
    page.acts[next.act]?.(button);
    return;
  }
  for (const step of document.querySelectorAll(".step[data-done]")) page.setFolded(step, true);
  jumpTo(page, next.row, next.name);
}

function tick(step, isTicked) {
  step.toggleAttribute("data-done", isTicked);
  setText(part("done", step), isTicked ? "done" : "");
}

/** Whether a step has all it needs: its figures, and for the last ones its cups. */
function isDone(name) {
  const { job, sheet } = state;
  const colours = sheet.rows.colour;
  const all = (test) => colours.length > 0 && !job.example && colours.every(test);
  const isPoured = (colour) => nextCup({ cups: [], ...colour }, sheet) === null;
  const tests = {
    resin: () => !sheet.cells.working_time.blank && !sheet.cells.volume_ratio.blank,
    faces: () => all((colour) => !colour.cells.total_face_volume.blank),
    cups: () => all((colour) => !colour.rows.cup[0].cells.mix_volume.blank),
    tint: () => all((colour) => colour.cells.tint.value === "clear" || !colour.rows.cup[0].cells.starting_drops.blank),
    cure: () => all(() => true) && job.colours.every(isPoured),
  };
  return Boolean(tests[name]?.());
}
