// A job as a file: saved as one, and read from one as webapp/job/file.py reads it.
import { rules } from "../job-shape.js";
import { handOut } from "../lib/files.js";
import { checkJob, says } from "./job-check.js";

/** Hand the job to the person as a file; call it from a tap. Resolves as `handOut` does. */
export function saveJobFile(job) {
  return handOut({ name: jobFileName(job), type: "application/json", text: jobFileText(job) });
}

/** The name of a job's file, made of the job's own name. */
export function jobFileName(job) {
  const words = (job.name ?? "").toLowerCase().match(/[\p{Letter}\p{Number}]+/gu) ?? ["job"];
  return `${words.join("-").slice(0, 60)}.json`;
}

/** The text of a job's file. */
export function jobFileText(job) {
  return `${JSON.stringify({ ...job, format: rules.format, version: rules.version }, null, 2)}\n`;
}

/**
 * Read a job from a file that the person chose.
 * @param {Blob} file
 * @returns {Promise<{job: object} | {error: string}>} the error is a sentence that says what to do
 */
export async function readJobFile(file) {
  if (file.size > rules.largest) return { error: says("large") };
  const text = decoded(await file.arrayBuffer());
  if (text !== null && isTooDeep(text)) return { error: says("deep", { deepest: rules.deepest }) };
  const read = text === null ? null : parsed(text);
  return read === null ? { error: says("no_json") } : checkJob(read.value);
}

function decoded(bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** What a text of JSON holds, as {value}; null where it is none. */
function parsed(text) {
  try {
    const value = JSON.parse(text);
    return { value: /\\ud/i.test(text) ? wholesome(value) : value };
  } catch {
    return null;
  }
}

/** Whether lists and groups stand inside each other deeper than any job's, be the text JSON or not. */
function isTooDeep(text) {
  let depth = 0;
  let inText = false;
  let passed = -1;
  for (const { 0: sign, index } of text.matchAll(/[[\]{}"\\]/g)) {
    if (index === passed) continue;
    if (inText) {
      if (sign === "\\") passed = index + 1;
      inText = sign !== '"';
    } else if (sign === '"') {
      inText = true;
    } else if ("[{".includes(sign)) {
      depth += 1;
      if (depth > rules.deepest) return true;
    } else if ("]}".includes(sign)) {
      depth -= 1;
    }
  }
  return false;
}

/** Put the sign for a broken letter in place of each half of one, which could not be written out. */
function wholesome(value) {
  if (typeof value === "string") return value.replace(/[\ud800-\udfff]/gu, "\ufffd");
  if (Array.isArray(value)) return value.map(wholesome);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [wholesome(key), wholesome(each)]));
}
