// What a person does in some sections is a script of its own, loaded when it is first needed.
const scripts = {};

function load(name) {
  const start = document.querySelector("script[type=module]").src;
  scripts[name] ??= import(new URL(`dewrun-workshop-${name}.js`, start));
  // Another time there may be a network.
  scripts[name].catch(() => (scripts[name] = undefined));
  return scripts[name];
}

let year;

/** The year follows a run that `told` says; at once where its script stands, so that it is on its way before the paint. */
export function follow(told, take) {
  if (year) year.follow(told, take);
  else load("year").then((script) => (year = script).follow(told, take));
}

/** Puts mark-up into the room of the sheets and wires it; later mark-up replaces it. */
export function put(room, html, ask, take, day) {
  load("sheets").then((sheets) => sheets.put(room, html, ask, take, day));
}

/** The text of a file; nothing of one with weather, which the section of the year takes. */
export async function offer(file) {
  return (await load("year")).offer(file);
}

/** Ranks the causes of a project's troubles into a place on the empty page. */
export function rank(place, project, numbers) {
  // The numbers lie in the memory of the module, which moves.
  const own = numbers.slice();
  load("causes").then((causes) => causes.rank(place, project, own));
}
