"""A template comes alive: tied to its rows once, and painted with no more than a change asks for."""

import pytest

# A page of two blocks, with a list in the first, its rows from a template, and marks of this test's own.
PAGE = """async (act) => {
  const { ALL, Binder, ROWS } = await import(new URL("lib/binder.js", window.modules));
  const { keepInStep } = await import(new URL("lib/dom.js", window.modules));
  const node = (tag, data, ...children) => {
    const made = document.createElement(tag);
    Object.assign(made.dataset, data);
    made.append(...children);
    return made;
  };
  const painted = [];
  const tied = [];
  const marks = {
    says: (span, id) => {
      tied.push(id);
      return (row) => { painted.push(`${id} ${row.words}`); span.textContent = row.words; };
    },
    loudFrom: (span) => (row) => {
      span.classList.toggle("loud", row.words.length >= Number(span.dataset.loudFrom));
    },
    listOf: (list, id, binder) => {
      const made = new Map();
      const make = (rowId) => binder.mount(node("li", { says: "" }), rowId);
      return (row) => {
        if (binder.hasNewRows()) keepInStep(list, row.below.map((each) => each.id), made, make);
        for (const each of row.below) if (binder.isTouched(each.id)) binder.paint(made.get(each.id), each);
      };
    },
  };
  const job = { words: "job", below: [{ id: "a", words: "one" }, { id: "b", words: "two" }] };
  const after = [];
  const binder = new Binder(marks, { top: () => job, after: [() => after.push(painted.length)] });
  const near = node("section", {}, node("p", { says: "", loudFrom: "4" }), node("ul", { listOf: "" }));
  const far = node("section", {}, node("p", { says: "" }));
  document.body.replaceChildren(near, far);
  binder.add(near, "job", true);
  binder.add(far, "job", false);
  const texts = () => [...document.querySelectorAll("p, li")].map((each) => each.textContent);
  const rest = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 60)));
  const whole = () => { binder.owe([ALL, ROWS]); binder.paintAll(); painted.length = 0; after.length = 0; };
  const around = { ALL, ROWS, binder, job, near, painted, tied, after, texts, rest, whole };
  return new Function("around", `return (async () => {
    const { ${Object.keys(around)} } = around;
    ${act}
  })()`)(around);
}"""


@pytest.fixture
def page(phone):
    """A page put together by a binder: what it is asked to do, and what came of it."""
    return lambda act: phone.evaluate(PAGE, act)


def test_nothing_is_painted_before_it_is_owed(page):
    assert page("binder.paintAll(); return texts();") == ["", ""]


def test_a_mounted_template_shows_what_its_rows_hold(page):
    assert page("whole(); return texts();") == ["job", "one", "two", "job"]


def test_a_mark_of_two_words_is_found_by_its_attribute(page):
    assert page(
        """whole();
        const before = near.firstChild.className;
        job.words = "a loud job";
        binder.owe(["job"]);
        binder.paintAll();
        return [before, near.firstChild.className];"""
    ) == ["", "loud"]


def test_only_the_rows_that_a_change_touched_are_painted(page):
    assert page(
        """whole();
        job.below[1].words = "second";
        binder.owe(["b"]);
        binder.paintAll();
        return painted;"""
    ) == ["job job", "b second", "job job"]


def test_a_new_row_is_tied_once_and_the_others_keep_their_nodes(page):
    assert page(
        """whole();
        const kept = document.querySelector("li");
        job.below.push({ id: "c", words: "three" });
        whole();
        job.below.shift();
        whole();
        return [texts(), tied, kept.isConnected];"""
    ) == [["job", "two", "three", "job"], ["job", "job", "a", "b", "c"], False]


def test_a_block_far_from_the_screen_is_painted_after_the_near_one(page):
    assert page(
        """whole();
        job.words = "other";
        binder.owe(["job"]);
        binder.paintNear();
        const first = [...painted];
        await rest();
        return [first, painted, after];"""
    ) == [["job other"], ["job other", "job other"], [2]]


def test_a_block_that_was_not_near_pays_all_that_it_owes_at_once(page):
    assert page(
        """whole();
        for (const words of ["x", "xy", "xyz"]) {
          job.words = words;
          binder.owe(["job"]);
          binder.paintNear();
        }
        await rest();
        return [painted, after];"""
    ) == [["job x", "job xy", "job xyz", "job xyz"], [4]]


def test_what_is_asked_for_many_times_is_painted_once(page):
    assert page(
        """whole();
        for (let time = 0; time < 5; time += 1) { binder.owe(["job"]); binder.request(); }
        const before = [...painted];
        await rest();
        return [before, painted];"""
    ) == [[], ["job job", "job job"]]
