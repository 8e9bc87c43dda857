// Long work is done by a worker, which runs the same module as the page.

/** What is to be done with an answer, by the channel it was asked on. */
const takers = [];
/** The last job of each channel that the worker has not been given yet. */
const waiting = new Map();
let jobs = 0;
let worker;
let isReady = false;

/** Whether this is the worker. */
export function isWorker() {
  return typeof document === "undefined";
}

/** Opens a channel; `take` gets the number of a job and its answer: numbers, or a sentence why there are none. */
export function open(take) {
  return takers.push(take) - 1;
}

/** Asks for work and gives the number of the job; 0 where there is no worker to do it. */
export function ask(channel, kind, project, run, numbers) {
  if (worker === undefined) begin();
  if (!worker) return 0;
  const job = ++jobs;
  // The numbers lie in the memory of the module, which moves.
  waiting.set(channel, { job, kind, body: { channel, project, run, numbers: numbers.slice() } });
  send();
  return job;
}

function begin() {
  try {
    const address = new URL("worker.js", document.querySelector("script[type=module]").src);
    worker = new Worker(address, { type: "module" });
  } catch {
    worker = null;
    return;
  }
  worker.onmessage = ({ data: { job, kind, body } }) => {
    if (kind === "ready") {
      isReady = true;
      send();
    } else takers[body.channel](job, body.answer);
  };
  // A worker that did not start never will: the page does the work itself.
  worker.onerror = () => {
    worker = null;
    for (const { job, body } of waiting.values()) takers[body.channel](job, null);
    waiting.clear();
  };
}

function send() {
  if (!isReady) return;
  for (const message of waiting.values()) worker.postMessage(message);
  waiting.clear();
}

/** Does, in the worker, what the page asks for; of several jobs on a channel only the newest. */
export function serve(work) {
  const given = new Map();
  const turn = () => {
    for (const [channel, { job, kind, body }] of given) {
      given.delete(channel);
      const answer = work(kind, body.project, body.run, body.numbers);
      const buffers = answer.buffer ? [answer.buffer] : [];
      self.postMessage({ job, kind, body: { channel, answer } }, buffers);
      // Newer jobs come in between two pieces of work.
      if (given.size) setTimeout(turn);
      return;
    }
  };
  self.onmessage = ({ data }) => {
    if (!given.size) setTimeout(turn);
    given.set(data.body.channel, data);
  };
  self.postMessage({ kind: "ready" });
}
