// The page runs this module by itself too, so that it heals a first visit whose other scripts have not come whole.

const SVG = "http://www.w3.org/2000/svg";
// In milliseconds: how long styles may hold up every paint, as long as the page waits to say that it is not whole.
const STYLES_MAY_TAKE = 8000;
const drawn = new WeakMap();
let haveScriptsCome = false;

globalThis.addEventListener("load", () => isOpenedAnew() && bringScripts());
globalThis.addEventListener("online", bringScripts);
setTimeout(() => bringStyles(), STYLES_MAY_TAKE);

/** Tell that all scripts of the first screen are here. */
export function scriptsHaveCome() {
  haveScriptsCome = true;
}

/** Whether the first screen's styles are here to their end, which the baker marks. */
export function stylesHaveCome() {
  return getComputedStyle(document.documentElement).getPropertyValue("--styles-end") !== "";
}

/** Find the one node that a template calls by this name. */
export function part(name, root = document) {
  return root.querySelector(`[data-part="${name}"]`);
}

/** Show words that wait to be read, with one button beside them. */
export function showToast(words, label, act) {
  const toast = part("toast");
  const [says, button] = toast.children;
  toast.hidden = false;
  setText(says, words);
  setText(button, label);
  setAttribute(button, "data-act", act);
}

/** Find the button of an action. */
export function buttonOf(act, root = document) {
  return root.querySelector(`[data-act="${act}"]`);
}

/** Copy the first element of a `<template>` by its id. */
export function clone(name) {
  return document.getElementById(name).content.firstElementChild.cloneNode(true);
}

/** Copy all of a `<template>` by its id; null as long as the page has not taken it in. */
export function contents(name) {
  return document.getElementById(name)?.content.cloneNode(true) ?? null;
}

/** Set a node's text, only where it differs. */
export function setText(node, text) {
  if (node.textContent !== text) node.textContent = text;
}

/** Set an attribute, only where it differs; null takes it away. */
export function setAttribute(node, name, value) {
  if (value === null) node.removeAttribute(name);
  else if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

/** Show or hide a node, only where that differs. */
export function setHidden(node, isHidden) {
  if (node.hidden !== isHidden) node.hidden = isHidden;
}

/**
 * Fill a figure button: the figure and its unit apart, and what it is called.
 * @param {HTMLElement} button
 * @param {{figure: string, unit: string}} parts
 * @param {string} label
 */
export function setFigure(button, { figure, unit }, label) {
  const [number, after] = button.children;
  setText(number, figure);
  setText(after, unit ? `\u00a0${unit}` : "");
  setAttribute(button, "aria-label", `${label}: ${figure === "—" ? "none yet" : `${figure} ${unit}`.trim()}`);
  button.classList.toggle("figure--blank", figure === "—");
}

/** Make a figure button that opens the working of a row's cell. */
export function figureButton(rowId, cell, parts, label, kind = "") {
  const button = element("button", {
    type: "button",
    class: kind ? `figure figure--${kind}` : "figure",
    "data-row": rowId,
    "data-cell": cell,
  }, element("span", { class: "figure__number" }), element("span", { class: "figure__unit" }));
  setFigure(button, parts, label);
  return button;
}

// Set here and not in the page, where they would stand a hundred times.
const PLAIN_TYPING = Object.entries({
  autocomplete: "off",
  autocapitalize: "off",
  autocorrect: "off",
  spellcheck: "false",
  enterkeyhint: "next",
});

/**
 * Tie a field's label, help and note to its input, once.
 * @param {HTMLElement} node the field
 * @param {string} id what the input shall be called in the page
 */
export function tieField(node, id) {
  const find = (name) => node.querySelector(`.field__${name}`);
  const field = { input: find("input"), box: find("box"), unit: find("unit"), note: find("note"), help: find("help") };
  field.input.id = id;
  for (const [name, value] of PLAIN_TYPING) field.input.setAttribute(name, value);
  find("label").htmlFor = id;
  if (field.help) field.help.id = `${id}-help`;
  if (field.note) field.note.id = `${id}-note`;
  return field;
}

/** Show a field's text, its error or note, and the unit that a bare number takes; what is being typed stays. */
export function showField({ input, box, unit, note, help }, { value, error = "", says = "", suffix = "" }) {
  setValue(input, value);
  if (!note) return;
  setHidden(note, !(error || says));
  setText(note, error || says);
  note.classList.toggle("field__note--error", error !== "");
  setAttribute(input, "aria-invalid", error ? "true" : null);
  setAttribute(input, "aria-describedby", [help?.id, (error || says) && note.id].filter(Boolean).join(" ") || null);
  setText(unit, suffix);
  box.classList.toggle("field__box--unit", suffix !== "");
}

/** Set an input's value, unless a person is typing in it. */
export function setValue(input, value) {
  if (input.value !== value && document.activeElement !== input) input.value = value;
}

/** Mark the one of some radios that is chosen. */
export function choose(radios, value) {
  for (const radio of radios) {
    const isChosen = radio.value === value;
    if (radio.checked !== isChosen) radio.checked = isChosen;
    radio.parentElement.classList.toggle("choice__option--chosen", isChosen);
  }
}

/** Show which of some options is chosen where the options themselves are put away: its drawn mark and its words. */
export function showChosen(node, value, options) {
  setAttribute(node.querySelector("summary use"), "href", `#shape-${value}`);
  setText(node.querySelector(".choice__chosen"), options.find(([option]) => option === value)?.[1] ?? "");
}

/** Make an HTML element with attributes and children; text children become text. */
export function element(tag, attributes = {}, ...children) {
  return filled(document.createElement(tag), attributes, children);
}

/** Make an SVG element with attributes and children. */
export function svg(tag, attributes = {}, ...children) {
  return filled(document.createElementNS(SVG, tag), attributes, children);
}

/** Show one of the page's drawn marks. */
export function icon(name) {
  return svg("svg", { class: "icon", "aria-hidden": "true" }, svg("use", { href: `#mark-${name}` }));
}

/**
 * Keep a container's children in step with keys: what stays keeps its node, what is new is made, what is gone goes.
 * @param {Element} container
 * @param {string[]} keys
 * @param {Map<string, {node: Element}>} blocks those there are, by key
 * @param {(key: string) => {node: Element}} make
 */
export function keepInStep(container, keys, blocks, make) {
  const wanted = new Set(keys);
  for (const [key, block] of blocks) {
    if (!wanted.has(key)) {
      block.node.remove();
      blocks.delete(key);
    }
  }
  keys.forEach((key, place) => {
    if (!blocks.has(key)) blocks.set(key, make(key));
    const { node } = blocks.get(key);
    if (container.children[place] !== node) container.insertBefore(node, container.children[place] || null);
  });
}

/** Draw into a node anew only when what is drawn differs from last time. */
export function redraw(node, facts, draw) {
  const key = JSON.stringify(facts);
  if (drawn.get(node) === key) return;
  drawn.set(node, key);
  node.replaceChildren(...[draw(facts)].flat().filter(Boolean));
}

function filled(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== null && value !== undefined && value !== false) node.setAttribute(name, value === true ? "" : value);
  }
  node.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return node;
}

/** Once for each opening, as what is opened again by this might ask again without end. */
function isOpenedAnew() {
  return performance.getEntriesByType("navigation")[0]?.type !== "reload";
}

/** Load the scripts past the browser's cache, where one that was torn on its way would stay, and begin anew. */
async function bringScripts() {
  if (haveScriptsCome) return;
  try {
    // One after the other: without signal this asks once.
    for (const { href } of document.querySelectorAll("link[rel=modulepreload]")) {
      const answer = await fetch(href, { cache: "reload" });
      if (!/javascript/.test(answer.headers.get("Content-Type"))) return;
      await answer.blob();
    }
    location.reload();
  } catch {
    // The page says already that it has not come whole, and how to go on.
  }
}

/** Ask again for styles that have not come, or not whole: a bare page is better than a white one. */
async function bringStyles(link = document.querySelector("link[rel=stylesheet]")) {
  if (!link || stylesHaveCome()) return;
  const again = element("link", { rel: "stylesheet", href: link.href });
  // As long as it waits for styles a browser paints nothing.
  link.remove();
  try {
    await (await fetch(link.href, { cache: "reload" })).blob();
    document.head.prepend(again);
  } catch {
    // The page says already that it has not come whole.
  }
  setTimeout(bringStyles, STYLES_MAY_TAKE, again);
}
