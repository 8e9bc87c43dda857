// Runs and variants of one project: chosen in words, copied, named, deleted and compared on the same scales.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun } from "./harness.mjs";
import { accessible, saved } from "./looks.mjs";

const site = dewrun();

const group = (page, name) => page.getByRole("group", { name, exact: true });
const word = (page, name, option) => group(page, name).getByRole("button", { name: option, exact: true });
const bar = (page) => page.getByRole("region", { name: "Runs and variants" });
const act = (page, name) => bar(page).getByRole("button", { name, exact: true });

async function open(width = 1440) {
  const page = await site.openAt(width, 1000, "light", "#example=make-up-air");
  await bar(page).getByText("Runs and variants", { exact: true }).click();
  return page;
}

const pressed = (page, name) =>
  group(page, name).locator('[aria-pressed="true"]').allInnerTexts();

test("a variant is copied, changed, compared and taken back", async () => {
  const page = await open();
  assert.equal(await group(page, "Variant").count(), 0, "one run alone needs no words");
  await act(page, "Copy as a variant").click();
  assert.deepEqual(await pressed(page, "Variant"), ["Variant 2"]);
  await page.getByLabel("Name of the open run").fill("Detector in the plant room");
  await word(page, "Variant", "Detector in the plant room").waitFor();
  await page.getByRole("textbox", { name: /^Length of leg 2/ }).fill("2.5");
  await word(page, "Compare with", "Make-up air unit").click();
  const table = page.getByRole("table", { name: "Open and compared variant" });
  const water = table.getByRole("row", { name: /Water on the way/ });
  const cells = await water.getByRole("cell").allInnerTexts();
  assert.equal(cells.length, 2);
  assert.notEqual(cells[0], cells[1], "another length, another answer");
  // Lines of one kind that follow each other are one element: each begins with a move.
  const lines = await page.locator(".dw-o-line").evaluateAll((all) => all.map((one) => one.getAttribute("d")).join(""));
  assert.equal(lines.split("M").length - 1, 4, `one tube and three curves: ${lines}`);
  const id = await water.getByRole("button").getAttribute("data-figure");
  assert.equal(await water.locator("[data-other]").getAttribute("data-other"), id);
  // What stands in the other column is what that variant answers where it is open itself.
  await word(page, "Variant", "Make-up air unit").click();
  await word(page, "Compare with", "Detector in the plant room").click();
  const turned = await water.getByRole("cell").allInnerTexts();
  assert.deepEqual(turned, [cells[1], cells[0]]);
  const { project } = await saved(page);
  assert.deepEqual(
    project.runs.map((run) => [run.name, run.variant_of]),
    [["Make-up air unit", undefined], ["Detector in the plant room", project.runs[0].id]],
  );
  for (let step = 0; step < 3; step++) await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await group(page, "Variant").count(), 0, "all of it is undone");
  await page.context().close();
});

test("runs are added, chosen and deleted, by keyboard too", async () => {
  const page = await open();
  await act(page, "Add a run").focus();
  await page.keyboard.press("Enter");
  assert.deepEqual(await pressed(page, "Run"), ["Run 2"]);
  await page.getByRole("heading", { name: /Run 2/ }).waitFor();
  await word(page, "Run", "Make-up air unit").focus();
  await page.keyboard.press("Enter");
  assert.deepEqual(await pressed(page, "Run"), ["Make-up air unit"]);
  const focused = await page.evaluate(() => document.activeElement.textContent);
  assert.equal(focused, "Make-up air unit", "the focus stays");
  await word(page, "Run", "Run 2").click();
  await act(page, "Delete the open run").click();
  assert.equal(await group(page, "Run").count(), 0);
  assert.ok(await act(page, "Delete the open run").isDisabled(), "the last run stays");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual(await pressed(page, "Run"), ["Run 2"]);
  await page.context().close();
});

test("which run is open, and its variants, survive a reload", async () => {
  const page = await open();
  await act(page, "Copy as a variant").click();
  await word(page, "Variant", "Make-up air unit").click();
  await page.reload();
  await word(page, "Variant", "Variant 2").waitFor();
  assert.deepEqual(await pressed(page, "Variant"), ["Make-up air unit"]);
  await page.context().close();
});

test("names and words leave no fault that axe finds", async () => {
  for (const scheme of ["light", "dark"]) {
    for (const width of [360, 1440]) {
      const page = await open(width);
      await page.emulateMedia({ colorScheme: scheme });
      await act(page, "Copy as a variant").click();
      await word(page, "Compare with", "Make-up air unit").click();
      await page.locator(".dw-o-line").first().waitFor({ state: "attached" });
      await accessible(page, `${width} ${scheme}`, ".dw-runs, .dw-route, .dw-answer");
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(wide <= width, `nothing is cut at ${width} px`);
      await page.context().close();
    }
  }
});
