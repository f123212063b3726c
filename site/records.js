// The records of jobs at the bench, in the browser's database: they grow with the
// work, and outlive a full local storage. A record has the id of its job. A browser
// may have no database, or refuse it: reading then finds nothing, writing says so.

const NAME = "blockfield";
const STORE = "records";

let opened = null; // promise of the database

function open() {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
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

// run does one thing with the store and promises its result.
async function run(mode, act) {
  const transaction = (await open()).transaction(STORE, mode);
  const request = act(transaction.objectStore(STORE));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(request.result);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}

// record promises the text of a job's record, or null.
export const record = (id) => run("readonly", (store) => store.get(id)).then((text) => text ?? null, () => null);

// keepRecord promises whether the browser has kept the text; null removes it.
export const keepRecord = (id, text) =>
  run("readwrite", (store) => (text === null ? store.delete(id) : store.put(text, id))).then(() => true, () => false);
