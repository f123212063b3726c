// Drags and pinches on an element, by mouse, pen or fingers. The wheel belongs
// to the page, unless the control key is held, as a pinch on a pad does it.

const WHEEL_ZOOM = 0.0022; // per pixel of the wheel

// watchPointer calls drag(dx, dy) with fractions of the element's height, at
// most once a frame, and zoom(factor).
export function watchPointer(element, { drag, zoom }) {
  const down = new Map(); // pointers that are down, by id
  let dx = 0;
  let dy = 0;
  let waiting = false;

  const flush = () => {
    waiting = false;
    if (dx !== 0 || dy !== 0) drag(dx, dy);
    dx = 0;
    dy = 0;
  };

  const spread = () => {
    const [a, b] = [...down.values()];
    return Math.hypot(a.x - b.x, a.y - b.y);
  };

  element.addEventListener("pointerdown", (event) => {
    element.setPointerCapture(event.pointerId);
    down.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  element.addEventListener("pointermove", (event) => {
    const last = down.get(event.pointerId);
    if (!last) return;
    const before = down.size === 2 ? spread() : 0;
    const height = element.clientHeight;
    if (down.size === 1) {
      dx += (event.clientX - last.x) / height;
      dy += (event.clientY - last.y) / height;
    }
    last.x = event.clientX;
    last.y = event.clientY;
    if (before > 0) zoom(spread() / before);
    if (!waiting) {
      waiting = true;
      requestAnimationFrame(flush);
    }
  });
  const up = (event) => down.delete(event.pointerId);
  element.addEventListener("pointerup", up);
  element.addEventListener("pointercancel", up);
  element.addEventListener("lostpointercapture", up);
  element.addEventListener(
    "wheel",
    (event) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      zoom(Math.exp(-event.deltaY * WHEEL_ZOOM));
    },
    { passive: false },
  );
}
