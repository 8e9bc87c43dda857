// What a person does in the section Year; what it says is made by a worker, which runs the page's third module.
import "./dewrun-workshop-style.js";
import { DOUBT, Doubting } from "./dewrun-workshop-doubt.js";
import { Members, hashesOf } from "./dewrun-workshop-members.js";
import { MOST_PACKED, isPacked, save, unpack } from "./dewrun-workshop-packed.js";
import { Measure } from "./dewrun-workshop-measure.js";
import { put as putIn } from "./dewrun-workshop-put.js";
import * as remedies from "./dewrun-workshop-remedies.js";
import * as troubles from "./dewrun-workshop-troubles.js";

/** A worker that is wanted for something newer and says nothing for so long is ended, ms. */
const PATIENCE = 500;
/** A sheet waits no longer for its year, ms. */
const PATIENT = 4000;
/** An answer that comes sooner is not announced, ms. */
const SOON = 120;
/** What a worker can tell only while it knows a year. */
const OF_A_YEAR = ["hour", "opened", "cures", "ranked", "cure", "route"];
/** What parts what the second module tells of the open run. */
const FIELD = "\u001f";
/** What a project begins with, and a link that carries one. */
const PROJECT = /^\s*(\{|\S*#v1=)/;
/** What a weather file has: a number and what sets it off; or it says so by its name. */
const WEATHER = /\d\s*[,;\t]/;
const NAMES = /\.(epw|tm2|tmy3?|csv|tsv|txt|dat)$/i;
/** Files of projects are far smaller, bytes. */
const MOST = 1 << 24;

const BY_KEY = {
  ArrowLeft: -24,
  ArrowRight: 24,
  ArrowUp: -1,
  ArrowDown: 1,
  PageUp: -24 * 7,
  PageDown: 24 * 7,
  Home: -1e6,
  End: 1e6,
};
/** An invented year, which comes with the page. */
const EXAMPLE = "gull-harbour.csv";
const STEPS = [
  [-24, "\u22121 day"],
  [-1, "\u22121 h"],
  [1, "+1 h"],
  [24, "+1 day"],
];

const NONE =
  "<p>No weather file is open. Drop one anywhere on this page, or open it here: EPW, TMY3, TM2, PVGIS, or a logger\u2019s table. It stays on this device. Or look at an invented year first: <button type=\"button\" class=\"dw-link\" data-do=\"example\">Gull Harbour, example, not your site</button></p>";

const SKELETON = `
<div class="dw-year__file">
  <div data-year="told">${NONE}</div>
  <span class="dw-year__acts"><button type="button" class="dw-button" data-do="save" data-year="save" hidden>Save with weather</button>
  <label class="dw-act dw-open" data-year="in-duct" hidden>Open what was measured in the duct<input class="dw-spoken" type="file" data-year="open-in-duct"></label>
  <label class="dw-act dw-open">Open weather file<input class="dw-spoken" type="file" data-year="open"></label></span>
</div>
<div class="dw-year__work" data-year="work" hidden>
  <progress max="1" value="0" data-year="share" aria-label="Progress"></progress>
  <p><span data-year="doing" aria-live="polite"></span> <button type="button" class="dw-link" data-do="stop">Stop</button></p>
</div>
<div class="dw-year__fault" data-year="fault" aria-live="polite"></div>
<div data-year="all" hidden>
  <p class="dw-year__sentence" data-year="sentence"></p>
  <div class="dw-toggle dw-toggle--words dw-year__maps" role="group" aria-label="What the calendar shows" data-year="maps"></div>
  <div class="dw-year__charts"><div data-year="charts"></div><div data-year="hand"></div></div>
  <div class="dw-year__hour">
    <div data-year="hour"></div>
    <div class="dw-year__steps">${STEPS.map(([by, words]) => `<button type="button" data-by="${by}">${words}</button>`).join("")}<button type="button" data-do="route">Show in the route</button></div>
  </div>
  <div class="dw-opened dw-year__opened" role="region" aria-label="Where the figure of the year comes from" data-year="opened"></div>
  <div class="dw-scroll" role="region" aria-label="The months" tabindex="0" data-year="months"></div>
  <div data-year="granted"></div>
  ${DOUBT}
</div>`;

let room;
let take;
let worker;
let isReady = false;
let isHeard = false;
let jobs = 0;
/** The newest job of each kind that has no answer yet. */
const asked = new Map();
/** What the page is about: project, run, numbers, and the hash of its weather file. */
let now;
let [map, at] = [0, undefined];
/** A weather file that came before there was a project, and files that came with one. */
let waiting;
let brought = [];
/** The invented year was asked for. */
let isFetched = false;
/** The figure of the year that is open, and what opened it. */
let figure;
let announced;
/** How wide the room is. */
let measure;
/** Plausible years, and how sure the year is by them. */
let [members, doubt] = [];
/** Takes what a sheet says of the year. */
let onSheetDone;

const part = (name) => room.querySelector(`[data-year="${name}"]`);
const put = (name, html) => {
  const place = part(name);
  if (place) putIn(place, html);
};
const escaped = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt()};`);

/** The open run is another or has changed: `told` is what the second module says of it, `putOnDesk` puts another project on the desk. */
export function follow(told, putOnDesk) {
  const place = document.querySelector(".dw-year");
  if (!place) return;
  take = putOnDesk;
  if (room !== place) {
    room = place;
    room.innerHTML = SKELETON;
    members = new Members(ask);
    doubt = new Doubting(part, ask, members, remedies.seeks);
    wire();
  }
  const [project, run, ...style] = told.split(FIELD);
  const { weather, runs } = JSON.parse(project);
  const hash = weather?.sha256;
  const { source } = runs[run].duct;
  if (hash !== now?.hash || Number(run) !== now?.run) at = undefined;
  // Of what was measured in the duct a project may still know where its air comes from elsewhere now.
  const inDuct = source?.from === "measured" ? source.file : undefined;
  now = { project, run: Number(run), style: style.map(Number), hash, weather, inDuct };
  part("in-duct").hidden = !hash;
  doubt.follows(now);
  remedies.place(ask, now.style, about(), () => asked.has("follow") || asked.has("read") || doubt.isAwaited);
  troubles.follow(now, { ask, members, take });
  if (waiting) {
    const file = waiting;
    waiting = undefined;
    return opens(file);
  }
  if (hash) again();
  else closes();
}

/** What a year is known by. */
const about = () => `${now.hash} ${now.run} ${now.project}`;

/** What a calculation sheet says of the year that stands here; nothing where none does. */
export async function onSheet() {
  if (!now?.hash || part("all").hidden || part("all").classList.contains("dw-stale")) return "";
  return new Promise((done) => {
    onSheetDone = done;
    ask("sheet", { numbers: now.style });
    // Without an answer the sheet goes without a year.
    setTimeout(() => done(""), PATIENT);
  });
}

/** The year of what the page is about, in the room that there is. */
function again() {
  // A section that is not laid out yet is asked for once it is.
  if (now?.hash && measure.now[0]) ask("follow", { ...now, numbers: all() });
}

/** Without a weather file there is no year. */
function closes() {
  put("told", NONE);
  hides();
}

/** No year is shown, here or in the dew square. */
function hides() {
  part("all").hidden = true;
  part("save").hidden = true;
  square([], "");
  remedies.changed("");
}

/** Tells the dew square the hours of the year. */
function square(hours, told) {
  const place = document.querySelector(".dw-square");
  if (!place) return;
  putIn(place.querySelector(".dw-square__year"), told);
  place.dispatchEvent(new CustomEvent("hours", { detail: Float64Array.from(hours) }));
}

/** Opens a figure of the year, or closes it where it is that. */
function unfolds(id) {
  if (figure === id) return shuts();
  figure = id;
  ask("opened", { numbers: all(), id });
}

function shuts() {
  const from = figure;
  figure = undefined;
  put("opened", "");
  marks();
  room.querySelector(`[data-year-figure="${from}"]`)?.focus();
}

/** Says of every figure whether it is the one that is open. */
function marks() {
  for (const one of room.querySelectorAll("[data-year-figure]")) {
    one.setAttribute("aria-expanded", `${one.dataset.yearFigure === figure && !one.closest(".dw-year__opened")}`);
  }
}

/** A file that was dropped: a project's text, or nothing where it is weather. */
export async function offer(file) {
  const head = await file.slice(0, 4096).text();
  if (isPacked(head) && file.size <= MOST_PACKED) return unpacked(await file.text());
  const isProject = /\.json$/i.test(file.name) || PROJECT.test(head);
  if (!isProject && room?.isConnected) opens(file);
  else if (!isProject && !head.includes("\0") && (NAMES.test(file.name) || WEATHER.test(head))) {
    // On the empty page, what was answered there becomes the project that the weather is of.
    waiting = file;
    document.querySelector(".dw-button--first")?.click();
  } else return file.slice(0, MOST).text();
  return undefined;
}

/** The project in a text that holds its files too; these are read once it asks for them. */
async function unpacked(text) {
  const found = await unpack(text);
  brought = found.files ?? [];
  if (found.project) return found.project;
  // Whoever reads projects says where the text is damaged; else a file in it is.
  if (!found.isDamaged || !room?.isConnected) return text;
  return void tellFault("The project was not taken in: a file in it is damaged, save it anew. The open project is unchanged.");
}

/** Style, width and size of text, the map, and the step where one is picked. */
function all() {
  return [...now.style, ...measure.now, map, ...(at === undefined ? [] : [at])];
}

/** A file of which nothing is said is the weather, but for the one that is known as what was measured in the duct. */
function opens(file, isInDuct = file.name === now.inDuct?.file && file.name !== now.weather?.file) {
  tellFault("");
  const isOwn = file.name === (isInDuct ? now.inDuct : now.weather)?.file;
  ask("read", { file, isInDuct, isOwn, ...of(), numbers: all() });
  room.closest("section").scrollIntoView();
}

/** One of the files that are held is taken in another way. */
function taken(isInDuct, over) {
  const { sha256: hash } = isInDuct ? now.inDuct : now.weather;
  ask("read", { isInDuct, over: Number(over), hash, ...of(), numbers: all() });
}

/** What the page is about. */
const of = () => ({ project: now.project, run: now.run });

function wire() {
  measure = new Measure(room, again);
  const route = () => ask("route", { at });
  const acts = {
    stop,
    route,
    example,
    close: shuts,
    save: () => ask("files", { hashes: [...new Set(JSON.parse(now.project).runs.flatMap((_, run) => hashesOf({ ...now, run })))] }),
    doubt() {
      doubt.begin({ project: now.project, run: now.run, hash: now.hash, numbers: all() });
      remedies.yields();
    },
    "stop-doubt": () => doubt.stop(),
  };
  room.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (button?.dataset.do) acts[button.dataset.do]();
    else if (button?.dataset.yearFigure) unfolds(button.dataset.yearFigure);
    else if (button?.dataset.by) hour([at, Number(button.dataset.by)]);
    else if (button?.dataset.map) {
      map = Number(button.dataset.map);
      again();
    } else if (button?.dataset.over) taken(false, button.dataset.over);
    else if (button?.dataset.overInDuct) taken(true, button.dataset.overInDuct);
  });
  room.addEventListener("change", ({ target }) => {
    const { year } = target.dataset;
    const file = ["open", "open-in-duct"].includes(year) && target.files[0];
    if (!file) return;
    opens(file, year === "open-in-duct");
    // The same file may be chosen again after it was mended.
    target.value = "";
  });
  room.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && figure) shuts();
    const by = event.target.closest("[role=slider]") && BY_KEY[event.key];
    if (!by) return;
    event.preventDefault();
    hour([at, by]);
  });
  const pick = ({ target, clientX, clientY }) => {
    const touched = target.closest(".dw-year__hand")?.querySelector("rect");
    if (!touched) return;
    const box = touched.getBoundingClientRect();
    hour([0, (clientX - box.left) / box.width, (clientY - box.top) / box.height]);
  };
  room.addEventListener("pointerdown", (event) => pick(event));
  room.addEventListener("pointermove", (event) => event.buttons && pick(event));
}

async function example() {
  isFetched = true;
  const start = document.querySelector("script[type=module]").src;
  const answer = await fetch(new URL(EXAMPLE, start));
  if (answer.ok) opens(new File([await answer.blob()], EXAMPLE), false);
  else tellFault("The invented year did not arrive: try again when there is a network.");
}

function hour(by) {
  ask("hour", { numbers: all(), by });
}

/** Asks the worker, which is begun with the first question. */
function ask(kind, body) {
  const isNewer = isReady && asked.has(kind);
  const message = { job: ++jobs, kind, body };
  // What it has said before it hears that, and comes after, is of no search any more.
  if (kind === "rest") asked.delete("cures");
  asked.set(kind, message);
  if (kind === "read") remedies.waits();
  if (!worker) begin();
  else if (isReady) send(message, isNewer);
  if (kind !== "read" && kind !== "follow") return;
  clearTimeout(announced);
  announced = setTimeout(() => asked.get(kind) === message && works(kind === "read" ? "Reading" : "The year is being computed anew; what stands here is still that before the last change."), SOON);
}

function begin() {
  isReady = false;
  const start = document.querySelector("script[type=module]").src;
  worker = new Worker(new URL("almanac.js", start), { type: "module" });
  worker.onmessage = ({ data: { job, kind, body } }) => {
    isHeard = true;
    if (kind !== "ready") return answer(job, kind, body);
    isReady = true;
    for (const message of asked.values()) send(message);
  };
  worker.onerror = (event) => broken(event.message ?? "the worker did not start");
}

function send(message, isNewer) {
  worker.postMessage(message);
  if (!isNewer) return;
  isHeard = false;
  const asked = worker;
  setTimeout(() => !isHeard && worker === asked && anew(), PATIENCE);
}

/** Ends the worker; another does what has no answer yet, the year first: what rests on it comes with it or after it. */
function anew() {
  worker?.terminate();
  worker = undefined;
  for (const kind of OF_A_YEAR) asked.delete(kind);
  remedies.waits();
  const others = [...asked];
  if (now?.hash && !asked.has("read")) {
    asked.clear();
    ask("follow", { ...now, numbers: all() });
    for (const [kind, message] of others) if (kind !== "follow") asked.set(kind, message);
  }
  if (asked.size && !worker) begin();
}

function stop() {
  asked.clear();
  clearTimeout(announced);
  if (worker) send({ job: ++jobs, kind: "stop", body: {} }, true);
  rests();
  put("fault", "");
  part("doing").textContent = "";
  tellFault(now?.hash && part("all").hidden === false ? "Stopped: the year stands as it was before the last change." : "Stopped.", true);
}

function works(words) {
  part("work").hidden = false;
  part("doing").textContent = words;
  part("all").classList.add("dw-stale");
}

function rests() {
  // What waited for the year goes on once it is painted.
  requestAnimationFrame(() => setTimeout(() => document.dispatchEvent(new Event("year-rests"))));
  part("work").hidden = true;
  part("share").value = 0;
  part("all").classList.remove("dw-stale");
  remedies.seeks();
}

function broken(sentence) {
  asked.clear();
  worker?.terminate();
  worker = undefined;
  rests();
  tellFault(`The year can\u2019t be computed here: ${sentence}`);
}

function tellFault(words, isQuiet) {
  const place = part("fault");
  place.textContent = words;
  place.classList.toggle("dw-fault", !isQuiet);
}

const on = {
  heard() {},
  reading({ name, share }) {
    if (part("work").hidden) return;
    part("share").value = share;
    part("doing").textContent = `Reading ${name}: ${Math.round(100 * share)}\u00a0%`;
  },
  going({ share }) {
    if (!part("work").hidden) part("share").value = share;
  },
  refused({ name, sentence }) {
    rests();
    tellFault(`${name} was not taken in. The open project is unchanged. ${sentence[0].toUpperCase()}${sentence.slice(1)}.`);
  },
  held({ isKept, told, project }) {
    rests();
    put("told", told);
    part("save").hidden = false;
    if (!isKept) tellFault("This browser keeps no files: after a reload the file has to be opened again.", true);
    if (typeof project !== "string") return tellFault(`${project[0]}.`);
    if (project === now.project) again();
    else take(project);
  },
  files: ({ files }) => save(now.project, files),
  sheet: ({ text }) => onSheetDone(text),
  lend: ({ files, module }) => members.lent(files, module),
  lent: (body) => members.entered(body),
  doubt: (body) => doubt.shows(body),
  missing({ hash }) {
    rests();
    const isInDuct = hash === now.inDuct?.sha256;
    const { file, rows } = isInDuct ? now.inDuct : now.weather;
    const own = brought.find(({ name }) => name === file);
    brought = brought.filter((one) => one !== own);
    if (own) return opens(own, isInDuct);
    // The weather of the worked cases comes with the page.
    if (!isInDuct && file === EXAMPLE && !isFetched) return example();
    const what = isInDuct ? ", which was measured in the duct," : "";
    put("told", `<p><b>${escaped(file)}</b>${what} is not on this device (${rows} rows): open it again and the year is there. The design states still answer.</p>`);
    hides();
  },
  none({ sentence, told }) {
    rests();
    put("told", told);
    hides();
    tellFault(`No year: ${sentence}.`);
  },
  year(body) {
    rests();
    part("all").hidden = false;
    part("save").hidden = false;
    shows(body);
    square(body.square, body["square-told"]);
    remedies.changed(about());
    if (figure) ask("opened", { numbers: all(), id: figure });
  },
  hour: shows,
  opened(body) {
    if (body.id !== figure) return;
    put("opened", body[`opened ${figure}`]);
    marks();
    const head = part("opened").querySelector("[tabindex]");
    head?.scrollIntoView({ block: "nearest" });
    // What was pressed within the panel has gone with it.
    if (document.activeElement === document.body) head?.focus();
  },
  route({ project }) {
    if (typeof project === "string") take(project);
    else tellFault(`${project[0]}.`);
  },
  cures: remedies.shows,
  cured: remedies.shows,
  ranked: remedies.ranks,
  ...troubles.on,
  stopped() {},
  broken: ({ sentence }) => broken(sentence),
};

function answer(job, kind, body) {
  const own = [...asked].find(([, message]) => message.job === job);
  if (!own) return;
  if (!["heard", "reading", "going", "cures", "lend"].includes(kind)) asked.delete(own[0]);
  on[kind](body);
}

function shows(body) {
  at = body.at;
  const isHeld = document.activeElement?.closest(".dw-year__hand") && room.contains(document.activeElement);
  for (const name of ["told", "sentence", "maps", "charts", "hand", "hour", "months", "granted"]) {
    if (name in body) put(name, body[name]);
  }
  if ("sentence" in body) doubt.beside();
  if (isHeld) room.querySelector(".dw-year__hand")?.focus({ preventScroll: true });
}
