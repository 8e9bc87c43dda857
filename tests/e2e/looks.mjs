// What every part of the page must keep at any size: nothing that axe finds, nothing that scrolls sideways, nothing too small to touch.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { AXE } from "./harness.mjs";

/** Fails with what axe finds, on the page or within some part of it: the whole page in all its states is the matter of one file of tests. */
export async function accessible(page, what, within) {
  await page.evaluate(await readFile(AXE, "utf8"));
  const found = await page.evaluate((within) => globalThis.axe.run(within ?? document), within);
  const faults = found.violations.map((fault) => `${fault.id}: ${fault.nodes.map((node) => node.target).join(", ")}`);
  assert.deepEqual(faults, [], what);
}

/** Fails with the elements that reach past the window and are not in a box that scrolls by itself. */
export async function fits(page, what) {
  const found = await page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const scrolls = (element) => element.closest(".dw-scroll, .dw-sections, .dw-pan--moves, svg, .dw-spoken");
    const found = [...document.querySelectorAll("main *")].filter((element) => {
      const box = element.getBoundingClientRect();
      return box.width > 0 && box.right > wide + 1 && !scrolls(element);
    });
    const page = document.documentElement.scrollWidth > wide ? ["the page itself"] : [];
    return page.concat(found.map((element) => element.className || element.tagName));
  });
  assert.deepEqual(found, [], what);
}

/** Fails with the controls within some part of the page that are too small to touch: lower than `least` CSS px. */
export async function touchable(page, what, within = "body", least = 44) {
  const small = await page.evaluate(([within, least]) => {
    // What stands within a line of text is exempt (WCAG 2.2, 2.5.8).
    const inLine = ".dw-answer__sentence, .dw-answer__rests, .dw-answer__beside, .dw-answer__more p, .dw-airflow-section p, .dw-first__told, .dw-year__sentence";
    const all = [...document.querySelectorAll("button, a, input, select, summary")];
    const controls = all.filter((control) => control.closest(within) && !control.closest(inLine));
    const small = controls.filter((control) => {
      // Around a control in a sentence the line may be lower than the control itself.
      const heights = [control, control.closest("label, span") ?? control].map((one) => one.getBoundingClientRect().height);
      return Math.max(...heights) > 0 && Math.max(...heights) < least;
    });
    return small.map((control) => `${control.innerText || control.id} ${control.getBoundingClientRect().height}`);
  }, [within, least]);
  assert.deepEqual(small, [], what);
}

/** Unfolds what the head of the page folds away on a phone. */
export async function unfold(page) {
  const more = page.getByRole("button", { name: "More", exact: true });
  if ((await more.isVisible()) && (await more.getAttribute("aria-expanded")) === "false") await more.click();
}

/** The project file that the page saves. */
export async function saved(page) {
  await unfold(page);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save file" }).click(),
  ]);
  const text = await readFile(await download.path(), "utf8");
  return { name: download.suggestedFilename(), text, project: JSON.parse(text) };
}
