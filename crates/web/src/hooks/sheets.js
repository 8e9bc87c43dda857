// The section Sheets: what a person does there is a script of its own, loaded with its first mark-up.
let script;

/** Puts mark-up into a room and wires it; later mark-up replaces it. */
export function put(room, html, ask, take, day) {
  const start = document.querySelector("script[type=module]").src;
  script ??= import(new URL("dewrun-workshop-sheets.js", start));
  script.then(
    (sheets) => sheets.put(room, html, ask, take, day),
    // Another time there may be a network.
    () => (script = undefined),
  );
}
