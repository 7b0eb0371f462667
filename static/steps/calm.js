// At most one box of a caution on the job sheet, the worst; the others are quiet text, and none is said twice.
const BOXES = ".step .check--stop, .step .check--caution";
// What is poured next can spoil first.
const FIRST = ".step[data-step=cups]";

/** Keep the sheet calm after each paint. */
export function join(page) {
  page.after.push(calm);
}

function calm() {
  const said = [...document.querySelectorAll(BOXES)];
  for (const box of said) box.classList.remove("check--again");
  const boxes = said.filter((box) => box.offsetParent !== null);
  const worst = boxes.reduce((first, box) => (rank(box) < rank(first) ? box : first), boxes[0]);
  const heard = new Set(worst ? [worst.textContent] : []);
  for (const box of boxes) {
    box.classList.toggle("check--calm", box !== worst);
    if (box === worst) continue;
    box.classList.toggle("check--again", heard.has(box.textContent));
    heard.add(box.textContent);
  }
}

function rank(box) {
  return (box.classList.contains("check--stop") ? 0 : 2) + (box.closest(FIRST) ? 0 : 1);
}
