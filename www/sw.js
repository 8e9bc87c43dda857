// Keeps the page usable offline. A release fills in the next two lines; without them it does nothing.
const BUILD = "";
const FILES = [];

const CACHE = `dewrun-${BUILD}`;
/** How long a reload waits for the network before it shows the page kept. */
const PATIENCE_MS = 3000;

self.addEventListener("install", (event) => {
  if (BUILD) event.waitUntil(fill());
});

self.addEventListener("activate", (event) => {
  if (BUILD) event.waitUntil(dropOldBuilds());
});

self.addEventListener("fetch", (event) => {
  const own = new URL(event.request.url).origin === self.location.origin;
  if (BUILD && own && event.request.method === "GET") event.respondWith(answer(event.request));
});

/** Takes the whole build from the network, past the browser's own cache. */
async function fill() {
  const cache = await caches.open(CACHE);
  await cache.addAll(["./", ...FILES].map((file) => new Request(file, { cache: "reload" })));
}

async function dropOldBuilds() {
  const old = (await caches.keys()).filter((name) => name.startsWith("dewrun-") && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** The page itself from the network when it answers soon, since it names its own build; all else from the build kept. */
async function answer(request) {
  const cache = await caches.open(CACHE);
  if (request.mode === "navigate") {
    const kept = await cache.match("./");
    return kept ? Promise.race([fetch(request).catch(() => kept), later(kept)]) : fetch(request);
  }
  return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
}

function later(response) {
  return new Promise((resolve) => setTimeout(() => resolve(response.clone()), PATIENCE_MS));
}
