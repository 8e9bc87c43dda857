// Draws the icons of the installed page from the mark: `node icons.mjs FOLDER`, the folder being `www/icons`.
//
// Few tints of three colours are in them, so that they are written with a palette, a fifth of what a browser would write.
import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { crc32, deflateSync } from "node:zlib";
import { launch } from "./harness.mjs";

const [folder] = process.argv.slice(2);
assert.ok(folder, "say where the mark lies");
/** The mark reaches 15.3 of 16 units from the middle; within 40 % of the width nothing of a masked icon is cut off. */
const MASKED = "-3.2 -3.2 38.4 38.4";
const ICONS = [
  { name: "dewrun-192.png", size: 192 },
  { name: "dewrun-512.png", size: 512 },
  { name: "dewrun-masked-512.png", size: 512, box: MASKED },
];
/** Steps of each colour channel along edges: enough to look smooth. */
const STEP = 17;

const mark = await readFile(join(folder, "dewrun.svg"), "utf8");
const browser = await launch();
try {
  const page = await browser.newPage();
  for (const { name, size, box } of ICONS) {
    // A masked icon has no corners of its own: the mask cuts them.
    const svg = box ? mark.replace(/viewBox="[^"]*"/, `viewBox="${box}"`).replace(/<rect[^>]*>/, "") : mark;
    const pixels = await page.evaluate(drawn, { svg, size, ground: box && "#F5F7F5" });
    await writeFile(join(folder, name), png(Uint8Array.from(pixels), size));
  }
} finally {
  await browser.close();
}

/** Runs in the browser: the pixels of a drawing, four bytes each. */
async function drawn({ svg, size, ground }) {
  const image = new Image(size, size);
  image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = Object.assign(document.createElement("canvas"), { width: size, height: size });
  const paper = canvas.getContext("2d");
  if (ground) {
    paper.fillStyle = ground;
    paper.fillRect(0, 0, size, size);
  }
  paper.drawImage(image, 0, 0, size, size);
  return [...paper.getImageData(0, 0, size, size).data];
}

/** A picture with a palette (PNG, 3rd edition: colour type 3). */
function png(pixels, size) {
  const at = (place) => [...pixels.subarray(4 * place, 4 * place + 4)];
  const counts = new Map();
  for (let place = 0; place < size * size; place += 1) counts.set(`${at(place)}`, (counts.get(`${at(place)}`) ?? 0) + 1);
  const isArea = (colour) => size < counts.get(`${colour}`);
  const colours = new Map();
  const rows = Buffer.alloc(size * (size + 1));
  for (let place = 0; place < size * size; place += 1) {
    const exact = at(place);
    const key = (isArea(exact) ? exact : exact.map((part) => Math.round(part / STEP) * STEP)).join();
    if (!colours.has(key)) colours.set(key, colours.size);
    rows[place + Math.floor(place / size) + 1] = colours.get(key);
  }
  assert.ok(colours.size <= 256, `${colours.size} colours`);
  const palette = [...colours.keys()].map((key) => key.split(",").map(Number));
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    part("IHDR", head),
    part("PLTE", Buffer.from(palette.flatMap((colour) => colour.slice(0, 3)))),
    part("tRNS", Buffer.from(palette.map((colour) => colour[3]))),
    part("IDAT", deflateSync(rows, { level: 9 })),
    part("IEND", Buffer.alloc(0)),
  ]);
}

function part(name, content) {
  const named = Buffer.concat([Buffer.from(name), content]);
  const framed = Buffer.alloc(named.length + 8);
  framed.writeUInt32BE(content.length, 0);
  framed.set(named, 4);
  framed.writeUInt32BE(crc32(named), named.length + 4);
  return framed;
}
