// Serves the built page, opens it in Chromium and watches what it must never do:
// write an error to the console, throw, or ask another origin for anything.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { after, afterEach, before } from "node:test";
import { chromium } from "playwright-core";

/** The root of the project, with a slash at its end. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const BROWSERS = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const ARGUMENTS =
  "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run " +
  "--disable-background-networking --disable-component-update --disable-sync";

/** The page as `cargo xtask build` left it. */
export const DIST = ROOT + "dist";

/** The script of axe, for `page.evaluate`: the page's content policy refuses added script elements. */
export const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

/**
 * Sets up the page for the tests of one file and takes everything down after them.
 * Returns `openAt(width, height, scheme)`, which opens a fresh page without stored data until the end of the test,
 * and `address`, the page's own.
 */
export function dewrun() {
  const state = { offences: [], contexts: [] };
  before(async () => {
    state.server = await serve();
    state.browser = await launch();
  });
  // A page that stays goes on with its years and slows down the next.
  afterEach(async () => {
    await Promise.all(state.contexts.splice(0).map((context) => context.close()));
  });
  after(async () => {
    await state.browser?.close();
    await state.server?.stop();
    assert.deepEqual(state.offences, [], "console errors, exceptions and requests to other origins");
  });
  return {
    get address() {
      return state.server.address;
    },
    /** Opens the page at a size in CSS pixels, `scheme` being "light" or "dark"; `hash` names what it opens on. */
    async openAt(width, height, scheme = "light", hash = "") {
      const context = await state.browser.newContext({
        viewport: { width, height },
        colorScheme: scheme,
        reducedMotion: "reduce",
      });
      state.contexts.push(context);
      const page = await context.newPage();
      watch(page, state.server.address, state.offences);
      await page.goto(state.server.address + hash);
      return page;
    },
    /** Takes the offences seen so far, for a test that causes one on purpose. */
    takeOffences() {
      return state.offences.splice(0);
    },
  };
}

/** Waits until the page shows something; throws when it stays empty. */
export async function shows(page) {
  const text = () => document.querySelector("main")?.innerText.trim();
  await page.waitForFunction(text, undefined, { timeout: 10_000 });
}

/** Waits until the answer to the open run tells of its water and air too. */
export async function answered(page) {
  await page.getByRole("region", { name: "Answer" }).getByText(/^Airflow, limits/).waitFor();
  await sure(page);
}

/** Waits until all is found that the answer to the open run tells: how sure it is, on what it rests, what would cure it. */
export async function sure(page) {
  await page.locator("[aria-label=Answer][aria-busy=false]").waitFor();
}

/** Starts Chromium, with more arguments; a test that needs one of its own closes it itself. */
export function launch(more = []) {
  const executablePath = process.env.CHROMIUM ?? BROWSERS.find((path) => existsSync(path));
  assert.ok(executablePath, "no Chromium found: name it in CHROMIUM");
  const args = (process.env.CHROMIUM_ARGUMENTS ?? ARGUMENTS).split(" ");
  return chromium.launch({ executablePath, args: args.concat(more) });
}

/** Serves the page built last, or another folder, on a free port. */
export async function serve(folder) {
  const program = process.env.DEWRUN_XTASK ?? ROOT + "target/debug/xtask";
  const args = ["serve", "--no-build", "--no-open", "--port", "0"];
  if (folder) args.push("--folder", folder);
  const child = spawn(program, args, { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
  const address = await firstAddress(child);
  const ended = new Promise((resolve) => child.once("exit", resolve));
  const stop = () => {
    child.kill();
    return ended;
  };
  return { address, stop };
}

function firstAddress(child) {
  return new Promise((resolve, reject) => {
    let seen = "";
    child.stdout.setEncoding("utf8");
    child.stdout.on("data", (text) => {
      seen += text;
      const address = /^Dewrun: (\S+)$/m.exec(seen);
      if (address) resolve(address[1]);
    });
    child.on("error", reject);
    child.on("exit", (code) => reject(new Error(`the server ended with status ${code}: ${seen}`)));
  });
}

/** Notes down everything a page must not do. */
export function watch(page, address, offences) {
  const own = new URL(address).origin;
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) offences.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => offences.push(`exception: ${error}`));
  page.on("request", (request) => {
    const url = new URL(request.url());
    const stays = url.origin === own || ["data:", "blob:"].includes(url.protocol);
    if (!stays) offences.push(`request: ${request.url()}`);
  });
}
