// The person's own resin cards, kept beside the jobs under their names.
import { ask } from "./disk.js";
import { liftCard } from "./lift.js";

/**
 * List the cards by name.
 * @param {import("./persistence.js").JobStorage} storage
 */
export async function ownCards(storage) {
  const cards = (await ask(storage, (base) => base.entries("cards"))).map(([, card]) => liftCard(card));
  return cards.sort((one, other) => one.name.localeCompare(other.name));
}

/** Keep a card under its name, in place of one of that name. */
export function keepCard(storage, card) {
  return storage.change([["cards", card.name, { ...card }]]);
}
