// What a change of the tempo keeps of the place. The times and rounds that are expected are added up by hand.
import { deepEqual } from "node:assert/strict";
import { Engine } from "../../../main/browser/play/engine.js";

/** A clock that stands where the test puts it, and nodes that make no sound. */
class StillContext {
  state = "running";
  sampleRate = 1000;
  currentTime = 0;
  destination = {};
  addEventListener() {}
  createGain() {
    return new Node();
  }
}

class Node {
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
const take = {
  bars: [{ start: 1000, frames: 500 }, { start: 1500, frames: 500 }],
  countIn: { frames: 1000, beats: [{ frame: 0, accent: true }, { frame: 500 }] },
  frameOf: (_, at) => 500 * Math.min(at, 1),
  momentOf: (index, frame) => (frame - take.bars[index].start) / 500,
};

const source = {
  score: { rate: 1000, at: () => ({ take, longer: 1 }) },
  stems: [],
  countInLouder: 1,
  open() {},
  load: () => Promise.resolve(),
  ready: () => [],
  countIn: () => Promise.resolve({}),
};

const RANGE = { first: 0, from: 0, last: 1, to: Infinity };

function engine(settings) {
  return new Engine(source, RANGE, {
    percent: 100,
    countIn: false,
    counted: false,
    balance: {},
    volume: 1,
    ladder: { percentIn: () => 100, restBefore: (round) => (round ? 20 : 0) },
    ...settings,
  });
}

/** The place at which what plays has begun. */
const begun = ({ clock }) => clock.rounds.start;

/** Moves the clock on by so many seconds, once what sounds then is laid. */
async function later(made, seconds) {
  for (let turn = 0; turn < 100 && !made.heard(seconds); turn++) await Promise.resolve();
  made.context.currentTime += seconds;
}

Deno.test("a change in the rest before a round goes on with that round", async () => {
  const made = engine({});
  await made.play();
  await later(made, 5);
  await made.change();
  deepEqual(begun(made), { index: 0, at: 0, round: 1 });
  made.stop();
});

Deno.test("a change in the rest that counts anew begins the first round", async () => {
  const made = engine({});
  await made.play();
  await later(made, 5);
  await made.change(null, true);
  deepEqual(begun(made), { index: 0, at: 0, round: 0 });
  made.stop();
});

Deno.test("changes while it counts in and while it loads keep the place at which it was to go on", async () => {
  const made = engine({ countIn: true });
  await made.play({ index: 1, at: 0, round: 4 });
  await made.change();
  deepEqual(begun(made), { index: 1, at: 0, round: 4 });
  await Promise.all([made.change(), made.change()]);
  deepEqual(begun(made), { index: 1, at: 0, round: 4 });
  made.stop();
});

Deno.test("a change while a bar sounds goes on inside it", async () => {
  const made = engine({});
  await made.play({ index: 0, at: 0, round: 2 });
  await later(made, 0.25); // heard from 0.06 s on, and a change is heard 0.06 s later
  await made.change();
  deepEqual(begun(made), { index: 0, at: 0.5, round: 2 });
  made.stop();
});
