// Panels on the drawing of their wall: pointer and keys become requests, in the
// drawing's own units, and the engine decides where a panel comes to lie.

const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const FINE = 0.1; // says that Shift is held

// watchWalls returns {dress}, to be called when a section was drawn anew. Drawings are
// replaced while a panel is moved; the pads that they stand in stay.
export function watchWalls({ root, ask }) {
  const known = new WeakSet();

  // Moves add up while one is under way. What is returned is kept when all are done,
  // so that letting go waits for the last of them.
  function mover() {
    const sum = { dx: 0, dy: 0 };
    let running = null;
    async function run() {
      while (sum.dx !== 0 || sum.dy !== 0) {
        const { dx, dy } = sum;
        sum.dx = 0;
        sum.dy = 0;
        await ask({ op: "place", kind: "move", dx, dy });
      }
    }
    return (dx, dy) => {
      sum.dx += dx;
      sum.dy += dy;
      running ??= run().finally(() => {
        running = null;
      });
      return running;
    };
  }

  function watch(pad) {
    const path = pad.dataset.wall;
    const unit = () => pad.querySelector("svg").getScreenCTM();
    const move = mover();
    let last = null; // where the pointer that moves a panel was

    pad.addEventListener("pointerdown", async (event) => {
      if (event.button !== 0 || !event.target.closest(".panel, .panel-field, .strip")) return;
      pad.setPointerCapture(event.pointerId);
      const { a, e, d, f } = unit();
      last = { id: event.pointerId, x: event.clientX, y: event.clientY };
      await ask({ op: "place", kind: "grab", path, dx: (event.clientX - e) / a, dy: (event.clientY - f) / d });
    });
    pad.addEventListener("pointermove", (event) => {
      if (event.pointerId !== last?.id) return;
      const { a, d } = unit();
      move((event.clientX - last.x) / a, (event.clientY - last.y) / d);
      last.x = event.clientX;
      last.y = event.clientY;
    });
    const up = async (event) => {
      if (event.pointerId !== last?.id) return;
      last = null;
      await move(0, 0);
      await ask({ op: "place", kind: "drop" });
    };
    pad.addEventListener("pointerup", up);
    pad.addEventListener("pointercancel", up);
    pad.addEventListener("keydown", (event) => {
      const step = KEYS[event.key];
      if (!step || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      ask({ op: "place", kind: "key", path, dx: step[0], dy: step[1], factor: event.shiftKey ? FINE : 1 });
    });
  }

  function dress() {
    for (const pad of root.querySelectorAll(".wall-pad")) {
      if (known.has(pad)) continue;
      known.add(pad);
      watch(pad);
    }
  }

  return { dress };
}
