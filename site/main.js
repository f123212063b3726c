// Wires the page: what a person does becomes a request to the engine, and its
// answer becomes what the page shows.
import { startEngine } from "./engine.js";
import { copy, saveFile, watchFiles } from "./files.js";
import { showFault, showValue, watchForm } from "./form.js";
import { makeStage } from "./stage.js";
import * as status from "./status.js";
import * as store from "./store.js";
import { insert, keepOffline } from "./trusted.js";


const byID = (id) => document.getElementById(id);
const hash = () => location.hash.slice(1);
// A fragment that is neither a word nor a place on the page is meant as a link.
const linked = () => !/^[a-z-]*$/.test(hash()) && byID(hash()) === null;

let stored = true;

const engine = startEngine({
  url: new URL("engine-worker.js", import.meta.url),
  restored(answer) {
    apply(answer);
    status.show("restarted");
  },
  failed: () => status.show("engine-failed"),
});

const stage = makeStage({
  ask,
  viewed: (fields) => Promise.all(fields.map(([path, value]) => ask({ op: "set", path, value, quiet: true }))),
});

// ask sends a request and shows what the answer says of the whole page.
async function ask(request) {
  const answer = await engine.ask(request);
  apply(answer);
  return answer;
}

function apply(answer) {
  answer.fragments?.forEach(({ target, html }) => insert(target, html));
  answer.values?.forEach(({ path, value }) => showValue(path, value));
  if (answer.text) keep(answer.text);
  if (answer.revision) showState(answer);
  if (answer.scene) stage.show(answer.scene);
  if (answer.announce) status.announce(answer.announce);
}

function showState({ title, revision, reading, canUndo, canRedo }) {
  byID("title").textContent = title;
  byID("revision").textContent = revision;
  byID("undo").setAttribute("aria-disabled", String(!canUndo));
  byID("redo").setAttribute("aria-disabled", String(!canRedo));
  document.querySelector("main").dataset.reading = reading;
  showValue("view.reading", reading);
}

function keep(text) {
  if (store.save(text)) {
    stored = true;
  } else if (stored) {
    stored = false;
    status.show("not-kept");
  }
}

// Edits

// edit sets a field, and whatever else the chosen option sets along with it.
function edit(path, value, { also = "[]" } = {}) {
  return ask({ op: "set", path, value, also: JSON.parse(also) });
}

async function setByButton(button) {
  const { set: path, shown } = button.dataset;
  const answer = await ask({ op: "set", path, value: button.value });
  const control = document.getElementsByName(path)[0];
  if (answer.ok && control) {
    delete control.dataset.dirty;
    showValue(path, shown ?? button.value);
    showFault(control, "");
  } else if (!answer.ok) {
    refuse(answer);
  }
}

// refuse says what was wrong where no field can.
function refuse(answer) {
  status.show("not-opened", { details: answer.faults.map((fault) => [fault.path, fault.message].filter(Boolean).join(": ")) });
}

// Designs in and out

async function open(request) {
  stage.forget();
  const answer = await ask(request);
  if (answer.ok) status.hide();
  else refuse(answer);
  return answer;
}

async function openExample(address) {
  const file = await fetch(address);
  if (!file.ok) throw new Error(`${address}: ${file.status}`);
  await open({ op: "open", text: await file.text(), from: "scenario" });
}

async function share() {
  const answer = await ask({ op: "link" });
  if (!answer.link) {
    refuse(answer);
    return;
  }
  const url = location.href.split("#")[0] + answer.link;
  const copied = await copy(url);
  if (!status.showLink(copied ? "copied" : "copy-by-hand", url)) status.show(copied ? "copied" : "copy-by-hand", copied ? {} : { copy: url });
}

async function save() {
  const answer = await ask({ op: "save" });
  if (answer.file) saveFile(answer.file);
}

const buttons = {
  undo: () => ask({ op: "undo" }),
  redo: () => ask({ op: "redo" }),
  new: () => open({ op: "new" }),
  open: () => byID("file").click(),
  example: (button) => openExample(button.dataset.address),
  save,
  link: share,
  zoom: (button) => stage.zoom(Number(button.value)),
  mode(button) {
    stage.mode(button.value);
    for (const mode of ["lamp", "orbit"]) byID(`mode-${mode}`).setAttribute("aria-pressed", String(mode === button.value));
  },
  "view-reset"() {
    stage.forget();
    return ask({ op: "drag", kind: "reset" });
  },
};

// Moving through the page

async function goToField(path, section) {
  if (!document.getElementsByName(path)[0] && section) {
    await ask({ op: "section", name: section });
    history.replaceState(null, "", `#${section}`);
  }
  const control = document.getElementsByName(path)[0];
  for (let at = control; at; at = at.parentElement) if (at.tagName === "DETAILS") at.open = true;
  control?.focus();
  control?.scrollIntoView({ block: "center" });
}

const sections = () => [...document.querySelectorAll("#nav a")].map((link) => link.hash.slice(1));

function followHash() {
  if (linked()) openLink(hash());
  else if (sections().includes(hash())) ask({ op: "section", name: hash() });
}

// A link opens on top of the job that was kept, so that undo brings that back.
async function openLink(link) {
  await open({ op: "open", link, from: "link" });
  history.replaceState(null, "", location.pathname + location.search);
}

function closeMenus(but) {
  for (const menu of document.querySelectorAll("details.menu[open]")) if (!menu.contains(but)) menu.open = false;
}

document.addEventListener("click", (event) => {
  closeMenus(event.target);
  const button = event.target.closest("button");
  if (button?.dataset.do && button.getAttribute("aria-disabled") !== "true") {
    Promise.resolve(buttons[button.dataset.do](button)).catch(() => {});
    if (button.closest(".menu")) button.closest(".menu").open = false;
  } else if (button?.dataset.set) {
    setByButton(button);
  } else if (button?.dataset.act) {
    ask({ op: "act", name: button.dataset.act, path: button.dataset.path });
  }
  const lead = event.target.closest("a.to-field");
  if (lead) {
    event.preventDefault();
    goToField(lead.dataset.field, lead.dataset.section);
  }
});

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape") {
    const menu = document.activeElement?.closest("details.menu[open]");
    closeMenus(null);
    menu?.querySelector("summary").focus();
  }
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "s") {
    event.preventDefault();
    save();
  } else if ((key === "z" || key === "y") && !event.target.matches('input[type="text"], textarea')) {
    event.preventDefault();
    ask({ op: key === "y" || event.shiftKey ? "redo" : "undo" });
  }
});

watchForm({ root: document, edit });
watchFiles({
  input: byID("file"),
  drop: byID("drop"),
  opened: (text) => open({ op: "open", text, from: "file" }),
  tooLarge: () => status.show("too-large"),
});
window.addEventListener("hashchange", followHash);

// The first answers. Without a job or a link that could be opened they say what
// the page shows already: only the picture is new.
async function begin() {
  const kept = store.load();
  const link = linked() ? hash() : "";
  if (kept !== null) await open({ op: "open", text: kept, from: "saved" });
  if (link) await openLink(link);
  if (stage.empty()) stage.show((await engine.ask({ op: "hello" })).scene, { posted: true });
  await stage.pictured();
  document.documentElement.classList.remove("opening");
  document.documentElement.classList.add("alive");
  if (!link) followHash();
}

begin().catch(() => document.documentElement.classList.remove("opening"));
if ("serviceWorker" in navigator) {
  window.addEventListener("load", () => keepOffline("service-worker.js").catch(() => {}));
}
