// A click where each bar begins, so that a wrong one is heard.
const PITCH = 1600; // Hz: above a bass and most of a voice
const FADE = 0.008; // seconds in which it falls to 1/e
const LONG = 0.06;
const LOUD = 0.6;

export class Clicks {
  #marks;

  /** @param marks gives the moments at this moment, in seconds of the recording */
  constructor(marks) {
    this.#marks = marks;
  }

  /** The clicks between `from` and `to`, as a sound that lasts as long as that stretch at `speed`. */
  async under(context, _bars, from, to, speed) {
    const rate = context.sampleRate;
    const out = context.createBuffer(1, Math.max(1, Math.round(((to - from) / speed) * rate)), rate);
    const samples = out.getChannelData(0);
    for (const mark of this.#marks().filter((one) => one >= from && one < to)) {
      strike(samples, Math.round(((mark - from) / speed) * rate), rate);
    }
    return out;
  }
}

function strike(samples, begin, rate) {
  const count = Math.min(samples.length - begin, Math.round(LONG * rate));
  for (let i = 0; i < count; i++) {
    samples[begin + i] += LOUD * Math.exp(-i / rate / FADE) * Math.sin((2 * Math.PI * PITCH * i) / rate);
  }
}
