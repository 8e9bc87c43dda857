// Long work is done by a worker, which runs the page's second module.
import { lent, load } from "./workshop.js";

/** A worker that is wanted for something newer and says nothing for so long is ended, ms. */
const PATIENCE = 500;
/** Where a year is shown it follows a change first: cores are few. Nothing waits longer for it, ms. */
const YEAR_FIRST = 400;
const YEAR = "[data-year=all]:not([hidden])";

/** What is to be done with an answer, by the channel it was asked on. */
const takers = [];
/** The newest job of each channel that has no answer yet. */
const asked = new Map();
let jobs = 0;
let worker;
let isReady = false;
/** The worker said something since it was last asked for something newer. */
let isHeard = false;
let isBusyHere = false;
/** What waits for the year, by its channel: whether it replaces something that was sent. */
const held = new Map();
let released;
document.addEventListener("year-rests", release);

/** Opens a channel; `take` gets the number of a job and its answer: numbers, a text, or a sentence in a list why there is none. */
export function open(take) {
  return takers.push(take) - 1;
}

/** Asks for work and gives the number of the job. */
export function ask(channel, kind, project, run, numbers) {
  const job = ++jobs;
  const isNewer = isReady && asked.has(channel) && !held.has(channel);
  // The numbers lie in the memory of the module, which moves.
  asked.set(channel, { job, kind, body: { channel, project, run, numbers: numbers.slice() } });
  if (worker === undefined) begin();
  if (!worker) here();
  else if (isReady && document.querySelector(YEAR)) hold(channel, isNewer);
  else if (isReady) send(asked.get(channel), isNewer);
  return job;
}

/** Keeps a question until the year stands; what it replaces goes on no longer. */
function hold(channel, isNewer) {
  if (isNewer) worker.postMessage({ kind: "stop", body: { channel } });
  held.set(channel, isNewer || held.get(channel));
  clearTimeout(released);
  released = setTimeout(release, YEAR_FIRST);
}

function release() {
  clearTimeout(released);
  const all = [...held];
  held.clear();
  for (const [channel, isNewer] of all) if (isReady && asked.has(channel)) send(asked.get(channel), isNewer);
}

function begin() {
  isReady = false;
  try {
    const address = new URL("worker.js", document.querySelector("script[type=module]").src);
    worker = new Worker(address, { type: "module", name: "lent" });
  } catch {
    worker = null;
    return;
  }
  const own = worker;
  lent().then(
    (module) => own.postMessage({ kind: "begin", body: { module } }),
    () => worker === own && without(),
  );
  worker.onmessage = ({ data: { job, kind, body } }) => {
    isHeard = true;
    if (kind === "ready") {
      isReady = true;
      held.clear();
      for (const message of asked.values()) send(message);
    } else if (kind !== "going") {
      answer(job, body);
      if (kind === "broken") anew();
    }
  };
  worker.onerror = without;
}

/** A worker that did not start never will: the page does the work itself. */
function without() {
  worker = null;
  here();
}

function send(message, isNewer) {
  worker.postMessage(message);
  if (!isNewer) return;
  isHeard = false;
  const asked = worker;
  setTimeout(() => {
    if (!isHeard && worker === asked) anew();
  }, PATIENCE);
}

/** Ends the worker and gives what has no answer yet to another. */
function anew() {
  worker.terminate();
  begin();
}

function answer(job, { channel, answer }) {
  if (asked.get(channel)?.job === job) asked.delete(channel);
  takers[channel](job, answer);
}

/** Does on the page what has no answer yet. */
function here() {
  const [first] = asked.values();
  if (isBusyHere || !first) return;
  isBusyHere = true;
  const { job, kind, body } = first;
  const { channel, project, run, numbers } = body;
  load()
    .then((workshop) => workshop.ask(kind, project, run, numbers))
    .catch((error) => [`${error}`])
    .then((found) => {
      isBusyHere = false;
      answer(job, { channel, answer: found });
      here();
    });
}
