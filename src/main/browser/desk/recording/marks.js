// Marks in a recording, in seconds, as they are tapped and moved. No sound, no page.

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
