// The section Year as a person meets it, for all tests that open a weather file.
import { ROOT, answered } from "./harness.mjs";

export const GULL_HARBOUR = `${ROOT}demo/gull-harbour.csv`;

export const year = (page) => page.getByRole("region", { name: "Year", exact: true });
export const hand = (page) => page.getByRole("slider", { name: "Hour" });
export const sentence = (page) => page.locator(".dw-year__sentence").innerText();
export const chosen = (page) => page.getByLabel("Open weather file");

/** Waits until the section of the year can take a file. */
export async function ready(page) {
  await answered(page);
  await chosen(page).waitFor({ state: "attached" });
}

/** Opens the example with make-up air, ready to take a file. */
export async function open(site, width = 1440, height = 1000, scheme = "light") {
  const page = await site.openAt(width, height, scheme, "#example=make-up-air");
  await ready(page);
  return page;
}

/** The same with the year of the invented file. */
export async function opened(site, ...looks) {
  const page = await open(site, ...looks);
  await chosen(page).setInputFiles(GULL_HARBOUR);
  await hand(page).waitFor();
  return page;
}

/** Drops a text as a file of that name anywhere on the page. */
export function drop(page, name, text) {
  return page.evaluate(
    ({ name, text }) => {
      const data = new DataTransfer();
      data.items.add(new File([text], name));
      document.body.dispatchEvent(new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: data }));
    },
    { name, text },
  );
}
