import assert from "node:assert/strict"; import { DIST, launch, serve } from "./harness.mjs"; const MOVES=300; const product = await serve(DIST); const browser = await launch(); try { const m = await drawn(); console.log("p50", median(m), "p95", m[Math.floor(m.length*.95)], "max", m.at(-1)); } finally { await browser.close(); await product.stop(); }
/** From each move of a hand that draws the end of a leg until the route is painted again, ms, the shortest first. */
async function drawn() {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(product.address + "#example=make-up-air");
  await page.getByRole("button", { name: /^Leg 2, / }).waitFor();
  const moves = await page.evaluate(draw, MOVES);
  await context.close();
  assert.ok(moves.changes > MOVES / 2, `the drawing changed ${moves.changes} times in ${MOVES} moves`);
  return moves.times.sort((a, b) => a - b);
}

/** Draws the end of the second leg to and fro, a move a frame; runs in the page. */
async function draw(count) {
  const handle = document.querySelectorAll("[role=application] button[aria-pressed]")[1];
  const box = handle.getBoundingClientRect();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const send = (type, dx, dy) =>
    handle.dispatchEvent(
      new PointerEvent(type, { bubbles: true, cancelable: true, pointerId: 1, isPrimary: true, button: 0, buttons: 1, clientX: x + dx, clientY: y + dy }),
    );
  const { port1, port2 } = new MessageChannel();
  // The message is handled after the frame in which it was sent has been painted.
  const painted = () => new Promise((done) => ((port1.onmessage = () => done(performance.now())), port2.postMessage(0)));
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  send("pointerdown", 0, 0);
  const times = [];
  let [changes, before] = [0, ""];
  for (let move = 0; move < count; move += 1) {
    await frame();
    const begun = performance.now();
    send("pointermove", 120 * Math.sin(move / 9), 40 * Math.sin(move / 5));
    times.push((await painted()) - begun);
    const now = document.querySelector("svg[role=img]").innerHTML;
    if (now !== before) changes += 1;
    before = now;
  }
  send("pointerup", 0, 0);
  return { times, changes };
}

function median(numbers) {
  return numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

