// The walk of cups over the bench: which one is shown, what its taps do, and what stands around its stage.
import { buttonOf, part, setAttribute, setHidden, setText } from "../lib/dom.js";
import { timeOfDay } from "../lib/moments.js";
import { askTwice } from "../lib/twice.js";
import { calculate } from "../sheet/sheet.js";
import { keepCup, newId, state, subscribe } from "../keeping/store.js";
import {
  canStepBack, endOfPour, freeze, isLive, isSetAside, newCup, stageOf, tapped, withCalendar, withoutTap, withReason,
  withStepBack, withTap,
} from "../clocks/cup-record.js";
import { allCups, cupAfterTap, cupToResume, nextCups } from "../clocks/turns.js";
import { cupTitle } from "../clocks/clocks.js";
import { handOutTimes } from "./to-calendar.js";
import { colourNow, keepCupAndCoat, planNextCup } from "./coats.js";
import { calm } from "./notices.js";
import { moveRest, showRest } from "./rest.js";
import { idleView, viewOf } from "./views.js";

/** A gloved finger bounces: for so many milliseconds after a tap the next one is not taken. */
const BOUNCE = 500;
const SHEETS = new WeakMap();

/** The bench on the screen; `root` is its element, `closing` is called to go back to the job sheet. */
export class BenchWalk {
  #root;
  #ticking;
  #reminders;
  #closing;
  #stops = [];
  #shown = null;
  #draft = null;
  #context = null;
  #view = null;
  #key = "";
  #calm;
  #guard = null;

  constructor(root, ticking, reminders, closing) {
    this.#root = root;
    this.#ticking = ticking;
    this.#reminders = reminders;
    this.#closing = closing;
    const acts = {
      "bench-go": () => this.#go(),
      "bench-back": () => this.#stepBack(),
      "bench-calendar": () => this.#giveToCalendar(),
      "bench-leave": () => this.close(),
    };
    root.addEventListener("click", (event) => {
      reminders.unlock();
      const button = event.target.closest("[data-act]");
      if (button && button.getAttribute("aria-disabled") !== "true") acts[button.dataset.act]?.();
    });
    this.#calm = askTwice(buttonOf("bench-finish", this.#root), "Sure? Tap again.", () => this.#finish());
    setHidden(part("screen-note", root), reminders.canStayAwake);
    this.#stops.push(subscribe(() => this.#render()), ticking.subscribe((now) => this.#tick(now)));
  }

  /** Show a cup, or a colour's cup in hand or next to begin, or the one to come back to. */
  begin(cupId, colourId) {
    const cups = allCups(state.job);
    const found = cups.find(({ cup }) => cup.id === cupId)
      ?? cups.find(({ cup, colour }) => colour.id === colourId && isLive(cup));
    const cup = found?.cup ?? (colourId ? null : cupToResume(state.job));
    if (cup) this.#show(cup.id);
    else this.#prepare(colourNow(colourId) ?? this.#nextCups()[0]?.colour);
  }

  /** Go back to the job sheet; every clock runs on. */
  close() {
    for (const stop of this.#stops.splice(0)) stop();
    clearTimeout(this.#guard);
    this.#reminders.stayAwake(false);
    this.#closing();
  }

  #nextCups() {
    return nextCups(state.job, state.sheet);
  }

  /** The cup on the screen with its colour and the sheet of its plan, which is frozen anew until the cup begins. */
  #look() {
    const isDraft = this.#draft?.cup.id === this.#shown;
    const found = keptCup(this.#shown) ?? (isDraft ? begunElsewhere(this.#draft) ?? this.#draft : null);
    if (found) this.#shown = found.cup.id;
    const colour = found && colourNow(found.colour.id);
    if (!colour) return null;
    const isBegun = tapped(found.cup, "make_ready") !== null;
    const cup = isBegun ? found.cup : { ...found.cup, ...freeze(state.job, state.sheet, colour.id, found.cup.coat) };
    const now = this.#ticking.now();
    return { cup, colour: { cups: [], ...colour }, root: sheetOf(cup.plan), job: state.job, isLive: !isBegun, now };
  }

  #prepare(colour) {
    const next = colour && !state.job.example ? planNextCup(colour.id) : null;
    if (next) {
      const { coat, number } = next;
      const begun = { id: newId("cup"), coat, number, moment: this.#ticking.now() };
      const frozenFrom = { job: state.job, root: state.sheet, colourId: colour.id };
      this.#draft = { colour, cup: newCup({ ...begun, ...frozenFrom }) };
    }
    this.#show(next ? this.#draft.cup.id : null);
  }

  #show(cupId) {
    this.#shown = cupId;
    this.#render();
  }

  #keep(cup) {
    keepCupAndCoat(this.#context.colour.id, cup);
  }

  #mark() {
    return { id: newId("entry"), moment: this.#ticking.now() };
  }

  /** Take a tap: it goes to the store before anything else is done. */
  #tap(stage, count) {
    const mark = this.#mark();
    const cup = withTap(this.#context.cup, mark, stage, count);
    this.#shown = cupAfterTap(state.job, cup, mark.moment)?.id ?? null;
    this.#keep(cup);
  }

  #go() {
    this.#hold();
    if (!this.#context) {
      const [next] = this.#nextCups();
      if (next) this.#prepare(next.colour);
      else this.close();
      return;
    }
    const { missing, go } = this.#view;
    if (!stageOf(this.#context.cup)) this.#show(null);
    else if (missing) this.#point(missing);
    else this.#tap(go?.tap ?? stageOf(this.#context.cup).name, go?.count);
  }

  /** Say what is missing and lead there; without amounts that is the job sheet. */
  #point({ says, at }) {
    this.#reminders.announce(says);
    if (!at) this.close();
    at?.scrollIntoView({ block: "center" });
    at?.focus();
  }

  #hold() {
    const button = buttonOf("bench-go", this.#root);
    button.setAttribute("aria-disabled", "true");
    clearTimeout(this.#guard);
    this.#guard = setTimeout(() => button.removeAttribute("aria-disabled"), BOUNCE);
  }

  #stepBack() {
    if (this.#context && canStepBack(this.#context.cup)) this.#keep(withStepBack(this.#context.cup, this.#mark()));
  }

  #finish() {
    this.#tap(endOfPour(this.#context.cup) === null ? "set_aside" : "finished");
  }

  async #giveToCalendar() {
    const { cup, colour } = this.#context;
    const outcome = await handOutTimes(cup, colour, state.job.name, this.#ticking.now());
    if (outcome === "cancelled") return;
    keepCup(colour.id, withCalendar(keptCup(cup.id).cup, this.#mark()));
  }

  #line(name) {
    const { cup } = this.#context;
    const isSo = tapped(cup, name) !== null;
    this.#keep(isSo ? withoutTap(cup, () => this.#mark(), name) : withTap(cup, this.#mark(), name));
  }

  #render() {
    const context = this.#look();
    const stage = context && stageOf(context.cup);
    this.#context = context;
    this.#calm();
    const key = context ? `${context.cup.id} ${stage?.name}` : "idle";
    if (key === this.#key) this.#view.refresh?.(context);
    else this.#change(key, context, stage);
    this.#showHead(context);
    this.#showThumb(context);
    showRest(this.#root, this.#facts());
    this.#reminders.stayAwake(context !== null || allCups(state.job).some(({ cup }) => isLive(cup)));
    this.#tick(this.#ticking.now());
  }

  #change(key, context, stage) {
    this.#key = key;
    this.#view = viewOf(context, stage, this.#heard()) ?? idleView(state.job, this.#nextCups()[0]);
    part("stage", this.#root).replaceChildren(this.#view.element);
    this.#root.querySelector(".bench__body").scrollTop = 0;
    part("instruction", this.#view.element).focus({ preventScroll: true });
  }

  #heard() {
    return {
      line: (name) => this.#line(name),
      reason: (stage, says) => this.#keep(withReason(this.#context.cup, this.#mark(), stage, says)),
      drop: () => this.#tap("drop"),
      prompt: (says) => {
        this.#reminders.announce(says);
        this.#reminders.nudge();
      },
    };
  }

  #showHead(context) {
    const dot = part("swatch", this.#root);
    setHidden(dot, !context);
    dot.style.setProperty("--swatch", context?.colour.swatch ?? "");
    setText(part("cup", this.#root), context ? headOf(context) : state.job.name || "Bench");
  }

  #showThumb(context) {
    setText(buttonOf("bench-go", this.#root), this.#view.button);
    buttonOf("bench-go", this.#root).classList.toggle("bench__go--waits", Boolean(this.#view.missing));
    const canGoBack = context && canStepBack(context.cup);
    setAttribute(buttonOf("bench-back", this.#root), "aria-disabled", canGoBack ? null : "true");
  }

  #facts() {
    return {
      job: state.job,
      sheet: state.sheet,
      context: this.#context,
      shows: this.#view.shows ?? "",
      show: (cupId) => this.#show(cupId),
      prepare: (colour) => this.#prepare(colour),
      now: this.#ticking.now(),
    };
  }

  #tick(now) {
    setText(part("now", this.#root), timeOfDay(now));
    this.#view.tick(now);
    moveRest(this.#root, this.#facts());
    calm(this.#root);
  }
}

function keptCup(id) {
  return allCups(state.job).find(({ cup }) => cup.id === id);
}

/** The cup that another window has begun in place of one that is not kept here. */
function begunElsewhere({ cup, colour }) {
  return allCups(state.job).find((each) => (
    each.colour.id === colour.id && each.cup.coat === cup.coat && each.cup.number === cup.number
      && !isSetAside(each.cup)
  ));
}

function sheetOf(plan) {
  if (!SHEETS.has(plan)) SHEETS.set(plan, calculate(plan));
  return SHEETS.get(plan);
}

function headOf({ cup, colour }) {
  const { cups, coats_to_pour: coats } = cup.amounts;
  const which = cups ? `${cupTitle(cup, colour)} of ${cups}` : cupTitle(cup, colour);
  return coats > 1 ? `${which} · coat ${cup.coat} of ${coats}` : which;
}
