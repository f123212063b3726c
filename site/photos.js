// Pictures of the wall, its studs, its damage and the way in: they stay with the job in
// this browser, and go into no design file and no link. They leave it one by one when
// somebody saves them, or with the letter in which a client writes to a workshop. They
// are drawn anew before they are kept, smaller and without what a camera writes beside
// them, such as the place.
import { base64, bytesOf, saveFile } from "./files.js";
import * as records from "./records.js";
import * as status from "./status.js";

const LONGEST = 2000; // pixels of the longer side
const MOST = 40; // of one job
const SENT = 6; // with a letter: the engine takes so many, of so many bytes and pixels a side
const SENT_BYTES = 350_000;
const SENT_SIDES = [1600, 1200, 800];
const TYPE = "image/jpeg";
const QUALITY = 0.85;

// drawnAnew promises a picture in our size, or null for what is none.
async function drawnAnew(file, longest = LONGEST) {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return null;
  const k = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * k));
  canvas.height = Math.max(1, Math.round(picture.height * k));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => {
    canvas.toBlob(resolve, TYPE, QUALITY);
  });
}

// small promises a picture that is small enough to be sent, or null.
async function small({ kind, day, blob }) {
  for (const side of SENT_SIDES) {
    const drawn = await drawnAnew(blob, side);
    if (drawn && drawn.size <= SENT_BYTES) return { kind, day, jpeg: await base64(drawn) };
  }
  return null;
}

// watchPhotos returns {dress, toSend, keep}. job is the id of the job that is shown; hold promises the
// id of the one that is to keep something, or null where nothing can be kept.
export function watchPhotos({ root, job, hold }) {
  let addresses = []; // of the pictures that are shown
  let drawing = 0; // counts the times that they were asked for

  const place = () => document.getElementById("photos");
  const label = (kind) => root.querySelector(`[data-photo="${kind}"]`)?.dataset.label ?? "";

  function card({ key, kind, day, blob }) {
    const made = document.getElementById("photo-card").content.firstElementChild.cloneNode(true);
    const image = made.querySelector("img");
    const text = `${label(kind)}, ${day}`;
    image.src = URL.createObjectURL(blob);
    image.alt = text;
    addresses.push(image.src);
    made.querySelector("figcaption").textContent = text;
    made.querySelector("[data-photo-save]").addEventListener("click", () =>
      saveFile({ name: `${kind}-${day}.jpg`, type: TYPE, text: blob }));
    made.querySelector("[data-photo-drop]").addEventListener("click", () => drop({ key, kind, day, blob }));
    return made;
  }

  async function show() {
    const into = place();
    if (!into) return;
    drawing += 1;
    const mine = drawing;
    const id = job();
    const all = await records.photos(id);
    if (mine !== drawing || !into.isConnected) return;
    for (const address of addresses) URL.revokeObjectURL(address);
    addresses = [];
    into.replaceChildren(...all.map(card));
    into.dataset.job = id;
    document.getElementById("photo-count").textContent = all.length > 0 ? ` (${all.length})` : "";
  }

  async function drop(photo) {
    await records.dropPhoto(photo.key);
    const putBack = async () => {
      await records.keepPhoto(photo.key, photo);
      status.hide("photo-dropped");
      show();
    };
    status.show("photo-dropped", { actions: [["put-back", putBack]] });
    show();
  }

  async function add(kind, files) {
    status.hide("photo-unread", "photos-full", "photo-not-kept");
    const id = await hold();
    let room = MOST - (id === null ? 0 : (await records.photos(id)).length);
    for (const [i, file] of [...files].entries()) {
      const blob = await drawnAnew(file);
      if (!blob) {
        status.show("photo-unread", { details: [file.name] });
      } else if (id !== null && room <= 0) {
        status.show("photos-full");
        break;
      } else {
        const now = new Date();
        const photo = { kind, day: now.toISOString().slice(0, 10), blob };
        const kept = id !== null && await records.keepPhoto(`${id}/${now.toISOString()}-${i}`, photo);
        if (!kept) status.show("photo-not-kept");
        room -= 1;
      }
    }
    show();
  }

  root.addEventListener("change", ({ target }) => {
    if (!target.dataset.photo || target.files.length === 0) return;
    const files = [...target.files];
    target.value = "";
    add(target.dataset.photo, files);
  });

  return {
    // toSend promises the pictures that go along with a letter.
    async toSend() {
      const all = await records.photos(job());
      return (await Promise.all(all.slice(0, SENT).map(small))).filter(Boolean);
    },
    // keep keeps the pictures that came with a letter with the job that it has opened.
    async keep(all) {
      for (const { kind, jpeg } of all) await add(kind, [new File([bytesOf(jpeg)], kind, { type: TYPE })]);
    },
    // dress fills the place of the pictures when it was drawn anew or another job is shown.
    dress() {
      const into = place();
      if (into && into.dataset.job !== job()) show();
    },
  };
}
