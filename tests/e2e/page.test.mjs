// The page as a visitor meets it: what is typed shows at once, what can't be used says so, and nobody is shut out.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { answered, dewrun, shows, sure } from "./harness.mjs";
import { accessible, fits, touchable } from "./looks.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply", "sagging-tube"];
const SIZES = [
  [360, 740],
  [1440, 900],
];

const site = dewrun();

async function open(width, height, scheme, example = EXAMPLES[0]) {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await answered(page);
  await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  return page;
}

/** The sentence, once it says how sure it is. */
const sentence = async (page) => {
  await sure(page);
  return page.getByRole("region", { name: "Answer" }).getByRole("status").first().innerText();
};
const drawing = (page, name) => page.getByRole("img", { name }).evaluate((svg) => svg.outerHTML);

/** Text as a reader compares it: every kind of space the same, a true minus as a hyphen. */
const plain = (text) => text.replace(/\s+/g, " ").replaceAll("\u2212", "-").trim();

test("a change of the duct's humidity changes sentence, drawings and numbers", async () => {
  const page = await open(1440, 900);
  const row = page.getByRole("row", { name: /^2 / }).first();
  const look = async () => ({
    sentence: await sentence(page),
    elevation: await drawing(page, /^Elevation/),
    profile: await drawing(page, /^Air, inner wall/),
    leg: await row.innerText(),
  });
  const before = await look();
  assert.match(before.sentence, /g\/h of water forms in the intake tube/);
  await page.getByLabel("Dew point of the duct air").fill("22.5");
  const wet = await look();
  for (const part of Object.keys(before)) assert.notEqual(wet[part], before[part], part);
  await page.getByLabel("Dew point of the duct air").fill("12");
  const dry = await look();
  assert.match(dry.sentence, /stay.? dry in the conditions entered; 0 of 100 plausible cases are wet\.$/);
  assert.match(dry.profile, /dry inside/);
});

test("each keystroke shows", async () => {
  const page = await open(1440, 900);
  const field = page.getByLabel("Dew point of the duct air");
  await field.fill("");
  const seen = new Set();
  for (const key of "24.5") {
    await field.press(key);
    seen.add(await sentence(page));
  }
  assert.equal(await field.inputValue(), "24.5");
  assert.ok(seen.size >= 3, `2, 24 and 24.5 answer differently: ${[...seen].join(" | ")}`);
});

test("wrong input says so at the field and keeps the last good answer", async () => {
  const page = await open(1440, 900);
  const before = await sentence(page);
  const fall = page.getByLabel("Fall of leg 2");
  await fall.fill("1;50");
  assert.equal(await fall.inputValue(), "1;50", "what was typed stays");
  assert.equal(await sentence(page), before, "the last good answer stays");
  await page.getByText("\u201c1;50\u201d is not a fall").waitFor();
  await page.getByText("Still the answer for the last fall of leg 2 that could be used, 1:50.").waitFor();
  assert.equal(await fall.getAttribute("aria-invalid"), "true");
  await page.getByRole("button", { name: "Go to fall of leg 2" }).click();
  assert.ok(await fall.evaluate((input) => input === document.activeElement), "the way leads to the field");
  await page.getByRole("button", { name: "Use 1:50" }).click();
  assert.equal(await fall.inputValue(), "1:50");
  assert.equal(await page.getByText("Still the answer").count(), 0);
});

test("an air that can't be says why, and for what the answer still holds", async () => {
  const page = await open(1440, 900);
  const before = await sentence(page);
  await page.getByLabel("Dew point of the duct air").fill("40");
  assert.equal(await sentence(page), before, "the last good answer stays");
  const note = page.getByText("Still the answer for dew point of the duct air 26");
  await note.waitFor();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "40");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await page.getByLabel("Dew point of the duct air").inputValue(), "26");
  assert.equal(await page.getByText("Still the answer").count(), 0);
});

test("units change what is shown and nothing that is stored", async () => {
  const page = await open(1440, 900);
  const field = page.getByLabel("Temperature of the duct air");
  const [si, before] = [await field.inputValue(), await sentence(page)];
  await page.getByRole("button", { name: "in-lb units" }).click();
  // 32 °C is 89.6 °F.
  assert.equal(await field.inputValue(), "89.6");
  assert.match(await sentence(page), /oz\/h of water/);
  await page.getByRole("button", { name: "SI units" }).click();
  assert.equal(await field.inputValue(), si);
  assert.equal(await sentence(page), before);
});

test("legs are split, deleted and brought back", async () => {
  const page = await open(1440, 900);
  const before = await sentence(page);
  const legs = () => page.getByLabel(/^Length of leg/).count();
  const count = await legs();
  await page.getByLabel("Length of leg 2").focus();
  await page.getByRole("button", { name: "Split leg 2" }).click();
  assert.equal(await legs(), count + 1);
  assert.equal(await page.getByLabel("Length of leg 2").inputValue(), "2.1");
  assert.equal(await page.getByLabel("Fall of leg 3").inputValue(), "1:50");
  const water = (text) => Number(/([\d.]+) g\/h of water forms/.exec(plain(text))[1]);
  const apart = Math.abs(water(await sentence(page)) - water(before));
  assert.ok(apart <= 0.101, "the same tube in more legs forms the same water");
  await page.getByRole("button", { name: "Delete leg 2" }).click();
  assert.equal(await legs(), count);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await sentence(page), before);
});

test("the humidity may be said in another quantity without changing the air", async () => {
  const page = await open(1440, 900);
  const water = async () => plain(await sentence(page));
  const before = await water();
  await page.getByLabel("Humidity as, duct air").selectOption("Wet bulb");
  await page.getByLabel("Wet bulb of the duct air").waitFor();
  await page.getByLabel("Humidity as, duct air").selectOption("Dew point");
  const value = Number(await page.getByLabel("Dew point of the duct air").inputValue());
  assert.ok(Math.abs(value - 26) <= 0.15, `${value} °C after going round by the wet bulb`);
  assert.match(await water(), /of water forms/);
  assert.match(before, /of water forms/);
});

test("both tubes can be looked at", async () => {
  const page = await open(1440, 900);
  await page.getByRole("button", { name: "exhaust tube" }).click();
  await page.getByRole("img", { name: /^Elevation of the exhaust tube/ }).waitFor();
  await page.getByRole("button", { name: "intake tube" }).click();
  await page.getByRole("img", { name: /^Elevation of the intake tube/ }).waitFor();
});

for (const [width, height] of SIZES) {
  for (const scheme of ["light", "dark"]) {
    test(`axe finds nothing at ${width} px, ${scheme}`, async () => {
      for (const example of EXAMPLES) {
        const page = await open(width, height, scheme, example);
        await page.getByText("The profile as a table").click();
        await lookInto(page, width);
        await accessible(page, example);
        await page.close();
      }
    });
  }
}

/** Opens a leg and types something wrong, so that these states are judged too. */
async function lookInto(page, width) {
  if (width < 1080) await page.getByRole("button", { name: /^2 / }).first().click();
  await page.getByLabel("Fall of leg 2").fill("1;50");
  await page.getByText("is not a fall").waitFor();
}

test("nothing scrolls sideways from 360 to 2560 px, and at twice the text size", async () => {
  for (const width of [320, 360, 500, 800, 1079, 1080, 1440, 2560]) {
    const page = await open(width, 800);
    await fits(page, `at ${width} px`);
    await page.close();
  }
  // 200 % zoom of a window of 1280 px is a window of 640 px.
  const page = await open(640, 400);
  await fits(page, "at 200 %");
});

test("every control is large enough to touch at 360 px", async () => {
  const page = await open(360, 740);
  await page.getByRole("button", { name: /^2 / }).first().click();
  await touchable(page, "with a leg open");
});

test("a project file is opened, and a bad one never costs the open project", async () => {
  const page = await open(1440, 900);
  const before = await sentence(page);
  const chooser = page.getByLabel("Open file");
  const text = '{"format": "dewrun-project", "version": 1, "revision": 1, "name": ';
  await chooser.setInputFiles({ name: "torn.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await page.getByText("torn.json was not taken in. The open project is unchanged.").waitFor();
  assert.match(await page.getByRole("alert").innerText(), /Line 1, column \d+: /);
  assert.equal(await sentence(page), before);
  await chooser.setInputFiles(`${ROOT}demo/chilled-supply.json`);
  await page.getByText("was not taken in").waitFor({ state: "detached" });
  assert.notEqual(await sentence(page), before);
});

test("the page shows the figures that the command line prints", { timeout: 600_000 }, async () => {
  const page = await open(1440, 900);
  for (const example of EXAMPLES) {
    await compare(page, await readFile(`${ROOT}demo/${example}.json`, "utf8"), example);
  }
  const cases = JSON.parse(await readFile(`${ROOT}tests/cases/steady.json`, "utf8"));
  // Every ninth of the 92, so that random, wet, misty and whole runs are among them.
  for (const solved of cases.filter((_, place) => place % 9 === 4)) {
    await compare(page, JSON.stringify(project(solved)), solved.id);
  }
});

/** Opens a project on the page and holds every figure of its table against `dewrun assess --json`. */
async function compare(page, text, name) {
  const assess = ["run", "--quiet", "--package", "dewrun-cli", "--", "assess", "--json", "-"];
  const printed = spawnSync("cargo", assess, { cwd: ROOT, input: text, encoding: "utf8" });
  // Dry, wet or blind.
  assert.ok([0, 10, 20].includes(printed.status), `${name}: ${printed.stderr}`);
  const answer = JSON.parse(printed.stdout).runs[0].steady;
  const file = { name: `${name}.json`, mimeType: "application/json", buffer: Buffer.from(text) };
  await page.getByLabel("Open file").setInputFiles(file);
  const { name: title } = JSON.parse(text);
  await page.getByRole("heading", { name: title }).waitFor();
  await answered(page);
  const told = await sentence(page);
  assert.ok(answer.sentence.startsWith(told), `${name}: ${answer.sentence} and ${told}`);
  const rows = await legRows(page);
  const legs = [...answer.intake.legs, ...(answer.exhaust?.legs ?? [])];
  assert.equal(rows.length, legs.length, `${name}: a row for each leg`);
  for (const [place, leg] of legs.entries()) {
    const figures = {
      "Air at end": leg.air_at_end.temperature_c,
      "Lowest wall": leg.lowest_wall_c,
      "Dew point at end": leg.air_at_end.dew_point_c,
      "Water formed": leg.condensate_g_h,
      "Of it frost": leg.frost_g_h,
      "Sweat outside": leg.sweat_g_h,
      "Wet from": leg.first_wet_m,
    };
    for (const [head, figure] of Object.entries(figures)) {
      const shown = rows[place][head];
      // Frost and sweat have no column where there is none.
      if (shown === undefined) assert.equal(figure, 0, `${name} leg ${leg.id}: ${head}`);
      else agree(shown, figure, `${name} leg ${leg.id}: ${head}`);
    }
  }
}

/** The rows of the table of legs, each as an object by the words of its heads. */
function legRows(page) {
  const table = page.getByRole("table", { name: /^The legs of both tubes/ });
  return table.evaluate((table) => {
    const seen = (cell) => !cell.hidden;
    const heads = [...table.tHead.rows[0].cells].filter(seen).map((cell) => cell.innerText.split("\n")[0]);
    const rows = [...table.tBodies].flatMap((body) => [...body.rows]);
    const legs = rows.filter((row) => row.querySelector("th[scope=row]"));
    const text = (cell) => cell.querySelector("input")?.value ?? cell.innerText;
    return legs.map((row) => Object.fromEntries([...row.cells].filter(seen).map((cell, at) => [heads[at], text(cell)])));
  });
}

/** A shown number is the printed one to the digits it is shown with. */
function agree(shown, figure, what) {
  const text = plain(shown).replace(/(\d) (\d)/g, "$1$2");
  if (figure === null) return assert.equal(text, "\u2013", what);
  if (text.startsWith("under ")) return assert.ok(0 < figure && figure < Number(text.slice(6)), `${what}: ${text} for ${figure}`);
  if (figure === 0) return assert.equal(Number(text), 0, what);
  const decimals = text.split(".")[1]?.length ?? 0;
  // Large amounts are shown with three digits.
  const digits = text.replace(/[-.]/g, "").replace(/^0+/, "").length;
  const step = decimals === 0 && digits > 3 ? 10 ** (digits - 3) : 10 ** -decimals;
  assert.ok(Math.abs(Number(text) - figure) <= 0.5001 * step, `${what}: ${text} for ${figure}`);
}

/** A solved case of tests/cases/steady.json as a project file; its README says what each input means. */
function project(solved) {
  const typed = (value) => ({ value, origin: "typed" });
  const space = (segment, place) => ({
    id: `s${place}`,
    name: `Space ${place + 1}`,
    temperature_c: typed(segment.t_amb),
    humidity: { ratio_kg_kg: typed(segment.w_amb) },
    wind_m_s: typed(segment.wind),
  });
  const leg = (segment, place) => ({
    id: `l${place}`,
    space: `s${place}`,
    length_m: typed(segment.length),
    rise_m: typed(segment.vertical ? -segment.length : 0),
    tube: {
      bore_mm: typed(segment.d_in * 1000),
      outside_diameter_mm: typed(segment.d_out * 1000),
      conductivity_w_mk: typed(segment.k_wall),
    },
    emissivity: typed(segment.emis),
    ...(segment.ins > 0 && {
      insulation: { thickness_mm: typed(segment.ins * 1000), conductivity_w_mk: typed(segment.k_ins) },
    }),
    ...(segment.trace > 0 && { heat_tracing_w_m: typed(segment.trace) }),
    fittings: [],
    access: "floor",
  });
  const legs = solved.segments.map(leg);
  const split = solved.exhaust_from ?? legs.length;
  const entry = { place: "", side: "side" };
  const run = {
    id: "run",
    name: solved.id,
    duct: {
      name: "Duct",
      air: { temperature: { temperature_c: typed(solved.t_in_c), humidity: { ratio_kg_kg: typed(solved.w_in) } } },
      static_pa: typed(0),
      velocity_pa: typed(0),
    },
    flow: { volume_l_min: typed(solved.q_lpm), at: "intake" },
    intake: { entry, legs: legs.slice(0, split) },
    detector: { heat_w: typed(solved.detector_w ?? 0), access: "floor" },
    ...(split < legs.length && { exhaust: { entry, legs: legs.slice(split) } }),
  };
  return {
    format: "dewrun-project",
    version: 1,
    revision: 1,
    name: `Solved case ${solved.id}`,
    note: "",
    pressure: { absolute_pa: typed(solved.p_pa) },
    spaces: solved.segments.map(space),
    runs: [run],
  };
}
