import { cards } from "../printed.js";
import { spelledOut, state, subscribe, takeCard } from "../keeping/store.js";
import { clone, choose, part, setText } from "../lib/dom.js";
import { keepCard, ownCards } from "../keeping/resin-cards.js";
import { jumpTo } from "./jump.js";
import { showUndo } from "./toast.js";

const OWN = "own";

/** Bring the resin cards to life: demo cards, the person's own ones, or one typed from the can in the hand. */
export function join(page, { storage, say }) {
  const host = part("card-options");
  let offered = [];
  host.addEventListener("change", (event) => take(event.target.value));
  page.acts["keep-card"] = async () => {
    await keepCard(storage, spelledOut(state.job.card));
    say(`Card ${state.job.card.name} is kept on this phone.`);
    await offer();
  };
  page.after.push(mark);
  subscribe((change) => change.kind === "open" && offer());
  offer();

  async function offer() {
    const own = await ownCards(storage);
    offered = [...cards.filter((card) => !own.some(({ name }) => name === card.name)), ...own];
    const options = offered.map((card) => optionOf(card.name, card.name, ratioOf(card)));
    host.replaceChildren(...options, optionOf(OWN, "My own card", "type it from the can"));
    mark();
  }

  function mark() {
    const name = state.job.card?.name;
    const isOffered = offered.some((card) => card.name === name);
    choose(host.querySelectorAll("input"), isOffered ? name : OWN);
  }

  function take(name) {
    const card = offered.find((each) => each.name === name);
    takeCard(card ?? { name: "My resin" });
    showUndo();
    if (!card) jumpTo(page, "job", "card_name");
  }
}

function optionOf(value, label, detail) {
  const option = clone("option");
  const radio = option.querySelector("input");
  radio.value = value;
  radio.name = "resin-card";
  setText(option.querySelector(".choice__label"), label);
  setText(option.querySelector(".choice__detail"), detail);
  return option;
}

function ratioOf({ stated_ratio_a: a, stated_ratio_b: b, ratio_basis: basis }) {
  return a && b ? `${a}:${b} by ${basis || "volume"}` : "";
}
