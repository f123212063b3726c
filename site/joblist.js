// The list of the jobs that this browser keeps, in the file menu: to go back to one, to
// begin another like it, or to take it out for good. The engine makes the list.
const MOST_UNSOUGHT = 6; // jobs that are found at a glance

// watchJobList fills the list whenever its menu is opened. jobs() promises the kept jobs
// and present() is the id of the one that is open. Nothing is listed during a talk.
export function watchJobList({ menu, place, ask, jobs, talking, present, goTo, copy, forget }) {
  const wanted = place.querySelector("input");
  const fill = async () => {
    const all = await jobs();
    place.hidden = all.length < 2 || talking();
    wanted.closest("p").hidden = all.length <= MOST_UNSOUGHT;
    await ask({ op: "jobs", jobs: all, name: present(), value: wanted.value });
  };
  menu.addEventListener("toggle", () => {
    if (menu.open) fill();
    else place.querySelector("#job-list").replaceChildren(); // it is of then
  });
  wanted.addEventListener("input", fill);
  place.addEventListener("click", async ({ target }) => {
    const { job, jobCopy, jobForget } = target.closest("button")?.dataset ?? {};
    if (job || jobCopy) {
      menu.open = false;
      await (job ? goTo(job) : copy(jobCopy));
    } else if (jobForget) {
      await forget(jobForget);
      fill();
    }
  });
}
