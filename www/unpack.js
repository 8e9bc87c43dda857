// Puts the page's module together again from the streams it was sent in; crates/xtask/src/page/pack.rs takes it apart.

/** The forms of an instruction's part, besides so many bytes. */
const NUMBER = 0;
const COUNTED = 255;
const VARIABLE = 254;
/** What stands in the first streams; those after them hold parts of instructions. */
const [BEFORE, AFTER, SYMBOLS, ORDER, LOCALS] = [0, 1, 2, 3, 4];
/** A length is written in at most so many bytes. */
const LENGTH = 5;

/** The module of a file, byte for byte; a file that was not packed is one already. */
export function unpack(file) {
  if (file[8] !== 0) return file;
  let at = 9;
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
      symbol = file[next[ORDER]++];
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
