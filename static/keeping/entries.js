// What a cup's entries come to. They are only ever added to, so that two copies of a cup are joined by ids. Pure.

/**
 * Something that happened to a cup. A `tap` has its stage and perhaps a count, a `back` the id of the entry that it
 * takes back, a `reason` its stage and what it says, a `calendar` nothing more.
 * @typedef {{id: string, at: string, kind: string, stage?: string, count?: number, of?: string, says?: string}} Entry
 */

const folds = new WeakMap();

/**
 * What stands of a list of entries: the taps that were not taken back, and the backs of taps that hold. A back that is
 * itself taken back holds no more, and its tap stands again.
 * @param {Entry[]} entries
 * @returns {{taps: Entry[], backs: Entry[]}}
 */
export function standing(entries) {
  if (!folds.has(entries)) folds.set(entries, folded(entries));
  return folds.get(entries);
}

function folded(entries) {
  const tapped = entries.filter(({ kind }) => kind === "tap");
  const all = entries.filter(({ kind }) => kind === "back");
  const ids = new Set(tapped.map(({ id }) => id));
  const undone = new Set(all.map(({ of }) => of));
  const backs = all.filter(({ id, of }) => ids.has(of) && !undone.has(id));
  const takenBack = new Set(backs.map(({ of }) => of));
  return { taps: tapped.filter(({ id }) => !takenBack.has(id)), backs };
}

/**
 * The entries of two copies of a cup: those that both have, then what only one has, in the order of their moments. A
 * reason is one entry while it is typed, of which the later text counts.
 * @param {Entry[]} one
 * @param {Entry[]} other
 * @returns {Entry[]}
 */
export function joined(one, other) {
  const here = new Map(one.map((entry) => [entry.id, entry]));
  const there = new Map(other.map((entry) => [entry.id, entry]));
  const both = one.filter(({ id }) => there.has(id)).map((entry) => later(entry, there.get(entry.id)));
  const single = [...one.filter(({ id }) => !there.has(id)), ...other.filter(({ id }) => !here.has(id))];
  return [...both, ...single.sort(byMoment)];
}

function later(one, other) {
  return byMoment(one, other) < 0 ? other : one;
}

function byMoment(one, other) {
  return Date.parse(one.at) - Date.parse(other.at) || (one.id < other.id ? -1 : 1);
}
