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
   * @param {import("@codemirror/state").ChangeDesc} changes
   */
  follow(changes) {
    changes.iterChangedRanges((from, to) => {
      const all = from <= this.#from && to >= this.#to;
      if (all && (from < this.#from || to > this.#to)) this.#gone = true;
    });
    this.#from = changes.mapPos(this.#from, -1);
    this.#to = changes.mapPos(this.#to, 1);
  }
}
