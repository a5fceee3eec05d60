// Keeps the page of a lesson on this device, whole or not at all.
import { decodesOpus } from "../common/opus.js";
import { ANY_READER, cacheOf, noteOf, offlineCache, OURS, remove, write } from "./copies.js";
import { asking, bring, bringAll, given } from "./fetching.js";
import { assetsOf, lessonOf, manifestsOf, pageAt, picturesOf } from "./pages.js";
import { exactly, exactOf, keptAddress, keptManifest, keptPage, largerOnes, soundsOf } from "./plan.js";

/** @typedef {import("./plan.js").Part} Part */

/**
 * Keeps a lesson as it is on the server now. What of it is here already is not fetched again; until all has come, its note
 * says that it is not whole, and an earlier copy stays. One window waits for another that keeps the same lesson (W3C Web
 * Locks API).
 *
 * @param {string} path of its page
 * @param {(page: Document) => Part[]} sheetsOf the sheets that are set for this screen
 * @param {AbortSignal} signal
 * @param {(done: number, all: number) => void} tell hears of bytes, as they are reckoned
 */
export function keep(path, sheetsOf, signal, tell) {
  const work = () => keepNow(path, sheetsOf, signal, tell);
  return navigator.locks?.request(`${OURS}keep ${path}`, { signal }, work) ?? work();
}

async function keepNow(path, sheetsOf, signal, tell) {
  const ask = asking(signal);
  const { html, headers, page } = await pageAt(path, ask);
  const at = new Date().toISOString();
  const note = { ...lessonOf(page), path, at, bytes: 0, whole: false, recordings: false };
  const held = await noteOf(note.lesson);
  if (held?.whole && held.release === note.release) return; // another window was first
  const cache = await begin(note, signal).catch(async (problem) => {
    if (!held) await remove(note.lesson); // of a lesson that has not begun nothing stays, nor of what would serve it
    throw problem;
  });
  const lines = await linesOf(page, (address) => bring(cache, address, ask));
  for (const line of lines) line.manifest = await decodable(line, (address) => given(address, ask));
  const sounds = lines.flatMap(({ manifest, address }) => soundsOf(manifest, address));
  await bringAll(cache, [...assetsOf(page), ...sounds, ...picturesOf(page), ...sheetsOf(page)], ask, tell);
  for (const { manifest, address } of lines) {
    await cache.put(keptAddress(address), Response.json(keptManifest(manifest)));
    await cache.delete(address, ANY_READER);
  }
  await cache.put(path, new Response(keptPage(html, at), { headers }));
  const recordings = lines.some(({ manifest }) => manifest.tracks?.length > 0);
  await write(cache, { ...note, bytes: await sizeOf(cache), whole: true, recordings });
  await remove(note.lesson, note.release);
}

/**
 * A copy with nothing but its note, and what serves it. The note comes first: with it, another window that removes what was
 * the last lesson leaves the worker in its place.
 *
 * @param {import("./copies.js").Note} note
 * @param {AbortSignal} signal
 */
async function begin(note, signal) {
  const cache = await cacheOf(note);
  await write(cache, note);
  await navigator.serviceWorker.register("/worker.js");
  await keepOfflinePage(signal);
  return cache;
}

/** Keeps the page that is shown without a net, as it is now. @param {AbortSignal} [signal] */
export async function keepOfflinePage(signal) {
  const ask = asking(signal);
  const cache = await offlineCache();
  const { html, headers, page } = await pageAt("/kept", ask);
  await bringAll(cache, assetsOf(page), ask, () => {});
  await cache.put("/kept", new Response(html, { headers }));
}

/**
 * About how many bytes a copy of this page takes; nothing has to be made for that.
 * @param {Document} page
 * @param {Part[]} sheets
 */
export async function reckon(page, sheets) {
  const lines = await linesOf(page, (address) => fetch(address, asking()));
  const sounds = await Promise.all(lines.map(soundsReckoned));
  const parts = [...assetsOf(page), ...sounds.flat(), ...sheets];
  return parts.reduce((sum, { bytes }) => sum + bytes, page.documentElement.outerHTML.length);
}

async function soundsReckoned(line) {
  const sounds = soundsOf(line.manifest, line.address);
  return await isToBeExact(line) ? largerOnes(sounds) : sounds;
}

/**
 * What the lines of a page play along with, as the page names it.
 * @param {Document} page
 * @param {(address: string) => Promise<Response>} get
 */
function linesOf(page, get) {
  return Promise.all(
    manifestsOf(page).map(async (address) => ({ address, manifest: await (await get(address)).json() })),
  );
}

/** Whether a line comes in a form that this browser cannot decode, and is to be had in another. */
async function isToBeExact({ address, manifest }) {
  return Boolean(exactOf(manifest, address)) && !await decodesOpus();
}

/** A line's manifest with the form that this browser decodes, which the server may have to make: one after the other. */
async function decodable(line, get) {
  if (!await isToBeExact(line)) return line.manifest;
  return exactly(line.manifest, await (await get(exactOf(line.manifest, line.address))).json());
}

/** @param {Cache} cache */
async function sizeOf(cache) {
  let sum = 0;
  for (const answer of await cache.matchAll()) sum += (await answer.blob()).size;
  return sum;
}
