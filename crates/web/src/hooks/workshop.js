// The page's second module: what it shows and finds beyond the first answer.

let loading;
let workshop;
/** The module as it is compiled. */
let compiled;

/** Loads it, if that was not begun; what it offers, once it stands. */
export function load() {
  loading ??= loaded().catch((error) => {
    // Another time there may be a network.
    loading = undefined;
    throw error;
  });
  return loading;
}

async function loaded() {
  const start = document.querySelector("script[type=module]").src;
  const module = await import(new URL("module.js", start));
  const parts = await module.compiled("dewrun-workshop");
  [, compiled] = parts;
  workshop = await module.run(parts);
  return workshop;
}

/** The module, compiled, for a worker that runs it too: it is put together only once. */
export async function lent() {
  await load();
  return compiled;
}

/** Loads it and says whether it stands now; where it can't be had the page does without. */
export function stand(then) {
  load().then(
    () => then(true),
    () => then(false),
  );
}

/** Its answer: numbers, a text, or a sentence in a list why there is none; nothing where it does not stand. */
export function ask(kind, project, run, numbers) {
  try {
    return workshop?.ask(kind, project, run, numbers);
  } catch (error) {
    // A module that has stopped in the middle of something answers nothing any more.
    workshop = undefined;
    return [`${error}`];
  }
}
