// A recording as a picture: its peaks, the bars that were marked, the stretch that is repeated, where it sounds.
const STEPS = 100; // peaks a second

export class Wave {
  #canvas;
  #peaks = new Float32Array(0);
  #steps = STEPS;

  constructor(canvas) {
    this.#canvas = canvas;
  }

  /** Takes peaks that somebody else has read, so many a second. */
  take(peaks, steps) {
    this.#peaks = peaks;
    this.#steps = steps;
  }

  /** Takes the peaks of a sound once, so that drawing is fast. */
  read(buffer) {
    const hop = buffer.sampleRate / STEPS;
    const peaks = new Float32Array(Math.ceil(buffer.length / hop));
    for (let c = 0; c < buffer.numberOfChannels; c++) {
      const samples = buffer.getChannelData(c);
      for (let i = 0; i < samples.length; i++) {
        const step = Math.floor(i / hop);
        const size = Math.abs(samples[i]);
        if (size > peaks[step]) peaks[step] = size;
      }
    }
    this.take(peaks, STEPS);
  }

  /** Draws the seconds from `from` to `to`. */
  draw({ from, to, bars, loop, at }) {
    const ratio = devicePixelRatio;
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    this.#canvas.width = width * ratio;
    this.#canvas.height = height * ratio;
    const pen = this.#canvas.getContext("2d");
    pen.scale(ratio, ratio);
    const colour = (name) => getComputedStyle(this.#canvas).getPropertyValue(name);
    const x = (second) => ((second - from) / (to - from)) * width;
    if (loop) {
      pen.fillStyle = colour("--warm-wash");
      pen.fillRect(x(loop.from), 0, x(loop.to) - x(loop.from), height);
    }
    pen.fillStyle = colour("--accent");
    for (let i = 0; i < width; i++) {
      const size = this.#peak(from + (i * (to - from)) / width, from + ((i + 1) * (to - from)) / width);
      const tall = Math.max(1, size * (height - 20));
      pen.fillRect(i, 20 + (height - 20 - tall) / 2, 1, tall);
    }
    pen.fillStyle = colour("--ink");
    pen.font = `13px ${colour("--text")}`;
    let free = 0; // a name that would stand on the one before it is left out
    for (const bar of bars) {
      pen.fillRect(x(bar.from), 0, 1, height);
      if (x(bar.from) < free) continue;
      pen.fillText(String(bar.bar), x(bar.from) + 4, 14);
      free = x(bar.from) + 8 + pen.measureText(String(bar.bar)).width;
    }
    pen.fillStyle = colour("--wrong");
    pen.fillRect(x(at) - 1, 0, 2, height);
  }

  #peak(from, to) {
    let most = 0;
    const end = Math.min(this.#peaks.length, Math.ceil(to * this.#steps));
    for (let i = Math.max(0, Math.floor(from * this.#steps)); i < end; i++) most = Math.max(most, this.#peaks[i]);
    return most;
  }
}
