// Pictures the page, to look at: `node shots.mjs sections FOLDER` every section in every way it may look,
// `node shots.mjs readme FOLDER` what the README shows.
import assert from "node:assert/strict";
import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { launch, serve, shows } from "./harness.mjs";

const [what, folder] = process.argv.slice(2);
assert.ok(folder && ["sections", "readme"].includes(what), "say what to picture and where to");

/** The worked examples, and the page as a stranger finds it. */
const PAGES = ["", "make-up-air", "pool-hall-exhaust", "chilled-supply"];
const WIDTHS = [360, 800, 1440];
const SCHEMES = ["light", "dark"];

const server = await serve();
const browser = await launch();
try {
  await mkdir(folder, { recursive: true });
  await (what === "readme" ? readme() : sections());
} finally {
  await browser.close();
  await server.stop();
}

async function open(example, width, colorScheme) {
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme, reducedMotion: "reduce" });
  const page = await context.newPage();
  await page.goto(server.address + (example && `#example=${example}`));
  await shows(page);
  if (example) await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  // What is drawn after the first paint follows within a frame or two.
  await page.waitForTimeout(300);
  return page;
}

/** Every section of every page at every width in both themes, the exhaust tube, a wrong entry, and the printed sheet. */
async function sections() {
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  let count = 0;
  for (const example of PAGES) {
    for (const width of WIDTHS) {
      for (const scheme of SCHEMES) {
        const name = (part) => join(folder, `${example || "empty"}-${width}-${scheme}-${part}.png`);
        const page = await open(example, width, scheme);
        await page.screenshot({ path: name("whole"), fullPage: true });
        for (const section of await page.getByRole("region").or(page.getByRole("contentinfo")).all()) {
          const box = await section.boundingBox();
          // A region within a section is pictured with it.
          const inner = await section.evaluate((element) => element.parentElement.closest("section") !== null);
          if (inner || !box || box.height < 2) continue;
          const part = await section.evaluate((element) => element.getAttribute("aria-label") ?? document.getElementById(element.getAttribute("aria-labelledby"))?.innerText ?? element.tagName);
          await section.screenshot({ path: name(part.toLowerCase().replaceAll(/\W+/g, "-")) });
          count += 1;
        }
        if (example) count += await states(page, name);
        await page.context().close();
      }
    }
    if (example) await print(example);
  }
  console.log(`${count} sections and ${PAGES.length - 1} printed sheets in ${folder}`);
}

/** The exhaust tube, and what an entry that can't be used does to the page. */
async function states(page, name) {
  const route = page.getByRole("region", { name: "Route", exact: true });
  await page.getByRole("button", { name: "exhaust tube" }).click();
  await route.screenshot({ path: name("route-exhaust") });
  await page.getByRole("button", { name: "intake tube" }).click();
  await page.getByRole("textbox", { name: /^Flow/ }).fill("30;5");
  // From the top, where the answer does not stay over what is scrolled.
  await page.evaluate(() => scrollTo(0, 0));
  await page.waitForTimeout(100);
  await page.screenshot({ path: name("wrong-entry"), fullPage: true });
  return 2;
}

/** From dark, as case F07 asks. */
async function print(example) {
  const page = await open(example, 1440, "dark");
  await page.pdf({ path: join(folder, `${example}.pdf`), preferCSSPageSize: true });
  await page.context().close();
}

/** The make-up air unit down to its profile, light. */
async function readme() {
  const page = await open("make-up-air", 1440, "light");
  const route = await page.getByRole("region", { name: "Route", exact: true }).boundingBox();
  const clip = { x: 0, y: 0, width: 1440, height: Math.floor(route.y + route.height) };
  const path = join(folder, "make-up-air.png");
  await page.screenshot({ path, clip, fullPage: true });
  console.log(path);
}
