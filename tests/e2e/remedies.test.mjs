// The section Remedies: sought over the year once it is in sight, for the target that a person sets; one is made by one press, and undone by one.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun } from "./harness.mjs";
import { accessible, fits, saved, touchable } from "./looks.mjs";
import { GULL_HARBOUR, chosen, hand, open, opened, ready } from "./weather.mjs";

const site = dewrun();
/** All of a year of remedies, on a busy machine. */
const LONG = { timeout: 60_000 };

const remedies = (page) => page.getByRole("region", { name: "Remedies", exact: true });
const apply = (page) => remedies(page).getByRole("button", { name: /^Apply cure/ });
const answer = (page) => page.locator(".dw-answer__sentence");

/** Scrolls to the section and waits until all remedies are known. */
async function sought(page) {
  await remedies(page).scrollIntoViewIfNeeded();
  await apply(page).first().waitFor(LONG);
  await page.waitForFunction(() => document.querySelector("[data-cures=work]").hidden, undefined, LONG);
}

test("without a year none are sought, and it is said how", async () => {
  const page = await open(site);
  await remedies(page).getByText("open a weather file").waitFor();
  assert.equal(await apply(page).count(), 0);
});

test("the wet make-up air: a target is set, the first remedy dries the sentence, undo brings the water back", async () => {
  const page = await opened(site);
  assert.match(await answer(page).innerText(), /g\/h/, "it is wet as drawn");
  await sought(page);
  const before = await apply(page).count();
  assert.ok(1 < before, `${before} remedies meet the target`);
  // What may be left of the year is less than most of these leave.
  await remedies(page).getByLabel("Wet hours at most").fill("70");
  await remedies(page).getByLabel("Wet hours at most").press("Enter");
  await page.waitForFunction(() => !document.querySelector("[data-cures=work]").hidden, undefined, LONG);
  await sought(page);
  const { project: drawn } = await saved(page);
  assert.equal(drawn.target.wet_hours, 70, "the project holds its target");
  // The first three stand beside the answer, and can be made there too.
  const beside = page.getByRole("list", { name: "What to do through the year" });
  assert.equal(await beside.getByRole("button").count(), Math.min(3, await apply(page).count()));
  const [first] = await beside.getByRole("listitem").allInnerTexts();
  assert.match(first, /wet hours, not/, "what is left, and what was");
  assert.equal(await page.getByRole("list", { name: "What to do", exact: true }).count(), 0, "they stand for those as entered");
  await apply(page).first().click();
  await page.waitForFunction(() => /dry/i.test(document.querySelector(".dw-answer__sentence").innerText), undefined, LONG);
  const { project: changed } = await saved(page);
  assert.notDeepEqual(changed, drawn, "the project is another");
  await remedies(page).getByText("nothing has to be done").waitFor(LONG);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.waitForFunction(() => /g\/h/.test(document.querySelector(".dw-answer__sentence").innerText), undefined, LONG);
  assert.deepEqual((await saved(page)).project, drawn, "one step back is what was drawn");
  await beside.getByRole("button", { name: "Apply remedy 1 of the year" }).click(LONG);
  await remedies(page).getByText("nothing has to be done").waitFor(LONG);
  assert.deepEqual((await saved(page)).project, changed, "the same remedy");
});

test("a press holds though the list grows under it", async () => {
  const page = await opened(site);
  await remedies(page).scrollIntoViewIfNeeded();
  await apply(page).first().waitFor(LONG);
  const before = await answer(page).innerText();
  // In one go, for the list is made anew meanwhile.
  const [x, y] = await page.evaluate(() => {
    const first = document.querySelector("[data-cures=told] button[data-cure]");
    first.scrollIntoView({ block: "center" });
    const box = first.getBoundingClientRect();
    return [box.x + box.width / 2, box.y + box.height / 2];
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.waitForFunction(() => document.querySelector("[data-cures=share]").value === 1, undefined, LONG);
  await page.mouse.up();
  await page.waitForFunction((before) => document.querySelector(".dw-answer__sentence").innerText !== before, before, LONG);
});

test("a blank that can't be read is told, and the search can be stopped", async () => {
  const page = await opened(site);
  await remedies(page).scrollIntoViewIfNeeded();
  const field = remedies(page).getByLabel("Blind hours at most");
  await field.fill("many");
  await field.press("Enter");
  await remedies(page).getByText("is not a number").waitFor();
  assert.equal(await field.getAttribute("aria-invalid"), "true");
  await field.fill("0");
  await field.press("Enter");
  await remedies(page).getByRole("button", { name: "Stop the search" }).click();
  await page.waitForFunction(() => document.querySelector("[data-cures=work]").hidden, undefined, LONG);
});

test("what was found before the search was stopped, and told after, does not begin it again", async () => {
  const page = await open(site);
  await page.addInitScript(() => {
    const Prompt = Worker;
    globalThis.late = 0;
    globalThis.Worker = class extends Prompt {
      constructor(...what) {
        super(...what);
        this.addEventListener("message", (event) => {
          if (event.data.kind !== "cures" || event.isLate) return;
          event.stopImmediatePropagation();
          globalThis.late += 1;
          setTimeout(() => this.dispatchEvent(Object.assign(new MessageEvent("message", { data: event.data }), { isLate: true })), 1500);
        });
      }
    };
  });
  await page.reload();
  await ready(page);
  await chosen(page).setInputFiles(GULL_HARBOUR);
  await hand(page).waitFor();
  await remedies(page).scrollIntoViewIfNeeded();
  await page.waitForFunction(() => 0 < globalThis.late, undefined, LONG);
  await remedies(page).getByRole("button", { name: "Stop the search" }).click();
  await page.waitForTimeout(3000);
  assert.equal(await remedies(page).getByRole("button", { name: "Stop the search" }).count(), 0, "nothing is sought any more");
});

test("it is ranked by another column, fits, and can be used", async () => {
  const page = await opened(site, 360, 780);
  await sought(page);
  await remedies(page).getByRole("button", { name: "transport time" }).click();
  await apply(page).first().waitFor();
  await fits(page, "remedies");
  await touchable(page, "remedies", ".dw-cures", 44);
  await accessible(page, "remedies", ".dw-cures-section");
});

test("a worker that falls silent when remedies are asked for anew is replaced by one that seeks the year first", async () => {
  const page = await open(site);
  await page.addInitScript(() => {
    const Sound = Worker;
    let [begun, searches] = [0, 0];
    globalThis.Worker = class extends Sound {
      constructor(address, options) {
        super(address, options);
        if (!`${address}`.endsWith("almanac.js") || options.name === "lent") return;
        begun += 1;
        this.own = begun;
        this.addEventListener("message", (event) => this.own === 1 && 1 < searches && event.stopImmediatePropagation());
      }
      postMessage(message, ...more) {
        if (message.kind === "cures") searches += 1;
        super.postMessage(message, ...more);
      }
    };
    globalThis.workers = () => [begun, searches];
  });
  await page.reload();
  await ready(page);
  await chosen(page).setInputFiles(GULL_HARBOUR);
  await hand(page).waitFor();
  await remedies(page).scrollIntoViewIfNeeded();
  await page.waitForFunction(() => !document.querySelector("[data-cures=work]").hidden, undefined, LONG);
  // The first search is given up for the year of another length.
  await page.getByLabel("Length of leg 2").first().fill("4.5");
  await page.waitForFunction(() => globalThis.workers()[0] === 2, undefined, LONG);
  await sought(page);
  await page.waitForFunction(() => !document.querySelector("[data-cures=told]").classList.contains("dw-stale"), undefined, LONG);
  assert.equal(await remedies(page).getByText("no year is known").count(), 0);
});
