// The installer leaves with a card in hand; the technician times smoke and notes a visit. On a phone, without a network, and by keys alone.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { deflateRawSync } from "node:zlib";
import { readCode, sheets } from "./codes.mjs";
import { shows, watch } from "./harness.mjs";
import { accessible, fits, saved, touchable, unfold } from "./looks.mjs";
import { deployed } from "./static.mjs";

const state = deployed();

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true };
const DESK = { viewport: { width: 1440, height: 900 } };

/** The page on a device of its own, without a way to a printer. */
async function visit(size, rest = "#example=make-up-air") {
  const context = await state.browser.newContext({ ...size, reducedMotion: "reduce" });
  const page = await context.newPage();
  await page.addInitScript(() => {
    window.printed = 0;
    window.print = () => (window.printed += 1);
  });
  watch(page, state.site.address, state.offences);
  await page.goto(state.site.address + rest);
  await shows(page);
  return page;
}

const demo = async (name) => JSON.parse(await readFile(new URL(`../../demo/${name}.json`, import.meta.url), "utf8"));
const packed = (project) => deflateRawSync(JSON.stringify(project)).toString("base64url");
const section = (page) => page.getByRole("region", { name: "Sheets" });
const group = (page, name) => section(page).getByRole("group", { name, exact: true });
const form = (page) => section(page).getByRole("form", { name: "A visit" });
const field = (page, name) => form(page).getByLabel(name);
const plain = (text) => text.replace(/\s+/g, " ").trim();

/** What stands under a field. */
async function told(page, name) {
  const id = await field(page, name).getAttribute("aria-describedby");
  return plain(await page.locator(`#${id}`).innerText());
}

/** The sheet that the page sends to a printer. */
async function printed(page) {
  await page.waitForFunction(() => window.printed === 1);
  return page.pdf({ preferCSSPageSize: true });
}

test("an installer goes from the empty page to the printed card, on a phone without a network", async () => {
  const page = await visit(PHONE, "");
  await page.evaluate(() => navigator.serviceWorker.ready.then((kept) => kept.active.state));
  await state.site.stop();
  try {
    await page.reload();
    await shows(page);
    const ways = page.getByRole("group", { name: "What you have" });
    await ways.getByRole("button", { name: "a tube I am fitting" }).tap();
    const tap = (question, word) =>
      page.getByRole("group", { name: question }).getByRole("button", { name: word, exact: true }).tap();
    await tap("Which tube?", "ABS, 25 mm");
    await tap("Which duct air?", "return air");
    await tap("In which weather?", "frosty night");
    await tap("Which way? Leg 1", "straight up");
    await page.getByLabel("Length of leg 1").fill("0.8");
    await tap("Through what? Leg 1", "plant room");
    await tap("Which way does it go on?", "down 1:50");
    await page.getByLabel("Length of leg 2").fill("6");
    await tap("Through what? Leg 2", "shaft");
    await page.getByRole("button", { name: "Draw this route" }).tap();
    await group(page, "Site card").waitFor();
    await page.getByRole("navigation", { name: "Sections" }).getByRole("button", { name: "Sheets" }).tap();
    await group(page, "Site card").getByLabel("Revision").fill("B");
    await touchable(page, "what is pressed with gloves on", ".dw-sheets", 48);
    await fits(page, "nothing beside the phone's edge");
    await accessible(page, "the section on a phone", ".dw-sheets-section");
    const { project } = await saved(page);
    await group(page, "Site card").getByRole("button", { name: "Print the site card" }).tap();
    const pdf = await printed(page);
    assert.equal(sheets(pdf), 1, "one sheet");
    const link = await readCode(pdf, page);
    assert.ok(link.startsWith(`${state.site.address}#v1=`), `the page's own address: ${link.slice(0, 60)}`);
    // Another person scans it, as far from a network.
    const other = await page.context().newPage();
    watch(other, state.site.address, state.offences);
    await other.goto(link);
    await other.getByRole("region", { name: "Answer" }).waitFor();
    const opened = (await saved(other)).project;
    const legs = ({ runs }) => runs[0].intake.legs.map((leg) => [leg.length_m.value, leg.rise_m.value, leg.tube.bore_mm.value]);
    assert.deepEqual(legs(project), [[0.8, 0.8, legs(project)[0][2]], [6, -0.12, legs(project)[1][2]]], "as it was tapped");
    assert.deepEqual(legs(opened), legs(project), "the same tube");
  } finally {
    await state.site.start();
  }
});

test("the card is printed by keys alone, in grey too, and its code opens the run", async () => {
  const page = await visit(DESK);
  await group(page, "Site card").waitFor();
  const named = () => page.evaluate(() => document.activeElement?.innerText ?? "");
  await page.getByLabel("Paper").focus();
  for (let presses = 0; (await named()) !== "Print the site card"; presses += 1) {
    assert.ok(presses < 12, `it is not reached, last ${await named()}`);
    await page.keyboard.press("Tab");
  }
  await page.keyboard.press("Enter");
  const project = await readBack(page);
  const example = await demo("make-up-air");
  const route = (tube) => tube.legs.map((leg) => [leg.length_m.value, leg.rise_m.value, leg.tube.bore_mm.value]);
  for (const tube of ["intake", "exhaust"]) {
    assert.deepEqual(route(project.runs[0][tube]), route(example.runs[0][tube]), tube);
  }
});

/** Of the calculation sheet shown on the page: each page's height and what it leaves free, mm, and cells that run over. */
const measured = (page) =>
  page.locator(".dw-calc__page").evaluateAll((pages) => {
    const mm = (px) => (px * 25.4) / 96;
    return pages.map((one) => ({
      height: mm(one.getBoundingClientRect().height),
      free: mm(one.querySelector(".dw-card__fill").getBoundingClientRect().height),
      over: [...one.querySelectorAll("td, th, p")].filter((cell) => cell.scrollWidth > cell.clientWidth + 1 && cell.clientWidth).map((cell) => cell.innerText),
    }));
  });

test("a designer prints the calculation sheet on either paper; nothing runs over an edge", async () => {
  for (const example of ["make-up-air", "pool-hall-exhaust"]) {
    const page = await visit(DESK, `#example=${example}`);
    await group(page, "Calculation sheet").waitFor();
    for (const [paper, height] of [["A4", 297], ["Letter", 279.4]]) {
      await page.getByLabel("Paper").selectOption(paper);
      const show = group(page, "Calculation sheet").getByRole("button", { name: "Show it here" });
      await show.click();
      const shown = group(page, "Calculation sheet").getByRole("region", { name: "Calculation sheet" });
      const text = plain(await shown.innerText());
      for (const part of ["Inputs", "Results, steady", "Relations", "Doubt, steady", "Remedies compared", "Calculated by, date"]) {
        assert.ok(text.includes(part), `${example}: ${part}`);
      }
      const pages = await measured(page);
      assert.ok(pages.length > 5, `${example}: ${pages.length} pages`);
      pages.forEach((one, at) => {
        assert.ok(Math.abs(one.height - height) < 0.5, `${example} on ${paper}, page ${at + 1}: ${one.height} mm high`);
        assert.ok(one.free > 1, `${example} on ${paper}, page ${at + 1}: ${one.free} mm are free`);
        assert.deepEqual(one.over, [], `${example} on ${paper}, page ${at + 1}`);
      });
      await show.click();
      await shown.waitFor({ state: "hidden" });
    }
    await group(page, "Calculation sheet").getByRole("button", { name: "Print the calculation sheet" }).click();
    await page.waitForFunction(() => window.printed === 1);
    const papers = await page.locator(".dw-paper .dw-calc__page").count();
    assert.ok(5 < papers, `${example}: ${papers} pages go to the printer`);
    const pdf = await printed(page);
    assert.equal(sheets(pdf), papers, "each page is a sheet, and there are no others");
    await page.context().close();
  }
});

test("the calculation sheet is saved as a document that needs nothing besides", async () => {
  const page = await visit(DESK);
  await group(page, "Calculation sheet").waitFor();
  const saving = page.waitForEvent("download");
  await group(page, "Calculation sheet").getByRole("button", { name: "Save as HTML" }).click();
  const download = await saving;
  assert.equal(download.suggestedFilename(), "calculation-sheet.html", "its name");
  const html = await readFile(await download.path(), "utf8");
  assert.ok(html.startsWith("<!DOCTYPE html>") && html.includes("@font-face"), "a whole document");
  assert.ok(!/(src|href)="?(https?:)?\/\//.test(html.replace("http://www.w3.org", "")), "nothing is fetched");
});

/** The project that the code of the card just printed, one sheet, opens. */
async function readBack(page) {
  const pdf = await printed(page);
  assert.equal(sheets(pdf), 1, "one sheet");
  const link = await readCode(pdf, page);
  await page.goto("about:blank");
  await page.goto(link);
  await shows(page);
  return (await saved(page)).project;
}

/** The humid make-up air with a leg more, a trap, hangers and visits: ten legs with all that a file holds of them. */
async function tenLegs() {
  const project = await demo("make-up-air");
  const [run] = project.runs;
  const { legs } = run.intake;
  const typed = (value) => ({ value, origin: "typed" });
  legs.splice(3, 0, { ...structuredClone(legs[2]), id: "in-3b", length_m: typed(2.15), rise_m: typed(0.0358) });
  legs.slice(0, 5).forEach((leg, at) => (leg.hanger_spacing_m = typed(0.8 + at / 20)));
  run.intake.traps = [{ at_m: typed(5.2), kind: "hand_drained", capacity_ml: typed(2500) }];
  run.visits = [5, 6, 7].map((month) => ({
    on: `2026-0${month}-17`,
    by: "J. Orre",
    airflow_l_min: { value: 30 - month / 3 },
    note: `Trap emptied, seal wiped, in month ${month}.`,
  }));
  return project;
}

test("a run of ten legs is read off its printed sheet", async () => {
  const project = await tenLegs();
  const count = project.runs[0].intake.legs.length + project.runs[0].exhaust.legs.length;
  assert.equal(count, 10, "ten legs");
  const page = await visit(PHONE, `#v1=${packed(project)}`);
  const card = group(page, "Site card");
  await card.getByRole("button", { name: "Print the site card" }).tap();
  const opened = await readBack(page);
  const route = ({ runs: [run] }) =>
    ["intake", "exhaust"].map((tube) => [
      run[tube].legs.map((leg) => [leg.length_m.value, leg.rise_m.value, leg.hanger_spacing_m?.value]),
      run[tube].traps?.map((trap) => [trap.at_m.value, trap.kind, trap.capacity_ml.value]),
    ]);
  assert.deepEqual(route(opened), route(project), "the same tube");
  assert.deepEqual(
    opened.spaces.map((space) => space.temperature_c.value),
    project.spaces.map((space) => space.temperature_c.value),
    "in the same spaces",
  );
  assert.equal(opened.runs[0].visits, undefined, "what was left out, as the card says");
});

test("the card is shown in the page and saved as a document that needs nothing", async () => {
  const page = await visit(PHONE);
  const card = group(page, "Site card");
  await card.getByRole("button", { name: "Show it here" }).tap();
  await card.getByRole("heading", { name: "Site card", level: 1 }).waitFor();
  await card.getByText("This detector may not be sampling the duct").waitFor();
  await fits(page, "the card scrolls by itself");
  await accessible(page, "with the card shown", ".dw-sheets-section");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    card.getByRole("button", { name: "Save as HTML" }).tap(),
  ]);
  const text = await readFile(await download.path(), "utf8");
  assert.ok(text.startsWith("<!DOCTYPE html>"), "a document");
  assert.equal(text.match(/data:font\/woff2;base64,/g).length, 2, "with its typeface");
  assert.ok(!text.includes("<script") && !/(src|href)="http/.test(text), "nothing runs, nothing is asked for");
  const context = await state.browser.newContext({ ...DESK, offline: true });
  const other = await context.newPage();
  await other.setContent(text);
  const over = await other.evaluate(async () => {
    await document.fonts.ready;
    const sheets = [...document.querySelectorAll(".dw-card__sheet")];
    return sheets.map((sheet) => Math.abs(sheet.getBoundingClientRect().height - (297 / 25.4) * 96) < 1);
  });
  assert.deepEqual(over, [true], "it keeps to its sheet");
  const small = await other.evaluate(() =>
    [...document.querySelectorAll(".dw-card *")]
      .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim()))
      .filter((element) => !element.closest("title, desc"))
      .map((element) => [parseFloat(getComputedStyle(element).fontSize) * 0.75, element.textContent])
      .filter(([points]) => points < 7.49),
  );
  assert.deepEqual(small, [], "nothing under 7.5 pt");
  await context.close();
});

test("whatever is drawn, nothing runs over the edge of its sheet", async () => {
  for (const example of ["make-up-air", "pool-hall-exhaust", "chilled-supply", "sagging-tube"]) {
    const page = await visit(DESK, `#v1=${packed(await demo(example))}`);
    const card = group(page, "Site card");
    for (const [paper, height] of [["A4", 297], ["Letter", 279.4]]) {
      await card.getByLabel("Paper").selectOption(paper);
      await card.getByRole("button", { name: "Show it here" }).click();
      await card.getByRole("heading", { name: "Site card", level: 1 }).first().waitFor();
      const heights = await page.evaluate(async () => {
        await document.fonts.ready;
        const sheets = [...document.querySelectorAll(".dw-card__sheet")];
        return sheets.map((sheet) => (sheet.getBoundingClientRect().height / 96) * 25.4);
      });
      assert.ok(heights.length < 3, `${example} on ${paper}: ${heights.length} sheets`);
      for (const one of heights) assert.ok(Math.abs(one - height) < 0.3, `${example} on ${paper}: ${one} mm`);
      await card.getByRole("button", { name: "Show it here" }).click();
    }
    await page.close();
  }
});

test("a visit is noted, compared and undone", async () => {
  const page = await visit(PHONE);
  await form(page).waitFor();
  assert.match(await told(page, "Airflow"), /^Expected 29\.3 \(2\d\.\d to 31\.6\)\.$/);
  await field(page, "Airflow").fill("much");
  assert.match(await told(page, "Airflow"), /number/i, "what is wrong with it");
  assert.equal(await field(page, "Airflow").getAttribute("aria-invalid"), "true");
  await form(page).getByRole("button", { name: "Note the visit" }).tap();
  assert.equal(await page.evaluate(() => document.activeElement.name), "airflow_l_min", "the hand is led there");
  await accessible(page, "with a wrong field", ".dw-sheets-section");
  await field(page, "Occasion").selectOption("as_fitted");
  await field(page, "Airflow").fill("24,5");
  assert.match(await told(page, "Airflow"), /^Below the span of 2\d\.\d to 31\.6 L\/min\.$/);
  await field(page, "Day").fill("2026-08-30");
  await field(page, "By").fill("J. Orre");
  await field(page, "Water at 5.20 m of the intake tube").fill("1.2 L");
  await field(page, "Note").fill("Filter new.");
  await form(page).getByRole("button", { name: "Note the visit" }).tap();
  const visits = group(page, "Visits so far");
  await visits.getByText("2026-08-30, J. Orre, fitted").waitFor();
  assert.match(plain(await visits.innerText()), /Airflow 24\.5 L\/min\. Below the span of 2\d\.\d to 31\.6 L\/min\. Water 1 200 g at 5\.20 m of the intake tube\. Filter new\.$/);
  assert.equal(await field(page, "Airflow").inputValue(), "", "the form is empty again");
  assert.equal(await field(page, "By").inputValue(), "J. Orre", "but for who it is");
  const { project } = await saved(page);
  const [run] = project.runs;
  assert.deepEqual(run.flow, {
    volume_l_min: { value: 24.5, origin: { measured: { on: "2026-08-30", by: "J. Orre" } } },
    at: "sensor",
  });
  assert.equal(run.visits[0].water[0].water_g, 1200);
  await unfold(page);
  await page.getByRole("button", { name: "Undo" }).tap();
  await visits.getByText("Nobody has noted a visit yet.").waitFor();
  const undone = (await saved(page)).project.runs[0];
  assert.deepEqual([undone.visits, undone.flow.volume_l_min.value], [undefined, 30], "as it was");
});

test("smoke is timed and written into the visit", async () => {
  const page = await visit(PHONE, "");
  await page.clock.install();
  await page.goto(`${state.site.address}?timed#example=make-up-air`);
  await page.clock.runFor(2000);
  const watch = group(page, "Stopwatch");
  await watch.waitFor();
  await page.clock.pauseAt(Date.now() + 3_600_000);
  await touchable(page, "a large button", ".dw-watch", 96);
  const button = watch.getByRole("button").first();
  const says = async () => plain(await button.innerText());
  const lines = async () => plain(await watch.getByRole("status").innerText());
  assert.match(await lines(), /^First smoke: expected after 3\.9 to \d\.\d s\./);
  assert.match(await says(), /^Smoke is at the duct/);
  await button.press("Enter");
  await page.clock.runFor(4300);
  assert.equal(await says(), "First trace 4.3 s");
  await button.press("Space");
  await page.clock.runFor(1000);
  assert.match(await lines(), /^First smoke after 4\.3 s: within 3\.9 to \d\.\d s\. 90 % of it: expected after/);
  await page.clock.runFor(29_700);
  await button.press("Enter");
  assert.match(await lines(), /90 % of it after 35\.0 s: later than .*; check length, bore and airflow\.$/);
  assert.equal(await says(), "Time again 35.0 s");
  await watch.getByRole("button", { name: "Write it into the visit" }).click();
  assert.equal(await field(page, "First smoke").inputValue(), "4.3");
  assert.equal(await field(page, "90 % of it").inputValue(), "35.0");
  assert.match(await told(page, "90 % of it"), /^Above the span/);
  await watch.getByRole("button", { name: "Set back" }).click();
  assert.match(await says(), /^Smoke is at the duct/);
});
