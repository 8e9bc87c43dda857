// The section Troubles: a list is pasted, the cause and the next check are read, what was seen at it is entered; all of it as the command line says.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { sheets as sheetsOf } from "./codes.mjs";
import { ROOT, dewrun } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";
import { GULL_HARBOUR, chosen, hand, ready } from "./weather.mjs";

const site = dewrun();
/** Plausible years take their time on a busy machine. */
const LONG = { timeout: 180_000 };

const LAUNDRY = `${ROOT}demo/laundry-exhaust.json`;
const LIST = readFileSync(`${ROOT}demo/laundry-exhaust-log.csv`, "utf8");

const section = (page) => page.getByRole("region", { name: "Troubles", exact: true });
const part = (page, name) => page.locator(`[data-troubles="${name}"]`);

/** Opens the laundry with the weather that it names. */
async function laundry(width = 1440, height = 1000, scheme = "light") {
  const page = await site.openAt(width, height, scheme);
  await page.locator("input[type=file]").first().setInputFiles(LAUNDRY);
  await ready(page);
  await chosen(page).setInputFiles(GULL_HARBOUR);
  await hand(page).waitFor();
  await section(page).scrollIntoViewIfNeeded();
  return page;
}

/** Waits until causes are ranked by the years of the run, with nothing on its way. */
async function weighed(page) {
  await page.waitForFunction(
    () => document.querySelector("[data-troubles=rests]")?.innerText.startsWith("Weighed over 64") && document.querySelector("[data-troubles=work]").hidden && !document.querySelector("[data-troubles=found].dw-stale"),
    undefined,
    LONG,
  );
}

/** Waits until something is said by the years of the run, by the first of them or by all. */
async function told(page) {
  await page.waitForFunction(
    () => document.querySelector("[data-troubles=rests]")?.innerText.startsWith("Weighed over ") && !document.querySelector("[data-troubles=found].dw-stale"),
    undefined,
    LONG,
  );
}

/** Pastes a list and has it read. */
async function paste(page, text) {
  const field = section(page).getByLabel(/^Paste it here/);
  if (!(await field.isVisible())) await part(page, "named").click();
  await field.fill(text);
  await section(page).getByRole("button", { name: "Read this list" }).click();
}

/** Shares of the causes as they are shown. */
const shares = (page) =>
  part(page, "causes")
    .locator("tr[data-cause]")
    .evaluateAll((rows) => Object.fromEntries(rows.map((row) => [row.dataset.cause, Number(row.querySelector("data").value)])));

test("the laundry's list is pasted: cause, evidence and next check as the command says, then what was seen moves the shares", async () => {
  const page = await laundry();
  await weighed(page);
  await paste(page, LIST);
  await part(page, "named").getByText("17 rows").waitFor(LONG);
  await weighed(page);
  assert.match(await part(page, "sentence").innerText(), /^Water in the low point at 4\.7\sm explains this log best/);
  await part(page, "read").getByText("dates in column 1").waitFor();
  assert.ok(await part(page, "timeline").locator("svg").isVisible(), "the entries stand over what was modelled");
  const before = await shares(page);
  assert.ok(50 < before.low_point_water, `${before.low_point_water} of 100`);

  // The same project with the same log, told by the command.
  const folder = mkdtempSync(join(tmpdir(), "dewrun-"));
  const project = join(folder, "project.json");
  const answered = () => {
    writeFileSync(project, JSON.stringify(page.kept));
    const said = ["troubles", `${ROOT}demo/laundry-exhaust-log.csv`, "--project", project, "--weather", GULL_HARBOUR, "--json"];
    const answer = execFileSync("cargo", ["run", "--quiet", "--package", "dewrun-cli", "--", ...said], { cwd: ROOT, encoding: "utf8" });
    return JSON.parse(answer).troubles;
  };
  page.kept = (await saved(page)).project;
  const command = answered();
  for (const [id, share] of Object.entries(before)) {
    const own = command.causes.find((cause) => cause.id === id);
    assert.equal(share, own.share, `${id}, digit for digit`);
    const row = part(page, "causes").locator(`tr[data-cause=${id}]`);
    for (const sentence of [...own.for, ...own.against]) assert.ok((await row.innerText()).includes(sentence), sentence);
  }
  const check = await part(page, "check").locator("[data-check-name]").getAttribute("data-check-name");
  assert.equal(check, command.next_checks[0].id);

  const seen = part(page, "check").getByRole("button", { name: /^Seen/ }).first();
  await seen.click();
  await part(page, "seen").getByRole("button", { name: /^Take it back/ }).waitFor(LONG);
  await weighed(page);
  const after = await shares(page);
  assert.notDeepEqual(after, before, "what was seen moves the shares");
  page.kept = (await saved(page)).project;
  const { causes } = answered();
  for (const [id, share] of Object.entries(after)) {
    assert.equal(share, causes.find((cause) => cause.id === id).share, `${id}, after the check`);
  }
  await page.getByRole("button", { name: "Undo" }).click();
  // What is out of sight is ranked once it comes back.
  await section(page).scrollIntoViewIfNeeded();
  await page.waitForFunction(() => !document.querySelector("[data-unseen]"), undefined, LONG);
  await weighed(page);
  assert.deepEqual(await shares(page), before, "undo takes it back");
});

test("the list is there after a reload, and can be done without", async () => {
  const page = await laundry();
  await paste(page, LIST);
  await part(page, "named").getByText("17 rows").waitFor(LONG);
  await page.reload();
  await ready(page);
  await section(page).scrollIntoViewIfNeeded();
  await told(page);
  await part(page, "named").getByText("17 rows").waitFor();
  assert.ok(await part(page, "timeline").locator("svg").isVisible(), "the list was kept");
  await part(page, "named").click();
  await section(page).getByRole("button", { name: "Do without it" }).click();
  await page.waitForFunction(() => !document.querySelector("[data-troubles=timeline] svg"), undefined, LONG);
});

test("a list that can't be read gets a sentence and loses nothing", async () => {
  const page = await laundry();
  await weighed(page);
  await paste(page, LIST);
  await part(page, "named").getByText("17 rows").waitFor(LONG);
  await weighed(page);
  const before = (await saved(page)).project;
  const ranked = await shares(page);
  await paste(page, "nobody wrote a date\nor a time\n");
  await part(page, "fault").getByText(/pasted list was not taken in.*No line of the list begins with a date/).waitFor(LONG);
  assert.match(await section(page).getByLabel(/^Paste it here/).inputValue(), /^nobody wrote/, "what was typed stays");
  assert.deepEqual((await saved(page)).project, before, "the project is unchanged");
  assert.deepEqual(await shares(page), ranked, "so are the shares");
  await paste(page, "   ");
  await part(page, "fault").getByText("Nothing is pasted yet").waitFor();
});

test("columns, order of dates, words and the clock can be put right, and undone", async () => {
  const page = await laundry();
  await paste(page, "2001-09-01;12.09.2001 07:20;draught weak\n2001-09-02;03.10.2001 06:35;draught weak\n2001-09-03;11.10.2001 06:15;draught weak\n");
  await part(page, "named").getByText("3 rows").waitFor(LONG);
  await told(page);
  await section(page).getByText("Read it otherwise").click();
  await section(page).getByLabel("Date in column").selectOption("2");
  await part(page, "read").getByText("dates in column 2").waitFor(LONG);
  await section(page).getByLabel("\u201cdraught weak\u201d means").selectOption("airflow_low");
  await page.waitForFunction(() => !document.querySelector("[data-troubles=read]").innerText.includes("taken as"), undefined, LONG);
  const kept = (await saved(page)).project.runs[0].troubles.log.reading;
  assert.deepEqual(kept, { date_column: 2, words: [{ words: "draught weak", kind: "airflow_low" }] });
  const offset = section(page).getByLabel(/^Clock ahead of UTC/);
  await offset.fill("99");
  await offset.press("Tab");
  await part(page, "fault").getByText("the clock must be").waitFor(LONG);
  await offset.fill("2");
  await offset.press("Tab");
  await page.waitForFunction(() => document.querySelector("[data-troubles=fault]").hidden, undefined, LONG);
  await section(page).getByLabel("The clock is put forward and back by an hour").check();
  await section(page).getByLabel("Put forward: month").waitFor(LONG);
  await page.waitForFunction(() => true);
  await told(page);
  const clock = (await saved(page)).project.runs[0].troubles.log.reading;
  assert.equal(clock.utc_offset_h, 2);
  assert.deepEqual(clock.daylight_saving.starts, { month: "mar", which: 5, weekday: "sun", hour: 2 });
});

test("without a weather file the answers rank, and a tap moves them", async () => {
  const page = await site.openAt(800, 900, "light", "#example=make-up-air");
  await ready(page);
  await section(page).scrollIntoViewIfNeeded();
  await part(page, "sentence").waitFor(LONG);
  await part(page, "rests").getByText("as it is entered").waitFor();
  const before = await shares(page);
  const asked = section(page).getByRole("group", { name: "Which trouble?" });
  await asked.getByRole("button", { name: "airflow high" }).click();
  await page.waitForFunction(() => document.querySelector("[data-question][aria-pressed=true]"), undefined, LONG);
  await page.waitForFunction(() => !document.querySelector("[data-troubles=found].dw-stale"), undefined, LONG);
  assert.notDeepEqual(await shares(page), before, "an answer counts");
  assert.match((await saved(page)).project.note, /Trouble: airflow high\./);
});

for (const [width, height, scheme] of [[360, 780, "light"], [800, 900, "dark"], [1440, 1000, "light"]]) {
  test(`the section is for everybody at ${width} px, ${scheme}`, async () => {
    const page = await laundry(width, height, scheme);
    await paste(page, LIST);
    await part(page, "named").getByText("17 rows").waitFor(LONG);
    await told(page);
    await section(page).getByText("as table", { exact: true }).click();
    await fits(page, "troubles");
    if (width === 360) await touchable(page, "troubles", ".dw-troubles", 44);
    await accessible(page, "troubles", ".dw-troubles-section");
  });
}

test("after the cause the service card is printed: cause, next check, intervals, order of checks, cautions, on whole sheets", async () => {
  const page = await laundry();
  await page.evaluate(() => {
    window.printed = 0;
    window.print = () => (window.printed += 1);
  });
  await paste(page, LIST);
  await part(page, "named").getByText("17 rows").waitFor(LONG);
  await section(page).scrollIntoViewIfNeeded();
  await weighed(page);
  const sentence = (await part(page, "sentence").innerText()).split(".")[0];
  const check = await part(page, "check").locator("[data-check-name]").innerText();
  const card = page.getByRole("region", { name: "Sheets" }).getByRole("group", { name: "Service card", exact: true });
  for (const [paper, height] of [["A4", 297], ["Letter", 279.4]]) {
    await page.getByLabel("Paper").selectOption(paper);
    await card.getByRole("button", { name: "Show it here" }).click();
    const shown = card.getByRole("region", { name: "Service card" });
    await shown.getByRole("heading", { name: "Service card", level: 1 }).first().waitFor();
    const text = (await shown.innerText()).replace(/\s+/g, " ");
    for (const words of [sentence, check.split("\n")[0], "Intervals and limits", "Order of checks", "Access", "History of visits", "Advice for competent people."]) {
      assert.ok(text.includes(words.replace(/\s+/g, " ").trim()), `${paper}: ${words}`);
    }
    const sheets = await shown.locator(".dw-card__sheet").evaluateAll(async (sheets) => {
      await document.fonts.ready;
      const over = (sheet) => [...sheet.querySelectorAll("td, th, p, li")].filter((cell) => cell.scrollWidth > cell.clientWidth + 1 && cell.clientWidth).map((cell) => cell.innerText);
      return sheets.map((sheet) => ({ height: (sheet.getBoundingClientRect().height / 96) * 25.4, over: over(sheet) }));
    });
    assert.equal(sheets.length, 2, `${paper}: two sheets`);
    for (const sheet of sheets) {
      assert.ok(Math.abs(sheet.height - height) < 0.3, `${paper}: ${sheet.height} mm`);
      assert.deepEqual(sheet.over, [], paper);
    }
    await accessible(page, `the service card on ${paper}`, ".dw-sheets-section");
    await card.getByRole("button", { name: "Show it here" }).click();
  }
  await card.getByRole("button", { name: "Print the service card" }).click();
  await page.waitForFunction(() => window.printed === 1, undefined, LONG);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  assert.equal(sheetsOf(pdf), 2, "two sheets go to the printer");
});
