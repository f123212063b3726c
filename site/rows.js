// The screen for the bench: one row of the lay-up and nothing else. The engine says
// what stands on it; this carries taps and keys, and keeps the screen awake.

// What a hand in a glove, a foot switch or a page turner sends.
const KEYS = {
  " ": "next", Enter: "next", ArrowRight: "next", ArrowDown: "next", PageDown: "next",
  ArrowLeft: "back", ArrowUp: "back", Backspace: "back", PageUp: "back", Escape: "leave",
};

// makeRows works in the element place; ask sends a request, left is called when the
// screen is closed. others are what it covers.
export function makeRows({ place, others, ask, left }) {
  let on = false;
  let busy = false; // one step after another, so that none is lost
  let awake = null;

  async function keepAwake() {
    try {
      awake = await navigator.wakeLock.request("screen");
    } catch {
      awake = null; // not in this browser, or not now
    }
    note();
  }

  function note() {
    const line = place.querySelector(".rows-wake");
    if (line) line.hidden = awake !== null;
  }

  function cover(covered) {
    on = covered;
    place.hidden = !covered;
    document.body.classList.toggle("at-rows", covered);
    for (const other of others) other.inert = covered;
  }

  async function step(name) {
    if (busy) return;
    if (name === "leave") {
      close();
      left();
      return;
    }
    const button = place.querySelector(`[data-row="${name}"]`);
    if (button?.getAttribute("aria-disabled") === "true") return;
    busy = true;
    await ask({ op: "row", name });
    busy = false;
    note();
  }

  function close() {
    if (!on) return;
    cover(false);
    awake?.release();
    awake = null;
  }

  place.addEventListener("click", ({ target }) => {
    const button = target.closest("[data-row]");
    if (button) step(button.dataset.row);
  });
  document.addEventListener("keydown", (event) => {
    const { key, target } = event;
    if (!on || event.ctrlKey || event.metaKey || event.altKey || !(key in KEYS)) return;
    // A button that has the focus answers to its own keys.
    if (target.closest("button") && (key === " " || key === "Enter")) return;
    event.preventDefault();
    if (!event.repeat) step(KEYS[key]);
  });
  document.addEventListener("visibilitychange", () => {
    if (on && document.visibilityState === "visible") keepAwake();
  });

  return {
    async open() {
      if (on) return;
      cover(true);
      await ask({ op: "row" });
      (place.querySelector("#rows-next") ?? place.querySelector("#rows-leave"))?.focus({ preventScroll: true });
      keepAwake();
    },
    close,
  };
}
