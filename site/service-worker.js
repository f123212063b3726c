// The service worker keeps the whole site in one cache a version, so that the
// page opens without a network after the first visit. The build puts two
// constants before this text: VERSION, a hash over the whole site, and FILES,
// the addresses to keep, relative to this script.
//
// A new version is fetched whole before it is used, and waits until every page
// of the old one is closed: a page never sees files of two versions.
"use strict";

const PREFIX = "blockfield-";
const CACHE = PREFIX + VERSION;

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)));
});

self.addEventListener("activate", (event) => {
  const clean = async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  };
  event.waitUntil(clean());
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
