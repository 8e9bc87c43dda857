// What a person does in the section Troubles: six answers, a log that is pasted, opened or dropped, outcomes of checks; what it says comes from the worker of the year.
import { keyOf } from "./dewrun-workshop-members.js";
import { Measure } from "./dewrun-workshop-measure.js";
import { put as putIn } from "./dewrun-workshop-put.js";

/** So many plausible years weigh a log at first, and in the end as many as on the command line. */
const FIRST = 16;
const MEMBERS = 64;
const FIELD = "\u001f";
const NAME = "\u001e";
/** What a pasted list is called. */
const PASTED = "pasted list";
/** No list is longer, bytes. */
const MOST = 1 << 23;

const SKELETON = `
<div class="dw-troubles__known">
  <details class="dw-troubles__part" data-troubles="asked"><summary>Six answers</summary>
    <div class="dw-first__asked dw-first__asked--counted" data-troubles="answers"></div></details>
  <details class="dw-troubles__part" data-troubles="given"><summary data-troubles="named">The list of troubles</summary>
    <div class="dw-troubles__log">
      <label>Paste it here, or drop a file: a date, a time and a few words a line
        <textarea data-troubles="text" rows="5" spellcheck="false" autocomplete="off" placeholder="2026-06-16 04:10  airflow low"></textarea></label>
      <p class="dw-sheets__acts"><button type="button" class="dw-button" data-do="read">Read this list</button>
      <label class="dw-act dw-open">Open a list<input class="dw-spoken" type="file" data-troubles="open"></label>
      <button type="button" class="dw-link" data-do="without" hidden>Do without it</button></p>
      <p class="dw-fault" data-troubles="fault" aria-live="polite" hidden></p>
      <div class="dw-troubles__read" data-troubles="read" aria-live="polite"></div>
      <details data-troubles="otherwise" hidden><summary>Read it otherwise</summary><form data-troubles="correct" novalidate></form></details>
    </div></details>
</div>
<div class="dw-year__work" data-troubles="work" hidden>
  <progress max="${MEMBERS}" value="0" data-troubles="share" aria-label="Plausible years for the log"></progress>
  <p><span data-troubles="doing"></span> <button type="button" class="dw-link" data-do="stop">Stop</button></p>
</div>
<div class="dw-troubles__found" data-troubles="found">
  <div class="dw-troubles__causes-part" data-troubles="causes" aria-live="polite"></div>
  <div class="dw-troubles__next" role="group" aria-label="Next check"><p class="dw-year__part">Next check</p>
    <div data-troubles="seen"></div><div data-troubles="check"></div></div>
</div>
<p class="dw-troubles__rests" data-troubles="rests"></p>
<div data-troubles="evidence" hidden><p class="dw-year__part">Your entries over the modelled water, airflow and weather</p>
  <div class="dw-troubles__timeline" data-troubles="timeline"></div>
  <details class="dw-table-behind"><summary>as table</summary><div class="dw-scroll" role="region" aria-label="The log as a table" tabindex="0" data-troubles="table"></div></details>
</div>`;

let room;
let measure;
let door = {};
/** The project, its run and its weather, and what the run keeps of troubles. */
let now;
let kept = {};
/** Something has changed since it was ranked last; the section is in sight. */
let [isWanted, isSeen] = [false, false];
/** Years are wanted for a log; a person stopped that. */
let [isWaiting, isStopped] = [false, false];
/** What was pressed last, to find it again. */
let pressed;
/** The text that is being read. */
let given;

/** Years by which it was ranked last. */
let weighed = 0;

/** Years that are known, as many as something is said by. */
const weighs = () => (now.hash && [MEMBERS, FIRST].find((count) => door.members.has(count, now))) || 0;

const part = (name) => room.querySelector(`[data-troubles="${name}"]`);
const put = (name, html) => putIn(part(name), html);

/** Who wants the years. */
const wanting = {
  more() {
    part("share").value = Math.min(MEMBERS, door.members.known);
    part("doing").textContent = `${Math.min(MEMBERS, door.members.known)} of ${MEMBERS} plausible years of this run are marched.`;
    if (!isWaiting || weighs() <= weighed) return;
    if (weighs() === MEMBERS) waits(false);
    ranks();
  },
  broken(sentence) {
    waits(false);
    fault(`Plausible years can\u2019t be marched here: ${sentence}.`);
  },
};

/** The project is this one now; the door asks the worker, marches years and puts another project on the desk. */
export function follow(about, { ask, members, take }) {
  const place = document.querySelector(".dw-troubles");
  if (!place) return;
  door = { ask, members, take };
  if (room !== place) {
    room = place;
    room.innerHTML = SKELETON;
    now = undefined;
    wire();
  }
  const isFirst = now === undefined;
  if (now && keyOf(now) !== keyOf(about)) isStopped = false;
  now = about;
  const project = JSON.parse(now.project);
  kept = project.runs[now.run]?.troubles ?? {};
  part("named").textContent = kept.log ? `The list of troubles: ${kept.log.file}, ${kept.log.rows} rows` : "The list of troubles";
  room.querySelector("[data-do=without]").hidden = !kept.log;
  if (isFirst) {
    // What is known already is folded away.
    part("asked").open = !kept.log;
    part("given").open = !kept.log;
  }
  isWanted = true;
  part("found").classList.add("dw-stale");
  seeks();
}

/** Ranks what has changed, once it is in sight. */
function seeks() {
  if (!now || !isWanted || !isSeen) return;
  isWanted = false;
  // Something is said at once; the years follow.
  ranks();
  if (!now.hash || weighed === MEMBERS || isStopped) return waits(false);
  waits(true);
  door.members.want(wanting, now, MEMBERS);
}

function waits(does) {
  isWaiting = does;
  part("work").hidden = !does;
  if (!does) door.members.leave(wanting);
}

const keyed = (count) => (count ? `${keyOf(now)} ${count}` : "");

function ranks(members) {
  weighed = weighs();
  door.ask("troubles", { key: keyed(weighed), ...about(), hash: kept.log?.sha256, members });
}

/** What is asked about: style, width and size of text. */
function about() {
  return { project: now.project, run: now.run, numbers: [...now.style, ...measure.now] };
}

function fault(words) {
  part("fault").hidden = !words;
  part("fault").textContent = words;
}

/** Enters one thing; a file is a new log. */
function enters(what, file) {
  door.ask("entered", { ...about(), what: what.join(FIELD), file, hash: kept.log?.sha256 });
}

/** Reads a list that was given; what the person typed stays. */
function reads(file) {
  if (MOST < file.size) return fault(`${file.name} is longer than any list of troubles: give the part that has the dates.`);
  fault("");
  given = file;
  enters(["log", file.name], file);
  return undefined;
}

const sentenceOf = (words) => `${words[0].toUpperCase()}${words.slice(1)}`;

/** The cause in words for paper, as far as it is told; a line each. */
let told = "";
export const words = () => told;

/** Answers of the worker. */
export const on = {
  "ranked-troubles"(body) {
    if (!room) return;
    for (const name of ["answers", "read", "correct", "seen", "causes", "check", "timeline", "table", "rests"]) put(name, body[name]);
    told = body.words;
    part("found").classList.remove("dw-stale");
    part("otherwise").hidden = !body.correct;
    part("evidence").hidden = !body.timeline;
    if (body.sentence) fault(`${kept.log?.file}: ${body.sentence}.`);
    else if (body.isMissing) fault(`${kept.log.file} is not on this device: paste or open it again. Ranked without it.`);
    else fault("");
    again();
  },
  lacks({ key }) {
    if (now && key === keyed(weighs())) ranks(door.members.first(weighs()).slice(1));
  },
  unranked({ sentence }) {
    fault(`${sentenceOf(sentence)}.`);
  },
  entered({ project, isKept }) {
    given = undefined;
    door.take(project);
    if (!isKept) fault("This browser keeps no files: after a reload the list has to be given again.");
  },
  "not-entered"({ sentence }) {
    const name = given ? `${given.name} was not taken in, the project is unchanged. ` : "";
    given = undefined;
    fault(`${name}${sentenceOf(sentence)}.`);
  },
};

/** The focus is where it was, or at what came of it. */
function again() {
  if (!pressed || (document.activeElement !== document.body && document.activeElement?.isConnected)) return;
  const { question, place, unseen, check } = pressed;
  const found = question
    ? room.querySelector(`[data-question="${question}"][data-place="${place}"]`)
    : (unseen || check) && part("sentence");
  pressed = undefined;
  if (found && !question) found.tabIndex = -1;
  found?.focus({ preventScroll: true });
}

const acts = {
  read() {
    const text = part("text").value;
    if (!text.trim()) return fault("Nothing is pasted yet: give a date, a time and a few words a line.");
    return reads(new File([text], PASTED));
  },
  without: () => enters(["no-log"]),
  stop() {
    isStopped = true;
    waits(false);
    put("rests", "Stopped: ranked by the answers and by what the run does as it is entered.");
  },
};

function wire() {
  new IntersectionObserver(([{ isIntersecting }]) => {
    isSeen = isIntersecting;
    seeks();
  }).observe(room.closest("section"));
  measure = new Measure(room, () => {
    isWanted = true;
    seeks();
  });
  room.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    pressed = { ...button.dataset };
    const { question, place, check, outcome, unseen } = pressed;
    if (pressed.do) acts[pressed.do]();
    else if (question) enters(["answer", question, place]);
    else if (check) enters(["seen", check, outcome]);
    else if (unseen) enters(["unseen", unseen]);
  });
  room.addEventListener("change", ({ target }) => {
    if (target.dataset.troubles === "open" && target.files[0]) {
      reads(target.files[0]);
      target.value = "";
    }
    if (target.name === "daylight") part("daylight").hidden = !target.checked;
    if (target.form === part("correct")) {
      const fields = [...target.form.elements].filter((one) => one.name && (one.type !== "checkbox" || one.checked));
      enters(["reading", ...fields.map((one) => one.name + NAME + one.value)]);
    }
  });
  room.addEventListener("submit", (event) => event.preventDefault());
  const section = room.closest("section");
  section.addEventListener("drop", (event) => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    // What is dropped here is a list; elsewhere on the page it is weather or a project.
    event.preventDefault();
    event.stopPropagation();
    reads(file);
  });
}
