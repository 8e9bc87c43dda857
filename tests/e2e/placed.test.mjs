// The page is a plain folder: it works below any path, and once seen it works without its server.
import assert from "node:assert/strict";
import { cp, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { DIST, launch, serve, shows, watch } from "./harness.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser?.close());

test("the page works below any path", async () => {
  const folder = await mkdtemp(join(tmpdir(), "dewrun-"));
  await cp(DIST, folder, { recursive: true });
  await cp(DIST, join(folder, "some", "where"), { recursive: true });
  const server = await serve(folder);
  const offences = [];
  try {
    const page = await browser.newPage();
    watch(page, server.address, offences);
    await page.goto(`${server.address}some/where/`);
    await shows(page);
    assert.deepEqual(offences, []);
  } finally {
    await server.stop();
    await rm(folder, { recursive: true });
  }
});

test("a page once seen reloads without its server", async () => {
  const server = await serve();
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(server.address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await server.stop();
  for (const end of ["", "?x=1", "#v1=abc"]) {
    await page.goto(server.address + end);
    await page.reload();
    await shows(page);
  }
  await context.close();
});
