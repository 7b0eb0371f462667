/** Make fields quick to type in: the first touch selects what is there, Enter goes on to the next field. */
export function joinFields(root) {
  let entered = null;
  root.addEventListener("focusin", ({ target }) => {
    entered = isTyped(target) ? target : null;
    entered?.select();
  });
  root.addEventListener("click", ({ target }) => {
    // A tap sets the cursor after the focus came, and would undo the selection.
    if (target === entered && target.selectionStart === target.selectionEnd) target.select();
    entered = null;
  });
  root.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || !isTyped(event.target)) return;
    event.preventDefault();
    const next = nextField(event.target);
    if (next) next.focus();
    else event.target.blur();
  });
}

function isTyped(node) {
  return node.matches("input[data-input]:not([type=color])");
}

/** The next field of the same step that can be seen. */
function nextField(field) {
  const around = field.closest(".editor, .group, .part, .pour, .step");
  const fields = around ? [...around.querySelectorAll("input[data-input]:not([type=color])")] : [];
  return fields.slice(fields.indexOf(field) + 1).find((each) => each.offsetParent !== null);
}
