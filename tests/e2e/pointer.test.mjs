// The pointer along the tube: by keyboard, by mouse, by touch and by the large buttons of a phone.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answered, dewrun, shows } from "./harness.mjs";

const site = dewrun();

async function open(width, height, example = "make-up-air") {
  const page = await site.openAt(width, height, "light", `#example=${example}`);
  await shows(page);
  await answered(page);
  const pointer = page.getByRole("slider", { name: "Pointer along the intake tube" });
  await pointer.waitFor();
  return { page, pointer };
}

const at = async (pointer) => Number(await pointer.getAttribute("aria-valuenow"));
const spoken = (pointer) => pointer.getAttribute("aria-valuetext");
const middle = async (pointer) => {
  const box = await pointer.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + 10 };
};

/** The first number after a word of what is spoken. */
const figure = (text, name) => Number(new RegExp(`${name} (\u2212?[\\d.]+)`).exec(text)[1].replace("\u2212", "-"));

test("by keyboard: even steps, ends, joints and wet bounds", async () => {
  const { page, pointer } = await open(1440, 900);
  await pointer.focus();
  await page.keyboard.press("Home");
  assert.equal(await at(pointer), 0);
  const visited = [];
  for (let step = 0; step < 5; step += 1) {
    await page.keyboard.press("PageUp");
    visited.push(await at(pointer));
  }
  // Its joints; water forms from the wall at 1 m to the one at 9 m.
  assert.deepEqual(visited, [1, 5.2, 9, 10.6, 12.1]);
  await page.keyboard.press("PageDown");
  assert.equal(await at(pointer), 10.6);
  await page.keyboard.press("ArrowLeft");
  assert.equal(await at(pointer), 10.55);
  await page.keyboard.press("Shift+ArrowLeft");
  assert.equal(await at(pointer), 10.05);
  await page.keyboard.press("ArrowRight");
  assert.equal(await at(pointer), 10.1);
  await page.keyboard.press("End");
  assert.equal(await at(pointer), 12.1);
});

test("it speaks the whole flag, which agrees with the table behind the profile", async () => {
  const { page, pointer } = await open(1440, 900);
  await pointer.focus();
  await page.keyboard.press("End");
  const text = await spoken(pointer);
  assert.match(text, /^at 12\.10.m, leg 5: air .*inner wall .*dew point .*humidity .*forms here .*formed so far .*runs past /);
  await page.getByText("The profile as a table").click();
  const rows = page.getByRole("table", { name: "Temperatures and water along the tube" }).getByRole("row");
  const last = (await rows.last().innerText()).split(/\s+/).map((cell) => cell.replace("\u2212", "-"));
  assert.deepEqual(last.slice(1, 4), ["air", "inner wall", "dew point"].map((name) => figure(text, name).toFixed(1)));
  const answer = await page.getByRole("region", { name: "Answer" }).getByRole("status").first().innerText();
  assert.equal(figure(text, "formed so far"), Number(/([\d.]+)\sg\/h of water forms/.exec(answer)[1]), "all that the sentence says");
});

test("dragged by the mouse it follows and redraws nothing but itself", async () => {
  const { page, pointer } = await open(1440, 900);
  await page.evaluate(() => {
    globalThis.redrawn = 0;
    const drawings = [...document.querySelectorAll(".dw-drawings svg[role=img]")].map((svg) => svg.parentElement);
    const watch = new MutationObserver((changes) => (globalThis.redrawn += changes.length));
    for (const drawing of drawings) watch.observe(drawing, { childList: true, subtree: true, attributes: true });
  });
  await pointer.scrollIntoViewIfNeeded();
  const from = await middle(pointer);
  const before = await at(pointer);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 150, from.y + 60, { steps: 30 });
  await page.mouse.up();
  const moved = (await middle(pointer)).x - from.x;
  assert.ok(Math.abs(moved - 150) <= 2, `it is where the mouse let go: ${moved} px on`);
  assert.ok((await at(pointer)) > before + 1, "and further along");
  assert.equal(await page.evaluate(() => globalThis.redrawn), 0, "neither drawing was touched");
});

test("a press on the plot brings it there", async () => {
  const { page, pointer } = await open(1440, 900);
  const profile = page.getByRole("img", { name: /^Air, inner wall/ });
  await profile.scrollIntoViewIfNeeded();
  const plot = await profile.boundingBox();
  await page.mouse.click(plot.x + plot.width * 0.75, plot.y + 60);
  const there = await middle(pointer);
  assert.ok(Math.abs(there.x - (plot.x + plot.width * 0.75)) <= 2, "under the mouse");
});

test("on a phone it is dragged by a finger and moved by four large buttons", async () => {
  const { page, pointer } = await open(360, 740);
  await pointer.scrollIntoViewIfNeeded();
  const from = await middle(pointer);
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, x, y) =>
    cdp.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  const scrolled = await page.evaluate(() => scrollY);
  await touch("touchStart", from.x, from.y);
  for (let step = 1; step <= 10; step += 1) await touch("touchMove", from.x + 6 * step, from.y);
  await touch("touchEnd");
  const moved = (await middle(pointer)).x - from.x;
  assert.ok(Math.abs(moved - 60) <= 3, `it follows the finger: ${moved} px`);
  assert.equal(await page.evaluate(() => scrollY), scrolled, "and the page stays");
  const start = await at(pointer);
  const steps = [
    ["1 m on", 1],
    ["0.1 m on", 0.1],
    ["0.1 m back", -0.1],
    ["1 m back", -1],
  ];
  let expected = start;
  for (const [name, by] of steps) {
    const button = page.getByRole("button", { name, exact: true });
    const box = await button.boundingBox();
    assert.ok(box.height >= 48, `${name} is ${box.height} px high`);
    await button.click();
    expected += by;
    assert.ok(Math.abs((await at(pointer)) - expected) < 0.006, `${name} leads to ${expected}`);
  }
});

test("the flag stands by the line on a wide page and under the plot on a phone", async () => {
  for (const width of [360, 800, 1440, 2560]) {
    const { page, pointer } = await open(width, 900);
    const flag = await page.getByText(/^at [\d.]+.m, leg \d+$/).locator("..").boundingBox();
    const elevation = await page.getByRole("img", { name: /^Elevation/ }).boundingBox();
    const profile = await page.getByRole("img", { name: /^Air, inner wall/ }).boundingBox();
    assert.ok(flag.x >= 0 && flag.x + flag.width <= width, `inside ${width} px`);
    if (width < 600) assert.ok(flag.y >= profile.y + profile.height - 1, "under the plot");
    else assert.ok(flag.y >= elevation.y && flag.y + flag.height <= elevation.y + elevation.height, `in the elevation at ${width} px`);
    assert.ok(await pointer.isVisible());
    await page.close();
  }
});

test("each tube has its own pointer, in the units that are shown", async () => {
  const { page } = await open(1440, 900, "pool-hall-exhaust");
  const intake = page.getByRole("slider", { name: "Pointer along the intake tube" });
  await intake.focus();
  await page.keyboard.press("End");
  assert.equal(await at(intake), 8.5);
  await page.getByRole("button", { name: "exhaust tube" }).click();
  const exhaust = page.getByRole("slider", { name: "Pointer along the exhaust tube" });
  assert.equal(await exhaust.getAttribute("aria-valuemax"), "8.20");
  await exhaust.focus();
  await page.keyboard.press("End");
  assert.match(await spoken(exhaust), /^at 8\.20.m, leg 7: .*frost point .*frosts here /);
  await page.getByRole("button", { name: "in-lb units" }).click();
  // 8.2 m are 26.90 ft.
  assert.equal(await at(exhaust), 26.9);
  assert.match(await spoken(exhaust), /^at 26\.90.ft, leg 7: air \u2212?[\d.]+ °F/);
});
