// Files out of the page and into it: one way to hand out bytes, by whichever door the browser has.

const NO_HAND = 100;

/**
 * Hand a file to the person: by the share sheet, by a save dialogue, or as a download; the same bytes by all three.
 * Call it from a tap.
 * @param {{name: string, type: string, text: string}} file
 * @returns {Promise<"shared" | "saved" | "downloaded" | "cancelled">}
 */
export async function handOut({ name, type, text }) {
  const file = new File([text], name, { type });
  const asked = Date.now();
  try {
    if (navigator.canShare?.({ files: [file] })) return await share(file);
    if ("showSaveFilePicker" in globalThis) return await saveAs(file);
  } catch (error) {
    // Where dialogues are forbidden they close at once, faster than any hand.
    if (error.name === "AbortError" && Date.now() - asked > NO_HAND) return "cancelled";
  }
  return download(file);
}

async function share(file) {
  await navigator.share({ files: [file], title: file.name });
  return "shared";
}

async function saveAs(file) {
  const handle = await globalThis.showSaveFilePicker({ suggestedName: file.name });
  const stream = await handle.createWritable();
  await stream.write(file);
  await stream.close();
  return "saved";
}

function download(file) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  // The download has its own hold on the bytes only after it has begun.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return "downloaded";
}

/**
 * Let the person choose a file; null where they think better of it. Call it from a tap.
 * @param {string} accept the types to offer, as an input's accept
 * @returns {Promise<File | null>}
 */
export function chooseFile(accept) {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = accept;
  return new Promise((resolve) => {
    input.addEventListener("change", () => resolve(input.files[0] ?? null));
    input.addEventListener("cancel", () => resolve(null));
    input.click();
  });
}
