// Bars of a recording, from the moments at which they were tapped. No sound, no page.

/** Seconds between two taps that can be two bars: anything shorter was a slip of the hand. */
const SHORTEST = 0.25;

/** The marks with one more, in order; as they were where it would stand on another. */
export function marked(marks, at) {
  if (marks.some((mark) => Math.abs(mark - at) < SHORTEST)) return marks;
  return [...marks, at].sort((a, b) => a - b);
}

/** Moves a mark, at most up to its neighbours. */
export function nudged(marks, index, by) {
  const low = index > 0 ? marks[index - 1] + SHORTEST : 0;
  const high = index + 1 < marks.length ? marks[index + 1] - SHORTEST : Infinity;
  return marks.map((mark, i) => (i === index ? Math.min(high, Math.max(low, mark + by)) : mark));
}

/** Each mark begins a bar that lasts to the next one; the last mark only ends one. `first` is the first bar's number. */
export function barsOf(marks, first) {
  return marks.slice(0, -1).map((from, i) => ({ bar: first + i, from, to: marks[i + 1] }));
}

/** The bar that sounds at a moment, if any. */
export function barAt(marks, first, at) {
  return barsOf(marks, first).find(({ from, to }) => from <= at && at < to);
}

/** `1:05.3` */
export function clock(seconds, digits = 1) {
  const minutes = Math.floor(seconds / 60);
  return `${minutes}:${(seconds - 60 * minutes).toFixed(digits).padStart(3 + digits, "0")}`;
}
