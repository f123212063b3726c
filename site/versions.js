// Keeps the page for flights, and sees to newer versions of it: one that has come whole
// waits until the page is closed, or until somebody asks for it. And to putting the page on
// a device: a browser that would ask by itself is told not to, the menu offers it. Where the
// browser has no room for the page the menu says that it will not open without a network.
import * as status from "./status.js";
import { keepOffline } from "./trusted.js";

const WORKER = "service-worker.js";

const show = (name, on) => { document.querySelector(`#menu [data-do="${name}"]`).closest("li").hidden = !on; };

// watchVersions returns {begin, use, install}. safe reports whether a reload finds all that
// is open now.
export function watchVersions({ safe }) {
  const workers = navigator.serviceWorker; // none where the page does not come by https
  let waiting = null; // a newer version
  let prompt = null; // of the browser, to install the page

  window.addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    prompt = event;
    show("install", true);
  });
  window.addEventListener("appinstalled", () => show("install", false));

  // An older version that is kept goes on to open without a network.
  workers?.addEventListener("message", async ({ data }) => {
    if (data !== "no room" || (await workers.getRegistration())?.active) return;
    document.getElementById("no-room").hidden = false;
    status.announceMessage("no-room");
  });

  function look(registration) {
    waiting = workers.controller && registration.waiting; // the first version is no newer one
    show("newer", waiting !== null);
  }

  return {
    async begin() {
      const registration = workers ? await keepOffline(WORKER).catch(() => null) : null;
      if (!registration) return;
      const follow = () => {
        look(registration);
        registration.installing?.addEventListener("statechange", () => look(registration));
      };
      follow(); // one may be on its way already
      registration.addEventListener("updatefound", follow);
    },
    // use reloads the page in the newer version, unless something would be lost by that or
    // another tab is still at the old one.
    use() {
      if (!safe()) {
        status.show("newer-not-kept");
        return;
      }
      const { port1, port2 } = new MessageChannel();
      workers.addEventListener("controllerchange", () => location.reload(), { once: true });
      port1.onmessage = ({ data: alone }) => {
        if (!alone) status.show("newer-others");
      };
      waiting.postMessage("take over", [port2]);
    },
    install() {
      prompt?.prompt();
      prompt = null;
      show("install", false);
    },
  };
}
