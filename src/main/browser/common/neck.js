// What the necks have in common that pages draw.

const OCTAVE = 12;
/** The frets of an octave that have a dot; where the octave ends there are two (common practice, no source). */
const DOTTED = new Set([3, 5, 7, 9]);

/** How many dots a neck has at a fret: none, one or two. */
export function dotsAt(fret) {
  if (fret > 0 && fret % OCTAVE === 0) return 2;
  return DOTTED.has(fret % OCTAVE) ? 1 : 0;
}

/** The name of a string or note, which line text writes "Bb" or "F#", with the sign that music has for it. */
export function withSigns(name) {
  return name.replaceAll("#", "♯").replaceAll("b", "♭");
}
