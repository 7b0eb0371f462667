// A gloved finger bounces, and a held key repeats: for a while after a tap the next one is not taken.

/**
 * Guard buttons of a page. Moments are those of the taps themselves, by a clock that nobody sets.
 * @param {Document} page
 * @param {[string, number][]} waits selectors, each with the milliseconds that its buttons hold all guarded ones for
 * @returns {{hold: (wait: number) => void, until: (done: Promise<void>) => Promise<void>}} `hold` takes no tap for so
 *   long from now on, `until` none before something is done; a button of the shortest wait need not wait for that
 */
export function guardTaps(page, waits) {
  const shortest = Math.min(...waits.map(([, wait]) => wait));
  let end = -Infinity;
  let pending = 0;
  let timer = null;
  const show = () => page.documentElement.toggleAttribute("data-held", pending > 0 || performance.now() < end);
  const holdFrom = (moment, wait) => {
    end = Math.max(end, moment + wait);
    clearTimeout(timer);
    // A timer may come a fraction of a millisecond early.
    timer = setTimeout(show, Math.max(0, Math.ceil(end - performance.now())) + 1);
    show();
  };
  page.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    const [, wait] = waits.find(([selector]) => button?.matches(selector)) ?? [];
    if (wait === undefined || button.getAttribute("aria-disabled") === "true") return;
    if (event.timeStamp >= end && (pending === 0 || wait === shortest)) holdFrom(event.timeStamp, wait);
    else refuse(event);
  }, { capture: true });
  page.addEventListener("keydown", (event) => {
    if (event.repeat && event.target.closest("button")) refuse(event);
  }, { capture: true });
  return {
    hold: (wait) => holdFrom(performance.now(), wait),
    async until(done) {
      pending += 1;
      show();
      await done;
      pending -= 1;
      show();
    },
  };
}

function refuse(event) {
  event.preventDefault();
  event.stopImmediatePropagation();
}
