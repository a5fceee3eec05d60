// What belongs to a copy of a page, as addresses; and how its page differs from the server's. No page, no net.

/** A part to be fetched, and about how large it is. @typedef {{address: string, bytes: number}} Part */

/** What a style sheet or script names beside itself, as the server writes it: typefaces, a worker. */
const NEIGHBOUR = /(?<=[("])\/assets\/[a-z0-9.-]+\?v=\w+(?=[)"])/g;
const FULL = 100;
/** So many times as large is a sound without loss, about (rule: small-sound). */
const LARGER = 3.5;
/** Behind the address of a manifest: the one of a copy. */
const KEPT = "?kept";

/**
 * @param {string} text of a style sheet or script
 * @param {string} base its own address
 */
export function neighbours(text, base) {
  return [...new Set(text.match(NEIGHBOUR) ?? [])].map((name) => new URL(name, base).href);
}

/**
 * The files of the line at its full tempo. All other tempos are stretched from it, as the page does with those between
 * the ones that were rendered.
 *
 * @param {any} manifest
 * @param {string} base its address
 * @returns {Part[]}
 */
export function soundsOf(manifest, base) {
  const { files, countIn } = fullOf(manifest);
  const found = new Map();
  const note = (url, end) => found.set(url, Math.max(end, found.get(url) ?? 0));
  for (const { url, segments } of Object.values(files)) {
    for (const { offset = 0, bytes = 0 } of segments) note(url, offset + bytes);
  }
  note(countIn.url, countIn.offset + countIn.bytes);
  return [...found].map(([url, bytes]) => ({ address: new URL(url, base).href, bytes }));
}

/** What a copy plays along with: one tempo, and no recordings, which may need a sign-in. The page offers all tempos. */
export function keptManifest(manifest) {
  const percents = manifest.tempos.map(({ percent }) => percent);
  const { exact: _, ...full } = fullOf(manifest); // nobody can be asked for that without a net
  return { ...manifest, percents, tempos: [full], tracks: [] };
}

/**
 * About how large these files would be without loss.
 * @param {Part[]} sounds
 * @returns {Part[]}
 */
export function largerOnes(sounds) {
  return sounds.map(({ address, bytes }) => ({ address, bytes: Math.round(LARGER * bytes) }));
}

/**
 * Where the line's full tempo is without loss; undefined where it comes so.
 * @param {any} manifest
 * @param {string} base its address
 */
export function exactOf(manifest, base) {
  const { exact } = fullOf(manifest);
  return exact && new URL(exact, base).href;
}

/**
 * The manifest with another form of its full tempo.
 * @param {any} manifest
 * @param {any} exact the manifest of that
 */
export function exactly(manifest, { tempos: [exact] }) {
  const tempos = manifest.tempos.map((tempo) => tempo.percent === exact.percent ? exact : tempo);
  return { ...manifest, tempos };
}

/** @param {string} address of a manifest, as the page names it */
export function keptAddress(address) {
  return address + KEPT;
}

/**
 * The page of a copy: it says of which moment it is, and plays with what is kept.
 * @param {string} html as the server sent it
 * @param {string} at ISO 8601
 */
export function keptPage(html, at) {
  return html
    .replace(/<html\b/, `<html data-kept="${at}"`)
    .replace(/(data-manifest="[^"?]+)"/g, `$1${KEPT}"`);
}

function fullOf({ tempos }) {
  return tempos.find(({ percent }) => percent === FULL) ?? tempos[tempos.length - 1];
}
