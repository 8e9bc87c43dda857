// Three people come to the empty page and go with a first answer: at a desk and on a phone, with a network and without.
import assert from "node:assert/strict";
import { test } from "node:test";
import { shows, watch } from "./harness.mjs";
import { accessible, fits, saved, touchable, unfold } from "./looks.mjs";
import { deployed } from "./static.mjs";

/** No first answer may take more, counted from when the way in is chosen. */
const MOST = 6;
/** And no further leg more than this. */
const MOST_A_LEG = 3;

const SIZES = {
  "at a desk": { viewport: { width: 1440, height: 900 } },
  "on a phone": { viewport: { width: 360, height: 740 }, hasTouch: true },
};
const WAYS = ["a duct on a drawing", "a tube I am fitting", "a trouble that comes back"];

const state = deployed();

/** The empty page on a device of its own. */
async function visit(size, rest = "", scheme = "light") {
  const context = await state.browser.newContext({ ...SIZES[size], colorScheme: scheme, reducedMotion: "reduce" });
  const page = await context.newPage();
  watch(page, state.site.address, state.offences);
  await page.goto(state.site.address + rest);
  await shows(page);
  await first(page).waitFor();
  return page;
}

/** A hand that counts what it does: a tap is one activation, a typed number counts as one. */
function hand(page) {
  const counted = { taps: 0 };
  const press = (control) => (page.touch ? control.tap() : control.click());
  counted.tap = async (control) => {
    counted.taps += 1;
    await press(control);
  };
  counted.type = async (field, number) => {
    counted.taps += 1;
    await field.fill(number);
  };
  /** Chooses a way in; the count begins behind it. */
  counted.choose = async (way) => {
    await press(page.getByRole("group", { name: "What you have" }).getByRole("button", { name: way }));
    counted.taps = 0;
  };
  return counted;
}

const plain = (text) => text.replace(/\s+/g, " ").trim();
const first = (page) => page.getByRole("region", { name: "First answer" });
const answer = async (page) => plain(await first(page).getByRole("status").first().innerText());
const tile = (page, question, word) =>
  page.getByRole("group", { name: question }).getByRole("button", { name: word, exact: true });
const head = (page, leg) => page.getByRole("listitem").getByRole("button", { name: new RegExp(`^${leg} `) });

/** Draws what was answered and hands over its project. */
async function drawn(page) {
  await page.getByRole("button", { name: "Draw this route" }).click();
  await page.getByRole("region", { name: "Answer" }).waitFor();
  return (await saved(page)).project;
}

const STORIES = {
  /** A pool hall's exhaust goes through a loft and a corridor. */
  async "a designer"(page) {
    const it = hand(page);
    await it.choose(WAYS[0]);
    await it.tap(tile(page, "Which duct air?", "pool hall"));
    await it.tap(tile(page, "In which weather?", "frosty night"));
    await it.tap(tile(page, "Through which spaces?", "loft"));
    await it.tap(tile(page, "Through which spaces?", "corridor"));
    await it.tap(tile(page, "Which tube?", "PVC, 25 mm"));
    await it.type(page.getByLabel("Length of the tube"), "14");
    assert.ok(it.taps <= MOST, `${it.taps} taps`);
    // Air of 30 °C and 58 % has a dew point of 20.9 °C (ASHRAE Fundamentals 2017, ch. 1, eq. 39): a loft of -8 °C frosts.
    assert.match(await answer(page), /^With these values it is wet: [\d.]+ g\/h, part of it frost/);
    await first(page).getByText(/Worst of 4 weathers is the frosty night, [\d.]+\sg\/h; /).waitFor();
    const sentence = plain(await page.getByRole("group", { name: "The sentence to fill in" }).innerText());
    assert.match(sentence, /^Duct air of .* with a relative humidity of .* tube through the loft at .*, then the corridor at .*, to a detector/);
    await page.getByRole("img", { name: /^Elevation/ }).waitFor();

    const project = await drawn(page);
    const [run] = project.runs;
    const { temperature_c } = run.duct.air.temperature;
    assert.deepEqual([temperature_c.value, temperature_c.origin.assumed.row], [30, "pool-hall"]);
    // 14 m to a detector 1.2 m below: 6.4 m in each space, and the drop.
    assert.deepEqual(run.intake.legs.map((leg) => leg.length_m.value), [6.4, 6.4, 1.2]);
    assert.deepEqual(run.intake.legs.map((leg) => leg.length_m.origin.assumed?.row ?? leg.length_m.origin), ["typed", "typed", "route-drop"]);
    assert.deepEqual(project.spaces.map((space) => space.temperature_c.origin.assumed.row), ["loft-ventilated", "corridor"]);
    assert.deepEqual(run.intake.legs.map((leg) => leg.tube.bore_mm.origin.assumed.row), Array(3).fill("tube-pvc-25"));
  },

  /** A tube goes up in a plant room, then falls through a shaft to its detector. */
  async "an installer"(page) {
    const it = hand(page);
    await it.choose(WAYS[1]);
    await it.tap(tile(page, "Which tube?", "ABS, 25 mm"));
    await it.tap(tile(page, "Which duct air?", "return air"));
    await it.tap(tile(page, "In which weather?", "frosty night"));
    await it.tap(tile(page, "Which way? Leg 1", "straight up"));
    await it.type(page.getByLabel("Length of leg 1"), "0.8");
    await it.tap(tile(page, "Through what? Leg 1", "plant room"));
    assert.ok(it.taps <= MOST, `${it.taps} taps to the end of the first leg`);
    // Return air of 23 °C and 45 % has a dew point of 10.4 °C (as above): nothing is colder in a plant room of 24 °C.
    assert.match(await answer(page), /^To the end of leg 1 it is dry in the conditions entered; doubt not computed yet/);
    assert.match(plain(await head(page, 1).innerText()), /Plant room, heated, 0\.8 m rises 800 mm 0 g\/h$/);

    it.taps = 0;
    await it.tap(tile(page, "Which way does it go on?", "down 1:50"));
    await it.type(page.getByLabel("Length of leg 2"), "6");
    await it.tap(tile(page, "Through what? Leg 2", "shaft"));
    assert.ok(it.taps <= MOST_A_LEG, `${it.taps} taps for a further leg`);
    // A shaft of 8 °C is colder than the dew point; 6 m at 1:50 fall by 120 mm.
    assert.match(await answer(page), /^To the end of leg 2 it is wet: [\d.]+ g\/h, from the first [\d.]+ m on/);
    assert.match(plain(await head(page, 2).innerText()), /6 m falls 120 mm [\d.]+ g\/h$/);
    assert.match(plain(await head(page, 1).innerText()), / 0 g\/h$/, "the water forms in the second leg");

    it.taps = 0;
    await it.tap(tile(page, "Which way does it go on?", "straight down"));
    await it.type(page.getByLabel("Length of leg 3"), "1.5");
    await it.tap(tile(page, "Through what? Leg 3", "corridor"));
    assert.ok(it.taps <= MOST_A_LEG, `${it.taps} taps for a further leg`);
    assert.match(plain(await head(page, 3).innerText()), /Corridor, 1\.5 m falls 1 500 mm/);

    const [{ intake }] = (await drawn(page)).runs;
    assert.deepEqual(intake.legs.map((leg) => [leg.length_m.value, leg.rise_m.value]), [[0.8, 0.8], [6, -0.12], [1.5, -1.5]]);
  },

  /** Airflow is low in winter, behind a shower room's exhaust through a loft. */
  async "a technician"(page) {
    const it = hand(page);
    await it.choose(WAYS[2]);
    await it.tap(tile(page, "Which trouble?", "airflow low"));
    await it.tap(tile(page, "When, mostly?", "winter"));
    await it.tap(tile(page, "Which duct air?", "shower room"));
    await it.tap(tile(page, "Where does the tube run?", "loft"));
    await it.tap(tile(page, "A trap, and does water come out?", "trap, dry"));
    await it.tap(tile(page, "Filter or fan last touched?", "longer ago"));
    assert.ok(it.taps <= MOST, `${it.taps} taps`);
    assert.match(await answer(page), /^On such a route, in such an hour, it is wet: [\d.]+ g\/h, part of it frost/);
    const words = plain(await first(page).innerText());
    assert.match(words, /Water may be the cause\./);
    const causes = page.getByRole("region", { name: "Likely causes" });
    await causes.getByText(/is the likeliest by what was answered, \d+ of 100/).waitFor();
    assert.ok(1 < (await causes.locator("tr[data-cause]").count()), "a ranked list");
    assert.ok(await causes.locator("[data-check-name]").isVisible(), "with the next check");

    const project = await drawn(page);
    assert.match(project.note, /^Trouble: airflow low\.\nMostly: winter\./);
    assert.deepEqual(project.spaces.map((space) => space.temperature_c.origin.assumed.row), ["loft-ventilated"]);
  },
};

for (const size of Object.keys(SIZES)) {
  for (const [who, story] of Object.entries(STORIES)) {
    test(`${who} ${size} comes to a first answer`, async () => {
      const page = await visit(size);
      page.touch = size === "on a phone";
      await story(page);
      await page.close();
    });
  }

  test(`and each of them ${size} where there is no network`, async () => {
    const page = await visit(size);
    page.touch = size === "on a phone";
    await page.evaluate(() => navigator.serviceWorker.ready.then((kept) => kept.active.state));
    await state.site.stop();
    try {
      for (const story of Object.values(STORIES)) {
        await page.goto("about:blank");
        await page.goto(state.site.address);
        await shows(page);
        // What the one before has drawn is open: the next begins anew.
        if (!(await first(page).isVisible())) {
          await unfold(page);
          await page.getByRole("button", { name: "New", exact: true }).click();
        }
        await story(page);
      }
    } finally {
      await state.site.start();
    }
  });
}

test("a designer needs no pointer", async () => {
  const page = await visit("at a desk");
  const { keyboard } = page;
  /** Goes on by Tab, as somebody does who sees where the focus is. */
  const reach = async (control) => {
    for (let steps = 0; steps < 80; steps += 1) {
      if (await control.evaluate((element) => element === document.activeElement)) return;
      await keyboard.press("Tab");
    }
    assert.fail(`no Tab leads to ${control}`);
  };
  const press = async (control) => {
    await reach(control);
    await keyboard.press("Enter");
  };
  const type = async (field, number) => {
    await reach(field);
    await keyboard.press("Control+a");
    await keyboard.type(number);
  };
  await press(tile(page, "Which duct air?", "laundry"));
  await press(tile(page, "In which weather?", "frosty night"));
  await press(tile(page, "Through which spaces?", "loft"));
  await press(tile(page, "Which tube?", "copper, 22 mm"));
  await type(page.getByLabel("Length of the tube"), "9");
  await reach(page.getByLabel("Side of the duct"));
  await keyboard.press("ArrowDown");
  assert.match(await answer(page), /^With these values it is wet/);
  await press(page.getByRole("button", { name: "Draw this route" }));
  await page.getByRole("region", { name: "Answer" }).waitFor();
  const [{ intake }] = (await saved(page)).project.runs;
  assert.deepEqual(intake.legs.map((leg) => [leg.length_m.value, leg.rise_m.value]), [[7.8, 0], [1.2, 1.2]]);
  assert.equal(intake.legs[0].tube.bore_mm.origin.assumed.row, "tube-copper-22");
});

test("what was answered in one way is there when one comes back from another", async () => {
  const page = await visit("at a desk");
  const it = hand(page);
  const address = () => new URL(page.url()).hash;
  await it.tap(tile(page, "Which duct air?", "laundry"));
  await it.choose(WAYS[1]);
  assert.equal(address(), "#fitting");
  await it.tap(tile(page, "Which way does it go on?", "straight down"));
  assert.equal(await page.getByRole("button", { name: /^2 / }).count(), 1);
  await it.choose(WAYS[2]);
  assert.equal(address(), "#trouble");
  await page.goBack();
  await head(page, 2).waitFor();
  await page.goBack();
  assert.equal(await tile(page, "Which duct air?", "laundry").getAttribute("aria-pressed"), "true");
  await page.goForward();
  await head(page, 2).waitFor();
  // Each change of the way is a step, as each answer is.
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await tile(page, "Which duct air?", "laundry").getAttribute("aria-pressed"), "true");
  assert.equal(address(), "");
});

test("an answer is taken back by undo and put again by redo", async () => {
  const page = await visit("on a phone", "#trouble");
  const winter = tile(page, "When, mostly?", "winter");
  const before = await answer(page);
  await winter.click();
  const frosty = await answer(page);
  assert.notEqual(frosty, before, "another weather, another answer");
  await page.getByRole("button", { name: "Undo" }).click();
  assert.equal(await answer(page), before);
  assert.equal(await winter.getAttribute("aria-pressed"), "false");
  await page.getByRole("button", { name: "Redo" }).click();
  assert.equal(await answer(page), frosty);
  assert.equal(await winter.getAttribute("aria-pressed"), "true");
});

for (const scheme of ["light", "dark"]) {
  for (const size of Object.keys(SIZES)) {
    test(`the ways in are for everybody ${size}, ${scheme}`, async () => {
      for (const [place, rest] of ["", "#fitting", "#trouble"].entries()) {
        const page = await visit(size, rest, scheme);
        if (rest === "#fitting") await tile(page, "Which way does it go on?", "down 1:50").click();
        await accessible(page, WAYS[place]);
        await fits(page, WAYS[place]);
        await page.close();
      }
    });
  }
}

test("what is tapped on a phone is as large as a thumb in a glove", async () => {
  for (const rest of ["", "#fitting", "#trouble"]) {
    const page = await visit("on a phone", rest);
    await touchable(page, `on the page ${rest}`);
    await touchable(page, `what is asked ${rest}`, ".dw-first", 48);
    await page.close();
  }
});

test("what has the focus is not hidden by the answer that stays", async () => {
  const page = await visit("on a phone", "#fitting");
  await page.keyboard.press("Tab");
  // Behind the last control the focus leaves the page.
  while (await page.evaluate(() => document.activeElement !== document.body)) {
    const hidden = await page.evaluate(() => {
      const element = document.activeElement;
      const box = element.getBoundingClientRect();
      const seen = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
      return element.contains(seen) || seen?.contains(element) ? "" : element.innerText || element.id;
    });
    assert.equal(hidden, "", "under something else");
    await page.keyboard.press("Tab");
  }
});

test("on a phone the sections stand at the thumb", async () => {
  const page = await visit("on a phone");
  await page.goto(`${state.site.address}#example=make-up-air`);
  const bar = page.getByRole("navigation", { name: "Sections" });
  await touchable(page, "the bar", ".dw-sections", 48);
  const names = await bar.getByRole("button").allInnerTexts();
  for (const name of names) {
    await bar.getByRole("button", { name, exact: true }).tap();
    const heading = page.getByRole("heading", { name, exact: true });
    await page.waitForFunction((name) => document.querySelector("nav [aria-current=true]")?.innerText === name, name);
    const top = await heading.evaluate((element) => element.getBoundingClientRect().top);
    assert.ok(0 <= top && top < 300, `${name} is ${top} px from the top`);
    const { y, height } = await bar.boundingBox();
    assert.ok(Math.abs(y + height - 740) <= 1, `the bar ends at ${y + height} px of 740`);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  assert.equal(await bar.isVisible(), false, "a wide page has no need of it");
});

test("on a phone the head folds away all but undo and redo", async () => {
  const page = await visit("on a phone");
  const link = page.getByRole("link", { name: "What it does not answer" });
  assert.equal(await link.isVisible(), false);
  await page.getByRole("button", { name: "More", exact: true }).tap();
  await link.waitFor();
  await accessible(page, "unfolded");
  await fits(page, "unfolded");
  await touchable(page, "unfolded", ".dw-head", 48);
  await page.getByRole("button", { name: "More", exact: true }).tap();
  assert.equal(await link.isVisible(), false);
});
