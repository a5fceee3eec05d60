// How fast the line is on which the page comes, as far as the browser has seen. No sound, no page.

/** Bits a second below which the smaller form of the sound is fetched. */
const SLOW = 3_000_000;
/** Bytes of an answer below which its time says little. */
const TELLING = 8_000;

/**
 * The rate in bits a second at which answers came, while any did; null where none of them is large enough to tell.
 * @param {{transferSize: number, responseStart: number, responseEnd: number}[]} answers W3C Resource Timing: times in
 *   milliseconds; what came from a cache has no size
 */
export function rateOf(answers) {
  const telling = answers.filter(({ transferSize }) => transferSize > TELLING);
  const inOrder = telling.sort((one, other) => one.responseStart - other.responseStart);
  let bits = 0;
  let seconds = 0;
  let reached = 0;
  for (const { transferSize, responseStart, responseEnd } of inOrder) {
    bits += 8 * transferSize;
    seconds += Math.max(0, responseEnd - Math.max(reached, responseStart)) / 1000;
    reached = Math.max(reached, responseEnd);
  }
  return bits === 0 ? null : bits / Math.max(seconds, 0.001);
}

/** Whether the reader saves data, or what has come so far came slowly. */
export function isSlow() {
  if (/** @type {any} */ (navigator).connection?.saveData) return true;
  const answers = /** @type {PerformanceResourceTiming[]} */ (performance.getEntriesByType("resource"));
  const rate = rateOf(answers);
  return rate !== null && rate < SLOW;
}
