// Files: what is saved can be opened again to the last digit, and nothing given to the page costs the open project.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";
import { saved } from "./looks.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply"];

const site = dewrun();

async function open(hash) {
  const page = await site.openAt(1440, 900, "light", hash);
  await shows(page);
  return page;
}

const heading = (page, name) => page.getByRole("heading", { name });

test("a file that is saved is the one that was opened", async () => {
  for (const example of EXAMPLES) {
    const page = await open(`#example=${example}`);
    const demo = await readFile(`${ROOT}demo/${example}.json`, "utf8");
    const file = await saved(page);
    assert.equal(file.text, demo, example);
    await page.close();
  }
});

test("a file takes the name of its project", async () => {
  const page = await open("#example=make-up-air");
  const { name } = await saved(page);
  assert.equal(name, "humid-make-up-air-detector-behind-a-cool-corridor.json");
});

test("units there and back leave the file as it was", async () => {
  const page = await open("#example=make-up-air");
  const before = await saved(page);
  await page.getByRole("button", { name: "in-lb units" }).click();
  const between = await saved(page);
  await page.getByRole("button", { name: "SI units" }).click();
  const after = await saved(page);
  assert.equal(between.text, before.text);
  assert.equal(after.text, before.text);
});

test("a file is opened where it is dropped, and a project where it is pasted", async () => {
  const page = await open("");
  await give(page, "drop", await readFile(`${ROOT}demo/chilled-supply.json`, "utf8"));
  await heading(page, /Chilled supply/).waitFor();
  await give(page, "paste", await readFile(`${ROOT}demo/pool-hall-exhaust.json`, "utf8"));
  await heading(page, /Pool-hall exhaust/).waitFor();
  await give(page, "drop", "{ torn");
  await page.getByText("dropped.json was not taken in. The open project is unchanged.").waitFor();
  await heading(page, /Pool-hall exhaust/).waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await heading(page, /Chilled supply/).waitFor();
});

test("a newer file says so and costs nothing", async () => {
  const page = await open("#example=make-up-air");
  const demo = JSON.parse(await readFile(`${ROOT}demo/chilled-supply.json`, "utf8"));
  await give(page, "drop", JSON.stringify({ ...demo, version: 2 }));
  await page.getByText("dropped.json was not taken in. The open project is unchanged.").waitFor();
  assert.match(await page.getByRole("alert").innerText(), /version 2/);
  await heading(page, /Humid make-up air/).waitFor();
});

/** Gives the page a text as a drop of a file or from the clipboard. */
function give(page, kind, text) {
  return page.evaluate(
    ({ kind, text }) => {
      const data = new DataTransfer();
      if (kind === "drop") data.items.add(new File([text], "dropped.json", { type: "application/json" }));
      else data.setData("text/plain", text);
      const settings = { bubbles: true, cancelable: true };
      const event =
        kind === "drop"
          ? new DragEvent("drop", { ...settings, dataTransfer: data })
          : new ClipboardEvent("paste", { ...settings, clipboardData: data });
      document.body.dispatchEvent(event);
    },
    { kind, text },
  );
}
