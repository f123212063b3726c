// Carries requests to the engine's worker and answers back. A worker that dies
// or falls silent is replaced by another, which is given the last good design.
import { startWorker } from "./trusted.js";

const SILENCE_MS = 20_000; // longest that an answer may take
const MOST_RESTARTS = 3; // without one good answer between them

// startEngine returns {ask}. ask(request) promises the answer; it rejects when
// the worker died over this very request. restored gets the answers with which a
// new worker takes up the last good design.
export function startEngine({ url, restored, failed }) {
  let worker;
  let ready = false;
  let restarts = 0;
  let lastID = 0;
  let text = "";
  let section = "";
  let alarm = 0;
  const waiting = []; // not yet sent
  const pending = new Map(); // sent, by id, oldest first

  function start() {
    ready = false;
    worker = startWorker(url);
    const own = worker;
    own.addEventListener("message", (event) => own === worker && receive(event.data));
    own.addEventListener("error", (event) => {
      event.preventDefault();
      if (own === worker) restart();
    });
  }

  function receive(message) {
    if (message.type === "ready") {
      ready = true;
      flush();
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
    if (answer.section) section = answer.section;
    one?.resolve(answer);
  }

  function send(one) {
    lastID += 1;
    pending.set(lastID, one);
    const bytes = new TextEncoder().encode(JSON.stringify({ ...one.request, id: lastID })).buffer;
    worker.postMessage({ bytes }, [bytes]);
    watch();
  }

  function flush() {
    waiting.splice(0).forEach(send);
  }

  function watch() {
    clearTimeout(alarm);
    if (pending.size > 0) alarm = setTimeout(restart, SILENCE_MS);
  }

  // The oldest request is the one that the worker died over: it is not tried
  // again. Those behind it are.
  function restart() {
    clearTimeout(alarm);
    worker.terminate();
    const [fatal, ...rest] = pending.values();
    pending.clear();
    waiting.unshift(...rest);
    restarts += 1;
    if (restarts > MOST_RESTARTS) {
      fatal?.reject(new Error("engine: failed"));
      waiting.splice(0).forEach((one) => one.reject(new Error("engine: failed")));
      failed();
      return;
    }
    const again = [];
    if (text) again.push({ op: "open", text, from: "saved" });
    if (section) again.push({ op: "section", name: section });
    waiting.unshift(...again.map((request) => ({ request, resolve: restored, reject() {} })));
    fatal?.reject(new Error("engine: restarted"));
    start();
  }

  start();
  return {
    ask(request) {
      return new Promise((resolve, reject) => {
        const one = { request, resolve, reject };
        if (ready) send(one);
        else waiting.push(one);
      });
    },
  };
}
