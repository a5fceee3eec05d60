// The bars of a recording while they are corrected: which mark is in hand, and what stood before each change. No sound,
// no page.
import { nudged } from "../recording/marks.js";
import { marksOf, nearest, placed, stumble } from "./map.js";

const BESIDE = 2; // seconds before the first bar and after the last one
const LATE = 1; // second behind the end at which the last bar may still end: a recording may be cut short

export class Correction {
  /** How each bar is called: `{bar, pass, round}`. */
  bars = [];
  /** When each begins, and last when the last one ends. */
  marks = [];
  /** The mark that is tapped or moved next. */
  chosen = 0;
  /** Whether what is heard chooses it. */
  following = true;
  /** Whether it is what the server keeps, what it found, or neither: `kept`, `found` or `changed`. */
  standing = "found";
  #earlier = [];

  get any() {
    return this.marks.length > 0;
  }

  get canUndo() {
    return this.#earlier.length > 0;
  }

  /** The bars that the server keeps or found. */
  begin(map, at) {
    this.#take(map, at);
    this.standing = map.kept ? "kept" : "found";
  }

  /** Those in the place of what stood, which can be taken back. */
  replace(map, at) {
    this.#change(() => this.#take(map, at));
  }

  undo() {
    const before = this.#earlier.pop();
    if (!before) return;
    Object.assign(this, before);
    this.chosen = Math.max(0, Math.min(this.chosen, this.marks.length - 1));
    this.standing = "changed";
  }

  choose(index) {
    this.chosen = index;
    this.following = false;
  }

  /** From here on what is heard chooses again. */
  follow(at) {
    this.following = true;
    this.heard(at);
  }

  heard(at) {
    if (this.following && this.any) this.chosen = nearest(this.marks, at);
  }

  /** Puts the mark in hand there and takes the next one up. The mark that was put. */
  tap(at) {
    const tapped = this.chosen;
    this.#change(() => (this.marks = placed(this.marks, tapped, at)));
    this.choose(Math.min(tapped + 1, this.marks.length - 1));
    return tapped;
  }

  /** Moves the mark in hand, at most up to its neighbours. */
  nudge(by) {
    const { chosen, marks } = this;
    this.#change(() => (this.marks = placed(marks, chosen, nudged(marks, chosen, by)[chosen])));
    this.following = false;
  }

  /** From the mark before the one in hand to the one after it. */
  get around() {
    const here = this.marks[this.chosen];
    return { from: this.marks[this.chosen - 1] ?? here - BESIDE, to: this.marks[this.chosen + 1] ?? here + BESIDE };
  }

  /** The first mark that does not run forward in a recording of so many seconds, `{index, outside}`; null where all do. */
  stumble(length) {
    const index = stumble(this.marks, length + LATE);
    return index < 0 ? null : { index, outside: this.marks[index] > length + LATE };
  }

  #take(map, at) {
    this.bars = map.bars;
    this.marks = marksOf(map);
    this.chosen = Math.max(0, nearest(this.marks, at));
  }

  #change(made) {
    this.#earlier.push({ bars: this.bars, marks: this.marks });
    made();
    this.standing = "changed";
  }
}
