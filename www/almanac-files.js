// Weather files that the browser keeps, by the hash of their bytes. It may refuse to.
const TABLE = "files";
let opening;

const done = (request) =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function database() {
  opening ??= (() => {
    const request = indexedDB.open("dewrun-weather", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    return done(request);
  })();
  return opening;
}

const table = async (mode) => (await database()).transaction(TABLE, mode).objectStore(TABLE);

/** Keeps a file; says whether it is kept. */
export async function keep(hash, file) {
  try {
    await done((await table("readwrite")).put({ file }, hash));
    return true;
  } catch {
    return false;
  }
}

/** The file of that hash; nothing where it is not kept. */
export async function find(hash) {
  try {
    return (await done((await table("readonly")).get(hash)))?.file;
  } catch {
    return undefined;
  }
}
