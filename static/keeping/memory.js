// Stores that last as long as the page: what is left where the browser refuses to keep anything.

/** Open stores of these names, with the same verbs as the database's. */
export function openMemory(names) {
  const stores = Object.fromEntries(names.map((name) => [name, new Map()]));
  return {
    read: async (store, key) => stores[store].get(key),
    count: async (store) => stores[store].size,
    entries: async (store) => [...stores[store]],
    write: async (changes) => {
      for (const [store, key, value] of changes) {
        if (value === undefined) stores[store].delete(key);
        else stores[store].set(key, value);
      }
    },
  };
}

/** Say what the person has to do, whether or not something was kept here before. */
export function warning(jobs) {
  return jobs
    ? "Your saved jobs cannot be opened just now. Reload the page; until then nothing is kept."
    : "This browser keeps nothing once it is closed. Save the job to a file before you leave.";
}
