// Starts the page's module, or says in words why it can't.
import { keep } from "./offline.js";

const app = document.getElementById("app");

const NOT_RUN =
  "Dewrun could not start: this browser can't run the page's WebAssembly module. " +
  "A current Firefox, Chrome, Edge or Safari can; the command line program needs no browser at all.";
const NOT_LOADED =
  "Dewrun could not start: a part of the page did not arrive. Load the page again when there is a network.";

try {
  const parts = await Promise.all([
    import("./dewrun-web.js"),
    import("./unpack.js"),
    load(new URL("./dewrun-web_bg.wasm", import.meta.url)),
  ]);
  await start(...parts).catch((error) => explain(NOT_RUN, error));
} catch (error) {
  explain(NOT_LOADED, error);
}

keep().catch(() => {
  // The page works without, only not offline.
});

async function load(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address.pathname}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

async function start(page, { unpack }, file) {
  await page.default({ module_or_path: unpack(file) });
}

/** Puts a readable message where the page would have been. */
function explain(why, error) {
  const message = document.createElement("p");
  message.setAttribute("role", "alert");
  message.textContent = why;
  const detail = document.createElement("p");
  detail.textContent = `What the browser said: ${error}`;
  app.replaceChildren(message, detail);
}
