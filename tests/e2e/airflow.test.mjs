// The section Airflow and the remedies: limits moved by pointer, key and step, fields with their sentences, a remedy made and taken back.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits } from "./looks.mjs";

const site = dewrun();

async function open(width = 1440, height = 1000, scheme = "light", example = "make-up-air") {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await page.getByRole("slider", { name: "Low limit" }).waitFor();
  // The remedies come last and move what stands under them.
  await page.getByRole("button", { name: "Apply remedy 1" }).waitFor();
  return page;
}

/** Where something is once nothing moves it any more. */
async function settled(locator) {
  await locator.scrollIntoViewIfNeeded();
  for (let last = ""; ; ) {
    const box = await locator.boundingBox();
    if (JSON.stringify(box) === last) return box;
    last = JSON.stringify(box);
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
}

const airflow = (page) => page.getByRole("region", { name: "Airflow" });
const slider = (page, name) => page.getByRole("slider", { name });
const undo = (page) => page.getByRole("button", { name: "Undo" });
const value = async (page, name) => Number(await slider(page, name).getAttribute("aria-valuenow"));
const told = async (page, name) => (await slider(page, name).getAttribute("aria-valuetext")).replaceAll("\u00a0", " ");
const caught = async (page) => Number(/(\d+) of \d+ faults caught/.exec(await told(page, "Low limit"))[1]);

/** Waits until a limit stands there. */
function stands(page, name, percent) {
  return page.waitForFunction(
    ([name, percent]) => document.querySelector(`[role=slider][aria-label="${name}"]`)?.getAttribute("aria-valuenow") === String(percent),
    [name, percent],
    { timeout: 5_000 },
  );
}

test("limits move by keys, a percent a press, and the verdicts follow", async () => {
  const page = await open();
  const high = await value(page, "High limit");
  const before = await caught(page);
  await slider(page, "High limit").focus();
  for (let press = 1; press <= 12; press += 1) {
    await page.keyboard.press("ArrowRight");
    await stands(page, "High limit", high + press);
  }
  const wider = await caught(page);
  assert.ok(wider < before, `${before} faults were caught at ${high} %, ${wider} at ${high + 12} %`);
  const focused = await page.evaluate(() => document.activeElement?.getAttribute("data-limit"));
  assert.equal(focused, "high", "the focus stays on the slider");
  await undo(page).click();
  await stands(page, "High limit", high + 11);
  await slider(page, "Low limit").focus();
  const low = await value(page, "Low limit");
  await page.keyboard.press("PageDown");
  await stands(page, "Low limit", low - 10);
});

test("a limit is drawn by the pointer: the verdicts follow under it, and it is one step", async () => {
  const page = await open();
  const from = await value(page, "High limit");
  const box = await settled(slider(page, "High limit"));
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const per = Number(await page.locator("[data-per]").getAttribute("data-per"));
  await page.mouse.move(x, y);
  await page.mouse.down();
  const seen = await caught(page);
  for (let step = 1; step <= 10; step += 1) await page.mouse.move(x + per * 2 * step, y);
  await stands(page, "High limit", from + 20);
  const held = await caught(page);
  assert.ok(held < seen, `${seen} faults were caught, ${held} while it is held further out`);
  await page.mouse.up();
  await stands(page, "High limit", from + 20);
  await undo(page).click();
  await stands(page, "High limit", from);
  assert.equal(await undo(page).isDisabled(), true, "one step, and it is taken back");
});

test("advised limits are taken with one press", async () => {
  const page = await open();
  const advised = await value(page, "Low limit");
  await slider(page, "Low limit").focus();
  await page.keyboard.press("PageDown");
  await stands(page, "Low limit", advised - 10);
  const low = await value(page, "Low limit");
  await page.getByRole("button", { name: "Take the advised limits" }).click();
  await page.waitForFunction((low) => low < Number(document.querySelector("[role=slider][data-limit=low]").getAttribute("aria-valuenow")), low);
  assert.match(await told(page, "Low limit"), / 0 of \d+ expected states trip/, "no expected state trips them");
});

test("on a phone each limit has a step down and a step up", async () => {
  const page = await open(360, 800);
  const low = await value(page, "Low limit");
  await page.getByRole("button", { name: "Low limit down" }).click();
  await stands(page, "Low limit", low - 1);
  await page.getByRole("button", { name: "Low limit up" }).click();
  await stands(page, "Low limit", low);
  await fits(page);
});

test("what is installed is typed into fields; what can't be used gets its sentence there and nothing is lost", async () => {
  const page = await open();
  const field = page.getByRole("textbox", { name: /^Sampling holes/ });
  const head = () => airflow(page).locator(".dw-airflow__head").innerText();
  const before = await head();
  await field.fill("0");
  await airflow(page).getByText(/number of sampling holes/).waitFor();
  assert.equal(await field.inputValue(), "0", "what was typed stays");
  assert.equal(await head(), before, "the answer is still that for what holds");
  await field.fill("4");
  // A larger chamber takes longer to fill.
  await page.getByRole("textbox", { name: /^Filter housing and chamber/ }).fill("2000");
  await page.waitForFunction((before) => document.querySelector(".dw-airflow__head").innerText !== before, before);
  const fan = page.getByRole("textbox", { name: /^Fan curve/ });
  await fan.fill("0 60; 15 30; 25 250; 60 0");
  await airflow(page).locator(".dw-fault", { hasText: "flow" }).waitFor();
  await fan.fill("0 300; 50 220; 100 0");
  await page.waitForFunction(() => ![...document.querySelectorAll(".dw-fault")].some((note) => note.textContent));
});

test("the end of a leg is drawn and its low point moves with it, in the drawing and in the sentence", async () => {
  const page = await open();
  const sentence = page.getByRole("region", { name: "Answer" }).getByRole("status").first();
  const drawn = () => page.getByRole("img", { name: /^Elevation/ }).locator("desc").textContent();
  const low = (text) => Number(/[Ll]ow point at (\d+(\.\d+)?)/.exec(text.replaceAll("\u00a0", " "))[1]);
  assert.equal(low(await sentence.innerText()), 5.2, "where legs of 1.0 m and 4.2 m meet the one that rises");
  assert.equal(low(await drawn()), 5.2, "the drawing says the same");
  const end = page.getByRole("button", { name: /^Leg 2, / });
  const box = await settled(end);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 10; step += 1) await page.mouse.move(x + 10 * step, y + 2 * step);
  await page.mouse.up();
  await page.waitForFunction(() => !/ow point at 5\.2\s/.test(document.querySelector("[aria-label=Answer] [role=status]").innerText));
  assert.ok(5.5 < low(await sentence.innerText()), "it lies further on");
  assert.equal(low(await drawn()), low(await sentence.innerText()), "in both");
});

test("a remedy is made with one press, shows at once and is taken back with one", async () => {
  const page = await open();
  const first = page.getByRole("button", { name: "Apply remedy 1" });
  const rows = page.getByRole("list", { name: "What to do" });
  assert.match(await rows.innerText(), /Put a trap at 5\.2/, "a trap at the low point");
  const sentence = page.getByRole("region", { name: "Answer" }).getByRole("status").first();
  assert.match(await sentence.innerText(), /may not be sampling/, "it may be blind");
  await first.click();
  await page.getByRole("textbox", { name: /^Trap 1, along the tube/ }).waitFor();
  assert.doesNotMatch(await sentence.innerText(), /may not be sampling/, "with the trap it is not");
  await undo(page).click();
  await page.getByRole("textbox", { name: /^Trap 1, along the tube/ }).waitFor({ state: "detached" });
  await first.waitFor();
});

for (const [width, height, scheme] of [[360, 800, "light"], [1440, 1000, "dark"]]) {
  test(`axe finds nothing in it at ${width} px, ${scheme}`, async () => {
    const page = await open(width, height, scheme);
    await page.getByText("The airflow as tables").click();
    await page.getByRole("textbox", { name: /^Sampling holes/ }).fill("x");
    await accessible(page, "airflow", ".dw-airflow-section");
  });
}
