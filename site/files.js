// Files in and out: open, drop, save, and a link for the clipboard.

// The engine says what is too large for a design; this only keeps a browser
// from reading a film.
const MOST_BYTES = 16 << 20;

// watchFiles calls opened(text) for a chosen or dropped file.
export function watchFiles({ input, drop, opened, tooLarge, notRead }) {
  const take = async (file) => {
    if (!file) return;
    if (file.size > MOST_BYTES) {
      tooLarge();
      return;
    }
    const text = await file.text().catch(() => null); // a folder, or a file that has gone
    if (text === null) notRead();
    else opened(text);
  };
  input.addEventListener("change", () => {
    take(input.files[0]);
    input.value = "";
  });
  const hasFiles = (event) => event.dataTransfer?.types.includes("Files");
  document.addEventListener("dragover", (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    drop.hidden = false;
  });
  document.addEventListener("dragleave", (event) => {
    if (!event.relatedTarget) drop.hidden = true;
  });
  document.addEventListener("drop", (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    drop.hidden = true;
    take(event.dataTransfer.files[0]);
  });
}

export function saveFile({ name, type, text, bytes }) {
  const content = bytes ? bytesOf(bytes) : text;
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

// bytesOf reads base64.
export const bytesOf = (text) => Uint8Array.from(atob(text), (one) => one.charCodeAt(0));

// base64 is the content of a file as the engine takes it.
export function base64(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result.slice(reader.result.indexOf(",") + 1));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

const COPY_MS = 1000; // a browser that asks first may never answer

// copy reports whether the clipboard has taken the text.
export async function copy(text) {
  const late = new Promise((_, reject) => {
    setTimeout(reject, COPY_MS);
  });
  try {
    await Promise.race([navigator.clipboard.writeText(text), late]);
    return true;
  } catch {
    return false;
  }
}
