// What is on the desk is there after a reload or a crash, undo too; a browser that keeps nothing says so.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun } from "./harness.mjs";

const stage = dewrun();
const EXAMPLE = "#example=make-up-air";

/** Opens another page that shares what is kept, as after a crash of the first. */
async function again(page, hash = "") {
  const next = await page.context().newPage();
  await next.goto(stage.address + hash);
  return next;
}

const flow = (page) => page.getByRole("textbox", { name: /^Flow/ });
const undo = (page) => page.getByRole("button", { name: "Undo" });

/** A project of one's own with a flow of its own. */
async function own(value = "31") {
  const page = await stage.openAt(1440, 1000);
  await page.getByRole("button", { name: "Draw this route" }).click();
  await flow(page).fill(value);
  return page;
}

/** Waits until all that changed is kept for good. */
async function settled(page) {
  await page.waitForTimeout(1000);
}

test("a reload loses nothing, and what was done can be undone", async () => {
  const page = await own();
  await flow(page).fill("44");
  await settled(page);
  await page.reload();
  await assertValue(flow(page), "44");
  await undo(page).click();
  await assertValue(flow(page), "30");
  await undo(page).click();
  await page.getByRole("button", { name: "Draw this route" }).waitFor();
  await page.getByRole("button", { name: "Redo" }).click();
  await assertValue(flow(page), "30");
  await page.context().close();
});

test("a page that is killed in the middle of an edit loses nothing", async () => {
  const page = await own();
  await settled(page);
  await flow(page).fill("57");
  await page.close({ runBeforeUnload: false });
  const next = await again(page);
  await assertValue(flow(next), "57");
  await undo(next).click();
  await assertValue(flow(next), "31");
  await next.context().close();
});

test("a page that crashes loses nothing", async () => {
  const page = await own("33");
  const cdp = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent("crash");
  cdp.send("Page.crash").catch(() => {});
  await crashed;
  const next = await again(page);
  await assertValue(flow(next), "33");
  await next.context().close();
});

test("what was begun on the empty page is there again", async () => {
  const page = await stage.openAt(1440, 1000);
  await page.getByRole("textbox", { name: /^Length of the tube|^Length/ }).fill("17");
  await page.reload();
  await assertValue(page.getByRole("textbox", { name: /^Length/ }), "17");
  await page.context().close();
});

async function assertValue(field, value) {
  await field.waitFor();
  const page = field.page();
  for (let wait = 0; wait < 40 && (await field.inputValue()) !== value; wait++) await page.waitForTimeout(50);
  assert.equal(await field.inputValue(), value);
}
