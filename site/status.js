// Says things above the page, in the engine's words: the sentences stand ready
// in the document, by their key.

const bar = document.getElementById("status");
const live = document.getElementById("announce");

const sentence = (key) => document.querySelector(`#messages [data-message="${key}"]`)?.textContent ?? "";

const element = (name, text) => {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
};

// announce speaks to a screen reader.
export function announce(text) {
  live.textContent = text;
}

export function announceMessage(key) {
  announce(sentence(key));
}

export function hide() {
  bar.hidden = true;
}

// show puts a message above the page until it is closed. details are further
// lines; copy is a text to be copied by hand.
export function show(key, { details = [], copy = "" } = {}) {
  const text = document.createElement("div");
  text.append(element("p", sentence(key)));
  if (details.length > 0) {
    const list = document.createElement("ul");
    list.append(...details.map((line) => element("li", line)));
    text.append(list);
  }
  const close = element("button", sentence("dismiss"));
  close.type = "button";
  close.addEventListener("click", hide);
  bar.replaceChildren(text, close);
  if (copy) {
    const field = document.createElement("input");
    field.type = "text";
    field.readOnly = true;
    field.value = copy;
    field.setAttribute("aria-label", sentence(key));
    bar.append(field);
    field.select();
  }
  bar.hidden = false;
}

// showLink says at the button what became of a link, and shows it for whoever
// copies by hand. It reports whether there is such a place on the page.
export function showLink(key, url) {
  const note = document.getElementById("link-note");
  const field = document.getElementById("link-text");
  if (!note || !field) return false;
  note.textContent = sentence(key);
  field.value = url;
  note.hidden = false;
  field.hidden = false;
  field.select();
  return true;
}
