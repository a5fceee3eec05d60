// One line being practised: what the student does becomes what is played; what is played is lit on the sheet.
import { soundAlone } from "../common/alone.js";
import { Engine } from "./engine.js";
import { around, holds, isSame, isWhole, passesOf, rangeOf, readRange, wholeLine, writeRange } from "./loop.js";
import { waysOf } from "./passes.js";
import { eventKey } from "./score.js";
import { Trainer, typedIn } from "./trainer.js";

export const SLOWEST = 30;
export const FASTEST = 150;
const STEP = 5;
const FULL = 100;
/** Beats a minute by which the trainer goes on, where nobody has said otherwise. */
const CLIMB = 5;
/** The settings of the trainer: where one changes it begins anew. */
const TRAINER = ["climb", "climbFrom", "climbTo", "climbStep", "every", "rest"];
/** Of a percentage: what reckoning with fractions leaves over. */
const NOTHING = 1e-6;
/** Seconds: half a picture of a screen that shows sixty a second, so that light is neither early nor late. */
const HALF_A_PICTURE = 0.008;

/**
 * Tells of `change` events: another state, range, tempo or place; of `lit` with what
 * sounds just now, when that is something else than before; and of `problem`, `interrupted` and `source`.
 */
export class Practice extends EventTarget {
  #settings;
  #sheet;
  /** @type {Engine} */
  #engine;
  /** By source: each has nodes that the loudspeaker holds for as long as the page lasts. */
  #engines = new Map();
  /** @type {{index: number, at: number, round?: number} | null} */
  #start = null;
  /** @type {any} the passage that was repeated last */
  #passage = null;
  /** @type {number | null} per cent, until it is heard */
  #asked = null;
  /** What tells the events that are lit from others. */
  #lit = "";
  #soundsAlone = soundAlone(() => this.state !== "stopped" && this.stop());

  constructor({ source, sheet, settings }) {
    super();
    this.#settings = settings;
    this.#sheet = sheet;
    this.#engine = this.#engineOf(source);
    this.#begun();
    settings.addEventListener("change", ({ detail }) => this.#settingChanged(detail));
  }

  /** Plays from another source from now on. */
  use(source) {
    this.#engine.stop();
    if (source !== this.#engine.source) this.#engine.source.close?.();
    this.#start = null;
    this.#passage = null;
    this.#engine = this.#engineOf(source);
    this.#begun();
  }

  #engineOf(source) {
    const engine = this.#engines.get(source) ?? this.#newEngine(source);
    this.#engines.set(source, engine);
    return engine;
  }

  #newEngine(source) {
    const engine = new Engine(source, wholeLine(source.score.bars), this.#wishes(source));
    engine.addEventListener("state", () => this.#stateChanged());
    for (const news of ["problem", "interrupted"]) engine.addEventListener(news, (event) => this.#brokenOff(event));
    return engine;
  }

  #begun() {
    // what is kept is another line's by now, or the band's alone
    if (this.setRange(this.#settings.get("from"), this.#settings.get("to"))) this.goBackTo(wholeLine(this.score.bars));
    this.dispatchEvent(new CustomEvent("source"));
    this.#tell();
  }

  get engine() {
    return this.#engine;
  }

  get state() {
    return this.#engine.state;
  }

  get score() {
    return this.#engine.source.score;
  }

  get settings() {
    return this.#settings;
  }

  /** The two ends as they are written; null for the whole line. */
  get range() {
    return isWhole(this.#engine.range, this.score.bars) ? null : writeRange(this.#engine.range, this.score.bars);
  }

  /** What is asked for; once that is heard, what is played at just now: a climbing tempo goes on from it. */
  get percent() {
    const now = this.#engine.heard();
    const heard = (now?.step ?? now?.next)?.percent;
    if (heard === this.#asked) this.#asked = null;
    return this.#asked ?? heard ?? this.#next;
  }

  /** How fast it goes on. */
  get #next() {
    return this.#settings.get("climb")
      ? this.#ladder.percentIn(this.#start?.round ?? 0)
      : this.#settings.get("percent");
  }

  /** Where the music is, or will begin: `{index, count}`; `{counting}` before it. */
  get place() {
    const heard = this.#engine.heard(HALF_A_PICTURE);
    if (heard?.counting !== undefined) return heard;
    if (heard) return { index: heard.step.index, count: heard.take.countAt(heard.step.index, heard.frame) };
    const { index, at } = this.#begin();
    const take = this.score.takes[0];
    return { index, count: take.countAt(index, take.bars[index].start + take.frameOf(index, at)) };
  }

  /** The bar that sounds, or with which it will begin. */
  get index() {
    return this.place.index ?? this.#begin().index;
  }

  go() {
    if (this.state === "stopped") this.#engine.play(this.#begin());
    else this.stop();
  }

  /** Stops, and keeps the bar that sounds: there it goes on. */
  stop() {
    const heard = this.#engine.heard(HALF_A_PICTURE);
    const step = heard?.step ?? heard?.next;
    if (step) this.#start = { ...this.#startOf(step.index), round: step.round };
    else this.#start = this.#engine.resume ?? this.#start;
    this.#engine.stop();
  }

  /** Whether it goes on inside its passage, and not at its beginning. */
  get paused() {
    if (this.state !== "stopped" || !this.#start) return false;
    const { first, from } = this.#engine.range;
    return this.#start.index !== first || this.#start.at !== from;
  }

  /** To the beginning of the passage. */
  rewind() {
    this.#move(this.#startOf(this.#engine.range.first), false);
  }

  /** One tempo for all rounds: that ends the trainer. */
  setPercent(percent) {
    this.#setPercent(Math.round(percent));
  }

  /** The same in beats a minute, to the point; what is a whole percentage but for the reckoning is one. */
  setTempo(bpm) {
    const percent = (FULL * bpm) / this.score.bpm(FULL);
    const whole = Math.round(percent);
    this.#setPercent(Math.abs(percent - whole) < NOTHING ? whole : percent);
  }

  #setPercent(percent) {
    const asked = Math.min(FASTEST, Math.max(SLOWEST, percent));
    this.#asked = this.state === "stopped" ? null : asked;
    this.#settings.set("percent", asked);
    this.#settings.set("climb", false);
  }

  /** From, to and step of the trainer in beats a minute, as they are chosen or usual: from the line's tempo to its full one. */
  get trainer() {
    const bpm = (percent) => Math.round(this.score.bpm(percent));
    const chosen = (name, usual) => this.#settings.get(name) || usual;
    return {
      climbFrom: chosen("climbFrom", Math.min(bpm(this.#settings.get("percent")), bpm(FULL) - CLIMB)),
      climbTo: chosen("climbTo", bpm(FULL)),
      climbStep: chosen("climbStep", CLIMB),
      every: this.#settings.get("every"),
      rest: this.#settings.get("rest"),
    };
  }

  /** What was typed into a field of the trainer; what is no number leaves it as it is. */
  setTrainer(field, text) {
    const bounds = field === "climbFrom" || field === "climbTo" ? this.tempos : undefined;
    const value = typedIn(field, text, bounds);
    if (value !== null) this.#settings.set(field, value);
  }

  /** The slowest and the fastest tempo in beats a minute that can be played. @returns {[number, number]} */
  get tempos() {
    return [Math.ceil(this.score.bpm(SLOWEST)), Math.floor(this.score.bpm(FASTEST))];
  }

  get #ladder() {
    const { climbFrom: from, climbTo: to, climbStep: step, every: rounds, rest } = this.trainer;
    const trainer = new Trainer({ from, to, step, rounds, rest });
    const percentOf = (tempo) => (FULL * tempo) / this.score.bpm(FULL);
    return {
      percentIn: (round) => percentOf(trainer.tempoIn(round)),
      restBefore: (round) => trainer.restBefore(round),
    };
  }

  slower() {
    this.setPercent(Math.ceil(this.percent / STEP) * STEP - STEP);
  }

  faster() {
    this.setPercent(Math.floor(this.percent / STEP) * STEP + STEP);
  }

  /** From what stands in the two fields; returns what is wrong with it, if anything. */
  setRange(from, to) {
    const read = readRange(from, to, this.score.bars);
    if (read.problem) return read;
    this.#repeat(read.range);
    return null;
  }

  /** Whether the two fields say what is repeated already. */
  isRange(from, to) {
    const { range } = readRange(from, to, this.score.bars);
    return range !== undefined && isSame(range, this.#engine.range);
  }

  wholeLine() {
    this.#repeat(wholeLine(this.score.bars));
  }

  /** From a passage to the whole line; from there to the passage that was repeated last, else to four bars from here. */
  toggleLoop() {
    if (this.range) this.wholeLine();
    else if (this.#passage) this.#repeat(this.#passage);
    else this.repeatAround("four");
    if (!this.#passage) this.repeatAround("bar"); // a line of four bars
  }

  /** Repeats from the bar that sounds, or up to it. */
  loopFrom() {
    const first = this.index;
    const { last, to } = this.#engine.range;
    this.#repeat(last < first ? { ...wholeLine(this.score.bars), first } : { first, from: 0, last, to });
  }

  loopTo() {
    const last = this.index;
    const { first, from } = this.#engine.range;
    this.#repeat(first > last ? { first: last, from: 0, last, to: Infinity } : { first, from, last, to: Infinity });
  }

  /** Repeats what lies around the bar that sounds: "bar", "four" or "section". */
  repeatAround(way) {
    this.#repeat(around(way, this.index, this.score.bars, this.score.sections));
  }

  /** The passes in which the passage is played: {@link waysOf}. */
  get ways() {
    return waysOf(this.#engine.range, this.score.bars);
  }

  /** Repeats the passage in another pass: one of `ways`. */
  chooseWay(n) {
    this.#repeat(this.ways[n].range);
  }

  /** Shows what a drag would choose. */
  consider(one, other) {
    const range = one && rangeOf(one, other, this.score.bars);
    if (range) this.#sheet.shade(range, this.score.bars);
    else this.#shade();
  }

  choose(one, other) {
    const range = rangeOf(one, other, this.score.bars);
    if (range) this.#repeat(range);
  }

  /** Repeats a passage for now; what the student chose to repeat is kept all the same. */
  visit(passage) {
    const range = rangeOf(passage, passage, this.score.bars);
    if (range) this.goBackTo(range);
  }

  /** Repeats a range for now. */
  goBackTo(range) {
    if (!isWhole(range, this.score.bars)) this.#passage = range;
    this.#engine.range = range;
    this.#start = null;
    this.#shade();
    this.#engine.change(null, true);
    this.#tell();
  }

  /** Begins at an event of the sheet, in the pass that is repeated where there is one. */
  beginAt({ bar, at }) {
    const passes = passesOf(bar, this.score.bars);
    if (!passes.length) return;
    const inside = passes.find((index) => holds(this.#engine.range, index, at));
    if (inside === undefined) this.wholeLine();
    this.#move({ index: inside ?? passes[0], at }, true);
  }

  back() {
    this.#walk(-1);
  }

  on() {
    this.#walk(1);
  }

  /** Lights what sounds; asked with every picture of the screen, it does nothing while that stays the same. */
  light() {
    const heard = this.#engine.heard(HALF_A_PICTURE);
    const lit = heard?.step ? heard.take.eventsAt(heard.frame) : [];
    const key = lit.map(eventKey).join(" ");
    if (key === this.#lit) return;
    this.#lit = key;
    this.#sheet.light(lit);
    this.dispatchEvent(new CustomEvent("lit", { detail: lit }));
  }

  #begin() {
    const { first, from } = this.#engine.range;
    return this.#engine.resume ?? this.#start ?? { index: first, at: from };
  }

  #walk(by) {
    const { first, last } = this.#engine.range;
    this.#move(this.#startOf(Math.min(last, Math.max(first, this.index + by))), false);
  }

  /** Where a bar of the passage begins. */
  #startOf(index) {
    const { first, from } = this.#engine.range;
    return { index, at: index === first ? from : 0 };
  }

  /** What stops it by itself goes on where it was; who tells of it does so last, for a stop is told as well. */
  #brokenOff(event) {
    const { type, detail } = /** @type {CustomEvent} */ (event);
    this.stop();
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  #move(start, play) {
    this.#start = start;
    if (this.state !== "stopped") this.#engine.change(start);
    else if (play) this.#engine.play(start);
    this.#tell();
  }

  #repeat(range) {
    this.goBackTo(range);
    const [from, to] = this.range ?? ["", ""];
    this.#settings.set("from", from);
    this.#settings.set("to", to);
  }

  #shade() {
    const { range } = this.#engine;
    this.#sheet.shade(isWhole(range, this.score.bars) ? null : range, this.score.bars);
  }

  /** What the engine reads of the settings, always as they are now. */
  #wishes(source) {
    const settings = this.#settings;
    const ladder = () => this.#ladder;
    return {
      get percent() {
        return settings.get("percent");
      },
      get countIn() {
        return settings.get("countIn");
      },
      get ladder() {
        return settings.get("climb") ? ladder() : null;
      },
      get counted() {
        return settings.get("countEach");
      },
      get balance() {
        return settings.balance(source.stems);
      },
      get volume() {
        return settings.get("volume");
      },
    };
  }

  #settingChanged(name) {
    if (name === "balance" || name === "volume") this.#engine.balance();
    if (name === "percent" || name === "countEach") this.#engine.change();
    if (TRAINER.includes(name)) this.#trainAnew();
    this.#tell();
  }

  /** From the beginning of the passage: a part of a round is no round. */
  #trainAnew() {
    this.#start = null;
    this.#engine.change(null, true);
  }

  #stateChanged() {
    if (this.state !== "stopped") this.#soundsAlone();
    if (this.state === "stopped") this.#asked = null;
    this.light();
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new CustomEvent("change"));
  }
}
