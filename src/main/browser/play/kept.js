// A memory that forgets what was longest unused once it holds too much.

export class Kept {
  #most;
  #held = 0;
  #items = new Map(); // in the order of use

  /** `most` in the unit of the sizes given to `put`. */
  constructor(most) {
    this.#most = most;
  }

  get held() {
    return this.#held;
  }

  get(key) {
    const item = this.#items.get(key);
    if (!item) return undefined;
    this.#items.delete(key);
    this.#items.set(key, item);
    return item.value;
  }

  put(key, value, size) {
    this.remove(key);
    this.#items.set(key, { value, size });
    this.#held += size;
    for (const oldest of this.#items.keys()) {
      if (this.#held <= this.#most || oldest === key) break;
      this.remove(oldest);
    }
  }

  remove(key) {
    const item = this.#items.get(key);
    if (!item) return;
    this.#items.delete(key);
    this.#held -= item.size;
  }
}
