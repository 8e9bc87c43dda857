// The page without a network, installed, and when a newer one is there.
import assert from "node:assert/strict";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { after, before, beforeEach, test } from "node:test";
import { deflateRawSync } from "node:zlib";
import { DIST, ROOT, answered, launch, shows, watch } from "./harness.mjs";
import { accessible, saved, touchable, unfold } from "./looks.mjs";
import { buildOf, nextBuild, serveFolder, watchEverything } from "./static.mjs";

const PATH = "/some/where/deep/";
const NEWS = "A newer version is ready.";
/** The browser lets the old worker finish what it is at. */
const LONG = { timeout: 120_000 };

const state = { offences: [] };

before(async () => {
  state.browser = await launch();
  state.build = await buildOf(DIST);
});

beforeEach(async () => {
  await state.site?.stop();
  state.site = await serveFolder(DIST, PATH);
});

after(async () => {
  await state.browser.close();
  await state.site.stop();
  assert.deepEqual(state.offences, [], "console errors, exceptions and requests to other origins");
});

/** A visit on a device of its own. */
async function visitor(width = 1440) {
  const context = await state.browser.newContext({ viewport: { width, height: 900 } });
  const open = async (rest = "") => {
    const page = await context.newPage();
    watch(page, state.site.address, state.offences);
    await page.goto(state.site.address + rest);
    await shows(page);
    return page;
  };
  return { context, open };
}

/** Waits until the page can be had without a network. */
const kept = (page) => page.evaluate(() => navigator.serviceWorker.ready.then((kept) => kept.active.state));

/** The builds whose files the page has loaded. */
const builds = (page) =>
  page.evaluate((path) => {
    const loaded = performance.getEntriesByType("resource").map((entry) => new URL(entry.name).pathname);
    return [...new Set(loaded.map((name) => name.slice(path.length).split("/")[0]).filter((name) => name !== "sw.js"))];
  }, PATH);

/** A link that carries an example, as another program may make it. */
async function linkTo(example) {
  const text = await readFile(`${ROOT}demo/${example}.json`);
  return `#v1=${deflateRawSync(text).toString("base64url")}`;
}

/** What an open run is answered with, its water and air included: all of it is there without a network. */
async function answer(page) {
  await answered(page);
  return page.locator(".dw-answer__sentence").first().innerText();
}

test("without a network it opens from any of its addresses and answers", async () => {
  const { open } = await visitor();
  const first = await open("#example=make-up-air");
  await kept(first);
  const said = await answer(first);
  await state.site.stop();
  try {
    await first.reload();
    await shows(first);
    assert.equal(await answer(first), said, "reloaded");
    const other = await open("?from=card#example=pool-hall-exhaust");
    assert.match(await answer(other), /frost/i, "opened anew, with a query");
    const page = await open("index.html#example=make-up-air");
    await page.getByLabel("Length of leg 1").first().fill("4");
    await page.waitForFunction((said) => document.querySelector(".dw-answer__sentence").innerText !== said, said);
    assert.equal((await saved(page)).project.runs[0].intake.legs[0].length_m.value, 4, "and it is worked on");
  } finally {
    await state.site.start();
  }
});

test("a link opens without a network", async () => {
  const { open } = await visitor();
  const first = await open("#example=chilled-supply");
  await first.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await kept(first);
  await first.getByRole("button", { name: "Copy link" }).click();
  await first.getByText("Link copied.").waitFor();
  const link = await first.evaluate(() => navigator.clipboard.readText());
  await state.site.stop();
  try {
    const page = await open(link.slice(state.site.address.length));
    await page.getByRole("heading", { name: /Chilled supply/ }).waitFor();
  } finally {
    await state.site.start();
  }
});

test("it asks its own site for its own files, once, and nobody for anything else", async () => {
  // Whatever asks for something, page, service worker or worker, asks here.
  const gate = await watchEverything();
  const browser = await launch([`--proxy-server=${gate.address}`, "--proxy-bypass-list=<-loopback>"]);
  try {
    const page = await browser.newPage();
    await page.goto(`${state.site.address}#example=make-up-air`);
    await shows(page);
    await kept(page);
    // A browser looks for news of a service worker on its own, even later.
    const isKeeping = (url) => url === `${state.site.address}sw.js`;
    const own = (url) => url === state.site.address || url.startsWith(`${state.site.address}${state.build}/`);
    assert.ok(gate.asked.some(own), "what is asked is seen");
    assert.deepEqual(gate.asked.filter((url) => !own(url) && !isKeeping(url)), [], "its own files alone");
    gate.asked.length = 0;
    await page.getByLabel("Length of leg 1").first().fill("4");
    await page.getByRole("button", { name: "in-lb units" }).click();
    await saved(page);
    await page.getByRole("button", { name: "Copy link" }).click();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.goto(`${state.site.address}#example=pool-hall-exhaust`);
    await page.waitForTimeout(500);
    assert.deepEqual(gate.asked.filter((url) => !isKeeping(url)), [], "work asks for nothing");
  } finally {
    await browser.close();
    await gate.stop();
  }
});

test("it can be installed", async () => {
  const { open } = await visitor();
  const page = await open();
  await kept(page);
  const cdp = await page.context().newCDPSession(page);
  const manifest = await cdp.send("Page.getAppManifest");
  assert.deepEqual(manifest.errors, [], "the browser reads the manifest");
  const { icons, start_url, scope } = JSON.parse(manifest.data);
  for (const address of [start_url, scope]) {
    assert.equal(new URL(address, manifest.url).href, state.site.address, "it starts where the page is");
  }
  for (const { src, sizes } of icons.filter((icon) => icon.src.endsWith(".png"))) {
    const file = await readFile(join(DIST, state.build, src));
    assert.equal(`${file.readUInt32BE(16)}x${file.readUInt32BE(20)}`, sizes, src);
  }
  assert.deepEqual(new Set(icons.map((icon) => icon.purpose)), new Set(["any", "maskable"]));
  const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
  // Each test has a window that keeps nothing.
  const errors = installabilityErrors.map((error) => error.errorId).filter((error) => error !== "in-incognito");
  assert.deepEqual(errors, [], "nothing is missing");
});

test("a newer build waits until it is asked for, and never mixes with the old", async () => {
  const next = await nextBuild(DIST, "The next");
  try {
    const { open } = await visitor();
    const page = await open(await linkTo("make-up-air"));
    await kept(page);
    assert.deepEqual(await builds(page), [state.build]);
    await page.getByLabel("Length of leg 1").first().fill("4.4");
    const worked = await saved(page);
    assert.equal(worked.project.runs[0].intake.legs[0].length_m.value, 4.4, "something of one's own is open");
    assert.equal(await page.getByText(NEWS).count(), 0, "the first build is no news");
    // The old files are gone from the server, as where a folder is replaced.
    state.site.folder = next.folder;
    await page.reload();
    await shows(page);
    await page.getByText(NEWS).waitFor();
    assert.equal(await page.title(), "Dewrun", "a reload keeps the old page");
    assert.deepEqual(await builds(page), [state.build], "all of it");
    await accessible(page, "the news");
    await page.setViewportSize({ width: 360, height: 740 });
    await accessible(page, "the news on a phone");
    await touchable(page, "the news on a phone", "#news");
    await page.setViewportSize({ width: 1440, height: 900 });
    const other = await open("#example=pool-hall-exhaust");
    assert.deepEqual(await builds(other), [state.build], "another tab is on the old page too");
    await Promise.all([page.waitForEvent("load", LONG), page.getByRole("button", { name: "Switch to it" }).click()]);
    await shows(page);
    assert.equal(await page.title(), "The next", "the new page");
    assert.deepEqual(await builds(page), [next.build], "all of it");
    await page.getByRole("heading", { name: /Make-up air unit/ }).waitFor();
    assert.equal((await saved(page)).text, worked.text, "what was open is open");
    await page.getByRole("button", { name: "Undo" }).click();
    assert.notEqual((await saved(page)).text, worked.text, "with all that can be undone");
    await page.getByRole("button", { name: "Redo" }).click();
    assert.equal(await page.getByText(NEWS).count(), 0, "the news is taken");
    await unfold(other);
    await other.getByRole("button", { name: "in-lb units" }).click();
    await other.getByRole("button", { name: "Copy link" }).waitFor();
    await other.reload();
    await shows(other);
    assert.deepEqual(await builds(other), [next.build], "the other tab follows when it is loaded again");
    await state.site.stop();
    await page.reload();
    await shows(page);
    assert.deepEqual(await builds(page), [next.build], "without a network it is the new one");
    assert.equal((await saved(page)).text, worked.text, "and the project is there");
    await state.site.start();
  } finally {
    await next.remove();
  }
});

test("a build that is only half there changes nothing", async () => {
  const next = await nextBuild(DIST, "The next");
  try {
    await rm(join(next.folder, next.build, "styles.css"));
    const { open } = await visitor();
    const page = await open("#example=make-up-air");
    await kept(page);
    state.site.folder = next.folder;
    await page.reload();
    await shows(page);
    await page.waitForFunction(() => navigator.serviceWorker.getRegistration().then((kept) => !kept.installing));
    assert.equal(await page.getByText(NEWS).count(), 0, "it is not offered");
    await page.reload();
    await shows(page);
    assert.deepEqual(await builds(page), [state.build], "the old one goes on");
  } finally {
    await next.remove();
  }
});
