// How sure a year is: its members are marched by as many workers as the device has hands for, and told some at a time.

/** Members; after so many of them, and of all before, something is said. */
const STEPS = [32, 64, 128, 256];
const ALL = STEPS.at(-1);
/** No device gets more workers. */
const MOST = 8;
/** The year with all values as they stand. */
const AS_ENTERED = -1;

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

/** Takes years again and again; `part` finds a part of the section, `ask` asks the worker that tells. */
export class Doubting {
  #part;
  #ask;
  #workers = [];
  /** What the members are of, and of what those that are shown are. */
  #about;
  #shown;
  #members = new Map();
  #next;
  #told;
  #file;
  /** An answer is on its way. */
  #isAsked = false;

  constructor(part, ask) {
    this.#part = part;
    this.#ask = ask;
  }

  /** Begins; the file comes from the worker that holds it. */
  begin(about) {
    this.#ends();
    this.#about = about;
    this.#members.clear();
    this.#next = AS_ENTERED;
    this.#told = 0;
    this.#isAsked = false;
    this.#part("doubt-work").hidden = false;
    this.#counts();
    this.#ask("lend", {});
  }

  /** The weather file is at hand: the workers begin. */
  lent(file) {
    if (!this.#about || this.#workers.length) return;
    this.#file = file;
    const start = document.querySelector("script[type=module]").src;
    const hands = Math.max(1, Math.min(MOST, navigator.hardwareConcurrency || 1));
    for (let hand = 0; hand < hands; hand += 1) {
      const worker = new Worker(new URL("almanac.js", start), { type: "module" });
      worker.onmessage = ({ data: { kind, body } }) => {
        if (kind === "broken") return this.#broken(body.sentence);
        if (kind === "member") this.#takes(body);
        if (kind === "ready" || kind === "member") this.#gives(worker);
      };
      worker.onerror = (event) => this.#broken(event.message ?? "a worker did not start");
      this.#workers.push(worker);
    }
  }

  #gives(worker) {
    if (!this.#about || ALL <= this.#next) return worker.terminate();
    const number = this.#next++;
    worker.postMessage({ job: number + 2, kind: "member", body: { ...this.#about, file: this.#file, number } });
  }

  #takes({ number, numbers }) {
    this.#members.set(number, numbers);
    this.#counts();
    this.#tells();
  }

  /** Tells the members so far, where as many are there as something is said of, whoever was first. */
  #tells() {
    let count = 0;
    while (this.#members.has(count)) count += 1;
    const step = STEPS.filter((one) => one <= count).at(-1);
    if (!step || step <= this.#told || this.#isAsked || !this.#members.has(AS_ENTERED)) return;
    this.#told = step;
    this.#isAsked = true;
    const members = Array.from({ length: step + 1 }, (_, at) => this.#members.get(at - 1));
    this.#ask("doubt", { ...this.#about, file: this.#file, members });
  }

  #counts() {
    const count = Math.max(0, this.#members.size - 1);
    this.#part("doubt-share").value = count;
    this.#part("doubt-doing").textContent = `${count} of ${ALL} plausible years`;
  }

  /** What the members come to. */
  shows({ html, count, sentence }) {
    if (!this.#about) return;
    if (sentence) return this.#broken(sentence);
    this.#shown = this.#about;
    this.#part("doubt").innerHTML = html;
    this.#part("doubt").classList.remove("dw-stale");
    this.#part("doubt-note").textContent = count < ALL ? `Told by the first ${count} of ${ALL} plausible years.` : `Told by all ${ALL} plausible years.`;
    this.#isAsked = false;
    if (count === ALL) this.#ends();
    else this.#tells();
  }

  /** The project is this one now: what stands here holds for the one before. */
  follows({ project, run, hash }) {
    const is = (about) => about && about.project === project && about.run === run && about.hash === hash;
    if (this.#about && !is(this.#about)) this.#ends();
    const isStale = this.#shown && !is(this.#shown);
    this.#part("doubt").classList.toggle("dw-stale", Boolean(isStale));
    if (isStale) this.#part("doubt-note").textContent = "What stands here holds for the project before the last change: take it again.";
  }

  stop() {
    this.#ends();
    const words = this.#shown ? "Stopped: what was told before stands." : "Stopped before anything could be told.";
    this.#part("doubt-note").textContent = words;
  }

  #broken(sentence) {
    this.#ends();
    this.#part("doubt-note").textContent = `How sure the year is can\u2019t be told here: ${sentence}.`;
  }

  #ends() {
    for (const worker of this.#workers.splice(0)) worker.terminate();
    this.#about = undefined;
    this.#part("doubt-work").hidden = true;
  }
}
