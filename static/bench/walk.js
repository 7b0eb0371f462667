// The walk of cups over the bench: which one is shown, what its taps do, and what stands around its stage.
import { buttonOf, part, setAttribute, setHidden, setText } from "../lib/dom.js";
import { timeOfDay } from "../lib/moments.js";
import { keepCup, newId, state, subscribe } from "../keeping/store.js";
import {
  canStepBack, endOfPour, isLive, newCup, stageOf, tapped, withCalendar, withoutTap, withReason, withStepBack,
  withStepForward, withTakenUp, withTap,
} from "../clocks/cup-record.js";
import { allCups, cupAfterTap, cupToResume, nextCups } from "../clocks/turns.js";
import { handOutTimes } from "./to-calendar.js";
import { colourNow, keepCupAndCoat, planNextCup } from "./coats.js";
import { findCup, headOf, keptCup, lookAt } from "./look.js";
import { calm } from "./notices.js";
import { createQuestion } from "./sure.js";
import { moveRest, showRest } from "./rest.js";
import { offered, questionBefore, questionBeforeTheEnd } from "./undo.js";
import { idleView, viewOf } from "./views.js";

/** A tap that comes so soon after the screen has changed was meant for what stood there before. */
const CHANGE = 600;

/** The bench on the screen. */
export class BenchWalk {
  #root;
  #ticking;
  #reminders;
  #guard;
  #kept;
  #closing;
  #question;
  #stops = [];
  #shown = null;
  #draft = null;
  #context = null;
  #view = null;
  #key = "";

  /**
   * @param {Element} root the bench's element
   * @param {object} parts
   * @param {object} parts.ticking
   * @param {object} parts.reminders
   * @param {{hold: Function, until: Function}} parts.guard keeps bounced taps away
   * @param {() => Promise<void>} parts.kept comes true once the disk has what was tapped
   * @param {() => void} closing goes back to the job sheet
   */
  constructor(root, { ticking, reminders, guard, kept }, closing) {
    this.#root = root;
    this.#ticking = ticking;
    this.#reminders = reminders;
    this.#guard = guard;
    this.#kept = kept;
    this.#closing = closing;
    this.#question = createQuestion(root, reminders.announce);
    const acts = {
      "bench-go": () => this.#go(),
      "bench-back": (button) => this.#stepBack(button),
      "bench-forward": () => this.#bringBack(),
      "bench-sure": () => this.#question.answer(),
      "bench-finish": (button) => this.#finish(button),
      "bench-calendar": () => this.#giveToCalendar(),
      "bench-leave": () => this.close(),
    };
    root.addEventListener("click", (event) => {
      reminders.unlock();
      const button = event.target.closest("[data-act]");
      if (button && button.getAttribute("aria-disabled") !== "true") acts[button.dataset.act]?.(button);
    });
    setHidden(part("screen-note", root), reminders.canStayAwake);
    this.#stops.push(subscribe(() => this.#renderWhenKept()), ticking.subscribe((now) => this.#tick(now)));
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
    this.#reminders.stayAwake(false);
    this.#closing();
  }

  #nextCups() {
    return nextCups(state.job, state.sheet);
  }

  /** The cup on the screen as it is kept now, which the screen may not show yet. */
  #look() {
    const found = findCup(this.#shown, this.#draft);
    if (found) this.#shown = found.cup.id;
    return lookAt(found, this.#ticking.now());
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

  /** Keep the cup on the screen as a change makes it; a `mark` is what each new entry has of its own. */
  #change(change) {
    const { cup, colour } = this.#look();
    keepCupAndCoat(colour.id, change(cup, this.#mark()));
  }

  #mark() {
    return { id: newId("entry"), moment: this.#ticking.now() };
  }

  /** Take a tap: it goes to the store before anything else is done. */
  #tap(stage, count) {
    const { cup, colour } = this.#look();
    const mark = this.#mark();
    const changed = withTap(cup, mark, stage, count);
    this.#shown = cupAfterTap(state.job, changed, mark.moment)?.id ?? null;
    keepCupAndCoat(colour.id, changed);
  }

  #go() {
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

  #stepBack(button) {
    if (!this.#context || !canStepBack(this.#context.cup)) return;
    const back = () => this.#change(withStepBack);
    const question = questionBefore(this.#context.cup);
    if (question) this.#question.ask({ ...question, from: button, sure: back });
    else back();
  }

  /** Bring back what a step back took away, or a cup that was given up. */
  #bringBack() {
    const { cup, isStep } = this.#facts().offered;
    this.#shown = cup.id;
    this.#change(isStep ? withStepForward : withTakenUp);
  }

  #finish(button) {
    const isPoured = endOfPour(this.#context.cup) !== null;
    const sure = () => this.#tap(isPoured ? "finished" : "set_aside");
    this.#question.ask({ ...questionBeforeTheEnd(this.#context, isPoured), from: button, sure });
  }

  async #giveToCalendar() {
    const { cup, colour } = this.#context;
    const outcome = await handOutTimes(cup, colour, state.job.name, this.#ticking.now());
    if (outcome === "cancelled") return;
    keepCup(colour.id, withCalendar(keptCup(cup.id).cup, this.#mark()));
  }

  #line(name) {
    this.#change((cup, mark) => (
      tapped(cup, name) === null ? withTap(cup, mark, name) : withoutTap(cup, () => this.#mark(), name)
    ));
  }

  /** Show a change once the disk has it, so that no start ever comes back to less than what was seen. */
  async #renderWhenKept() {
    await this.#guard.until(this.#kept());
    if (this.#root.isConnected) this.#render();
  }

  #render() {
    const context = this.#look();
    const stage = context && stageOf(context.cup);
    this.#context = context;
    this.#question.calm();
    const key = context ? `${context.cup.id} ${stage?.name}` : "idle";
    if (key === this.#key) this.#view.refresh?.(context);
    else this.#showView(key, context, stage);
    this.#showHead(context);
    this.#showThumb(context);
    showRest(this.#root, this.#facts());
    this.#reminders.stayAwake(context !== null || allCups(state.job).some(({ cup }) => isLive(cup)));
    this.#tick(this.#ticking.now());
  }

  #showView(key, context, stage) {
    this.#guard.hold(CHANGE);
    this.#key = key;
    this.#view = viewOf(context, stage, this.#heard()) ?? idleView(state.job, this.#nextCups()[0]);
    part("stage", this.#root).replaceChildren(this.#view.element);
    this.#root.querySelector(".bench__body").scrollTop = 0;
    part("instruction", this.#view.element).focus({ preventScroll: true });
  }

  #heard() {
    return {
      line: (name) => this.#line(name),
      reason: (stage, says) => this.#change((cup, mark) => withReason(cup, mark, stage, says)),
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
    const now = this.#ticking.now();
    return {
      job: state.job,
      sheet: state.sheet,
      context: this.#context,
      offered: offered(this.#context, state.job, now),
      shows: this.#view.shows ?? "",
      show: (cupId) => this.#show(cupId),
      prepare: (colour) => this.#prepare(colour),
      now,
    };
  }

  #tick(now) {
    setText(part("now", this.#root), timeOfDay(now));
    this.#view.tick(now);
    moveRest(this.#root, this.#facts());
    calm(this.#root);
  }
}
