// Wires the page: what a person does becomes a request to the engine, and its
// answer becomes what the page shows.
import { startEngine } from "./engine.js";
import { base64, copy, saveFile, watchFiles } from "./files.js";
import { labelOf, showValue, watchForm } from "./form.js";
import { makeHearing } from "./hear.js";
import { watchJobList } from "./joblist.js";
import { makeKeeping } from "./keeping.js";
import { sendLetter } from "./letters.js";
import { watchPhotos } from "./photos.js";
import { makeRows } from "./rows.js";
import { makeStage } from "./stage.js";
import * as status from "./status.js";
import { recover, setTalk, talk } from "./store.js";
import { insertAll } from "./trusted.js";
import { watchVersions } from "./versions.js";
import { watchWalls } from "./wallmap.js";

const byID = (id) => document.getElementById(id);
const page = document.documentElement;
page.dataset.scripts = "here"; // opening.js watches for it
const hash = () => location.hash.slice(1);
// The code on a paper leads to an address of this kind.
const scanned = () => /^paper-\w{1,16}$/.test(hash());
// A fragment that is neither a word nor a place on the page is meant as a link.
const linked = () => !/^[a-z-]*$/.test(hash()) && byID(hash()) === null && !scanned();

await recover();

let begun = false; // the first design is open
let opening = 0; // which opening of a design is shown, as the engine counts them

const engine = startEngine({
  url: new URL("engine-worker.js", import.meta.url),
  talk: talk(),
  heldTalk: setTalk,
  restored(answer, fatal) {
    keeping.restarted(answer);
    form.restarted();
    opening = answer.opening;
    apply(answer, { fresh: true });
    delete page.dataset.heard;
    hearing.want(answer, { again: true });
    status.show(lost(fatal), { as: "restarted", details: [labelOf(fatal?.path)].filter(Boolean) });
  },
  failed,
  late: status.work,
});

// lost is the sentence for what the engine did not do when it stopped.
function lost(request) {
  if (["set", "act", "drag", "place", "stretch", "nudge", "undo", "redo", "new"].includes(request?.op)) return "restarted-edit";
  return request?.op === "open" ? "restarted-open" : "restarted";
}

const form = watchForm({
  root: document,
  async edit(path, { value, also = "[]", typed }) {
    const answer = await ask({ op: "set", path, value, typed, also: JSON.parse(also) });
    if (answer.ok && ["view.language", "view.units"].includes(path)) form.again();
    return answer;
  },
  async step(path, by) {
    const untouched = form.untouched(path);
    const answer = await ask({ op: "nudge", path, dy: by });
    if (answer.ok && answer.values && untouched()) form.release(path);
    answer.values?.forEach((one) => showValue(one.path, one.value));
    if (!answer.ok && !answer.died) refuse(answer, "not-done");
  },
  notTaken({ died, elsewhere }) {
    if (died) return status.sentence("not-taken");
    return elsewhere ? status.sentence("not-taken-anew") : undefined;
  },
  changed() {
    if (form.refusals().length === 0) status.hide("letter-waits");
    keeping.answered();
    showUndo();
  },
});

const stage = makeStage({
  ask,
  viewed: (fields) => Promise.all(fields.map(async ([path, value]) => {
    const { ok } = await ask({ op: "set", path, value, quiet: true });
    if (ok) showValue(path, value); // an answer leaves out the field that was set
  })),
});

// What is heard goes to the engine, which says what it means. The page notes of
// which design it was.
async function heard(request) {
  await ask({ op: "heard", ...request });
  page.dataset.heard = request.revision;
}

const hearing = makeHearing({
  url: new URL("hear-worker.js", import.meta.url),
  heard: ({ revision, heard: text }) => heard({ revision, text }),
  deaf: (revision) => heard({ revision, name: "deaf" }),
});

const rows = makeRows({
  place: byID("rows"),
  others: document.querySelectorAll("header.top, main, .skip"),
  ask,
  left: () => (fromHere ? history.back() : goToBench().then(focusRows)),
});

const walls = watchWalls({ root: document, ask });

const keeping = makeKeeping({ first: byID("revision").textContent, engine, form, ask, apply, open, save, apart: ownWindow });

const versions = watchVersions({ safe: keeping.safe });

const photos = watchPhotos({
  root: document,
  job: keeping.job,
  hold: () => keeping.hold(byID("revision").textContent),
});

// turned has the form follow to another design, by an opening or by a step of the history,
// and reports whether it did: its controls show what was typed for the one before.
function turned({ revision, opening: next }) {
  if (!revision || next === opening) return false;
  const turns = begun && revision !== byID("revision").textContent;
  if (turns) form.turn(opening, next);
  opening = next;
  return turns;
}

// What a person does: whatever was told of the act before has had its time.
const ACTS = ["set", "act", "place", "nudge", "undo", "redo", "open", "new", "section"];

// ask sends a request and shows what the answer says of the whole page. Where
// the engine broke down over it the answer says only that. opened says from
// where a design comes that takes the place of the present one.
async function ask(request, { opened, id } = {}) {
  const answer = await engine.ask(request).catch(() => ({ ok: false, died: true, faults: [] }));
  const fresh = answer.ok && turned(answer);
  if (answer.ok && request.op === "open" && answer.book !== undefined) form.forget("book.");
  if (answer.ok) form.follow(request);
  if (ACTS.includes(request.op)) status.hide("told");
  apply(answer, { fresh });
  keeping.keep(answer, opened, id);
  photos.dress();
  if (request.op !== "set") keeping.answered();
  return answer;
}

function apply(answer, { fresh = false } = {}) {
  if (answer.language) status.speak(answer);
  insertAll(answer.fragments ?? [], { fresh });
  answer.values?.forEach(({ path, value }) => showValue(path, value));
  if (answer.fragments) {
    form.redress();
    walls.dress();
    hearing.dress();
  }
  if (answer.revision) showState(answer);
  else if (answer.fragments) showUndo();
  hearing.want(answer, { again: Boolean(answer.language) });
  if (answer.scene) stage.show(answer.scene);
  if (answer.announce) status.announce(answer.announce);
  if (answer.told) status.show("told", { also: answer.told });
  if (answer.next) goToField(answer.next, "bench");
}

function showState({ title, revision, reading, canUndo, canRedo }) {
  byID("title").textContent = title;
  byID("revision").textContent = revision;
  page.dataset.undo = String(canUndo);
  showUndo();
  byID("redo").setAttribute("aria-disabled", String(!canRedo));
  document.querySelector("main").dataset.reading = reading;
  showValue("view.reading", reading);
}

// showUndo offers the button also where only a refused entry can be taken back.
function showUndo() {
  byID("undo").setAttribute("aria-disabled", String(page.dataset.undo !== "true" && form.refused(false) === undefined));
}

// failed says that there is no engine, and takes the controls out of use. What the page
// says of the design can still be read.
function failed() {
  page.classList.add("stopped");
  for (const part of document.querySelectorAll(".tools, .stage-tools, #pad, #nav")) part.inert = true;
  for (const control of document.querySelectorAll("main :is(button, input, select, textarea)")) control.disabled = true;
  keeping.failed();
}

// Edits by buttons

async function setByButton(button) {
  const { set: path, shown } = button.dataset;
  const untouched = form.untouched(path);
  const answer = await ask({ op: "set", path, value: button.value });
  if (!answer.ok) refuse(answer, "not-done");
  else if (untouched()) {
    form.release(path);
    showValue(path, shown ?? button.value);
  }
}

// refuse says what was wrong where no field can.
function refuse(answer, key) {
  if (!answer.died) status.show(key, { details: status.told(answer), also: answer.stays });
}

// Designs in and out

async function open(request, { from, id, silent = false }) {
  stage.forget();
  stage.another(true);
  const answer = await ask(request, { opened: from, id });
  stage.another(false);
  if (answer.ok) status.hide("not-opened", "link-not-opened", "not-fetched", "job-unread", "too-large", "not-read", "prices", "letter-waits");
  if (answer.photos) await photos.keep(answer.photos);
  if (answer.jobs) {
    await keeping.takeIn(answer.jobs);
    status.show("jobs-taken", { also: answer.announce });
  }
  if (answer.ok && answer.book !== undefined) status.show("prices", { also: answer.announce });
  if (!answer.ok) status.hide("prices", "jobs-taken", "letter-taken-in"); // they were said of another file
  if (!answer.ok && !silent) refuse(answer, from === "link" ? "link-not-opened" : "not-opened");
  return answer;
}

// openFile opens a chosen file; of a letter about a job that is kept here it asks first.
async function openFile(text) {
  const known = (jobs) => engine.ask({ op: "known", text, jobs }).catch(() => ({}));
  const { wants } = await known();
  const jobs = wants ? await keeping.kept() : undefined;
  const { found, old } = wants === "letter" ? await known(jobs) : {};
  const apart = () => open({ op: "open", text, from: "file", jobs: wants === "jobs" ? jobs : undefined }, { from: "file" });
  if (!found) {
    await apart();
    return;
  }
  const then = (act) => async () => {
    status.hide("letter-again");
    await act();
  };
  status.show("letter-again", { also: old, actions: [["letter-take-in", then(() => takeIn(text, found))], ["letter-apart", then(apart)]] });
}

// takeIn makes a letter a change of a job that is kept.
async function takeIn(text, id) {
  if (keeping.job() !== id) await keeping.list.goTo(id);
  const answer = await ask({ op: "open", text, from: "again" });
  if (!answer.ok) {
    refuse(answer, "not-opened");
    return;
  }
  if (answer.photos) await photos.keep(answer.photos);
  status.show("letter-taken-in", { also: answer.announce, details: answer.details ?? [] });
}

async function openExample(address) {
  const text = await fetch(address).then((file) => (file.ok ? file.text() : null), () => null);
  if (text === null) status.show("not-fetched");
  else await open({ op: "open", text, from: "scenario" }, { from: "example" });
}

async function share() {
  const answer = await ask({ op: "link" });
  if (!answer.link) {
    refuse(answer, "not-done");
    return;
  }
  const url = location.href.split("#")[0] + answer.link;
  const copied = await copy(url);
  if (!status.showLink(copied ? "copied" : "copy-by-hand", url)) status.show(copied ? "copied" : "copy-by-hand", copied ? {} : { copy: url });
}

// ownWindow opens the design in a window of its own, where a browser keeps more than it does
// for a page inside of another.
async function ownWindow() {
  const { link } = await ask({ op: "link" });
  window.open(location.href.split("#")[0] + (link ?? ""), "_blank", "noopener");
}

// save saves the design, or by its name another document, as a file.
async function save(name) {
  const answer = await ask(await written(name));
  if (answer.file) saveFile(answer.file);
  else refuse(answer, "not-saved");
}

// written is the request for a file: pictures of the place go along with a letter, and the
// jobs that are kept here with a file of them.
const written = async (name) => ({
  op: "save",
  name,
  ...(name === "letter" && { photos: await photos.toSend() }),
  ...(name === "jobs" && { jobs: await keeping.kept() }),
});

// withheld keeps a letter back while an entry was refused, and goes there: the letter would
// say what stood in the field before. It reports whether it did.
async function withheld(name) {
  const there = (path) => document.getElementsByName(path).length > 0;
  const refusals = name === "letter" ? form.refusals() : [];
  for (const { path, section } of refusals) {
    if (!there(path) && !sections().includes(section)) continue; // another reader's
    await goToField(path, section);
    if (!there(path)) continue; // the design has no such field any more
    status.show("letter-waits");
    return true;
  }
  return false;
}

async function send(name) {
  const answer = await ask(await written(name));
  if (answer.file) await sendLetter(answer.file);
  else refuse(answer, "not-saved");
}

// step goes through the history. An entry that was refused is no step of it: undo takes
// that back first.
function step(op) {
  const path = form.refused(false);
  if (op === "undo" && path !== undefined) takeBack(path);
  else ask({ op });
}

async function takeBack(path) {
  form.release(path);
  status.hide("letter-waits");
  await ask({ op: "entry" });
  showUndo();
}

// lookBy takes a view or a light by its name.
function lookBy(kind, name) {
  stage.forget();
  return ask({ op: "drag", kind, name, ...stage.size() });
}

let printing = false; // the sheets that are not shown yet are on their way

// allSheets has the papers completed part by part, unless somebody stops it or leaves
// them, and reports whether they are complete.
async function allSheets() {
  const next = () => document.querySelector(".papers-part:empty");
  const show = (on) => { for (const row of document.querySelectorAll(".papers-progress")) row.hidden = !on; };
  printing = true;
  for (let part = next(); part && printing; part = next()) {
    const bar = document.querySelector(".papers-progress progress");
    bar.max = document.querySelectorAll(".papers-part").length;
    bar.value = bar.max - document.querySelectorAll(".papers-part:empty").length;
    show(true);
    const answer = await ask({ op: "sheets", at: Number(part.dataset.from) });
    if (!answer.ok) refuse(answer, "not-done");
    if (!answer.ok || part === next()) printing = false;
  }
  show(false);
  const complete = printing && document.querySelector(".leaf") !== null;
  printing = false;
  return complete;
}

const PRINTED = 1400; // pixels of the longer side of a picture on paper

const buttons = {
  undo: () => step("undo"),
  redo: () => step("redo"),
  new: () => open({ op: "new" }, { from: "new" }),
  open: () => byID("file").click(),
  example: (button) => openExample(button.dataset.address),
  save: async (button) => await withheld(button.value) || save(button.value || undefined),
  link: share,
  send: async (button) => await withheld(button.value) || send(button.value),
  async go({ value }) {
    await goToPart(value);
    history.replaceState(null, "", `#${value}`);
  },
  zoom: (button) => stage.zoom(Number(button.value)),
  mode(button) {
    stage.mode(button.value);
    for (const mode of ["lamp", "orbit"]) byID(`mode-${mode}`).setAttribute("aria-pressed", String(mode === button.value));
  },
  view: (button) => lookBy("view", button.value),
  light: (button) => lookBy("light", button.value),
  shoot: (button) => stage.shoot(Number(button.value), `${byID("title").textContent} ${byID("revision").textContent}`),
  sweep: (button) => stage.sweep(button.value),
  async print() {
    if (!printing && await allSheets()) window.print();
  },
  "print-stop"() { printing = false; },
  newer: () => versions.use(),
  install: () => versions.install(),
  async "papers-picture"() {
    const picture = await stage.picture(PRINTED);
    if (picture) ask({ op: "papers-picture", picture: await base64(picture) });
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
  reach(document.getElementsByName(path)[0]);
}

// reach unfolds whatever a control is folded in, and gives it the keyboard.
function reach(control) {
  for (let at = control; at; at = at.parentElement) if (at.tagName === "DETAILS") at.open = true;
  control?.focus();
  control?.scrollIntoView({ block: "center" });
}

const sections = () => [...document.querySelectorAll("#nav a")].map((link) => link.hash.slice(1));

// Whether the screen for the bench was opened out of the page, to which its end goes back.
let fromHere = false;

// focusRows is where the keyboard is when that screen was closed.
const focusRows = () => reach(document.querySelector("a.to-rows"));

function followHash(event) {
  if (hash() === "rows") {
    fromHere = event !== undefined;
    rows.open();
    return;
  }
  rows.close();
  if (scanned()) openPaper(hash());
  else if (linked()) openLink(hash());
  else goToPart(hash()).then(() => event?.oldURL.endsWith("#rows") && focusRows());
}

// goToPart opens a section, "bench", or a part of one, "bench-cuts", and unfolds it; the
// browser itself goes to a part that is there.
async function goToPart(part) {
  const [section] = part.split("-");
  if (!sections().includes(section)) return;
  const there = section !== part && byID(part);
  if (!there) await ask({ op: "section", name: section });
  if (section === part) return;
  byID(part)?.querySelector(":scope > details.part")?.setAttribute("open", "");
  if (!there) byID(part)?.scrollIntoView();
}

// A link that cannot be opened stays in the address, to be looked at.
async function openLink(link) {
  const answer = await open({ op: "open", link, from: "link" }, { from: "link" });
  if (answer.ok) history.replaceState(null, "", location.pathname + location.search);
}

// openPaper goes to the bench with the job of a paper that was scanned. The job that is
// open stays as it is where another, or none, is meant.
async function openPaper(code) {
  const answer = await engine.ask({ op: "scan", name: code, jobs: await keeping.kept() }).catch(() => ({ ok: false, died: true, faults: [] }));
  history.replaceState(null, "", location.pathname + location.search);
  if (!answer.ok) {
    if (!answer.died) status.show("paper-unknown", { details: status.told(answer), actions: [["choose-file", () => byID("file").click()]] });
    return;
  }
  if (answer.found) await keeping.list.goTo(answer.found);
  await goToBench();
  if (answer.old) status.show("paper-old", { also: answer.old });
  else status.show("paper-open");
}

async function goToBench() {
  const section = sections().includes("bench") ? "bench" : "papers";
  history.replaceState(null, "", `#${section}`);
  await goToPart(section);
}

function closeMenus(but) {
  for (const menu of document.querySelectorAll("details.menu[open]")) if (!menu.contains(but)) menu.open = false;
}

document.addEventListener("click", (event) => {
  closeMenus(event.target);
  const button = event.target.closest("button");
  if (button?.dataset.do && button.getAttribute("aria-disabled") !== "true") {
    buttons[button.dataset.do](button);
    if (button.closest(".menu")) button.closest(".menu").open = false;
  } else if (button?.dataset.set) {
    setByButton(button);
  } else if (button?.dataset.refused === "book" && form.refused(true)) {
    takeBack(form.refused(true));
  } else if (button?.dataset.act) {
    ask({ op: "act", name: button.dataset.act, path: button.dataset.path, value: button.value }).then((answer) => answer.ok || refuse(answer, "not-done"));
  }
  if (event.target.closest("#found a")) closeMenus(null);
  const lead = event.target.closest("a.to-field");
  if (lead) {
    event.preventDefault();
    closeMenus(null);
    goToField(lead.dataset.field, lead.dataset.section);
  }
});

// A field is found by its name. Before anything is typed the keys are listed.
const finder = byID("find");
const wanted = byID("find-text");
finder.addEventListener("toggle", () => {
  if (!finder.open) return;
  wanted.focus();
  wanted.select();
  seek();
});
const seek = () => ask({ op: "find", value: wanted.value });
wanted.addEventListener("input", seek);
wanted.addEventListener("keydown", (event) => {
  if (event.key === "Enter") byID("found").querySelector("a")?.click();
});
document.addEventListener("keydown", (event) => {
  if (event.key === "Escape") {
    const menu = document.activeElement?.closest("details.menu[open]");
    closeMenus(null);
    menu?.querySelector("summary").focus();
  }
  if (event.key === "F8" && !event.repeat) {
    event.preventDefault();
    closeMenus(null);
    status.hide("prices", "told", "jobs-taken", "letter-taken-in"); // they may name figures or other clients
    status.announce("");
    ask({ op: "act", name: "hide-figures" });
  }
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "s") {
    event.preventDefault();
    save();
  } else if (key === "o") {
    event.preventDefault();
    byID("file").click();
  } else if (key === "k" && finder.checkVisibility()) {
    event.preventDefault();
    finder.open = true;
  } else if ((key === "z" || key === "y") && !event.target.matches('input[type="text"], textarea')) {
    event.preventDefault();
    step(key === "y" || event.shiftKey ? "redo" : "undo");
  }
});

watchFiles({
  input: byID("file"),
  drop: byID("drop"),
  opened: openFile,
  tooLarge: () => status.show("too-large"),
  notRead: () => status.show("not-read"),
});
watchJobList({
  menu: byID("menu"), place: byID("jobs"), ask, jobs: keeping.kept, talking: () => talk() !== "", ...keeping.list,
});
window.addEventListener("hashchange", followHash);
window.addEventListener("beforeprint", () => {
  if (document.querySelector(".leaf")) ask({ op: "printed" });
});

// The first answers. Without a job or a link that could be opened they say what
// the page shows already: only the picture is new.
async function begin() {
  await keeping.begin({ alone: !linked() });
  const link = linked() ? hash() : "";
  if (link) await openLink(link);
  if (engine.dead()) throw new Error("engine: failed");
  begun = true;
  if (stage.empty()) {
    const first = await engine.ask({ op: "hello" });
    stage.show(first.scene, { posted: true });
    hearing.want(first);
  }
  await keeping.resume();
  await stage.pictured();
  page.classList.remove("opening");
  page.classList.add("alive");
  hearing.begin();
  if (!link) followHash();
}

// All that is kept offline comes last: it would share a slow line with what the page waits for.
begin().catch(() => page.classList.remove("opening")).then(versions.begin);
