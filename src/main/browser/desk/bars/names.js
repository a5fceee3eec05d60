// How the marks of a recording are called, in full and as short as the picture needs it.
import { repeats } from "./map.js";

const together = (words, between) => words.filter(Boolean).join(between);

/**
 * What the mark is called that begins the bar of that place in `bars`; behind them all, the end.
 * @param say finds the words
 */
export function nameOf(bars, index, say) {
  if (index === bars.length) return say("end");
  const told = repeats(bars);
  const { bar, pass, round } = bars[index];
  return together([say("bar", bar), told.pass && say("pass", pass), told.round && say("round", round)], ", ");
}

export function shortNameOf(bars, index, say) {
  if (index === bars.length) return say("end-short");
  const { bar, pass, round } = bars[index];
  return together([bar, pass > 1 && say("pass-short", pass), round > 1 && say("round-short", round)], " ");
}
