// Comes first when saved work is missing: what was lost, and what this phone can bring back.
import { element } from "../lib/dom.js";
import { chooseFile } from "../lib/files.js";
import { adoptJob, restoreSnapshot, startAfresh } from "../keeping/jobs.js";
import { snapshots } from "../keeping/snapshots.js";
import { readJobFile } from "../keeping/transfer.js";

const MISSING = "Saved work is missing";
const TITLES = { memory: "Saved work is out of reach", newer: "Saved work is of a newer version" };

/**
 * Show what is wrong with the stored work and wait until the person has chosen; nothing is deleted.
 * @param {Element} host where the screen is put, and taken away from again
 * @param {import("../keeping/persistence.js").JobStorage} storage one with a problem
 * @returns {Promise<object | null>} the job to open, or null to go on with what is there
 */
export async function showRecovery(host, storage) {
  const { kind, says } = storage.problem;
  const isMemory = kind === "memory";
  // An older copy must not take the place of a newer job.
  const kept = kind === "newer" ? [] : await snapshots(storage);
  return new Promise((resolve) => {
    const note = element("p", { class: "field__note field__note--error", role: "alert" });
    const close = (job) => {
      screen.remove();
      if (storage.isMemory) storage.tell({ kind: "not saved", says });
      resolve(job);
    };
    const screen = element("section", { class: "step recovery part", "aria-labelledby": "recovery-title" },
      element("h2", { class: "step__title", id: "recovery-title", tabindex: "-1" }, TITLES[kind] ?? MISSING),
      element("p", {}, says),
      kind === "newer" ? null : element("p", {}, copiesOf(kept)),
      ...kept.map((snapshot) => choice(labelOf(snapshot), true, async () => {
        close(await restoreSnapshot(storage, snapshot));
      })),
      choice("Open a job file", !kept.length, async () => {
        const file = await chooseFile(".json,application/json");
        if (!file) return;
        const { job, error } = await readJobFile(file);
        note.textContent = error ?? "";
        if (error) return;
        await startAfresh(storage);
        close(await adoptJob(storage, job));
      }),
      note,
      choice(kind === "emptied" || isMemory ? "Start afresh" : "Go on with what is here", false, async () => {
        await startAfresh(storage);
        close(storage.job);
      }),
      element("p", { class: "quiet" }, "The copies stay on this phone, whatever you choose."),
    );
    host.append(screen);
    screen.querySelector("h2").focus();
  });
}

function copiesOf(kept) {
  return kept.length ? "This phone still has copies of it:" : "No copy of it is left on this phone.";
}

function choice(says, isPrime, act) {
  const button = element("button", { type: "button", class: isPrime ? "button button--prime" : "button" }, says);
  button.addEventListener("click", act);
  return button;
}

function labelOf({ at, records }) {
  const names = records.map(({ name }) => name || "a job without a name").slice(0, 3).join(", ");
  const more = records.length > 3 ? ` and ${records.length - 3} more` : "";
  return `Bring back ${names || "no jobs"}${more}, from ${at.toLocaleString()}`;
}
