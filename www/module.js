// Loads a module of the page and runs it: the page's own, or what it does beyond the first answer.

/** The script of that name and the module it is the script of, once all of it has arrived. */
export async function load(name) {
  const order = bytes(`${name}_order.wasm`);
  // A module that was not packed has none and does not ask for it.
  order.catch(() => {});
  const [script, { isPacked, unpack }, file] = await Promise.all([
    scriptOf(name),
    import("./unpack.js"),
    bytes(`${name}_bg.wasm`),
  ]);
  return [script, isPacked(file) ? unpack(file, await order) : file];
}

/** The same compiled, with its script: what others may run without compiling it again. */
export async function compiled(name) {
  const [script, file] = await load(name);
  return [script, await WebAssembly.compile(file)];
}

/** The same for a worker that may have been lent what another has compiled. */
export const partsOf = async (name, lent) => (lent ? [await scriptOf(name), lent] : compiled(name));

/** The script of that name alone. */
const scriptOf = (name) => import(`./${name}.js`);

/** Lets whoever began this worker hear of what went wrong in it. */
export const unheard = (error) =>
  setTimeout(() => {
    throw error;
  });

/** Runs it and gives what it offers. */
export async function run([script, module]) {
  await script.default({ module_or_path: module });
  return script;
}

async function bytes(name) {
  const address = new URL(name, import.meta.url);
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address.pathname}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
