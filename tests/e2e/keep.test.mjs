// What is on the desk is there after a reload or a crash, undo too; a browser that keeps nothing says so.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { AXE, dewrun } from "./harness.mjs";

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
  // Whoever leaves the field begins a step of its own, so the second edit is one whenever the page dies.
  await flow(page).blur();
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

/** What a browser does that lets no page keep anything. */
function refuseAll() {
  const refuse = () => {
    throw new DOMException("no room", "QuotaExceededError");
  };
  Storage.prototype.setItem = refuse;
  Storage.prototype.getItem = refuse;
  IDBFactory.prototype.open = refuse;
}

/** Case F03 of the solved cases: a private window. */
test("a browser that keeps nothing says so, and the page works", async () => {
  const page = await stage.openAt(360, 800);
  await page.context().addInitScript(refuseAll);
  await page.goto(stage.address + EXAMPLE);
  await page.reload();
  await page.getByText("This browser keeps nothing: save the file before you leave.").waitFor();
  await flow(page).fill("12");
  await assertValue(flow(page), "12");
  await page.getByRole("region", { name: "Answer" }).getByText(/g\/h/).first().waitFor();
  await page.context().close();
});

test("a quick store that is full costs nothing as long as there is another", async () => {
  const page = await stage.openAt(1440, 1000);
  await page.context().addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
  });
  await page.reload();
  await page.getByRole("button", { name: "Draw this route" }).click();
  await flow(page).fill("29");
  await settled(page);
  const next = await again(page);
  await assertValue(flow(next), "29");
  assert.equal(await next.getByText("This browser keeps nothing").count(), 0);
  await page.context().close();
});

/** Puts a text under a name of the database. */
function put([name, text]) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("dewrun", 1);
    request.onerror = reject;
    request.onsuccess = () => {
      const write = request.result.transaction("projects", "readwrite");
      write.objectStore("projects").put(text, name);
      write.oncomplete = resolve;
    };
  });
}

test("what can't be opened is set aside, can be saved and costs nothing", async () => {
  const page = await own("35");
  await settled(page);
  await page.evaluate(put, ["dewrun:1", `dewrun-desk 1 9 9\n${"x".repeat(5.1 * 1024 * 1024)}`]);
  await page.evaluate(() => {
    localStorage.setItem("dewrun:2", "dewrun-desk 1 9 9\n2 9 0 #project {torn");
    localStorage.setItem("dewrun:3", "dewrun-desk 7 9 9\nwho knows");
  });
  for (const visit of [1, 2]) {
    await page.reload();
    await assertValue(flow(page), "35");
    const notes = page.getByText(/is set aside/);
    await notes.nth(2).waitFor();
    const told = (await notes.allInnerTexts()).join(" ");
    assert.match(told, /larger than 5 MB/, `visit ${visit}`);
    assert.match(told, /not JSON/);
    assert.match(told, /newer Dewrun/);
  }
  const note = page.getByText(/newer Dewrun/);
  const download = page.waitForEvent("download");
  await note.getByRole("button", { name: "Save it as a file" }).click();
  const chunks = [];
  for await (const chunk of await (await download).createReadStream()) chunks.push(chunk);
  assert.equal(Buffer.concat(chunks).toString(), "dewrun-desk 7 9 9\nwho knows");
  await note.getByRole("button", { name: "Delete it" }).click();
  await settled(page);
  await page.reload();
  await page.getByText(/is set aside/).nth(1).waitFor();
  assert.equal(await page.getByText(/newer Dewrun/).count(), 0);
  await page.context().close();
});

test("two windows on one project keep both", async () => {
  const one = await own("21");
  await settled(one);
  const two = await again(one);
  await assertValue(flow(two), "21");
  await flow(two).fill("22");
  await flow(one).fill("23");
  await one.getByText(/Both are kept/).waitFor();
  await settled(one);
  await one.close();
  await two.close();
  const next = await again({ context: () => one.context() });
  await assertValue(flow(next), "23");
  await next.getByRole("button", { name: "New", exact: true }).click();
  const rows = next.getByRole("region", { name: "Projects" }).getByRole("listitem");
  await rows.nth(1).waitFor();
  assert.deepEqual(
    (await rows.locator("button:first-child").allInnerTexts()).sort(),
    ["New project", "New project (2)"],
  );
  await rows.getByRole("button", { name: "New project", exact: true }).click();
  await assertValue(flow(next), "22");
  await one.context().close();
});

test("projects are gone on with, renamed, deleted and brought back", async () => {
  const page = await own("19");
  await page.getByText("Runs and variants", { exact: true }).click();
  await page.getByLabel("Name of the project").fill("Halle 3 „Süd“");
  await page.getByRole("button", { name: "New", exact: true }).click();
  const list = page.getByRole("region", { name: "Projects" });
  await list.getByRole("button", { name: "Halle 3 „Süd“", exact: true }).waitFor();
  for (const scheme of ["light", "dark"]) {
    for (const width of [360, 1440]) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height: 900 });
      assert.deepEqual(await faults(page), [], `${width} ${scheme}`);
    }
  }
  await list.getByRole("button", { name: "Delete Halle 3 „Süd“" }).click();
  await list.waitFor({ state: "detached" });
  await settled(page);
  await page.reload();
  await page.getByRole("button", { name: "Draw this route" }).waitFor();
  assert.equal(await list.count(), 0, "it stays deleted");
  await undo(page).click();
  await list.getByRole("button", { name: "Halle 3 „Süd“", exact: true }).click();
  await assertValue(flow(page), "19");
  await page.context().close();
});

/** What axe finds. */
async function faults(page) {
  await page.evaluate(await readFile(AXE, "utf8"));
  const { violations } = await page.evaluate(() => window.axe.run());
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 90))}`);
}
