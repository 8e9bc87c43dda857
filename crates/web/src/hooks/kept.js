// What the browser keeps under names: at once where there is little room, and a moment later for good. It may refuse both.
const TABLE = "projects";
let database;

const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const table = (mode) => database.transaction(TABLE, mode).objectStore(TABLE);

/** Whether a text was kept by another window after `seen`: its first line says when and by which. */
function isTheirs(text, window, seen) {
  const [, , time, by] = text.split("\n", 1)[0].split(" ");
  return by !== undefined && by !== window && Number(seen) < Number(time);
}

/** All that is kept at once: a name, its text, the next name .. */
export function quick() {
  try {
    return Object.entries(localStorage).flat();
  } catch {
    return [];
  }
}

/** Keeps a text at once, or forgets it; gives what another window kept instead, and false where the browser refuses. */
export function keepQuickly(name, text, window, seen) {
  try {
    const before = localStorage.getItem(name);
    if (before !== null && isTheirs(before, window, seen)) return before;
    if (text === undefined) localStorage.removeItem(name);
    else localStorage.setItem(name, text);
    return true;
  } catch {
    return false;
  }
}

/** All that is kept for good: a name, its text, the next name .. */
export async function kept() {
  const request = indexedDB.open("dewrun", 1);
  request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
  database = await done(request);
  const read = table("readonly");
  const [names, texts] = await Promise.all([done(read.getAllKeys()), done(read.getAll())]);
  return names.flatMap((name, at) => [name, texts[at]]);
}

/** As `keepQuickly`, for good; within one transaction no other window comes between. */
export async function keep(name, text, window, seen) {
  try {
    const write = table("readwrite");
    const before = await done(write.get(name));
    if (typeof before === "string" && isTheirs(before, window, seen)) return before;
    await done(text === undefined ? write.delete(name) : write.put(text, name));
    return true;
  } catch {
    return false;
  }
}
