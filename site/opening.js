// Runs before the first paint. When a link or a job that was kept will take the
// place of the first design, its figures stay hidden until the engine answers.
"use strict";
(() => {
  let kept = null;
  try {
    kept = localStorage.getItem("blockfield.job");
  } catch {
    // No storage in this browser: there is nothing to open from it.
  }
  if (kept !== null || location.hash.length > 24) document.documentElement.classList.add("opening");
})();
