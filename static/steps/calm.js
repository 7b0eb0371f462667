// At most one box of a caution on the job sheet, the worst; the others are quiet text.
const BOXES = ".step .check--stop, .step .check--caution";

/** Keep the sheet calm after each paint. */
export function join(page) {
  page.after.push(calm);
}

function calm() {
  const boxes = [...document.querySelectorAll(BOXES)].filter((box) => box.offsetParent !== null);
  const worst = boxes.find((box) => box.classList.contains("check--stop")) ?? boxes[0];
  for (const box of boxes) box.classList.toggle("check--calm", box !== worst);
}
