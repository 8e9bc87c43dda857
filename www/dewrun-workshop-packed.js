// A project and its weather file as one text, as `dewrun pack` writes it.

/** What a project says at its head that was saved with its files. */
const PACKED = "dewrun-packed";
/** They hold a year or a few, bytes. */
export const MOST_PACKED = 1 << 26;
/** Letters of a file are put together in slices. */
const SLICE = 1 << 15;

/** Whether a text that begins so holds its files too. */
export const isPacked = (head) => head.includes(PACKED);

/** The project of such a text and its files; neither where it is none, `isDamaged` where a file in it is. */
export async function unpack(text) {
  let packed;
  try {
    packed = JSON.parse(text);
    return { files: await Promise.all(packed.files.map(inflated)), project: packed.project };
  } catch {
    return { isDamaged: packed !== undefined };
  }
}

async function inflated({ name, bytes, deflated }) {
  const signs = Uint8Array.from(atob(deflated), (sign) => sign.charCodeAt(0));
  const stream = new Blob([signs]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  const parts = [];
  let length = 0;
  for (const reader = stream.getReader(); ; ) {
    const { value, done } = await reader.read();
    if (done) break;
    length += value.length;
    // A few bytes may stand for gigabytes.
    if (bytes < length) throw reader.cancel();
    parts.push(value);
  }
  if (length !== bytes) throw length;
  return new File(parts, name);
}

async function deflated(file) {
  const stream = file.stream().pipeThrough(new CompressionStream("deflate-raw"));
  const packed = new Uint8Array(await new Response(stream).arrayBuffer());
  let signs = "";
  for (let at = 0; at < packed.length; at += SLICE) signs += String.fromCharCode(...packed.subarray(at, at + SLICE));
  return { name: file.name, bytes: file.size, deflated: btoa(signs) };
}

/** Saves a project with its files, as the command line does. */
export async function save(project, files) {
  const packed = await Promise.all(files.map(deflated));
  const text = JSON.stringify({ format: PACKED, version: 1, project, files: packed }, null, 2);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([`${text}\n`], { type: "application/json" }));
  link.download = "project-with-weather.json";
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
