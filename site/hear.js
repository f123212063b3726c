// Has the sound of the open design worked out in a second worker, one design at
// a time. What comes of an older one than the newest is dropped.
import { makeHelper } from "./helper.js";
import { insert } from "./trusted.js";

// A design is heard once edits rest for so long: until then those have the processors.
const REST_MS = 150;
const OVERDUE_MS = 1_000; // how long a design that is no longer wanted may keep a newer one waiting
// The slowest honest hearing: a panel of the most cells takes 3.5 s as a module
// under Node on a busy desk computer, and a slow phone is taken to need six times
// as long (common practice, no source). What takes thrice that is given up.
const HEAR_MS = 60_000;

// makeHearing calls heard(answer) with what was heard of the newest design, and
// deaf(revision) when that one could not be.
export function makeHearing({ url, heard, deaf }) {
  let begun = false; // the page is alive: there is time for sound
  let newest = null; // {text, revision} that the page shows
  let pictures = []; // of what was heard last
  let rest = 0;
  const helper = makeHelper({ url, done: settle, failed: ({ key }) => undress(key), overdueMs: OVERDUE_MS });

  function hear() {
    if (!begun || newest === null) return;
    clearTimeout(rest);
    rest = setTimeout(() => {
      helper.want({ key: newest.revision, request: { op: "hear", text: newest.text }, limitMs: HEAR_MS });
    }, REST_MS);
  }

  function settle(answer, { key }) {
    if (!answer.ok) undress(key);
    if (!answer.ok || key !== newest.revision) return;
    pictures = answer.fragments ?? [];
    dress();
    heard(answer);
  }

  // undress takes the pictures away where the newest design was not heard.
  function undress(revision) {
    if (revision !== newest.revision) return;
    pictures = pictures.map(({ target }) => ({ target, html: "" }));
    dress();
    deaf(revision);
  }

  // dress puts the pictures into their places, where those are there and open.
  function dress() {
    for (const { target, html } of pictures) {
      const fold = document.getElementById(target)?.closest("details");
      if (!fold || fold.open) insert(target, html);
    }
  }
  document.addEventListener("toggle", dress, true);

  return {
    dress,
    // want says which design the page shows. again: what was heard of it is lost.
    want({ text, revision }, { again = false } = {}) {
      if (!text || !revision || newest?.revision === revision && !again) return;
      newest = { text, revision };
      hear();
    },
    begin() {
      begun = true;
      hear();
    },
  };
}
