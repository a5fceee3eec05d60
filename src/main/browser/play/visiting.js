// A passage that is repeated for now, while a step of the walkthrough is open, and what is gone back to after it.

export class Visiting {
  #practice;
  /** @type {any} what was repeated before; null while nothing is visited */
  #before = null;
  /** @type {any} */
  #visited = null;

  /** @param {import("./practice.js").Practice} practice */
  constructor(practice) {
    this.#practice = practice;
    practice.addEventListener("source", () => this.#forget()); // its bars are others
  }

  go(passage) {
    if (!this.#isThere) this.#before = this.#practice.engine.range; // also what was chosen while a step was open
    this.#practice.visit(passage);
    this.#visited = this.#practice.engine.range;
  }

  /** To what was repeated before, unless something else has been chosen since. */
  back() {
    if (this.#isThere) this.#practice.goBackTo(this.#before);
    this.#forget();
  }

  get #isThere() {
    return this.#visited !== null && this.#practice.engine.range === this.#visited;
  }

  #forget() {
    this.#before = this.#visited = null;
  }
}
