// The band's sound, bar by bar: fetched, decoded, stretched where needed, and kept within bounds.
import { decodeOpus, decodesOpus, Undecodable } from "../common/opus.js";
import { patiently, receivedJson } from "../common/patience.js";
import { Stretcher } from "../common/stretcher.js";
import { AGAIN, Parts } from "./parts.js";
import { Sounds } from "./sounds.js";

const STROKES = ["drums", "click"];
/** Seconds in which a server makes a line's sound without loss. */
const MAKING = 90;

export class Stems {
  #context;
  #base;
  #parts;
  #sounds = new Sounds();
  #stretcher = new Stretcher();
  /** What is asked for without loss, by take. @type {Map<any, Promise<void>>} */
  #coming = new Map();

  constructor(score, base) {
    this.score = score;
    this.#base = base;
    this.#parts = new Parts(base);
  }

  get stems() {
    return this.score.stems;
  }

  /** By what every stem and the count-in are multiplied. */
  get louder() {
    return 10 ** (this.score.headroom / 20);
  }

  get countInLouder() {
    return this.louder;
  }

  pan(stem) {
    return this.score.takes[0].files[stem]?.pan ?? 0;
  }

  /** Before sound can be made of what was fetched. */
  open(context) {
    this.#context = context;
  }

  /** Has the bytes of these steps come, without making sound of them yet. */
  async fetch(steps) {
    try {
      await this.#decodable(this.#takes(steps));
      this.#fetch(steps);
    } catch {
      // whoever wants to hear it asks again
    }
  }

  /** Fetches and makes the sound of these steps; resolves when all of it is there. */
  load(steps) {
    return this.#made(this.#takes(steps), async () => {
      this.#fetch(steps);
      await Promise.all(steps.flatMap((step) => this.#pieces(step)).map((piece) => this.#sound(piece)));
    });
  }

  /** `{stem, buffer, lead}` of all that sounds in a step's bar, `lead` seconds before it; null while any is missing. */
  ready(step) {
    const sounding = [];
    for (const piece of this.#pieces(step)) {
      const buffer = this.#sounds.ready(piece.key);
      if (!buffer) return null;
      const lead = ((piece.segment.lead ?? 0) * piece.longer) / this.score.rate;
      sounding.push({ stem: piece.stem, buffer, lead });
    }
    return sounding;
  }

  /** The click of the count-in, as it is at the take's own tempo. */
  countIn(take) {
    return this.#made([take], () => {
      const { url, offset, bytes, soundFrames: frames, decoding } = take.countIn;
      const segment = { offset, bytes, frames };
      return this.#sound({ key: keyOf({ url, segment }), stem: "click", url, segment, decoding, longer: 1 });
    });
  }

  /**
   * Makes sound of these takes in the form that this browser decodes. One that fails at Opus, although it was tried with it,
   * has it made of the other form.
   * @template T
   * @param {any[]} takes
   * @param {() => Promise<T>} make
   * @returns {Promise<T>}
   */
  async #made(takes, make) {
    await this.#decodable(takes);
    const some = takes.some((take) => take.exact); // before somebody else who fails at one has it come without loss
    try {
      return await make();
    } catch (problem) {
      if (!(problem instanceof Undecodable) || !some) throw problem;
      return this.#made(takes, make);
    }
  }

  /** Has the takes that this browser cannot decode come without loss. */
  async #decodable(takes) {
    const small = takes.filter((take) => take.exact);
    if (small.length === 0 || this.#hasRateOfSound && await decodesOpus()) return;
    await Promise.all(small.map((take) => this.#exactly(take)));
  }

  /** Opus gives frames at the rate of the sound: at any other they would be played bar by bar between each other. */
  get #hasRateOfSound() {
    return !this.#context || this.#context.sampleRate === this.score.rate;
  }

  #exactly(take) {
    const coming = this.#coming.get(take) ?? this.#exact(take).finally(() => this.#coming.delete(take));
    this.#coming.set(take, coming);
    return coming;
  }

  async #exact(take) {
    const { tempos: [tempo] } = await patiently(() => receivedJson(new URL(take.exact, this.#base), MAKING), {
      again: AGAIN,
    });
    take.become(tempo);
  }

  #takes(steps) {
    return [...new Set(steps.map((step) => this.score.at(step.percent).take))];
  }

  #pieces(step) {
    const { take, longer } = this.score.at(step.percent);
    return this.stems
      .map((stem) => pieceOf(take.files[stem], step.index, stem, longer))
      .filter(({ segment }) => segment.bytes);
  }

  #fetch(steps) {
    for (const [url, segments] of this.#files(steps)) this.#parts.fetch(url, segments);
  }

  #files(steps) {
    const files = new Map();
    for (const { url, segment } of steps.flatMap((step) => this.#pieces(step))) {
      files.set(url, [...(files.get(url) ?? []), segment]);
    }
    return files;
  }

  #sound(piece) {
    const { key, stem, longer } = piece;
    return this.#sounds.get(key, async () => {
      if (longer === 1) return this.#decoded(piece);
      const plain = await this.#sound({ ...piece, key: keyOf(piece), longer: 1 });
      return this.#stretcher.stretch(this.#context, plain, longer, STROKES.includes(stem));
    });
  }

  async #decoded({ url, segment, decoding }) {
    const bytes = await this.#parts.bytes(url, segment);
    return decoding
      ? decodeOpus(bytes, segment.frames, decoding, this.score.rate)
      : this.#context.decodeAudioData(bytes);
  }
}

function keyOf({ url, segment }) {
  return `${url}@${segment.offset}`;
}

function pieceOf({ url, segments, decoding }, index, stem, longer) {
  const segment = segments[index];
  const key = keyOf({ url, segment }) + (longer === 1 ? "" : `*${longer}`);
  return { key, stem, url, segment, decoding, longer };
}
