// Every computed number on the page can be opened to where it comes from, in its place, by mouse and by keyboard.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { answered, dewrun, shows } from "./harness.mjs";
import { accessible } from "./looks.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply"];

const site = dewrun();

async function open(width, height, scheme = "light", example = "make-up-air") {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await answered(page);
  await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  return page;
}

/** The ids of the table, as the command line prints them. */
function ids() {
  const words = ["run", "--quiet", "-p", "dewrun-cli", "--", "figures", "--json"];
  const said = spawnSync("cargo", words, { cwd: ROOT, encoding: "utf8", maxBuffer: 1 << 24 });
  assert.equal(said.status, 0, said.stderr);
  return JSON.parse(said.stdout).map((entry) => entry.id);
}

const panel = (page) => page.getByRole("region", { name: "Where the figure comes from" });
/** Waits until a figure says whether it is opened. */
async function says(figure, opened) {
  const element = await figure.elementHandle();
  await figure.page().waitForFunction(([one, state]) => one.ariaExpanded === state, [element, opened]);
}

const plain = (text) => text.replace(/\s+/g, " ").replaceAll("\u2212", "-").trim();

/** Pieces of text that hold a digit outside fields, and neither are figures that open nor stand in a column whose head opens. */
function unopened(page) {
  return page.evaluate(() => {
    // What holds digits and is no figure of the answer: names and notes that people gave, numbers of legs and places,
    // falls as they were typed, low and high of library rows, sentences about the project and their count, the drawings (each has its table), and the panel, whose
    // relations and sources hold digits and whose values open; spans of a library row stand with their source;
    // shares of causes, beside which stands what speaks for and against each;
    // what a remedy would leave is of another run, and opens once it is made; forms of weather files, and by how much an hour is gone on; heads of the airflow's charts repeat what
    // its tables hold.
    const words =
      "input, select, option, svg, script, label, header, footer, .dw-cautions, .dw-opened, .dw-spoken, .dw-unit, " +
      ".dw-legs-table__leg, .dw-leg-card__head, .dw-flag__head, .dw-drawings__note, .dw-cases, .dw-leg-actions, " +
      ".dw-air__which, .dw-pick__told, .dw-pointer-steps, .dw-fault, .dw-rests ul, .dw-rests summary, .dw-answer__remedies, .dw-answer__cures, .dw-cures, .dw-troubles, .dw-airflow p, .dw-airflow b, .dw-airflow__head, .dw-chart__name, .dw-entries__origin, .dw-pick__told, .dw-legs__tube, .dw-year__file, .dw-year__steps, .dw-year__doubt .dw-sheets__acts, th[scope=row]";
    const named = new Map();
    for (const space of document.querySelectorAll(".dw-space__name, td > select option")) named.set(space.textContent.trim(), true);
    const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
    const found = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      // How many values it rests on, how many more there are, and the numbers of legs, are counts and names; water freezes at 0 °C.
      const text = node.textContent.replace(/Rests on \d+|None of \d+|\bleg \d+|and \d+ more|in \d+ of \d+ states|above 0.°C/, "");
      if (!/\d/.test(text) || element.closest(words) || element.closest("[data-figure]")) continue;
      if (element.closest(".dw-answer-slim")) continue;
      const cell = element.closest("td");
      const head = cell?.closest("table").querySelectorAll("thead th")[cell.cellIndex];
      if (head?.querySelector("[data-figure]")) continue;
      if (named.has(node.textContent.trim())) continue;
      found.push(`${element.className || element.tagName}: ${node.textContent.trim()}`);
    }
    return found;
  });
}

test("every computed number that is shown opens, and its id is in the table", { timeout: 300_000 }, async () => {
  const known = new Set(ids());
  for (const example of EXAMPLES) {
    for (const [width, height] of [[1440, 900], [360, 740]]) {
      const page = await open(width, height, "light", example);
      for (const summary of await page.locator("main summary").all()) {
        // A part without content is not shown, nor is its summary.
        if (await summary.isVisible()) await summary.click();
      }
      if (width < 1080) await page.getByRole("button", { name: /^2 / }).first().click();
      await page.locator("[data-figure=sensor-temperature]").waitFor();
      assert.deepEqual(await unopened(page), [], `${example} at ${width} px`);
      const shown = await page.locator("[data-figure]").evaluateAll((all) => all.map((one) => one.dataset.figure));
      assert.ok(shown.length > 20, `${example}: ${shown.length} figures`);
      for (const id of shown) assert.ok(known.has(id), `${id} is in the table`);
      await page.close();
    }
  }
});

test("a figure opens in its place by mouse, each of its values opens in turn, and Close goes back", async () => {
  const page = await open(1440, 900);
  const water = page.getByRole("region", { name: "Answer" }).locator("[data-figure=tube-water]").first();
  const below = page.getByRole("img", { name: /^Elevation/ });
  const before = (await below.boundingBox()).y;
  await water.click();
  await panel(page).waitFor();
  await says(water, "true");
  const box = await panel(page).boundingBox();
  const after = (await below.boundingBox()).y;
  assert.ok(after - before >= box.height - 1, "it pushes down what stands below and covers nothing");
  const words = plain(await panel(page).innerText());
  for (const needed of ["Relation", "Holds for", "Source", "Decides the answer.", "16 to 24", "measured", "2026-05-12"]) {
    assert.ok(words.includes(needed), `${needed} in ${words}`);
  }
  const value = plain(await water.innerText());
  assert.ok(words.startsWith(value), `${value} stands large in the panel`);

  await panel(page).locator("[data-figure=deposit]").click();
  await panel(page).getByText("ln((1").waitFor();
  await panel(page).locator("[data-figure=sherwood]").click();
  await panel(page).locator("[data-figure=reynolds]").click();
  assert.match(await panel(page).innerText(), /Reynolds number/);
  await panel(page).getByRole("button", { name: "Back to Sherwood number" }).click();
  await panel(page).getByRole("button", { name: "Close" }).click();
  await panel(page).waitFor({ state: "detached" });
  await says(water, "false");
  assert.ok(await water.evaluate((button) => button === document.activeElement), "the focus is back");
});

test("a figure opens by keyboard, and Escape gives the focus back", async () => {
  const page = await open(1440, 900);
  const wall = page.locator('[data-opens=legs] [data-figure=lowest-wall][data-at="intake.1"]');
  for (const key of ["Enter", " "]) {
    await wall.focus();
    await page.keyboard.press(key);
    await panel(page).waitFor();
    await says(wall, "true");
    assert.equal(plain(await panel(page).innerText()).split(" ")[0], plain(await wall.innerText()), "the same number");
    await panel(page).locator("[data-figure=space-temperature]").focus();
    await page.keyboard.press(key);
    await panel(page).getByText("Assumed, 16 to 24 is plausible").waitFor();
    await page.keyboard.press("Escape");
    await panel(page).waitFor({ state: "detached" });
    assert.ok(await wall.evaluate((button) => button === document.activeElement), "the focus is back");
  }
});

test("an opened figure follows what is typed", async () => {
  const page = await open(1440, 900);
  await page.getByRole("region", { name: "Answer" }).locator("[data-figure=tube-water]").first().click();
  const before = plain(await panel(page).innerText());
  await page.getByLabel("Dew point of the duct air").fill("24.5");
  const after = plain(await panel(page).innerText());
  assert.notEqual(after.split(" ")[0], before.split(" ")[0], "another amount of water");
  assert.ok(after.includes("24.5"), "and the value that was typed");
  await page.waitForFunction(() => document.querySelector("[data-opens=answer] > * [data-figure=tube-water]")?.ariaExpanded === "true");
});

test("the answer says what it rests on and how that is measured", async () => {
  const page = await open(1440, 900);
  const answer = page.getByRole("region", { name: "Answer" });
  assert.match(plain(await answer.innerText()), /Rests on 1 assumed value: Service corridor 20 °C \[16 to 24\]/);
  await answer.getByText("How to measure").click();
  await answer.getByText("A logger beside the tube for one week").waitFor();
  await answer.locator("[data-figure=space-temperature]").click();
  await panel(page).getByText("library row \u201cCorridor\u201d").waitFor();
  await page.keyboard.press("Escape");
  // What is typed is no longer assumed.
  await page.getByLabel("Temperature, Service corridor").fill("20.5");
  await answer.getByText(/None of \d+ assumed values decides it alone/).waitFor();
});

for (const [width, height] of [[360, 740], [1440, 900]]) {
  for (const scheme of ["light", "dark"]) {
    test(`axe finds nothing with a panel open at ${width} px, ${scheme}`, async () => {
      const page = await open(width, height, scheme);
      await page.getByRole("region", { name: "Answer" }).locator("[data-figure=tube-water]").first().click();
      await panel(page).waitFor();
      for (const step of ["with its inputs", "an input"]) {
        if (step === "an input") await panel(page).locator("[data-figure=space-temperature]").first().click();
        await accessible(page, step, ".dw-opened:not(:empty)");
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
      assert.equal(wide, false, "nothing scrolls sideways");
    });
  }
}
