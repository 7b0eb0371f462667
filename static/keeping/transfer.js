// A job as a file: saved as one, and read from one after the same checks as webapp/job/file.py.
import { file as rules, grammar, inputs, levels } from "../printed.js";
import { stages } from "../sentences.js";
import { lift } from "./lift.js";
import { handOut } from "../lib/files.js";

class JobFileError extends Error {}

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
  if (file.size > rules.largest) {
    return { error: "This file is larger than 5 MB, and a job file is far smaller. Choose the file of one job." };
  }
  try {
    return readJob(new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer()));
  } catch {
    return { error: "This is no job file: it is not JSON. Choose a file that was saved as a job file." };
  }
}

/** Read a job from a file's text: {job} or {error}; what is not JSON throws. */
function readJob(text) {
  const job = JSON.parse(text);
  try {
    return { job: checkJob(job) };
  } catch (error) {
    if (!(error instanceof JobFileError)) throw error;
    return { error: error.message };
  }
}

/** Refuse what is no job, and return it as one of this version. */
function checkJob(read) {
  checkVersion(read);
  const job = lift(read);
  checkKnown(job, rules.keys.job, "the job file");
  for (const key of ["id", "name"]) checkText(job, key, "the job file");
  checkSection(job, "units", Object.keys(grammar.jobUnits));
  for (const section of levels.job.sections) {
    const names = Object.keys(inputs).filter((name) => inputs[name].section === section);
    checkSection(job, section, section === "card" ? [...names, "name"] : names);
  }
  checkUnits(job);
  checkRowsHeld(job, "job", "the job", new Set());
  return job;
}

function checkVersion(job) {
  if (!isGroup(job) || job.format !== rules.format) {
    refuse(`This is no job file: its "format" is not "${rules.format}". Choose a file saved as a job file.`);
  }
  if (!Number.isInteger(job.version) || job.version < 1) {
    refuse('The job file has no "version". Choose a file saved as a job file.');
  }
  if (job.version > rules.version) {
    refuse(`This job file is of version ${job.version}, and this app reads up to version ${rules.version}. `
      + "Update the app, then open the file again.");
  }
}

function checkSection(job, key, names) {
  const section = key in job ? job[key] : {};
  if (!isGroup(section)) {
    refuse(`"${key}" in the job file is not a group of fields. Save the job again and open that file.`);
  }
  checkKnown(section, names, `"${key}"`);
  for (const name of Object.keys(section)) checkValue(section, name, `"${key}"`);
}

function checkUnits(job) {
  for (const [kind, unit] of Object.entries(job.units ?? {})) {
    const choices = grammar.jobUnits[kind];
    if (!choices.includes(unit)) {
      refuse(`The unit of ${kind} in the job file is "${unit}". Write one of ${choices.join(", ")}.`);
    }
  }
}

function checkRowsHeld(parent, parentLevel, where, ids) {
  for (const level of levels[parentLevel].held) {
    const key = levels[level].rows;
    const rows = key in parent ? parent[key] : [];
    if (!Array.isArray(rows) || !rows.every(isGroup)) {
      refuse(`"${key}" of ${where} is not a list of rows. Save the job again and open that file.`);
    }
    rows.forEach((row, place) => checkRow(row, level, `${levels[level].word} ${place + 1} of ${where}`, ids));
  }
}

function checkRow(row, level, title, ids) {
  const { held, keys, records } = levels[level];
  const lists = [...held.map((below) => levels[below].rows), ...records];
  const names = Object.keys(inputs).filter((name) => inputs[name].levels.includes(level));
  checkKnown(row, [...keys, ...names], title);
  for (const name of Object.keys(row)) if (!lists.includes(name)) checkValue(row, name, title);
  checkId(row, title, ids);
  checkRowsHeld(row, level, title, ids);
  for (const key of records) if (row[key]) checkCups(row[key], title);
}

function checkId(row, title, ids) {
  if (typeof row.id !== "string" || !row.id) {
    refuse(`${title[0].toUpperCase()}${title.slice(1)} has no "id". Give every row an id of its own.`);
  }
  if (ids.has(row.id)) {
    refuse(`Two rows of the job file have the id "${row.id}". Give every row an id of its own.`);
  }
  ids.add(row.id);
}

function checkCups(cups, title) {
  if (!Array.isArray(cups)) refuse(`"cups" of ${title} is not a list. Save the job again and open that file.`);
  for (const cup of cups) checkCup(cup, title);
}

function checkCup(cup, title) {
  if (!isGroup(cup)) {
    refuse(`A cup of ${title} is not a group of fields. Save the job again and open that file.`);
  }
  checkKnown(cup, rules.keys.cup, `a cup of ${title}`);
  const entries = "entries" in cup ? cup.entries : [];
  if (!Array.isArray(entries)) {
    refuse(`"entries" of a cup of ${title} is not a list. Save the job again and open that file.`);
  }
  if (!entries.every(isEntry)) {
    refuse(`A cup of ${title} has an entry that is not known here. Save the job again.`);
  }
  if (!Array.isArray(cup.stages) || !cup.stages.every((name) => stages.some((stage) => stage.name === name))) {
    refuse(`"stages" of a cup of ${title} does not list stages that are known here. Save the job again.`);
  }
  const amounts = cup.amounts ?? {};
  if (!isGroup(amounts) || !Object.values(amounts).every((each) => typeof each === "number")) {
    refuse(`The amounts of a cup of ${title} are not numbers. Save the job again.`);
  }
  if (isGroup(cup.plan)) checkJob(cup.plan);
}

function isEntry(entry) {
  if (!isGroup(entry) || !Object.keys(rules.entries).includes(entry.kind)) return false;
  const texts = ["id", "at", ...rules.entries[entry.kind].filter((key) => key !== "count")];
  return texts.every((key) => typeof entry[key] === "string")
    && Object.keys(entry).every((key) => ["kind", "count", ...texts].includes(key))
    && (!texts.includes("stage") || rules.taps.includes(entry.stage))
    && typeof ("count" in entry ? entry.count : 0) === "number";
}

function checkKnown(group, names, where) {
  const strange = Object.keys(group).find((key) => !names.includes(key));
  if (strange !== undefined) {
    refuse(`"${strange}" in ${where} is not known here. Take it out of the file, then open it again.`);
  }
}

function checkText(group, key, where) {
  const text = group[key] ?? "";
  if (typeof text !== "string") {
    refuse(`"${key}" in ${where} is not text. Put it in quotation marks, then open the file again.`);
  }
  if ([...text].length > rules.longest_text) {
    refuse(`"${key}" in ${where} is longer than ${rules.longest_text} letters. Shorten it, then open it again.`);
  }
}

function checkValue(group, key, where) {
  const value = group[key] ?? null;
  if (value !== null && typeof value !== "string" && typeof value !== "number") {
    refuse(`"${key}" in ${where} is neither text nor a number. Write it as text, such as "12 3/8 in".`);
  }
  if (["id", "name", "swatch"].includes(key) || typeof value === "string") checkText(group, key, where);
}

function isGroup(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function refuse(sentence) {
  throw new JobFileError(sentence);
}
