// A recording of the educator's own in place of the band: cut at the bars that were mapped, laid like stems.
import { patiently, received } from "../common/patience.js";
import { AGAIN } from "./parts.js";
import { Score, Take } from "./score.js";
import { Sounds } from "./sounds.js";
import { Stretcher } from "../common/stretcher.js";

const STEM = "track";
/**
 * Seconds before a bar's start in which the piece before it goes out and its own comes in, so that its attack is whole.
 * Unstretched they add up to the recording itself.
 */
const OVER = 0.01;

/** The recordings of a manifest that can be played bar by bar. */
export function ownTracks(manifest, base, band) {
  return (manifest.tracks ?? [])
    .filter((track) => track.bars.length > 0)
    .map((track) => ({ title: track.title, source: new OwnTrack(track, base, band) }));
}

/** As the band's own take, with the bars where the recording has them. */
function mapped(track, band) {
  const model = band.score.at(100).take;
  const { rate } = band.score;
  const ends = [...track.bars.slice(1).map((bar) => bar.seconds), track.endSeconds];
  const bars = track.bars.map(({ bar, pass, round, seconds }, i) => {
    const same = model.bars.find((known) => known.bar === bar && known.pass === pass);
    const start = Math.round(seconds * rate);
    return same && moved(same, start, Math.round(ends[i] * rate) - start, round);
  });
  const known = bars.filter(Boolean);
  const take = Object.assign(Object.create(Take.prototype), model, { bars: known, percent: 100, files: {} });
  // its bars count from its own start, and it may leave out the first
  take.before = known[0]?.bar === model.bars[0].bar ? model.before : model.countIn.frames;
  take.events = known.flatMap((bar) => bar.events).sort((a, b) => a.start - b.start);
  return new Score({ rate, stems: [STEM], takes: [take] });
}

/** A bar at another place and of another length, all inside it in proportion. */
function moved(bar, start, frames, round) {
  const there = (frame) => Math.round(start + ((frame - bar.start) * frames) / bar.frames);
  return {
    ...bar,
    pass: round,
    start,
    frames,
    counts: bar.counts.map((count) => ({ ...count, frame: there(count.frame) })),
    events: bar.events.map((event) => ({ ...event, start: there(event.start), end: there(event.end) })),
  };
}

class OwnTrack {
  #address;
  #band;
  #context;
  /** @type {Promise<AudioBuffer> | null} */
  #whole = null;
  #sounds = new Sounds();
  #stretcher = new Stretcher();

  constructor(track, base, band) {
    this.#address = new URL(track.url, base);
    this.#band = band;
    this.score = mapped(track, band);
  }

  get stems() {
    return [STEM];
  }

  pan() {
    return 0;
  }

  get louder() {
    return 1;
  }

  get countInLouder() {
    return this.#band.louder;
  }

  open(context) {
    this.#context = context;
    this.#band.open(context);
  }

  /** Once something else is played with, it need not be held whole: minutes of sound are much for a telephone. */
  close() {
    this.#whole = null;
  }

  /** A recording is one piece: it comes when somebody wants to hear it. */
  fetch() {}

  async load(steps) {
    await Promise.all(steps.map((step) => this.#piece(step)));
  }

  ready(step) {
    const buffer = this.#sounds.ready(this.#key(step));
    const { take, longer } = this.score.at(step.percent);
    const lead = longer * leadOf(take.bars[step.index], this.score.rate);
    return buffer ? [{ stem: STEM, buffer, lead }] : null;
  }

  countIn() {
    return this.#band.countIn(this.#band.score.at(100).take);
  }

  #key(step) {
    return `${step.index}*${this.score.at(step.percent).longer}`;
  }

  #piece(step) {
    return this.#sounds.get(this.#key(step), async () => {
      const { take, longer } = this.score.at(step.percent);
      const bar = take.bars[step.index];
      const lead = leadOf(bar, this.score.rate);
      const end = (bar.start + bar.frames) / this.score.rate;
      const piece = cut(this.#context, await this.#recording(), bar.start / this.score.rate - lead, end);
      const long = longer === 1 ? piece : await this.#stretcher.stretch(this.#context, piece, longer, false);
      return faded(long, lead * longer, OVER * longer);
    });
  }

  /** Decoded once, as long as it is played with; a failure is not kept. */
  #recording() {
    this.#whole ??= this.#decode().catch((problem) => {
      this.#whole = null;
      throw problem;
    });
    return this.#whole;
  }

  async #decode() {
    const { bytes } = await patiently(() => received(this.#address), { again: AGAIN });
    return this.#context.decodeAudioData(bytes);
  }
}

/** A recording that begins with a bar has nothing before it. */
function leadOf(bar, rate) {
  return Math.min(OVER, bar.start / rate);
}

/** The samples between two times in seconds. */
function cut(context, recording, begin, end) {
  const { numberOfChannels, sampleRate } = recording;
  const from = Math.round(begin * sampleRate);
  const to = Math.min(recording.length, Math.round(end * sampleRate));
  const piece = context.createBuffer(numberOfChannels, Math.max(1, to - from), sampleRate);
  for (let c = 0; c < numberOfChannels; c++) {
    piece.copyToChannel(recording.getChannelData(c).subarray(from, to), c);
  }
  return piece;
}

/** Comes in over the first and goes out over the last seconds. */
function faded(piece, comes, goes) {
  const last = piece.length - Math.round(goes * piece.sampleRate);
  for (let c = 0; c < piece.numberOfChannels; c++) {
    const samples = piece.getChannelData(c);
    ramp(samples, 0, Math.round(comes * piece.sampleRate), (share) => share);
    ramp(samples, Math.max(0, last), piece.length, (share) => 1 - share);
  }
  return piece;
}

function ramp(samples, from, to, gain) {
  for (let i = from; i < Math.min(to, samples.length); i++) samples[i] *= gain((i - from) / (to - from));
}
