// Long work is done by a worker; where there is none the page does it, and nobody sees a difference.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun } from "./harness.mjs";

const site = dewrun();

/** What would stay dry, as it stands in its table. */
async function limits(page) {
  await page.goto(`${site.address}#example=make-up-air`);
  const table = page.getByRole("table", { name: /What would stay dry/ });
  await table.getByRole("row").nth(2).waitFor();
  return table.innerText();
}

test("a worker finds what would stay dry, and without one the page finds the same", async () => {
  const page = await site.openAt(1440, 900, "light");
  const worked = page.waitForEvent("worker");
  const byWorker = await limits(page);
  assert.match((await worked).url(), /worker\.js$/, "the page has a worker of its own");
  await page.close();

  const alone = await site.openAt(1440, 900, "light");
  await alone.addInitScript(() => {
    window.Worker = class {
      constructor() {
        throw new Error("no workers here");
      }
    };
  });
  await alone.reload();
  assert.equal(await limits(alone), byWorker, "the same limits");
  assert.equal(alone.workers().length, 0, "no worker is there");
});

test("a worker that can't start leaves the work to the page", async () => {
  const page = await site.openAt(1440, 900, "light");
  await page.addInitScript(() => {
    const Real = window.Worker;
    // An address at which there is no script.
    window.Worker = class extends Real {
      constructor(address, options) {
        super(new URL("fonts/OFL.txt", address), options);
      }
    };
  });
  await page.reload();
  assert.match(await limits(page), /Most humid duct air/, "found all the same");
});
