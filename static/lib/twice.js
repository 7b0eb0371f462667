// A button that wants to be sure: the first tap asks, the second does it.

const ASKS_FOR = 4000;

/** Call `sure` when a button is tapped twice within four seconds; in between it asks. What comes back calms it. */
export function askTwice(button, question, sure) {
  let words = null;
  let timer = null;
  const calm = () => {
    clearTimeout(timer);
    if (words !== null) button.textContent = words;
    words = null;
  };
  button.addEventListener("click", () => {
    if (words !== null) {
      calm();
      sure();
      return;
    }
    words = button.textContent;
    button.textContent = question;
    timer = setTimeout(calm, ASKS_FOR);
  });
  return calm;
}
