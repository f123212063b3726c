// The only module that turns text into markup or into the address of a script.
// Markup comes from the engine's templates, which escape by context; scripts
// come from beside this file or from the top of the site.

const ours = (url) => {
  const address = new URL(url, document.baseURI);
  if (address.origin !== location.origin) throw new TypeError(`${url}: not of this site`);
  return address.href;
};

const policy = window.trustedTypes
  ? window.trustedTypes.createPolicy("blockfield", { createHTML: (text) => text, createScriptURL: ours })
  : { createHTML: (text) => text, createScriptURL: ours };

export const trustedHTML = (text) => policy.createHTML(text);

// startWorker starts a worker. died is called once the browser has ended it, where the
// browser lets that be seen: it says nothing of its own.
export function startWorker(url, died) {
  const worker = new Worker(policy.createScriptURL(url), { type: "module" });
  worker.addEventListener("message", (event) => {
    if (event.data.type !== "life") return;
    event.stopImmediatePropagation();
    navigator.locks.request(event.data.life, died).catch(() => {});
  });
  return worker;
}

export const keepOffline = (url) => navigator.serviceWorker.register(policy.createScriptURL(url));

// What was put into each element last: an unchanged fragment costs nothing.
const inserted = new WeakMap();

// insert puts a fragment into the element with the id target. The keyboard
// stays where it was, what is being typed stays typed, and what was folded open
// stays open. A form, or any fragment that is asked for fresh, is drawn anew even where
// it has not changed: its controls and parts may show something else by now.
export function insert(target, html, { fresh = false } = {}) {
  const place = document.getElementById(target);
  if (!place || !fresh && !place.matches("form") && inserted.get(place) === html) return;
  const active = place.contains(document.activeElement) ? document.activeElement : null;
  const open = [...place.querySelectorAll("details[open][id]")].map((details) => details.id);
  place.innerHTML = policy.createHTML(html);
  inserted.set(place, html);
  for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  if (active) comeBack(place, active);
}

// insertAll puts fragments in and keeps the field that has the focus where it is
// on the screen: what is said above it grows and shrinks with each answer, and
// nothing may slip away under a hand that types or points.
export function insertAll(fragments, options) {
  const held = document.activeElement?.closest(".field");
  const before = held?.getBoundingClientRect().top;
  if (!held) document.body.style.minHeight = "";
  for (const { target, html } of fragments) insert(target, html, options);
  const now = held && document.activeElement.closest(".field");
  if (now?.isConnected) scrollOn(now.getBoundingClientRect().top - before);
}

// scrollOn scrolls by so many pixels. At the foot of a page that has become
// shorter the page keeps room to do so, until a field has the focus no more.
function scrollOn(moved) {
  if (Math.abs(moved) < 1) return;
  const page = document.documentElement;
  const lacking = page.scrollTop + moved + innerHeight - page.scrollHeight;
  if (lacking > 0) document.body.style.minHeight = `${document.body.offsetHeight + lacking}px`;
  scrollBy({ top: moved, behavior: "instant" });
}

function comeBack(place, active) {
  const again = find(place, active);
  if (!again) { // whoever goes on by the keyboard goes on from here
    if (place.tabIndex < 0) place.tabIndex = -1;
    place.focus({ preventScroll: true });
    return;
  }
  if (active.dataset.dirty !== undefined) {
    again.value = active.value;
    again.dataset.dirty = "";
  }
  again.focus({ preventScroll: true });
  if (again.setSelectionRange && active.selectionStart !== null) {
    again.setSelectionRange(active.selectionStart, active.selectionEnd);
  }
}

function find(place, active) {
  if (active.id) return document.getElementById(active.id);
  if (!active.name) return null;
  const same = [...place.querySelectorAll(`[name="${CSS.escape(active.name)}"]`)];
  return same.find((element) => element.checked) ?? same[0];
}
