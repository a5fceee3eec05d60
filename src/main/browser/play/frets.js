// The part of a neck that a line is played on, as values: which frets are shown, and where a place stands.
import { dotsAt } from "../common/neck.js";

/** Fewer frets than these would look like no neck. */
const FEWEST = 5;
/** So near to the nut it is shown from there. */
const NEAR = 4;

/** In the drawing's own units. */
const FRET = 10;
const STRING = 6;
/** Left of the first wire: a string's name, then the finger of an open string. */
const SIDE = 14;
const NAMES = 3.5;
const OPEN = 4;
const TOP = 5;
const FOOT = 9;

/** How a neck is shown: from the `first` fret wire, 0 for the nut, to the `last`. */
export class Frets {
  /**
   * @param {string[]} strings the highest first
   * @param {{fret: string}[]} places
   */
  constructor(strings, places) {
    const stopped = places.map(({ fret }) => Number(fret)).filter((fret) => fret > 0);
    const lowest = Math.min(...stopped, Infinity);
    this.strings = strings;
    this.first = lowest > NEAR && lowest !== Infinity ? lowest - 2 : 0;
    this.last = Math.max(...stopped, this.first + FEWEST);
  }

  get width() {
    return SIDE + (this.last - this.first) * FRET + 2;
  }

  get height() {
    return TOP + (this.strings.length - 1) * STRING + FOOT;
  }

  /** Where a wire crosses the strings. */
  wire(fret) {
    return SIDE + (fret - this.first) * FRET;
  }

  /** Where the finger is: behind the wire; an open or a damped string at its beginning. */
  finger(fret) {
    return Number(fret) > 0 ? this.wire(Number(fret)) - FRET / 2 : SIDE - OPEN;
  }

  /** How high a string lies, 1 the highest on top as in tablature. */
  string(number) {
    return TOP + (number - 1) * STRING;
  }

  /** The middle of what a string is called. */
  get names() {
    return NAMES;
  }

  /** How high the dots of a fret lie: one in the middle, or two as far above it as below. */
  dotsOf(fret) {
    const across = (this.strings.length - 1) * STRING;
    const middle = TOP + across / 2;
    return dotsAt(fret) === 2 ? [middle - across / 3, middle + across / 3] : [middle];
  }

  /** The frets that have dots, of those that are shown. */
  get dots() {
    const shown = Array.from({ length: this.last - this.first }, (_, i) => this.first + 1 + i);
    return shown.filter((fret) => dotsAt(fret) > 0);
  }
}
