// The bar map of a recording as a row of moments: when each bar begins, and last when the last one ends. No sound, no page.

/** From `{bars: [{bar, pass, round, seconds}], end}`. */
export function marksOf({ bars, end }) {
  return bars.length ? [...bars.map((bar) => bar.seconds), end] : [];
}

/** The map whose bars are called as these and begin at those moments. */
export function mapOf(bars, marks) {
  return {
    bars: bars.map((bar, i) => ({ ...bar, seconds: marks[i] })),
    end: marks.length ? marks[marks.length - 1] : 0,
  };
}

/** The marks with one of them elsewhere, to the millisecond. */
export function placed(marks, index, at) {
  return marks.map((mark, i) => (i === index ? Math.max(0, Math.round(at * 1000) / 1000) : mark));
}

/** The mark that stands closest to a moment; -1 where there is none. */
export function nearest(marks, at) {
  let best = -1;
  marks.forEach((mark, i) => {
    if (best < 0 || Math.abs(mark - at) < Math.abs(marks[best] - at)) best = i;
  });
  return best;
}

/** The first mark that does not follow the one before it, or that stands behind the end; -1 where all run forward. */
export function stumble(marks, end) {
  return marks.findIndex((mark, i) => (i > 0 && mark <= marks[i - 1]) || mark > end);
}

/** Which of pass and round must be said for the bars to be told apart. */
export function repeats(bars) {
  return { pass: bars.some((bar) => bar.pass > 1), round: bars.some((bar) => bar.round > 1) };
}
