// The band's sound, bar by bar: fetched, decoded, stretched where needed, and kept within bounds.
import { isSlow } from "./line-rate.js";
import { Parts } from "./parts.js";
import { canBeSmall, decodeSmall } from "./small.js";
import { Sounds } from "./sounds.js";
import { Stretcher } from "../common/stretcher.js";

const STROKES = ["drums", "click"];

export class Stems {
  #context;
  #parts;
  #sounds = new Sounds();
  #stretcher = new Stretcher();
  /** Whether the smaller form is fetched; once it is, the line stays with it. */
  #small = false;

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
    this.#small ||= canBeSmall() && isSlow();
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
    const segment = { offset, bytes };
    return this.#sound({ key: keyOf({ url, segment }), stem: "click", url, segment, longer: 1 });
  }

  #pieces(step) {
    const { take, longer } = this.score.at(step.percent);
    return this.stems.flatMap((stem) => {
      const plain = pieceOf(take.files[stem], step.index, stem, longer);
      const { small } = take;
      if (!plain.segment.bytes || !this.#small || !small[stem]) return plain.segment.bytes ? [plain] : [];
      return [this.#sounds.ready(plain.key) ? plain : smallPieceOf(plain, small[stem], step.index)];
    });
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

  /** What cannot be decoded in the smaller form is fetched in the other one. */
  async #decoded({ url, segment, plain }) {
    const bytes = await this.#parts.bytes(url, segment);
    if (!plain) return this.#context.decodeAudioData(bytes);
    return (await decodeSmall(this.#context, bytes, segment, this.score.rate)) ?? this.#decoded(plain);
  }
}

function keyOf({ url, segment }) {
  return `${url}@${segment.offset}`;
}

function pieceOf({ url, segments }, index, stem, longer) {
  const segment = segments[index];
  const key = keyOf({ url, segment }) + (longer === 1 ? "" : `*${longer}`);
  return { key, stem, url, segment, longer };
}

/** The same piece in its smaller form; `plain` is the piece itself. */
function smallPieceOf(plain, { url, rate, skip, spans }, index) {
  const { frames, lead } = plain.segment;
  const segment = { ...spans[index], frames, lead, rate, skip };
  const key = keyOf({ url, segment }) + (plain.longer === 1 ? "" : `*${plain.longer}`);
  return { ...plain, key, url, segment, plain };
}
