// What is kept in the browser's database. The records of jobs at the bench, and the
// pictures that go with them: they grow with the work, and outlive a full local storage.
// Both have the id of their job. And copies of what the local storage keeps, by its keys:
// the database alone says when something is on the disk. A browser may have no database,
// or refuse it: reading then finds nothing, writing says so.

const NAME = "blockfield";
const STORES = ["records", "photos", "copies"];
const VERSION = 3;

let opened = null; // promise of the database

function open() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      const has = request.result.objectStoreNames;
      for (const store of STORES) if (!has.contains(store)) request.result.createObjectStore(store);
    };
    request.onsuccess = () => {
      // Another version of the page may want to change the database: let it.
      request.result.onversionchange = () => {
        request.result.close();
        opened = null;
      };
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("records: blocked"));
  });
  opened.catch(() => { opened = null; });
  return opened;
}

// run does something with a store and promises what it made, once that is on the disk.
async function run(name, mode, act) {
  const transaction = (await open()).transaction(name, mode, { durability: "strict" });
  const made = act(transaction.objectStore(name));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(made);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}

// record promises the text of a job's record, or null.
export const record = (id) =>
  run("records", "readonly", (store) => store.get(id)).then((request) => request.result ?? null, () => null);

// keepRecord promises whether the browser has kept the text; null removes it.
export const keepRecord = (id, text) =>
  run("records", "readwrite", (store) => (text === null ? store.delete(id) : store.put(text, id))).then(() => true, () => false);

// The pictures of a job have keys of its id, a slash and when they were taken in.
const ofJob = (id) => IDBKeyRange.bound(`${id}/`, `${id}/\uffff`);

// photos promises the pictures of a job, the oldest first, each with its key.
export const photos = (id) =>
  run("photos", "readonly", (store) => [store.getAllKeys(ofJob(id)), store.getAll(ofJob(id))])
    .then(([keys, all]) => all.result.map((photo, i) => ({ ...photo, key: keys.result[i] })), () => []);

// keepPhoto promises whether the browser has kept a picture under a key.
export const keepPhoto = (key, { kind, day, blob }) =>
  run("photos", "readwrite", (store) => store.put({ kind, day, blob }, key)).then(() => true, () => false);

export const dropPhoto = (key) => run("photos", "readwrite", (store) => store.delete(key)).catch(() => null);

export const dropPhotos = (id) => run("photos", "readwrite", (store) => store.delete(ofJob(id))).catch(() => null);

// copies promises the copies of what the local storage keeps: [key, copy].
export const copies = () =>
  run("copies", "readonly", (store) => [store.getAllKeys(), store.getAll()])
    .then(([keys, all]) => keys.result.map((key, i) => [key, all.result[i]]), () => []);

export const keepCopies = (entries) =>
  run("copies", "readwrite", (store) => entries.forEach(([key, copy]) => store.put(copy, key))).catch(() => null);
