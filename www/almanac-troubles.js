// Troubles: their log is kept like a weather file, under the hash of its bytes, and weighed over plausible years.
import { find, keep } from "./almanac-files.js";

const PARTS = ["answers", "read", "correct", "seen", "causes", "check", "advice", "timeline", "table", "rests", "words"];

/** The log that was read last, by its hash. */
const last = {};

const bytesIn = async (file) => new Uint8Array(await file.arrayBuffer());

/** The bytes of a log by its hash; nothing where it is not on this device. */
async function bytesOf(hash) {
  if (!hash) return undefined;
  if (last.hash === hash) return last.bytes;
  const file = await find(hash);
  if (!file) return undefined;
  [last.hash, last.bytes] = [hash, await bytesIn(file)];
  return last.bytes;
}

/** All bytes or numbers of members after each other, and how many each has. */
function joined(members, of, Kind) {
  const parts = members.map(of);
  const all = new Kind(parts.reduce((sum, one) => sum + one.length, 0));
  parts.reduce((at, one) => (all.set(one, at), at + one.length), 0);
  return [all, Uint32Array.from(parts, (one) => one.length)];
}

/** What the worker does about troubles: `offers` gives what the module offers, `isNewest` says whether a job is still the newest, `hold` reads the files that the year of a run goes by where they are not held. */
export const does = (offers, tell, isNewest, hold) => ({
  /** The causes of a run's troubles, by the members of a name; it says where it lacks them. */
  async troubles(job, { key, project, run, numbers, hash, members }) {
    const almanac = offers();
    if (key && !almanac.troubles_know(key)) {
      if (!members) return tell(job, "lacks", { key });
      await hold(project, run);
      const [all, lengths] = joined(members, (one) => one.numbers, Float64Array);
      const [hours, hourLengths] = joined(members, (one) => one.hours, Uint8Array);
      const wrong = almanac.troubles_take(key, project, run, all, lengths, hours, hourLengths);
      if (wrong !== undefined) return tell(job, "unranked", { sentence: wrong });
    }
    const log = await bytesOf(hash);
    if (!isNewest(job)) return undefined;
    const sentence = almanac.troubles_rank(key, project, run, log);
    const body = { sentence, isMissing: Boolean(hash) && !log, isWeighed: Boolean(key) };
    for (const part of PARTS) body[part] = almanac.troubles_shown(part, Float64Array.from(numbers));
    return tell(job, "ranked-troubles", body);
  },

  /** The project with one thing about troubles entered; a new log is kept. */
  async entered(job, { project, run, what, file, hash }) {
    const log = file ? await bytesIn(file) : await bytesOf(hash);
    const changed = offers().troubles_entered(project, run, what, log);
    if (typeof changed !== "string") return tell(job, "not-entered", { sentence: changed[0] });
    let isKept = true;
    if (file) {
      last.hash = JSON.parse(changed).runs[run].troubles.log.sha256;
      last.bytes = log;
      isKept = await keep(last.hash, file);
    }
    return tell(job, "entered", { project: changed, isKept });
  },
});
