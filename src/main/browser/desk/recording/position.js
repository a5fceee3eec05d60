// Where one is in a recording: the second that is heard next, the stretch that is repeated, and what of it is seen. No
// sound, no page.
import { moved, zoomed } from "./view.js";

const SHORTEST = 0.1; // seconds that can be repeated
const END = 0.05; // seconds before the end that are not worth playing

export class Position {
  #at = 0;
  /** @type {{from: number, to: number} | null} */
  #loop = null;
  #view;

  /** At the start of a recording of so many seconds, all of which is seen. */
  constructor(length) {
    this.length = length;
    this.#view = { from: 0, to: length };
  }

  get at() {
    return this.#at;
  }

  /** The stretch that is repeated, `{from, to}`; null where none is. */
  get loop() {
    return this.#loop;
  }

  /** What of it is seen, `{from, to}`. */
  get view() {
    return this.#view;
  }

  get ended() {
    return this.#at >= this.length - END;
  }

  /** To another second; a stretch in which it does not lie is no longer repeated. */
  seek(second) {
    this.#at = this.#inside(second);
    if (this.#loop && (this.#at < this.#loop.from || this.#at >= this.#loop.to)) this.#loop = null;
  }

  /** What is heard now: where it leaves what is seen, the picture turns over like a page. */
  follow(second) {
    this.#at = second;
    if (this.#hidden(second)) this.#view = moved(this.#view, this.length, second);
  }

  /** Brings a second into the middle of the picture, where it is not seen. */
  reveal(second) {
    const half = (this.#view.to - this.#view.from) / 2;
    if (this.#hidden(second)) this.#view = moved(this.#view, this.length, second - half);
  }

  /** Repeats what lies between two seconds, from the earlier one; nothing, where that is too short to be meant. */
  repeat(one, other) {
    const from = this.#inside(Math.min(one, other));
    const to = this.#inside(Math.max(one, other));
    this.#loop = to - from >= SHORTEST ? { from, to } : null;
    if (this.#loop) this.#at = from;
  }

  repeatNothing() {
    this.#loop = null;
  }

  /** Shows `by` times as much. */
  zoom(by) {
    this.#view = zoomed(this.#view, this.length, this.#at, by);
  }

  #inside(second) {
    return Math.min(this.length, Math.max(0, second));
  }

  #hidden(second) {
    return second > this.#view.to || second < this.#view.from;
  }
}
