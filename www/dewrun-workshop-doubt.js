// How sure a year is: plausible years of it are marched, and told some at a time.
import { keyOf } from "./dewrun-workshop-members.js";
import { once } from "./dewrun-workshop-put.js";

/** Members; after so many of them, and of all before, something is said. */
const STEPS = [32, 64, 128, 256];
const ALL = STEPS.at(-1);

/** Numbers of the year's sentence, by their figure, and what is told of each. */
const BESIDE = {
  "year-wet-hours": "wet_hours",
  "year-water": "water_kg",
  "year-mist": "mist_hours",
  "year-frost": "frost_hours",
  "year-chamber": "humid_hours",
  "year-troubles": "blind_hours",
};

/** The part of the section in which it stands. */
export const DOUBT = `<div class="dw-year__doubt" role="group" aria-label="How sure is this year?">
  <p class="dw-year__part">How sure is this year?</p>
  <p data-year="doubt-note" aria-live="polite">The year again and again, everything that is assumed or measured taken anywhere within its span.</p>
  <p class="dw-sheets__acts"><button type="button" class="dw-button" data-do="doubt">Take it ${ALL} times</button></p>
  <div class="dw-year__work" data-year="doubt-work" hidden>
    <progress max="${ALL}" value="0" data-year="doubt-share" aria-label="Plausible years"></progress>
    <p><span data-year="doubt-doing"></span> <button type="button" class="dw-link" data-do="stop-doubt">Stop</button></p>
  </div>
  <div data-year="doubt"></div>
</div>`;

/** Takes years again and again; `part` finds a part of the section, `ask` asks the worker that tells, `members` are those years, `rests` hears when nobody waits for the first of them any more. */
export class Doubting {
  #part;
  #ask;
  #members;
  #rests;
  /** What the members are of, and of what those that are shown are. */
  #about;
  #shown;
  #told;
  /** An answer is on its way. */
  #isAsked = false;

  constructor(part, ask, members, rests) {
    this.#part = part;
    this.#ask = ask;
    this.#members = members;
    this.#rests = rests;
  }

  /** It was pressed, and nothing is told yet. */
  get isAwaited() {
    return Boolean(this.#about) && this.#shown !== this.#about;
  }

  /** Begins. */
  begin(about) {
    this.#about = about;
    this.#told = 0;
    this.#isAsked = false;
    this.#part("doubt-work").hidden = false;
    this.#members.want(this, about, ALL);
    this.#counts();
  }

  /** One more is known. */
  more() {
    this.#counts();
    this.#tells();
  }

  /** Tells the members so far, where as many are there as something is said of, whoever was first. */
  #tells() {
    const { count } = this.#members;
    const step = STEPS.filter((one) => one <= count).at(-1);
    if (!this.#about || !step || step <= this.#told || this.#isAsked) return;
    this.#told = step;
    this.#isAsked = true;
    const members = this.#members.first(step).map(({ numbers }) => numbers);
    this.#ask("doubt", { ...this.#about, files: this.#members.files, members });
  }

  #counts() {
    const count = this.#members.known;
    this.#part("doubt-share").value = count;
    this.#part("doubt-doing").textContent = `${count} of ${ALL} plausible years`;
  }

  /** What the members come to. */
  shows({ html, count, sentence }) {
    if (!this.#about) return;
    if (sentence) return this.broken(sentence);
    this.#shown = this.#about;
    const place = this.#part("doubt");
    place.classList.remove("dw-stale");
    once(place, () => {
      place.innerHTML = html;
      this.beside();
    });
    this.#part("doubt-note").textContent = count < ALL ? `Told by the first ${count} of ${ALL} plausible years.` : `Told by all ${ALL} plausible years.`;
    this.#isAsked = false;
    this.#rests();
    if (count === ALL) this.#ends();
    else this.#tells();
  }

  /** Behind each number of the year's sentence, between what four of five plausible years lie. */
  beside() {
    for (const span of this.#part("sentence").querySelectorAll(".dw-year__span")) span.remove();
    const told = this.#part("doubt");
    if (told.classList.contains("dw-stale")) return;
    for (const [figure, id] of Object.entries(BESIDE)) {
      const number = this.#part("sentence").querySelector(`[data-year-figure="${figure}"]`);
      const row = told.querySelector(`tr[data-quantity="${id}"]`);
      // The sentence says litres in all units.
      if (!number || !row || (id === "water_kg" && row.lastElementChild.innerText !== "L")) continue;
      const values = [...row.querySelectorAll("data")].slice(-3);
      const span = document.createElement("span");
      span.className = "dw-year__span";
      span.textContent = ` (${values[0].innerText} to ${values[2].innerText})`;
      (number.closest("b") ?? number).after(span);
    }
  }

  /** The project is this one now: what stands here holds for the one before. */
  follows(now) {
    const key = now.hash && keyOf(now);
    const is = (about) => about && now.hash && keyOf(about) === key;
    if (this.#about && !is(this.#about)) this.#ends();
    const isStale = this.#shown && !is(this.#shown);
    this.#part("doubt").classList.toggle("dw-stale", Boolean(isStale));
    if (isStale) this.beside();
    if (isStale) this.#part("doubt-note").textContent = "What stands here holds for the project before the last change: take it again.";
  }

  stop() {
    this.#ends();
    const words = this.#shown ? "Stopped: what was told before stands." : "Stopped before anything could be told.";
    this.#part("doubt-note").textContent = words;
  }

  /** There are none. */
  broken(sentence) {
    this.#ends();
    this.#part("doubt-note").textContent = `How sure the year is can\u2019t be told here: ${sentence}.`;
  }

  #ends() {
    this.#about = undefined;
    this.#members.leave(this);
    this.#part("doubt-work").hidden = true;
    this.#rests();
  }
}
