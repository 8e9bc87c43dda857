// The page opens, under its own name, and nothing goes wrong while it does.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dewrun, shows } from "./harness.mjs";

const site = dewrun();

test("the page opens under its name", async () => {
  const page = await site.openAt(1440, 900);
  assert.equal(await page.title(), "Dewrun");
  await shows(page);
});

test("files come with the types a browser needs", async () => {
  const page = await site.openAt(1440, 900);
  const types = new Map();
  page.on("response", (response) => {
    const ending = new URL(response.url()).pathname.split(".").pop();
    types.set(ending, response.headers()["content-type"]);
  });
  await page.reload({ waitUntil: "networkidle" });
  assert.equal(types.get("wasm"), "application/wasm");
  assert.match(types.get("css"), /^text\/css/);
  assert.match(types.get("js"), /^text\/javascript/);
});

test("a browser without WebAssembly is told so in words", async () => {
  const page = await site.openAt(360, 740);
  await page.addInitScript(() => delete globalThis.WebAssembly);
  await page.reload();
  const words = await page.getByRole("alert").textContent();
  assert.match(words, /can't run the page's WebAssembly module/);
});
