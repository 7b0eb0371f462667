// What was typed stays: every edit goes into IndexedDB at once, and counts as saved when the disk has it.
// A sentinel outside of the database tells an emptied one from a first start. What is rare lies in modules beside it.

import { file } from "../printed.js";

const VERSION = 2;
const STORES = ["jobs", "cards", "meta", "trash"];
const SENTINEL = "sixteenth sentinel";
const SNAPSHOT_PAUSE = 5 * 60_000;
// So long (milliseconds) a disk may take to answer, and so long what is not yet saved may pass for saved.
const PATIENCE = 3500;
const UNSEEN = 250;

/**
 * Open what this phone keeps; where the browser keeps nothing, the work goes on in memory and `tell` says so.
 * @param {(news: {kind: "saving" | "saved" | "not saved" | "changed elsewhere", says?: string, at?: Date,
 *   job?: object}) => void} tell
 * @returns {Promise<JobStorage>}
 */
export async function openStorage(tell) {
  const storage = new JobStorage(tell);
  await storage.start();
  return storage;
}

/** The jobs and resin cards on this phone, for as long as the page lives; `disk.js` has what a list of them needs. */
class JobStorage {
  /** The job that was open last, as it was when the page started, or null on a first start; and the open one's id. */
  job = null;
  openId = null;
  /** What is wrong with the stored work, as {kind, says}, or null; then the recovery screen comes first. */
  problem = null;
  /** The stores, with read(store, key), count(store), entries(store) and write(changes, look); and their names. */
  base = null;
  stores = STORES;
  /** Whether they last only as long as the page. */
  isMemory = false;
  /** Whether no other window has the app open, so that nothing can have been written meanwhile. */
  isAlone = false;
  /** The records as they are on the disk, by id, and the jobs that are not there yet. */
  known = new Map();
  waiting = new Map();
  /** The newest snapshot, as text, and its moment. */
  copy = null;
  snapshotAt = 0;
  /** For the modules that this one imports when they are needed. */
  openDatabase = openDatabase;
  checksum = checksum;
  recordOf = recordOf;
  /** From modules that come later: what goes with a change, who hears what is written, what joins what is apart. */
  besideOf = null;
  written = null;
  mend = null;
  #saves = 0;
  #beside = [];
  #writing = null;

  constructor(tell) {
    this.tell = tell;
  }

  async start() {
    try {
      await this.take(await this.inTime(this.#find()));
    } catch (error) {
      await (await import("./memory.js")).workInMemory(this, error, readSentinel());
    }
  }

  /** Save a job now, and what goes with a change; while a write is on its way, the job as it is then comes next. */
  save(job, change = {}) {
    if (job.example) return;
    this.#beside.push(...(this.besideOf?.(job, change) ?? []));
    this.waiting.set(job.id, { job, at: new Date().toISOString() });
    this.saveWaiting();
  }

  /** Write what is not on the disk yet. */
  saveWaiting() {
    if (this.waiting.size) this.#writing = this.#writing ?? this.#drain();
  }

  /** Whether all that was typed is where it is kept. */
  get isAtRest() {
    return !this.#writing && !this.waiting.size && !this.isMemory;
  }

  /** Wait until nothing is on its way to the disk. */
  async settled() {
    await this.#writing;
  }

  /** What is promised, or an error "Hangs" where it does not come; its `late` is still promised. */
  inTime(promise) {
    return new Promise((resolve, reject) => {
      let left = PATIENCE;
      let timer = 0;
      // Half a second at a time: a page that slept wakes to one of them, and the disk has the rest to answer.
      const wait = () => {
        if (left <= 0) return reject(trouble("Hangs", promise));
        left -= 500;
        timer = setTimeout(wait, 500);
      };
      wait();
      promise.then(resolve, reject).finally(() => clearTimeout(timer));
    });
  }

  /** What lies on the disk, and what the sentinel says of it. */
  async #find() {
    const base = await openDatabase();
    const sentinel = readSentinel();
    // The sentinel names the open job, so that it is read together with the rest; the database has the last word.
    const guess = sentinel.open ?? "";
    const [last, count, guessed, hasRing] = await Promise.all([
      base.read("meta", "last"), base.count("jobs"), base.read("jobs", guess),
      // Where nothing was ever saved a snapshot would tell of work that is gone.
      sentinel.saves ? false : globalThis.caches?.has("sixteenth-snapshots").catch(() => false),
    ]);
    const open = last ? last.open : guess;
    const record = open === guess ? guessed : open && (await base.read("jobs", open));
    return { base, sentinel, last, count, open, record, hasRing };
  }

  /** Take what was found on the disk as what is kept. */
  async take(found) {
    const { base, sentinel, last, count, open, record, hasRing } = found;
    this.base = base;
    this.#saves = Math.max(last?.saves ?? 0, sentinel.saves);
    this.job = await this.whole(open, record);
    this.openId = (last || this.job) && open ? open : null;
    if (last?.saves === sentinel.saves && count === sentinel.jobs && (this.job || !open)) return;
    if (!last && !sentinel.jobs && !hasRing && !count) return;
    this.problem = await (await import("./snapshots.js")).judge(this, found);
  }

  /** Whether a record is as it was written. */
  isWhole(record) {
    return typeof record?.text === "string" && checksum(record.text) === record.sum;
  }

  /** The job of a record that is whole, as one of this version, or null. */
  async whole(id, record) {
    try {
      const job = this.isWhole(record) && JSON.parse(record.text);
      if (!Array.isArray(job.colours) || job.version > file.version) return null;
      const lifted = job.version === file.version ? job : (await import("./lift.js")).lift(job);
      this.known.set(id, record);
      return lifted;
    } catch {
      return null;
    }
  }

  /** Read a job and remember it as the open one; null where it is missing or damaged. */
  async open(id) {
    return (await import("./disk.js")).open(this, id);
  }

  /** Write changes, [store, key, value or undefined to delete] each, all or none, and say which job is open. */
  async change(changes, open = this.openId) {
    this.openId = open;
    // Another window may have counted on meanwhile.
    this.#saves = Math.max(this.#saves, readSentinel().saves) + 1;
    const last = { saves: this.#saves, at: new Date().toISOString(), open };
    const put = () => this.inTime(this.#put([...changes, ["meta", "last", last]]));
    try {
      await put();
    } catch (error) {
      await (await import("./disk.js")).rescue(this, error, put);
    }
    return last;
  }

  async #put(changes) {
    const { base } = this;
    let mended = null;
    const look = (found, objects) => {
      const isEmptied = !found[changes.length - 1] && this.known.size > 0;
      const isApart = ([store, id, record], place) => (
        store === "jobs" && record && this.known.has(id) && found[place]?.sum !== this.known.get(id).sum
      );
      if (!isEmptied && !changes.some(isApart)) return;
      if (!this.mend) throw trouble("Apart");
      mended = this.mend(this, { changes, found, objects, isEmptied });
    };
    const jobs = await base.write(changes, look, this.isAlone);
    if (base.isMemory) return;
    for (const [store, id, record] of changes) {
      if (store === "jobs") this.known[record ? "set" : "delete"](id, record);
    }
    writeSentinel({ ...changes[changes.length - 1][2], jobs });
    mended?.();
    this.written?.(changes);
  }

  async #drain() {
    const slow = setTimeout(() => this.tell({ kind: "saving" }), UNSEEN);
    let [jobs, beside, isKept] = [[], [], false];
    try {
      while (this.waiting.size) {
        jobs = [...this.waiting];
        beside = this.#beside.splice(0);
        this.waiting.clear();
        const rows = jobs.map(([id, { job, at }]) => ["jobs", id, recordOf(job, at)]);
        const last = await this.change([...rows, ...beside], jobs[jobs.length - 1][0]);
        isKept = !this.isMemory;
        if (!isKept) break;
        // What was typed on meanwhile is not there yet.
        if (!this.waiting.size) this.tell({ kind: "saved", at: new Date(last.at) });
        if (Date.now() - this.snapshotAt > SNAPSHOT_PAUSE) this.snapshot();
      }
    } catch (error) {
      isKept = false;
      this.#beside.unshift(...beside);
      this.tell({ kind: "not saved", says: (await import("./memory.js")).refusal(error) });
    } finally {
      // What only memory has, or nobody, still waits for the disk.
      if (!isKept) this.waiting = new Map([...jobs, ...this.waiting]);
      clearTimeout(slow);
      this.#writing = null;
    }
  }

  /** Put all that is kept into the ring of snapshots, unless something is wrong with it. */
  snapshot() {
    if (this.problem || this.isMemory) return;
    this.snapshotAt = Date.now();
    import("./snapshots.js").then(({ keepSnapshot }) => keepSnapshot(this)).catch(() => {});
  }
}

/** A sum that changes when a text is cut, emptied or overwritten (FNV-1a over its code units). */
function checksum(text) {
  let sum = 0x811c9dc5;
  for (let place = 0; place < text.length; place += 1) {
    sum = Math.imul(sum ^ text.charCodeAt(place), 0x01000193);
  }
  return (sum >>> 0).toString(16).padStart(8, "0");
}

/** The record that a job is stored as: its text with a checksum, and what a list of jobs shows. */
export function recordOf(job, at) {
  const text = JSON.stringify(job);
  return { name: job.name, at, text, sum: checksum(text) };
}

function trouble(name, late) {
  return Object.assign(new Error(name), { name, late });
}

function readSentinel() {
  const none = { saves: 0, jobs: 0 };
  try {
    const read = { ...none, ...JSON.parse(localStorage.getItem(SENTINEL)) };
    return read.saves >= 0 && read.jobs >= 0 ? read : none;
  } catch {
    return none;
  }
}

function writeSentinel({ saves, jobs, at, open }) {
  try {
    localStorage.setItem(SENTINEL, JSON.stringify({ saves, jobs, at, open }));
  } catch {
    // Without a sentinel the work is still saved; only its loss would go unnoticed.
  }
}

/** Open the stores; where one of them or the version is not as expected, that is mended first. */
async function openDatabase() {
  let database = await connect(VERSION).catch(() => null);
  const isWhole = database && STORES.every((store) => database.objectStoreNames.contains(store));
  if (!isWhole) database = await (await import("./disk.js")).mended(database, connect, STORES);
  database.onversionchange = () => database.close();
  const objects = (store) => database.transaction(store).objectStore(store);
  return {
    read: async (store, key) => resultOf(objects(store).get(key)),
    count: async (store) => resultOf(objects(store).count()),
    entries: async (store) => {
      const both = objects(store);
      const [keys, values] = await Promise.all([resultOf(both.getAllKeys()), resultOf(both.getAll())]);
      return keys.map((key, place) => [key, values[place]]);
    },
    write: (...of) => written(database, ...of),
  };
}

async function connect(version) {
  const request = indexedDB.open("sixteenth", version);
  request.onupgradeneeded = () => {
    const { result } = request;
    for (const store of STORES) if (!result.objectStoreNames.contains(store)) result.createObjectStore(store);
  };
  return resultOf(request);
}

function resultOf(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/**
 * All requests go out in one task, final at once where no other window is open, so that a page killed right after it
 * has handed them over. Else `look`, which is given what was stored at their keys, may throw before they are, or write
 * more. Resolves with the number of jobs there are then.
 */
function written(database, changes, look, isAlone) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORES, "readwrite", { durability: "strict" });
    const objects = (store) => transaction.objectStore(store);
    const found = [];
    let jobs = null;
    let isFinal = false;
    const orGiveUp = (act) => () => {
      try {
        act();
      } catch (error) {
        reject(error);
        if (!isFinal) transaction.abort();
      }
    };
    transaction.oncomplete = () => jobs && resolve(jobs.result);
    transaction.onabort = () => reject(transaction.error);
    orGiveUp(() => {
      for (const [store, key] of changes) {
        const request = objects(store).get(key);
        request.onsuccess = () => found.push(request.result);
      }
      const puts = changes.map(([store, key, value]) => (
        value === undefined ? objects(store).delete(key) : objects(store).put(value, key)
      ));
      const end = () => {
        isFinal = true;
        jobs = objects("jobs").count();
        transaction.commit?.();
      };
      puts[puts.length - 1].onsuccess = orGiveUp(() => {
        look(found, isAlone ? null : objects);
        if (!isAlone) end();
      });
      if (isAlone) end();
    })();
  });
}
