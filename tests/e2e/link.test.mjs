// Links: a project travels in one, page and command line read each other's, and a bad one costs nothing.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { test } from "node:test";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import { dewrun, shows } from "./harness.mjs";
import { accessible, fits, saved, touchable, unfold } from "./looks.mjs";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const EXAMPLES = ["make-up-air", "pool-hall-exhaust", "chilled-supply", "sagging-tube"];
const REFUSED = "The link was not taken in. The open project is unchanged.";

const site = dewrun();

async function open(hash = "", width = 1440) {
  const page = await site.openAt(width, 900, "light", hash);
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await shows(page);
  return page;
}

const heading = (page, name) => page.getByRole("heading", { name });
const demo = (example) => readFile(`${ROOT}demo/${example}.json`, "utf8");
const packed = (bytes) => `#v1=${deflateRawSync(bytes, { level: 9 }).toString("base64url")}`;
const hash = (page) => page.evaluate(() => location.hash);

/** Follows a link on a page that is open, as the address bar does. */
const follow = (page, link) => page.evaluate((link) => void (location.hash = link), link);

/** The link that the page copies. */
async function copied(page) {
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.getByText("Link copied.").waitFor();
  return page.evaluate(() => navigator.clipboard.readText());
}

/** What the command line prints. */
function said(words, input) {
  const args = ["run", "--quiet", "--package", "dewrun-cli", "--", ...words];
  const { stdout, stderr } = spawnSync("cargo", args, { cwd: ROOT, encoding: "utf8", input });
  assert.equal(stderr, "", words.join(" "));
  return stdout.trim();
}

test("a link that is copied opens the same project elsewhere", async () => {
  for (const example of EXAMPLES) {
    const page = await open(`#example=${example}`);
    const link = await copied(page);
    assert.ok(link.startsWith(`${site.address}#v1=`), link.slice(0, 60));
    const other = await open(link.slice(site.address.length));
    await heading(other, /./).first().waitFor();
    await other.getByRole("button", { name: "Save file" }).waitFor();
    assert.equal(await hash(other), "#project", "the address is short again");
    assert.equal((await saved(other)).text, await demo(example), example);
    await other.getByRole("button", { name: "Undo" }).click();
    await other.getByRole("textbox").first().waitFor();
    assert.notEqual(await hash(other), "#project", "undone, the page is as it was before");
    await Promise.all([page.close(), other.close()]);
  }
});

test("page and command line read each other's links", async () => {
  for (const example of EXAMPLES) {
    const printed = said(["link", `demo/${example}.json`, "--page", site.address]);
    const page = await open(printed.slice(site.address.length));
    await page.getByRole("button", { name: "Save file" }).waitFor();
    assert.equal((await saved(page)).text, await demo(example), "page reads the command line's");
    const link = await copied(page);
    assert.equal(said(["link", "-", "--page", site.address], link), printed, "command line reads the page's");
    const text = inflateRawSync(Buffer.from(link.split("#v1=")[1], "base64url"));
    assert.deepEqual(JSON.parse(text), JSON.parse(await demo(example)), "and so does anything else");
    await page.close();
  }
});

test("a link is taken where it is followed or pasted, and undone", async () => {
  const page = await open("#example=make-up-air");
  await follow(page, packed(await demo("chilled-supply")));
  await heading(page, /Chilled supply/).waitFor();
  assert.equal(await hash(page), "#project");
  const pasted = `Have a look: ${site.address}${packed(await demo("pool-hall-exhaust"))}.`;
  await page.getByRole("textbox").first().focus();
  await page.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", text);
    const event = new ClipboardEvent("paste", { bubbles: true, cancelable: true, clipboardData });
    document.activeElement.dispatchEvent(event);
  }, pasted);
  await heading(page, /Pool-hall exhaust/).waitFor();
  for (const name of [/Chilled supply/, /Humid make-up air/]) {
    await page.getByRole("button", { name: "Undo" }).click();
    await heading(page, name).waitFor();
  }
  await page.goBack();
  assert.doesNotMatch(await hash(page), /v1=/, "no step back leads to the long address");
});

test("a bad link gets its sentence and costs nothing of what is open", async () => {
  const page = await open("#example=make-up-air");
  const good = packed(await demo("chilled-supply"));
  const checked = said(["link", "demo/chilled-supply.json"]);
  const at = Math.floor(checked.length / 2);
  const cases = [
    [good.slice(0, -40), /damaged or cut short; copy it again, whole\./],
    [checked.slice(0, at) + (checked[at] === "A" ? "B" : "A") + checked.slice(at + 1), /damaged or cut short/],
    [good.replace("#v1=", "#v2="), /version 2, this Dewrun reads version 1; open it with a newer one\./],
    [`#v1=${"A".repeat(999_000)}`, /damaged or cut short/],
    [`#v1=${"\u{202e}<b>".repeat(200_000)}`, /damaged at letter 1 after|must have at most/],
    [packed(Buffer.alloc(200 << 20, " ")), /carries more than 8388608 bytes, which no project has\./],
    [packed("{}"), /not a Dewrun project/],
    [packed(JSON.stringify({ ...JSON.parse(await demo("chilled-supply")), revision: 900 })), /newer Dewrun/],
  ];
  for (const [link, words] of cases) {
    await follow(page, link);
    await page.getByText(REFUSED).waitFor();
    assert.match(await page.getByRole("alert").innerText(), words);
    assert.equal(await hash(page), "#example=make-up-air", "the address says what is open");
    await heading(page, /Humid make-up air/).waitFor();
    await page.getByRole("button", { name: "Leave it" }).click();
  }
  assert.equal((await saved(page)).text, await demo("make-up-air"));
});

test("a bad link at the start leaves the empty page", async () => {
  const page = await open("#v1=rubbish");
  await page.getByText(REFUSED).waitFor();
  await page.getByRole("textbox").first().waitFor();
  assert.equal(await hash(page), "");
});

test("hostile words in every text of a project stay words", async () => {
  const hostile = `"><img src=x onerror=globalThis.hurt=1><script>hurt=1</script><svg/onload=hurt=1>\u{202e}\u{0}'&amp;\${hurt=1}`;
  const project = JSON.parse(await demo("pool-hall-exhaust"), (key, value) => {
    const isText = ["name", "note", "place", "by"].includes(key) && typeof value === "string";
    return isText ? hostile : key === "row" ? '"><img src=x onerror=hurt=1>' : value;
  });
  const ids = new Map(project.spaces.map((space, at) => [space.id, `${at}"><img src=x onerror=hurt=1>`]));
  for (const space of project.spaces) space.id = ids.get(space.id);
  for (const run of project.runs) {
    run.id = '"><b onclick=hurt=1>';
    for (const leg of [...run.intake.legs, ...(run.exhaust?.legs ?? [])]) {
      leg.space = ids.get(leg.space);
      leg.id = `${leg.id}"><img src=x onerror=hurt=1>`;
    }
  }
  const page = await open(packed(JSON.stringify(project)));
  await page.getByRole("button", { name: "Save file" }).waitFor();
  // What is not shown can't be unfolded.
  for (const summary of await page.locator("summary").all()) if (await summary.isVisible()) await summary.click();
  for (const width of [360, 1440]) {
    await page.setViewportSize({ width, height: 900 });
    await page.waitForTimeout(200);
  }
  const { made, shown } = await page.evaluate(() => ({
    made: document.querySelectorAll("main img, main script, main [onerror], main [onload], main [onclick]").length,
    shown: document.querySelector("main").innerText.includes("<img src=x onerror=globalThis.hurt=1>"),
  }));
  assert.equal(made, 0, "no element is made of it");
  assert.ok(shown, "it is shown as it is");
  assert.equal(await page.evaluate(() => globalThis.hurt), undefined, "nothing of it runs");
  assert.deepEqual((await saved(page)).project, project, "and it is saved as it came");
});

test("where the browser does not let the page copy, the link is there to be copied", async () => {
  const page = await site.openAt(360, 800, "light", "#example=make-up-air");
  await page.addInitScript(() => {
    const refuse = () => Promise.reject(new DOMException("not here", "NotAllowedError"));
    Object.defineProperty(navigator, "clipboard", { value: { write: refuse } });
  });
  await page.reload();
  await shows(page);
  await unfold(page);
  await page.getByRole("button", { name: "Copy link" }).click();
  const link = await page.getByLabel("Link to copy").inputValue();
  assert.deepEqual(JSON.parse(inflateRawSync(Buffer.from(link.split("#v1=")[1], "base64url"))), JSON.parse(await demo("make-up-air")));
  await accessible(page, "the link to copy");
  await fits(page, "the link to copy");
  await touchable(page, "the link to copy", ".dw-notice");
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByLabel("Link to copy").waitFor({ state: "detached" });
});

test("a browser that can't pack says so", async () => {
  const page = await site.openAt(1440, 900, "light", "#example=make-up-air");
  await page.addInitScript(() => {
    delete globalThis.CompressionStream;
    delete globalThis.DecompressionStream;
  });
  await page.reload();
  await shows(page);
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.getByText("No link was made. The open project is unchanged.").waitFor();
  await follow(page, packed(await demo("chilled-supply")));
  await page.getByText(REFUSED).waitFor();
  assert.match(await page.getByRole("alert").innerText(), /current one can\. Files work in any\./);
});
