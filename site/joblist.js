// The list of the jobs that this browser keeps, in the file menu: to go back to
// one, or to take it out for good. It shows when there is another than the one
// that is open.
import * as store from "./store.js";
import { sentence } from "./status.js";

const made = (name, text, className) => {
  const element = document.createElement(name);
  element.textContent = text;
  if (className) element.className = className;
  return element;
};

const when = new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" });

function entry({ id, begun, title }, { goTo, forget }) {
  const row = document.createElement("li");
  const open = made("button", "");
  open.type = "button";
  open.append(made("span", title || sentence("job-untitled")), made("small", when.format(begun)));
  open.addEventListener("click", () => goTo(id));
  const away = made("button", "×", "icon");
  away.type = "button";
  away.title = sentence("job-forget");
  away.setAttribute("aria-label", `${sentence("job-forget")}: ${title || sentence("job-untitled")}`);
  away.addEventListener("click", () => forget(id));
  row.append(open, away);
  return row;
}

// watchJobList fills the list whenever its menu is opened. present() is the id
// of the job that is open.
export function watchJobList({ menu, place, present, goTo, forget }) {
  const list = place.querySelector("ul");
  const fill = () => {
    const others = store.jobs().filter(({ id }) => id !== present());
    list.replaceChildren(...others.map((job) => entry(job, {
      goTo: (id) => { menu.open = false; goTo(id); },
      forget: (id) => { forget(id); fill(); },
    })));
    place.hidden = others.length === 0;
  };
  menu.addEventListener("toggle", () => menu.open && fill());
}
