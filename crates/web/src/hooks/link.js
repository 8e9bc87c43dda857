// Packs a project into the letters of a link and unpacks it, by what the browser brings: as the command line does, so that both read each other's links.
const FORM = "deflate-raw";
const CHECK = 4;
const SLICE = 4096;

/**
 * Puts a link to this page that carries the text into the clipboard.
 * Gives nothing back when that is done, the link where the browser did not take it,
 * the count of letters where there are more than `most`, and false where the browser can't pack.
 */
export async function copy(text, mark, most) {
  if (!globalThis.CompressionStream) return false;
  const link = pack(text).then((letters) => {
    if (most < letters.length) throw letters.length;
    return location.href.split("#")[0] + mark + letters;
  });
  try {
    // Some browsers take what is not ready yet, but only within the press itself.
    const coming = link.then((link) => new Blob([link], { type: "text/plain" }));
    await navigator.clipboard.write([new ClipboardItem({ "text/plain": coming })]);
    return null;
  } catch {
    return link.catch((count) => count);
  }
}

/**
 * The text that letters carry; nothing where it is longer than `most`, false where the browser can't unpack.
 * Throws where the letters are damaged. A check that is there must hold.
 */
export async function unpack(letters, most) {
  if (!globalThis.DecompressionStream) return false;
  const signs = atob(letters.replace(/-/g, "+").replace(/_/g, "/"));
  const packed = Uint8Array.from(signs, (sign) => sign.charCodeAt(0));
  const end = packed.length - CHECK;
  const unpacked = (bytes) => through(bytes, new DecompressionStream(FORM), most);
  const deflated = packed.subarray(0, end);
  const checked = await unpacked(deflated).catch(() => undefined);
  const holds = checked && `${check(deflated)}` === `${packed.subarray(end)}`;
  const bytes = holds || checked === null ? checked : await unpacked(packed);
  return bytes && new TextDecoder("utf-8", { fatal: true }).decode(bytes);
}

async function pack(text) {
  const bytes = new TextEncoder().encode(text);
  let signs = "";
  const deflated = await through(bytes, new CompressionStream(FORM), Infinity);
  for (const part of [deflated, check(deflated)]) {
    for (const byte of part) signs += String.fromCharCode(byte);
  }
  return btoa(signs).replace(/\+/g, "-").replace(/\//g, "_").replace(/=/g, "");
}

/** What comes out at the other end; nothing when it is more than `most` bytes. */
async function through(bytes, change, most) {
  let at = 0;
  const source = new ReadableStream({
    pull(to) {
      // A slice at a time: a few bytes may stand for megabytes.
      if (at < bytes.length) to.enqueue(bytes.slice(at, (at += SLICE)));
      else to.close();
    },
  });
  const reader = source.pipeThrough(change).getReader();
  const parts = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return new Uint8Array(await new Blob(parts).arrayBuffer());
    length += value.length;
    if (most < length) {
      reader.cancel().catch(() => {});
      return null;
    }
    parts.push(value);
  }
}

/** CRC-32 of ISO/IEC 13239 and IEEE 802.3. */
function check(bytes) {
  let sum = -1;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (0xedb88320 & -(sum & 1));
  }
  return Uint8Array.of(~sum >>> 24, ~sum >>> 16, ~sum >>> 8, ~sum);
}
