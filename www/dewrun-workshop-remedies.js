// What a person does in the section Remedies: they come one by one from the worker of the year, for the target of the project.
import { once, put as putIn } from "./dewrun-workshop-put.js";

const NONE = "<p>Remedies are sought over a year: open a weather file under Year first.</p>";
const WAITS = "<p>Sought once this is in sight.</p>";
const RANKS = ["what is left", "kind of work", "energy", "transport time"];

const SKELETON = `
<div class="dw-toggle dw-toggle--words dw-cures__rank" role="group" aria-label="Rank by"><span aria-hidden="true">Rank by</span>${RANKS.map((rank, at) => `<button type="button" class="dw-toggle__word" data-rank="${at}" aria-pressed="${at === 0}">${rank}</button>`).join("")}</div>
<div class="dw-year__work" data-cures="work" hidden>
  <progress max="1" value="0" data-cures="share" aria-label="Progress of the search"></progress>
  <p>Seeking the smallest size of each remedy. <button type="button" class="dw-link" data-cures="stop">Stop the search</button></p>
</div>
<div data-cures="told">${NONE}</div>
<p>Sought on the worst 200 hours, each found one confirmed by the whole year. After any change: measure the airflow, set the limits again, test with smoke at the duct end.</p>`;

/** A page so wide has room for what does not do alone, px. */
const WIDE = 600;
/** A year that rests so long has its remedies sought, in sight or not, ms. */
const RESTS = 3000;

let room;
let ask;
/** Something else goes first: the year itself, which remedies go by, or what a person waits for. */
let isBusy = () => false;
let style = [];
let rank = 0;
/** The year that is shown, and when it will have rested. */
let of = "";
let resting;
/** There is a year, its remedies are not asked for yet, the section is in sight or the year has rested. */
let [isReady, isWanted, isSeen, hasRested] = [false, false, false, false];

const part = (name) => room.querySelector(`[data-cures="${name}"]`);
/** Where the first of them stand beside the answer. */
const beside = () => document.querySelector(".dw-answer__cures");

/** The page's place for remedies, how the worker is asked, the year that the page is about now, and whether something else goes first. */
export function place(asks, numbers, year, busy) {
  const found = document.querySelector(".dw-cures");
  [ask, style, isBusy] = [asks, numbers, busy];
  if (!found) return;
  if (room !== found) {
    room = found;
    of = "";
    room.innerHTML = SKELETON;
    wire();
  }
  // Those of another year stand until there are new ones, and can't be made.
  if (year === of) return;
  stale(true);
  // Its search ends with it: another begins once the year has followed.
  works(false);
}

/** There is a year, known by a text, or none. */
export function changed(year) {
  if (!room || (year && year === of)) return;
  of = year;
  const has = year !== "";
  [isReady, isWanted, hasRested] = [has, has, false];
  works(false);
  clearTimeout(resting);
  if (has) {
    resting = setTimeout(() => {
      hasRested = true;
      seeks();
    }, RESTS);
  } else {
    part("told").innerHTML = NONE;
    if (beside()) beside().innerHTML = "";
  }
  if (has && !part("told").querySelector("table")) part("told").innerHTML = WAITS;
  stale(has);
  seeks();
}

/** Whether what stands is that of another year. */
function stale(is) {
  part("told").classList.toggle("dw-stale", is);
  beside()?.classList.toggle("dw-stale", is);
}

/** What is known by now, and beside the answer the first of them; `share` is 1 at the end. */
export function shows({ told, first, share }) {
  if (!room || !isReady) return;
  put(told, share < 1 ? undefined : first);
  stale(false);
  part("share").value = share;
  works(share < 1);
}

/** The same in another order. */
export function ranks({ told, first }) {
  if (room && isReady && told) put(told, first);
}

function put(told, first) {
  const place = part("told");
  once(place, () => {
    if (place.innerHTML === told) return;
    // What does not do alone is long: on a phone it is folded until somebody asks.
    const isOpen = place.querySelector("details")?.open ?? WIDE <= innerWidth;
    place.innerHTML = told;
    const others = place.querySelector("details");
    if (others) others.open = isOpen;
  });
  if (first !== undefined && beside()) putIn(beside(), first);
}

function works(does) {
  // Its row pushes what stands below it: not under a finger either.
  once(room, () => (part("work").hidden = !does));
}

/** Something more urgent is done: what is sought waits for it. */
export function waits() {
  if (!room) return;
  isWanted = isReady;
  works(false);
}

/** What is being sought is sought later, for all hands are wanted elsewhere. */
export function yields() {
  if (!room || part("work").hidden) return;
  waits();
  ask("rest", {});
}

/** Nothing more urgent is done: what waits is sought. */
export function seeks() {
  if (!room || !isReady || !isWanted || !(isSeen || hasRested) || isBusy()) return;
  isWanted = false;
  part("share").value = 0;
  works(true);
  ask("cures", { numbers: [...style, rank] });
}

function wire() {
  new IntersectionObserver(([{ isIntersecting }]) => {
    isSeen = isIntersecting;
    seeks();
  }).observe(room);
  // Once for all rooms: the answer is a part of the page that stays.
  if (!wire.is) document.addEventListener("click", made);
  wire.is = true;
  room.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (button?.dataset.cures === "stop") {
      works(false);
      ask("rest", {});
    } else if (button?.dataset.rank) {
      rank = Number(button.dataset.rank);
      for (const word of room.querySelectorAll("[data-rank]")) word.setAttribute("aria-pressed", `${word === button}`);
      if (isReady) ask("ranked", { numbers: [...style, rank] });
    }
  });
}

/** Makes the remedy whose button was pressed, unless it is of another year. */
function made({ target }) {
  const button = target.closest?.("button[data-cure]");
  if (button && !button.closest(".dw-stale")) ask("cure", { number: Number(button.dataset.cure) });
}
