// What is played: the manifest of a line as values. No sound, no page.

/** Counts and moments are compared as numbers; tuplets make thirds of them. */
const NEARLY = 1e-9;

/** "3/8" of a whole note as a number. */
export function moment(text) {
  const [above, below = "1"] = String(text).split("/");
  return Number(above) / Number(below);
}

/** What tells an event of the sheet (`{bar, at, toBar, to}` as they are written) from every other one. */
export function eventKey({ bar, at, toBar, to }) {
  return `${bar}:${at}-${toBar}:${to}`;
}

/**
 * A line at one of the tempos that were rendered. Every frame counts from the start of the count-in.
 * `bars` are in the order in which they are played, so a repeated bar is there twice.
 */
export class Take {
  constructor(tempo) {
    this.percent = tempo.percent;
    this.bpm = tempo.bpm;
    this.countIn = tempo.countIn;
    this.files = tempo.files;
    /** Where its sound is without loss; null where this is it. @type {string | null} */
    this.exact = tempo.exact ?? null;
    this.bars = tempo.bars.map(readBar);
    this.events = this.bars.flatMap((bar) => bar.events).sort((a, b) => a.start - b.start);
    /** Frames that are counted before the first bar: less than all of the count-in where that bar is a pickup. */
    this.before = this.bars[0].start;
  }

  /** Its sound without loss from now on, as the manifest at `exact` names it. */
  become({ countIn, files }) {
    Object.assign(this, { countIn, files, exact: null });
  }

  /** The count that is being played at `frame` of bar `index`, such as "2&"; between whole ones where something begins. */
  countAt(index, frame) {
    const reached = this.bars[index].told.filter((count) => count.frame <= frame + 1);
    return reached.length ? reached[reached.length - 1].count : "";
  }

  /** What sounds at `frame`. */
  eventsAt(frame) {
    return this.events.filter((event) => event.start <= frame && frame < event.end);
  }

  /** The frame, from the start of bar `index`, of a moment of it; between two counts evenly. */
  frameOf(index, at) {
    const bar = this.bars[index];
    if (at === Infinity) return bar.frames;
    const marks = [...bar.counts, { at: bar.length, frame: bar.start + bar.frames }];
    const after = marks.findIndex((mark) => mark.at >= at - NEARLY);
    if (after < 0) return bar.frames;
    const right = marks[after];
    if (after === 0 || right.at - at < NEARLY) return right.frame - bar.start;
    const left = marks[after - 1];
    const share = (at - left.at) / (right.at - left.at);
    return Math.round(left.frame + share * (right.frame - left.frame)) - bar.start;
  }

  /** The moment of bar `index` at `frame` of the take: what `frameOf` undoes. */
  momentOf(index, frame) {
    const bar = this.bars[index];
    const marks = [...bar.counts, { at: bar.length, frame: bar.start + bar.frames }];
    const after = marks.findIndex((mark) => mark.frame >= frame);
    if (after <= 0) return after < 0 ? bar.length : marks[0].at;
    const [left, right] = [marks[after - 1], marks[after]];
    return left.at + ((frame - left.frame) / (right.frame - left.frame)) * (right.at - left.at);
  }
}

/** Whether an event begins at a moment of its bar. */
function isAt(event, at) {
  return Math.abs(moment(event.at) - at) < NEARLY;
}

function readBar(bar) {
  const counts = bar.counts.map((count) => ({ ...count, at: moment(count.at) }));
  return {
    bar: bar.bar,
    pass: bar.pass,
    start: bar.startFrame,
    frames: bar.frames,
    length: lengthOf(counts),
    counts,
    told: counts.filter(({ count, at }) => /^\d+$/.test(count) || bar.events.some((event) => isAt(event, at))),
    events: bar.events.map(readEvent),
  };
}

function readEvent(event) {
  const { bar, at, toBar, to, startFrame: start, endFrame: end } = event;
  return { bar, at, toBar, to, start, end };
}

/** A bar ends one step of its counts after the last of them. */
function lengthOf(counts) {
  const last = counts.length - 1;
  if (last < 1) return counts.length ? counts[0].at + 0.25 : 0;
  return 2 * counts[last].at - counts[last - 1].at;
}

/** A line at every tempo that it was rendered at, and at those between by stretching. */
export class Score {
  /**
   * `takes` go from slow to fast and have the same bars; `headroom` in decibels; `percents` are the tempos that are offered
   * at a press: those of the takes, but for a copy on the reader's device, which has one take alone.
   */
  /** @param {any} of `{rate, headroom, stems, takes, sections, percents}` */
  constructor({ rate, headroom = 0, stems, takes, sections = [], percents = takes.map(({ percent }) => percent) }) {
    this.rate = rate;
    this.headroom = headroom;
    this.stems = stems;
    this.takes = takes;
    this.sections = sections;
    this.percents = percents;
  }

  static of(manifest) {
    const takes = manifest.tempos.map((tempo) => new Take(tempo));
    const { rate, headroom, stems, sections, percents } = manifest;
    return new Score({ rate, headroom, stems, takes, sections, percents });
  }

  /** The bars; which tempo's does not matter for their numbers and counts. */
  get bars() {
    return this.takes[0].bars;
  }

  /** Beats a minute at `percent` of the tempo. */
  bpm(percent) {
    const full = this.takes[this.takes.length - 1];
    return (full.bpm * percent) / full.percent;
  }

  /**
   * How `percent` is played: the nearest take, and how many times longer it must become. 1 is as it was rendered.
   */
  at(percent) {
    const away = (take) => Math.abs(Math.log(take.percent / percent));
    const take = this.takes.reduce((best, other) => (away(other) < away(best) ? other : best));
    return { percent, take, longer: take.percent / percent };
  }
}
