import { element, part, setText } from "../lib/dom.js";
import { isBusy } from "../bench-turns.js";
import { cupToResume } from "../bench-turns.js";
import { watchOffline } from "../offline.js";
import { hideToast, showNotice } from "../parts/toast.js";
import { state, subscribe } from "../store.js";

/** Keep the app for flight mode, say whether it is ready, and take a new version only by a tap. */
export async function join(page) {
  const host = part("offline");
  host.append(element("p", {}, "Not yet known."));
  const offline = await watchOffline({ tell, isBusy: () => isBusy(state.job) });
  page.acts["take-over"] = () => offline.takeOver();
  page.acts["close-toast"] = hideToast;
  subscribe((change) => change.kind === "bench" && offline.offer());

  function tell({ state: at, says }) {
    host.replaceChildren(element("p", {}, says));
    setText(part("readiness"), at === "ready" ? " · ready offline" : "");
    if (at !== "new version") return;
    host.append(element("button", { type: "button", class: "button", "data-act": "take-over" }, "Take the new version"));
    showNotice(says, "Take it", "take-over");
  }
}
