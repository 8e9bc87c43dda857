// What a person does in the section Remedies: the target is a sentence with blanks; remedies come one by one from the worker of the year.

const NONE = "<p>Remedies are sought over a year: open a weather file under Year first.</p>";
const WAITS = "<p>Sought once this is in sight.</p>";
const HOURS = ["the conditions entered", "the 0.4\u00a0% design hour", "the 1\u00a0% design hour", "the 2\u00a0% design hour", "no certain hour"];
const RANKS = ["what is left", "kind of work", "energy", "transport time"];

const blank = (name, value, words) =>
  `<input name="${name}" inputmode="decimal" autocomplete="off" value="${value}" aria-label="${words}">`;

const SKELETON = `
<form class="dw-cures__target" data-cures="target">Dry enough means: no water in <select name="dry" aria-label="No water in">${HOURS.map((hour, at) => `<option value="${at}">${hour}</option>`).join("")}</select>,
at most ${blank("wet", "", "Wet hours at most")} wet hours, ${blank("litres", "", "Water at most, litres")} L of water and ${blank("blind", "0", "Blind hours at most")} blind hours, the chamber ${blank("margin", "", "Chamber below its rating by, percent")} % below its rating,
<label><input type="checkbox" name="frost"> no frost</label>, and traps emptied not more often than every ${blank("days", "", "Days between emptyings at least")} days.</form>
<p class="dw-fault" data-cures="fault" aria-live="polite" hidden></p>
<div class="dw-toggle dw-toggle--words dw-cures__rank" role="group" aria-label="Rank by"><span aria-hidden="true">Rank by</span>${RANKS.map((rank, at) => `<button type="button" class="dw-toggle__word" data-rank="${at}" aria-pressed="${at === 0}">${rank}</button>`).join("")}</div>
<div class="dw-year__work" data-cures="work" hidden>
  <progress max="1" value="0" data-cures="share" aria-label="Progress of the search"></progress>
  <p>Seeking the smallest size of each remedy. <button type="button" class="dw-link" data-cures="stop">Stop the search</button></p>
</div>
<div data-cures="told">${NONE}</div>
<p>Sought on the worst 200 hours, each found one confirmed by the whole year. After any change: measure the airflow, set the limits again, test with smoke at the duct end.</p>`;

let room;
let ask;
let style = [];
let rank = 0;
/** The year that is shown. */
let of = "";
/** There is a year, its remedies are not asked for yet, the section is in sight. */
let [isReady, isWanted, isSeen] = [false, false, false];

const part = (name) => room.querySelector(`[data-cures="${name}"]`);

/** The page's place for remedies, and how the worker is asked. */
export function place(asks, numbers) {
  const found = document.querySelector(".dw-cures");
  [ask, style] = [asks, numbers];
  if (!found || room === found) return;
  room = found;
  of = "";
  room.innerHTML = SKELETON;
  wire();
}

/** There is a year, known by a text, or none. */
export function changed(year) {
  if (!room || (year && year === of)) return;
  of = year;
  const has = year !== "";
  [isReady, isWanted] = [has, has];
  works(false);
  if (!has) part("told").innerHTML = NONE;
  else if (!part("told").querySelector("table")) part("told").innerHTML = WAITS;
  part("told").classList.toggle("dw-stale", has);
  seeks();
}

/** What is known by now; `share` is 1 at the end. */
export function shows({ told, share }) {
  if (!room || !isReady) return;
  if (part("told").innerHTML !== told) part("told").innerHTML = told;
  part("told").classList.remove("dw-stale");
  part("share").value = share;
  works(share < 1);
}

/** The same in another order. */
export function ranks({ told }) {
  if (room && isReady && told) part("told").innerHTML = told;
}

function works(does) {
  part("work").hidden = !does;
}

/** Something more urgent is done: what is sought waits for it. */
export function waits() {
  if (!room) return;
  isWanted = isReady;
  works(false);
}

/** Nothing more urgent is done: what waits is sought. */
export function seeks() {
  if (!room || !isReady || !isWanted || !isSeen) return;
  const target = read();
  if (!target) return;
  isWanted = false;
  part("share").value = 0;
  works(true);
  ask("cures", { numbers: [...style, rank], target });
}

/** The target in numbers, nothing where a blank can't be read. */
function read() {
  const { elements } = part("target");
  let wrong;
  const number = (name) => {
    const field = elements[name];
    const text = field.value.trim().replace(",", ".");
    const value = text === "" ? -1 : Number(text);
    const isWrong = !(text === "" || value >= 0);
    field.setAttribute("aria-invalid", `${isWrong}`);
    if (isWrong) wrong = `${field.getAttribute("aria-label")}: \u201c${field.value}\u201d is no number from 0 on`;
    return value;
  };
  const hour = Number(elements.dry.value);
  const target = [hour < 4 ? hour : -1, number("wet"), number("litres"), number("margin"), elements.frost.checked ? 1 : 0, number("blind"), number("days")];
  part("fault").hidden = !wrong;
  part("fault").textContent = wrong ? `${wrong}.` : "";
  return wrong ? undefined : target;
}

function again() {
  isWanted = isReady;
  part("told").classList.add("dw-stale");
  seeks();
}

function wire() {
  new IntersectionObserver(([{ isIntersecting }]) => {
    isSeen = isIntersecting;
    seeks();
  }).observe(room);
  part("target").addEventListener("change", again);
  part("target").addEventListener("submit", (event) => {
    event.preventDefault();
    again();
  });
  room.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (button?.dataset.cure) ask("cure", { number: Number(button.dataset.cure) });
    else if (button?.dataset.cures === "stop") {
      works(false);
      ask("rest", {});
    } else if (button?.dataset.rank) {
      rank = Number(button.dataset.rank);
      for (const word of room.querySelectorAll("[data-rank]")) word.setAttribute("aria-pressed", `${word === button}`);
      if (isReady) ask("ranked", { numbers: [...style, rank] });
    }
  });
}
