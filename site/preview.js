// Page side of the preview: makes the sandboxed frame, hands it the module and
// carries messages. What is drawn is decided in Go; when to give up on a frame
// and start another is decided by the caller.

const text = async (url) => {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  return answer.text();
};

const bytes = async (url) => {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  return answer.arrayBuffer();
};

// The two scripts must stand exactly between their tags: the page's policy
// allows them by the hash of their text.
const frameDocument = (exec, script) =>
  `<!doctype html><html><head><meta charset="utf-8"></head><body>` +
  `<script>${exec}</script><script>${script}</script></body></html>`;

// What the frame says, with its fields. The frame is a stranger: whatever else
// comes from it is dropped.
const MESSAGES = {
  loaded: {},
  ready: {},
  alive: {},
  sharp: { scene: "number", ms: "number" },
  drawn: { scene: "number", ms: "number", width: "number", height: "number", coarse: "number" },
  view: { yaw: "number", pitch: "number", zoom: "number", azimuth: "number", elevation: "number" },
  shot: { width: "number", height: "number", bytes: "object" },
  pixels: { width: "number", height: "number", bytes: "object" },
  refused: { scene: "number", message: "string" },
  error: { message: "string" },
  lost: {},
};

const understood = (message) => {
  if (message === null || typeof message !== "object" || typeof message.type !== "string") return false;
  if (!Object.hasOwn(MESSAGES, message.type)) return false;
  return Object.entries(MESSAGES[message.type]).every(
    ([name, kind]) => typeof message[name] === kind && (kind !== "number" || Number.isFinite(message[name])),
  );
};

const makeFrame = (title) => {
  const frame = document.createElement("iframe");
  frame.setAttribute("sandbox", "allow-scripts");
  frame.setAttribute("aria-hidden", "true");
  frame.setAttribute("tabindex", "-1");
  frame.className = "preview-frame";
  frame.title = title;
  frame.inert = true;
  return frame;
};

// startPreview puts a frame into mount and starts the module in it. onMessage
// gets every message of the frame that makes sense, and {type: "error", message}
// when it cannot be loaded. Messages sent before the module is ready wait; of
// waiting scenes only the last is kept. What it says of an earlier scene than
// the last is dropped. The frame has the class "preview-live"
// while it shows the last scene: from its sharp picture on ("sharp" comes with
// one sample a pixel, "drawn" with all) until a scene is refused.
export function startPreview({ mount, trustedHTML, wasmURL, execURL, frameScriptURL, onMessage, title = "" }) {
  const frame = makeFrame(title);
  const wasm = bytes(wasmURL);
  let loaded = false;
  let ready = false;
  let stopped = false;
  let scenes = 0; // that were sent
  let waiting = [];

  const fail = (error) => {
    if (!stopped) onMessage({ type: "error", message: error.message });
  };
  const post = (message, transfer = []) => frame.contentWindow.postMessage(message, "*", transfer);

  // The density is how many dots of the display a pixel of the page has. It changes
  // when the window moves to another display and when the page is enlarged. The
  // query says so, but not in every browser: each message looks too.
  let density = 1; // that the frame knows of
  let query = null; // that holds as long as the density does
  const watchDensity = () => {
    query?.removeEventListener("change", watchDensity);
    query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    query.addEventListener("change", watchDensity);
    if (density === devicePixelRatio) return;
    density = devicePixelRatio;
    post({ type: "density", ratio: density });
  };

  const receive = (event) => {
    if (event.source !== frame.contentWindow || stopped) return;
    const message = event.data;
    if (!understood(message)) return;
    if (message.scene !== undefined && message.scene !== scenes) return;
    if (message.type === "loaded" && !loaded) {
      loaded = true;
      wasm.then((module) => stopped || post({ type: "boot", wasm: module }, [module])).catch(fail);
    }
    if (message.type === "ready" && !ready) {
      ready = true;
      watchDensity();
      waiting.forEach((held) => post(held));
      waiting = [];
    }
    if (message.type === "sharp" || message.type === "drawn") frame.classList.add("preview-live");
    if (message.type === "refused") frame.classList.remove("preview-live");
    onMessage(message);
  };

  window.addEventListener("message", receive);
  Promise.all([text(execURL), text(frameScriptURL)])
    .then(([exec, script]) => {
      if (stopped) return;
      frame.srcdoc = trustedHTML(frameDocument(exec, script));
      mount.append(frame);
    })
    .catch(fail);

  return {
    send(message) {
      if (stopped) return;
      if (message.type === "scene") {
        scenes += 1;
        message = { ...message, scene: scenes };
      }
      if (ready) {
        if (density !== devicePixelRatio) watchDensity();
        post(message);
        return;
      }
      if (message.type === "scene") waiting = waiting.filter((held) => held.type !== "scene");
      waiting.push(message);
    },
    stop() {
      if (stopped) return;
      if (ready) post({ type: "stop" });
      stopped = true;
      query?.removeEventListener("change", watchDensity);
      window.removeEventListener("message", receive);
      frame.remove();
    },
  };
}
