// Times the exports of the page of benches in Chromium, then how soon the product's own page can be used, and prints a figure for each.
// Each export takes a count, does its work that often and returns a number that depends on all of it.
import assert from "node:assert/strict";
import { DIST, answered, launch, serve } from "./harness.mjs";

const FIGURES = [
  { name: "dew_point_wasm", unit: "ns", inNs: 1 },
  { name: "steady_wasm", unit: "us", inNs: 1e3 },
  { name: "steady_full_wasm", unit: "ms", inNs: 1e6 },
  { name: "year_wasm", unit: "ms", inNs: 1e6 },
  { name: "year_full_wasm", unit: "ms", inNs: 1e6 },
];
/** A batch lasts so long that the browser's coarse clock adds less than half a percent. */
const BATCH_MS = 40;
const BATCHES = 21;
/** Moves of a hand that draws a leg. */
const MOVES = 200;
/** Loads of the product's page, each by a browser that has nothing of it yet. */
const LOADS = 9;

const server = await serve(process.argv[2]);
const product = await serve(DIST);
const browser = await launch();
try {
  const page = await browser.newPage();
  await page.goto(server.address);
  for (const { name, unit, inNs } of FIGURES) {
    const measured = await page.evaluate(measure, { name, batchMs: BATCH_MS, batches: BATCHES });
    assert.ok(Number.isFinite(measured.sum), `${name} computed ${measured.sum}`);
    assert.ok(measured.ns > 0, `${name} took no time at all`);
    console.log(`figure ${name} ${(measured.ns / inNs).toFixed(3)} ${unit}`);
  }
  const loads = [];
  for (let load = 0; load < LOADS; load += 1) loads.push(await usableAfter());
  console.log(`figure interactive ${median(loads).toFixed(0)} ms`);
  const moves = await drawn();
  console.log(`figure drag_p50 ${median(moves).toFixed(1)} ms`);
  console.log(`figure drag_p95 ${moves[Math.floor(moves.length * 0.95)].toFixed(1)} ms`);
} finally {
  await browser.close();
  await server.stop();
  await product.stop();
}

/** From the start of a first visit until its first field can be typed into and is painted, ms. */
async function usableAfter() {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(() => {
    globalThis.usable = new Promise((resolve) => {
      const look = () => {
        if (!document.querySelector("main input:enabled")) return requestAnimationFrame(look);
        // The frame after next begins once the field is on the screen.
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())));
      };
      look();
    });
  });
  await page.goto(product.address);
  const ms = await page.evaluate(() => globalThis.usable);
  await context.close();
  return ms;
}

/** From each move of a hand that draws the end of a leg until the route is painted again, ms, the shortest first. */
async function drawn() {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(product.address + "#example=make-up-air");
  await answered(page);
  const moves = await page.evaluate(draw, MOVES);
  await context.close();
  assert.ok(moves.changes > MOVES / 2, `the drawing changed ${moves.changes} times in ${MOVES} moves`);
  return moves.times.sort((a, b) => a - b);
}

/** Draws the end of the second leg to and fro, a move a frame; runs in the page. */
async function draw(count) {
  const handle = document.querySelectorAll("[role=application] button[aria-pressed]")[1];
  const box = handle.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const send = (type, dx, dy) =>
    handle.dispatchEvent(
      new PointerEvent(type, { bubbles: true, cancelable: true, pointerId: 1, isPrimary: true, button: 0, buttons: 1, clientX: x + dx, clientY: y + dy }),
    );
  const { port1, port2 } = new MessageChannel();
  // The message is handled after the frame in which it was sent has been painted.
  const painted = () => new Promise((done) => ((port1.onmessage = () => done(performance.now())), port2.postMessage(0)));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  send("pointerdown", 0, 0);
  const times = [];
  let [changes, before] = [0, ""];
  for (let move = 0; move < count; move += 1) {
    await frame();
    const begun = performance.now();
    send("pointermove", 120 * Math.sin(move / 9), 40 * Math.sin(move / 5));
    times.push((await painted()) - begun);
    const now = document.querySelector("svg[role=img]").innerHTML;
    if (now !== before) changes += 1;
    before = now;
  }
  send("pointerup", 0, 0);
  return { times, changes };
}

function median(numbers) {
  return numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

/** The median time of one piece of work, ns; runs in the page. */
async function measure({ name, batchMs, batches }) {
  const module = await import(new URL("./dewrun-bench-page.js", location.href).href);
  await module.default();
  const work = module[name];
  let sum = 0;
  const time = (count) => {
    const begun = performance.now();
    sum += work(count);
    return performance.now() - begun;
  };
  // The first call prepares the inputs, which is no part of the work.
  time(1);
  // Doubling until a batch is long enough warms up the compiler on the way.
  let count = 1;
  while (time(count) < batchMs) count *= 2;
  const times = Array.from({ length: batches }, () => time(count)).sort((a, b) => a - b);
  return { ns: (times[Math.floor(batches / 2)] / count) * 1e6, sum };
}
