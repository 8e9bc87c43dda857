// What a person does in the section Sheets; what it says is made by the page's second module.
import "./dewrun-workshop-style.js";
import { words } from "./dewrun-workshop-troubles.js";
import { onSheet } from "./dewrun-workshop-year.js";

const FIELD = "\u001f";
const NAME = "\u001e";
const EMPTIED = /^(water-|note$|.*_(s|pa|l_min)$)/;

const start = () => document.querySelector("script[type=module]").src;
const file = (name) => new URL(name, start());
const wired = new WeakMap();

/** Wires a room: `ask` puts a question to the module, `take` puts another project on the desk, `day` is today. */
function wire(room, ask, take, day) {
  let pressed = [];
  let timer;
  const part = (name) => room.querySelector(`[data-room="${name}"]`);
  const button = (name) => room.querySelector(`[data-do="${name}"]`);
  const form = (name) => room.querySelector(`[data-form="${name}"]`);
  const filled = (name) =>
    [...form(name).elements]
      .filter((field) => field.name)
      .map((field) => field.name + NAME + field.value)
      .join(FIELD);
  const texts = (kind, numbers = [], said = "said") => {
    const answer = ask(kind, Float64Array.from(numbers));
    if (typeof answer === "string") return answer;
    if (answer) part(said).textContent = `${answer[0]}.`;
    return undefined;
  };

  /** A kind of sheet: its pages and its document by name, where it is shown and said, and the file that it is saved as. */
  const kindOfSheet = (name, whole, after, file) => {
    const told = async (kind) => {
      part(`said${after}`).textContent = "";
      const year = after === "-calculation" ? await onSheet() : "";
      const more = [["page", location.href.split("#")[0]], ["year", year], ["cause", words()]];
      return texts(`${kind} ${filled("card")}${more.map(([name, value]) => FIELD + name + NAME + value).join("")}`, [], `said${after}`);
    };
    const place = () => part(name === "site-card" ? "card" : name);
    const show = async () => {
      const opens = place().hidden;
      place().innerHTML = opens ? ((await told(name)) ?? "") : "";
      place().hidden = !opens || !place().innerHTML;
      button(`show${after}`).setAttribute("aria-expanded", `${!place().hidden}`);
    };
    const print = async () => {
      const body = await told(name);
      if (!body) return;
      // Hatches are found by name: of two sheets in the page only one may have them.
      if (!place().hidden) await show();
      const paper = document.createElement("div");
      paper.className = "dw-paper";
      paper.innerHTML = body;
      document.body.append(paper);
      const root = document.documentElement.classList;
      root.add("dw-prints-card");
      addEventListener(
        "afterprint",
        () => {
          root.remove("dw-prints-card");
          paper.remove();
        },
        { once: true },
      );
      await document.fonts.ready;
      window.print();
    };
    const save = async () => {
      const text = await told(whole);
      if (!text) return;
      const faces = await Promise.all([400, 700].map(face)).catch(() => []);
      const link = document.createElement("a");
      const own = text.replace("<style>", `<style>\n${faces.join("\n")}`);
      link.href = URL.createObjectURL(new Blob([own], { type: "text/html" }));
      link.download = file;
      link.click();
      URL.revokeObjectURL(link.href);
    };
    return { [`show${after}`]: show, [`print${after}`]: print, [`save${after}`]: save };
  };

  const paint = () => {
    const now = performance.now() / 1000;
    const said = texts(`stopwatch ${filled("visit")}`, [now, ...pressed]);
    if (said === undefined) return;
    const [word, time, taken, first] = said.split(FIELD);
    part("press").textContent = word;
    part("time").textContent = pressed.length ? time : "";
    if (part("taken").innerHTML !== taken) part("taken").innerHTML = taken;
    button("note").disabled = !first;
    button("again").disabled = !pressed.length;
  };
  const count = () => {
    clearInterval(timer);
    if (0 < pressed.length && pressed.length < 3) {
      // What counts stops with the room it counts in.
      timer = setInterval(() => (room.isConnected ? paint() : clearInterval(timer)), 100);
    }
    paint();
  };
  const press = () => {
    pressed = pressed.length === 3 ? [] : [...pressed, performance.now() / 1000];
    count();
  };
  const again = () => {
    pressed = [];
    count();
    button("press").focus();
  };
  const note = () => {
    const [, , , first, ninety] = texts(`stopwatch ${filled("visit")}`, [0, ...pressed]).split(FIELD);
    form("visit").elements.first_smoke_s.value = first;
    form("visit").elements.ninety_percent_s.value = ninety;
    told();
    form("visit").elements.first_smoke_s.focus();
  };

  const tell = (lines) => {
    for (const line of lines.split(FIELD)) {
      const [name, sign, words] = line.split(NAME);
      const place = room.querySelector(`[data-told="${name}"]`);
      if (!place) continue;
      if (place.innerHTML !== words) place.innerHTML = words;
      place.classList.toggle("dw-sheets__told--wrong", sign === "wrong");
      form("visit").elements[name].setAttribute("aria-invalid", `${sign === "wrong"}`);
    }
  };
  const told = () => {
    const lines = texts(`visit-told ${filled("visit")}`);
    if (lines !== undefined) tell(lines);
  };
  const visit = () => {
    const project = texts(`with-visit ${filled("visit")}`);
    if (project === undefined) return;
    if (project.startsWith(FIELD)) {
      told();
      tell(project.slice(1));
      room.querySelector("[aria-invalid=true]")?.focus();
      return;
    }
    for (const field of form("visit").elements) if (EMPTIED.test(field.name)) field.value = "";
    take(project);
  };

  const acts = {
    ...kindOfSheet("site-card", "site-document", "", "site-card.html"),
    ...kindOfSheet("calculation", "calculation-document", "-calculation", "calculation-sheet.html"),
    ...kindOfSheet("service-card", "service-document", "-service", "service-card.html"),
    press,
    again,
    note,
  };
  room.addEventListener("click", ({ target }) => acts[target.closest("[data-do]")?.dataset.do]?.());
  room.addEventListener("input", ({ target }) => {
    if (!target.closest("[data-form=visit]")) return;
    told();
    paint();
  });
  room.addEventListener("submit", (event) => {
    event.preventDefault();
    if (event.target === form("visit")) visit();
  });
  wired.set(room, () => {
    for (const field of room.querySelectorAll("[type=date]")) field.value ||= day;
    told();
    count();
  });
}

/** Puts mark-up into a room, which is wired with its first; what was typed there, and the focus, stay. */
export function put(room, html, ask, take, day) {
  if (!wired.has(room)) wire(room, ask, take, day);
  const kept = [...room.querySelectorAll("[name]")].map(({ id, value }) => [id, value]);
  const held = room.contains(document.activeElement) && document.activeElement;
  room.innerHTML = html;
  if (!room.querySelector("[data-form]")) return;
  for (const [id, value] of kept) {
    const field = document.getElementById(id);
    if (field) field.value = value;
  }
  const again = held && (document.getElementById(held.id) ?? room.querySelector(`[data-do="${held.dataset.do}"]`));
  if (again) again.focus({ preventScroll: true });
  wired.get(room)();
}

/** A weight of the typeface as a rule of its own. */
async function face(weight) {
  const name = weight === 400 ? "regular" : "bold";
  const answer = await fetch(file(`fonts/b612-${name}.woff2`));
  const letters = [...new Uint8Array(await answer.arrayBuffer())].map((code) => String.fromCharCode(code));
  return `@font-face { font-family: B612; font-weight: ${weight}; src: url(data:font/woff2;base64,${btoa(letters.join(""))}) format("woff2") }`;
}
