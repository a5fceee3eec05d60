// Sounds that are made once, by name: here, on their way, or still to be made.
import { Kept } from "./kept.js";

const MOST_BYTES = 64_000_000; // of decoded sound: a minute and a half of four stems

export class Sounds {
  #kept = new Kept(MOST_BYTES);
  #coming = new Map();

  /** What is here already. */
  ready(key) {
    return this.#kept.get(key);
  }

  /** The AudioBuffer of that name; `make` is asked for it where there is none. */
  async get(key, make) {
    const here = this.#kept.get(key) ?? this.#coming.get(key);
    if (here) return here;
    const coming = make();
    this.#coming.set(key, coming);
    try {
      const buffer = await coming;
      this.#kept.put(key, buffer, 4 * buffer.length * buffer.numberOfChannels);
      return buffer;
    } finally {
      this.#coming.delete(key);
    }
  }
}
