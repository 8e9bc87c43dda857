// Starts the page's module, or says in words why it can't.
import { keep } from "./offline.js";

const app = document.getElementById("app");

const NOT_RUN =
  "Dewrun could not start: this browser can't run the page's WebAssembly module. " +
  "A current Firefox, Chrome, Edge or Safari can; the command line program needs no browser at all.";
const NOT_LOADED =
  "Dewrun could not start: a part of the page did not arrive. Load the page again when there is a network.";

try {
  const { load, run } = await import("./module.js");
  const parts = await load("dewrun-web");
  await run(parts).catch((error) => explain(NOT_RUN, error));
} catch (error) {
  explain(NOT_LOADED, error);
}

keep().catch(() => {
  // The page works without, only not offline.
});

/** Puts a readable message where the page would have been. */
function explain(why, error) {
  const message = document.createElement("p");
  message.setAttribute("role", "alert");
  message.textContent = why;
  const detail = document.createElement("p");
  detail.textContent = `What the browser said: ${error}`;
  app.replaceChildren(message, detail);
}
