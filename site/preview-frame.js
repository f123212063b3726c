// The script of the preview's sandboxed frame. It carries messages between the
// page and the module (wasm/preview) and holds the browser's frame loop shut
// while nothing changes. The build puts it behind Go's wasm_exec.js in the
// frame's document; both are allowed by the hash of their exact text.
"use strict";
(() => {
  const post = (message, transfer = []) => window.parent.postMessage(message, "*", transfer);
  const fail = (error) => post({ type: "error", message: String((error && error.message) || error) });

  // The gate: the module asks for frames as always, but its request waits here
  // until wake() is called, and again after rest().
  const nextFrame = window.requestAnimationFrame.bind(window);
  const later = window.setTimeout.bind(window);
  const unlater = window.clearTimeout.bind(window);
  let open = false;
  let waiting = null;
  window.requestAnimationFrame = (callback) => {
    if (open) return nextFrame(callback);
    waiting = callback;
    return 0;
  };
  let alarm = 0;
  const wake = () => {
    unlater(alarm);
    open = true;
    if (waiting) nextFrame(waiting);
    waiting = null;
    release();
  };
  const rest = () => {
    open = false;
  };
  const nap = (ms) => {
    rest();
    unlater(alarm);
    alarm = later(wake, ms);
  };

  // At rest the module's slow timers wait too: the one that looks for a hidden
  // tab ten times a second, and those of the Go runtime. Nothing that is drawn
  // hangs on them. Short ones are part of a frame.
  const slowMs = 50;
  const held = new Map(); // by ids below zero, which no browser gives
  let lastHeld = 0;
  window.setTimeout = (callback, ms = 0, ...args) => {
    if (open || ms < slowMs) return later(callback, ms, ...args);
    lastHeld -= 1;
    held.set(lastHeld, () => later(callback, ms, ...args));
    return lastHeld;
  };
  window.clearTimeout = (id) => {
    if (!held.delete(id)) unlater(id);
  };
  const release = () => {
    for (const start of held.values()) start();
    held.clear();
  };

  // The module asks for gamepads in each frame. From the first time on a browser
  // would look at all of them hundreds of times a second.
  Object.defineProperty(window.navigator, "getGamepads", { value: () => [] });

  // What is drawn here has edges of its own making: the browser's smoothing of them
  // would multiply the work of bringing a picture to the screen.
  const { getContext } = window.HTMLCanvasElement.prototype;
  window.HTMLCanvasElement.prototype.getContext = function (kind, attributes) {
    return getContext.call(this, kind, { ...attributes, antialias: false, alpha: false, stencil: false });
  };

  window.previewHost = {
    wake,
    rest,
    nap,
    post(message) {
      if (message.bytes) {
        message.bytes = message.bytes.buffer;
        post(message, [message.bytes]);
        return;
      }
      post(message);
    },
  };

  // The module asks for the density of the display once and never again. So it is
  // told 1, and gets a body of as many pixels as the display has dots there, shrunk
  // to fit.
  Object.defineProperty(window, "devicePixelRatio", { value: 1 });
  const setDensity = (ratio) => {
    if (!(ratio > 0)) throw new Error(`preview: density ${ratio}`);
    const { style } = document.body;
    style.width = style.height = `${100 * ratio}%`;
    style.transformOrigin = "0 0";
    style.transform = `scale(${1 / ratio})`;
    window.dispatchEvent(new Event("resize"));
    wake();
  };

  // A lost context is the page's to mend: it starts a new frame. Without this
  // the module would reload the frame's document.
  window.addEventListener("webglcontextlost", (event) => {
    event.stopImmediatePropagation();
    event.preventDefault();
    rest();
    post({ type: "lost" });
  }, true);
  window.addEventListener("error", (event) => fail(event.message));
  window.addEventListener("unhandledrejection", (event) => fail(event.reason));

  let booted = false;
  const boot = async (wasm) => {
    if (booted) return;
    booted = true;
    const go = new window.Go();
    const { instance } = await WebAssembly.instantiate(wasm, go.importObject);
    wake(); // the module needs its first frames to set itself up
    await go.run(instance);
    fail("preview: the module ended");
  };

  const receive = (message) => {
    const preview = window.preview;
    switch (message.type) {
      case "boot":
        return boot(message.wasm).catch(fail);
      case "scene":
        return preview.scene(new Uint8Array(message.bytes), message.keepView === true, message.smooth === true, Number(message.scene));
      case "orbit":
        return preview.orbit(Number(message.dx), Number(message.dy));
      case "zoom":
        return preview.zoom(Number(message.factor));
      case "lamp":
        return preview.lamp(Number(message.dx), Number(message.dy));
      case "density":
        return setDensity(Number(message.ratio));
      case "pixels":
        return preview.pixels();
      case "sweep":
        return preview.sweep(String(message.kind));
      case "shoot":
        return preview.shoot(Number(message.width), Number(message.height));
      case "ask":
        return post({ type: "alive" });
      case "stop":
        return rest();
    }
    throw new Error(`preview: unknown message ${message.type}`);
  };

  window.addEventListener("message", (event) => {
    if (event.source !== window.parent) return;
    try {
      receive(event.data);
    } catch (error) {
      fail(error);
    }
  });
  post({ type: "loaded" });
})();
