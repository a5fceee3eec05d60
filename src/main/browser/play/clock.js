// Lays sound on the audio clock, bar after bar, each with its tail, and tells what is heard when.

/** Seconds: where a loop begins or ends inside a bar, so that cutting does not click. */
const IN = 0.003;
const OUT = 0.008;
/** Seconds: how a stop fades. */
const STOP = 0.03;
/** Seconds: nothing can be started sooner than this. */
const MARGIN = 0.03;

/** One run through rounds, from its start to its stop. Times inside are whole frames of the audio clock. */
export class Clock {
  #context;
  #source;
  #rounds;
  #outputs = new Map();
  #sounding = new Set();
  #laid = [];
  #next = 0;
  #interlude;

  /**
   * `outputs` leads from a stem's name to the node it plays into. `interlude(step, time)` lays what is counted before a step:
   * `{seconds, beats, stop}`, or null while its sound is missing.
   * @param {any} parts
   */
  constructor({ context, source, rounds, outputs, interlude = null }) {
    this.#context = context;
    this.#interlude = interlude;
    this.#source = source;
    this.#rounds = rounds;
    for (const [stem, node] of outputs) {
      const gain = context.createGain();
      gain.connect(node);
      this.#outputs.set(stem, gain);
    }
    this.n = 0;
  }

  get rounds() {
    return this.#rounds;
  }

  /** The first step begins at `time` seconds of the audio clock. */
  begin(time) {
    this.start = this.#frame(time);
    this.#next = this.start;
  }

  /** When the next step that is not laid yet is due, in seconds. */
  get due() {
    return this.#next / this.#context.sampleRate;
  }

  /** Lays all that begins before `until`; false when sound is missing that is not there yet. */
  fill(until) {
    while (this.due < until) {
      const step = this.#rounds.step(this.n);
      const sounding = this.#source.ready(step);
      if (!sounding) return false;
      this.#notInThePast();
      if (step.before && this.#laid.length > 0 && !this.#count(step)) return false;
      this.#lay(step, sounding);
      this.n++;
    }
    return true;
  }

  /**
   * What was laid at `time`: the step, and the frame of its take; before a round that is counted in `{counting, next}`, the
   * number of the beat and the step that follows, with the seconds of `rest` before it; null before the start and while sound is missing.
   */
  locate(time) {
    const frame = time * this.#context.sampleRate;
    const laid = this.#laid.find((piece) => piece.begin <= frame && frame < piece.end);
    if (!laid) return null;
    if (laid.beats) return countedAt(laid, time);
    const heard = laid.from + (frame - laid.begin) / laid.scale;
    return { step: laid.step, take: laid.take, frame: heard };
  }

  /** What was laid so far and not forgotten: `{step, begin, end}` in frames of the audio clock. */
  get laid() {
    return this.#laid;
  }

  /** Fades out at `time` and lets nothing sound after. */
  stop(time) {
    for (const gain of this.#outputs.values()) {
      gain.gain.setValueAtTime(1, time);
      gain.gain.linearRampToValueAtTime(0, time + STOP);
    }
    for (const sound of this.#sounding) sound.stop(time + STOP);
  }

  #frame(time) {
    return Math.round(time * this.#context.sampleRate);
  }

  /** Late sound begins when it can; the rest follows it. */
  #notInThePast() {
    const soonest = this.#frame(this.#context.currentTime + MARGIN);
    if (this.#context.currentTime > 0 && this.#next < soonest) this.#next = soonest;
  }

  /** Whether it could be laid. */
  #count(step) {
    const counted = this.#interlude?.(step, this.due);
    if (!counted) return false;
    const begin = this.#next;
    this.#next += this.#frame(counted.seconds);
    this.#laid.push({ next: step, beats: counted.beats, begin, end: this.#next, counted });
    this.#sounding.add(counted);
    return true;
  }

  #lay(step, sounding) {
    const { take, longer } = this.#source.score.at(step.percent);
    const scale = (longer * this.#context.sampleRate) / this.#source.score.rate;
    const bar = take.bars[step.index];
    const from = take.frameOf(step.index, step.from);
    const to = take.frameOf(step.index, step.to);
    // rounded where the bar stands in the whole take, so that nothing adds up from bar to bar
    const length = Math.round((bar.start + to) * scale) - Math.round((bar.start + from) * scale);
    const cut = to < bar.frames ? length / this.#context.sampleRate : Infinity;
    const offset = (from * scale) / this.#context.sampleRate;
    for (const sound of sounding) this.#sound(sound, this.#outputs.get(sound.stem), offset, cut);
    this.#laid.push({ step, take, from: bar.start + from, begin: this.#next, end: this.#next + length, scale });
    this.#next += length;
    this.#forget();
  }

  /** `lead` seconds of a sound stand before the bar that it belongs to: a grace note, say. */
  #sound({ buffer, lead }, output, offset, cut) {
    const when = this.due;
    const early = offset > 0 ? Math.min(IN, offset + lead) : lead;
    const start = Math.max(when - early, this.#context.currentTime);
    const into = Math.max(0, start - when + offset + lead);
    if (into >= buffer.duration) return;
    const source = new AudioBufferSourceNode(this.#context, { buffer });
    source.connect(offset > 0 || cut < Infinity ? this.#edges(output, when, offset, cut) : output);
    source.start(start, into);
    if (cut < Infinity) source.stop(when + cut);
    this.#sounding.add(source);
    source.addEventListener("ended", () => this.#sounding.delete(source));
  }

  /** A way in after the start of a bar, and out before its end. */
  #edges(output, when, offset, cut) {
    const edge = new GainNode(this.#context);
    if (offset > 0) {
      edge.gain.setValueAtTime(0, Math.max(0, when - IN));
      edge.gain.linearRampToValueAtTime(1, when);
    }
    if (cut < Infinity) {
      edge.gain.setValueAtTime(1, Math.max(when, when + cut - OUT));
      edge.gain.linearRampToValueAtTime(0, when + cut);
    }
    edge.connect(output);
    return edge;
  }

  #forget() {
    const past = this.#frame(this.#context.currentTime - 5);
    while (this.#laid.length > 2 && this.#laid[0].end < past) this.#sounding.delete(this.#laid.shift().counted);
  }
}

function countedAt({ next, beats }, time) {
  const reached = beats.findLast((beat) => beat.time <= time);
  return reached ? { counting: reached.number, next } : { counting: 0, rest: beats[0].time - time, next };
}
