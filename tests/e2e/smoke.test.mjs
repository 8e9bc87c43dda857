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

/** Case F12: a browser whose content policy refuses WebAssembly, as older ones do that do not know the keyword for it. */
test("F12: a browser that refuses to start WebAssembly is told so in words", async () => {
  const page = await site.openAt(360, 740);
  await page.addInitScript(() => {
    const refuse = () => Promise.reject(new WebAssembly.CompileError("refused by the content policy"));
    Object.assign(WebAssembly, { compile: refuse, compileStreaming: refuse, instantiate: refuse, instantiateStreaming: refuse });
    WebAssembly.Module = function refused() {
      throw new WebAssembly.CompileError("refused by the content policy");
    };
  });
  await page.reload();
  const alert = page.getByRole("alert").filter({ hasText: "could not start" });
  assert.match(await alert.innerText(), /this browser can't run the page's WebAssembly module\. A current/);
  assert.match(await page.locator("main").innerText(), /What the browser said: .*refused by the content policy/);
  assert.equal(await page.getByRole("textbox").count(), 0, "and nothing half made beside it");
});

test("a part of the page that does not arrive is told apart from that", async () => {
  const context = await (await site.openAt(360, 740)).context().browser().newContext({ serviceWorkers: "block" });
  const page = await context.newPage();
  await page.route("**/dewrun-web_bg.wasm", (route) => route.fulfill({ status: 404, body: "" }));
  await page.goto(site.address);
  const alert = page.getByRole("alert").filter({ hasText: "could not start" });
  assert.match(await alert.innerText(), /a part of the page did not arrive/);
  assert.match(await page.locator("main").innerText(), /_bg\.wasm: 404/);
  await context.close();
});
