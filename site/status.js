// Says things above the page, in the engine's words: the sentences stand ready
// in the document, by their key.

const bar = document.getElementById("status");
const live = document.getElementById("announce");
const working = document.getElementById("working");

export const sentence = (key) => document.querySelector(`#messages [data-message="${key}"]`)?.textContent ?? "";

// speak turns the page to another language: says holds what its elements say, by key.
export function speak({ language, says }) {
  document.documentElement.lang = language;
  const each = (name, put) => {
    for (const place of document.querySelectorAll(`[data-${name}]`)) put(place, place.getAttribute(`data-${name}`));
  };
  each("say", (place, key) => { place.textContent = says[key]; });
  each("say-title", (place, key) => { place.title = says[key]; });
  each("say-label", (place, key) => place.setAttribute("aria-label", says[key]));
  each("say-content", (place, key) => { place.content = says[key]; });
  each(`in-${language}`, (place, text) => { place.textContent = text; });
}

// told are the faults of an answer, one a line.
export const told = (answer) => (answer.faults ?? []).map((fault) => [fault.label || fault.path, fault.message].filter(Boolean).join(": "));

const element = (name, text) => {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
};

// worded is an element that turns to another language with the page.
const worded = (name, key) => {
  const made = element(name, sentence(key));
  made.dataset.say = `message/${key}`;
  return made;
};

const button = (key, act) => {
  const made = worded("button", key);
  made.type = "button";
  made.addEventListener("click", act);
  return made;
};

// announce speaks to a screen reader.
export function announce(text) {
  live.textContent = text;
}

export function announceMessage(key) {
  announce(sentence(key));
}

// work shows, out of everything's way, that an answer takes long.
export function work(on) {
  if (working.hidden !== on) return;
  working.hidden = !on;
  if (on) announce(working.textContent);
}

const said = (key) => bar.querySelector(`[data-said="${key}"]`);

// hide takes messages away.
export function hide(...keys) {
  for (const key of keys) said(key)?.remove();
  if (!bar.hasChildNodes()) bar.hidden = true;
}

// list shows details, and says so when not all of them are in sight.
function list(details) {
  const made = element("ul", "");
  made.append(...details.map((line) => element("li", line)));
  made.tabIndex = 0;
  const more = worded("p", "more-below");
  more.className = "small";
  more.hidden = true;
  requestAnimationFrame(() => {
    more.hidden = made.scrollHeight <= made.clientHeight + 1;
    if (more.hidden) made.removeAttribute("tabindex");
  });
  return [made, more];
}

// show puts a message above the page until it is closed. The one of the same
// name, if any, gives way to it: as, or else the key. details are further lines;
// actions are [key, function] of buttons; copy is a text to be copied by hand;
// lasting messages have no button that closes them; also is a sentence of an
// answer, which follows the one of the key.
export function show(key, { as = key, also = "", details = [], actions = [], copy = "", lasting = false } = {}) {
  const message = document.createElement("div");
  message.className = "said";
  message.dataset.said = as;
  const text = document.createElement("div");
  text.append(also ? element("p", [sentence(key), also].filter(Boolean).join(" ")) : worded("p", key));
  if (details.length > 0) text.append(...list(details));
  message.append(text, ...actions.map(([name, act]) => button(name, act)));
  if (!lasting) message.append(button("dismiss", () => hide(as)));
  if (copy) {
    const field = document.createElement("input");
    field.type = "text";
    field.readOnly = true;
    field.value = copy;
    field.setAttribute("aria-label", sentence(key));
    message.append(field);
  }
  said(as)?.remove();
  bar.append(message);
  bar.hidden = false;
  message.querySelector("input")?.select();
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
