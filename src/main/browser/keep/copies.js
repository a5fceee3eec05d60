// The lessons that are kept on this device: each copy is a cache of its own (W3C Service Workers, section "Cache"), with a
// note in it that says whose it is and whether all of it has come. Pages write copies, the worker reads them.

export const OURS = "groundbass.";
/** Grows where this program could misread copies of an earlier one; those are then removed. */
const FORM = 1;
const COPY = `${OURS}copy.${FORM} `;
const OFFLINE = `${OURS}offline.${FORM}`;
/** Under this address a copy has its note; no page of the site has it. */
const NOTE = "/kept/note";
const OFFLINE_PAGE = "/kept";

/**
 * What is known of a copy. `release` names the state of the lesson, `at` is the moment of keeping (ISO 8601), `bytes` what
 * it takes on the device once it is `whole`.
 *
 * @typedef {{lesson: string, release: string, path: string, title: string, at: string, bytes: number, whole: boolean,
 *   recordings: boolean}} Note
 */

/** Answers depend on the reader's language, which a copy was made in. */
export const ANY_READER = { ignoreVary: true };

/** Whether this browser keeps anything: not where a page came without TLS, nor where its reader has switched storage off. */
export async function isOffered() {
  try {
    await caches.keys();
    return "serviceWorker" in navigator;
  } catch {
    return false; // missing outside of secure contexts, or refused
  }
}

/** The notes of all copies, whole or not, the latest first. @returns {Promise<Note[]>} */
export async function notes() {
  const found = await Promise.all((await ours(COPY)).map(noteIn));
  return found.flatMap((note) => note ?? []).sort((one, other) => other.at.localeCompare(one.at));
}

/** The note of a lesson's copy: of a whole one, if there is one. @param {string} lesson */
export async function noteOf(lesson) {
  const its = (await notes()).filter((note) => note.lesson === lesson);
  return its.find((note) => note.whole) ?? its[0] ?? null;
}

/** The note of the whole copy of the page with this path. @param {string} path */
export async function noteAt(path) {
  return (await notes()).find((note) => note.whole && note.path === path) ?? null;
}

/** Where the parts of a copy are; made where there is none. @param {{lesson: string, release: string}} note */
export function cacheOf(note) {
  return caches.open(nameOf(note));
}

/** The page of a copy; null where it went meanwhile. @param {Note} note */
export async function pageOf(note) {
  return await caches.match(note.path, { cacheName: nameOf(note), ...ANY_READER }) ?? null;
}

/**
 * Into the copy that is being made: where it was removed meanwhile, its note is lost with it.
 * @param {Cache} cache
 * @param {Note} note
 */
export async function write(cache, note) {
  await cache.put(NOTE, Response.json(note));
}

/** Whatever copy has this part. @param {Request | string} request */
export async function partOf(request) {
  for (const name of [...await ours(COPY), OFFLINE]) {
    const found = await caches.match(request, { cacheName: name, ...ANY_READER });
    if (found) return found;
  }
  return null;
}

/** The addresses of everything in copies that begins so, as paths. @param {string} start */
export async function partsBelow(start) {
  const all = await Promise.all((await ours(COPY)).map(async (name) => (await caches.open(name)).keys()));
  return all.flat().map(({ url }) => new URL(url).pathname).filter((path) => path.startsWith(start));
}

/** Removes every copy of a lesson, but for that of one release; with the last copy all goes that served it. */
export async function remove(lesson, but = "") {
  const left = nameOf({ lesson, release: but });
  const names = (await ours(nameOf({ lesson, release: "" }))).filter((name) => name !== left);
  await Promise.all(names.map((name) => caches.delete(name)));
  if ((await ours(COPY)).length === 0) await removeAll();
}

/** Removes what is here of the lesson with this path, whole or not. @returns {Promise<boolean>} whether there was any */
export async function removeAt(path) {
  const note = (await notes()).find((one) => one.path === path);
  if (note) await remove(note.lesson);
  return note !== undefined;
}

/** Nothing is left on the device: no copy, no page, no worker. */
export async function removeAll() {
  await removeCaches();
  await (await navigator.serviceWorker.getRegistration("/"))?.unregister();
}

/** Nothing is left but the worker. */
export async function removeCaches() {
  await Promise.all((await ours(OURS)).map((name) => caches.delete(name)));
}

/** Removes what earlier forms of this program kept. */
export async function removeOldForms() {
  const old = (await ours(OURS)).filter((name) => name !== OFFLINE && !name.startsWith(COPY));
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** Where the page is that is shown without a net. */
export function offlineCache() {
  return caches.open(OFFLINE);
}

/** That page, as an answer; null where nothing is kept. */
export async function offlinePage() {
  return await caches.match(OFFLINE_PAGE, { cacheName: OFFLINE, ...ANY_READER }) ?? null;
}

function nameOf({ lesson, release }) {
  return `${COPY}${lesson} ${release}`;
}

/** @returns {Promise<Note | null>} */
async function noteIn(name) {
  const answer = await caches.match(NOTE, { cacheName: name });
  return answer ? answer.json() : null;
}

/** The names of our caches that begin so; another program may have some at this address. */
async function ours(start) {
  return (await caches.keys()).filter((name) => name.startsWith(start));
}
