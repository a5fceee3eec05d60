// From the stems to the ears: where each stands, how loud it is, who is silent, who plays alone.

const SOON = 0.015; // seconds; a level that jumps would click

/** Up to here everything stays as it is; what goes beyond is rounded off and stays under full scale. */
const KNEE = 0.75;
/** How far beyond full scale the curve reaches: 12 dB. */
const REACH = 4;
const POINTS = 4097;

/** A small room, as practice tracks have it: how much of each stem goes in, and how long it rings (rule: room-figures). */
const INTO_THE_ROOM = { bass: 0.05, drums: 0.25, chords: 0.3 };
const ROOM_SECONDS = 0.42;
const DULL = 0.45; // of each sample remains in the next, the later the duller

/** What of `balance` (`{level, mute, solo}` by stem, levels 0 to 1) is heard of a stem. Silence goes before solo. */
export function heard(stem, balance) {
  const { level, mute, solo } = balance[stem];
  const alone = Object.values(balance).some((other) => other.solo);
  return mute || (alone && !solo) ? 0 : level * level; // a square is near to how loudness is felt
}

/** What becomes of a sample where stems meet. */
export function rounded(sample) {
  const size = Math.abs(sample);
  const room = 1 - KNEE;
  return size <= KNEE ? sample : Math.sign(sample) * (KNEE + room * Math.tanh((size - KNEE) / room));
}

function curve() {
  const middle = (POINTS - 1) / 2;
  return Float32Array.from({ length: POINTS }, (_, i) => rounded((REACH * (i - middle)) / middle));
}

/** What comes back from its walls after a click, for one ear: noise that falls by 60 dB, and is dull. */
function walls(rate, seed) {
  let state = seed;
  let low = 0;
  return Float32Array.from({ length: Math.round(rate * ROOM_SECONDS) }, (_, i) => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    low += (1 - DULL) * (state / 2 ** 31 - low);
    return low * 10 ** ((-3 * i) / (rate * ROOM_SECONDS));
  });
}

export class Mixer {
  #context;
  #room;
  #master;
  #levels = new Map();

  constructor(context, source) {
    this.#context = context;
    this.#master = new GainNode(context);
    const narrow = new GainNode(context, { gain: 1 / REACH });
    this.#master.connect(narrow).connect(new WaveShaperNode(context, { curve: curve() })).connect(context.destination);
    this.#room = this.#walls(context);
    this.#room.connect(this.#master);
    this.countIn = new GainNode(context, { gain: source.countInLouder });
    this.countIn.connect(this.#master);
    this.outputs = new Map(source.stems.map((stem) => [stem, this.#channel(stem, source)]));
  }

  /** The count-in is heard whoever is silent: without it nobody finds the beginning. */
  set(balance, volume) {
    for (const [stem, gain] of this.#levels) this.#turn(gain, heard(stem, balance));
    this.#turn(this.#master, volume * volume);
  }

  #channel(stem, source) {
    const level = new GainNode(this.#context);
    const louder = new GainNode(this.#context, { gain: source.louder });
    const place = new StereoPannerNode(this.#context, { pan: source.pan(stem) });
    level.connect(louder).connect(place).connect(this.#master);
    if (INTO_THE_ROOM[stem]) {
      louder.connect(new GainNode(this.#context, { gain: INTO_THE_ROOM[stem] })).connect(this.#room);
    }
    this.#levels.set(stem, level);
    return level;
  }

  #walls(context) {
    const buffer = new AudioBuffer({
      numberOfChannels: 2,
      length: Math.round(context.sampleRate * ROOM_SECONDS),
      sampleRate: context.sampleRate,
    });
    for (const ear of [0, 1]) buffer.copyToChannel(walls(context.sampleRate, 7 + ear), ear);
    return new ConvolverNode(context, { buffer });
  }

  #turn(gain, value) {
    gain.gain.setTargetAtTime(value, this.#context.currentTime, SOON);
  }
}
