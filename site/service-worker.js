// The service worker keeps the whole site in one cache a version, so that the
// page opens without a network after the first visit. The build puts two
// constants before this text: VERSION, a hash over the whole site, and FILES,
// the addresses to keep, relative to this script, each with the digest of its file.
//
// A new version is fetched whole before it is used, and no file that is not its own is
// taken: while a site is being copied to its server, old files lie beside new ones. It
// waits until every page of the old one is closed, or until the only one that is open
// asks for it: a page never sees files of two versions.
"use strict";

const PREFIX = "blockfield-";
const CACHE = PREFIX + VERSION;

// fetched keeps one file. Its folder is named by what lies in it, so a browser may have it
// already, if not a broken one; what keeps its address is asked for anew.
async function fetched(cache, [address, integrity]) {
  const get = (mode) => fetch(address, { integrity, cache: mode });
  const answer = await (address.startsWith("a-") ? get("default").catch(() => get("reload")) : get("no-cache"));
  if (!answer.ok || answer.redirected) throw new TypeError(`${address}: ${answer.status}`);
  await cache.put(address, answer);
}

async function install() {
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(FILES.map((file) => fetched(cache, file)));
  } catch (error) {
    await caches.delete(CACHE); // half a site takes room and helps nobody
    if (error.name === "QuotaExceededError") await tellPages("no room");
    throw error;
  }
}

async function tellPages(what) {
  for (const page of await self.clients.matchAll({ type: "window", includeUncontrolled: true })) page.postMessage(what);
}

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => {
  const clean = async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  };
  event.waitUntil(clean());
});

// A page asks for the version that waits. It answers whether it is the only page.
self.addEventListener("message", (event) => {
  if (event.data !== "take over") return;
  const takeOver = async () => {
    const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
    const alone = pages.length <= 1;
    event.ports[0].postMessage(alone);
    if (alone) await self.skipWaiting();
  };
  event.waitUntil(takeOver());
});

// kept is the kept answer to a request, or undefined. The page has one address;
// whatever stands behind "?" or "#" is for the page itself.
const kept = async (request) => {
  const cache = await caches.open(CACHE);
  return cache.match(request, { ignoreSearch: request.mode === "navigate", ignoreVary: true });
};

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(kept(request).then((answer) => answer || fetch(request)));
});
