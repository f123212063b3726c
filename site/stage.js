// The picture: pointer, touch and keys on the page's own element move the lamp
// or the viewer in the frame below it. The poster stays until the frame has
// drawn; where it never does, or does not take a scene, the engine draws still
// pictures. A frame that dies is replaced.
import { bytesOf } from "./files.js";
import { saveFile } from "./files.js";
import { watchHandles } from "./handles.js";
import { startPreview } from "./preview.js";
import { watchPulse } from "./pulse.js";
import { announceMessage } from "./status.js";
import { makeStills } from "./stills.js";
import { trustedHTML } from "./trusted.js";
import { watchPointer } from "./pointer.js";

const MOST_STARTS = 2; // without a picture between them
const MOST_DEATHS = 8; // of frames that had drawn: beyond it something kills them all
const NOTE_MS = 8_000; // how long a note of what is over stays
const REST_MS = 400; // a pause after which a new view is kept
const POINT_MS = 250; // a rest of the mouse over a block
const KEY_STEP = 0.05; // of the picture's height
const KEY_ZOOM = 1.15;

const VIEW_FIELDS = {
  yaw: "view.camera.yaw",
  pitch: "view.camera.pitch",
  zoom: "view.camera.zoom",
  azimuth: "view.lamp.azimuth",
  elevation: "view.lamp.elevation",
};

const fileName = (name) => `${name.replaceAll(/[^\p{L}\p{N}]+/gu, "-")}.png`;

// makeStage returns {show, empty, pictured, forget, another, mode, zoom, shoot, picture, size, sweep}. ask sends a
// request to the engine; viewed(fields) is told the paths and values of a new view.
export function makeStage({ ask, viewed }) {
  const stage = document.getElementById("stage");
  const pad = document.getElementById("pad");
  const mount = document.getElementById("preview");
  const image = document.getElementById("still");
  const line = stage.appendChild(document.createElement("p"));
  line.className = "stage-note";
  line.hidden = true;
  const hint = stage.appendChild(document.createElement("p"));
  hint.className = "stage-note point";
  hint.hidden = true;
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const base = import.meta.url;
  let mode = "lamp";
  let preview = null;
  let pulse = null; // of the preview
  let begun = false; // the preview has drawn
  let starts = 0;
  let deaths = 0;
  let failed = false;
  let refused = false; // the last scene was, by the frame
  let encoded = ""; // the last scene, as it came
  let scene = null; // and its bytes, for a new frame
  let seen = null; // a view that the design does not hold yet
  let rest = 0;
  let said = ""; // the note that stands there
  let noted = 0;
  let shot = null; // who waits for a picture to save
  let drawn = Promise.resolve(); // when there is a picture of the last scene
  let drew = null; // fulfils that promise, while it is open
  let dragging = false; // the engine is at a drag of a still picture
  let moved = { dx: 0, dy: 0, factor: 1 }; // meanwhile
  let foreign = false; // another design is being opened
  let pulling = false; // somebody changes a size: the picture follows at once
  const stills = makeStills({ url: new URL("picture-worker.js", base), drawn: showStill, impossible });

  function start() {
    starts += 1;
    begun = false;
    preview = startPreview({
      mount,
      trustedHTML,
      wasmURL: new URL("preview.wasm", base).href,
      execURL: new URL("wasm_exec.js", base).href,
      frameScriptURL: new URL("preview-frame.js", base).href,
      title: mount.dataset.title,
      onMessage: receive,
    });
    pulse = watchPulse({ element: stage, ask: () => preview.send({ type: "ask" }), dead: gone });
    send();
  }

  function send() {
    refused = false;
    preview.send({ type: "scene", bytes: scene.slice().buffer, keepView: seen !== null, smooth: !still.matches && !pulling });
    pulse.sent();
  }

  function receive(message) {
    const drawnNow = message.type === "sharp" || message.type === "drawn";
    const answered = drawnNow || message.type === "refused";
    pulse.heard(answered);
    if (answered) {
      begun = true;
      starts = 0;
    }
    if (drawnNow) {
      refused = false;
      stills.rest();
      arrived();
      if (said !== "picture-restarted") note("");
    } else if (message.type === "refused") {
      refused = true;
      drawStill();
    } else if (message.type === "view") {
      look(message);
    } else if (message.type === "shot") {
      shot?.resolve(message);
      shot = null;
    } else if (message.type === "lost" || message.type === "error") {
      gone();
    }
  }

  // gone ends a frame that is dead or lost. The next one gets the present scene;
  // meanwhile, and where there is none, the engine draws that.
  function gone() {
    if (begun) deaths += 1;
    pulse.stop();
    preview.stop();
    shot?.reject(new Error("the frame is gone"));
    shot = null;
    preview = null;
    refused = false;
    failed = starts >= MOST_STARTS || deaths > MOST_DEATHS;
    if (failed) note("picture-failed");
    else if (begun) note("picture-restarted");
    if (!failed) start();
    drawStill();
  }

  // shoot draws the picture anew, so that its longer side has so many pixels, and
  // saves it as a file.
  async function shoot(longest, name) {
    const picture = await pictureOf(longest, "image/png");
    if (picture) saveFile({ name: fileName(name), type: picture.type, text: picture });
  }

  // pictureOf draws the picture anew; null where it cannot be drawn.
  async function pictureOf(longest, type) {
    const box = stage.getBoundingClientRect();
    const k = longest / Math.max(box.width, box.height);
    const size = { width: Math.round(box.width * k), height: Math.round(box.height * k) };
    note("picture-shooting");
    const picture = await (isStill() ? stills.shoot(encoded, size) : frameShot(size, type)).catch(() => null);
    note(picture ? "" : "picture-not-shot");
    return picture;
  }

  async function frameShot(size, type) {
    const { width, height, bytes } = await new Promise((resolve, reject) => {
      shot?.reject(new Error("another picture was asked for"));
      shot = { resolve, reject };
      toFrame({ type: "shoot", ...size });
    });
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    canvas.getContext("2d").putImageData(new ImageData(new Uint8ClampedArray(bytes), width, height), 0, 0);
    return new Promise((resolve) => {
      canvas.toBlob(resolve, type, 0.9);
    });
  }

  // note says a sentence in a corner of the picture, and to a screen reader.
  function note(key) {
    clearTimeout(noted);
    said = key;
    line.hidden = key === "";
    if (key === "") return;
    line.textContent = document.querySelector(`#messages [data-message="${key}"]`).textContent;
    announceMessage(key);
    if (key === "picture-restarted") noted = setTimeout(note, NOTE_MS, "");
  }

  // The frame has a new view: it is kept when it rests.
  function look(view) {
    seen = view;
    handles.hide();
    clearTimeout(rest);
    rest = setTimeout(keepView, REST_MS);
  }

  async function keepView() {
    const view = seen;
    await viewed(Object.entries(VIEW_FIELDS).map(([key, path]) => [path, String(Math.round(view[key] * 100) / 100)]));
    if (seen === view) seen = null;
    handles.place();
  }

  const isStill = () => failed || refused;
  const live = () => mount.querySelector(".preview-live") !== null;

  // drawStill has the engine draw what the moving picture does not show (yet).
  function drawStill() {
    if (!drew) {
      drawn = new Promise((resolve) => {
        drew = resolve;
      });
    }
    stills.want(encoded, stage.getBoundingClientRect());
  }

  // veil dims a still picture of another panel.
  function veil(on) {
    stage.classList.toggle("veiled", on);
    if (on) note("picture-coming");
    else if (said === "picture-coming") note("");
  }

  function arrived() {
    veil(false);
    drew?.();
    drew = null;
  }

  function showStill(address) {
    document.querySelector("#poster source")?.remove();
    image.className = "drawn";
    image.src = address;
    if (refused && said !== "picture-refused") note("picture-refused");
    arrived();
  }

  function impossible() {
    if (isStill()) note("picture-impossible");
    arrived();
  }

  function toFrame(message) {
    if (!preview) return;
    preview.send(message);
    pulse.sent();
  }

  function move(kind, dx, dy) {
    if (isStill()) drag(kind, { dx, dy });
    else toFrame({ type: kind, dx, dy });
  }

  function zoom(factor) {
    if (isStill()) drag(mode, { factor });
    else toFrame({ type: "zoom", factor });
  }

  // drag has the engine move eye or lamp of a still picture, one step at a time.
  async function drag(kind, { dx = 0, dy = 0, factor = 1 }) {
    moved = { dx: moved.dx + dx, dy: moved.dy + dy, factor: moved.factor * factor };
    if (dragging) return;
    dragging = true;
    const step = moved;
    moved = { dx: 0, dy: 0, factor: 1 };
    if (step.factor !== 1) await ask({ op: "drag", kind: "zoom", factor: step.factor });
    if (step.dx !== 0 || step.dy !== 0) await ask({ op: "drag", kind, dx: step.dx, dy: step.dy });
    dragging = false;
    if (moved.dx !== 0 || moved.dy !== 0 || moved.factor !== 1) drag(mode, {});
  }

  const keys = {
    ArrowLeft: () => move(mode, -KEY_STEP, 0),
    ArrowRight: () => move(mode, KEY_STEP, 0),
    ArrowUp: () => move(mode, 0, -KEY_STEP),
    ArrowDown: () => move(mode, 0, KEY_STEP),
    "+": () => zoom(KEY_ZOOM),
    "=": () => zoom(KEY_ZOOM),
    "-": () => zoom(1 / KEY_ZOOM),
  };
  pad.addEventListener("keydown", (event) => {
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  });
  // What lies under a mouse that rests is said in the corner of the picture.
  let pointing = 0;
  pad.addEventListener("pointermove", (event) => {
    clearTimeout(pointing);
    hint.hidden = true;
    if (event.pointerType !== "mouse" || event.buttons !== 0 || seen !== null) return;
    const box = stage.getBoundingClientRect();
    const place = { dx: event.clientX - box.left, dy: event.clientY - box.top };
    const size = { width: Math.round(box.width), height: Math.round(box.height) };
    pointing = setTimeout(async () => {
      const answer = await ask({ op: "point", ...place, ...size }).catch(() => null);
      hint.textContent = answer?.point ?? "";
      hint.hidden = hint.textContent === "";
    }, POINT_MS);
  });
  pad.addEventListener("pointerleave", () => {
    clearTimeout(pointing);
    hint.hidden = true;
  });
  const handles = watchHandles({ stage, ask, held: (on) => { pulling = on; } });
  new ResizeObserver(() => { if (scene) handles.place(); }).observe(stage);
  watchPointer(pad, { drag: (dx, dy) => move(mode, dx, dy), zoom });

  return {
    // show takes the scene as text; one that is shown already costs nothing.
    // posted says that the poster is a picture of it.
    show(base64, { posted = false } = {}) {
      if (base64 === encoded) return;
      const first = scene === null;
      encoded = base64;
      scene = bytesOf(base64);
      if (failed || (!posted && !live())) {
        drawStill();
        if (foreign) veil(true);
      }
      if (preview) send();
      else if (first) start();
      handles.place();
    },
    // empty reports whether there was no scene yet.
    empty: () => scene === null,
    // pictured promises that there is a picture of the last scene.
    pictured: () => drawn,
    // forget drops a view that was not kept yet: another design is coming.
    forget() {
      clearTimeout(rest);
      seen = null;
    },
    // another says that the next scene is of another design, or that it was not.
    another(is) {
      foreign = is;
    },
    mode(to) {
      mode = to;
    },
    zoom,
    shoot,
    picture: (longest) => pictureOf(longest, "image/jpeg"),
    // size is that of the picture on the page.
    size() {
      const { width, height } = stage.getBoundingClientRect();
      return { width: Math.round(width), height: Math.round(height) };
    },
    // sweep shows the light of a day, or a walk past the panels.
    sweep(kind) {
      if (isStill()) note(refused ? "picture-refused" : "picture-failed");
      else toFrame({ type: "sweep", kind });
    },
  };
}
