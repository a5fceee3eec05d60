// The stretch of a recording that its picture shows. No page but for the picture's place on it.
const CLOSEST = 2; // seconds that fill the picture at most enlarged

/** A view as wide as it is, that begins at `from` or as near to it as the recording allows. */
export function moved(view, length, from) {
  const wide = view.to - view.from;
  const begin = Math.min(length - wide, Math.max(0, from));
  return { from: begin, to: begin + wide };
}

/** A view `by` times as wide, around `at`. */
export function zoomed(view, length, at, by) {
  const wide = Math.min(length, Math.max(CLOSEST, (view.to - view.from) * by));
  return moved({ from: 0, to: wide }, length, at - wide / 2);
}

/** The second of the recording that a pointer shows. */
export function secondAt(event, canvas, view) {
  const { left, width } = canvas.getBoundingClientRect();
  return view.from + ((event.clientX - left) / width) * (view.to - view.from);
}
