// The page's second module: loaded once the first answer stands, and by the worker for long work.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { ROOT, answered, dewrun, shows } from "./harness.mjs";

const site = dewrun();

const LATER = /dewrun-workshop|worker\.js/;
const EXAMPLE = "#example=make-up-air";

/** Opens the page and notes what it asks for of the second module. */
async function watched(hash = "") {
  const page = await site.openAt(1440, 900, "light");
  const later = [];
  page.on("request", (request) => LATER.test(request.url()) && later.push(request.url()));
  await page.addInitScript(() => {
    const look = () => {
      const sentence = document.querySelector("[aria-label=Answer] [role=status]")?.innerText;
      if (!sentence) return requestAnimationFrame(look);
      globalThis.answeredAt = performance.now();
    };
    requestAnimationFrame(look);
  });
  await page.goto("about:blank");
  await page.goto(site.address + hash);
  await shows(page);
  return { page, later };
}

test("the empty page loads nothing of it, an open run all of it", async () => {
  const { page, later } = await watched();
  await page.waitForLoadState("networkidle");
  // Whoever looks around on the empty page gets answers too.
  await page.getByRole("textbox").first().fill("30");
  await page.waitForLoadState("networkidle");
  assert.deepEqual(later, [], "nothing beyond the first answer");
  await page.getByRole("link", { name: /make-up air/i }).first().click();
  await answered(page);
  const names = later.map((url) => url.split("/").at(-1));
  for (const name of ["dewrun-workshop.js", "dewrun-workshop_bg.wasm", "dewrun-workshop_order.wasm"]) {
    assert.ok(names.includes(name), `${name} among ${names}`);
  }
});

test("it is loaded once the answer is painted", async () => {
  const { page } = await watched(EXAMPLE);
  await answered(page);
  const [shown, asked] = await page.evaluate(() => [
    globalThis.answeredAt,
    Math.min(...performance.getEntriesByType("resource").filter((entry) => /dewrun-workshop/.test(entry.name)).map((entry) => entry.startTime)),
  ]);
  assert.ok(shown < asked, `the answer stood after ${shown} ms, the module was asked for after ${asked} ms`);
});

test("a page that it does not reach answers without it", async () => {
  const page = await site.openAt(1440, 900, "light");
  // What the browser has kept of an earlier visit would answer in its place.
  await page.addInitScript(() => Object.defineProperty(navigator, "serviceWorker", { value: undefined }));
  await page.evaluate(async () => {
    for (const kept of await navigator.serviceWorker.getRegistrations()) await kept.unregister();
  });
  await page.route(/dewrun-workshop/, (route) => route.abort());
  await page.goto(site.address + EXAMPLE);
  await page.reload();
  const answer = page.getByRole("region", { name: "Answer" });
  await answer.getByText("Airflow not computed.").waitFor();
  const sentence = answer.getByRole("status");
  const before = await sentence.innerText();
  await page.getByLabel("Length of leg 1").first().fill("4.5");
  await page.waitForFunction((before) => before !== document.querySelector("[aria-label=Answer] [role=status]").innerText, before);
  assert.match(await sentence.innerText(), /of water forms/, "the steady answer");
  await answer.locator("[data-figure]").first().click();
  const panel = page.getByRole("region", { name: "Where the figure comes from" });
  await panel.getByText("did not arrive").waitFor();
  await panel.getByRole("button", { name: "Close" }).click();
  await panel.waitFor({ state: "detached" });
  const offences = site.takeOffences();
  assert.ok(offences.every((offence) => /ERR_FAILED|Failed to fetch/.test(offence)), `${offences}`);
});

/** Starts a worker of its own in the page, sends it messages and gives what it says until it has said `count` answers and a little longer. */
async function worker(page, messages, count) {
  return page.evaluate(
    async ({ messages, count }) => {
      const start = document.querySelector("script[type=module]").src;
      const worker = new Worker(new URL("worker.js", start), { type: "module" });
      const said = [];
      await new Promise((done, fail) => {
        setTimeout(() => fail(new Error("the worker says nothing")), 120_000);
        worker.onmessage = ({ data }) => {
          if (data.kind === "ready") for (const message of messages) worker.postMessage(message);
          else said.push({ ...data, body: { ...data.body, answer: data.body.answer && [...data.body.answer] } });
          if (said.filter(({ kind }) => kind !== "going").length === count) setTimeout(done, 200);
        };
      });
      worker.terminate();
      return said;
    },
    { messages, count },
  );
}

/** A job for the worker. */
async function jobs() {
  const project = await readFile(`${ROOT}demo/make-up-air.json`, "utf8");
  let job = 0;
  return (channel, kind, numbers = []) => ({ job: (job += 1), kind, body: { channel, project, run: 0, numbers } });
}

test("a newer job of a channel takes the place of the older, and channels do not mix", async () => {
  const page = await site.openAt(1440, 900, "light");
  await shows(page);
  const job = await jobs();
  const messages = [job(0, "staying-dry"), job(0, "staying-dry"), job(1, "dry-boundary", [0, 0, 640, 1, 0]), job(2, "tea")];
  const said = await worker(page, messages, 3);
  const answers = said.filter(({ kind }) => kind !== "going");
  assert.deepEqual(
    answers.map(({ job, kind, body }) => [job, kind, body.channel]),
    [
      [2, "staying-dry", 0],
      [3, "dry-boundary", 1],
      [4, "tea", 2],
    ],
    "the first job has no answer",
  );
  assert.equal(answers[1].body.answer.length % 3, 0, "points of three numbers");
  assert.match(`${answers[2].body.answer}`, /tea/, "and a sentence says what can't be answered");
});

test("what is stopped has no answer", async () => {
  const page = await site.openAt(1440, 900, "light");
  await shows(page);
  const job = await jobs();
  const given = job(0, "staying-dry");
  const messages = [given, { job: 9, kind: "stop", body: { channel: 0 } }, job(1, "staying-dry")];
  const said = await worker(page, messages, 1);
  assert.deepEqual([...new Set(said.map(({ body }) => body.channel))], [1], "only the other channel is heard");
});

test("a worker that says nothing while something newer is wanted is replaced", async () => {
  const page = await site.openAt(1440, 900, "light");
  await page.addInitScript(() => {
    const Real = window.Worker;
    window.workers = 0;
    window.ended = 0;
    window.Worker = class extends Real {
      number = (window.workers += 1);
      postMessage(...given) {
        // The first is lent the module and never hears of its work.
        if (this.number > 1 || given[0].kind === "begin") super.postMessage(...given);
      }
      terminate() {
        window.ended += 1;
        super.terminate();
      }
    };
  });
  await page.goto("about:blank");
  await page.goto(site.address + EXAMPLE);
  // The worker says nothing, so that all is never found.
  await page.getByRole("region", { name: "Answer" }).getByText(/^Airflow, limits/).waitFor();
  const table = page.getByRole("table", { name: /What would stay dry/ });
  assert.equal(await table.count(), 0, "nothing is found yet");
  for (const metres of ["4", "4.5", "5"]) {
    await page.getByLabel("Length of leg 1").first().fill(metres);
    await page.waitForTimeout(100);
  }
  await table.getByRole("row").nth(2).waitFor();
  assert.deepEqual(await page.evaluate(() => [window.workers, window.ended]), [2, 1], "one is ended, another begun");
});
