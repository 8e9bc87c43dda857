// Puts the page's module together again from the streams it was sent in; crates/xtask/src/page/pack.rs takes it apart.

/** The forms of an instruction's part, besides so many bytes. */
const NUMBER = 0;
const COUNTED = 255;
const VARIABLE = 254;
/** What stands in the first streams; those after them hold parts of instructions. */
const [BEFORE, AFTER, SYMBOLS, LOCALS] = [0, 1, 2, 3];
/** A length is written in at most so many bytes. */
const LENGTH = 5;
/** A packed file begins with what makes it a module in form and the number of its section. */
const START = 9;

/** Whether a file is a packed module. */
export const isPacked = (file) => file[8] === 0;

/** The module whose parts are in one file and their order in another, byte for byte. */
export function unpack(file, order) {
  let at = START;
  const number = () => {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = file[at++];
      value |= (byte & 127) << shift;
      if (byte < 128) return value;
    }
  };
  const bytes = () => {
    const length = number();
    at += length;
    return file.subarray(at - length, at);
  };
  number();
  bytes();
  const module = new Uint8Array(number());
  let functions = number();
  const lengths = Array.from({ length: number() }, number);
  const next = lengths.map((length) => (at += length) - length);
  at = next[SYMBOLS];
  const symbols = Array.from({ length: number() }, () => ({
    literal: bytes(),
    // Stream and form, in turns.
    parts: Array.from({ length: 2 * number() }, number),
  }));

  // What the order's file begins with: the length of its section, and a name.
  let step = START;
  while (order[step++] > 127);
  step += 1 + order[step];

  let to = 0;
  const copy = (stream, length) => {
    while (length--) module[to++] = file[next[stream]++];
  };
  const copyNumber = (stream) => {
    while ((module[to++] = file[next[stream]++]) > 127);
  };
  /** Copies a number and says what it is. */
  const copyCount = (stream) => {
    at = next[stream];
    copyNumber(stream);
    return number();
  };
  const putNumber = (value) => {
    for (; value > 127; value >>>= 7) module[to++] = (value & 127) | 128;
    module[to++] = value;
  };
  copy(BEFORE, lengths[BEFORE]);
  while (functions--) {
    const start = to;
    to += LENGTH;
    // How many of a type, and the type.
    for (let locals = 2 * copyCount(LOCALS); locals--; ) copyNumber(LOCALS);
    // The function's variables, the one used last first.
    const recent = [];
    let symbol;
    do {
      symbol = order[step++];
      const { literal, parts } = symbols[symbol];
      for (let k = 0; k < literal.length; k++) module[to++] = literal[k];
      for (let k = 0; k < parts.length; k += 2) {
        const stream = parts[k];
        const form = parts[k + 1];
        if (form === NUMBER) copyNumber(stream);
        else if (form === VARIABLE) {
          at = next[stream];
          const since = number();
          next[stream] = at;
          while (recent.length <= since) recent.push(recent.length);
          const variable = recent[since];
          recent.copyWithin(1, 0, since);
          recent[0] = variable;
          putNumber(variable);
        } else if (form === COUNTED) for (let more = copyCount(stream) + 1; more--; ) copyNumber(stream);
        else copy(stream, form);
      }
    } while (symbol);
    // A function begins with its length.
    const [from, end] = [start + LENGTH, to];
    to = start;
    putNumber(end - from);
    module.copyWithin(to, from, end);
    to += end - from;
  }
  copy(AFTER, lengths[AFTER]);
  return module;
}
