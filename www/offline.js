// Keeps the page at hand without a network, and tells when a newer one is ready.

/** What the service worker is told when a person wants the newer page. */
const SWITCH = "switch";

export async function keep() {
  if (!navigator.serviceWorker) return;
  // Relative to the page, not to this file; what only the browser has kept is not asked.
  const kept = await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
  if (kept.waiting) tell(kept.waiting);
  kept.addEventListener("updatefound", () => {
    const next = kept.installing;
    next.addEventListener("statechange", () => {
      // The first one of all is no news.
      if (next.state === "installed" && kept.active) tell(next);
    });
  });
  await kept.update();
}

/** Says that a newer page is ready; what is open stays on the old one until a person switches. */
function tell(next) {
  const words = document.createElement("p");
  words.textContent = "A newer version is ready.";
  const button = document.createElement("button");
  button.type = "button";
  button.className = "dw-button";
  button.textContent = "Switch to it";
  button.addEventListener("click", () => {
    button.disabled = true;
    next.addEventListener("statechange", () => {
      if (next.state === "activated") location.reload();
    });
    next.postMessage(SWITCH);
  });
  const notice = document.createElement("div");
  notice.className = "dw-notice";
  notice.append(words, button);
  document.getElementById("news").replaceChildren(notice);
}
