// The section Year: a weather file is dropped or opened, its year stands and follows the project; it is refused, stopped, and found again without a network.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { DIST, ROOT, answered, dewrun, launch, shows, watch } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";
import { serveFolder } from "./static.mjs";
import { GULL_HARBOUR, chosen, drop, hand, open, opened, ready, sentence, year } from "./weather.mjs";

const site = dewrun();
const MODULE = /dewrun-almanac|almanac/;
let folder;

before(async () => {
  folder = await mkdtemp(join(tmpdir(), "dewrun-year-"));
});
after(() => rm(folder, { recursive: true }));


/** Waits until the sentence over the year is another. */
async function changed(page, before) {
  await page.waitForFunction((before) => document.querySelector(".dw-year__sentence").innerText !== before, before, { timeout: 10_000 });
  return sentence(page);
}

/** A row of the months: its figures, January first and all of them last. */
async function months(page, name) {
  const row = page.getByRole("row", { name: new RegExp(`^${name}`) });
  const cells = await row.getByRole("cell").allInnerTexts();
  const number = (cell) => Number(cell.replace(/[\u2009\s]/g, "").replace("under", ""));
  // Less than the least that is shown is half of it.
  return cells.map((cell) => (cell.startsWith("under") ? number(cell) / 2 : number(cell)));
}

/** Rows of the invented table as EPW, the form of building simulation: eight lines of header, then 35 fields an hour. */
async function epw() {
  const lines = (await readFile(GULL_HARBOUR, "utf8")).split(/\r?\n/);
  const head = lines.findIndex((line) => /temp/i.test(line) && line.includes(","));
  const names = lines[head].split(",").map((name) => name.toLowerCase());
  const column = (...words) => names.findIndex((name) => words.every((word) => name.includes(word)));
  const [t, dew] = [column("temp"), column("dew")];
  assert.ok(0 < t && 0 < dew, `temperature and dew point among ${names}`);
  const out = [
    "LOCATION,Gull Harbour,-,-,invented,000000,51.50,4.00,1.0,8.0",
    "DESIGN CONDITIONS,0",
    "TYPICAL/EXTREME PERIODS,0",
    "GROUND TEMPERATURES,0",
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
    "COMMENTS 1,invented from end to end",
    "COMMENTS 2,",
    "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31",
  ];
  lines.slice(head + 1, head + 8761).filter(Boolean).forEach((line, at) => {
    const cells = line.split(",");
    const date = new Date(Date.UTC(2001, 0, 1, at));
    const start = [2001, date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours() + 1, 0, "?9"];
    // Dry bulb, dew point, no relative humidity, no pressure, then what is missing.
    const rest = [cells[t], cells[dew], "999", "999999", ...Array(25).fill("9999")];
    out.push([...start, ...rest].join(","));
  });
  return out.join("\n");
}

test("a dropped file makes the year: which file, how it was read, wet hours, months; nothing of it is loaded before", async () => {
  const page = await open(site);
  const loaded = [];
  page.on("request", (request) => loaded.push(request.url()));
  const early = await page.evaluate(() => performance.getEntriesByType("resource").map((entry) => entry.name));
  assert.deepEqual(early.filter((name) => MODULE.test(name)), [], "before a file is there");
  await drop(page, "gull-harbour.csv", await readFile(GULL_HARBOUR, "utf8"));
  await hand(page).waitFor();
  const told = (await year(page).innerText()).replaceAll("\u00a0", " ").replaceAll("\u2009", "");
  assert.match(told, /gull-harbour\.csv Gull Harbour; 8 m above the sea; 8760 rows; every hour/);
  assert.match(told, /\d+ wet hours, [\d.]+ L/);
  const wet = await months(page, "Wet hours");
  assert.equal(wet.length, 13, "twelve months and all of them");
  assert.equal(wet.slice(0, 12).reduce((sum, hours) => sum + hours), wet[12], "months add up");
  const all = Number(/(\d+) wet hours/.exec(told)[1]);
  assert.equal(all, wet[12], "the sentence says the same");
  await page.getByText(/^How it was read/).click();
  await year(page).getByText(/line \d/).first().waitFor();
  const { project } = await saved(page);
  assert.equal(project.weather.file, "gull-harbour.csv", "the project knows its file");
  assert.equal(project.weather.rows, 8760);
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal((await saved(page)).project.weather, undefined, "opening it is one step");
});

test("an EPW is read too, and another file takes the place of the first", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  await drop(page, "gull-harbour.epw", await epw());
  await year(page).locator("b", { hasText: "gull-harbour.epw" }).waitFor();
  await page.waitForFunction(() => document.querySelector("[data-year=work]").hidden);
  const now = await sentence(page);
  const hours = (text) => Number(/([\d\u2009]+) wet hours/.exec(text)[1].replace("\u2009", ""));
  assert.ok(Math.abs(hours(now) / hours(before) - 1) < 0.2, `${hours(before)} hours of the table, ${hours(now)} of the EPW`);
});

test("an hour is picked by keys, by steps and by pressing the calendar", async () => {
  const page = await opened(site);
  const panel = page.locator(".dw-year__when");
  const at = async () => Number(await hand(page).getAttribute("aria-valuenow"));
  const moved = (to) => page.waitForFunction((to) => document.querySelector(".dw-year__hand").getAttribute("aria-valuenow") === `${to}`, to);
  await hand(page).focus();
  const from = await at();
  await page.keyboard.press("ArrowLeft");
  await moved(from - 24);
  await page.keyboard.press("ArrowDown");
  await moved(from - 23);
  const focused = await page.evaluate(() => document.activeElement.getAttribute("role"));
  assert.equal(focused, "slider", "the focus stays on it");
  const spoken = await hand(page).getAttribute("aria-valuetext");
  assert.ok(spoken.startsWith(await panel.innerText()), `it says ${spoken}`);
  await page.keyboard.press("Home");
  await moved(0);
  await page.getByRole("button", { name: "+1 day" }).click();
  await moved(24);
  const box = await hand(page).locator("rect").boundingBox();
  await page.mouse.click(box.x + (box.width * 100.5) / 365, box.y + (box.height * 17.5) / 24);
  await moved(100 * 24 + 17);
  assert.match(await panel.innerText(), /11\s+April.*17\s+h/, "the hundred and first day, at 17 h");
});

test("the route shows the hour that is picked, and undoing brings back what was there", async () => {
  const page = await open(site);
  await page.getByRole("button", { name: "Gull Harbour, example, not your site" }).click();
  await hand(page).waitFor();
  const answer = () => page.locator(".dw-answer__sentence").first().innerText();
  const before = await answer();
  await page.getByRole("button", { name: "Show in the route" }).click();
  await page.waitForFunction((before) => document.querySelector(".dw-answer__sentence").innerText !== before, before);
  await answered(page);
  const air = (await saved(page)).project.runs[0].duct.air.temperature;
  const panel = (await page.locator(".dw-year__figures").innerText()).replace(/\s+/g, " ");
  const shown = Number(/duct air ([\d.]+)/.exec(panel)[1]);
  assert.ok(Math.abs(air.temperature_c.value - shown) < 0.06, `${JSON.stringify(air)} where the panel says ${shown} °C`);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.waitForFunction((before) => document.querySelector(".dw-answer__sentence").innerText === before, before);
});

test("a file that can't be used is refused in words, and the project and its year stay", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const { project } = await saved(page);
  const broken = "time,temp_c,rh\n2026-07-01 00:00,20,70\n13/31/2026 01:00,21,71\n31/13/2026 02:00,21,71\n";
  await drop(page, "torn.csv", broken);
  await year(page).getByText(/torn\.csv was not taken in\. The open project is unchanged\./).waitFor();
  assert.match(await page.locator(".dw-year__fault").innerText(), /line \d+/i, "where");
  await drop(page, "photo.csv", "\u0089PNG\r\n\u001a\n\u0000\u0000");
  await year(page).getByText(/photo\.csv was not taken in/).waitFor();
  assert.equal(await sentence(page), before, "the year stands");
  assert.deepEqual((await saved(page)).project, project, "the project is the same");
});

test("a long file is read without holding up the page, and can be stopped", async () => {
  const file = join(folder, "long.csv");
  const rows = Array.from({ length: 600_000 }, (_, at) => {
    const stamp = new Date(Date.UTC(2015, 0, 1) + at * 60_000).toISOString().slice(0, 19).replace("T", " ");
    return `${stamp},${(15 + (at % 97) / 10).toFixed(1)},${60 + (at % 31)},station with a long name that takes room`;
  });
  await writeFile(file, `time,temp_c,rh,name\n${rows.join("\n")}\n`);
  const page = await opened(site);
  const before = await sentence(page);
  await page.evaluate(() => {
    globalThis.gaps = [];
    let last = performance.now();
    const look = () => {
      globalThis.gaps.push(performance.now() - last);
      last = performance.now();
      setTimeout(look, 0);
    };
    look();
  });
  await chosen(page).setInputFiles(file);
  await year(page).getByText(/^Reading long\.csv: \d+/).waitFor();
  await page.getByRole("button", { name: "Stop" }).click();
  await year(page).getByText(/^Stopped/).waitFor();
  await page.waitForTimeout(700);
  assert.equal(await sentence(page), before, "the year stands");
  assert.equal((await saved(page)).project.weather.file, "gull-harbour.csv", "so does its file");
  const longest = await page.evaluate(() => Math.max(...globalThis.gaps));
  assert.ok(longest < 500, `the page was held up for ${longest} ms`);
});

/** What the year says once it has said nothing new for a while: quick years follow one another without a word between. */
async function settled(page) {
  let last = await sentence(page);
  for (;;) {
    await page.waitForTimeout(1000);
    const now = await sentence(page);
    if (now === last) return now;
    last = now;
  }
}

test("the year follows what is typed, the newest of it, and what stands meanwhile says so", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const length = page.getByLabel("Length of leg 2").first();
  await length.focus();
  for (const text of ["5", "6", "7", "9"]) await length.fill(text);
  const longer = await changed(page, before);
  const last = await settled(page);
  await length.fill("4");
  await changed(page, last);
  await length.fill("9");
  await page.waitForFunction((last) => document.querySelector(".dw-year__sentence").innerText === last, last);
  assert.notEqual(longer, before);
});

test("humidities below freezing are taken over water or ice as a person says", async () => {
  const page = await opened(site);
  const ice = year(page).getByRole("button", { name: "over ice" });
  await ice.click();
  await page.locator('[data-over="2"][aria-pressed="true"]').waitFor();
  await year(page).getByText("relative humidities over ice, as said here").waitFor();
});

test("without a network a reload finds the file again, and its year", async () => {
  const served = await serveFolder(DIST, "/");
  const browser = await launch();
  const offences = [];
  try {
    const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
    watch(page, served.address, offences);
    await page.goto(served.address + "#example=make-up-air");
    await ready(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then((kept) => kept.active.state));
    await chosen(page).setInputFiles(GULL_HARBOUR);
    await hand(page).waitFor();
    const said = await sentence(page);
    // What was changed is kept a moment later.
    await page.waitForTimeout(1500);
    await served.stop();
    await page.reload();
    await shows(page);
    await hand(page).waitFor();
    assert.equal(await sentence(page), said, "the same year");
    await year(page).locator("b", { hasText: "gull-harbour.csv" }).waitFor();
  } finally {
    await browser.close();
    await served.stop();
  }
  assert.deepEqual(offences, [], "console errors, exceptions and requests to other origins");
});

test("a project whose file is not on this device says which is missing", async () => {
  const page = await opened(site);
  const { text } = await saved(page);
  const elsewhere = await site.openAt(1440, 900, "light", "#example=pool-hall-exhaust");
  await ready(elsewhere);
  // The invented year comes with the page, any other has to be brought.
  await drop(elsewhere, "project.json", text.replaceAll("gull-harbour.csv", "north-quay.csv"));
  await year(elsewhere).getByText(/north-quay\.csv is not on this device \(8760 rows\)/).waitFor();
  await chosen(elsewhere).setInputFiles(GULL_HARBOUR);
  await hand(elsewhere).waitFor();
  assert.equal(await sentence(elsewhere), await sentence(page), "once it is opened the year is the same");
});

test("the figures are those of the command line", async () => {
  const page = await opened(site);
  const { text } = await saved(page);
  const project = join(folder, "project.json");
  await writeFile(project, text);
  const args = ["run", "--quiet", "--package", "dewrun-cli", "--", "year", project, "--weather", GULL_HARBOUR, "--json"];
  const { stdout, stderr } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", maxBuffer: 1 << 26 });
  assert.ok(stdout, stderr);
  const { whole } = JSON.parse(stdout).runs[0].year;
  const near = (shown, said, digits, what) =>
    assert.ok(Math.abs(shown - said) <= 0.5 * 10 ** -digits + 5e-3 * said, `${what}: ${shown} on the page, ${said} on the command line`);
  const wet = await months(page, "Wet hours");
  const litres = await months(page, "Water formed");
  whole.months.forEach((month, at) => {
    near(wet[at], month.wet_hours, 0, `wet hours of month ${at + 1}`);
    near(litres[at], month.condensed_g / 1000, 2, `litres of month ${at + 1}`);
  });
  near(wet[12], whole.wet_hours, 0, "wet hours");
  near(litres[12], whole.condensed_g / 1000, 2, "litres");
  near((await months(page, "Mist at the sensor")).at(-1), whole.mist_hours, 0, "hours of mist");
  near((await months(page, "Ice on a wall")).at(-1), whole.frost_hours, 0, "hours of ice");
  near((await months(page, "Chamber over")).at(-1), whole.hours_above_rating, 0, "hours above the rating");
  near((await months(page, "Blind hours")).at(-1), whole.water.blind_hours, 0, "blind hours");
  const beyond = whole.water.low_flow_hours + whole.water.high_flow_hours;
  near((await months(page, "Airflow beyond")).at(-1), beyond, 0, "hours beyond the limits");
  assert.ok(0 < whole.wet_hours && 0 < beyond, "there is something to compare");
});

test("at every size nothing lies beside the page, all can be touched, and axe finds nothing", async () => {
  for (const [width, scheme] of [[360, "light"], [800, "dark"], [1440, "light"], [1440, "dark"]]) {
    const page = await opened(site, width, 1000, scheme);
    await fits(page, `at ${width} px`);
    await accessible(page, `at ${width} px, ${scheme}`, ".dw-year-section");
    if (width === 360) await touchable(page, "on a phone", ".dw-year", 44);
    await page.close();
  }
});
