// The band's sound, bar by bar: fetched, decoded, stretched where needed, and kept within bounds.
import { Parts } from "./parts.js";
import { Sounds } from "./sounds.js";
import { Stretcher } from "../common/stretcher.js";

const STROKES = ["drums", "click"];

export class Stems {
  #context;
  #parts;
  #sounds = new Sounds();
  #stretcher = new Stretcher();

  constructor(score, base) {
    this.score = score;
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
  fetch(steps) {
    for (const [url, segments] of this.#files(steps)) this.#parts.fetch(url, segments);
  }

  /** Fetches and makes the sound of these steps; resolves when all of it is there. */
  async load(steps) {
    this.fetch(steps);
    await Promise.all(steps.flatMap((step) => this.#pieces(step)).map((piece) => this.#sound(piece)));
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
  async countIn(take) {
    const { url, offset, bytes } = take.countIn;
    return this.#sound({ key: `${url}@${offset}`, stem: "click", url, segment: { offset, bytes }, longer: 1 });
  }

  #pieces(step) {
    const { take, longer } = this.score.at(step.percent);
    return this.stems.flatMap((stem) => {
      const { url, segments } = take.files[stem];
      const segment = segments[step.index];
      if (!segment.bytes) return [];
      const key = `${url}@${segment.offset}${longer === 1 ? "" : `*${longer}`}`;
      return [{ key, stem, url, segment, longer }];
    });
  }

  #files(steps) {
    const files = new Map();
    for (const { url, segment } of steps.flatMap((step) => this.#pieces(step))) {
      files.set(url, [...(files.get(url) ?? []), segment]);
    }
    return files;
  }

  #sound({ key, stem, url, segment, longer }) {
    return this.#sounds.get(key, async () => {
      if (longer === 1) return this.#context.decodeAudioData(await this.#parts.bytes(url, segment));
      const plain = await this.#sound({ key: `${url}@${segment.offset}`, stem, url, segment, longer: 1 });
      return this.#stretcher.stretch(this.#context, plain, longer, STROKES.includes(stem));
    });
  }
}
