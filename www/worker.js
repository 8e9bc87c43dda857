// Does long work away from the page, in slices: newer work comes in between two of them, and what it replaces is given up.
import { partsOf, run, unheard } from "./module.js";

/** So long it works before it looks for messages, ms. */
const SLICE = 20;

/** The newest job of each channel that is not begun. */
const waiting = new Map();
/** The job that is being done. */
let current;
let isDue = false;
const turns = new MessageChannel();
turns.port1.onmessage = slice;

/** What the module offers. */
let workshop;

self.onmessage = ({ data }) => {
  if (data.kind === "begin") return void begins(data.body.module).catch(unheard);
  const { channel } = data.body;
  if (current?.body.channel === channel) current = undefined;
  if (data.kind === "stop") waiting.delete(channel);
  else waiting.set(channel, data);
  goOn();
  return undefined;
};

/** Runs the module that was lent, or its own. */
async function begins(lent) {
  workshop = await run(await partsOf("dewrun-workshop", lent));
  self.postMessage({ kind: "ready" });
}

// A worker of that name waits until it is lent what the page has compiled.
if (self.name !== "lent") begins().catch(unheard);

function goOn() {
  if (isDue || !(current || waiting.size)) return;
  isDue = true;
  turns.port2.postMessage(null);
}

/** Works until there is an answer or the slice is over, and says which. */
function slice() {
  isDue = false;
  let turn;
  try {
    const until = performance.now() + SLICE;
    if (current) turn = workshop.turn();
    else turn = begun();
    while (typeof turn === "number" && performance.now() < until) turn = workshop.turn();
  } catch (error) {
    if (current) tell("broken", { answer: [`${error}`] });
    return;
  }
  if (!current) return;
  if (typeof turn === "number") tell("going", { share: turn });
  else {
    tell(current.kind, { answer: turn }, turn.buffer ? [turn.buffer] : []);
    current = undefined;
  }
  goOn();
}

function begun() {
  [current] = waiting.values();
  if (!current) return;
  const { kind, body } = current;
  waiting.delete(body.channel);
  return workshop.begin(kind, body.project, body.run, body.numbers);
}

function tell(kind, body, buffers = []) {
  const { job, body: { channel } } = current;
  self.postMessage({ job, kind, body: { channel, ...body } }, buffers);
}
