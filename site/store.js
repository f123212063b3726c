// What this browser keeps: jobs, the price book, edits that were under way when
// the page was left, and for each tab what it shows. A browser may keep nothing
// at all (storage blocked or full): reading then finds nothing, writing says so.
import { copies, keepCopies } from "./records.js";

const JOB = "blockfield.job"; // a job, with when it was begun behind it. opening.js reads it too
const LAST = "blockfield.last"; // the id of the job that was edited last
const EDITS = "blockfield.edits"; // edits under way, by the job that they belong to
const BOOK = "blockfield.book";
const BOOKS = "blockfield.books"; // further price books, as the engine writes them
const BOOK_ASIDE = "blockfield.book-aside"; // a book that could not be read and had to give way
const BOOKS_ASIDE = "blockfield.books-aside"; // such further books
const WRITES = "blockfield.writes"; // how many there were
const TAB = "blockfield.tab"; // in the tab's own storage
const TALK = "blockfield.talk"; // there too: where a maker was who hid the figures from a client

const RECOVER_MS = 2_000; // longest wait for the database

const named = (family, id) => `${family}.${id}`;

function read(key, storage = "localStorage") {
  try {
    return window[storage].getItem(key);
  } catch {
    return null;
  }
}

// write reports whether the browser has kept the text; null removes it.
function write(key, text, storage = "localStorage") {
  try {
    if (text === null) window[storage].removeItem(key);
    else window[storage].setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

// Browsers write the local storage to the disk late: one that is ended by force, or loses
// its power, forgets the last half minute of it. So the database has copies, each with
// the number of its writing.
const uncopied = new Map();
let copying = false;

async function copyAll() {
  if (copying) return;
  copying = true;
  while (uncopied.size > 0) {
    const entries = [...uncopied];
    uncopied.clear();
    await keepCopies(entries);
  }
  copying = false;
}

const writes = () => Number(read(WRITES) ?? 0);

// keep is write for what shall outlive the end of the browser.
function keep(key, text) {
  if (!write(key, text)) return false;
  const number = writes() + 1;
  write(WRITES, String(number));
  uncopied.set(key, { text, number });
  copyAll();
  return true;
}

// recover writes down again what the local storage has forgotten: the copies that bear a
// higher number than the last of its writings. It comes before anything is read.
export async function recover() {
  const known = writes();
  const all = await Promise.race([copies(), new Promise((resolve) => { setTimeout(resolve, RECOVER_MS, []); })]);
  const forgotten = all.filter(([, { number }]) => number > known);
  for (const [key, { text }] of forgotten) write(key, text);
  if (forgotten.length > 0) write(WRITES, String(Math.max(...forgotten.map(([, { number }]) => number))));
}

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

// keeps reports whether this browser keeps anything, as far as can be told
// beforehand.
export const keeps = () => write("blockfield.probe", "1") && write("blockfield.probe", null);

// Jobs

export const jobKey = (id) => named(JOB, id);
export const job = (id) => read(jobKey(id));
// What is no text would be written as its name.
export const keepJob = (id, text) => typeof text === "string" && keep(jobKey(id), text);
export const removeJob = (id) => keep(jobKey(id), null);
export const lastJob = () => read(LAST);
export const setLastJob = (id) => keep(LAST, id);

// jobs lists the ids of the kept jobs, the one begun last first.
export function jobs() {
  let keys = [];
  try {
    keys = Object.keys(localStorage);
  } catch {
    return [];
  }
  const ids = keys.filter((key) => key.startsWith(`${JOB}.`)).map((key) => key.slice(JOB.length + 1)).filter((id) => /^\d+$/.test(id));
  ids.sort((a, b) => Number(b) - Number(a));
  return ids;
}

// newJob is an id that no kept job has.
export function newJob() {
  let begun = Date.now();
  while (job(String(begun)) !== null) begun += 1;
  return String(begun);
}

// Edits under way: requests to the engine, in order.

export const edits = (id) => {
  const kept = parse(read(named(EDITS, id)));
  return Array.isArray(kept) ? kept : [];
};
export const keepEdits = (id, requests) =>
  keep(named(EDITS, id), requests.length > 0 ? JSON.stringify(requests) : null);

// The price book

export const bookKey = BOOK;
export const book = () => read(BOOK);

// keepBook keeps a book; an empty text takes the kept one away. aside is for one
// that could not be read and has to give way.
export function keepBook(text, { aside = null } = {}) {
  if (aside !== null) keep(BOOK_ASIDE, aside);
  return keep(BOOK, text === "" ? null : text);
}

export const booksKey = BOOKS;
export const books = () => read(BOOKS);
export const setBooksAside = (text) => keep(BOOKS_ASIDE, text);
export const keepBooks = (text) => keep(BOOKS, text);

// The tab

export const tab = () => parse(read(TAB, "sessionStorage")) ?? {};
export const setTab = (state) => write(TAB, JSON.stringify(state), "sessionStorage");
export const talk = () => read(TALK, "sessionStorage") ?? "";
export const setTalk = (section) => write(TALK, section || null, "sessionStorage");
