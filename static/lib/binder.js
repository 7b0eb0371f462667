// How a template comes alive, in ten lines.
// A template is plain HTML. Where something shall change, a node carries a mark: `<span data-say="ratio">`.
// A table of marks has one small function for each: `say: (node, id, binder) => (row) => { ... }`.
// The outer one is called once, when the node is mounted: it reads the mark and ties the node to the row of that id.
// The inner one is called at every paint, with that row, and writes only what differs.
// A mark that brings further nodes in (the rows of a list, an opened fold) mounts and paints those itself.
// The page is a few blocks, each mounted and painted as one: here its head and its steps.
// A change names the ids of the rows that it touched. Every block owes them, until it is painted.
// Blocks near the screen are painted at once, the others when that paint is on the screen.
// Nothing here knows the trade: marks, the top row and what follows a paint are handed in.

/** What a change touches beside rows by id: the cells of every row, and which rows there are. */
export const ALL = "all";
/** See ALL. */
export const ROWS = "rows";

// Long enough after a frame that what it shows is on the screen, in milliseconds.
const REST_AFTER = 20;

/**
 * A mark's function: it ties a node to the row of an id, and returns what paints it.
 * @typedef {(node: HTMLElement, id: string, binder: Binder) => (row: object) => void} Mark
 */

/** A page's blocks, what each of them owes, and the marks that they are mounted by. */
export class Binder {
  #marks;
  #selector;
  #blocks = [];
  #changed = new Set();
  #isAsked = false;
  #isOwing = false;

  /**
   * @param {Record<string, Mark>} marks by name, as in a node's dataset, in the order in which a node's are painted
   * @param {{top: () => object, after: (() => void)[]}} page the row that blocks are painted with, what follows when
   * every block is painted, and whatever else the marks ask of the page
   */
  constructor(marks, page) {
    /** What the marks ask. */
    this.page = page;
    this.#marks = Object.entries(marks);
    this.#selector = this.#marks.map(([name]) => `[data-${kebab(name)}]`).join(",");
  }

  /** Take a node as a block of the page, near the screen or not. */
  add(node, id, isNear) {
    this.#blocks.push({ ...this.mount(node, id), owed: new Set(), isNear });
  }

  /** Tie a node's marked parts to a row, once; what stands in nested rows is tied when those are made. */
  mount(node, id) {
    const binds = [];
    for (const each of [node, ...node.querySelectorAll(this.#selector)]) {
      for (const [name, mark] of this.#marks) if (name in each.dataset) binds.push(mark(each, id, this));
    }
    return { node, binds };
  }

  /** Paint what was mounted with its row. */
  paint({ binds }, row) {
    for (const bind of binds) bind(row);
  }

  /** Whether what is painted now rests on a change of this row. */
  isTouched(id) {
    return this.#changed.has(ALL) || this.#changed.has(id);
  }

  /** Whether what is painted now rests on a change of which rows there are. */
  hasNewRows() {
    return this.#changed.has(ROWS);
  }

  /** Note the rows that changed: every block owes them. */
  owe(ids) {
    for (const { owed } of this.#blocks) for (const id of ids) owed.add(id);
  }

  /** Paint at the next frame, once however often it is asked for. */
  request() {
    if (this.#isAsked) return;
    this.#isAsked = true;
    requestAnimationFrame(() => this.paintNear());
  }

  /** Paint what a person may be looking at now, and the rest once that is on the screen. */
  paintNear() {
    this.#isAsked = false;
    // What cannot be painted holds up nothing that follows.
    if (!this.#isOwing) requestAnimationFrame(() => setTimeout(() => this.#paintRest(), REST_AFTER));
    this.#isOwing = true;
    this.#pay(this.#blocks.filter(({ isNear }) => isNear));
  }

  /** Paint all that is owed now. */
  paintAll() {
    this.#pay(this.#blocks);
    for (const each of this.page.after) each();
  }

  /** Follow which of some blocks are near the screen; a block that is far carries `data-far`. */
  watch(nodes) {
    const watcher = new IntersectionObserver((entries) => {
      for (const { target, isIntersecting } of entries) {
        this.#blocks.find(({ node }) => node === target).isNear = isIntersecting;
        target.toggleAttribute("data-far", !isIntersecting);
      }
    }, { rootMargin: "25%" });
    for (const node of nodes) watcher.observe(node);
  }

  /** Pay a block a turn, so that a tap in between does not wait for all of them. */
  #paintRest() {
    const next = this.#blocks.find(({ owed }) => owed.size > 0);
    if (next) {
      setTimeout(() => this.#paintRest());
      this.#pay([next]);
    } else {
      this.#isOwing = false;
      for (const each of this.page.after) each();
    }
  }

  #pay(blocks) {
    for (const block of blocks.filter(({ owed }) => owed.size > 0)) {
      this.#changed = block.owed;
      block.owed = new Set();
      this.paint(block, this.page.top());
    }
  }
}

function kebab(name) {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
