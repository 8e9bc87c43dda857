// The route is made on the drawing: drawn by mouse and finger, split, reordered, all of it by keyboard too, and each act is one step to undo.
import assert from "node:assert/strict";
import { test } from "node:test";
import { answered, dewrun, shows } from "./harness.mjs";
import { accessible, fits, saved } from "./looks.mjs";

const site = dewrun();

async function open(width = 1440, height = 1000, scheme = "light", example = "make-up-air") {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  // What comes late in the answer would move the drawing under the hand.
  await answered(page);
  return page;
}

const leg = (page, number) => page.getByRole("button", { name: new RegExp(`^Leg ${number}, `) });
const named = async (page, number) => (await leg(page, number).getAttribute("aria-label")).replaceAll("\u00a0", " ");
const sentence = (page) => page.getByRole("region", { name: "Answer" }).getByRole("status").first().innerText();
const undo = (page) => page.getByRole("button", { name: "Undo" });
const redo = (page) => page.getByRole("button", { name: "Redo" });
const elevation = (page) => page.getByRole("img", { name: /^Elevation/ });

/** Waits until a leg is called so, for a finger's moves come a frame later. */
async function becomes(page, number, name) {
  await page.waitForFunction(
    ([number, name]) => {
      const handle = document.querySelector(`[aria-label^="Leg ${number}, "]`);
      return new RegExp(name).test(handle?.getAttribute("aria-label").replaceAll("\u00a0", " "));
    },
    [number, name.source],
    { timeout: 5_000 },
  );
}

async function middle(locator) {
  await locator.scrollIntoViewIfNeeded();
  const box = await locator.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Pixels of a metre, from the first two figures of the axis under both drawings. */
async function scale(page) {
  const figures = await page.getByRole("img", { name: /^Air, inner wall/ }).locator("text").evaluateAll((texts) =>
    texts.map((text) => ({ metres: Number.parseFloat(text.textContent), x: Number(text.getAttribute("x")), y: Number(text.getAttribute("y")) })),
  );
  const lowest = Math.max(...figures.map(({ y }) => y));
  const [first, second] = figures.filter(({ metres, y }) => y === lowest && Number.isFinite(metres)).sort((a, b) => a.x - b.x);
  return (second.x - first.x) / (second.metres - first.metres);
}

/** Draws the diamond of a leg by so many px. */
async function draw(page, number, dx, dy) {
  const from = await middle(leg(page, number));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= 10; step += 1) await page.mouse.move(from.x + (dx * step) / 10, from.y + (dy * step) / 10);
  return from;
}

/** A place on a leg's tube, between the ends of the one before it and its own, a share of the way. */
async function onTube(page, number, share) {
  const path = await elevation(page).locator(".dw-d-bore").first().boundingBox();
  const [before, own] = [await middle(leg(page, number - 1)), await middle(leg(page, number))];
  const x = before.x + (own.x - before.x) * share;
  // Down through the drawing until the tube is met.
  return { x, top: path.y, bottom: path.y + path.height };
}

test("the end of a leg is drawn along and down, sentence and drawing follow, and all of it is one step", async () => {
  const page = await open();
  assert.match(await named(page, 2), /^Leg 2, Service corridor, 4\.2 m, falls 1:50$/);
  const before = { sentence: await sentence(page), drawing: await elevation(page).innerHTML() };
  const px = await scale(page);
  // 0.8 m longer, and 0.1 m in 5 m more of fall: 1:25, between 1:30 and 1:20, is set to the nearer of these.
  await draw(page, 2, 0.8 * px, 0);
  assert.match(await named(page, 2), /5 m, falls 1:\d+$/, "while it is drawn");
  assert.ok(await page.getByText(/^5.m, falls 1:\d+$/).first().isVisible(), "written at the diamond");
  assert.notEqual(await sentence(page), before.sentence, "the sentence follows");
  assert.notEqual(await elevation(page).innerHTML(), before.drawing, "so does the drawing");
  await page.mouse.up();
  assert.equal(await page.getByLabel("Length of leg 2").inputValue(), "5");
  await undo(page).click();
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
  assert.equal(await sentence(page), before.sentence, "as it was");
  assert.ok(await undo(page).isDisabled(), "there was one step");
  await redo(page).click();
  assert.match(await named(page, 2), /5 m, falls/);
});

test("down is fall, to what people set; Shift frees it and Escape puts it back", async () => {
  const page = await open();
  const px = await scale(page);
  // Falls are drawn six times: 1:30 of 4.2 m lies 56 mm lower than 1:50.
  const from = await draw(page, 2, 0, (4.2 / 30 - 4.2 / 50) * 6 * px);
  assert.match(await named(page, 2), /4\.2 m, falls 1:30$/);
  await page.keyboard.down("Shift");
  await page.mouse.move(from.x + 0.02 * px, from.y + (4.2 / 45 - 4.2 / 50) * 6 * px);
  assert.match(await named(page, 2), /4\.2[123] m, falls 1:4[3-7]$/, "freed");
  await page.keyboard.up("Shift");
  await page.keyboard.press("Escape");
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
  await page.mouse.up();
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
  assert.ok(await undo(page).isDisabled(), "nothing was done");
});

test("the tube pressed twice is split there, and a leg is chosen by a press", async () => {
  const page = await open();
  const place = await onTube(page, 2, 0.5);
  let met = false;
  for (let y = place.top; y < place.bottom && !met; y += 6) {
    await page.mouse.click(place.x, y);
    met = (await leg(page, 2).getAttribute("aria-pressed")) === "true";
    if (met) await page.mouse.dblclick(place.x, y);
  }
  assert.ok(met, "a press on the tube chooses its leg");
  const parts = [await named(page, 2), await named(page, 3)];
  const [near, far] = parts.map((part) => Number(/, ([\d.]+) m, falls 1:50$/.exec(part)[1]));
  assert.ok(Math.abs(near + far - 4.2) < 1e-9, `${parts}: 4.2 m in all`);
  assert.ok(Math.abs(near - 2.1) <= 0.3, `${near} m: near the middle`);
  await undo(page).click();
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
});

test("by keyboard alone: in the order of the air, changed by one step, put back, split, moved, added, taken away", async () => {
  const page = await open();
  const press = (key) => page.keyboard.press(key);
  const focused = () => page.evaluate(() => document.activeElement.getAttribute("aria-label")?.replaceAll("\u00a0", " "));
  await page.getByRole("button", { name: /^Duct, / }).focus();
  const seen = [];
  for (let stop = 0; stop < 7; stop += 1) {
    await press("Tab");
    seen.push((await focused()).split(",")[0]);
  }
  assert.deepEqual(seen, ["Leg 1", "Leg 2", "Leg 3", "Leg 4", "Leg 5", "Detector", "Pointer along the intake tube"]);
  await leg(page, 2).focus();
  await press("ArrowRight");
  assert.match(await focused(), /4\.25 m, falls 1:50$/);
  await press("ArrowLeft");
  await press("ArrowLeft");
  await press("ArrowDown");
  assert.match(await focused(), /4\.15 m, falls 1:40$/);
  const told = page.getByRole("application").getByRole("status");
  assert.match((await told.innerText()).replaceAll("\u00a0", " "), /^4\.15 m, falls 1:40$/, "it is said");
  await press("Escape");
  assert.match(await focused(), /4\.2 m, falls 1:50$/);
  assert.ok(await undo(page).isDisabled(), "put back is no step");
  await press("ArrowUp");
  await press("ArrowUp");
  assert.match(await focused(), /4\.2 m, falls 1:100$/);
  await press("Tab");
  await leg(page, 2).focus();
  await press("Enter");
  assert.equal(await leg(page, 2).getAttribute("aria-pressed"), "true", "chosen");
  await press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.id), await page.getByLabel("Length of leg 2").getAttribute("id"));
  await undo(page).click();
  assert.match(await named(page, 2), /falls 1:50$/, "the keys were one step");

  // Where the pointer is not in the leg it is split in the middle.
  await leg(page, 5).focus();
  await press("s");
  assert.match(await named(page, 5), /0\.75 m, drop$/);
  assert.match(await named(page, 6), /0\.75 m, drop$/);
  await leg(page, 6).focus();
  await press("Delete");
  assert.equal(await leg(page, 6).count(), 0);
  assert.match(await focused(), /^Leg 5, /, "the keys are not lost");
  await leg(page, 2).focus();
  await press("Shift+ArrowRight");
  assert.match(await focused(), /^Leg 3, Service corridor, 4\.2 m, falls 1:50$/);
  assert.match(await named(page, 2), /3\.8 m, rises 1:60$/);
  await press("i");
  assert.match(await named(page, 4), /4\.2 m, falls 1:50$/, "one like it behind it");
  for (let step = 0; step < 4; step += 1) await undo(page).click();
  const legs = [];
  for (let number = 1; number <= 5; number += 1) legs.push((await named(page, number)).replace(/^.*?, .*?, /, ""));
  assert.deepEqual(legs, ["1 m, falls 1:50", "4.2 m, falls 1:50", "3.8 m, rises 1:60", "1.6 m, rises 1:60", "1.5 m, drop"]);
});

test("S at the pointer splits the leg there", async () => {
  const page = await open();
  const pointer = page.getByRole("slider", { name: "Pointer along the intake tube" });
  await pointer.focus();
  await page.keyboard.press("Home");
  await page.keyboard.press("PageUp");
  for (let step = 0; step < 2; step += 1) await page.keyboard.press("Shift+ArrowRight");
  assert.equal(await pointer.getAttribute("aria-valuenow"), "2.00");
  await page.keyboard.press("s");
  assert.match(await named(page, 2), /, 1 m, falls 1:50$/);
  assert.match(await named(page, 3), /, 3\.2 m, falls 1:50$/);
});

test("from the duct and the detector one goes to what is entered about them", async () => {
  const page = await open();
  for (const [name, label] of [
    [/^Duct, /, "Temperature of the duct air"],
    ["Detector", "Heat of the detector"],
  ]) {
    await page.getByRole("application").getByRole("button", { name }).focus();
    await page.keyboard.press("Enter");
    const field = page.getByLabel(label);
    assert.ok(await field.evaluate((input) => input === document.activeElement), label);
  }
});

test("the buttons at the legs move, split, add and delete the chosen one", async () => {
  const page = await open();
  await page.getByLabel("Length of leg 2").focus();
  await page.getByRole("button", { name: "Move leg 2 on" }).click();
  assert.match(await named(page, 3), /4\.2 m, falls 1:50$/);
  await page.getByRole("button", { name: "Move leg 3 back" }).click();
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
  await page.getByRole("button", { name: "Delete leg 2" }).click();
  assert.equal(await leg(page, 5).count(), 0);
});

test("a finger draws a leg and the page stays; a second finger frees it", async () => {
  const page = await open(360, 740);
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, ...points) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const px = await scale(page);
  const from = await middle(leg(page, 2));
  const scrolled = await page.evaluate(() => scrollY);
  await touch("touchStart", [from.x, from.y]);
  for (let step = 1; step <= 10; step += 1) await touch("touchMove", [from.x - (px * step) / 10, from.y]);
  await becomes(page, 2, / 3\.2 m, falls 1:\d+$/);
  await touch("touchStart", [from.x - px, from.y], [60, from.y + 60]);
  await touch("touchMove", [from.x - 1.03 * px, from.y], [60, from.y + 60]);
  await becomes(page, 2, / 3\.1[6-9] m, falls/);
  await touch("touchEnd", [60, from.y + 60]);
  await touch("touchEnd");
  assert.equal(await page.evaluate(() => scrollY), scrolled, "the page stays");
  await undo(page).click();
  assert.match(await named(page, 2), /4\.2 m, falls 1:50$/);
});

test("buttons, Ctrl with the wheel and two fingers make the drawing larger; both drawings move together", async () => {
  const page = await open();
  const widths = async () => {
    const profile = page.getByRole("img", { name: /^Air, inner wall/ });
    return [(await elevation(page).boundingBox()).width, (await profile.boundingBox()).width];
  };
  const [whole] = await widths();
  await page.getByRole("button", { name: "Larger drawing" }).click();
  await page.getByRole("button", { name: "Larger drawing" }).click();
  const [above, below] = await widths();
  assert.ok(Math.abs(above - whole * 1.5625) < 2, `1.25 times 1.25: ${whole} to ${above}`);
  assert.equal(above, below, "one axis");
  await fits(page, "nothing else grows");
  const at = await middle(leg(page, 3));
  await page.mouse.move(at.x, at.y + 60);
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -100);
  await page.keyboard.up("Control");
  await page.waitForFunction((width) => document.querySelector("svg[role=img]").getBoundingClientRect().width > width + 10, above);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const after = await leg(page, 3).boundingBox();
  assert.ok(Math.abs(after.x + after.width / 2 - at.x) < 12, "what is under the wheel stays there");
  const left = async () => [(await elevation(page).boundingBox()).x, (await page.getByRole("img", { name: /^Air, inner wall/ }).boundingBox()).x];
  await leg(page, 5).focus();
  const [one, other] = await left();
  assert.equal(one, other, "moved together");
  await page.getByRole("button", { name: "Whole tube" }).click();
  assert.equal((await widths())[0], whole);
});

test("two fingers on a phone", async () => {
  const page = await open(360, 740);
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, ...points) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  await elevation(page).scrollIntoViewIfNeeded();
  const box = await elevation(page).boundingBox();
  const y = box.y + box.height - 30;
  const width = box.width;
  await touch("touchStart", [140, y], [220, y]);
  for (let step = 1; step <= 8; step += 1) await touch("touchMove", [140 - 5 * step, y], [220 + 5 * step, y]);
  await touch("touchEnd");
  await page.waitForFunction((width) => 1.9 * width < document.querySelector("svg[role=img]").getBoundingClientRect().width, width, { timeout: 5_000 });
  const now = (await elevation(page).boundingBox()).width;
  assert.ok(Math.abs(now / width - 2) < 0.1, `160 px are twice 80 px: ${width} to ${now}`);
  await fits(page, "the page keeps its width");
});

for (const [width, height] of [
  [360, 740],
  [1440, 900],
]) {
  for (const scheme of ["light", "dark"]) {
    test(`axe finds nothing with a leg chosen and the drawing larger at ${width} px, ${scheme}`, async () => {
      const page = await open(width, height, scheme);
      await leg(page, 2).focus();
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: "Larger drawing" }).click();
      await accessible(page, `${width} px, ${scheme}`, ".dw-route");
      await fits(page, `${width} px`);
    });
  }
}

test("what a hand sets is typed and saved", async () => {
  const page = await open();
  const px = await scale(page);
  await draw(page, 2, 0.3 * px, 0);
  await page.mouse.up();
  const { project } = await saved(page);
  const [, second] = project.runs[0].intake.legs;
  assert.deepEqual(second.length_m, { value: 4.5, origin: "typed" });
});

const trap = (page, number) => page.getByRole("button", { name: new RegExp(`^Trap ${number} at `) });
const sign = (page) => page.getByRole("button", { name: "Trap at the pointer" });
const place = async (page, number) => (await trap(page, number).getAttribute("aria-label")).replaceAll("\u00a0", " ");

test("a trap is dropped on the tube, moved along it, taken away, and goes with its leg", async () => {
  const page = await open();
  const sentence = page.getByRole("region", { name: "Answer" }).getByRole("status").first();
  const sealed = async (least, most) => {
    await page.waitForFunction(
      ([element, least, most]) => {
        const hours = Number(/is sealed after (\d+).h/.exec(element.innerText)?.[1]);
        return least < hours && hours < most;
      },
      [await sentence.elementHandle(), least, most],
    );
  };
  await sealed(0, 40);
  const [from, low] = [await middle(sign(page)), await middle(leg(page, 2))];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(low.x, low.y, { steps: 8 });
  assert.ok(await page.getByText(/^Trap at 5\.2.m$/).first().isVisible(), "its place is written at it");
  await page.mouse.up();
  assert.equal(await place(page, 1), "Trap 1 at 5.2 m");
  assert.equal(await trap(page, 2).count(), 0, "one only");
  assert.match(await elevation(page).innerHTML(), />Trap 1</, "it is drawn");
  // At the low point it takes all that comes, 250 mL of 10.2 g/h: a day more.
  await sealed(50, 60);
  // Leg 2 gets 0.8 m longer: the low point and what hangs there move by as much.
  const px = await scale(page);
  await draw(page, 2, 0.8 * px, 0);
  await page.mouse.up();
  assert.equal(await place(page, 1), "Trap 1 at 6 m");
  await undo(page).click();
  const at = await middle(trap(page, 1));
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x - px, at.y, { steps: 8 });
  await page.mouse.up();
  const moved = Number(/at ([\d.]+) m$/.exec(await place(page, 1))[1]);
  assert.ok(Math.abs(moved - 4.2) < 0.11, `a metre back: ${moved}`);
  await undo(page).click();
  await undo(page).click();
  assert.equal(await trap(page, 1).count(), 0, "three acts, three steps");
  await sealed(0, 40);
});

test("traps by keyboard: at the pointer, at the end of a leg, moved, put back, taken away", async () => {
  const page = await open();
  const pointer = page.getByRole("slider", { name: "Pointer along the intake tube" });
  await pointer.focus();
  await page.keyboard.press("Home");
  for (let step = 0; step < 4; step += 1) await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.press("t");
  assert.equal(await place(page, 1), "Trap 1 at 2 m");
  await leg(page, 2).focus();
  await page.keyboard.press("t");
  assert.equal(await place(page, 2), "Trap 2 at 5.2 m");
  await page.keyboard.press("Tab");
  await trap(page, 2).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowLeft");
  assert.equal(await place(page, 2), "Trap 2 at 4.75 m");
  await page.keyboard.press("Escape");
  assert.equal(await place(page, 2), "Trap 2 at 5.2 m");
  await page.keyboard.press("Delete");
  assert.equal(await trap(page, 2).count(), 0);
  const { project } = await saved(page);
  assert.deepEqual(project.runs[0].intake.traps.map((trap) => [trap.at_m.value, trap.kind]), [[2, "hand_drained"]]);
});

test("hangers are drawn as far apart as is entered", async () => {
  const page = await open();
  const lines = () => elevation(page).locator("path.dw-d-measure").count();
  const before = await lines();
  await page.getByLabel("Length of leg 2").focus();
  await page.getByLabel("Hanger spacing of leg 2").fill("1.2");
  await page.waitForFunction((before) => document.querySelectorAll("svg[role=img] path.dw-d-measure").length > before, before);
  assert.equal((await lines()) - before, 3, "3 in 4.2 m");
});

test("a long press on the tube splits it", async () => {
  const page = await open(360, 740);
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, ...points) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const [left, right] = [await middle(leg(page, 2)), await middle(leg(page, 3))];
  // The tube rises from under one diamond to under the other; the stalks are 22 px and half of the bore.
  const [x, y] = [(left.x + right.x) / 2, (left.y + right.y) / 2 + 27];
  await touch("touchStart", [x, y]);
  await becomes(page, 6, /drop$/);
  await touch("touchEnd");
  assert.match(await named(page, 3), / 1\.\d+ m, rises 1:60$/);
});
