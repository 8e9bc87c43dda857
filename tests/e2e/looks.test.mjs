// How the page looks where it is looked at in another way: on paper, enlarged, in forced colours, without motion; and that all that is written can be read.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { answered, dewrun, launch, shows } from "./harness.mjs";
import { contrasts, edges } from "./contrast.mjs";

const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply"];
/** A sheet of A4 at 72 points an inch, and the width of what is printed on it in CSS px: 190 mm. */
const A4 = [595, 842];
const PAPER_PX = 718;

const site = dewrun();

async function open(width, height, scheme, example) {
  const page = await site.openAt(width, height, scheme, `#example=${example}`);
  await shows(page);
  await answered(page);
  await page.getByRole("img", { name: /^Elevation/ }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  return page;
}

/** Lays the page out as on paper, as the browser does when it prints. */
async function onPaper(page) {
  await page.setViewportSize({ width: PAPER_PX, height: 1000 });
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.waitForFunction(() => document.querySelector("svg[role=img]")?.getBoundingClientRect().width < 720);
}

test("F07: printed from dark it is black on one white sheet, with its cautions and without controls", async () => {
  for (const example of EXAMPLES) {
    const page = await open(1440, 900, "dark", example);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const sheets = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    assert.equal(sheets.length, 1, `${example} fits one sheet`);
    const size = sheets[0].slice(1).map((points) => Math.round(Number(points)));
    assert.deepEqual(size, A4, "of A4");
    await onPaper(page);
    const ground = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    assert.equal(ground, "rgb(255, 255, 255)", "background=white");
    const faults = await contrasts(page, decoder);
    assert.deepEqual(faults, [], `${example}: text_contrast_min=4.5`);
    assert.deepEqual(await pressable(page), [], `${example}: nothing that can only be pressed`);
    await page.getByText("The detector\u2019s listing and instructions, the local code and the authority having jurisdiction come first").waitFor();
    const over = await page.evaluate((width) => document.documentElement.scrollWidth - width, PAPER_PX);
    assert.ok(over <= 0, `${example} is ${over} px too wide for its sheet, so that the browser would shrink its text`);
    await page.close();
  }
});

/** Buttons and links that show. */
function pressable(page) {
  return page.evaluate(() => {
    const shown = (control) => control.getBoundingClientRect().height > 0 && getComputedStyle(control).visibility === "visible";
    const controls = [...document.querySelectorAll("button, a, summary, [role=slider]")].filter(shown);
    // The tube that is drawn is named by the word that is chosen, and a figure that opens on the screen is a figure still.
    const told = (control) => control.getAttribute("aria-pressed") === "true" || control.hasAttribute("data-figure");
    return controls.filter((control) => !told(control)).map((control) => control.innerText);
  });
}

test("F07: without colour the curves on paper still differ, by dashes or weight", async () => {
  const page = await open(1440, 900, "dark", "make-up-air");
  await onPaper(page);
  const looks = await page.getByRole("img", { name: /^Air, inner wall/ }).evaluate((svg) => {
    const look = (path) => {
      const style = getComputedStyle(path);
      return `${style.strokeDasharray} ${style.strokeWidth}`;
    };
    return ["dw-c-air", "dw-c-dew", "dw-c-wall"].map((name) => look(svg.querySelector(`.${name}`)));
  });
  assert.equal(new Set(looks).size, 3, `air, dew point and inner wall: ${looks.join(" | ")}`);
});

test("nothing on paper is written smaller than 7.5 pt", async () => {
  const page = await open(1440, 900, "dark", "pool-hall-exhaust");
  await onPaper(page);
  const small = await page.evaluate(() => {
    const texts = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
    const small = new Set();
    while (texts.nextNode()) {
      const element = texts.currentNode.parentElement;
      const shown = texts.currentNode.data.trim() && element.getBoundingClientRect().height > 1;
      const points = Number.parseFloat(getComputedStyle(element).fontSize) * 0.75;
      if (shown && points < 7.49) small.add(`${texts.currentNode.data.trim()}: ${points} pt`);
    }
    return [...small];
  });
  assert.deepEqual(small, []);
});

for (const scheme of ["light", "dark"]) {
  for (const width of [360, 1440]) {
    test(`every text is read against its ground at ${width} px, ${scheme}`, async () => {
      for (const example of EXAMPLES) {
        const page = await open(width, 900, scheme, example);
        assert.deepEqual(await contrasts(page, decoder), [], example);
        assert.deepEqual(await edges(page), [], `${example}: edges of controls`);
        await page.getByLabel("Dew point of the duct air").or(page.getByLabel("Relative humidity of the duct air")).first().fill("x");
        assert.deepEqual(await contrasts(page, decoder), [], `${example} with an entry that can't be used`);
        await page.close();
      }
    });
  }
}

test("nothing is cut off or scrolls sideways from 320 to 2560 px, nor at 200 %", async () => {
  // 200 % zoom of a window of 1280 px is a window of 640 px with twice the dots.
  for (const example of EXAMPLES) {
    const page = await open(320, 740, "light", example);
    for (const [width, height] of [[320, 740], [360, 740], [640, 400], [800, 600], [1440, 900], [2560, 1400]]) {
      await page.setViewportSize({ width, height });
      await settled(page);
      for (const tube of ["intake tube", "exhaust tube"]) {
        await page.getByRole("button", { name: tube }).click();
        const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(over <= 0, `${example}, ${tube}, ${width} px: ${over} px too wide`);
        assert.deepEqual(await covered(page), [], `${example}, ${tube}, ${width} px`);
      }
    }
    await page.close();
  }
});

/** Waits until the drawings have taken on the width of the window: nothing has moved for some frames. */
function settled(page) {
  return page.evaluate(async () => {
    const boxes = () => JSON.stringify([...document.querySelectorAll("svg[role=img], svg[role=img] text")].map((one) => one.getBoundingClientRect()));
    let [before, same] = ["", 0];
    while (same < 12) {
      await new Promise((done) => requestAnimationFrame(done));
      const now = boxes();
      same = now === before ? same + 1 : 0;
      before = now;
    }
  });
}

/** Pairs of texts in a drawing that lie over each other, and texts that leave it, as the browser sets them. */
function covered(page) {
  return page.evaluate(() => {
    const found = [];
    for (const svg of document.querySelectorAll("svg[role=img]")) {
      const bounds = svg.getBoundingClientRect();
      const texts = [...svg.querySelectorAll("text")].map((text) => ({ text, box: text.getBoundingClientRect() }));
      for (const { text, box } of texts) {
        const out = box.left < bounds.left - 1 || box.right > bounds.right + 1;
        if (out) found.push(`"${text.textContent}" leaves the drawing`);
      }
      // A glyph's box has air above and below that its ink never reaches.
      const shrunk = (box) => ({ left: box.left, right: box.right, top: box.top + box.height * 0.2, bottom: box.bottom - box.height * 0.2 });
      texts.forEach(({ text, box }, place) => {
        const a = shrunk(box);
        for (const other of texts.slice(place + 1)) {
          const b = shrunk(other.box);
          if (a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom && b.top < a.bottom) found.push(`"${text.textContent}" lies over "${other.text.textContent}"`);
        }
      });
    }
    return found;
  });
}

test("in forced colours text takes the system's colour and states keep their patterns", async () => {
  for (const [example, pattern] of [["pool-hall-exhaust", "frost"], ["make-up-air", "water"], ["chilled-supply", "sweat"]]) {
    const page = await open(1440, 900, "light", example);
    await page.emulateMedia({ forcedColors: "active" });
    const seen = await page.getByRole("img", { name: /^Air, inner wall/ }).evaluate((svg, pattern) => {
      const probe = document.createElement("i");
      document.body.append(probe);
      const system = (name) => {
        probe.style.color = name;
        return getComputedStyle(probe).color;
      };
      const [ink, ground] = [system("CanvasText"), system("Canvas")];
      probe.remove();
      const strokes = svg.querySelector(`pattern .dw-h-${pattern} *, pattern[class="dw-h-${pattern}"] *`);
      const area = svg.querySelector(`.dw-a-${pattern}`);
      return {
        ink,
        ground,
        text: getComputedStyle(svg.querySelector("text")).fill,
        strokes: getComputedStyle(strokes).stroke,
        fill: getComputedStyle(area).fill,
      };
    }, pattern);
    assert.equal(seen.text, seen.ink, "text");
    assert.equal(seen.strokes, seen.ink, `the lines of ${pattern}`);
    assert.notEqual(seen.ink, seen.ground);
    assert.match(seen.fill, /^url\(/, `the area of ${pattern} keeps its pattern`);
    const units = await page.getByRole("button", { name: "SI units" }).evaluate((word) => {
      const style = getComputedStyle(word);
      return [style.color, style.backgroundColor, getComputedStyle(word.nextElementSibling).backgroundColor];
    });
    assert.equal(new Set(units.slice(0, 2)).size, 2, `the chosen unit can be read: ${units}`);
    assert.notEqual(units[1], units[2], "and is told from the other");
    await page.close();
  }
});

test("who asks for more contrast gets patterns without tints", async () => {
  const page = await open(1440, 900, "light", "make-up-air");
  await page.emulateMedia({ contrast: "more" });
  const fills = await page.getByRole("img", { name: /^Air, inner wall/ }).evaluate((svg) => {
    const fill = (selector) => getComputedStyle(svg.querySelector(selector)).fill;
    return { tint: fill(".dw-s-tint"), sheet: fill(".dw-g-sheet"), hatch: fill(".dw-a-water") };
  });
  assert.equal(fills.tint, fills.sheet, "the tint is gone");
  assert.match(fills.hatch, /^url\(/, "the hatch is not");
  assert.deepEqual(await contrasts(page, decoder), []);
});

test("with reduced motion nothing moves by itself", async () => {
  for (const width of [360, 1440]) {
    const page = await open(width, 900, "light", "make-up-air");
    const moving = await page.evaluate(() => {
      const moves = (style) => [style.transitionDuration, style.animationDuration].some((times) => times.split(",").some((time) => Number.parseFloat(time) > 0));
      const parts = (element) => [null, "::before", "::after"].map((part) => getComputedStyle(element, part));
      const all = [...document.querySelectorAll("*")].filter((element) => parts(element).some(moves));
      return all.map((element) => element.outerHTML.slice(0, 80));
    });
    assert.deepEqual(moving, [], `at ${width} px`);
  }
});

/** A browser page of its own to look at pictures in: the page's content policy would refuse them. */
let decoder;
let browser;
before(async () => {
  browser = await launch();
  decoder = await browser.newPage();
});
after(() => browser?.close());

test("letters with accents are loaded where there are any", async () => {
  const page = await open(1440, 900, "light", EXAMPLES[0]);
  const loaded = () => page.evaluate(() => performance.getEntriesByType("resource").filter((entry) => entry.name.includes("-accented")).length);
  assert.equal(await loaded(), 0, "the page has none of its own");
  await page.locator("h1 b").evaluate((name) => (name.textContent = "Lüftung, Hörsaal"));
  await page.waitForFunction(() => document.fonts.status === "loaded" && performance.getEntriesByType("resource").some((entry) => entry.name.includes("-accented")));
});
