import { element, part, setText } from "../lib/dom.js";
import { isBusy } from "../clocks/turns.js";
import { watchOffline } from "../keeping/offline.js";
import { state, subscribe } from "../keeping/store.js";

/** Keep the app for flight mode, say whether it is ready, and take a new version only by a tap. */
export async function join(page, { say }) {
  const host = part("offline");
  const beside = element("div", {});
  host.append(element("p", {}, "Not yet known."), beside);
  const offline = await watchOffline({ tell, isBusy: () => isBusy(state.job) });
  // Whoever opens the menu reads there how it is now.
  host.dataset.mark = "";
  host.mark = offline.look;
  page.acts["take-over"] = () => offline.takeOver();
  subscribe((change) => change.kind === "bench" && offline.offer());

  function tell({ state: at, says, groups }) {
    if (at === "groups") return beside.replaceChildren(...groups.map(lineOf));
    host.replaceChildren(element("p", {}, says), beside);
    setText(part("readiness"), at === "ready" ? " · ready offline" : "");
    if (at !== "new version") return undefined;
    const attributes = { type: "button", class: "button", "data-act": "take-over" };
    host.append(element("button", attributes, "Take the new version"));
    return say(says, "Take it", "take-over");
  }
}

/** What lies beside the core is told of group by group, as it comes and goes whole. */
function lineOf({ says, missing }) {
  return element("p", {}, missing === 0 ? `${says}: ready offline` : `${says}: not yet on this phone. Stay online.`);
}
