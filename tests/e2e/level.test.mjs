// The phone as a level, on a phone whose sensor is emulated.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";

const site = dewrun();
const LEG = 2;

/** A phone with the card of a leg open; `lie` says how it lies: heading, pitch and roll in degrees. */
async function phone(script) {
  const page = await site.openAt(360, 740, "light", script ? "" : "#example=make-up-air");
  if (script) {
    await page.addInitScript(script);
    await page.goto(`${site.address}?fresh#example=make-up-air`);
  }
  await shows(page);
  const cdp = await page.context().newCDPSession(page);
  const lie = (alpha, beta, gamma = 1) =>
    cdp.send("DeviceOrientation.setDeviceOrientationOverride", { alpha, beta, gamma });
  await page.locator(".dw-leg-card__head").nth(LEG - 1).click();
  return { page, lie };
}

const begin = (page) => page.getByRole("button", { name: "Measure with this phone" }).click();
const status = (page) => page.locator(".dw-level").getByRole("status");
const leg = async (page) => (await saved(page)).project.runs[0].intake.legs[LEG - 1];

/** Presses the button and waits until the reading is over. */
async function read(page) {
  await page.getByRole("button", { name: "Read", exact: true }).click();
  await page.getByText("Reading. Leave it lying.").waitFor();
  await page.getByText("Reading. Leave it lying.").waitFor({ state: "detached" });
}

test("two readings, turned end for end, are written as measured", async () => {
  const { page, lie } = await phone();
  const before = await leg(page);
  await lie(30, -0.9);
  await begin(page);
  await page.getByText("Lay the phone flat along the leg, screen up, its top the way the air goes.").waitFor();
  await accessible(page, "what is asked");
  await fits(page, "what is asked");
  await touchable(page, "what is asked", ".dw-level");
  await read(page);
  await page.getByText("Now turn it end for end on the same place, its top against the air.").waitFor();
  await lie(212, 1.5);
  await read(page);
  // Half of 1.5 + 0.9 degrees is 1.2, whose tangent is 0.02095; half of 1.5 - 0.9 is 0.3, 0.00524; a sensor's step over two readings is 0.05, 0.00087.
  const found = "The leg falls 21 mm/m (20 to 22); the phone itself is off by 5 mm/m, which cancels.";
  await page.getByText(found).waitFor();
  await page.getByLabel("Measured by").fill("R. Abel");
  await accessible(page, "what was found");
  await fits(page, "what was found");
  await page.getByRole("button", { name: "Write it as measured" }).click();
  assert.equal(await page.evaluate(() => document.activeElement.innerText), "Measure with this phone", "focus");
  assert.equal(await page.getByLabel("Fall of leg 2, measured").inputValue(), "21 mm/m");
  const after = await leg(page);
  const today = await page.evaluate(() => new Date().toLocaleDateString("sv"));
  assert.deepEqual(after.rise_m.origin, { measured: { on: today, by: "R. Abel" } });
  const slope = -after.rise_m.value / Math.sqrt(after.length_m.value ** 2 - after.rise_m.value ** 2);
  assert.ok(Math.abs(slope - 0.021) < 1e-9, `${slope}`);
  await page.locator(".dw-leg-card__head").nth(LEG).click();
  await lie(30, 1);
  await begin(page);
  await read(page);
  await lie(210, -1);
  await read(page);
  await page.getByText(/^The leg rises 17 mm\/m/).waitFor();
  assert.equal(await page.getByLabel("Measured by").inputValue(), "R. Abel", "who measures goes on");
  await begin(page);
  await status(page).waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual(await leg(page), before, "one step back");
});

test("a phone that moves, lies wrong or is not turned is told so and reads again", async () => {
  const { page, lie } = await phone();
  await lie(30, 1);
  await begin(page);
  await page.getByRole("button", { name: "Read", exact: true }).click();
  await page.waitForTimeout(1200);
  await lie(30, 1.9);
  await page.getByText(/^The phone moved by 0\.9° while it was read, more than 0\.4°\. Lay it down/).waitFor();
  await lie(30, 1, 60);
  await read(page);
  await page.getByText(/^The phone leans 60° to a side, it must lie on its back\./).waitFor();
  await lie(30, 70);
  await read(page);
  await page.getByText(/^The phone is tilted by 70°, it can be a level up to 45°\./).waitFor();
  await accessible(page, "a refusal");
  await lie(30, 1);
  await read(page);
  await lie(35, 1);
  await read(page);
  await page.getByText(/^The phone was turned by 5°, it must be turned end for end\./).waitFor();
  await lie(210, -1);
  await read(page);
  await page.getByText(/^The leg rises 17 mm\/m \(16 to 18\); the phone itself is not off\./).waitFor();
});

test("without a sensor the fall is typed", async () => {
  const { page } = await phone();
  await begin(page);
  await read(page);
  await page.getByText("This device has no sensor for it, or does not let the page read it. Type the fall instead.").waitFor();
  assert.equal(await page.getByRole("button", { name: "Read", exact: true }).count(), 0);
  await page.getByLabel("Fall of leg 2").fill("1:40");
  assert.equal((await leg(page)).rise_m.origin, "typed");
});

test("without the right to it the fall is typed, and nobody is asked before the press", async () => {
  const { page } = await phone(() => {
    globalThis.asked = 0;
    DeviceOrientationEvent.requestPermission = async () => {
      globalThis.asked += 1;
      return "denied";
    };
  });
  assert.equal(await page.evaluate(() => globalThis.asked), 0, "not before");
  await begin(page);
  await page.getByText("This device has no sensor for it, or does not let the page read it. Type the fall instead.").waitFor();
  assert.equal(await page.evaluate(() => globalThis.asked), 1, "once");
});
