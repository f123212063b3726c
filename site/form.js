// Turns what a person does with a control into an edit, and shows what became
// of it. What was typed and is not in the design (not sent yet, under way, or
// refused) is held by the path of its field: it comes back with its message
// wherever that field is drawn again.

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

// touched reports whether a control shows something else than it came with. A
// range puts what it came with on the nearest of its steps.
function touched(control) {
  if (control.type === "radio") return control.checked && !control.defaultChecked;
  if (control.type === "checkbox") return control.checked !== control.defaultChecked;
  if (control.type === "range") return Math.abs(control.value - control.defaultValue) >= Number(control.step);
  if (control.tagName !== "SELECT") return control.value !== control.defaultValue;
  const came = [...control.options].find((option) => option.defaultSelected) ?? control.options[0];
  return control.value !== came?.value;
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

// labelOf is what the page calls a field; empty where it does not show it.
export function labelOf(path) {
  const [control] = byName(path ?? "");
  const label = control?.type === "radio" ? control.closest("fieldset")?.querySelector("legend") : control?.labels?.[0];
  return label?.textContent.trim() ?? "";
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

// watchForm calls edit(path, {value, also, typed}) for each edit, typed where a person
// wrote the value; it promises the answer, in which died says that the engine broke down over it and elsewhere that it was meant for an
// opening that is not shown any more; notTaken(answer) is the sentence for these. step(path, by) is called for an arrow key in a number. Of edits of one field that come while one is under way only
// the last is sent.
export function watchForm({ root, edit, step, notTaken, changed = () => {} }) {
  const timers = new Map(); // path -> the end of a pause in typing
  const busy = new Set(); // paths whose edit is under way
  const held = new Map(); // path -> {value, also, typed, message, died}
  const lists = new Set(); // whose items have moved
  const left = new Map(); // opening of a design -> what was held when it was left

  const hold = (control) => held.set(control.name, { value: valueOf(control), also: control.dataset.also, typed: typed(control), message: "" });

  async function send(path) {
    if (busy.has(path) || !held.has(path)) return;
    busy.add(path);
    const sent = held.get(path);
    const answer = await edit(path, sent);
    busy.delete(path);
    if (answer.elsewhere && held.get(path) === sent && !sent.again) {
      sent.again = true; // once: it is the same design, opened anew
      send(path);
      return;
    }
    if (!held.has(path)) { // dropped meanwhile, by an answer to what was asked before
      if (answer.ok) showValue(path, sent.value);
      return;
    }
    if (held.get(path) !== sent) {
      if (!timers.has(path)) send(path); // another value meanwhile
      return;
    }
    conclude(path, sent, answer);
    changed();
  }

  function conclude(path, sent, answer) {
    if (answer.ok || answer.died && !sent.typed) {
      held.delete(path);
      const [control] = byName(path);
      if (sent.typed && control) delete control.dataset.dirty;
      if (sent.typed && control && control !== document.activeElement) control.value = sent.value;
      showFault(control, "");
    } else {
      sent.died = answer.died;
      sent.message = notTaken(answer) ?? answer.faults.map((fault) => fault.message).join(" ");
      sent.section = answer.faults?.find((fault) => fault.path === path)?.section;
      redress();
    }
  }

  // flush sends what is typed in a field, without waiting for a pause.
  function flush(path) {
    clearTimeout(timers.get(path));
    timers.delete(path);
    if (!held.get(path)?.message) send(path);
  }

  // redress puts what is held into the fields that were drawn anew.
  function redress() {
    for (const [path, { value, also, message, typed: byHand }] of held) {
      const [control] = byName(path);
      if (!control) continue;
      if (control.type === "radio") byName(path).forEach((one) => { one.checked = one.value === value && one.dataset.also === also; });
      else if (control.type === "checkbox") control.checked = value === "yes";
      else if (control.value !== value) control.value = value;
      if (byHand && !message) control.dataset.dirty = "";
      else delete control.dataset.dirty;
      showFault(control, message);
    }
  }

  // release drops what is held at a path: it has another value now. Its control is no
  // longer one that is being typed in, or what it shows would outlast a new drawing.
  function release(path) {
    held.delete(path);
    for (const control of byName(path)) {
      delete control.dataset.dirty;
      showFault(control, "");
    }
  }

  function forget(within) {
    for (const path of [...held.keys()]) if (path.startsWith(within)) release(path);
  }

  // shift moves what is held within a list from which the item gone was taken.
  function shift(list, gone) {
    for (const [path, one] of [...held]) {
      if (!path.startsWith(`${list}[`)) continue;
      const rest = path.slice(list.length + 1);
      const at = parseInt(rest, 10);
      if (at < gone) continue;
      release(path);
      if (at > gone) held.set(`${list}[${at - 1}${rest.slice(rest.indexOf("]"))}`, one);
    }
  }

  root.addEventListener("input", ({ target }) => {
    if (!target.name) return;
    if (target.type === "range") {
      hold(target);
      send(target.name);
    }
    if (!typed(target)) return;
    hold(target);
    target.dataset.dirty = "";
    clearTimeout(timers.get(target.name));
    timers.set(target.name, setTimeout(() => flush(target.name), TYPING_MS));
  });
  root.addEventListener("change", ({ target }) => {
    if (!target.name || target.type === "range") return;
    if (!typed(target)) hold(target);
    flush(target.name);
  });
  root.addEventListener("keydown", (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    const control = event.target;
    if (!by || control.dataset.steps === undefined || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    event.preventDefault();
    flush(control.name);
    step(control.name, by);
  });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    if (document.activeElement?.name) flush(document.activeElement.name);
  });

  // What was done before this script came: the browser has kept it in the
  // controls. It is held at once, and sent by flush.
  for (const control of root.querySelectorAll("input[name], select[name], textarea[name]")) {
    if (!touched(control)) continue;
    hold(control);
    if (typed(control)) control.dataset.dirty = "";
  }

  return {
    redress,
    flush: () => [...held.keys()].forEach(flush),
    // edits are what is held, as requests. What the engine broke down over is not
    // among them: it would do so again.
    edits: () => [...held].filter(([, one]) => !one.died).map(([path, { value, also, typed }]) => ({ op: "set", path, value, typed, also: JSON.parse(also ?? "[]") })),
    // restore takes up an edit of an earlier visit.
    restore({ path, value, also = [] }) {
      const [control] = byName(path);
      held.set(path, { value, also: JSON.stringify(also), typed: !control || typed(control), message: "" });
      send(path);
    },
    release,
    // again has what was refused looked at anew: its reader has another language or other units.
    again() {
      for (const [path, one] of [...held]) if (one.message && !one.died) send(path);
    },
    // untouched begins to watch a path: what it returns reports whether nothing was typed there
    // since. What was typed meanwhile counts.
    untouched(path) {
      const was = held.get(path);
      return () => [undefined, was].includes(held.get(path));
    },
    // refused is the path of what was refused last of what is to be seen, of the price book
    // or of all else; undefined: nothing was.
    refused: (ofBook) => [...held].findLast(([path, one]) => one.message && path.startsWith("book.") === ofBook && byName(path).length > 0)?.[0],
    // refusals are all that was refused, wherever its field is, but for the price book: as
    // {path, section}, the last first.
    refusals: () => [...held].filter(([path, one]) => one.message && !path.startsWith("book."))
      .map(([path, { section }]) => ({ path, section })).reverse(),
    // follow keeps what is held at its item when a request has moved the items of
    // a list. After a step of the history nobody knows which item is which.
    follow({ op, name, path }) {
      const [, list, index] = path?.match(/^(.*)\[(\d+)\]$/) ?? [];
      if (name === "example-book" || name === "book-take") {
        forget("book."); // another price book is in force
      } else if (op === "undo" || op === "redo") {
        for (const moved of lists) forget(`${moved}[`);
      } else if (name === "add") {
        lists.add(path);
      } else if (name === "remove" && list !== undefined) {
        lists.add(list);
        shift(list, Number(index));
      }
    },
    // forget drops what is held below a path.
    forget,
    // turn leaves what is held with the opening of a design that is left, and takes up what
    // was left with another. The price book is the same for all.
    turn(from, to) {
      const ofJob = () => [...held].filter(([path]) => !path.startsWith("book."));
      const ofDesign = ofJob();
      left.set(from, ofDesign);
      for (const [path] of ofDesign) release(path);
      for (const [path, one] of left.get(to) ?? []) held.set(path, one);
      left.delete(to);
      setTimeout(() => ofJob().forEach(([path]) => flush(path))); // once the job is drawn
    },
    // restarted drops what was left: the openings are counted anew.
    restarted: () => left.clear(),
  };
}
