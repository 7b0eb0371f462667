// What was typed stays: every edit goes into IndexedDB at once, and counts as saved when the disk has it.
// A sentinel outside of the database tells an emptied one from a first start.

import { file } from "../printed.js";

const DATABASE = "sixteenth";
const STORES = ["jobs", "cards", "meta"];
const SENTINEL = "sixteenth sentinel";
const SNAPSHOT_PAUSE = 5 * 60_000;
const RING = "sixteenth-snapshots";

/**
 * Open what this phone keeps; where the browser keeps nothing, the work goes on in memory and `tell` says so.
 * @param {(news: {kind: "saved" | "not saved" | "memory" | "changed elsewhere", says?: string, at?: Date,
 *   job?: object}) => void} tell
 * @returns {Promise<JobStorage>}
 */
export async function openStorage(tell) {
  const storage = new JobStorage(tell);
  await storage.start();
  return storage;
}

/** A sum that changes when a text is cut, emptied or overwritten (FNV-1a over its code units). */
export function checksum(text) {
  let sum = 0x811c9dc5;
  for (let place = 0; place < text.length; place += 1) {
    sum = Math.imul(sum ^ text.charCodeAt(place), 0x01000193);
  }
  return (sum >>> 0).toString(16).padStart(8, "0");
}

/** The jobs and resin cards on this phone, for as long as the page lives. */
class JobStorage {
  /** The job that was open last, as it was when the page started, or null on a first start. */
  job = null;
  /** The id of the open job, or null. */
  openId = null;
  /** What is wrong with the stored work, as {kind, says}, or null; then the recovery screen comes first. */
  problem = null;
  /** The stores, with read(store, key), count(store), entries(store) and write(changes). */
  base = null;
  /** The name of the cache with the ring of snapshots, and the sum that seals them. */
  ring = RING;
  checksum = checksum;
  #tell;
  #isMemory = false;
  #saves = 0;
  #known = new Map();
  #waiting = new Map();
  #writing = null;
  #snapshotAt = { time: 0, saves: 0 };
  #persistAsked = false;

  constructor(tell) {
    this.#tell = tell;
  }

  async start() {
    try {
      this.base = await openDatabase();
    } catch {
      const { openMemory, warning } = await import("./memory.js");
      this.#isMemory = true;
      this.base = openMemory(STORES);
      this.#tell({ kind: "memory", says: warning(readSentinel().jobs) });
    }
    await this.#load();
    document.addEventListener("visibilitychange", () => this.#turned());
    globalThis.addEventListener("focus", () => this.#lookElsewhere());
  }

  /** Save a job now; while a write is on its way, the job as it will be then is the next one written. */
  save(job) {
    if (job.example) return;
    this.#waiting.set(job.id, job);
    this.#writing = this.#writing ?? this.#drain();
  }

  /** Wait until nothing is on its way to the disk. */
  async settled() {
    await this.#writing;
  }

  /** Read a job and remember it as the open one; null where it is missing or damaged. */
  async open(id) {
    await this.settled();
    const job = await this.#whole(id, await this.base.read("jobs", id));
    if (job) await this.change([], id);
    return job;
  }

  /** Write changes, [store, key, value or undefined to delete] each, all or none, and say which job is open. */
  change(changes, open = this.openId) {
    return this.#write([...changes, ["meta", "last", this.#last(open)]]);
  }

  /** Whether the ring of snapshots was ever begun. */
  async hasSnapshots() {
    return globalThis.caches ? caches.has(RING).catch(() => false) : false;
  }

  async #load() {
    const sentinel = readSentinel();
    // Where nothing was ever saved a snapshot would tell of work that is gone, so it is looked for meanwhile.
    const snapshots = sentinel.saves ? null : this.hasSnapshots();
    // The sentinel names the open job, so that it is read together with the rest; the database has the last word.
    const guess = sentinel.open ?? "";
    const [last, count, guessed] = await Promise.all([
      this.base.read("meta", "last"), this.base.count("jobs"), this.base.read("jobs", guess),
    ]);
    this.openId = last?.open ?? null;
    this.#saves = Math.max(last?.saves ?? 0, sentinel.saves);
    const record = this.openId === guess ? guessed : this.openId && (await this.base.read("jobs", this.openId));
    this.job = await this.#whole(this.openId, record);
    this.problem = this.#isMemory ? null : await this.#problem(last, count, sentinel, snapshots);
  }

  async #problem(last, count, sentinel, snapshots) {
    if (last?.saves === sentinel.saves && count === sentinel.jobs && (this.job || !last.open)) return null;
    const hasSnapshots = await (snapshots ?? this.hasSnapshots());
    if (!last && !sentinel.jobs && !hasSnapshots) return null;
    const { problemOf } = await import("./snapshots.js");
    return problemOf({ last, count, job: this.job, sentinel, hasSnapshots });
  }

  /** The job of a record that is whole, as one of this version, or null. */
  async #whole(id, record) {
    if (!record || checksum(record.text) !== record.sum) return null;
    this.#known.set(id, record.sum);
    const job = JSON.parse(record.text);
    return job.version === file.version ? job : (await import("./lift.js")).lift(job);
  }

  #last(open = this.openId) {
    this.openId = open;
    // Another window may have counted on meanwhile.
    this.#saves = Math.max(this.#saves, readSentinel().saves) + 1;
    return { saves: this.#saves, at: new Date().toISOString(), open };
  }

  async #drain() {
    let jobs = [];
    try {
      while (this.#waiting.size) {
        jobs = [...this.#waiting.values()];
        this.#waiting.clear();
        await this.#keep(jobs);
      }
    } catch (error) {
      for (const job of jobs) if (!this.#waiting.has(job.id)) this.#waiting.set(job.id, job);
      this.#tell({ kind: "not saved", says: refusal(error) });
    }
    this.#writing = null;
  }

  async #keep(jobs) {
    const last = this.#last(jobs[jobs.length - 1].id);
    const rows = jobs.map((job) => ["jobs", job.id, recordOf(job, last.at)]);
    await this.#write([...rows, ["meta", "last", last]]);
    for (const [, id, { sum }] of rows) this.#known.set(id, sum);
    if (this.#isMemory) return;
    this.#tell({ kind: "saved", at: new Date(last.at) });
    if (Date.now() - this.#snapshotAt.time > SNAPSHOT_PAUSE) this.#keepSnapshot().catch(() => {});
    if (!this.#persistAsked) navigator.storage?.persist?.().catch(() => {});
    this.#persistAsked = true;
  }

  async #write(changes) {
    try {
      await this.base.write(changes);
    } catch (error) {
      if (error?.name !== "InvalidStateError") throw error;
      // A browser may close the database under a page that sleeps.
      this.base = await openDatabase();
      await this.base.write(changes);
    }
    const last = changes[changes.length - 1][2];
    if (!this.#isMemory) writeSentinel({ ...last, jobs: await this.base.count("jobs") });
  }

  async #keepSnapshot() {
    if (this.problem || this.#isMemory || this.#snapshotAt.saves === this.#saves) return;
    this.#snapshotAt = { time: Date.now(), saves: this.#saves };
    const { keepSnapshot } = await import("./snapshots.js");
    await keepSnapshot(this);
  }

  #turned() {
    if (document.visibilityState === "hidden") this.#keepSnapshot().catch(() => {});
    else if (this.#waiting.size) this.#writing = this.#writing ?? this.#drain();
    else this.#lookElsewhere();
  }

  async #lookElsewhere() {
    const id = this.openId;
    if (this.#writing || !id) return;
    const record = await this.base.read("jobs", id).catch(() => null);
    if (!record || this.#writing || record.sum === this.#known.get(id)) return;
    const job = await this.#whole(id, record);
    if (job) this.#tell({ kind: "changed elsewhere", job });
  }
}

/** The record that a job is stored as: its text with a checksum, and what a list of jobs shows. */
export function recordOf(job, at) {
  const text = JSON.stringify(job);
  return { name: job.name, at, text, sum: checksum(text) };
}

function refusal(error) {
  const why = error?.name === "QuotaExceededError" ? "this phone is full" : "the browser refused it";
  return `Not saved: ${why}. Save the job to a file now.`;
}

function readSentinel() {
  try {
    return { saves: 0, jobs: 0, ...JSON.parse(localStorage.getItem(SENTINEL)) };
  } catch {
    return { saves: 0, jobs: 0 };
  }
}

function writeSentinel({ saves, jobs, at, open }) {
  try {
    localStorage.setItem(SENTINEL, JSON.stringify({ saves, jobs, at, open }));
  } catch {
    // Without a sentinel the work is still saved; only its loss would go unnoticed.
  }
}

async function openDatabase() {
  const request = indexedDB.open(DATABASE, 1);
  request.onupgradeneeded = () => {
    for (const store of STORES) request.result.createObjectStore(store);
  };
  const database = await resultOf(request);
  database.onversionchange = () => database.close();
  const objects = (store) => database.transaction(store).objectStore(store);
  return {
    read: (store, key) => resultOf(objects(store).get(key)),
    count: (store) => resultOf(objects(store).count()),
    entries: async (store) => {
      const both = objects(store);
      const [keys, values] = await Promise.all([resultOf(both.getAllKeys()), resultOf(both.getAll())]);
      return keys.map((key, place) => [key, values[place]]);
    },
    write: (changes) => written(database, changes),
  };
}

function resultOf(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** All requests go out in one task, so that a page killed right after it has still handed them over. */
function written(database, changes) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORES, "readwrite", { durability: "strict" });
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error);
    try {
      for (const [store, key, value] of changes) {
        const objects = transaction.objectStore(store);
        if (value === undefined) objects.delete(key);
        else objects.put(value, key);
      }
      transaction.commit?.();
    } catch (error) {
      transaction.abort();
      reject(error);
    }
  });
}
