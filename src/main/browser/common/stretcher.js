// Asks the worker to stretch, one answer for each question. One that does not answer, as where a telephone has ended it, is
// given up: the next question starts another.

/** Seconds in which the worker answers something, and how many more it is given for each second of sound that waits. */
const LONGEST = 15;
const FOR_EACH = 2;

export class Stretcher {
  /** @type {Worker | null} */
  #worker = null;
  #next = 0;
  #timer = 0;
  /** @type {Map<number, {seconds: number, done: (channels: Float32Array<ArrayBuffer>[]) => void, failed: (problem: Error) => void}>} */
  #waiting = new Map();

  /** The channels of `buffer`, `longer` times as long, as a new AudioBuffer. */
  async stretch(context, buffer, longer, strokes) {
    const channels = Array.from({ length: buffer.numberOfChannels }, (_, c) => buffer.getChannelData(c).slice());
    const longerOnes = await this.#ask({ channels, rate: buffer.sampleRate, longer, strokes });
    const length = Math.max(1, longerOnes[0].length);
    const out = context.createBuffer(longerOnes.length, length, buffer.sampleRate);
    longerOnes.forEach((channel, c) => out.copyToChannel(channel, c));
    return out;
  }

  /** @returns {Promise<Float32Array<ArrayBuffer>[]>} */
  #ask(question) {
    const worker = this.#worker ??= this.#start();
    const id = this.#next++;
    const seconds = (question.longer * question.channels[0].length) / question.rate;
    worker.postMessage({ id, ...question }, question.channels.map((channel) => channel.buffer));
    return new Promise((done, failed) => {
      this.#waiting.set(id, { seconds, done, failed });
      this.#wait();
    });
  }

  #start() {
    const worker = new Worker(new URL("./stretch-worker.js", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }) => {
      this.#waiting.get(data.id)?.done(data.channels);
      this.#waiting.delete(data.id);
      this.#wait();
    });
    worker.addEventListener("error", (event) => this.#fail(new Error(event.message)));
    return worker;
  }

  /** From now on, for what has not been answered yet. */
  #wait() {
    clearTimeout(this.#timer);
    if (this.#waiting.size === 0) return;
    const seconds = [...this.#waiting.values()].reduce((sum, one) => sum + one.seconds, 0);
    const longest = 1000 * (LONGEST + FOR_EACH * seconds);
    this.#timer = setTimeout(() => this.#fail(new Error("nothing is stretched any more")), longest);
  }

  #fail(problem) {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = null;
    for (const { failed } of this.#waiting.values()) failed(problem);
    this.#waiting.clear();
  }
}
