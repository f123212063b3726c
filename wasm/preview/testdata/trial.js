// The page of the preview's test: starts the preview under the strict policy
// and keeps what the frame says, for the test to wait for.
import { startPreview } from "./preview.js";

const policy = window.trustedTypes.createPolicy("blockfield", { createHTML: (html) => html });
const said = [];
const waiting = [];
const violations = [];

document.addEventListener("securitypolicyviolation", (event) => {
  violations.push(`${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
});

const onMessage = (message) => {
  said.push(message);
  for (const wait of waiting.splice(0)) wait();
};

const start = () => startPreview({
  mount: document.querySelector("#stage"),
  trustedHTML: (html) => policy.createHTML(html),
  wasmURL: "preview.wasm",
  execURL: "wasm_exec.js",
  frameScriptURL: "preview-frame.js",
  title: "trial",
  onMessage,
});

let preview = start();

// next resolves with the next message of a type from number from on.
const next = async (type, from) => {
  for (;;) {
    const found = said.slice(from).find((message) => message.type === type || message.type === "error");
    if (found && found.type === "error" && type !== "error") throw new Error(found.message);
    if (found) return found;
    await new Promise((resolve) => waiting.push(resolve));
  }
};

const ask = (message, answer) => {
  const from = said.length;
  preview.send(message);
  return next(answer, from);
};

const base64 = (buffer) => new Promise((resolve) => {
  const reader = new FileReader();
  reader.onload = () => resolve(reader.result.split(",")[1]);
  reader.readAsDataURL(new Blob([buffer]));
});

const trial = {
  violations,
  said: () => said.map((message) => message.type),
  ready: () => next("ready", 0),
  ask,
  async scene(name, keepView = false) {
    const bytes = await (await fetch(name)).arrayBuffer();
    return ask({ type: "scene", bytes, keepView }, "drawn");
  },
  // resize gives the frame the size of a class and waits for its new picture.
  resize(name) {
    const from = said.length;
    document.querySelector("iframe").classList.add(name);
    return next("drawn", from);
  },
  // hideAndShow sends a scene to a frame that is not shown, and shows it again.
  async hideAndShow(name) {
    const frame = document.querySelector("iframe");
    frame.classList.add("none");
    const from = said.length;
    preview.send({ type: "scene", bytes: await (await fetch(name)).arrayBuffer() });
    await new Promise((resolve) => setTimeout(resolve, 300));
    frame.classList.remove("none");
    return next("drawn", from);
  },
  heard: (type) => next(type, 0),
  sweep: (kind) => preview.send({ type: "sweep", kind }),
  async pixels() {
    const { width, height, bytes } = await ask({ type: "pixels" }, "pixels");
    return { width, height, pixels: await base64(bytes) };
  },
  async shot(wide, high) {
    const { width, height, bytes } = await ask({ type: "shoot", width: wide, height: high }, "shot");
    return { width, height, pixels: await base64(bytes) };
  },
  // drag turns the view with every frame of the page for a while and reports
  // how many pictures that made.
  async drag(seconds) {
    const from = said.length;
    const start = performance.now();
    let events = 0;
    while (performance.now() - start < 1000 * seconds) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      preview.send({ type: "orbit", dx: 0.004 * (events % 40 < 20 ? 1 : -1), dy: 0.001 });
      events += 1;
    }
    const stopped = performance.now();
    await next("drawn", said.length);
    const settleMs = performance.now() - stopped;
    const drawn = said.slice(from).filter((message) => message.type === "drawn");
    return { events, coarse: drawn.reduce((sum, { coarse }) => sum + coarse, 0), settleMs };
  },
  // tremble moves the view by next to nothing with every frame of the page, so that
  // what is on screen stays the coarse picture of a drag.
  tremble() {
    preview.send({ type: "orbit", dx: 1e-6, dy: 0 });
    requestAnimationFrame(() => this.tremble());
  },
  // fromStranger has another frame of this page post a message to the preview's.
  fromStranger(message) {
    const stranger = document.createElement("iframe");
    stranger.src = "stranger";
    document.body.append(stranger);
    return new Promise((resolve) => {
      stranger.onload = () => {
        stranger.contentWindow.tell(document.querySelector("#stage iframe").contentWindow, message);
        resolve();
      };
    });
  },
  restart() {
    preview.stop();
    said.length = 0;
    preview = start();
  },
};
window.trial = trial;
