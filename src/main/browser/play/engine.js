// Plays a line round after round: what is asked for, what is fetched ahead, and when which clock has the word.
import { Clock } from "./clock.js";
import { counted, layCountIn } from "./count-in.js";
import { holds, Rounds } from "./loop.js";
import { Mixer } from "./mixer.js";
import { Mute } from "./trouble.js";

/** Seconds that are laid ahead: more than the second to which browsers slow a page in the background. */
const AHEAD = 1.6;
const TICK = 80; // milliseconds
const LONGEST = 3000; // milliseconds in which a loudspeaker that stands still comes back
/** Seconds until what is asked for begins. */
const SOON = 0.06;
/** Steps that are made ready ahead, and how few may be left before more are. */
const READY = 8;
const FEW = 4;
/** Seconds before sound that is missing is due: the next look may come too late. */
const LATE = 0.1;
/** Seconds until what did not come ahead of time is asked for again. */
const AGAIN = 0.5;

/** @type {AudioContext | null} */
let context = null;

/** The page's one way to its loudspeaker; only a press of a key or button may open it. */
function audio(rate) {
  context ??= openAudio(rate);
  if (context.state !== "running") context.resume().catch(() => {}); // whether it runs is asked before it plays
  return context;
}

/** Whether the audio clock goes: a call may hold it, or a browser that waits for another press. */
async function runs(context) {
  if (context.state === "running") return true;
  let timer = 0;
  const enough = new Promise((done) => (timer = setTimeout(done, LONGEST)));
  await Promise.race([context.resume(), enough]).catch(() => {});
  clearTimeout(timer);
  return context.state === "running";
}

function openAudio(rate) {
  // practising is playback: a silent switch is not meant for it (W3C Audio Session)
  const { audioSession } = /** @type {any} */ (navigator);
  if (audioSession) audioSession.type = "playback";
  try {
    return new AudioContext({ sampleRate: rate, latencyHint: "interactive" });
  } catch {
    return new AudioContext({ latencyHint: "interactive" }); // FLAC is converted where it is decoded; see `Stems`
  }
}

/**
 * Tells of `state` (stopped, loading, playing), `problem` (with the error) and `interrupted` events. `settings` is read whenever it matters:
 * `{percent, countIn, ladder, counted, balance, volume}`.
 */
export class Engine extends EventTarget {
  #settings;
  #source;
  /** @type {Mixer | null} */
  #mixer = null;
  /** @type {Clock | null} */
  #clock = null;
  /** @type {Clock | null} the one that had the word until this one */
  #before = null;
  /** @type {Clock | null} the one whose sound is late */
  #late = null;
  /** @type {{stop: () => void, begin: number, beats: {number: number, time: number}[]} | null} */
  #counting = null;
  #asked = 0;
  #timer = 0;
  /** @type {Clock | null} for which sound is being made ready */
  #preparing = null;
  /** When sound is made ready again after it did not come, in seconds of the audio clock. */
  #again = 0;
  /** The click of each take whose rounds are counted in. @type {Map<any, AudioBuffer>} */
  #clicks = new Map();
  /** @type {{index: number, at: number, round?: number} | null} where it goes on once its sound is there */
  #resume = null;
  /** @type {{start: {index: number, at: number, round?: number} | null, anew: boolean} | null} a change until it is heard */
  #wanted = null;

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

  /** Where the music goes on once its sound is there, `{index, at}`; null where it does not wait for it. */
  get resume() {
    return this.#resume;
  }

  get clock() {
    return this.#clock;
  }

  /** Has the first sound fetched before anyone asks to hear it. */
  warm() {
    this.#source.fetch([this.#rounds(null).step(0)]);
  }

  /**
   * From `start`, or from the start of the range.
   * @param {{index: number, at: number, round?: number} | null} start
   */
  async play(start = null) {
    this.#end();
    const rounds = this.#rounds(start);
    this.#resume = start && rounds.start; // a change while it loads goes on from here
    await this.#start(rounds);
  }

  /** Begins with the rounds once their sound is there: what is counted in is sure to follow. */
  async #start(rounds) {
    const asked = ++this.#asked;
    this.#tell("loading");
    try {
      this.#open(); // at once: only a press may
      const step = rounds.step(0);
      const [click] = await Promise.all([this.#settings.countIn ? this.#click(step) : null, this.#load([step])]);
      if (asked !== this.#asked) return;
      const isRunning = await runs(this.#out.context);
      if (asked !== this.#asked) return;
      if (isRunning) this.#run(rounds, click ? this.#countIn(step, click) : this.#soon());
      else this.#breakOff("interrupted");
    } catch (problem) {
      this.#fail(asked, problem);
    }
  }

  /** Where sound is late there is silence: it is waited for, and counted in again. A change that is on its way goes before it. */
  #wait(clock) {
    clearInterval(this.#timer);
    this.#late = clock;
    const { rounds, n } = clock;
    const next = this.#rounds(this.#wished(begin(rounds.step(n))));
    this.#resume = next.start;
    this.#start(next);
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
   * one is given. `anew` counts the rounds from the first again.
   * @param {{index: number, at: number, round?: number} | null} start
   */
  async change(start = null, anew = false) {
    if (this.state === "stopped") return;
    // what was asked for just before and is not heard yet is not forgotten
    this.#wanted = { start: start ?? this.#wanted?.start ?? null, anew: anew || this.#wanted?.anew === true };
    if (!this.#at(SOON)?.step) return this.play(this.#place());
    const asked = ++this.#asked;
    const next = () => this.#rounds(this.#place());
    try {
      let rounds = next();
      do {
        await this.#load([rounds.step(0), rounds.step(1)]);
        if (asked !== this.#asked) return;
        rounds = next();
      } while (!this.#ready(rounds.step(0)));
      this.#handOver(rounds);
    } catch (problem) {
      this.#fail(asked, problem);
    }
  }

  /**
   * What is heard now, or will be in `ahead` seconds: `{step, take, frame}`, `{counting}` with a beat's number and the seconds
   * of `rest` before it, or null.
   */
  heard(ahead = 0) {
    if (!context || this.state === "stopped") return null;
    const time = context.currentTime - latency() + ahead;
    return this.#beat(time) ?? this.#clockOf(time)?.locate(time) ?? null;
  }

  #open() {
    try {
      const now = audio(this.#source.score.rate);
      this.#source.open(now);
      this.#mixer ??= this.#mixerOf(now);
    } catch (cause) {
      throw new Mute("this browser opens no way to its loudspeaker", { cause });
    }
    this.balance();
  }

  /** A call or another program takes the sound away: the audio clock stands still then, and nothing is heard. */
  #mixerOf(context) {
    context.addEventListener("statechange", () => {
      if (context.state !== "running" && this.state === "playing") this.dispatchEvent(new CustomEvent("interrupted"));
    });
    return new Mixer(context, this.#source);
  }

  /** What `play` has opened: nothing sounds without it. */
  get #out() {
    if (!context || !this.#mixer) throw new Error("no way to the loudspeaker is open");
    return { context, mixer: this.#mixer };
  }

  /** When what is asked for now begins, in seconds of the audio clock. */
  #soon() {
    return this.#out.context.currentTime + SOON;
  }

  #rounds(start) {
    const { percent, ladder, counted } = this.#settings;
    const inside = start && holds(this.range, start.index, start.at);
    return new Rounds({ range: this.range, start: inside ? start : null, percent, ladder, counted });
  }

  /** The sound of these steps, and of what is counted before them. */
  async #load(steps) {
    const takes = new Set(steps.filter((step) => step.before).map((step) => this.#source.score.at(step.percent).take));
    const clicks = [...takes].map(async (take) => this.#clicks.set(take, await this.#source.countIn(take)));
    await Promise.all([this.#source.load(steps), ...clicks]);
  }

  #ready(step) {
    const counted = !step.before || this.#clicks.has(this.#source.score.at(step.percent).take);
    return counted && this.#source.ready(step) !== null;
  }

  #click(step) {
    return this.#source.countIn(this.#source.score.at(step.percent).take);
  }

  /** Lays the beats before it; the time at which it begins. */
  #countIn(step, sound) {
    const { take } = this.#source.score.at(step.percent);
    const time = this.#soon() + (take.countIn.quietFrames ?? 0) / this.#source.score.rate;
    this.#counting = this.#layCount(step, sound, time);
    return this.#counting.begin;
  }

  /** The beats before a step from `time` on: `{begin, beats, stop}` with the time at which the step begins. */
  #layCount(step, sound, time) {
    const { rate } = this.#source.score;
    const { take, longer } = this.#source.score.at(step.percent);
    const { frames, beats } = counted(take, step.index, take.frameOf(step.index, step.from));
    const { context, mixer } = this.#out;
    const stop = layCountIn({ context, output: mixer.countIn, sound, beats, longer, rate, time });
    const times = beats.map(({ frame, number }) => ({ number, time: time + (frame * longer) / rate }));
    return { stop, begin: time + (frames * longer) / rate, beats: times };
  }

  /** Between two rounds: a rest, and what is counted after it. */
  #interlude(step, time) {
    const sound = this.#clicks.get(this.#source.score.at(step.percent).take);
    if (!sound) return null;
    const { begin, beats, stop } = this.#layCount(step, sound, time + step.before.rest);
    return { seconds: begin - time, beats, stop };
  }

  #run(rounds, begin) {
    this.#resume = null;
    this.#wanted = null;
    this.#before = this.#clock;
    const { context, mixer } = this.#out;
    const interlude = (step, time) => this.#interlude(step, time);
    const clock = new Clock({ context, source: this.#source, rounds, outputs: mixer.outputs, interlude });
    this.#clock = clock;
    clock.begin(begin);
    this.#tick(clock);
    clearInterval(this.#timer);
    this.#timer = setInterval(() => this.#tick(clock), TICK);
    this.#tell("playing");
  }

  #handOver(rounds) {
    const time = this.#soon();
    this.#clock?.stop(time);
    this.#run(rounds, time);
  }

  #tick(clock) {
    const { currentTime } = this.#out.context;
    const filled = clock.fill(currentTime + AHEAD);
    if (!filled && clock.due < currentTime + LATE) this.#wait(clock);
    else this.#prepare(clock);
  }

  async #prepare(clock) {
    const isAsked = this.#preparing === clock || this.#out.context.currentTime < this.#again;
    if (isAsked || this.#missing(clock, FEW).length === 0) return;
    this.#preparing = clock; // what an earlier one still waits for holds up nothing
    try {
      for (let many = 1; this.#hasTheWord(clock) && this.#missing(clock, READY).length; many = 2 * many) {
        await this.#load(this.#missing(clock, READY).slice(0, many));
        if (this.#hasTheWord(clock)) clock.fill(this.#out.context.currentTime + AHEAD);
      }
    } catch (problem) {
      console.warn(problem); // what is here plays on; where sound is due it is waited for
      this.#again = this.#out.context.currentTime + AGAIN;
    } finally {
      if (this.#preparing === clock) this.#preparing = null;
    }
  }

  /** Not while it waits for sound: what comes then is counted in, and laid by the clock after it. */
  #hasTheWord(clock) {
    return clock === this.#clock && clock !== this.#late;
  }

  #missing(clock, many) {
    const steps = Array.from({ length: many }, (_, i) => clock.rounds.step(clock.n + i));
    return steps.filter((step) => !this.#ready(step));
  }

  /** Where a change begins to be heard, as a place of the line. */
  #place() {
    return this.#wished(this.#going(this.#at(SOON)));
  }

  /** What is wanted instead of going on at a place; without a change it is that place. */
  #wished(place) {
    const { start = null, anew = false } = this.#wanted ?? {};
    return start ?? (place && anew ? { ...place, round: 0 } : place);
  }

  /** Where the music is or, while it rests, is counted in or waits for sound, where it goes on. */
  #going(at) {
    if (at?.step) return { ...begin(at.step), at: at.take.momentOf(at.step.index, at.frame) };
    if (at) return begin(at.next);
    const first = this.#clock?.laid[0]?.step;
    return this.#resume ?? (first ? begin(first) : null);
  }

  #at(ahead) {
    return this.#clock?.locate(this.#out.context.currentTime + ahead) ?? null;
  }

  #clockOf(time) {
    const start = this.#clock?.start;
    const early = start !== undefined && this.#before && time < start / this.#out.context.sampleRate;
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
    this.#clock?.stop(this.#out.context.currentTime);
    this.#clock = null;
    this.#before = null;
    this.#resume = null;
    this.#wanted = null;
  }

  #fail(asked, problem) {
    if (asked !== this.#asked) return;
    console.warn(problem);
    this.#breakOff("problem", problem);
  }

  /** Tells it before it stops, so that who hears of it can keep the place. */
  #breakOff(news, detail = null) {
    this.dispatchEvent(new CustomEvent(news, { detail }));
    this.stop();
  }

  #tell(state) {
    if (state === this.state) return;
    this.state = state;
    this.dispatchEvent(new CustomEvent("state"));
  }
}

/** The place of the line where a step begins. */
function begin({ index, from, round }) {
  return { index, at: from, round };
}

/** What the browser says lies between the audio clock and the ear, in seconds. */
export function latency() {
  return context?.outputLatency || context?.baseLatency || 0;
}
