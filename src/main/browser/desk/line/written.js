// What was written before the editor component is here, which takes it over as its history; where the component cannot be
// had, the same is undone here.

const ONE_STEP = 600; // milliseconds between keys that are undone together, as in the editor

/**
 * A change: splices in places of the text before it, the moment, and whether it is a step by itself.
 * @typedef {{splices: {from: number, to: number, text: string}[], at: number, alone: boolean}} Change
 */

/** The text that comes of splices of `text`, which do not overlap and stand in order. */
export function spliced(text, splices) {
  return splices.reduceRight((all, { from, to, text: put }) => all.slice(0, from) + put + all.slice(to), text);
}

export class Written {
  /** @type {Change[][]} */
  #undone = [];

  /** @param {string} before the text that it begins from @param {Change[]} changes from there on */
  constructor(before, changes) {
    this.before = before;
    this.changes = changes;
  }

  /** @param {Change} change */
  note(change) {
    this.changes.push(change);
    this.#undone = [];
  }

  text() {
    return this.changes.reduce((text, { splices }) => spliced(text, splices), this.before);
  }

  /** Takes the last step back. @returns {boolean} whether there was one */
  undo() {
    if (!this.changes.length) return false;
    this.#undone.push(this.changes.splice(this.#lastStep()));
    return true;
  }

  /** Does again what was undone last, as long as nothing was written since. @returns {boolean} whether there was anything */
  redo() {
    const step = this.#undone.pop();
    if (step) this.changes.push(...step);
    return step !== undefined;
  }

  /** Where the changes begin that are one step: what was typed shortly after one another. */
  #lastStep() {
    let first = this.changes.length - 1;
    const isTyped = (index) => !this.changes[index].alone;
    const follows = (index) => this.changes[index].at - this.changes[index - 1].at <= ONE_STEP;
    while (first > 0 && isTyped(first) && isTyped(first - 1) && follows(first)) first--;
    return first;
  }
}
