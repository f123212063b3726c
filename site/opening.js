// Runs before the first paint, also where no other script arrives. When a link
// or a job that was kept will take the place of the first design, its figures
// stay hidden until the engine answers. And it watches for what does not come:
// the sentences for that stand in the page.
"use strict";
(() => {
  const LATE_MS = 8000; // twice what a fast phone network takes for everything
  const page = document.documentElement;

  const keeps = () => {
    try {
      return Object.keys(localStorage).some((key) => key === "blockfield.last" || key.startsWith("blockfield.job."))
        || sessionStorage.getItem("blockfield.tab") !== null;
    } catch {
      return false; // no storage in this browser: there is nothing to open from it
    }
  };
  if (location.hash.length > 24 || keeps()) page.classList.add("opening");

  // say shows one of the sentences, in place of another.
  const say = (what) => {
    const place = document.getElementById("late");
    if (!place) {
      document.addEventListener("DOMContentLoaded", () => say(what), { once: true });
      return;
    }
    for (const line of place.querySelectorAll("[data-late]")) line.hidden = line.dataset.late !== what;
    place.querySelector("button").onclick = () => location.reload();
    place.hidden = false;
  };

  // A script that is missing, or one of those that it needs.
  window.addEventListener("error", ({ target }) => {
    if (target.tagName !== "SCRIPT") return;
    page.classList.remove("opening");
    say("missing");
  }, true);
  setTimeout(() => {
    const done = page.classList.contains("alive") || page.classList.contains("stopped");
    if (!done) say(page.dataset.scripts ? "engine" : "scripts");
  }, LATE_MS);
})();
