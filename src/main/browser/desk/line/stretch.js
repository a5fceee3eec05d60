// A stretch of text that goes along with what is written in it and around it.

export class Stretch {
  #from;
  #to;
  #gone = false;

  constructor(from, to) {
    this.#from = from;
    this.#to = to;
  }

  /** Where it is now: `{from, to}`, empty where all of it was deleted; null once it was replaced along with more. */
  get place() {
    return this.#gone ? null : { from: this.#from, to: this.#to };
  }

  /** It is no longer asked for. */
  clear() {
    this.#gone = true;
  }

  /**
   * Goes along with a change of the text. What is written at either edge belongs to it.
   * @param {Array<{from: number, to: number, text: string}>} splices in places of the text as it was, in order
   */
  follow(splices) {
    for (const { from, to } of splices) {
      const all = from <= this.#from && to >= this.#to;
      if (all && (from < this.#from || to > this.#to)) this.#gone = true;
    }
    this.#from = moved(this.#from, splices, false);
    this.#to = moved(this.#to, splices, true);
  }
}

/**
 * Where a place is after splices.
 * @param {boolean} after whether what is put exactly there comes before it; a place inside of what is replaced goes to the
 *   end of what came instead, else to its start
 */
function moved(place, splices, after) {
  let by = 0;
  for (const { from, to, text } of splices) {
    if (from > place) break;
    if (to > place || (from === place && to === place && !after)) {
      return from === place || !after ? from + by : from + by + text.length;
    }
    by += text.length - (to - from);
  }
  return place + by;
}
