// How the device lies: read only after somebody has asked for it, and no longer than that takes.
const EVERY_MS = 50;

/** Whether the page may read it; some browsers ask the person, and only at a press. */
export async function allowed() {
  const sensor = globalThis.DeviceOrientationEvent;
  if (!sensor?.requestPermission) return Boolean(sensor);
  return (await sensor.requestPermission().catch(() => "")) === "granted";
}

/** Heading, pitch and roll in degrees, moment by moment, once the hand is off; an angle that is not known is no number. */
export function lying(settle, during) {
  return new Promise((done) => {
    const said = [];
    let last = [];
    const hear = ({ alpha, beta, gamma }) => (last = [alpha ?? NaN, beta ?? NaN, gamma ?? NaN]);
    addEventListener("deviceorientation", hear);
    const from = performance.now() + settle;
    const timer = setInterval(() => {
      const now = performance.now();
      if (now < from) return;
      said.push(...last);
      if (now < from + during) return;
      clearInterval(timer);
      removeEventListener("deviceorientation", hear);
      navigator.vibrate?.(80);
      done(Float64Array.from(said));
    }, EVERY_MS);
  });
}

/** Today, by the clock of the device. */
export function today() {
  const now = new Date();
  return new Date(now - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
