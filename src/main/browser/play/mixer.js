// From the stems to the ears: where each stands, how loud it is, who is silent, who plays alone.

const SOON = 0.015; // seconds; a level that jumps would click

/** What of `balance` (`{level, mute, solo}` by stem, levels 0 to 1) is heard of a stem. Silence goes before solo. */
export function heard(stem, balance) {
  const { level, mute, solo } = balance[stem];
  const alone = Object.values(balance).some((other) => other.solo);
  return mute || (alone && !solo) ? 0 : level * level; // a square is near to how loudness is felt
}

export class Mixer {
  #context;
  #master;
  #levels = new Map();

  constructor(context, source) {
    this.#context = context;
    this.#master = new GainNode(context);
    this.#master.connect(context.destination);
    this.countIn = new GainNode(context);
    this.countIn.connect(this.#master);
    this.outputs = new Map(source.stems.map((stem) => [stem, this.#channel(stem, source.pan(stem))]));
  }

  /** The count-in is heard whoever is silent: without it nobody finds the beginning. */
  set(balance, volume) {
    for (const [stem, gain] of this.#levels) this.#turn(gain, heard(stem, balance));
    this.#turn(this.#master, volume * volume);
  }

  #channel(stem, pan) {
    const level = new GainNode(this.#context);
    const place = new StereoPannerNode(this.#context, { pan });
    level.connect(place).connect(this.#master);
    this.#levels.set(stem, level);
    return level;
  }

  #turn(gain, value) {
    gain.gain.setTargetAtTime(value, this.#context.currentTime, SOON);
  }
}
