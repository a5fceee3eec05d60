// A loudspeaker whose clock stands where a test puts it, nodes that make no sound, and a line of two bars.
import { Engine } from "../../../main/browser/play/engine.js";

class StillContext extends EventTarget {
  state = "running";
  resume = () => Promise.resolve();
  sampleRate = 1000;
  currentTime = 0;
  destination = {};
  createGain() {
    return new Node();
  }
}

class Node extends EventTarget {
  gain = { setValueAtTime() {}, linearRampToValueAtTime() {}, setTargetAtTime() {} };
  connect(other) {
    return other;
  }
  start() {}
  stop() {}
}

Object.assign(globalThis, {
  AudioContext: StillContext,
  GainNode: Node,
  WaveShaperNode: Node,
  StereoPannerNode: Node,
  ConvolverNode: Node,
  AudioBuffer: class {
    copyToChannel() {}
  },
  AudioBufferSourceNode: Node,
});

/** Two bars of half a second, counted in by a second of beats. */
export const take = {
  before: 1000,
  bars: [{ start: 1000, frames: 500 }, { start: 1500, frames: 500 }],
  countIn: { frames: 1000, beats: [{ frame: 0, accent: true }, { frame: 500 }] },
  frameOf: (_, at) => 500 * Math.min(at, 1),
  momentOf: (index, frame) => (frame - take.bars[index].start) / 500,
};

export const source = {
  score: { rate: 1000, at: () => ({ take, longer: 1 }) },
  stems: [],
  countInLouder: 1,
  open() {},
  load: () => Promise.resolve(),
  ready: () => /** @type {any} */ ([]),
  countIn: () => Promise.resolve({}),
};

const RANGE = { first: 0, from: 0, last: 1, to: Infinity };

const USUAL = { percent: 100, countIn: false, counted: false, ladder: null, balance: {}, volume: 1 };

/** Plays the two bars round after round; what `wishes` says may change meanwhile. */
export function engineOf(from, wishes = {}) {
  return new Engine(from, RANGE, Object.assign(wishes, { ...USUAL, ...wishes }));
}
