// The likely causes on the empty page, by what was tapped there: ranked by the worker that ranks them in the section Troubles.
import "./dewrun-workshop-style.js";

let worker;
let isReady = false;
let jobs = 0;
/** The newest question, until it is sent; and the place of its answer. */
let waiting;
let room;

function begin() {
  worker = new Worker(new URL("almanac.js", document.querySelector("script[type=module]").src), { type: "module" });
  worker.onmessage = ({ data: { job, kind, body } }) => {
    if (kind === "ready") {
      isReady = true;
      sends();
    }
    if (kind === "ranked-troubles" && job === jobs) shows(body);
  };
  worker.onerror = () => (room.textContent = "Causes can\u2019t be ranked here; draw the route and look in the section Troubles.");
}

function sends() {
  if (isReady && waiting) worker.postMessage({ job: ++jobs, kind: "troubles", body: waiting });
  if (isReady) waiting = undefined;
}

function shows({ causes, advice, rests }) {
  room.innerHTML = `<div class="dw-troubles__found"><div>${causes}</div><div class="dw-troubles__next" role="group" aria-label="Next check"><p class="dw-year__part">Next check</p>${advice}</div></div><p class="dw-troubles__rests">${rests}</p>`;
}

/** Ranks the causes of a project's troubles into a place; `numbers` begin with the style. */
export function rank(place, project, numbers) {
  room = place;
  const text = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
  waiting = { key: "", project, run: 0, numbers: [...numbers, place.clientWidth, text] };
  if (!worker) begin();
  sends();
}
