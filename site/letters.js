// Hands a letter on: to the share sheet where the browser has one that takes files, or
// else as a file beside a mail that the engine has begun.
import { saveFile } from "./files.js";
import { announce, sentence } from "./status.js";

const byID = (id) => document.getElementById(id);

function say(key) {
  const note = byID("letter-note");
  if (!note) return;
  note.textContent = sentence(key);
  note.hidden = false;
  announce(note.textContent);
}

// shared promises "done", "given up" by the person, or "not" where the browser does not.
async function shared({ name, type, text }) {
  const files = [new File([text], name, { type })];
  if (!navigator.canShare?.({ files })) return "not";
  const address = byID("send-mail")?.textContent;
  return navigator.share({ files, title: name, ...(address && { text: address }) })
    .then(() => "done", ({ name: why }) => (why === "AbortError" ? "given up" : "not"));
}

export async function sendLetter(file) {
  const how = await shared(file);
  if (how === "done") say("letter-shared");
  if (how !== "not") return;
  saveFile(file);
  say("letter-attach");
  byID("send-mail")?.click();
}
