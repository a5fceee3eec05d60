// Which line of the page keys are for: the one that was used or begun last, the first before that.

export class Used {
  #lines;
  /** @type {any} */
  #last = null;

  /** @param {any[]} lines of the page, in its order, which grow as they come */
  constructor(lines) {
    this.#lines = lines;
  }

  get line() {
    return this.#last ?? this.#lines[0] ?? null;
  }

  use(line) {
    this.#last = line;
  }

  /** Whatever is pressed or reached in these things belongs to this line; so does what it begins to play, wherever that is begun. */
  watch(line, things) {
    for (const thing of things) {
      for (const way of ["pointerdown", "focusin"]) thing.addEventListener(way, () => this.use(line));
    }
    let wasStopped = true;
    line.practice.addEventListener("change", () => {
      const isStopped = line.practice.state === "stopped";
      if (wasStopped && !isStopped) this.use(line);
      wasStopped = isStopped;
    });
  }
}
