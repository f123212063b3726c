// Handles on the picture: its right and its lower edge are pulled by pointer, or moved by
// the arrow keys, and the engine decides how many blocks that makes.

const KEYS = { ArrowLeft: ["across", -1], ArrowRight: ["across", 1], ArrowUp: ["down", -1], ArrowDown: ["down", 1] };

// watchHandles returns {place, hide}. held says whether one is being pulled.
export function watchHandles({ stage, ask, held }) {
  const grips = new Map(); // path and side -> button
  let pulled = null; // {id, button, dx, dy}: from the pointer to the place of the handle
  let wanted = null; // place that is asked for next
  let asking = null;
  let asked = 0; // how often the places were asked for

  const size = () => ({ width: stage.clientWidth, height: stage.clientHeight });
  const request = (button, kind, more) => ask({ op: "stretch", kind, path: button.dataset.group, name: button.dataset.side, ...size(), ...more });

  function button(handle) {
    const key = `${handle.path} ${handle.side}`;
    if (!grips.has(key)) {
      const made = stage.appendChild(document.createElement("button"));
      made.type = "button";
      made.className = `handle ${handle.side}`;
      made.setAttribute("role", "slider");
      made.setAttribute("aria-orientation", handle.side === "across" ? "horizontal" : "vertical");
      Object.assign(made.dataset, { group: handle.path, side: handle.side });
      watch(made);
      grips.set(key, made);
    }
    return grips.get(key);
  }

  // show puts the handles where the engine says, but for any beyond the picture.
  function show(handles = []) {
    const { width, height } = size();
    const left = new Set(grips.values());
    for (const handle of handles) {
      const one = button(handle);
      left.delete(one);
      one.style.left = `${Math.min(Math.max(handle.x, 0), width)}px`;
      one.style.top = `${Math.min(Math.max(handle.y, 0), height)}px`;
      one.hidden = one !== pulled?.button && (handle.x < 0 || handle.y < 0 || handle.x > width || handle.y > height);
      one.setAttribute("aria-label", handle.label);
      one.setAttribute("aria-valuenow", handle.now);
      one.setAttribute("aria-valuetext", handle.text);
      one.dataset.text = handle.text;
    }
    for (const one of left) one.hidden = true;
  }

  async function place() {
    if (pulled) return;
    asked += 1;
    const mine = asked;
    const answer = await ask({ op: "stretch", kind: "handles", ...size() });
    if (mine === asked && !pulled) show(answer.handles);
  }

  // Of the places under way only the last is asked for.
  async function pull() {
    while (wanted) {
      const { button: one, ...at } = wanted;
      wanted = null;
      const answer = await request(one, "move", at);
      if (pulled && answer.handles) show(answer.handles);
    }
    asking = null;
  }

  function watch(one) {
    one.addEventListener("pointerdown", (event) => {
      if (event.button !== 0 || pulled) return;
      one.setPointerCapture(event.pointerId);
      pulled = { id: event.pointerId, button: one, dx: parseFloat(one.style.left) - event.clientX, dy: parseFloat(one.style.top) - event.clientY };
      held(true);
      stage.classList.add("stretching");
      one.classList.add("pulled");
      request(one, "grab");
    });
    one.addEventListener("pointermove", (event) => {
      if (event.pointerId !== pulled?.id) return;
      wanted = { button: one, dx: event.clientX + pulled.dx, dy: event.clientY + pulled.dy };
      asking ??= pull();
    });
    const up = async (event) => {
      if (event.pointerId !== pulled?.id) return;
      await asking;
      pulled = null;
      held(false);
      stage.classList.remove("stretching");
      one.classList.remove("pulled");
      const answer = await request(one, "drop");
      show(answer.handles);
    };
    one.addEventListener("pointerup", up);
    one.addEventListener("pointercancel", up);
    one.addEventListener("keydown", async (event) => {
      const [side, by] = KEYS[event.key] ?? [];
      if (side !== one.dataset.side || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      const answer = await request(one, "key", { dx: by });
      show(answer.handles);
    });
  }

  return {
    place,
    hide() {
      for (const one of grips.values()) one.hidden = true;
    },
  };
}
