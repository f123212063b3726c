// Long work of the engine in a further worker of its own, so that an edit never
// waits for it: one piece at a time, and the newest wins. Whatever happens to this
// worker, edits go on.
import { startWorker } from "./trusted.js";

const START_MS = 60_000; // the module is kept by the browser: the edits' worker runs it
const MOST_FAILURES = 3; // in a row

// makeHelper returns {want, stop}. A piece of work is {key, request, limitMs}, and
// whatever its owner likes to keep with it. done(answer, work) is told of its
// answer, failed(work) that there will be none. Work that takes longer than
// overdueMs gives way to newer work, without a word.
export function makeHelper({ url, done, failed, overdueMs = Infinity }) {
  let worker = null;
  let ready = false;
  let waiting = null; // work, not yet sent
  let busy = null; // {work, since} that the worker is at
  let failures = 0;
  let alarm = 0;

  function start() {
    ready = false;
    const own = startWorker(url, () => own === worker && fail());
    worker = own;
    own.addEventListener("message", (event) => own === worker && receive(event.data));
    own.addEventListener("error", (event) => {
      event.preventDefault();
      if (own === worker) fail();
    });
    alarm = setTimeout(fail, START_MS);
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
    const { work } = busy;
    busy = null;
    failures = 0;
    done(answer, work);
    pump();
  }

  // pump sends what is waiting, or sees to it that it does not wait for long.
  function pump() {
    if (waiting === null) return;
    if (!worker) start();
    if (!ready) return;
    if (!busy) {
      const bytes = new TextEncoder().encode(JSON.stringify(waiting.request)).buffer;
      busy = { work: waiting, since: performance.now() };
      waiting = null;
      worker.postMessage({ bytes }, [bytes]);
      alarm = setTimeout(fail, busy.work.limitMs);
    } else if (overdueMs < Infinity) {
      clearTimeout(alarm);
      alarm = setTimeout(replace, Math.max(0, busy.since + overdueMs - performance.now()));
    }
  }

  function replace() {
    stop();
    pump();
  }

  // fail gives up what the worker died over. The next piece has another worker,
  // unless it always ends like this.
  function fail() {
    const lost = [busy?.work ?? waiting].filter(Boolean); // a worker may die at rest
    stop();
    failures += 1;
    if (failures > MOST_FAILURES && waiting) lost.push(waiting);
    if (lost.includes(waiting)) waiting = null;
    new Set(lost).forEach(failed);
    pump();
  }

  return {
    want(work) {
      if (failures > MOST_FAILURES) {
        failed(work);
        return;
      }
      waiting = busy?.work.key === work.key ? null : work;
      pump();
    },
    stop() {
      waiting = null;
      stop();
    },
  };
}
