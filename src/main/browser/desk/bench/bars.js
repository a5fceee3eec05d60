// Bars of a recording, from the moments at which they were tapped. No sound, no page.

/** Each mark begins a bar that lasts to the next one; the last mark only ends one. `first` is the first bar's number. */
export function barsOf(marks, first) {
  return marks.slice(0, -1).map((from, i) => ({ bar: first + i, from, to: marks[i + 1] }));
}

/** The bar that sounds at a moment, if any. */
export function barAt(marks, first, at) {
  return barsOf(marks, first).find(({ from, to }) => from <= at && at < to);
}
