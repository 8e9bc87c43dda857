// Plausible years of a run: members of its ensemble, marched once by as many workers as the device has hands for, for all who tell something by them.

/** No device gets more workers. */
const MOST = 8;
/** The year with all values as they stand. */
const AS_ENTERED = -1;

/** What members are of: the run in its weather, whatever is noted beside it and whatever counts as dry enough. */
export function keyOf({ project, run, hash }) {
  const { name, note, target, ...rest } = JSON.parse(project);
  for (const one of rest.runs) delete one.troubles;
  return `${hash} ${run} ${JSON.stringify(rest)}`;
}

/** Hashes of the files that the year of a run goes by: its weather, and what was measured in its duct. */
export function hashesOf({ project, run, hash }) {
  const { source } = JSON.parse(project).runs[run].duct;
  return source?.from === "measured" && source.file ? [hash, source.file.sha256] : [hash];
}

/** Marches members; `ask` asks the worker that holds their files. */
export class Members {
  #ask;
  #key;
  #about;
  #files;
  #next;
  #workers = [];
  #known = new Map();
  /** Who wants how many: `more` is called with each that comes, `broken` with a sentence. */
  #wanting = new Map();

  constructor(ask) {
    this.#ask = ask;
  }

  /** Wants the first members of what a project is about. */
  want(who, about, count) {
    const key = keyOf(about);
    if (key !== this.#key) {
      this.#ends();
      this.#known.clear();
      [this.#key, this.#about, this.#next] = [key, about, AS_ENTERED];
      for (const other of this.#wanting.keys()) if (other !== who) this.#wanting.delete(other);
    }
    this.#wanting.set(who, count);
    if (this.has(count)) return who.more();
    if (!this.#workers.length) this.#ask("lend", { project: about.project, run: about.run, hashes: hashesOf(about) });
    return undefined;
  }

  /** Wants none any more; those that are known stay. */
  leave(who) {
    this.#wanting.delete(who);
    if (!this.#wanting.size) this.#ends();
  }

  /** How many of the first are known, the year as it is entered besides. */
  get count() {
    let count = 0;
    while (this.#known.has(count)) count += 1;
    return this.#known.has(AS_ENTERED) ? count : 0;
  }

  /** Whether so many are known of what a project is about. */
  has(count, about) {
    return (!about || keyOf(about) === this.#key) && count <= this.count;
  }

  /** The files that they are marched by, by their hashes. */
  get files() {
    return this.#files;
  }

  /** How many are known, whatever their order. */
  get known() {
    return Math.max(0, this.#known.size - 1);
  }

  /** The year as it is entered and the first members, each with its numbers and its hours. */
  first(count) {
    return Array.from({ length: count + 1 }, (_, at) => this.#known.get(at - 1));
  }

  /** The files are at hand, and the module as another worker has compiled it and warmed it: the workers begin. */
  lent(files, module) {
    if (!this.#wanting.size || this.#workers.length) return;
    if (!files) return this.#broken("a file that the year goes by is not on this device");
    this.#files = files;
    const start = document.querySelector("script[type=module]").src;
    const hands = Math.max(1, Math.min(MOST, navigator.hardwareConcurrency || 1));
    for (let hand = 0; hand < hands; hand += 1) {
      const worker = new Worker(new URL("almanac.js", start), { type: "module", name: "lent" });
      worker.postMessage({ kind: "begin", body: { module } });
      worker.onmessage = ({ data: { kind, body } }) => {
        if (kind === "broken") return this.#broken(body.sentence);
        if (kind === "member") {
          this.#known.set(body.number, body);
          for (const who of [...this.#wanting.keys()]) who.more();
        }
        if (kind === "ready" || kind === "member") this.#gives(worker);
        return undefined;
      };
      worker.onerror = (event) => this.#broken(event.message ?? "a worker did not start");
      this.#workers.push(worker);
    }
  }

  /** The year of a project as it is entered, as the worker that holds the files has marched it; without numbers it has none. */
  entered({ project, numbers, hours }) {
    if (!numbers || project !== this.#about.project) return;
    this.#known.set(AS_ENTERED, { number: AS_ENTERED, numbers, hours });
    for (const who of [...this.#wanting.keys()]) who.more();
  }

  #gives(worker) {
    if (!this.#workers.includes(worker)) return;
    const most = Math.max(0, ...this.#wanting.values());
    while (this.#known.has(this.#next)) this.#next += 1;
    if (most <= this.#next) {
      worker.terminate();
      this.#workers = this.#workers.filter((one) => one !== worker);
      return;
    }
    const number = this.#next++;
    worker.postMessage({ job: number + 2, kind: "member", body: { ...this.#about, files: this.#files, number } });
  }

  #broken(sentence) {
    this.#ends();
    for (const who of [...this.#wanting.keys()]) who.broken(sentence);
    this.#wanting.clear();
  }

  /** What was begun and not told is begun again next time. */
  #ends() {
    for (const worker of this.#workers.splice(0)) worker.terminate();
    this.#next = AS_ENTERED;
  }
}
