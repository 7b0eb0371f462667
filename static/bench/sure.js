// A question before what cannot be taken lightly: the tap that asks and the tap that answers lie in different places.
import { buttonOf, part, setHidden, setText } from "../lib/dom.js";

/**
 * The bench's one question.
 * @param {Element} root
 * @param {(says: string) => void} announce
 */
export function createQuestion(root, announce) {
  const strip = part("sure", root);
  let asked = null;
  const calm = () => {
    asked = null;
    setHidden(strip, true);
  };
  return {
    calm,
    /** Ask for a button; asked once more by the same button, the question is taken back. */
    ask({ says, button, from, sure }) {
      if (asked?.from === from) return calm();
      asked = { from, sure };
      setText(part("sure-says", root), says);
      setText(buttonOf("bench-sure", root), button);
      strip.classList.toggle("bench__sure--below", isAtTheTop(from));
      setHidden(strip, false);
      return announce(`${says} ${button}?`);
    },
    /** The answer is yes. */
    answer() {
      const { sure } = asked;
      calm();
      sure();
    },
  };
}

/** The answer stands at the other end of the screen than the button that asked. */
function isAtTheTop(button) {
  const { top, height } = button.getBoundingClientRect();
  return top + height / 2 < globalThis.innerHeight / 2;
}
