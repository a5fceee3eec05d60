// The passes of a passage: in a form with repeats the same two ends are played more than once. No sound, no page.
import { isSame, isWhole, passesOf } from "./loop.js";

/** Runs of bars that are named; of more, the rest is left out. */
const MOST = 6;

/**
 * The ways in which a range's two ends are played, in order: from each time of its first bar to the next time of its last
 * one, `{range, pass}`, and from the first to the last of all times, with `pass` null. None where there is no choice.
 */
export function waysOf(range, bars) {
  if (isWhole(range, bars)) return [];
  const starts = passesOf(bars[range.first].bar, bars);
  const ends = passesOf(bars[range.last].bar, bars);
  const ways = starts.flatMap((first) => {
    const last = ends.find((end) => reaches({ ...range, first, last: end }));
    return last === undefined ? [] : [{ range: { ...range, first, last }, pass: bars[first].pass }];
  });
  const all = { ...range, first: starts[0], last: ends[ends.length - 1] };
  if (reaches(all) && !ways.some((way) => isSame(way.range, all))) ways.push({ range: all, pass: null });
  return ways.length > 1 ? ways : [];
}

function reaches({ first, from, last, to }) {
  return first < last || (first === last && from < to);
}

/** The bars of a range in the order in which they are played: "6–8, 1–6, 9". */
export function barsOf({ first, last }, bars) {
  const runs = [];
  for (const { bar } of bars.slice(first, last + 1)) {
    const run = runs[runs.length - 1];
    if (run && run.to + 1 === bar) run.to = bar;
    else runs.push({ from: bar, to: bar });
  }
  const words = runs.slice(0, MOST).map(({ from, to }) => (from === to ? String(from) : `${from}–${to}`));
  return words.concat(runs.length > MOST ? "…" : []).join(", ");
}
