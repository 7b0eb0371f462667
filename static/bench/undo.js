// What is asked before a step back, and what brings back what was taken away.
import { stages, tapNames } from "../sentences.js";
import { timeToTheSecond } from "../lib/moments.js";
import { isOver, lastTap, momentOf, stepForwardOf } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { cupTitle } from "../clocks/clocks.js";

/** For so long a cup that was given up last can be taken up again from where the bench is. */
const OFFERED_FOR = 4 * 60 * 60 * 1000;

/** The question before a cup steps back, as {says, button}; null where none is asked. */
export function questionBefore(cup) {
  const stage = stages.find(({ name }) => name === lastTap(cup).stage);
  if (!stage?.asks) return null;
  const said = `${stage.called} ${timeToTheSecond(momentOf(cup, lastTap(cup)))}. ${stage.asks}`;
  return { says: `${said[0].toUpperCase()}${said.slice(1)}`, button: `Step back over ${stage.called}` };
}

/** The question before a cup is given up or done with. */
export function questionBeforeTheEnd({ cup, colour }, isPoured) {
  const title = cupTitle(cup, colour);
  return isPoured
    ? { says: `${title}: none of its clocks rings any more.`, button: "Done with it" }
    : { says: `${title}: it is not poured, and is mixed anew.`, button: "Set it aside" };
}

/**
 * What can be brought back: the step that the cup on the screen went back from, or the cup that was given up last.
 * @returns {{words: string, cup: object, colour: object, isStep: boolean} | null}
 */
export function offered(context, job, now) {
  if (context && isOver(context.cup)) return takeUp(context);
  const forward = context && stepForwardOf(context.cup);
  if (forward) {
    const what = `${tapNames[forward.tap.stage]} ${timeToTheSecond(momentOf(context.cup, forward.tap))}`;
    return { ...context, isStep: true, words: `Step forward: ${what}` };
  }
  const latest = allCups(job).reduce((last, each) => (last && lastAt(last) > lastAt(each) ? last : each), null);
  const isOffered = latest && isOver(latest.cup) && Date.parse(lastTap(latest.cup).at) > now - OFFERED_FOR;
  return isOffered ? takeUp(latest) : null;
}

function lastAt({ cup }) {
  return cup.entries.length ? cup.entries[cup.entries.length - 1].at : cup.begun;
}

function takeUp({ cup, colour }) {
  return { cup, colour, isStep: false, words: `Take ${cupTitle(cup, colour)} up again` };
}
