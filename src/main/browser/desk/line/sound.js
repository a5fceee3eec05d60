// Plays a few bars of what is being typed, made by the server, and lights up the bar that sounds.
const LEAD = 0.1; // seconds before the first note

export class Player {
  /** @param lit called with the number of the bar that sounds, and with null at the end */
  constructor(path, lit, told) {
    this.path = path;
    this.lit = lit;
    this.told = told;
    this.number = 0;
    /** @type {AudioContext | null} */
    this.context = null;
    /** @type {AudioBufferSourceNode | null} */
    this.source = null;
    this.frame = 0;
  }

  get playing() {
    return Boolean(this.source);
  }

  stop() {
    this.number++;
    cancelAnimationFrame(this.frame);
    this.source?.stop();
    this.source = null;
    this.lit(null);
  }

  /** @param asked text, bar, percent, band */
  async play(asked) {
    this.stop();
    const number = this.number;
    this.context ??= new AudioContext();
    await this.context.resume();
    this.told("rendering");
    try {
      const answer = await fetch(`${this.path}/listen`, { method: "POST", body: new URLSearchParams(asked) });
      if (!answer.ok) throw new Error(String(answer.status));
      const bars = (answer.headers.get("Groundbass-Bars") ?? "").split(" ").map((one) => one.split("@"));
      const sound = await this.context.decodeAudioData(await answer.arrayBuffer());
      if (number !== this.number) return;
      this.told("");
      this.start(this.context, sound, bars.map(([bar, at]) => ({ bar: Number(bar), at: Number(at) })));
    } catch {
      if (number === this.number) this.told("silent");
    }
  }

  start(context, sound, bars) {
    const source = context.createBufferSource();
    source.buffer = sound;
    source.connect(context.destination);
    source.onended = () => {
      if (this.source === source) this.stop();
    };
    const silence = Math.max(0, (bars[0]?.at || 0) - LEAD); // the room of a count-in that is not heard
    const begun = context.currentTime - silence;
    source.start(0, silence);
    this.source = source;
    const follow = () => {
      if (this.source !== source) return;
      const now = context.currentTime - begun;
      const here = bars.filter((one) => one.at <= now + 0.02).at(-1);
      this.lit(here && !Number.isNaN(here.bar) ? here.bar : null);
      this.frame = requestAnimationFrame(follow);
    };
    follow();
  }
}
