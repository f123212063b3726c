// Which design this tab shows, and which of the kept jobs it writes.
//
// A maker with two tabs has two jobs in hand, or the same one twice by mistake.
// So each tab writes a job of its own. Of a job that is open twice the tab that
// had it first goes on writing it; the other begins a job of its own with its
// first edit, and says so: no edit is lost, and nobody has to choose under way.
//
// A design that was only looked at (a link, an example, a fresh one) is a visit:
// it lasts as long as the tab, and becomes a job when it is edited or taken over.
import * as store from "./store.js";

const LOCK_MS = 500; // a page that is being reloaded may hold its job for a moment yet

// makeJobs says with say(key, actions) and unsay(...keys) what a person should
// know. first is the revision that the page comes with: a job that is no more
// than that is worth no question. back and goTo(id) are what buttons do; notKept()
// says that the browser has not kept what had to wait before it was given it.
export function makeJobs({ first, say, unsay, notKept, back, goTo }) {
  let { id = store.lastJob() ?? store.newJob(), visit = null } = store.tab();
  let own = null; // revision of the job, when it is worth keeping beside a visit
  let ours = null; // whether this tab writes the job; null: not known yet
  let claim = 0; // counts the jobs that this tab has taken
  let release = () => {};
  let held = null; // an answer that waits until it is known
  let settled = Promise.resolve();
  // The history of the engine leads over several openings of designs, each of
  // which has a place of its own: a job, a visit beside one, or nothing yet.
  let opening = 0; // the one that is shown
  const places = new Map(); // opening -> {id, visit} of the others

  const worth = (revision) => (revision === first ? null : revision);

  function decide(mark, answer) {
    if (claim !== mark) return;
    ours = answer;
    const last = held;
    held = null;
    if (last && !keep(last)) notKept();
  }

  // take makes a job the one that this tab writes, unless another tab does.
  // Without locks a browser says only afterwards that another tab has written.
  function take(next, { fresh = false } = {}) {
    release();
    release = () => {};
    claim += 1;
    const mark = claim;
    id = next;
    ours = fresh || !navigator.locks ? true : null;
    if (!navigator.locks) return;
    settled = new Promise((known) => {
      const mine = () => {
        decide(mark, true);
        known();
        return claim === mark ? new Promise((done) => { release = done; }) : undefined;
      };
      const theirs = () => {
        decide(mark, false);
        known();
      };
      navigator.locks.request(store.jobKey(id), { signal: AbortSignal.timeout(LOCK_MS) }, mine).catch(theirs);
    });
  }

  function remember() {
    store.setTab({ id, visit });
  }

  function write(text) {
    remember();
    store.setLastJob(id);
    return store.keepJob(id, text);
  }

  // begin begins another job and leaves the present one as it is.
  function begin() {
    const before = id;
    take(store.newJob(), { fresh: true });
    return before;
  }

  function leaveVisit() {
    visit = null;
    unsay("shown");
    if (own === null) return;
    const before = begin();
    say("visit-edited", [["before", () => goTo(before)]]);
  }

  function part() {
    const shared = store.job(id) !== null;
    begin();
    if (shared) say("apart", []);
  }

  // leaveFor remembers the place of the opening that is shown, and turns to another.
  function leaveFor(next) {
    places.set(opening, visit ? { id, visit } : own === null ? {} : { id });
    opening = next;
  }

  // follow goes to the place that a step of the history leads to, and reports
  // whether there is one. Where nothing was worth keeping nothing is.
  function follow({ opening: next, revision }) {
    leaveFor(next);
    const place = places.get(next) ?? {};
    unsay("shown", "visit-edited", "apart", "changed-elsewhere");
    visit = place.visit ?? null;
    if (visit) sayVisit();
    else own = worth(revision);
    if (place.id === undefined) begin();
    else if (place.id !== id) take(place.id);
    remember();
    return place.id !== undefined;
  }

  // keep keeps the document of an answer, and reports whether the browser did.
  function keep(answer) {
    const { text, revision } = answer;
    if (answer.opening !== opening && !follow(answer)) return true;
    if (visit && revision === visit.revision) {
      visit.text = text;
      remember();
      return true;
    }
    if (visit) leaveVisit();
    if (ours === null) {
      held = answer;
      return true;
    }
    if (ours === false) {
      if (revision === own || own === null && revision === first) return true; // another view of the same design
      part();
    }
    own = worth(revision);
    return write(text);
  }

  function opened(answer, from, other = id) {
    const { text, revision } = answer;
    if (from === "job") {
      if (other !== id || ours === false) take(other);
      restarted(answer);
      store.setLastJob(id);
      visit = null;
      unsay("shown", "visit-edited", "apart", "changed-elsewhere");
      own = worth(revision);
      remember();
      return true;
    }
    if (answer.opening === opening) return keep(answer); // the same design again
    leaveFor(answer.opening);
    if (own === null) return keep(answer);
    if (from === "file") {
      visit = null;
      unsay("shown");
      begin();
      own = worth(revision);
      return write(text);
    }
    visit = { from, revision, text };
    remember();
    unsay("visit-edited");
    sayVisit();
    return true;
  }

  function sayVisit() {
    say(`shown-${visit.from}`, [["back", back], ...(visit.from === "new" ? [] : [["keep-this", keepVisit]])], "shown");
  }

  // restarted begins with a history that leads nowhere but on.
  function restarted(answer) {
    places.clear();
    opening = answer.opening;
  }

  // hold makes the job that is shown one that this tab writes, since something is to
  // be kept beside its design: a visit is taken over, a job of another tab is left to
  // it. It promises the id, or null where nothing could be kept.
  async function hold({ text, revision }) {
    await settled;
    if (visit) keepVisit();
    else if (ours === false) part();
    own = worth(revision);
    return write(text) ? id : null;
  }

  function keepVisit() {
    const { text, revision } = visit;
    visit = null;
    unsay("shown");
    begin();
    own = worth(revision);
    if (!write(text)) notKept();
  }

  return {
    keep,
    hold,
    opened,
    restarted,
    visiting: () => visit !== null,
    // start is what the tab should open: the text of its job and of its visit.
    start() {
      take(id);
      return { text: store.job(id), visit };
    },
    // unreadable leaves a job that cannot be read where it is, and begins another.
    unreadable() {
      begin();
      own = null;
    },
    take,
    id: () => id,
    // stash keeps edits that are still under way, for whoever opens the job next.
    stash(requests, text) {
      if (requests.length === 0 && (visit || ours !== true)) return;
      if (requests.length > 0 && (visit || ours === false)) {
        if (visit) leaveVisit();
        else part();
        if (text) store.keepJob(id, text);
      }
      if (requests.length > 0) {
        store.setLastJob(id);
        remember();
      }
      store.keepEdits(id, requests);
    },
    // earlier are the edits that were under way at the last visit; stashed the
    // same once it is known that no other tab is at them.
    earlier: () => (ours === false ? [] : store.edits(id)),
    async stashed() {
      await settled;
      return ours === true ? store.edits(id) : [];
    },
    // leave writes down which of them are left.
    leave(requests) {
      if (ours === true) store.keepEdits(id, requests);
    },
    // elsewhere reports whether another tab has written the job that is shown.
    elsewhere({ key, newValue }) {
      if (key !== store.jobKey(id) || newValue === null) return false;
      ours = false;
      return visit === null;
    },
  };
}
