// Plays a stretch of a recording, slowed without a change of pitch, with another sound beside it or in its place.
import { cut } from "./cut.js";

const PIECE = 20; // seconds of the recording that are made ready at once where nothing is repeated and nobody asks for more
const LOW = 350; // Hz: above the fundamentals of a bass up to the twelfth fret of the highest string
const SOON = 0.08;

export class RecordingPlayer extends EventTarget {
  /** @type {AudioContext | null} */
  #context = null;
  /** @type {AudioBuffer | null} */
  #sound = null;
  #stretcher;
  #written;
  #number = 0;
  /**
   * What is heard just now.
   * @type {{from: number, to: number, speed: number, loop: object | null, begun: number, sources: AudioBufferSourceNode[]} | null}
   */
  #now = null;

  constructor(stretcher, written) {
    super();
    this.#stretcher = stretcher;
    this.#written = written;
  }

  get context() {
    return this.#context ??= this.#open();
  }

  set sound(sound) {
    this.stop();
    this.#sound = sound;
  }

  get playing() {
    return this.#now !== null;
  }

  /** The second of the recording that is heard. */
  get at() {
    if (!this.#now) return null;
    const { from, to, speed, loop, begun } = this.#now;
    const { outputLatency, baseLatency, currentTime } = this.context;
    const gone = Math.max(0, currentTime - begun - (outputLatency || baseLatency || 0)) * speed;
    return loop ? from + (gone % (to - from)) : Math.min(to, from + gone);
  }

  /** `what` is recording, both or line; `low` leaves only the low band of the recording. */
  hear({ what, low, volume }) {
    const { sampleRate } = this.context;
    this.#recording.gain.value = what === "line" ? 0 : 1;
    this.#line.gain.value = what === "recording" ? 0 : 1;
    for (const filter of this.#filters) filter.frequency.value = low ? LOW : sampleRate / 2;
    this.#master.gain.value = volume;
  }

  /**
   * Plays from `from`; `loop` (`{from, to}`) is repeated. `bars` says where the written bars belong; `most` is how many
   * seconds are made ready at once.
   */
  async play(from, wishes) {
    const { speed, loop, bars, withLine, most = PIECE } = wishes;
    this.stop();
    const sound = this.#sound;
    if (!sound) return;
    const number = this.#number;
    const begin = loop ? loop.from : from;
    const end = loop ? loop.to : Math.min(sound.duration, begin + most);
    const context = this.context;
    await context.resume();
    const piece = cut(context, sound, begin, end);
    const slow = await this.#stretcher.stretch(context, piece, 1 / speed, false);
    const line = withLine ? await this.#written.under(context, bars, begin, end, speed) : null;
    if (number !== this.#number) return;
    const sources = [this.#source(slow, this.#recording, loop)];
    if (line) sources.push(this.#source(line, this.#line, loop));
    const begun = context.currentTime + SOON;
    for (const source of sources) source.start(begun);
    this.#now = { from: begin, to: end, speed, loop, begun, sources };
    sources[0].onended = () => this.#ended(number, end < sound.duration ? end : null, wishes);
    this.dispatchEvent(new Event("change"));
  }

  stop() {
    this.#number++;
    for (const source of this.#now?.sources ?? []) source.stop();
    this.#now = null;
    this.dispatchEvent(new Event("change"));
  }

  /** @param next the second from which it goes on; null at the end of the recording */
  #ended(number, next, wishes) {
    if (number !== this.#number) return;
    if (next === null) this.stop();
    else this.play(next, wishes);
  }

  #source(buffer, output, loop) {
    const source = new AudioBufferSourceNode(this.context, { buffer, loop: Boolean(loop) });
    source.connect(output);
    return source;
  }

  #recording;
  #line;
  #filters;
  #master;

  #open() {
    const context = new AudioContext();
    this.#master = new GainNode(context);
    this.#recording = new GainNode(context);
    this.#line = new GainNode(context);
    this.#filters = [1, 2].map(() =>
      new BiquadFilterNode(context, { type: "lowpass", frequency: context.sampleRate / 2 })
    );
    this.#recording.connect(this.#filters[0]).connect(this.#filters[1]).connect(this.#master).connect(
      context.destination,
    );
    this.#line.connect(this.#master);
    return context;
  }
}
