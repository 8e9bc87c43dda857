// Printed codes: read off the picture of a PDF, or of the page where nothing makes one, by a library that did not draw them.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT } from "./harness.mjs";

/** Dots an inch at which a card is looked at, one after the other, as a phone does that comes nearer; the library misses dense codes at some scales between. */
const SCALES = [210, 220, 240, 300, 400, 500, 600];
/** What makes a picture of a PDF; set empty, the browser draws instead. */
const TO_PICTURE = process.env.PDFTOPPM ?? ["/usr/bin/pdftoppm", "/usr/local/bin/pdftoppm"].find((path) => existsSync(path));

/** How many sheets a PDF has. */
export function sheets(pdf) {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

/** What the code on a printed sheet says; `page` draws the picture where no program does. */
export async function readCode(pdf, page) {
  const folder = await mkdtemp(join(tmpdir(), "dewrun-code-"));
  try {
    for (const scale of SCALES) {
      const picture = TO_PICTURE ? await ofPdf(folder, pdf, scale) : await ofPage(folder, page, scale);
      const said = read(picture);
      if (said) return said;
    }
    assert.fail(`no code is read at ${SCALES.join(", ")} dots an inch`);
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function ofPdf(folder, pdf, scale) {
  const [from, to] = [join(folder, "card.pdf"), join(folder, `at-${scale}`)];
  await writeFile(from, pdf);
  execFileSync(TO_PICTURE, ["-gray", "-f", "1", "-l", "1", "-r", `${scale}`, from, to]);
  const made = (await readdir(folder)).find((name) => name.startsWith(`at-${scale}`));
  return join(folder, made);
}

/** The code of the card that the page shows, as Chromium paints it on a page without a policy. */
async function ofPage(folder, page, scale) {
  const svg = page.locator(".dw-card__code svg").first();
  if ((await svg.count()) === 0) await page.getByRole("button", { name: "Show it here" }).click();
  const markup = await svg.evaluate((code) => code.outerHTML);
  const blank = await page.context().newPage();
  const [side, grey] = await blank.evaluate(
    async ([markup, scale]) => {
      const image = new Image();
      image.src = `data:image/svg+xml,${encodeURIComponent(markup)}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      canvas.width = canvas.height = Math.round((image.width * scale) / 96);
      const pen = canvas.getContext("2d");
      pen.drawImage(image, 0, 0, canvas.width, canvas.height);
      const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
      return [canvas.width, [...data].filter((_, at) => at % 4 === 0)];
    },
    [markup, scale],
  );
  await blank.close();
  const path = join(folder, `at-${scale}.pgm`);
  await writeFile(path, Buffer.concat([Buffer.from(`P5 ${side} ${side} 255\n`), Buffer.from(grey)]));
  return path;
}

function read(picture) {
  const command = ["run", "--quiet", "--package", "dewrun-sheet", "--example", "read_code", "--", picture];
  try {
    return execFileSync("cargo", command, { cwd: ROOT, stdio: ["ignore", "pipe", "ignore"] }).toString().trim();
  } catch {
    return "";
  }
}
