// Times the exports of the page of benches in Chromium, then how soon the product's own page can be used, and prints a figure for each.
// Each export takes a count, does its work that often and returns a number that depends on all of it.
import assert from "node:assert/strict";
import { DIST, launch, serve } from "./harness.mjs";

const FIGURES = [
  { name: "dew_point_wasm", unit: "ns", inNs: 1 },
  { name: "steady_wasm", unit: "us", inNs: 1e3 },
];
/** A batch lasts so long that the browser's coarse clock adds less than half a percent. */
const BATCH_MS = 40;
const BATCHES = 21;
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
