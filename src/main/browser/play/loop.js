// Which stretch of a line is played, and in what order: ranges, their words, and rounds. No sound, no page.

const NEARLY = 1e-9;
/** Bars that make a phrase in most of the music that is played. */
const FOUR = 4;

/**
 * A range of the bars as they are played: from the moment `from` of the bar with index `first` to the moment `to` of
 * the bar with index `last`, which is left out. `to` is Infinity for the end of the bar.
 */
export function wholeLine(bars) {
  return { first: 0, from: 0, last: bars.length - 1, to: Infinity };
}

export function isWhole(range, bars) {
  return isSame(range, wholeLine(bars));
}

export function isSame(one, other) {
  return ["first", "from", "last", "to"].every((end) => one[end] === other[end]);
}

/** How much a count stands for: "2" a whole one, "2&" its half, "2e" and "2a" a quarter; in whole notes. */
function lasts(count, bar) {
  const one = oneCount(bar);
  if (count.endsWith("&")) return one / 2;
  return /[ea]$/.test(count) ? one / 4 : one;
}

function oneCount(bar) {
  const whole = bar.counts.filter((count) => /^\d+$/.test(count.count));
  return whole.length > 1 ? whole[1].at - whole[0].at : bar.length;
}

/** Where a count of `bar` ends; Infinity where the bar does. */
function endOf(count, bar) {
  const end = count.at + lasts(count.count, bar);
  return end >= bar.length - NEARLY ? Infinity : end;
}

/** Reads "3", "3.2&", or "3x2" and "3.2&x2" for the second time that the bar is played. */
function parsePlace(text) {
  const match = /^\s*(\d{1,4})\s*(?:[.,:]\s*(\d{1,2}\s*[e&+a]?))?\s*(?:[x×*]\s*(\d{1,2}))?\s*$/i.exec(text);
  if (!match) return null;
  const count = match[2] && match[2].toLowerCase().replace(/\s/g, "").replace("+", "&");
  return { bar: Number(match[1]), count, pass: match[3] && Number(match[3]) };
}

/**
 * Reads two fields, both included: `{range}`, or `{problem, field, ...}` with what a message needs. An empty field
 * means the start or the end of the line. A bar that is played more than once is meant in the pass in which the other
 * end is nearest, so that "6 to 9" is the way into a second ending; from the first bar to the last it is the whole line.
 * Where an end names its pass, that pass is meant.
 */
export function readRange(fromText, toText, bars) {
  const from = readPlace(fromText, bars, "from");
  if (from.problem) return from;
  const to = readPlace(toText, bars, "to");
  if (to.problem) return to;
  const ends = nearest(from.at ?? [0], to.at ?? [bars.length - 1]);
  if (!ends) return { problem: "backward", field: "to" };
  const [first, last] = ends;
  const range = {
    first,
    from: from.count ? from.count.at : 0,
    last,
    to: to.count ? endOf(to.count, bars[last]) : Infinity,
  };
  if (last === first && range.to <= range.from) return { problem: "backward", field: "to" };
  return { range: from.pass || to.pass ? range : throughout(range, bars) };
}

function readPlace(text, bars, field) {
  if (!text.trim()) return {};
  const place = parsePlace(text);
  if (!place) return { problem: "form", field, found: text.trim() };
  const bar = bars.find((known) => known.bar === place.bar);
  const numbers = bars.map((known) => known.bar);
  if (!bar) return { problem: "bar", field, found: place.bar, first: Math.min(...numbers), last: Math.max(...numbers) };
  const { pass } = place;
  const all = passesOf(place.bar, bars);
  const at = pass ? all.filter((index) => bars[index].pass === pass) : all;
  if (!at.length) return { problem: "pass", field, found: pass, bar: place.bar, times: all.length };
  if (!place.count) return { at, pass };
  const count = bar.counts.find((known) => known.count === place.count);
  return count ? { at, pass, count } : { problem: "count", field, found: place.count, bar: place.bar };
}

/** Where a bar is played, in order. */
export function passesOf(number, bars) {
  return bars.flatMap((bar, index) => (bar.bar === number ? [index] : []));
}

/** The first of the pairs that are least apart, in order; undefined where none is in order. */
function nearest(starts, ends) {
  const pairs = starts.flatMap((start) => ends.filter((end) => end >= start).map((end) => [start, end]));
  return pairs.reduce((best, pair) => (best && best[1] - best[0] <= pair[1] - pair[0] ? best : pair), undefined);
}

/** From the first bar's start to the last bar's end everything between is meant, with its repeats. */
function throughout(range, bars) {
  const all = range.from === 0 && range.to === Infinity;
  const ends = bars[range.first].bar === bars[0].bar && bars[range.last].bar === bars.at(-1).bar;
  return all && ends && bars[0].bar !== bars.at(-1).bar ? wholeLine(bars) : range;
}

/**
 * The range in words for the two fields; the shortest that say it. A pass stands at the end that needs it, or at both.
 * Inside one bar both ends are counts where one is: "from 2.2 to 2" would read as if it went back, "2 to 2.1" as more
 * than the first count.
 */
export function writeRange(range, bars) {
  const one = range.first === range.last;
  const [start, end] = [writeFrom(range, bars), writeTo(range, bars)];
  const from = one && end.includes(".") && !start.includes(".") ? firstCount(bars[range.first]) : start;
  const to = one && start.includes(".") && range.to === Infinity ? lastCount(bars[range.last]) : end;
  const [fromPass, toPass] = [`${from}x${bars[range.first].pass}`, `${to}x${bars[range.last].pass}`];
  /** @type {[string, string][]} */
  const ways = [[from, to], [fromPass, to], [from, toPass], [fromPass, toPass]];
  return ways.find((way) => says(way, range, bars)) ?? [from, to];
}

/** @param {[string, string]} ends */
function says([from, to], { first, last }, bars) {
  const { range } = readRange(from, to, bars);
  return range?.first === first && range.last === last;
}

/** The count that a bar begins with. */
function firstCount(bar) {
  const first = bar.counts.find((known) => known.at < NEARLY);
  return first ? `${bar.bar}.${first.count}` : String(bar.bar);
}

/** The whole count that a bar ends with. */
function lastCount(bar) {
  const last = bar.counts.findLast((known) => /^\d+$/.test(known.count) && endOf(known, bar) === Infinity);
  return last ? `${bar.bar}.${last.count}` : String(bar.bar);
}

function writeFrom({ first, from }, bars) {
  const bar = bars[first];
  const count = bar.counts.find((known) => Math.abs(known.at - from) < NEARLY);
  return from === 0 || !count ? String(bar.bar) : `${bar.bar}.${count.count}`;
}

function writeTo({ last, to }, bars) {
  const bar = bars[last];
  if (to === Infinity) return String(bar.bar);
  const count = bar.counts.find((known) => Math.abs(endOf(known, bar) - to) < NEARLY);
  return count ? `${bar.bar}.${count.count}` : String(bar.bar);
}

/**
 * The range between two events of the sheet, in either order, each `{bar, at, toBar, to}` with moments as numbers.
 * Where no count's name says it (inside a triplet) the range widens until one does.
 */
export function rangeOf(one, other, bars) {
  const [first, last] = before(one, other) ? [one, other] : [other, one];
  const inside = last.toBar === last.bar;
  const lastBar = inside ? last.bar : last.toBar - (last.to > NEARLY ? 0 : 1);
  const ends = nearest(passesOf(first.bar, bars), passesOf(lastBar, bars));
  if (!ends) return null;
  const [start, end] = ends;
  const reaches = inside || last.to > NEARLY ? upTo(last.to, bars[end]) : Infinity;
  return throughout({ first: start, from: downTo(first.at, bars[start]), last: end, to: reaches }, bars);
}

function before(one, other) {
  return one.bar < other.bar || (one.bar === other.bar && one.at <= other.at);
}

function downTo(at, bar) {
  const reached = bar.counts.filter((count) => count.at <= at + NEARLY);
  return reached.length ? reached[reached.length - 1].at : 0;
}

function upTo(to, bar) {
  const ends = bar.counts.map((count) => endOf(count, bar)).filter((end) => end >= to - NEARLY);
  return Math.min(...ends, Infinity);
}

/**
 * A range around the bar with index `at`, to be had by one press: that bar ("bar"), four bars from it on ("four"), or
 * its section with all its repeats ("section"). `sections` are `{name, bar}`, each with the bar that it begins at.
 */
export function around(way, at, bars, sections) {
  const whole = (first, last) => ({ first, from: 0, last, to: Infinity });
  if (way === "bar") return whole(at, at);
  if (way === "four") return whole(at, Math.min(at + FOUR - 1, bars.length - 1));
  const here = sectionOf(bars[at], sections);
  const leaves = (bar) => sectionOf(bar, sections) !== here;
  const before = bars.slice(0, at).findLastIndex(leaves);
  const after = bars.findIndex((bar, i) => i > at && leaves(bar));
  return whole(before + 1, after < 0 ? bars.length - 1 : after - 1);
}

/** Which of the sections a bar belongs to; -1 before the first. */
function sectionOf({ bar }, sections) {
  return sections.findLastIndex((section) => section.bar <= bar);
}

/** Whether a moment of the bar with index `index` lies in the range. */
export function holds(range, index, at) {
  if (index < range.first || index > range.last) return false;
  return !(index === range.first && at < range.from - NEARLY) && !(index === range.last && at >= range.to - NEARLY);
}

/**
 * Rounds through a range. Step n is the n-th piece, a bar or a part of one; which it is follows from n alone, so that
 * the sound ahead can be fetched. What is counted before a step, `before`, belongs to it.
 */
export class Rounds {
  /**
   * @param {object} plan
   * @param {any} plan.range
   * @param {{index: number, at: number, round?: number} | null} [plan.start] inside the range, where the first round begins
   * @param {number} plan.percent of every round, where no ladder says otherwise
   * @param {{percentIn: (round: number) => number, restBefore: (round: number) => number} | null} [plan.ladder] how fast each
   *   round is, and how many seconds of rest go before it
   * @param {boolean} [plan.counted] whether each round is counted in
   */
  constructor({ range, start = null, percent, ladder = null, counted = false }) {
    this.range = range;
    this.start = { round: 0, ...(start ?? { index: range.first, at: range.from }) };
    this.percent = percent;
    this.ladder = ladder;
    this.counted = counted;
  }

  step(n) {
    const bars = this.range.last - this.range.first + 1;
    const behind = this.start.index - this.range.first;
    const round = this.start.round + Math.floor((n + behind) / bars);
    const index = this.range.first + ((n + behind) % bars);
    const before = n > 0 && index === this.range.first ? this.#before(round) : null;
    return { index, round, from: this.#from(index, n), to: this.#to(index), percent: this.percentIn(round), before };
  }

  percentIn(round) {
    return this.ladder ? this.ladder.percentIn(round) : this.percent;
  }

  /** What comes between a round and the one before it: `{rest}` in seconds, and a count; null for nothing. */
  #before(round) {
    const rest = this.ladder?.restBefore(round) ?? 0;
    return rest > 0 || this.counted ? { rest } : null;
  }

  #from(index, n) {
    if (n === 0) return this.start.at;
    return index === this.range.first ? this.range.from : 0;
  }

  #to(index) {
    return index === this.range.last ? this.range.to : Infinity;
  }
}
