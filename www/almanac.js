// Reads weather files and marches through years away from the page, in slices: newer work comes in between two of them.
import { find, keep } from "./almanac-files.js";
import { does as troubles } from "./almanac-troubles.js";
import { partsOf, run, unheard } from "./module.js";

/** So long it works before it looks for messages, ms. */
const SLICE = 20;
/** After so long it says how much of a year is done, and then so often, ms: each word costs the page a frame, in which the year is not marched where there are few cores. */
const SAYS = 300;
/** So much of a file is read before it looks at the clock, bytes. */
const PIECE = 1 << 16;

const turns = new MessageChannel();
let waiting = [];
turns.port1.onmessage = () => waiting.splice(0).forEach((go) => go());

/** Lets messages in. */
const breath = () =>
  new Promise((go) => {
    waiting.push(go);
    turns.port2.postMessage(null);
  });

const NAME = "dewrun-almanac";
/** The module, compiled, and what it offers; both stand before a message is answered. */
let module;
let almanac;

/** The newest job of each kind; work of another is given up. */
const newest = { read: 0, follow: 0, member: 0, cures: 0, troubles: 0 };
/** Files that were read, by their hashes. */
const held = new Map();

const tell = (job, kind, body) => self.postMessage({ job, kind, body });

/** Why there is no member. */
const NOT_HERE = "a file that the year goes by is not on this device";
/** Humidities below freezing are taken as the project says. */
const AS_SAID = -1;

/** A file by its hash; nothing where it is neither held nor kept. */
const fileOf = async (hash) => held.get(hash) ?? (await find(hash));

/** The reading that is under way: another begins when it has ended. */
let reading = Promise.resolve();

/** Reads a file as a project says, or as it is found without one, and holds it: its hash, a sentence in a list why not, or nothing where newer work came in. */
function readAs(...asked) {
  const own = reading.then(() => readNow(...asked));
  reading = own.catch(() => {});
  return own;
}

async function readNow(file, { said, run, isInDuct, over }, isWanted, going) {
  if (!isWanted()) return;
  const wrong = almanac.read_begin(said, run, isInDuct, over);
  if (wrong !== undefined) return [wrong];
  const stream = file.stream().getReader();
  let until = performance.now() + SLICE;
  let length = 0;
  for (;;) {
    const { value, done } = await stream.read();
    if (!isWanted()) return void stream.cancel();
    if (done) break;
    for (let at = 0; at < value.length; at += PIECE) {
      const piece = value.subarray(at, at + PIECE);
      const refused = almanac.read_piece(piece);
      if (refused !== undefined) {
        stream.cancel();
        return [refused];
      }
      length += piece.length;
      if (performance.now() < until) continue;
      going?.(length / file.size, file);
      await breath();
      if (!isWanted()) return void stream.cancel();
      until = performance.now() + SLICE;
    }
  }
  const hash = almanac.read_end(file.name);
  if (typeof hash === "string") held.set(hash, file);
  return hash;
}

/** Holds what the year of a run goes by, its weather and what was measured in its duct, out of `files` or of what is kept: nothing where newer work came in, else the hash of what can't be had, which is empty where all is there. */
async function supply({ project, run, files }, isWanted, going) {
  for (const [place, hash] of almanac.lacks(project, run).entries()) {
    if (!hash) continue;
    const file = files?.[hash] ?? (await fileOf(hash));
    if (!isWanted()) return;
    if (!file) return hash;
    const read = await readAs(file, { said: project, run, isInDuct: place === 1, over: AS_SAID }, isWanted, going);
    if (read === undefined) return;
    if (read !== hash) return hash;
  }
  return "";
}

const does = {
  /** A file that a person opened, or one of those that are held taken in another way: the weather, or what was measured in the duct of a run. */
  async read(job, { file, isInDuct, isOwn, over = isOwn ? AS_SAID : 0, hash, project, run, numbers }) {
    newest.cures = job;
    // What a project says of its file is not said of another.
    const said = file && !isOwn ? "" : project;
    file ??= await fileOf(hash);
    const isWanted = () => newest.read === job;
    const going = (share) => tell(job, "reading", { name: file.name, share });
    going(0);
    const done = await readAs(file, { said, run, isInDuct, over }, isWanted, going);
    if (done === undefined) return;
    if (typeof done !== "string") return tell(job, "refused", { name: file.name, sentence: done[0] });
    const isKept = await keep(done, file);
    if (!isWanted()) return;
    const changed = isInDuct ? almanac.with_air_in_duct(project, run) : almanac.with_weather(project);
    const told = almanac.files_told(typeof changed === "string" ? changed : project, run, numbers);
    tell(job, "held", { isKept, told, project: changed });
  },

  /** The year of a project that goes by a weather file. */
  async follow(job, { project, run, numbers }) {
    const isWanted = () => newest.follow === job;
    const missing = await supply({ project, run }, isWanted, (share, { name }) => tell(job, "reading", { name, share }));
    if (missing === undefined) return;
    if (missing) return tell(job, "missing", { hash: missing });
    let turn = almanac.year_begin(project, run);
    // Remedies are those of one year.
    if (turn !== true) newest.cures = job;
    let until = performance.now() + SLICE;
    let says = performance.now() + SAYS;
    while (typeof turn === "number" || turn === false) {
      if (until < performance.now()) {
        if (says < performance.now()) {
          tell(job, "going", { share: Number(turn) });
          says = performance.now() + SAYS;
        }
        await breath();
        if (!isWanted()) return;
        until = performance.now() + SLICE;
      }
      turn = almanac.year_turn();
    }
    if (turn !== true) return tell(job, "none", { sentence: turn[0], told: almanac.files_told(project, run, numbers) });
    const [, , , , , at = almanac.step([])] = numbers;
    shows(job, "year", numbers, at, ["sentence", "maps", "charts", "months", "hand", "hour", "granted", "square-told"], {
      told: almanac.files_told(project, run, numbers),
      square: almanac.square(),
    });
  },

  /** What would make it dry enough, told as it is found. */
  async cures(job, { numbers }) {
    const isWanted = () => newest.cures === job;
    const wrong = almanac.cures_begin();
    if (wrong !== undefined) return tell(job, "cured", { told: `<p>${wrong}.</p>`, first: "", share: 1 });
    const told = () => ranked(numbers);
    let until = performance.now() + SLICE;
    for (let known = 0; ; ) {
      const [share, now] = almanac.cures_turn();
      if (share === 1) return tell(job, "cured", { ...told(), share });
      if (known < now) {
        known = now;
        tell(job, "cures", { ...told(), share });
      }
      if (performance.now() < until) continue;
      await breath();
      if (!isWanted()) return;
      until = performance.now() + SLICE;
    }
  },

  /** The same in another order. */
  async ranked(job, { numbers }) {
    tell(job, "ranked", ranked(numbers));
  },

  /** The project with one of them made. */
  async cure(job, { number }) {
    tell(job, "route", { project: almanac.cured(number) });
  },

  /** No more of them. */
  async rest(job) {
    newest.cures = job;
    tell(job, "stopped", {});
  },

  /** A member of the ensemble of a year, marched by itself: the numbers to tell it by, of none where it has no answer. */
  async member(job, { project, run, files, number }) {
    const isWanted = () => newest.member === job;
    const missing = await supply({ project, run, files }, isWanted);
    if (missing === undefined) return;
    if (missing) return tell(job, "broken", { sentence: NOT_HERE });
    const begun = almanac.member_begin(project, run, number);
    if (typeof begun !== "boolean") return tell(job, "broken", { sentence: begun[0] });
    let until = performance.now() + SLICE;
    while (begun && !almanac.member_turn()) {
      if (performance.now() < until) continue;
      await breath();
      if (!isWanted()) return;
      until = performance.now() + SLICE;
    }
    const [numbers, hours] = almanac.member_end();
    self.postMessage({ job, kind: "member", body: { number, numbers, hours } }, [numbers.buffer, hours.buffer]);
  },

  /** How sure the year is by the members so far; the first of them is the year as it is entered. */
  async doubt(job, { project, run, files, numbers, members }) {
    await supply({ project, run, files }, () => true);
    const all = new Float64Array(members.reduce((sum, one) => sum + one.length, 0));
    members.reduce((at, one) => (all.set(one, at), at + one.length), 0);
    const lengths = Uint32Array.from(members, (one) => one.length);
    const html = almanac.doubt(project, run, Float64Array.from(numbers), all, lengths);
    tell(job, "doubt", typeof html === "string" ? { html, count: members.length - 1 } : { sentence: html[0] });
  },

  ...troubles(
    () => almanac,
    tell,
    (job) => newest.troubles === job,
    (project, run) => supply({ project, run }, () => true),
  ),

  /** What a calculation sheet says of the year. */
  async sheet(job, { numbers }) {
    tell(job, "sheet", { text: almanac.sheet(Float64Array.from(numbers)) });
  },

  /** The module, and files of a project by their hashes, to be read by others too; no files where one can't be had. Then the year as it is entered, where it stands here: others need not march it again. */
  async lend(job, { project, run, hashes }) {
    const files = await Promise.all(hashes.map(async (hash) => [hash, await fileOf(hash)]));
    tell(job, "lend", { files: files.every(([, file]) => file) ? Object.fromEntries(files) : undefined, module });
    const [numbers, hours] = almanac.member_entered(project, run) ?? [];
    tell(job, "lent", { project, numbers, hours });
  },

  /** Another hour of it. */
  async hour(job, { numbers, by }) {
    shows(job, "hour", numbers, almanac.step(by), ["hand", "hour"], {});
  },

  /** A figure of it, and how it follows from what. */
  async opened(job, { numbers, id }) {
    shows(job, "opened", numbers, almanac.step([]), [`opened ${id}`], { id });
  },

  /** Files of a project by their hashes, to be saved with it. */
  async files(job, { hashes }) {
    const files = await Promise.all(hashes.map(fileOf));
    tell(job, "files", { files: files.filter(Boolean) });
  },

  /** The project as it stands in an hour of it. */
  async route(job, { at }) {
    tell(job, "route", { project: almanac.project_at(at) });
  },
};

/** The remedies that are known, ranked, and the first of them for the answer. */
function ranked(numbers) {
  const by = Float64Array.from(numbers);
  return { told: almanac.cures(by), first: almanac.first_cures(by) };
}

function shows(job, kind, numbers, at, parts, body) {
  const asked = Float64Array.from([...numbers.slice(0, 5), at]);
  for (const part of parts) body[part] = almanac.shown(part, asked);
  tell(job, kind, { ...body, at });
}

self.onmessage = ({ data: { job, kind, body } }) => {
  if (kind === "stop") {
    newest.read = newest.follow = newest.member = newest.cures = newest.troubles = job;
    return tell(job, "stopped", {});
  }
  if (kind === "begin") return void begins(body.module).catch(unheard);
  // Whoever asks twice waits for a sign of life and not for the answer.
  tell(job, "heard", {});
  if (kind in newest) newest[kind] = job;
  does[kind](job, body).catch((error) => tell(job, "broken", { sentence: `${error}` }));
};

/** Runs the module that was lent, or its own. */
async function begins(lent) {
  const parts = await partsOf(NAME, lent);
  [, module] = parts;
  almanac = await run(parts);
  self.postMessage({ kind: "ready" });
}

// A worker of that name waits until it is lent what another has compiled.
if (self.name !== "lent") begins().catch(unheard);
