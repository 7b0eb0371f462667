// Tint and stir: the drops to start with, then the hide test, a drop at a time up to the limit.
import { clone, element as made, part, redraw, setHidden } from "../lib/dom.js";
import { dropsIn, firstDrops, tapped } from "../clocks/cup-record.js";
import { cupTitle } from "../clocks/clocks.js";
import { amountOf, cellFigure, figure } from "./figure.js";
import { drawHideTest } from "../pictures/hide-test.js";
import { showHeat } from "./heat.js";
import { cautions, notice } from "./notices.js";

/**
 * Draw the tint stage of a cup.
 * @param {import("./figure.js").Context} context
 * @param {object} stage
 * @param {{drop: () => void}} heard
 */
export function tintView(context, stage, heard) {
  const element = clone("bench-stage");
  part("cautions", element).append(...cautions(stage.cautions));
  const add = clone("bench-drop");
  add.addEventListener("click", () => {
    if (add.getAttribute("aria-disabled") !== "true") heard.drop();
  });
  part("extra", element).append(add);
  const view = { element, tick() {}, refresh };
  function refresh(fresh) {
    const start = firstDrops(fresh.cup, fresh.colour);
    const isStarted = tapped(fresh.cup, "starting_drops") !== null || start.count === 0;
    if (isStarted) showCount(element, fresh, stage, add, view);
    else showStart(element, fresh, start, view);
  }
  showHeat(element, context, stage);
  refresh(context);
  return view;
}

function showStart(element, context, { count, from }, view) {
  part("instruction", element).textContent = "Drop in the tint and stir.";
  showBig(element, figure(context, "starting_drops", { figure: String(count), unit: drops(count) }, "bench"));
  const limit = cellFigure(context, "tint_limit_drops", "row");
  const origin = from ? `as in ${cupTitle(from, context.colour)}` : "to start with";
  showUnder(element, limit ? [`${origin} · at most `, limit] : [origin]);
  setHidden(part("extra", element), true);
  setHidden(part("picture", element), true);
  view.button = `${count} ${drops(count)} ${count === 1 ? "is" : "are"} in`;
  view.go = { tap: "starting_drops", count };
}

function showCount(element, context, stage, add, view) {
  const count = dropsIn(context.cup);
  const most = amountOf(context, "tint_limit_drops");
  const isFull = most !== null && count >= most;
  part("instruction", element).textContent = stage.instruction;
  const unit = made("span", { class: "figure__unit" }, ` ${drops(count)}`);
  showBig(element, made("strong", { class: "stage__count" }, String(count), unit));
  const limit = cellFigure(context, "tint_limit_drops", "row");
  showUnder(element, limit ? ["in this cup · at most ", limit] : ["in this cup"]);
  setHidden(part("extra", element), false);
  const picture = part("picture", element);
  picture.style.setProperty("--swatch", context.colour.swatch ?? "");
  setHidden(picture, false);
  redraw(picture, {}, drawHideTest);
  add.setAttribute("aria-disabled", String(isFull));
  const notices = [
    ...(most === null ? [notice("caution", stage.without)] : []),
    ...(isFull ? [notice("stop", "This is the limit. Add no more: a second coat hides what this one cannot.")] : []),
  ];
  part("notices", element).replaceChildren(...notices);
  view.button = stage.button;
  view.go = { tap: stage.name };
}

function showBig(element, node) {
  const big = part("figure", element);
  setHidden(big, false);
  big.replaceChildren(node);
}

function showUnder(element, nodes) {
  const under = part("under", element);
  setHidden(under, false);
  under.replaceChildren(...nodes);
}

function drops(count) {
  return count === 1 ? "drop" : "drops";
}
