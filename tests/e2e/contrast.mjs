// Contrast as it is seen: the colour of each text against what is painted behind it, taken from a picture of the page without its texts.

/** Of a ground counts what covers more than this share of the text's box: lines that only cross it do not. */
const SHARE = 0.15;

/**
 * The texts that can't be read well: below 4.5, or 3 where they are large (WCAG 2.2, 1.4.3).
 * `decoder` is a page of the same browser that may open pictures.
 */
export async function contrasts(page, decoder) {
  // What stays at the top of a scrolled window lies over other texts: it goes with the scrolling.
  await page.evaluate(() => {
    scrollTo(0, 0);
    return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  });
  let texts = await page.evaluate(collect);
  let picture;
  // What is worked out in the background moves the texts when it comes: the picture must be of the page that they were read from.
  for (let before; JSON.stringify(before) !== JSON.stringify(texts); ) {
    before = texts;
    await page.evaluate(hide, true);
    picture = await page.screenshot({ fullPage: true, scale: "css" });
    await page.evaluate(hide, false);
    texts = await page.evaluate(collect);
  }
  return decoder.evaluate(judge, { texts, picture: picture.toString("base64"), share: SHARE });
}

/** The controls whose edge is below 3 against what lies around it (WCAG 2.2, 1.4.11). */
export function edges(page) {
  return page.evaluate(() => {
    const parts = (color) => color.match(/[\d.]+/g).map(Number);
    const light = (color) => {
      const [r, g, b] = parts(color).map((part) => part / 255).map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ratio = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
    const opaque = (color) => (parts(color)[3] ?? 1) > 0;
    const ground = (element) => {
      while (element && !opaque(getComputedStyle(element).backgroundColor)) element = element.parentElement;
      return getComputedStyle(element ?? document.documentElement).backgroundColor;
    };
    const found = [];
    for (const control of document.querySelectorAll("input, select, button")) {
      // The line of a field is that of the box around it.
      const edged = control.matches("input") ? control.parentElement : control;
      const style = getComputedStyle(edged);
      const box = edged.getBoundingClientRect();
      const color = style.borderBottomColor;
      if (box.height < 2 || Number.parseFloat(style.borderBottomWidth) === 0 || style.borderBottomStyle === "none" || !opaque(color) || control.disabled) continue;
      const seen = ratio(color, ground(edged.parentElement));
      if (seen < 3) found.push(`${control.id || control.innerText}: ${seen.toFixed(2)}`);
    }
    return found;
  });
}

/** Every text that shows: what it says, its boxes, its colour, its size. Runs in the page. */
function collect() {
  // Only said to those who listen: clipped to a pixel.
  const spoken = (element) => {
    for (; element; element = element.parentElement) if (getComputedStyle(element).clipPath === "inset(50%)") return true;
    return false;
  };
  const shown = (element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !spoken(element);
  // The pointer's handle covers the number on the axis that it stands on.
  const handles = [...document.querySelectorAll("[role=slider]")].map((handle) => handle.getBoundingClientRect());
  // What stays at the foot of a phone's window covers what happens to be scrolled under it.
  const foot = document.querySelector(".dw-sections");
  const meets = (over, rect) => over.left < rect.right && rect.left < over.right && over.top < rect.bottom && rect.top < over.bottom;
  const covered = (rect, element) =>
    handles.some((handle) => meets(handle, rect)) || (foot && !foot.contains(element) && meets(foot.getBoundingClientRect(), rect));
  const texts = [];
  const note = (element, words, rects, color) => {
    const style = getComputedStyle(element);
    const size = Number.parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    // Around a text with a halo it is the halo that the eye sees.
    const halo = element.namespaceURI.endsWith("svg") && style.stroke !== "none" ? style.stroke : null;
    for (const rect of rects) {
      const { left, top, width, height } = rect;
      if (!covered(rect, element) && width > 1 && height > 1) texts.push({ words, color, large, halo, box: [left + scrollX, top + scrollY, width, height] });
    }
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const element = node.parentElement;
    const words = node.data.trim();
    if (!words || !shown(element) || element.closest("title, desc, option, noscript, :disabled")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const style = getComputedStyle(element);
    note(element, words, range.getClientRects(), element.namespaceURI.endsWith("svg") ? style.fill : style.color);
  }
  for (const control of document.querySelectorAll("input:not([type=file]), select")) {
    if (shown(control)) note(control, control.value, [control.getBoundingClientRect()], getComputedStyle(control).color);
  }
  return texts;
}

/** Takes all texts out of sight, or puts them back. Runs in the page; a sheet made by a script is no offence to its content policy. */
function hide(hidden) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("* { color: transparent !important; -webkit-text-fill-color: transparent !important } svg text { fill: transparent !important; stroke: none !important }");
  document.adoptedStyleSheets = hidden ? [sheet] : [];
}

/** Compares each text with the picture behind it. Runs in the decoder. */
async function judge({ texts, picture, share }) {
  const bytes = Uint8Array.from(atob(picture), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
  const canvas = new OffscreenCanvas(image.width, image.height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  context.drawImage(image, 0, 0);
  const rgb = (color) => color.match(/[\d.]+/g).slice(0, 3).map(Number);
  const light = (parts) => {
    const [r, g, b] = parts.map((part) => part / 255).map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ratio = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
  const grounds = ([left, top, width, height]) => {
    // A text's box has air above and below its letters, through which rules of tables run.
    const x = Math.max(0, Math.round(left));
    const y = Math.max(0, Math.round(top + 0.2 * height));
    const wide = Math.min(Math.round(width), image.width - x);
    const high = Math.min(Math.round(0.6 * height), image.height - y);
    if (wide < 1 || high < 1) return [];
    const { data } = context.getImageData(x, y, wide, high);
    const counts = new Map();
    for (let at = 0; at < data.length; at += 4) {
      const key = (data[at] << 16) | (data[at + 1] << 8) | data[at + 2];
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    const most = [...counts].filter(([, count]) => count > share * wide * high);
    return most.map(([key]) => [key >> 16, (key >> 8) & 255, key & 255]);
  };
  const faults = new Set();
  for (const { words, color, large, halo, box } of texts) {
    const behind = halo ? [rgb(halo)] : grounds(box);
    const seen = Math.min(...behind.map((ground) => ratio(rgb(color), ground)));
    if (seen < (large ? 3 : 4.5)) faults.add(`"${words}" ${color} on ${behind.join(" and ")}: ${seen.toFixed(2)}`);
  }
  return [...faults];
}
