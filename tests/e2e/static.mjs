// A plain static server, as any web space is one: a folder under some path, which can be exchanged, stopped and started again.
import assert from "node:assert/strict";
import { cp, mkdtemp, readFile, readdir, rename, rm, writeFile } from "node:fs/promises";
import { createServer, request as ask } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import { after, before } from "node:test";
import { DIST, launch } from "./harness.mjs";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};

/** The page on a plain web space, for the tests of one file, and everything taken down after them; watched pages add to `offences`. */
export function deployed() {
  const state = { offences: [] };
  before(async () => {
    state.browser = await launch();
    state.site = await serveFolder(DIST, "/");
  });
  after(async () => {
    await state.browser.close();
    await state.site.stop();
    assert.deepEqual(state.offences, [], "console errors, exceptions and requests to other origins");
  });
  return state;
}

/** Serves `folder` under `path`; what is asked for is noted in `asked`. */
export async function serveFolder(folder, path) {
  const site = { folder, asked: [] };
  let server;
  let port = 0;
  const answer = async (request, response) => {
    const { pathname } = new URL(request.url, "http://site");
    site.asked.push(pathname);
    try {
      if (!pathname.startsWith(path)) throw new Error("another path");
      const name = pathname.slice(path.length) || "index.html";
      const content = await readFile(join(site.folder, normalize(`/${decodeURIComponent(name)}`)));
      response.writeHead(200, { "content-type": TYPES[extname(name)] ?? "text/plain", "cache-control": "max-age=600" });
      response.end(content);
    } catch {
      response.writeHead(404).end("not here");
    }
  };
  site.start = async () => {
    server = createServer(answer);
    await new Promise((resolve) => server.listen(port, "127.0.0.1", resolve));
    port = server.address().port;
    site.address = `http://127.0.0.1:${port}${path}`;
  };
  site.stop = async () => {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  };
  await site.start();
  return site;
}

/** Whom Chromium asks for its own sake, whatever page is open. */
const ITS_MAKER = /^(update|content-autofill|safebrowsing|optimizationguide-pa)\.googleapis\.com$|^(accounts|clients2)\.google\.com$/;

/** A gate that a browser is told to send everything through; `asked` are the addresses that a page may have asked for. */
export async function watchEverything() {
  const gate = { asked: [] };
  const note = (url) => ITS_MAKER.test(new URL(url).hostname) || gate.asked.push(url);
  const server = createServer((request, response) => {
    note(request.url);
    const passed = ask(request.url, { method: request.method, headers: request.headers }, (answer) => {
      response.writeHead(answer.statusCode, answer.headers);
      answer.pipe(response);
    });
    passed.on("error", () => response.writeHead(502).end());
    request.pipe(passed);
  });
  // What is to be encrypted shows no more than the host, and is let nowhere.
  server.on("connect", (request, socket) => {
    note(`https://${request.url}/`);
    socket.end("HTTP/1.1 502 Not from here\r\n\r\n");
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  gate.address = `http://127.0.0.1:${server.address().port}`;
  gate.stop = async () => {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  };
  return gate;
}

/** The folder that names a build. */
export async function buildOf(folder) {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries.find((entry) => entry.isDirectory()).name;
}

/** A copy of a build under another name, as the next release would be; `remove` takes it away. */
export async function nextBuild(folder, title) {
  const copy = await mkdtemp(join(tmpdir(), "dewrun-next-"));
  await cp(folder, copy, { recursive: true });
  const old = await buildOf(folder);
  const build = [...old].reverse().join("") + "0";
  await rename(join(copy, old), join(copy, build));
  for (const name of ["index.html", "sw.js"]) {
    const text = await readFile(join(copy, name), "utf8");
    await writeFile(join(copy, name), text.replaceAll(old, build).replace("<title>Dewrun<", `<title>${title}<`));
  }
  return { folder: copy, build, remove: () => rm(copy, { recursive: true, force: true }) };
}
