// Rows of the library are picked by name and named in the project: assumed, with their lowest and highest.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";

const site = dewrun();

async function open(width = 1440, height = 900, scheme = "light") {
  const page = await site.openAt(width, height, scheme, "#example=make-up-air");
  await shows(page);
  return page;
}

const assumed = (value, row, low, high) => ({ value, origin: { assumed: { row, low, high } } });

/** Figures: crates/run/src/library/tubes.csv and materials.csv (EN 1057, EN ISO 10456). */
test("a tube of the library is written into its leg, and typing over makes it typed", async () => {
  const page = await open();
  await page.getByLabel("Length of leg 2").focus();
  await page.getByLabel("Tube of leg 2").selectOption("Copper tube, 22 × 1 mm");
  assert.equal(await page.getByLabel("Bore of leg 2").inputValue(), "20");
  await page.getByText("Bore 19.65 to 20.35\u00a0mm, outside diameter 21.95 to 22.05\u00a0mm (CEN, EN 1057:2006").waitFor();
  const { project } = await saved(page);
  const leg = project.runs[0].intake.legs[1];
  assert.deepEqual(leg.tube, {
    bore_mm: assumed(20, "tube-copper-22", 19.65, 20.35),
    outside_diameter_mm: assumed(22, "tube-copper-22", 21.95, 22.05),
    conductivity_w_mk: assumed(330, "tube-copper-22", 290, 380),
  });
  assert.deepEqual(leg.emissivity, assumed(0.3, "tube-copper-22", 0.05, 0.7));
  assert.equal(project.runs[0].intake.legs[0].tube.bore_mm.value, 19, "other legs keep theirs");
  await page.getByLabel("Conductivity of leg 2").fill("340");
  const typed = (await saved(page)).project.runs[0].intake.legs[1];
  assert.deepEqual(typed.tube.conductivity_w_mk, { value: 340, origin: "typed" });
  assert.equal(await page.getByLabel("Tube of leg 2").evaluate((select) => select.selectedOptions[0].text), "own values");
});

test("one tube is taken for all legs", async () => {
  const page = await open();
  await page.getByLabel("Tube of leg 1").selectOption("PVC-U tube, 25 × 1.9 mm");
  await page.getByRole("button", { name: "This tube for all legs" }).click();
  const { project } = await saved(page);
  const { intake, exhaust } = project.runs[0];
  const rows = [...intake.legs, ...exhaust.legs].map((leg) => leg.tube.bore_mm.origin.assumed.row);
  assert.deepEqual(rows, Array(9).fill("tube-pvc-25"));
});

test("insulation brings its conductivity and its surface, and takes both away again", async () => {
  const page = await open();
  await page.getByLabel("Length of leg 2").focus();
  await page.getByLabel("Insulation of leg 2").and(page.getByRole("combobox")).selectOption("19 mm Closed-cell elastomer foam");
  const { project } = await saved(page);
  const leg = project.runs[0].intake.legs[1];
  assert.deepEqual(leg.insulation, {
    thickness_mm: { value: 19, origin: "typed" },
    conductivity_w_mk: assumed(0.036, "insulation-closed-cell", 0.033, 0.042),
  });
  assert.deepEqual(leg.emissivity, assumed(0.93, "insulation-closed-cell", 0.85, 0.95));
  await page.getByLabel("Insulation of leg 2").and(page.getByRole("combobox")).selectOption("none");
  const bare = (await saved(page)).project.runs[0].intake.legs[1];
  assert.equal(bare.insulation, undefined);
  assert.deepEqual(bare.emissivity, assumed(0.9, "tube-rigid-plastic-19", 0.85, 0.95));
});

test("a space of the library becomes one of the project", async () => {
  const page = await open();
  await page.getByLabel("Space of leg 2").focus();
  await page.getByLabel("Space of leg 2").selectOption({ value: "row:loft-ventilated" });
  const { project } = await saved(page);
  assert.equal(project.runs[0].intake.legs[1].space, "loft-ventilated");
  const space = project.spaces.at(-1);
  assert.equal(space.name, "Ventilated loft");
  assert.deepEqual(space.temperature_c, assumed(-8, "loft-ventilated", -14, 2));
  assert.deepEqual(space.humidity.relative, { percent: assumed(85, "loft-ventilated", 60, 100), over: "ice" });
  // The roof covering is 6 K colder to as warm as the air, usually 2 K colder.
  assert.deepEqual(space.radiant_c, assumed(-10, "loft-ventilated", -14, -8));
  await page.getByText("It follows the outdoors by 0.9 to 1 of the way (CEN, EN 12831-1:2017").waitFor();
  await page.getByLabel("Temperature, Ventilated loft").fill("-3");
  const moved = (await saved(page)).project.spaces.at(-1);
  assert.deepEqual(moved.radiant_c, assumed(-5, "loft-ventilated", -9, -3), "the covering keeps its distance");
});

test("the kind of duct air is picked, in the quantity that its row has", async () => {
  const page = await open();
  await page.getByLabel("Kind of air, duct air").selectOption({ value: "pool-hall" });
  await page.getByLabel("Relative humidity of the duct air").waitFor();
  await page.getByText("Temperature 28 to 32\u00a0°C, relative humidity 50 to 65\u00a0% (common practice, no source).").waitFor();
  const { project } = await saved(page);
  assert.deepEqual(project.runs[0].duct.air.temperature.temperature_c, assumed(30, "pool-hall", 28, 32));
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "26");
});

test("the generic detector leaves a measured flow alone", async () => {
  const page = await open();
  await page.getByLabel("Heat of the detector").fill("9");
  await page.getByLabel("Detector from the library").selectOption({ value: "detector-generic" });
  const { project } = await saved(page);
  assert.deepEqual(project.runs[0].detector.heat_w, assumed(3, "detector-generic", 1, 6));
  assert.ok(project.runs[0].flow.volume_l_min.origin.measured, "measured as before");
});

for (const width of [360, 1440]) {
  for (const scheme of ["light", "dark"]) {
    test(`picks are for everybody at ${width} px, ${scheme}`, async () => {
      const page = await open(width, 800, scheme);
      if (width === 360) {
        await page.getByRole("button", { name: /^2 / }).first().click();
        await touchable(page, "on a phone", ".dw-pick, .dw-made-of");
      }
      await page.getByLabel("Tube of leg " + (width === 360 ? 2 : 1)).waitFor();
      await accessible(page, "with what a leg is made of", ".dw-route, .dw-legs, .dw-air");
      await fits(page, "with what a leg is made of");
    });
  }
}
