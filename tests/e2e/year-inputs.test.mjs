// What the year goes by: fields for the source of the duct's air, spaces, times and visits; figures that open; its hours in the dew square; projects that bring their weather.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { ROOT, answered, dewrun } from "./harness.mjs";
import { accessible, fits, saved } from "./looks.mjs";
import { GULL_HARBOUR, chosen, drop, hand, open, opened, sentence, year } from "./weather.mjs";

const site = dewrun();
let folder;

before(async () => {
  folder = await mkdtemp(join(tmpdir(), "dewrun-inputs-"));
});
after(() => rm(folder, { recursive: true }));

const group = (page, name) => year(page).getByRole("group", { name, exact: true });
const source = async (page) => (await saved(page)).project.runs[0].duct.source;

async function changed(page, before) {
  await page.waitForFunction((before) => document.querySelector(".dw-year__sentence").innerText !== before, before, { timeout: 20_000 });
  await page.waitForFunction(() => document.querySelector("[data-year=work]").hidden);
  return sentence(page);
}

test("the source of the duct's air is said step by step, by keyboard too, and the year follows", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const air = group(page, "Where the duct air comes from");
  await air.getByText(/Nothing says where the air of the duct comes from/).waitFor();
  await air.getByLabel("The duct air is").selectOption({ label: "outdoor air" });
  await air.getByRole("button", { name: "cooling coil" }).focus();
  await page.keyboard.press("Enter");
  const step = group(page, "Step 1: cooling coil");
  const surface = step.getByLabel("Coil surface");
  await step.getByText("assumed 6 to 14").waitFor();
  const cooled = await changed(page, before);
  assert.match(cooled, /No wet hour|wet hours/);
  await surface.fill("9,5");
  await step.getByLabel("Air that bypasses the coil").fill("20");
  const { from, steps } = await source(page);
  assert.equal(from, "outdoors");
  assert.deepEqual(steps[0].temperature_c, { value: 9.5, origin: "typed" });
  assert.deepEqual(steps[0].share, { value: 0.2, origin: "typed" }, "20 %");
  await step.getByRole("button", { name: "Only at times" }).click();
  await step.getByLabel("Months").fill("May to Sep");
  const [when] = (await source(page)).steps[0].when;
  assert.deepEqual(when, { from_h: 6, until_h: 20, months: ["may", "jun", "jul", "aug", "sep"] });
  await step.getByRole("button", { name: "Remove this step" }).click();
  await step.waitFor({ state: "detached" });
  const held = await page.evaluate(() => document.activeElement.id);
  assert.match(held, /^entry-/, "the focus stays among the fields");
  await page.getByRole("button", { name: "Undo" }).click();
  await step.waitFor();
});

test("what can't be is refused at its field, which keeps the text, and the project stays", async () => {
  const page = await open(site);
  const air = group(page, "Where the duct air comes from");
  await air.getByLabel("The duct air is").selectOption({ label: "the air of a room" });
  await air.getByRole("button", { name: "Add a time when it is otherwise" }).click();
  const time = group(page, "The room, time 1");
  for (const [field, text, words] of [
    ["Temperature", "500", /must be/],
    ["From, h", "25", /must be/],
    ["Days", "Frosday", /is none of Mon/],
  ]) {
    const before = await source(page);
    const input = time.getByLabel(field);
    await input.fill(text);
    await time.getByText(words).waitFor();
    assert.equal(await input.getAttribute("aria-invalid"), "true", field);
    assert.deepEqual(await source(page), before, `${field} as ${text}`);
    await input.fill(field === "Temperature" ? "24" : field === "Days" ? "Sat, Sun" : "22");
    assert.equal(await input.getAttribute("aria-invalid"), null, field);
  }
  const [setting] = (await source(page)).settings;
  assert.deepEqual(setting.when, { from_h: 22, until_h: 6, days: ["sat", "sun"] });
  assert.equal(setting.temperature_c.value, 24);
});

test("spaces follow what is said of them, the duct's fan stops at night, and visits have their interval", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const room = group(page, "Plant room");
  await room.getByLabel("Through the year it").selectOption({ label: "is partly as outdoors" });
  await room.getByLabel("Follows outdoors by").fill("40 %");
  await room.getByText("assumed 16 to 24").waitFor();
  await changed(page, before);
  // A hand presses longer than a frame lasts.
  await room.getByLabel("Follows outdoors by").fill("40");
  await group(page, "Duct fan off").getByRole("button", { name: "Add a time when it is off" }).click({ delay: 300 });
  await group(page, "Duct fan off").getByLabel("Until, h").fill("5");
  await group(page, "Visits").getByLabel(/^A visit empties/).fill("30");
  const { project } = await saved(page);
  const named = project.spaces.find(({ name }) => name === "Plant room");
  assert.equal(named.year.follows, "partly");
  assert.deepEqual(named.year.share, { value: 0.4, origin: "typed" });
  assert.deepEqual(project.runs[0].duct.fan_off, [{ from_h: 20, until_h: 5 }]);
  assert.equal(project.runs[0].air_path.drain_interval_days.value, 30);
});

test("figures of the year open to relation, range and what they follow from, and close again", async () => {
  const page = await opened(site);
  const figure = page.locator(".dw-year__sentence").getByRole("button", { name: /wet hours$/ });
  await figure.click();
  const panel = page.getByRole("region", { name: "Where the figure of the year comes from" });
  await panel.getByText(/more than 0\.01 g an hour deposits/i).waitFor();
  assert.equal(await figure.getAttribute("aria-expanded"), "true");
  await panel.getByRole("button", { name: "water formed in the tubes" }).click();
  await panel.getByText(/sum over cells and hours/i).waitFor();
  await panel.getByRole("button", { name: "Close" }).click();
  await panel.getByText(/sum over cells/i).waitFor({ state: "detached" });
  const row = page.getByRole("rowheader", { name: "Airflow beyond a limit, h" });
  await row.getByRole("button").click();
  await panel.getByText(/the bore iced|a bore iced/i).waitFor();
  await page.keyboard.press("Escape");
  await panel.getByText(/a bore iced/i).waitFor({ state: "detached" });
  await year(page).getByText(/^Taken for granted: \d/).click();
  await year(page).getByText("The pressure of the air is that of the weather file, hour by hour.").waitFor();
});

test("the dew square has the hours of the year, wet ones by class, and says how they are proved", async () => {
  const page = await open(site);
  const air = page.getByRole("region", { name: "Air", exact: true });
  await air.locator(".dw-square svg").waitFor();
  assert.equal(await air.locator(".dw-y-dry").count(), 0, "without a year there is none");
  await chosen(page).setInputFiles(GULL_HARBOUR);
  await air.locator(".dw-y-dry").waitFor({ state: "attached" });
  assert.ok(0 < (await air.locator(".dw-square svg [class^=dw-y-m]").count()), "wet hours");
  const told = (await air.locator(".dw-square__year").innerText()).replaceAll("\u2009", "");
  const [, bound, all, wet] = /(\d+) of (\d+) hours are dry by bound.* (\d+) are wet by model/s.exec(told);
  assert.equal(all, "8760");
  assert.ok(Number(bound) + Number(wet) <= 8760, told);
  const said = (await sentence(page)).replaceAll("\u2009", "");
  assert.ok(said.startsWith(`${wet} wet hours`), `${said} and ${told}`);
  await accessible(page, "with the hours in the square", ".dw-air");
});

test("a weather file dropped on the empty page makes a project of what was answered there", async () => {
  const page = await site.openAt(1440, 1000);
  await page.getByRole("button", { name: "Draw this route" }).waitFor();
  await drop(page, "gull-harbour.csv", await readFile(GULL_HARBOUR, "utf8"));
  await hand(page).waitFor();
  assert.equal((await saved(page)).project.weather.file, "gull-harbour.csv");
  const other = await site.openAt(1440, 1000);
  await other.getByRole("button", { name: "Draw this route" }).waitFor();
  await drop(other, "photo.png", "\u0089PNG\r\n\u001a\n\u0000\u0000");
  await other.getByText("photo.png was not taken in.").waitFor();
});

test("a project saved with its weather opens elsewhere with its year; a damaged one is refused", async () => {
  const page = await opened(site);
  const said = await sentence(page);
  await year(page).getByRole("button", { name: "over ice" }).click();
  await page.locator('[data-over="2"][aria-pressed="true"]').waitFor();
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save with weather" }).click();
  const path = join(folder, "packed.json");
  await (await coming).saveAs(path);
  const text = await readFile(path, "utf8");
  const packed = JSON.parse(text);
  assert.equal(packed.files[0].name, "gull-harbour.csv");
  assert.equal(packed.files[0].bytes, (await readFile(GULL_HARBOUR)).length, "all of it");
  const elsewhere = await site.openAt(1440, 1000, "light", "#example=pool-hall-exhaust");
  await answered(elsewhere);
  await chosen(elsewhere).waitFor({ state: "attached" });
  const spoiled = structuredClone(packed);
  spoiled.files[0].bytes += 1;
  await drop(elsewhere, "spoiled.json", JSON.stringify(spoiled));
  await year(elsewhere).getByText(/a file in it is damaged/).waitFor();
  await drop(elsewhere, "packed.json", text);
  await hand(elsewhere).waitFor();
  await year(elsewhere).getByText(/over ice, as said here/).first().waitFor();
  assert.ok((await sentence(elsewhere)).length, said);
  assert.deepEqual((await saved(elsewhere)).project.weather, (await saved(page)).project.weather, "and how it is read");
});

test("air that was measured in the duct makes the year of its hours, here, in plausible years, after a reload and elsewhere", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const air = group(page, "Where the duct air comes from");
  await air.getByText(/^Was it measured in this duct\? Then open what the logger wrote, above/).waitFor();
  const stamp = (at) => new Date(Date.UTC(2001, 6, 1, 0, 3 + 10 * at)).toISOString().slice(0, 16).replace("T", " ");
  const rows = Array.from({ length: 31 * 144 }, (_, at) => `${stamp(at)},${29 + (at % 7) / 2},${23 + (at % 5) / 2}`);
  const file = join(folder, "duct.csv");
  await writeFile(file, `time,temperature [C],dew point [C]\n${rows.join("\n")}\n`);
  const choose = page.getByLabel("Open what was measured in the duct");
  const broken = join(folder, "broken.csv");
  await writeFile(broken, "this is no table\n");
  await choose.setInputFiles(broken);
  await year(page).getByText(/broken\.csv was not taken in\. The open project is unchanged/).waitFor();
  assert.equal(await source(page), undefined, "nothing was taken in");
  await choose.setInputFiles(file);
  const measured = await changed(page, before);
  const told = (await year(page).innerText()).replaceAll("\u00a0", " ").replaceAll("\u2009", "");
  assert.match(told, /gull-harbour\.csv[^]*Measured in the duct: duct\.csv 4464 rows; every 10 min; 2001-07-01 to 2001-07-31\n/);
  await air.getByText("Measured: duct.csv").waitFor();
  assert.equal(await air.getByLabel("The duct air is").inputValue(), "measured", "it says so");
  const { text, project: said } = await saved(page);
  const { from, file: kept } = said.runs[0].duct.source;
  assert.deepEqual([from, kept.file, kept.rows], ["measured", "duct.csv", 4464]);
  const project = join(folder, "measured.json");
  await writeFile(project, text);
  const args = ["run", "--quiet", "--package", "dewrun-cli", "--", "year", project, "--weather", GULL_HARBOUR, "--json"];
  const { stdout, stderr } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", maxBuffer: 1 << 26 });
  assert.ok(stdout, stderr);
  const { whole } = JSON.parse(stdout).runs[0].year;
  assert.equal(whole.hours, 31 * 24, "the hours of July");
  const hours = Number(/([\d\u2009]+) wet hours/.exec(measured)[1].replace("\u2009", ""));
  assert.equal(hours, Math.round(whole.wet_hours), "as on the command line");
  await page.reload();
  await hand(page).waitFor();
  assert.equal(await sentence(page), measured, "after a reload too");
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save with weather" }).click();
  const path = join(folder, "both.json");
  await (await coming).saveAs(path);
  const packed = await readFile(path, "utf8");
  assert.deepEqual(JSON.parse(packed).files.map(({ name }) => name), ["gull-harbour.csv", "duct.csv"]);
  const elsewhere = await site.openAt(1440, 1000, "light", "#example=pool-hall-exhaust");
  await answered(elsewhere);
  await chosen(elsewhere).waitFor({ state: "attached" });
  await drop(elsewhere, "both.json", packed);
  await hand(elsewhere).waitFor();
  assert.equal(await sentence(elsewhere), measured, "and on another device");
  const doubt = elsewhere.getByRole("group", { name: "How sure is this year?" });
  await doubt.getByRole("button", { name: "Take it 256 times" }).click();
  await elsewhere.locator("[data-year=doubt-note]").filter({ hasText: "first 32 of 256" }).waitFor({ timeout: 60_000 });
  await doubt.getByRole("button", { name: "Stop" }).click();
});

test("a file without an end of readings is refused or read, and the page lives", async () => {
  const page = await opened(site);
  const before = await sentence(page);
  const file = join(folder, "noise.csv");
  await writeFile(file, Buffer.alloc(20 << 20, "no reading here; "));
  await chosen(page).setInputFiles(file);
  await year(page).getByText(/noise\.csv was not taken in/).waitFor({ timeout: 20_000 });
  assert.equal(await sentence(page), before, "the year stands");
});

test("at every size the fields fit, and axe finds nothing", async () => {
  for (const [width, scheme] of [[360, "light"], [800, "dark"], [1440, "light"]]) {
    const page = await opened(site, width, 1000, scheme);
    await group(page, "Where the duct air comes from").getByLabel("The duct air is").selectOption({ label: "the air of a room" });
    await group(page, "Where the duct air comes from").getByRole("button", { name: "heat recovery" }).click();
    await group(page, "Step 1: heat recovery").getByRole("button", { name: "Only at times" }).click();
    await page.locator(".dw-year__sentence").getByRole("button").first().click();
    await page.getByRole("region", { name: "Where the figure of the year comes from" }).getByRole("button", { name: "Close" }).waitFor();
    await fits(page, `at ${width} px`);
    await accessible(page, `at ${width} px, ${scheme}`, ".dw-year-section");
    await page.close();
  }
});
