// Keeps the open design in this browser, after every edit and at once.

const KEY = "blockfield.job"; // opening.js reads it too

export function load() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

// save reports whether the browser has kept the text.
export function save(text) {
  try {
    localStorage.setItem(KEY, text);
    return true;
  } catch {
    return false;
  }
}
