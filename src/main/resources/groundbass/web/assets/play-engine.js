// Plays a line round after round: what is asked for, what is fetched ahead, and when which clock has the word.
import { Clock } from "./play-clock.js";
import { counted, layCountIn } from "./play-count-in.js";
import { holds, Rounds } from "./play-loop.js";
import { Mixer } from "./play-mixer.js";

/** Seconds that are laid ahead: more than the second to which browsers slow a page in the background. */
const AHEAD = 1.6;
const TICK = 80; // milliseconds
/** Seconds until what is asked for begins. */
const SOON = 0.06;
/** Steps that are made ready ahead, and how few may be left before more are. */
const READY = 8;
const FEW = 4;

let context = null;

/** The page's one way to its loudspeaker; only a press of a key or button may open it. */
function audio(rate) {
  context ??= openAudio(rate);
  if (context.state !== "running") context.resume();
  return context;
}

function openAudio(rate) {
  try {
    return new AudioContext({ sampleRate: rate, latencyHint: "interactive" });
  } catch {
    return new AudioContext({ latencyHint: "interactive" }); // sound is converted where it is decoded
  }
}

/**
 * Tells of `state` (stopped, loading, playing) and `problem` events. `settings` is read whenever it matters:
 * `{percent, countIn, faster, balance, volume}`.
 */
export class Engine extends EventTarget {
  #settings;
  #source;
  #mixer = null;
  #clock = null;
  #before = null; // the clock that had the word until this one
  #counting = null;
  #asked = 0;
  #timer = 0;
  #preparing = false;

  constructor(source, range, settings) {
    super();
    this.#source = source;
    this.range = range;
    this.#settings = settings;
    this.state = "stopped";
  }

  get source() {
    return this.#source;
  }

  get context() {
    return context;
  }

  get clock() {
    return this.#clock;
  }

  /** Has the first sound fetched before anyone asks to hear it. */
  warm() {
    this.#source.fetch([this.#rounds(null).step(0)]);
  }

  /** From `start` (`{index, at}`), or from the start of the range. */
  async play(start = null) {
    this.#end();
    const asked = ++this.#asked;
    this.#open();
    this.#tell("loading");
    try {
      const rounds = this.#rounds(start);
      const begin = await (this.#settings.countIn ? this.#countIn(rounds, asked) : this.#first(rounds));
      if (asked === this.#asked) this.#run(rounds, begin);
    } catch (problem) {
      this.#fail(asked, problem);
    }
  }

  stop() {
    this.#asked++;
    this.#end();
    this.#tell("stopped");
  }

  /** Levels are heard at once. */
  balance() {
    this.#mixer?.set(this.#settings.balance, this.#settings.volume);
  }

  /**
   * Another tempo or range while playing: goes on from the same place as soon as its sound is there. From `start` where
   * one is given.
   */
  async change(start = null) {
    if (this.state === "stopped") return;
    if (!this.#clock || !this.#at(SOON)) return this.play(start);
    const asked = ++this.#asked;
    try {
      let rounds = this.#rounds(start ?? this.#place());
      do {
        await this.#source.load([rounds.step(0), rounds.step(1)]);
        if (asked !== this.#asked) return;
        rounds = this.#rounds(start ?? this.#place());
      } while (!this.#source.ready(rounds.step(0)));
      this.#handOver(rounds);
    } catch (problem) {
      this.#fail(asked, problem);
    }
  }

  /**
   * What is heard now, or will be in `ahead` seconds: `{step, take, frame}`, `{counting}` with a beat's number, or null.
   */
  heard(ahead = 0) {
    if (!context || this.state === "stopped") return null;
    const time = context.currentTime - latency() + ahead;
    return this.#beat(time) ?? this.#clockOf(time)?.locate(time) ?? null;
  }

  #open() {
    const now = audio(this.#source.score.rate);
    this.#source.open(now);
    this.#mixer ??= new Mixer(now, this.#source);
    this.balance();
  }

  #rounds(start) {
    const { percent, faster } = this.#settings;
    const inside = start && holds(this.range, start.index, start.at);
    return new Rounds({ range: this.range, start: inside ? start : null, percent, faster });
  }

  async #first(rounds) {
    await this.#source.load([rounds.step(0)]);
    return context.currentTime + SOON;
  }

  /** Counts while the first bar is still on its way. */
  async #countIn(rounds, asked) {
    this.#source.fetch([rounds.step(0)]);
    const { rate } = this.#source.score;
    const step = rounds.step(0);
    const { take, longer } = this.#source.score.at(step.percent);
    const sound = await this.#source.countIn(take);
    if (asked !== this.#asked) return 0;
    const { frames, beats } = counted(take, step.index, take.frameOf(step.index, step.from));
    const time = context.currentTime + SOON;
    const output = this.#mixer.countIn;
    const stop = layCountIn({ context, output, sound, beats, longer, rate, time });
    const begin = time + (frames * longer) / rate;
    const times = beats.map(({ frame, number }) => ({ number, time: time + (frame * longer) / rate }));
    this.#counting = { stop, begin, beats: times };
    return begin;
  }

  #run(rounds, begin) {
    this.#before = this.#clock;
    this.#clock = new Clock({ context, source: this.#source, rounds, outputs: this.#mixer.outputs });
    this.#clock.begin(begin);
    this.#tick();
    clearInterval(this.#timer);
    this.#timer = setInterval(() => this.#tick(), TICK);
    this.#tell("playing");
  }

  #handOver(rounds) {
    const time = context.currentTime + SOON;
    this.#clock.stop(time);
    this.#run(rounds, time);
  }

  #tick() {
    this.#clock.fill(context.currentTime + AHEAD);
    this.#prepare();
  }

  async #prepare() {
    const clock = this.#clock;
    if (this.#preparing || this.#missing(clock, FEW).length === 0) return;
    this.#preparing = true;
    try {
      for (let many = 1; clock === this.#clock && this.#missing(clock, READY).length; many = 2 * many) {
        await this.#source.load(this.#missing(clock, READY).slice(0, many));
        if (clock === this.#clock) clock.fill(context.currentTime + AHEAD);
      }
    } catch (problem) {
      if (clock === this.#clock) this.#fail(this.#asked, problem);
    } finally {
      this.#preparing = false;
    }
  }

  #missing(clock, many) {
    const steps = Array.from({ length: many }, (_, i) => clock.rounds.step(clock.n + i));
    return steps.filter((step) => !this.#source.ready(step));
  }

  /** Where a change begins to be heard, as a place of the line. */
  #place() {
    const at = this.#at(SOON);
    return at && { index: at.step.index, at: at.take.momentOf(at.step.index, at.frame) };
  }

  #at(ahead) {
    return this.#clock?.locate(context.currentTime + ahead) ?? null;
  }

  #clockOf(time) {
    const early = this.#clock && this.#before && time < this.#clock.start / context.sampleRate;
    return early ? this.#before : this.#clock;
  }

  #beat(time) {
    if (!this.#counting || time >= this.#counting.begin) return null;
    const reached = this.#counting.beats.filter((beat) => beat.time <= time);
    return { counting: reached.length ? reached[reached.length - 1].number : 0 };
  }

  #end() {
    clearInterval(this.#timer);
    this.#counting?.stop();
    this.#counting = null;
    this.#clock?.stop(context.currentTime);
    this.#clock = null;
    this.#before = null;
  }

  #fail(asked, problem) {
    if (asked !== this.#asked) return;
    this.stop();
    console.warn(problem);
    this.dispatchEvent(new CustomEvent("problem"));
  }

  #tell(state) {
    if (state === this.state) return;
    this.state = state;
    this.dispatchEvent(new CustomEvent("state"));
  }
}

/** What the browser says lies between the audio clock and the ear, in seconds. */
export function latency() {
  return context?.outputLatency || context?.baseLatency || 0;
}
