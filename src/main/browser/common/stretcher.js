// Asks the worker to stretch, one answer for each question.

export class Stretcher {
  /** @type {Worker | null} */
  #worker = null;
  #next = 0;
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

  #ask(question) {
    const worker = this.#worker ??= this.#start();
    const id = this.#next++;
    worker.postMessage({ id, ...question }, question.channels.map((channel) => channel.buffer));
    return new Promise((done, failed) => this.#waiting.set(id, { done, failed }));
  }

  #start() {
    const worker = new Worker(new URL("./stretch-worker.js", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }) => {
      this.#waiting.get(data.id).done(data.channels);
      this.#waiting.delete(data.id);
    });
    worker.addEventListener("error", (event) => this.#fail(new Error(event.message)));
    return worker;
  }

  #fail(problem) {
    for (const { failed } of this.#waiting.values()) failed(problem);
    this.#waiting.clear();
    this.#worker = null;
  }
}
