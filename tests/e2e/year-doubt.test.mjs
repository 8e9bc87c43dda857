// How sure a year is: members on several workers, told some at a time, the same whatever the number of workers, and those of the command line.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { ROOT, dewrun } from "./harness.mjs";
import { accessible, fits, saved } from "./looks.mjs";
import { GULL_HARBOUR, opened } from "./weather.mjs";

const site = dewrun();
let folder;

before(async () => {
  folder = await mkdtemp(join(tmpdir(), "dewrun-doubt-"));
});
after(() => rm(folder, { recursive: true }));

const doubt = (page) => page.getByRole("group", { name: "How sure is this year?" });
const note = (page) => page.locator("[data-year=doubt-note]");
const begin = (page) => doubt(page).getByRole("button", { name: "Take it 256 times" }).click();
const stop = (page) => doubt(page).getByRole("button", { name: "Stop" }).click();

/** Waits until the first members are told, and stops there. */
async function first(page) {
  await begin(page);
  await note(page).filter({ hasText: "first 32 of 256" }).waitFor({ timeout: 60_000 });
  const html = await page.locator("[data-year=doubt]").innerHTML();
  await stop(page);
  return html;
}

/** A device with so many hands. */
const hands = (page, count) =>
  page.evaluate((count) => Object.defineProperty(navigator, "hardwareConcurrency", { value: count, configurable: true }), count);

test("the figures are those of the command line", async () => {
  const page = await opened(site);
  await first(page);
  const { text } = await saved(page);
  const file = join(folder, "run.json");
  await writeFile(file, text);
  const args = ["run", "--quiet", "--package", "dewrun-cli", "--", "doubt", file, "--weather", GULL_HARBOUR, "--members", "32", "--json"];
  const { stdout, stderr } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", maxBuffer: 1 << 26 });
  assert.ok(stdout, stderr);
  const said = JSON.parse(stdout).runs[0].doubt;
  for (const one of said.quantities) {
    const cells = page.locator(`tr[data-quantity="${one.id}"] data`);
    const values = await cells.evaluateAll((all) => all.map((cell) => Number(cell.value)));
    const { p10, p50, p90 } = one.spread;
    const expected = one.as_entered === undefined ? [p10, p50, p90] : [one.as_entered, p10, p50, p90];
    assert.deepEqual(values, expected, one.id);
  }
  const words = (await page.locator("[data-year=doubt] .dw-year__sentence").innerText()).replace(/\s+/g, " ");
  assert.equal(words, said.sentences.join(" ").replace(/\s+/g, " "), "the same sentences");
  assert.match(words, /\d+ of 100 plausible cases are wet/, "so many of a hundred");
  const sentence = (await page.locator("[data-year=sentence]").innerText()).replace(/\s+/g, " ");
  const water = said.quantities.find(({ id }) => id === "water_kg").spread;
  assert.ok(sentence.includes(`L (${water.p10.toFixed(2)} to ${water.p90.toFixed(2)})`), `in the year's sentence too: ${sentence}`);
  await page.getByLabel("Length of leg 2").first().fill("4.4");
  await page.waitForFunction(() => !document.querySelector(".dw-year__span"), undefined, { timeout: 20_000 });
  await page.getByRole("button", { name: "Undo" }).click();
  await accessible(page, "the doubt of a year", ".dw-year-section");
  await page.setViewportSize({ width: 360, height: 800 });
  await fits(page, "the doubt on a phone");
});

test("more hands change nothing but the time", async () => {
  const page = await opened(site);
  await hands(page, 1);
  const alone = await first(page);
  await hands(page, 3);
  assert.equal(await first(page), alone, "member by member the same");
});

test("it goes on to all members, says what decides, and is stale once the project is another", async () => {
  const page = await opened(site);
  await begin(page);
  await note(page).filter({ hasText: "all 256" }).waitFor({ timeout: 240_000 });
  await doubt(page).getByRole("button", { name: "Stop" }).waitFor({ state: "hidden" });
  const room = page.locator("[data-year=doubt]");
  const decides = await room.locator("li", { hasText: "decides" }).innerText();
  assert.match(decides, /^Service corridor, 16 to 24/, "the corridor's temperature, as it is by far the widest span over a wet leg");
  assert.match(await room.innerText(), /What makes the spread of the water/, "parts of the spread");
  await page.getByLabel("Length of leg 2").first().fill("4.6");
  await note(page).filter({ hasText: "before the last change" }).waitFor();
  assert.equal(await room.evaluate((one) => one.classList.contains("dw-stale")), true, "marked as stale");
  await page.getByRole("button", { name: "Undo" }).first().click();
  await page.waitForFunction(() => !document.querySelector("[data-year=doubt]").classList.contains("dw-stale"));
});

test("the calculation sheet has the year, and how sure it is once that was told", async () => {
  const page = await opened(site);
  const group = page.getByRole("group", { name: "Calculation sheet", exact: true });
  const show = group.getByRole("button", { name: "Show it here" });
  const sheet = group.getByRole("region", { name: "Calculation sheet" });
  await show.click();
  await sheet.waitFor();
  const without = await sheet.innerText();
  assert.ok(without.includes("Wet calendar") && without.includes("Relations of the year"), "the year stands on it");
  assert.ok(!without.includes("Doubt of the year"), "nothing is said of what was not asked");
  await show.click();
  await sheet.waitFor({ state: "hidden" });
  await first(page);
  await show.click();
  await sheet.waitFor();
  const words = await sheet.innerText();
  assert.ok(words.includes("Doubt of the year") && words.includes("32 plausible years"), "how sure it is, by the years so far");
  const heights = await page.locator(".dw-calc__page").evaluateAll((pages) => pages.map((one) => one.getBoundingClientRect().height));
  for (const height of heights) assert.ok(Math.abs((height * 25.4) / 96 - 297) < 0.5, `${height} px are a page of A4`);
});

test("it is stopped before anything is told", async () => {
  const page = await opened(site);
  await begin(page);
  await stop(page);
  await note(page).filter({ hasText: "Stopped before anything could be told" }).waitFor();
});
