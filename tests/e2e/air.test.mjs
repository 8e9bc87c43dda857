// The section of the air: the dew square, what would stay dry, and that both follow what is typed.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits } from "./looks.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply"];

const site = dewrun();

const section = (page) => page.getByRole("region", { name: "Air", exact: true });
const square = (page) => section(page).getByRole("img", { name: /^Dew square/ });
const limits = (page) => section(page).getByRole("table", { name: /^What would stay dry/ });

async function open(width, height, scheme, example) {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await square(page).waitFor();
  await limits(page).getByRole("row").nth(2).waitFor();
  return page;
}

/** The answer of the command line to an example. */
function assessed(example) {
  const args = ["run", "--quiet", "--package", "dewrun-cli", "--", "assess", `demo/${example}.json`, "--json"];
  const { stdout, stderr } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8" });
  assert.ok(stdout, stderr);
  return JSON.parse(stdout).runs[0].steady;
}

/** A number as the page writes it: one decimal, a true minus. */
const shown = (number) => number.toFixed(1).replace("-", "\u2212");

/** A limit as the table shows it. */
const limit = (found, number) => ({ at: () => shown(number), any: () => "any", never: () => "none" })[found.limit]();

const cells = (row) => row.getByRole("cell").allInnerTexts();

test("the dew square is an image with a name and a description from its data", async () => {
  const page = await open(1440, 900, "light", "make-up-air");
  const id = await square(page).getAttribute("aria-describedby");
  const description = await page.locator(`#${id}`).textContent();
  assert.match(description, /^From the duct at 32\.0\s°C, dew point 26\.0\s°C, the air goes to /);
  assert.match(description, /The dry boundary runs from a dew point of /);
});

for (const example of EXAMPLES) {
  test(`what would stay dry is what the command line says: ${example}`, async () => {
    const page = await open(1440, 900, "light", example);
    const expected = assessed(example).would_stay_dry;
    const row = (name) => limits(page).getByRole("row", { name: new RegExp(`^${name}`) });
    const [humid, cold, long] = await Promise.all(["Most humid duct air", "Coldest space", "Longest tube"].map((name) => cells(row(name))));
    assert.equal(humid[0].trim(), limit(expected.duct_air, expected.duct_air.dew_point_c));
    assert.equal(cold[0].trim(), limit(expected.space, expected.space.temperature_c));
    assert.equal(long[0].trim(), limit(expected.tube, expected.tube.length_m));
  });
}

test("the dry boundary as a table goes through the limit of the duct air", async () => {
  const page = await open(1440, 900, "light", "make-up-air");
  await section(page).getByText("The dew square as tables").click();
  const rows = section(page).getByRole("table", { name: "Dry boundary" }).getByRole("row");
  const numbers = (await rows.allInnerTexts()).slice(1).map((text) => text.trim().split(/\s+/));
  assert.ok(numbers.length >= 4, `${numbers.length} points`);
  const limited = numbers.filter(([, dew]) => Number.isFinite(Number(dew)));
  const { dew_point_c: at } = assessed("make-up-air").would_stay_dry.duct_air;
  const between = limited.map(([, dew]) => Number(dew));
  assert.ok(Math.min(...between) - 0.1 <= at && at <= Math.max(...between) + 0.1, `${at} among ${between}`);
});

test("square and limits follow what is typed", async () => {
  const page = await open(1440, 900, "light", "make-up-air");
  const before = await square(page).evaluate((svg) => svg.outerHTML);
  const cold = () => limits(page).getByRole("row", { name: /^Coldest space/ }).innerText();
  const coldBefore = await cold();
  await page.getByLabel("Dew point of the duct air").fill("24");
  await page.waitForFunction(
    ([was]) => document.querySelector(".dw-square svg")?.outerHTML !== was,
    [before],
  );
  assert.notEqual(await cold(), coldBefore, "drier air stands colder spaces");
  const humid = await cells(limits(page).getByRole("row", { name: /^Most humid/ }));
  assert.match(humid.at(-1), /now 24\.0/);
});

test("in inch-pound the same limits", async () => {
  const page = await open(1440, 900, "light", "make-up-air");
  await page.getByRole("button", { name: /^in-lb/ }).click();
  const { dew_point_c: at } = assessed("make-up-air").would_stay_dry.duct_air;
  const humid = await cells(limits(page).getByRole("row", { name: /^Most humid/ }));
  assert.equal(humid[0].trim(), shown(at * 1.8 + 32));
  assert.match(await square(page).textContent(), /temperature, °F/);
});

for (const [width, height] of [[360, 740], [800, 900], [1440, 900]]) {
  for (const scheme of ["light", "dark"]) {
    test(`the section is accessible and fits at ${width} px, ${scheme}`, async () => {
      const page = await open(width, height, scheme, "pool-hall-exhaust");
      const what = `${width} px, ${scheme}`;
      await section(page).getByText("The dew square as tables").click();
      await accessible(page, what, ".dw-air");
      await fits(page, what);
    });
  }
}
