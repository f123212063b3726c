// Turns what a person does with a control into an edit, and shows what became
// of it. A refused value stays in its field, with the reason beside it.

const TYPING_MS = 400; // a pause in typing that ends an edit

const byName = (name) => [...document.getElementsByName(name)];
const faultOf = (control) => {
  const holder = control.closest(".field");
  return holder?.querySelector(".fault");
};
const typed = (control) => control.matches('input[type="text"], textarea');

function valueOf(control) {
  if (control.type === "checkbox") return control.checked ? "yes" : "no";
  return control.value;
}

export function showFault(control, message) {
  const fault = control && faultOf(control);
  if (!fault) return false;
  fault.textContent = message;
  fault.hidden = message === "";
  const marked = control.type === "radio" ? control.closest("fieldset") : control;
  if (message) marked.setAttribute("aria-invalid", "true");
  else marked.removeAttribute("aria-invalid");
  return true;
}

// showValue puts a value into whatever controls have its name, but for one that
// is being typed in.
export function showValue(name, value) {
  const controls = byName(name);
  // Several entries may share a value and differ in what they set along.
  const marked = controls.some((control) => control.type === "radio" && control.checked && control.value === value);
  for (const control of controls) {
    if (control.type === "radio") control.checked = marked ? control.checked : control.value === value;
    else if (control.type === "checkbox") control.checked = value === "true" || value === "yes";
    else if (control.dataset.dirty === undefined) control.value = value;
  }
}

// watchForm calls edit(path, value) for each edit; it promises the answer. Of
// edits of one field that come while one is under way only the last is sent.
export function watchForm({ root, edit }) {
  const timers = new Map();
  const busy = new Map(); // path -> the next control to send, or null

  async function send(control) {
    const path = control.name;
    if (busy.has(path)) {
      busy.set(path, control);
      return;
    }
    busy.set(path, null);
    const value = valueOf(control);
    const answer = await edit(path, value, control.dataset).catch(() => null);
    const next = busy.get(path);
    busy.delete(path);
    if (next && (next !== control || valueOf(next) !== value)) {
      send(next);
      return;
    }
    if (!answer) return;
    const now = document.contains(control) ? control : document.getElementById(control.id) ?? control;
    if (valueOf(now) === value) delete now.dataset.dirty;
    showFault(now, answer.faults?.map((fault) => fault.message).join(" ") ?? "");
  }

  function flush(control) {
    clearTimeout(timers.get(control));
    timers.delete(control);
    if (control.dataset.dirty !== undefined || !typed(control)) send(control);
  }

  root.addEventListener("input", ({ target }) => {
    if (!target.name) return;
    if (target.type === "range") send(target);
    if (!typed(target)) return;
    target.dataset.dirty = "";
    clearTimeout(timers.get(target));
    timers.set(target, setTimeout(() => flush(target), TYPING_MS));
  });
  root.addEventListener("change", ({ target }) => {
    if (target.name && target.type !== "range") flush(target);
  });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    if (document.activeElement?.name) flush(document.activeElement);
  });
}
