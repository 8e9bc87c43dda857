// Loads the page's module and runs it, on the page and in its worker.

/** What the module is made of, once all of it has arrived. */
export function load() {
  return Promise.all([
    import("./dewrun-web.js"),
    import("./unpack.js"),
    bytes(new URL("./dewrun-web_bg.wasm", import.meta.url)),
  ]);
}

export async function run([page, { unpack }, file]) {
  await page.default({ module_or_path: unpack(file) });
}

async function bytes(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address.pathname}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
