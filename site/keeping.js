// What this browser keeps, beyond the design that is open: jobs, a price book,
// and edits that are under way when the page is left. It says when something is
// not kept, or was kept and cannot be read.
import { saveFile } from "./files.js";
import { makeJobs } from "./jobs.js";
import * as records from "./records.js";
import * as status from "./status.js";
import * as store from "./store.js";

// promise says in the menu where the design is kept.
function promise(key) {
  const line = document.getElementById("private");
  line.textContent = status.sentence(key);
  line.dataset.say = `message/${key}`; // in whatever language
}

const begun = new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" }); // an id says when

const saveText = (name, text) => saveFile({ name: `blockfield-${name}.json`, type: "application/json", text });

// unread says that something kept cannot be read, and why; it stays kept.
function unread(key, name, text, answer) {
  status.show(key, {
    details: status.told(answer),
    actions: text === "" ? [] : [["save-kept", () => saveText(name, text)]],
  });
}

// forget takes a job out, with the record of its work and its pictures.
async function forget(id) {
  const text = store.job(id);
  store.removeJob(id);
  const record = await records.record(id);
  const photos = await records.photos(id);
  await records.keepRecord(id, null);
  await records.dropPhotos(id);
  const putBack = () => {
    store.keepJob(id, text);
    if (record !== null) records.keepRecord(id, record);
    for (const photo of photos) records.keepPhoto(photo.key, photo);
    status.hide("job-forgotten");
  };
  status.show("job-forgotten", { actions: [["put-back", putBack]] });
}

// copyJob keeps a job a second time and promises its id: the design alone, since the work on
// it begins anew.
function copyJob(id) {
  const another = store.newJob();
  return store.keepJob(another, store.job(id)) ? another : null;
}

// makeKeeping works with the engine, the form, and main.js's ask, apply and
// open. first is the revision of the design that the page comes with.
export function makeKeeping({ first, engine, form, ask, apply, open, save, apart }) {
  const unkept = new Set(); // kinds of what the browser has not kept
  let stashed = false; // edits under way are written down
  let earlier = null; // those of the last visit, until they are taken up
  let over = false; // there is no engine any more: what is written down stays
  let badBook = null; // a kept price book that could not be read
  let writing = Promise.resolve(); // of records

  const jobs = makeJobs({
    first,
    say: (key, actions, as) => status.show(key, { actions, as }),
    unsay: status.hide,
    notKept: () => check(false),
    back,
    goTo,
  });

  const framed = window !== window.top;

  // check says, once for each kind, when the browser does not keep what it is given, and
  // offers what is missing there as files.
  function check(kept, kind = "design") {
    const known = unkept.has(kind);
    if (kept) unkept.delete(kind);
    else unkept.add(kind);
    if (kept && known && unkept.size === 0) {
      status.hide("not-kept");
      promise("kept-here");
    }
    if (kept || known) return;
    const actions = [["save-all", rescue]];
    if (unkept.has("book")) actions.push(["save-book", () => save("book")]);
    if (framed) actions.push(["own-window", apart]);
    status.show(framed ? "not-kept-framed" : "not-kept", { as: "not-kept", actions });
    promise("not-kept-here");
  }

  // rescue saves all jobs, or the design alone where there is nothing else.
  async function rescue() {
    const all = await kept();
    await save(jobs.visiting() || all.length === 1 && all[0].record === "" ? undefined : "jobs");
  }

  // kept are the jobs that this browser keeps, with what it keeps of the work on them. The
  // open one is as it is shown where the browser does not keep it.
  async function kept() {
    const ids = store.jobs();
    const live = unkept.size > 0 && !jobs.visiting() && engine.text() !== "" ? jobs.id() : null;
    if (live !== null && !ids.includes(live)) ids.unshift(live);
    return Promise.all(ids.map(async (id) => ({
      id,
      begun: begun.format(Number(id)),
      text: id === live ? engine.text() : store.job(id) ?? "",
      record: (id === live && engine.record()) || ((await records.record(id)) ?? ""),
    })));
  }

  // stash writes down what is still under way: the page may never see the answer.
  function stash() {
    if (over) return;
    if (jobs.visiting()) earlier ??= []; // they are the job's
    earlier ??= jobs.earlier();
    const mine = form.edits();
    const others = engine.unanswered().filter(({ op, path, quiet }) =>
      op === "act" || op === "set" && !quiet && !mine.some((edit) => edit.path === path));
    const all = [...earlier, ...others, ...mine];
    jobs.stash(all, engine.text());
    stashed = all.length > 0;
  }

  // keepRecord keeps the record of an answer with its job. Records are written one
  // after another: the last one stays.
  function keepRecord(answer) {
    writing = writing.then(async () => {
      const id = await jobs.hold(answer);
      check(id !== null && await records.keepRecord(id, answer.record), "record");
    });
  }

  // openRecord takes up what was kept of the work on the job that is open.
  async function openRecord() {
    const text = await records.record(jobs.id());
    if (text === null || jobs.visiting()) return;
    const answer = await engine.ask({ op: "open", text, from: "saved" }).catch(() => ({ ok: false, faults: [] }));
    if (answer.ok) apply(answer);
    else if (!engine.dead()) unread("record-unread", "record", text, answer);
  }

  // back goes from a design that was only looked at to the job, with the steps of
  // its history where they are there.
  async function back() {
    for (let answer = { canUndo: true }; answer.canUndo && jobs.visiting();) answer = await ask({ op: "undo" });
    if (jobs.visiting()) await goTo(jobs.id());
    else await takeUp();
  }

  async function goTo(id) {
    const text = store.job(id) ?? "";
    const answer = await open({ op: "open", text, from: "saved" }, { from: "job", id, silent: true });
    if (!answer.ok && !answer.died) unread("job-unread", "kept", text, answer);
    if (!answer.ok) return;
    await openRecord();
    await takeUp();
  }

  // finish does what was under way when the job was left last, before another
  // design is looked at. What is refused waits until the job is open again.
  async function finish() {
    const left = [];
    for (const edit of await jobs.stashed()) {
      const answer = await ask(edit);
      if (!answer.ok && !answer.died) left.push(edit);
    }
    jobs.leave(left);
  }

  // takeUp does the same where the job stays open: what is refused stands in its
  // field.
  async function takeUp() {
    const edits = await jobs.stashed();
    stashed = edits.length > 0;
    for (const edit of edits) {
      if (edit.op === "set") form.restore(edit);
      else ask(edit);
    }
  }

  async function openBook(alone) {
    const books = store.books();
    if (books !== null) {
      const shelved = await engine.ask({ op: "open", text: books, from: "saved" }).catch(() => ({ ok: true }));
      if (!shelved.ok) {
        store.setBooksAside(books);
        unread("books-unread", "price-books-kept", books, shelved);
      }
    }
    const text = store.book();
    if (text === null) return;
    const answer = await engine.ask({ op: "open", text, from: "saved" }).catch(() => ({ ok: false, faults: [] }));
    if (answer.ok && alone) apply(answer);
    if (answer.ok || engine.dead()) return;
    badBook = text;
    unread("book-unread", "price-book-kept", text, answer);
  }

  async function openKept(text) {
    const answer = await ask({ op: "open", text, from: "saved" }, { opened: "job" });
    if (answer.ok) await openRecord();
    if (answer.ok || engine.dead()) return;
    jobs.unreadable();
    unread("job-unread", "kept", text, answer);
  }

  // Another tab has written something. What it keeps already is not written again: it
  // may be ahead by now.
  const follow = (request) => engine.ask(request).then(apply, () => {});
  window.addEventListener("storage", (event) => {
    if (event.key === store.bookKey) {
      follow(event.newValue ? { op: "open", text: event.newValue, from: "saved" } : { op: "act", name: "example-book" });
    } else if (event.key === store.booksKey && event.newValue) {
      follow({ op: "open", text: event.newValue, from: "saved" });
    } else if (jobs.elsewhere(event)) {
      status.show("changed-elsewhere", { actions: [["show-newer", () => goTo(jobs.id())]] });
    }
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "hidden") return;
    form.flush();
    stash();
  });
  window.addEventListener("pagehide", stash);

  return {
    // begin opens what was kept. alone says that nothing else will be opened.
    async begin({ alone }) {
      if (!store.keeps()) promise("not-kept-here");
      const { text, visit } = jobs.start();
      const hidden = store.talk(); // during the visit: the job beside it may be read by a maker
      await openBook(alone && text === null && !visit);
      if (text !== null) await openKept(text);
      if (visit || !alone) await finish();
      if (visit) await ask({ op: "open", text: visit.text, from: "visit", talk: hidden }, { opened: visit.from });
    },
    // resume does what was typed before the scripts came, and what was under way
    // when the page was left.
    async resume() {
      form.flush();
      earlier = [];
      if (!jobs.visiting()) await takeUp();
    },
    // keep keeps what an answer brings. opened says from where its design comes,
    // when it is another one than before.
    keep(answer, opened, id) {
      if (answer.text) check(opened ? jobs.opened(answer, opened, id) : jobs.keep(answer));
      if (answer.record) keepRecord(answer);
      if (answer.shelf !== undefined) check(store.keepBooks(answer.shelf), "book");
      if (answer.book === undefined) return;
      status.hide("book-unread");
      check(store.keepBook(answer.book, { aside: badBook }), "book");
      badBook = null;
    },
    // restarted says that the engine's history begins anew.
    restarted: jobs.restarted,
    // answered brings what is written down up to date.
    answered() {
      if (stashed) stash();
    },
    // failed says that there is no engine, and what is with the work.
    failed() {
      stash();
      over = true;
      const text = engine.text() || (store.job(jobs.id()) ?? "");
      status.hide("restarted");
      status.show(engine.text() ? "engine-failed" : "engine-not-started", {
        lasting: true,
        details: text && unkept.size === 0 ? [status.sentence("work-kept")] : [],
        actions: [["again", () => location.reload()], ...(text ? [["save-kept", () => saveText("kept", text)]] : [])],
      });
    },
    kept,
    // safe reports whether a reload would find all that is open now.
    safe: () => store.keeps() && unkept.size === 0,
    list: {
      present: jobs.id,
      goTo,
      forget,
      async copy(id) {
        const another = copyJob(id);
        if (another === null) check(false);
        else await goTo(another);
      },
    },
    // takeIn keeps jobs of a file beside those that are here.
    async takeIn(all) {
      for (const { text, record } of all.toReversed()) { // the one begun last comes first
        const id = store.newJob();
        check(store.keepJob(id, text) && (!record || await records.keepRecord(id, record)));
      }
    },
    // job is the id of the job that is shown; empty for a design that is only looked at.
    job: () => (jobs.visiting() ? "" : jobs.id()),
    // hold promises the id of the job that is shown, which this tab writes from now on.
    hold: (revision) => jobs.hold({ text: engine.text(), revision }),
  };
}
