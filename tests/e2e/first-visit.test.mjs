// The empty page: a sentence with blanks answered at each key, drawn, and worked cases a click away.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";

const site = dewrun();

async function open(width = 1440, height = 900, scheme = "light", hash = "") {
  const page = await site.openAt(width, height, scheme, hash);
  await shows(page);
  await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  return page;
}

const first = (page) => page.getByRole("region", { name: "First answer" });
const answer = (page) => first(page).getByRole("status").first().innerText();
const address = (page) => new URL(page.url()).hash;
const plain = (text) => text.replace(/\s+/g, " ").trim();

test("the empty page says what it is for and answers before anything is typed", async () => {
  const page = await open();
  await page.getByRole("heading", { name: /how much water forms in the tube of a remote duct smoke detector/ }).waitFor();
  assert.match(plain(await answer(page)), /^With these values it is wet: [\d.]+ g\/h, from the first [\d.]+ m on\.$/);
  const words = await first(page).innerText();
  assert.match(words, /Dotted values are assumed; overwrite what you know\./);
  assert.match(words, /By model; doubt not computed yet\./);
});

test("the figures of the answer open in their place", async () => {
  const page = await open();
  await first(page).getByRole("button", { name: /g\/h/ }).click();
  const panel = page.getByRole("region", { name: "Where the figure comes from" });
  await panel.waitFor();
  assert.match(await panel.innerText(), /Make-up air, untreated/, "the row that an input is assumed from");
});

test("each key answers, and dry never stands alone", async () => {
  const page = await open();
  const field = page.getByLabel("Dew point of the duct air");
  await field.fill("");
  const seen = new Set();
  for (const key of "24.5") {
    await field.press(key);
    seen.add(await answer(page));
  }
  assert.ok(seen.size >= 3, `2, 24 and 24.5 answer differently: ${[...seen].join(" | ")}`);
  await field.fill("10");
  // Air with a dew point of 10 °C leaves no water on a wall that nothing cools below 20 °C.
  assert.match(await answer(page), /it is dry in the conditions entered; doubt not computed yet/);
});

test("a value is assumed until it is typed, and a decimal comma is understood", async () => {
  const page = await open();
  await page.getByLabel("Temperature of the duct air, °C, assumed").fill("31,5");
  await page.getByLabel("Temperature of the duct air, °C", { exact: true }).waitFor();
  assert.equal(await page.getByLabel("Height of the detector, m, assumed").inputValue(), "1,2");
  await page.getByRole("button", { name: "Draw this route" }).click();
  const { project } = await saved(page);
  const { temperature_c, humidity } = project.runs[0].duct.air.temperature;
  assert.deepEqual(temperature_c, { value: 31.5, origin: "typed" });
  assert.equal(humidity.dew_point_c.origin.assumed.row, "make-up-untreated");
});

test("a wrong blank says so and keeps the last answer", async () => {
  const page = await open();
  const before = await answer(page);
  const field = page.getByLabel("Bore of the tube");
  await field.fill("wide");
  assert.equal(await answer(page), before);
  assert.equal(await field.inputValue(), "wide", "what was typed stays");
  await page.getByText("\u201cwide\u201d is not a number").waitFor();
  await page.getByText("Still the answer for the last bore of the tube that could be used, 19").waitFor();
  await page.getByRole("button", { name: /^Use 19/ }).click();
  assert.equal(await field.inputValue(), "19");
  assert.equal(await page.getByText("Still the answer").count(), 0);
});

test("a tube too short to reach the detector is refused in words", async () => {
  const page = await open();
  const before = await answer(page);
  await page.getByLabel("Length of the tube").fill("1");
  await page.getByLabel("Length of the tube").blur();
  await page.getByText("1\u00a0m of tube can\u2019t reach a detector 1.2\u00a0m away in height.").waitFor();
  assert.equal(await answer(page), before);
});

test("the route that is drawn has the lengths of the sentence, and undo brings the sentence back", async () => {
  const page = await open();
  await page.getByLabel("Length of the tube").fill("9");
  await page.getByLabel("Height of the detector").fill("2");
  await page.getByLabel("Bore of the tube").fill("22");
  await page.getByLabel("Side of the duct").selectOption("above");
  const told = plain(await answer(page));
  await page.getByRole("button", { name: "Draw this route" }).click();
  await page.getByRole("region", { name: "Answer" }).waitFor();
  assert.equal(address(page), "#project");
  const { project } = await saved(page);
  const legs = project.runs[0].intake.legs;
  // 9 m of tube to a detector 2 m above: 7 m level and a riser of 2 m.
  assert.deepEqual(legs.map((leg) => leg.length_m.value), [7, 2]);
  assert.deepEqual(legs.map((leg) => leg.rise_m.value), [0, 2]);
  // The wall of 1.5 mm stays.
  assert.deepEqual(legs.map((leg) => [leg.tube.bore_mm.value, leg.tube.outside_diameter_mm.value]), [[22, 25], [22, 25]]);
  assert.equal(legs[0].rise_m.origin.assumed.row, "route-level");
  const sentence = plain(await page.getByRole("region", { name: "Answer" }).getByRole("status").first().innerText());
  const grams = (text) => /([\d.]+) g\/h/.exec(text)[1];
  assert.equal(grams(sentence), grams(told), "the same run has the same answer");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(plain(await answer(page)), told);
  assert.equal(address(page), "");
});

test("a detector level with the duct has one leg", async () => {
  const page = await open();
  await page.getByLabel("Height of the detector").fill("0");
  await page.getByRole("button", { name: "Draw this route" }).click();
  const { project } = await saved(page);
  assert.deepEqual(project.runs[0].intake.legs.map((leg) => leg.length_m.value), [12]);
});

test("a worked case opens from its drawing, stays at reload, and the way back leads to the empty page", async () => {
  const page = await open();
  const drawings = page.getByRole("img", { name: /to the detector: / });
  assert.equal(await drawings.count(), 5);
  await page.getByRole("img", { name: /frost grows in the tube/ }).click();
  await page.getByRole("heading", { name: /Pool-hall exhaust/ }).waitFor();
  assert.equal(address(page), "#example=pool-hall-exhaust");
  await page.reload();
  await page.getByRole("heading", { name: /Pool-hall exhaust/ }).waitFor();
  await page.goto(`${site.address}`);
  await first(page).waitFor();
});

test("back, forward and new lose nothing", async () => {
  const page = await open();
  await page.getByLabel("Dew point of the duct air").fill("23");
  await page.getByRole("button", { name: "Draw this route" }).click();
  await page.getByRole("region", { name: "Answer" }).waitFor();
  await page.goBack();
  await first(page).waitFor();
  await page.goForward();
  await page.getByRole("region", { name: "Answer" }).waitFor();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "23", "the project is back");
  await page.getByRole("button", { name: "New" }).click();
  await first(page).waitFor();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "26", "the sentence begins anew");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "23", "undo brings the project back");
});

test("each way in says what it leads to", async () => {
  const page = await open();
  const leads = new Set();
  for (const way of ["a duct on a drawing", "a tube I am fitting", "a trouble that comes back"]) {
    await page.getByRole("button", { name: way }).click();
    assert.equal(await page.getByRole("button", { name: way }).getAttribute("aria-pressed"), "true");
    leads.add(await first(page).locator("p").first().innerText());
  }
  assert.equal(leads.size, 3);
});

test("what it does not answer is a click away", async () => {
  const page = await open();
  await page.getByRole("link", { name: "What it does not answer" }).click();
  await page.getByRole("heading", { name: "What it does not answer" }).waitFor();
  await first(page).waitFor();
});

for (const [width, height] of [[360, 740], [800, 900], [1440, 900]]) {
  for (const scheme of ["light", "dark"]) {
    test(`the empty page is for everybody at ${width} px, ${scheme}`, async () => {
      const page = await open(width, height, scheme);
      await accessible(page, "as it opens");
      await fits(page, "as it opens");
      if (width === 360) await touchable(page, "on a phone");
      await page.getByLabel("Bore of the tube").fill("wide");
      await page.getByText("is not a number").waitFor();
      await accessible(page, "with a wrong blank");
      await fits(page, "with a wrong blank");
    });
  }
}
