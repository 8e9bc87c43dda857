// Loads the page's module and runs it, on the page and in its worker.

/** The page's script and the module it is the script of, once all of it has arrived. */
export async function load() {
  const order = bytes("dewrun-web_order.wasm");
  // A page that was not packed has none and does not ask for it.
  order.catch(() => {});
  const [page, { isPacked, unpack }, file] = await Promise.all([
    import("./dewrun-web.js"),
    import("./unpack.js"),
    bytes("dewrun-web_bg.wasm"),
  ]);
  return [page, isPacked(file) ? unpack(file, await order) : file];
}

export async function run([page, module]) {
  await page.default({ module_or_path: module });
}

async function bytes(name) {
  const address = new URL(name, import.meta.url);
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address.pathname}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
