import { element, part, setText } from "../lib/dom.js";
import { isBusy } from "../clocks/turns.js";
import { watchOffline } from "../keeping/offline.js";
import { state, subscribe } from "../keeping/store.js";

/** Keep the app for flight mode, say whether it is ready, and take a new version only by a tap. */
export async function join(page, { say }) {
  const host = part("offline");
  host.append(element("p", {}, "Not yet known."));
  const offline = await watchOffline({ tell, isBusy: () => isBusy(state.job) });
  page.acts["take-over"] = () => offline.takeOver();
  subscribe((change) => change.kind === "bench" && offline.offer());

  function tell({ state: at, says }) {
    host.replaceChildren(element("p", {}, says));
    setText(part("readiness"), at === "ready" ? " · ready offline" : "");
    if (at !== "new version") return;
    const attributes = { type: "button", class: "button", "data-act": "take-over" };
    host.append(element("button", attributes, "Take the new version"));
    say(says, "Take it", "take-over");
  }
}
