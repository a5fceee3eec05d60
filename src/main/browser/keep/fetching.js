// Fetches parts of a copy, a few at once, each once. Nothing is sent that says who asks: what is kept is what all get.
import { readersLanguage } from "../common/language.js";
import { asked, patiently } from "../common/patience.js";
import { ANY_READER } from "./copies.js";
import { neighbours } from "./plan.js";

/** @typedef {import("./plan.js").Part} Part */

const AT_ONCE = 3;
/** Bytes that are reckoned for a style sheet, script or typeface, of which nothing is known before it is here. */
export const USUAL = 30_000;

/**
 * How to ask: as somebody whom the server does not know, in the language of this page.
 * @param {AbortSignal} [signal]
 */
export function asking(signal) {
  return /** @type {RequestInit} */ ({
    credentials: "omit",
    headers: { "Accept-Language": readersLanguage() },
    redirect: "error", // what stands somewhere else is no part of this lesson
    signal,
  });
}

/**
 * A part, from the copy where it is there.
 * @param {Cache} cache
 * @param {string} address
 * @param {RequestInit} ask
 */
export async function bring(cache, address, ask) {
  const here = await cache.match(address, ANY_READER);
  if (here) return here;
  await cache.put(address, await given(address, ask));
  // read from there again, so that a sound of which nothing is read takes no memory
  return /** @type {Response} */ (await cache.match(address, ANY_READER));
}

/**
 * Parts, and what they name beside themselves.
 * @param {Cache} cache
 * @param {Part[]} parts
 * @param {RequestInit} ask
 * @param {(done: number, all: number) => void} tell hears of bytes, as they are reckoned
 */
export async function bringAll(cache, parts, ask, tell) {
  const queue = [...parts];
  const known = new Set(parts.map(({ address }) => address));
  let all = parts.reduce((sum, { bytes }) => sum + bytes, 0);
  let done = 0;
  const work = async () => {
    for (let part = queue.shift(); part; part = queue.shift()) {
      const found = await named(await bring(cache, part.address, ask), part.address);
      for (const address of found.filter((address) => !known.has(address))) {
        known.add(address);
        queue.push({ address, bytes: USUAL });
        all += USUAL;
      }
      tell(done += part.bytes, all);
    }
  };
  const stop = (problem) => {
    queue.length = 0; // the others end with what they are at
    throw problem;
  };
  await Promise.all(Array.from({ length: AT_ONCE }, () => work().catch(stop)));
}

/** @param {string} address @param {RequestInit} ask */
export function given(address, ask) {
  return patiently(() => asked(address, ask), { signal: ask.signal });
}

/** @param {Response} answer @param {string} address */
async function named(answer, address) {
  const isText = /css|javascript/.test(answer.headers.get("Content-Type") ?? "");
  return isText ? neighbours(await answer.text(), address) : [];
}
