// What was played on this page, until it is left: of each line how much, and which bars were repeated. Values only.

/** How many quarters are all of a line. */
const ALL = 4;

/** One line, as long as its page is open. */
export class Played {
  #name;
  #bars = new Set();
  #looped = new Set();
  #told = "";
  /** @type {{index: number, round: number} | null} what sounded last */
  #last = null;

  /** @param {string} name of the line in its lesson */
  constructor(name) {
    this.#name = name;
  }

  /**
   * With each picture of the screen, what sounds: a bar that another follows sounded to its end, a round that another follows
   * was repeated.
   *
   * @param {{index: number, round: number} | null | undefined} step
   * @param {{first: number, last: number, whole: boolean}} range that is played
   * @param {{bar: number}[]} bars as they are played, one after another
   */
  hear(step, range, bars) {
    const last = this.#last;
    this.#last = step ? { index: step.index, round: step.round } : null;
    if (!step || !last || (step.index === last.index && step.round === last.round)) return;
    if (follows(step, last, range)) this.#bars.add(last.index);
    if (step.round === last.round + 1 && last.index === range.last && !range.whole) {
      for (const { bar } of bars.slice(range.first, range.last + 1)) this.#looped.add(bar);
    }
  }

  /** What is to be told, in one text; null where nothing has come since it was told last. */
  news(bars) {
    if (this.#bars.size === 0) return null;
    const quarters = Math.min(ALL, Math.floor((ALL * this.#bars.size) / bars.length));
    const text = [this.#name, quarters, [...this.#looped].sort((a, b) => a - b).join(".")].join(",");
    if (text === this.#told) return null;
    this.#told = text;
    return text;
  }
}

/** Whether this is the next piece, and not a place that its listener went to. */
function follows(step, last, range) {
  return step.index === last.index + 1
    ? step.round === last.round
    : step.index === range.first && last.index === range.last;
}
