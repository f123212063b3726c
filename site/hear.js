// Has the sound of the open design worked out in a second worker, one design at
// a time. The newest wins: what comes of an older one is dropped, and a worker
// that takes long over it gives way to another. Whatever happens to this worker,
// edits go on.
import { insert, startWorker } from "./trusted.js";

const OVERDUE_MS = 1_000; // how long a design that is no longer wanted may keep a newer one waiting
// The slowest honest hearing: a panel of the most cells takes 3.5 s as a module
// under Node on a busy desk computer, and a slow phone is taken to need six times
// as long (common practice, no source). What takes thrice that is given up.
const HEAR_MS = 60_000;
const START_MS = 60_000; // the module is kept by the browser: the edits' worker runs it
const MOST_FAILURES = 3; // in a row

// makeHearing calls heard(answer) with what was heard of the newest design, and
// deaf(revision) when that one could not be.
export function makeHearing({ url, heard, deaf }) {
  let worker = null;
  let begun = false; // the page is alive: there is time for sound
  let ready = false;
  let newest = null; // {text, revision} that the page shows
  let waiting = null; // the same, not yet sent
  let busy = null; // {revision, since} that the worker is at
  let failures = 0;
  let alarm = 0;
  let pictures = []; // of what was heard last

  function start() {
    ready = false;
    worker = startWorker(url);
    const own = worker;
    own.addEventListener("message", (event) => own === worker && receive(event.data));
    own.addEventListener("error", (event) => {
      event.preventDefault();
      if (own === worker) fail();
    });
  }

  function stop() {
    clearTimeout(alarm);
    worker?.terminate();
    worker = null;
    busy = null;
  }

  function receive(message) {
    if (message.type === "ready") {
      clearTimeout(alarm);
      ready = true;
      pump();
    } else if (message.type === "failed") {
      fail();
    } else {
      settle(JSON.parse(new TextDecoder().decode(message.bytes)));
    }
  }

  function settle(answer) {
    clearTimeout(alarm);
    const { revision } = busy;
    busy = null;
    failures = 0;
    if (revision === newest.revision) {
      if (answer.ok) {
        pictures = answer.fragments ?? [];
        dress();
        heard(answer);
      } else {
        undress(revision);
      }
    }
    pump();
  }

  // pump sends what is waiting, or sees to it that it does not wait for long.
  function pump() {
    if (!begun || waiting === null) return;
    if (!worker) {
      start();
      alarm = setTimeout(fail, START_MS);
    }
    if (!ready) return;
    if (busy) {
      clearTimeout(alarm);
      alarm = setTimeout(replace, Math.max(0, busy.since + OVERDUE_MS - performance.now()));
      return;
    }
    const bytes = new TextEncoder().encode(JSON.stringify({ op: "hear", text: waiting.text })).buffer;
    busy = { revision: waiting.revision, since: performance.now() };
    waiting = null;
    worker.postMessage({ bytes }, [bytes]);
    alarm = setTimeout(fail, HEAR_MS);
  }

  function replace() {
    stop();
    pump();
  }

  // fail gives a design up that the worker died over, and says so. The next one
  // has another worker, unless it always ends like this.
  function fail() {
    const lost = busy?.revision ?? newest.revision;
    stop();
    failures += 1;
    if (waiting?.revision === lost || failures > MOST_FAILURES) waiting = null;
    if (newest.revision === lost || failures > MOST_FAILURES) undress(newest.revision);
    pump();
  }

  function undress(revision) {
    pictures = pictures.map(({ target }) => ({ target, html: "" }));
    dress();
    deaf(revision);
  }

  // dress puts the pictures into their places, where those are there and open.
  function dress() {
    for (const { target, html } of pictures) {
      const fold = document.getElementById(target)?.closest("details");
      if (!fold || fold.open) insert(target, html);
    }
  }
  document.addEventListener("toggle", dress, true);

  return {
    dress,
    // want says which design the page shows. again: what was heard of it is lost.
    want({ text, revision }, { again = false } = {}) {
      if (!text || !revision || newest?.revision === revision && !again) return;
      newest = { text, revision };
      if (failures > MOST_FAILURES) {
        undress(revision);
        return;
      }
      waiting = busy?.revision === revision ? null : newest;
      pump();
    },
    begin() {
      begun = true;
      pump();
    },
  };
}
