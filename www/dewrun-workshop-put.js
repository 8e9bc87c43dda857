// Puts mark-up in place, though never under a finger: what is pressed stays until it is let go, or the press would be lost.

/** What takes a press. A handle that is dragged is none: what it moves follows it. */
const TAKES = "button, a, summary, label, select, input";

let pressed;
/** What a place shows once nothing in it is pressed. */
const later = new Map();

addEventListener("pointerdown", ({ target }) => (pressed = target.closest?.(TAKES)), true);
for (const kind of ["pointerup", "pointercancel"]) {
  addEventListener(
    kind,
    () => {
      pressed = undefined;
      // The click comes before that.
      setTimeout(() => {
        const changes = [...later.values()];
        later.clear();
        for (const change of changes) change();
      });
    },
    true,
  );
}

/** Makes a change to a place, once nothing in it is pressed; only the newest is made. */
export function once(place, change) {
  if (pressed && place.contains(pressed)) return void later.set(place, change);
  later.delete(place);
  change();
}

/** Puts mark-up into a place. */
export function put(place, html) {
  once(place, () => {
    if (place.innerHTML !== html) place.innerHTML = html;
  });
}
