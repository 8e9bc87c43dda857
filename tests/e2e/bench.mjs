// Times the exports of the page of benches in Chromium, then how soon the product's own page can be used, and prints a figure for each.
// Each export takes a count, does its work that often and returns a number that depends on all of it.
import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DIST, ROOT, answered, launch, serve, sure } from "./harness.mjs";

/// Each with the folder of the module that is made as the product's own is which does the work.
const FIGURES = [
  { name: "dew_point_wasm", made: "small", unit: "ns", inNs: 1 },
  { name: "steady_wasm", made: "small", unit: "us", inNs: 1e3 },
  { name: "steady_full_wasm", made: "small", unit: "ms", inNs: 1e6 },
  { name: "doubt_steady_wasm", made: "small", unit: "ms", inNs: 1e6 },
  { name: "year_wasm", made: "wide", unit: "ms", inNs: 1e6 },
  { name: "year_full_wasm", made: "wide", unit: "ms", inNs: 1e6 },
];
/** A batch lasts so long that the browser's coarse clock adds less than half a percent. */
const BATCH_MS = 40;
const BATCHES = 21;
/** Moves of a hand that draws a leg. */
const MOVES = 200;
/** Loads of the product's page, each by a browser that has nothing of it yet. */
const LOADS = 9;
/** Keys that the year follows. */
const KEYS = 9;
/** Rows of the logger file. */
const ROWS = 1_000_000;
/** Ten-minute rows of the logger that a log of troubles is weighed in, a year; and entries of that log over ten years. */
const LOGGED = 52_560;
const ENTRIES = 5_000;

const server = await serve(process.argv[2]);
const product = await serve(DIST);
const browser = await launch();
try {
  const page = await browser.newPage();
  await page.goto(server.address);
  for (const { name, made, unit, inNs } of FIGURES) {
    const measured = await page.evaluate(measure, { name, made, batchMs: BATCH_MS, batches: BATCHES });
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
  console.log(`figure key_to_year ${median(await keysToYear()).toFixed(0)} ms`);
  console.log(`figure ensemble_first_wasm ${(await firstMembers()).toFixed(2)} s`);
  const { first, all } = await remediesFound();
  console.log(`figure remedies_first_wasm ${first.toFixed(2)} s`);
  console.log(`figure remedies_all_wasm ${all.toFixed(2)} s`);
  const troubles = await longLog();
  console.log(`figure troubles_log_wasm ${troubles.seconds.toFixed(2)} s`);
  console.log(`figure troubles_longest_task ${troubles.longest.toFixed(0)} ms`);
  const { seconds, longest } = await millionRows();
  console.log(`figure logger_million_rows ${seconds.toFixed(2)} s`);
  console.log(`figure logger_longest_task ${longest.toFixed(0)} ms`);
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

/** The page with an open run and a weather file that is read. */
async function withWeather(file) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(product.address + "#example=make-up-air");
  await answered(page);
  await page.getByLabel("Open weather file").setInputFiles(file);
  return { context, page };
}

/** From each key in the length of a leg until the year that follows from it is painted, ms. */
async function keysToYear() {
  const { context, page } = await withWeather(ROOT + "demo/gull-harbour.csv");
  await page.getByRole("slider", { name: "Hour" }).waitFor();
  await page.getByLabel("Length of leg 2").first().focus();
  const times = await page.evaluate(async (keys) => {
    const field = document.activeElement;
    const { port1, port2 } = new MessageChannel();
    const painted = () => new Promise((done) => requestAnimationFrame(() => ((port1.onmessage = done), port2.postMessage(0))));
    const changed = () =>
      new Promise((done) => {
        const seen = new MutationObserver(() => (seen.disconnect(), done()));
        seen.observe(document.querySelector("[data-year=sentence]"), { childList: true, subtree: true });
      });
    const times = [];
    for (let key = 0; key < keys; key += 1) {
      const begun = performance.now();
      field.value = `${4 + (key % 5) / 2}`;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      await changed();
      await painted();
      times.push(performance.now() - begun);
      // What is found later about the same key does not belong to the next one.
      await new Promise((done) => setTimeout(done, 1500));
    }
    return times;
  }, KEYS);
  await context.close();
  return times;
}

/** From the press that asks how sure a year is until what 32 members say is painted, s; the page is at rest and the button in sight. */
async function firstMembers() {
  const { context, page } = await withWeather(ROOT + "demo/gull-harbour.csv");
  await page.getByRole("slider", { name: "Hour" }).waitFor();
  await sure(page);
  await page.locator("[data-do=doubt]").scrollIntoViewIfNeeded();
  const seconds = await page.evaluate(async () => {
    const { port1, port2 } = new MessageChannel();
    const painted = () => new Promise((done) => requestAnimationFrame(() => ((port1.onmessage = done), port2.postMessage(0))));
    const told = new Promise((done) => new MutationObserver(done).observe(document.querySelector("[data-year=doubt]"), { childList: true }));
    const begun = performance.now();
    document.querySelector("[data-do=doubt]").click();
    await told;
    await painted();
    return (performance.now() - begun) / 1000;
  });
  await context.close();
  return seconds;
}

/** From the section Remedies in sight until the first cure over the year is shown, and until all remedies are, s; nothing is sought before. */
async function remediesFound() {
  const { context, page } = await withWeather(ROOT + "demo/gull-harbour.csv");
  await page.getByRole("slider", { name: "Hour" }).waitFor();
  // Opening a file shows its year, and with it perhaps the remedies below: the year of another length has none yet.
  await page.evaluate(() => scrollTo(0, 0));
  const before = await page.locator("[data-year=sentence]").innerText();
  await page.getByLabel("Length of leg 2").first().fill("4.5");
  await page.waitForFunction((before) => document.querySelector("[data-year=sentence]").innerText !== before, before);
  await sure(page);
  const found = await page.evaluate(async () => {
    const room = document.querySelector(".dw-cures");
    const part = (name) => room.querySelector(`[data-cures=${name}]`);
    const isShown = () => !part("told").classList.contains("dw-stale") && room.querySelector("[data-cure]") !== null;
    const isSought = () => !part("work").hidden;
    const begun = isShown() || isSought() ? Number.NaN : performance.now();
    const until = (holds) =>
      new Promise((done) => {
        const seen = new MutationObserver(() => {
          if (!holds()) return;
          seen.disconnect();
          done((performance.now() - begun) / 1000);
        });
        seen.observe(room, { attributes: true, childList: true, subtree: true });
      });
    const shown = until(isShown);
    const done = until(() => isShown() && !isSought());
    room.scrollIntoView();
    return { first: await shown, all: await done };
  });
  assert.ok(Number.isFinite(found.all), "remedies were sought before they were in sight");
  await context.close();
  return found;
}

/** A log of ten years, pasted once plausible years of the run are known in ten-minute weather: from the press until its causes are painted, s, and the longest task of the page meanwhile, ms. */
async function longLog() {
  const folder = await mkdtemp(join(tmpdir(), "dewrun-bench-"));
  const file = join(folder, "ten-minutes.csv");
  const stamp = (at) => new Date(at).toISOString().slice(0, 16).replace("T", " ");
  const rows = Array.from({ length: LOGGED }, (_, at) => {
    const [day, hour] = [at / 144, (at / 6) % 24];
    const celsius = 12 - 10 * Math.cos((2 * Math.PI * day) / 365) - 4 * Math.cos((2 * Math.PI * hour) / 24);
    return `${stamp(Date.UTC(2023, 0, 1) + at * 600_000)},${celsius.toFixed(1)},${70 + (at % 25)}`;
  });
  await writeFile(file, `time,temp_c,rh\n${rows.join("\n")}\n`);
  const words = ["airflow low", "airflow high", "alarm without smoke", "water found, 120 mL", "trap emptied, 90 mL", "filter changed"];
  const step = (3652 * 86_400_000) / ENTRIES;
  const list = Array.from({ length: ENTRIES }, (_, at) => `${stamp(Date.UTC(2014, 0, 1) + at * step)};${words[(at * 7) % words.length]}`);
  const { context, page } = await withWeather(file);
  await page.getByRole("slider", { name: "Hour" }).waitFor({ timeout: 120_000 });
  await page.locator(".dw-troubles").scrollIntoViewIfNeeded();
  await page.waitForFunction(() => document.querySelector("[data-troubles=rests]")?.innerText.startsWith("Weighed over 64"), undefined, { timeout: 600_000 });
  const found = await page.evaluate(async (list) => {
    const { port1, port2 } = new MessageChannel();
    const painted = () => new Promise((done) => requestAnimationFrame(() => ((port1.onmessage = done), port2.postMessage(0))));
    // That a browser lays out what is pasted is none of the page's work.
    document.querySelector("[data-troubles=text]").value = list;
    await painted();
    let longest = 0;
    new PerformanceObserver((tasks) => {
      for (const task of tasks.getEntries()) longest = Math.max(longest, task.duration);
    }).observe({ type: "longtask" });
    const begun = performance.now();
    const told = new Promise((done) =>
      new MutationObserver(() => document.querySelector("[data-troubles=timeline] svg") && done()).observe(document.querySelector("[data-troubles=timeline]"), { childList: true }),
    );
    document.querySelector("[data-do=read]").click();
    await told;
    await painted();
    return { seconds: (performance.now() - begun) / 1000, longest };
  }, list.join("\n"));
  await context.close();
  await rm(folder, { recursive: true });
  return found;
}

/** A logger file of a million rows: until it is read, s, and the longest task of the page meanwhile, ms. */
async function millionRows() {
  const folder = await mkdtemp(join(tmpdir(), "dewrun-bench-"));
  const file = join(folder, "logger.csv");
  const rows = Array.from({ length: ROWS }, (_, at) => {
    const stamp = new Date(Date.UTC(2024, 0, 1) + at * 30_000).toISOString().slice(0, 19).replace("T", " ");
    return `${stamp},${(18 + (at % 80) / 10).toFixed(1)},${50 + (at % 41)}`;
  });
  await writeFile(file, `time,temp_c,rh\n${rows.join("\n")}\n`);
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(product.address + "#example=make-up-air");
  await answered(page);
  // The module is there: what is timed is the reading.
  await page.getByLabel("Open weather file").setInputFiles(ROOT + "demo/gull-harbour.csv");
  await page.getByRole("slider", { name: "Hour" }).waitFor();
  await page.evaluate(() => {
    globalThis.longest = 0;
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) globalThis.longest = Math.max(globalThis.longest, task.duration);
    }).observe({ type: "longtask" });
    document.querySelector("[data-year=open]").addEventListener("change", () => (globalThis.begun = performance.now()), true);
    globalThis.read = new Promise((done) => {
      new MutationObserver(() => {
        const name = document.querySelector("[data-year=told] b")?.textContent;
        if (name === "logger.csv") done({ seconds: (performance.now() - globalThis.begun) / 1000, longest: globalThis.longest });
      }).observe(document.querySelector("[data-year=told]"), { childList: true, subtree: true });
    });
  });
  await page.getByLabel("Open weather file").setInputFiles(file);
  const found = await page.evaluate(() => globalThis.read);
  await context.close();
  await rm(folder, { recursive: true });
  return found;
}

function median(numbers) {
  return numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

/** The median time of one piece of work, ns; runs in the page. */
async function measure({ name, made, batchMs, batches }) {
  const module = await import(new URL(`./${made}/dewrun-bench-page.js`, location.href).href);
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
