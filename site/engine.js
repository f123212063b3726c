// Carries requests to the engine's worker and answers back. A worker that dies
// or falls silent is replaced by another, which is given the price book and the
// last good design.
import { startWorker } from "./trusted.js";

// The slowest honest answer, measured of the module under Node on a busy desk
// computer, is an edit that takes 1.9 s (the maker's whole page, for the first
// time). A slow phone is taken to need six times as long (common practice, no
// source), and some are slower yet.
const ANSWER_MS = 15_000;
const START_MS = 30_000; // a further worker finds its module kept by the browser
const LATE_MS = 2_000; // from when on a person is told that work is under way
const ASLEEP_MS = 1_000; // an alarm that is later than this rang in a computer that slept
const MOST_RESTARTS = 3; // without one good answer between them

const page = document.documentElement;

const today = () => {
  const now = new Date();
  const two = (n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

// What changes a job is meant for the one that is shown when it is done, even if another is
// being opened meanwhile. The price book and the view are of all jobs.
const isOfJob = ({ op, name = "", path = "" }) =>
  (op === "act" || op === "set") && !/^(book|view)\./.test(path) && !/^(book-|example-book)/.test(name);

// startEngine returns {ask, unanswered, text, dead}. ask(request) promises the answer;
// it rejects when the worker died over this very request. restored gets each
// answer with which a new worker takes up the last good design, and the request
// that the old one died over, if any; failed is called once, when there is no
// hope; late(true) says that an answer takes long.
// talk is that of an answer of an earlier visit of this tab, and heldTalk is told of any other.
export function startEngine({ url, talk, heldTalk, restored, failed, late }) {
  let worker;
  let ready = false;
  let dead = false;
  let restarts = 0;
  let lastID = 0;
  let text = "";
  let book = "";
  let shelf = ""; // further price books
  let opening = null; // of this worker; null: not known yet
  const records = new Map(); // of the work on each opening of a design, as the engine writes them
  let section = "";
  let editing = false; // the price book is open
  let greeted = false; // this worker knows whose page it is
  let alarm = 0;
  let lateAlarm = 0;
  const waiting = []; // not yet sent
  const pending = new Map(); // sent, by id, oldest first

  function start() {
    ready = false;
    greeted = false;
    const own = startWorker(url, () => own === worker && !dead && restart());
    worker = own;
    own.addEventListener("message", (event) => own === worker && receive(event.data));
    own.addEventListener("error", (event) => {
      event.preventDefault();
      if (own === worker) restart();
    });
    watch();
  }

  function receive(message) {
    if (message.type === "ready") {
      ready = true;
      waiting.splice(0).forEach(send);
      watch();
    } else if (message.type === "failed") {
      restart();
    } else {
      settle(JSON.parse(new TextDecoder().decode(message.bytes)));
    }
  }

  function settle(answer) {
    restarts = 0;
    const one = pending.get(answer.id);
    pending.delete(answer.id);
    watch();
    if (answer.text) text = answer.text;
    if (answer.book !== undefined) book = answer.book;
    if (answer.shelf !== undefined) shelf = answer.shelf;
    if (answer.text) opening = answer.opening;
    if (answer.revision) editing = answer.editing === true;
    if (answer.revision && (answer.talk ?? "") !== talk) {
      talk = answer.talk ?? "";
      heldTalk(talk);
    }
    if (answer.record) records.set(opening, answer.record);
    if (answer.section) section = answer.section;
    one?.resolve(answer);
  }

  function send(one) {
    lastID += 1;
    pending.set(lastID, one);
    const { workshop, maker, prices } = page.dataset;
    const where = { site: location.origin + location.pathname, language: page.lang, ...(!greeted && { workshop, maker, prices, talk }) };
    greeted = true;
    const bytes = new TextEncoder().encode(JSON.stringify({ ...one.request, of: one.of, ...where, today: today(), id: lastID })).buffer;
    worker.postMessage({ bytes }, [bytes]);
  }

  // limit is how long what is awaited now may take. The first worker may take
  // any time to come over a slow network: opening.js says so.
  function limit() {
    if (!ready) return restarts > 0 ? START_MS : Infinity;
    return pending.size === 0 ? Infinity : ANSWER_MS;
  }

  function watch() {
    clearTimeout(alarm);
    clearTimeout(lateAlarm);
    late(false);
    const ms = limit();
    if (ms === Infinity) return;
    const due = performance.now() + ms;
    lateAlarm = setTimeout(() => late(true), LATE_MS);
    alarm = setTimeout(() => (performance.now() > due + ASLEEP_MS ? watch() : restart()), ms);
  }

  // The oldest request is the one that the worker died over: it is not tried
  // again. Those behind it are.
  function restart() {
    worker.terminate();
    const record = records.get(opening);
    opening = null;
    const [fatal, ...rest] = pending.values();
    pending.clear();
    waiting.unshift(...rest);
    for (const one of waiting) delete one.of; // the openings are counted anew
    restarts += 1;
    if (restarts > MOST_RESTARTS) {
      giveUp(fatal);
      return;
    }
    const again = [];
    if (shelf) again.push({ op: "open", text: shelf, from: "saved" });
    if (book) again.push({ op: "open", text: book, from: "saved" });
    if (text) again.push({ op: "open", text, from: "saved" });
    if (record) again.push({ op: "open", text: record, from: "saved" });
    records.clear();
    if (editing) again.push({ op: "act", name: "book-open" });
    if (section) again.push({ op: "section", name: section });
    if (again.length === 0) again.push({ op: "hello" });
    const resolve = (answer) => restored(answer, fatal?.request);
    waiting.unshift(...again.map((request) => ({ request, resolve, reject() {}, own: true })));
    fatal?.reject(new Error("engine: restarted"));
    start();
  }

  function giveUp(fatal) {
    dead = true;
    clearTimeout(alarm);
    clearTimeout(lateAlarm);
    late(false);
    failed();
    for (const one of [fatal, ...waiting.splice(0)]) one?.reject(new Error("engine: failed"));
  }

  start();
  return {
    ask(request) {
      if (dead) return Promise.reject(new Error("engine: failed"));
      return new Promise((resolve, reject) => {
        const one = { request, resolve, reject, of: isOfJob(request) ? (opening ?? undefined) : undefined };
        if (!ready) {
          waiting.push(one);
          return;
        }
        send(one);
        if (pending.size === 1) watch();
      });
    },
    // unanswered are the requests whose answer is still to come, in order.
    unanswered: () => [...pending.values(), ...waiting].filter((one) => !one.own).map((one) => one.request),
    dead: () => dead,
    // text is the last good document, as the engine writes it, and record what was noted
    // of the work on it; empty: nothing.
    text: () => text,
    record: () => records.get(opening) ?? "",
  };
}
