// Keeps the page usable offline. A release fills in the next two lines; without them it does nothing.
const BUILD = "";
const FILES = [];

const OURS = "dewrun-";
const CACHE = OURS + BUILD;
/** What the page says when a person wants the newer build. */
const SWITCH = "switch";

self.addEventListener("install", (event) => {
  if (BUILD) event.waitUntil(fill());
});

self.addEventListener("activate", (event) => {
  if (BUILD) event.waitUntil(dropOldBuilds());
});

self.addEventListener("message", (event) => {
  if (event.data === SWITCH) self.skipWaiting();
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

/** Drops all builds but this one and that before it, on which another tab may still be open. */
async function dropOldBuilds() {
  const old = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.slice(0, -1).map((name) => caches.delete(name)));
}

/**
 * The page of this build, whatever the network has by now, and then the files that it names:
 * each build's lie in a folder of their own, so that two never mix.
 */
async function answer(request) {
  if (isPage(request)) {
    const cache = await caches.open(CACHE);
    return (await cache.match("./")) ?? fetch(request);
  }
  return (await caches.match(request, { ignoreSearch: true })) ?? fetch(request);
}

function isPage(request) {
  const { origin, pathname } = new URL(request.url);
  const page = new URL("./", self.location).href;
  return request.mode === "navigate" && [page, `${page}index.html`].includes(origin + pathname);
}
