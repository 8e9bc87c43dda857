// Starts the page's module, or says in words why it can't.
const app = document.getElementById("app");

try {
  const [page, { unpack }, file] = await Promise.all([
    import("./dewrun-web.js"),
    import("./unpack.js"),
    load(new URL("./dewrun-web_bg.wasm", import.meta.url)),
  ]);
  await page.default({ module_or_path: unpack(file) });
} catch (error) {
  explain(error);
}

// Under the development server of trunk there is no service worker to register.
if ("serviceWorker" in navigator) {
  navigator.serviceWorker
    .register("sw.js", { updateViaCache: "none" })
    .then((registration) => registration.update())
    .catch(() => {
      // The page works without it, only not offline.
    });
}

async function load(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address.pathname}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

/** Puts a readable message where the page would have been. */
function explain(error) {
  const message = document.createElement("p");
  message.setAttribute("role", "alert");
  message.textContent =
    "Dewrun could not start: this browser can't run the page's WebAssembly module. " +
    "A current Firefox, Chrome, Edge or Safari can; the command line program needs no browser at all.";
  const detail = document.createElement("p");
  detail.textContent = `What the browser said: ${error}`;
  app.replaceChildren(message, detail);
}
