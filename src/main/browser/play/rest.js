// When it is time to rest: by what was played, not by what has passed.

/** Seconds of playing after which hands and ears want a rest (common practice, no source). */
export const ENOUGH = 25 * 60;

export class Rest {
  #enough;
  #played = 0;
  /** @type {number | null} */
  #before = null;

  constructor(enough = ENOUGH) {
    this.#enough = enough;
  }

  /**
   * Often asked: whether it is time now, once for each so much that was played.
   *
   * @param {number} now seconds of any clock
   * @param {boolean} playing
   */
  due(now, playing) {
    if (playing && this.#before !== null) this.#played += Math.max(0, now - this.#before);
    this.#before = playing ? now : null;
    if (this.#played < this.#enough) return false;
    this.#played = 0;
    return true;
  }
}
