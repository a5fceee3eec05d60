// The written line, made by the server bar by bar and fitted to the bars of a recording.
import { cut } from "../recording/cut.js";

const AT_ONCE = 8; // bars the server makes for one question

export class WrittenLine {
  #path;
  #text;
  #stretcher;
  #known = new Map();

  /** @param text gives the line as it is typed at this moment */
  constructor(path, text, stretcher) {
    this.#path = path;
    this.#text = text;
    this.#stretcher = stretcher;
  }

  /**
   * The written bars laid under `bars` (`{bar, from, to}` in seconds of the recording), as a sound that lasts as long as
   * the stretch from `from` to `to` at `speed`. Bars that are not written stay silent.
   */
  async under(context, bars, from, to, speed) {
    const rate = context.sampleRate;
    const out = context.createBuffer(1, Math.max(1, Math.round(((to - from) / speed) * rate)), rate);
    const samples = out.getChannelData(0);
    for (const { bar, ...heard } of bars.filter((one) => one.to > from && one.from < to)) {
      const written = await this.#bar(context, bar);
      if (!written) continue;
      const longer = (heard.to - heard.from) / speed / written.duration;
      const fitted = await this.#stretcher.stretch(context, written, longer, false);
      lay(fitted.getChannelData(0), samples, Math.round(((heard.from - from) / speed) * rate));
    }
    return out;
  }

  async #bar(context, number) {
    const text = this.#text();
    const key = `${number} ${text}`;
    if (!this.#known.has(key)) await this.#ask(context, text, number);
    return this.#known.get(key) ?? null;
  }

  async #ask(context, text, number) {
    const body = new URLSearchParams({ text, bar: number, bars: String(AT_ONCE), percent: "100" });
    const answer = await fetch(`${this.#path}/listen`, { method: "POST", body });
    this.#known.set(`${number} ${text}`, null);
    if (!answer.ok) return;
    const begins = (answer.headers.get("Groundbass-Bars") ?? "").split(" ").map((one) => one.split("@"));
    const sound = await context.decodeAudioData(await answer.arrayBuffer());
    for (let i = 0; i + 1 < begins.length; i++) {
      const piece = cut(context, sound, Number(begins[i][1]), Number(begins[i + 1][1]));
      this.#known.set(`${begins[i][0]} ${text}`, piece);
    }
  }
}

function lay(piece, samples, at) {
  const skipped = Math.max(0, -at);
  const count = Math.min(piece.length - skipped, samples.length - Math.max(0, at));
  for (let i = 0; i < count; i++) samples[Math.max(0, at) + i] += piece[skipped + i];
}
