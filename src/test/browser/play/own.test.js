// How a recording of the educator's own is counted in: its bars stand where they were mapped.
import { deepEqual, equal } from "node:assert/strict";
import { counted } from "../../../main/browser/play/count-in.js";
import { ownTracks } from "../../../main/browser/play/own.js";
import { Practice } from "../../../main/browser/play/practice.js";
import { Score } from "../../../main/browser/play/score.js";
import { having } from "../desk/stand-ins.js";

const RATE = 1000;

/** A bar of four beats of half a second. */
const bar = (number, startFrame) => ({
  bar: number,
  pass: 1,
  startFrame,
  frames: 2000,
  counts: [0, 1, 2, 3].map((beat) => ({ at: `${beat}/4`, count: String(beat + 1), frame: startFrame + 500 * beat })),
  events: [],
});

const BEATS = [0, 500, 1000, 1500].map((frame) => ({ frame, accent: frame === 0 }));

/** A pickup of one beat, so that its bar begins with the fourth that is counted, and two bars. */
const pickup = { ...bar(0, 1500), frames: 500, counts: [{ at: "0", count: "4", frame: 1500 }] };

const score = (bars) =>
  Score.of({
    rate: RATE,
    stems: [],
    tempos: [{ percent: 100, bpm: 120, countIn: { frames: 2000, beats: BEATS }, files: {}, bars }],
  });

/** The recording whose bars begin at these seconds, to be played in the place of a band that plays `bars`. */
function recording(bars, seconds) {
  const mapped = Object.entries(seconds).map(([number, at]) => ({ bar: +number, pass: 1, round: 1, seconds: at }));
  const band = { score: score(bars), open() {} };
  const track = { url: "own.mp3", title: "Live", bars: mapped, endSeconds: 60 };
  return ownTracks({ tracks: [track] }, "https://site.example/", band)[0].source;
}

/** Frames and numbers that are counted before the first bar of a recording whose bars begin at these seconds. */
function before(bars, seconds) {
  const { frames, beats } = counted(recording(bars, seconds).score.at(100).take, 0, 0);
  return [frames, beats.map(({ number }) => number).join("")];
}

Deno.test("a recording comes in after its count, wherever in it the music begins", () => {
  const bars = [bar(1, 2000), bar(2, 4000)];
  deepEqual(before(bars, { 1: 0.4, 2: 2.4 }), [2000, "1234"]);
  deepEqual(before(bars, { 1: 12, 2: 14 }), [2000, "1234"]);
});

Deno.test("the pickup of a recording is counted up to as the band's is", () => {
  const bars = [pickup, bar(1, 2000), bar(2, 4000)];
  deepEqual(before(bars, { 0: 7, 1: 7.5, 2: 9.5 }), [1500, "1234"]);
});

Deno.test("a recording that leaves out the beginning is counted in a whole bar", () => {
  const bars = [pickup, bar(1, 2000), bar(2, 4000)];
  deepEqual(before(bars, { 1: 3, 2: 5 }), [2000, "1234"]);
});

Deno.test("a recording is held whole as long as it is played with", async () => {
  const source = recording([bar(1, 2000), bar(2, 4000), bar(3, 6000)], { 1: 0, 2: 2, 3: 4 });
  let decoded = 0;
  const sound = { numberOfChannels: 0, sampleRate: RATE, length: 60 * RATE };
  const context = { decodeAudioData: () => Promise.resolve((decoded++, sound)), createBuffer: () => sound };
  const settings = Object.assign(new EventTarget(), { get: () => "", set() {} });
  const names = { document: new EventTarget(), fetch: () => Promise.resolve(new Response("sound")) };
  await having(names, async () => {
    const practice = new Practice({ source, sheet: { shade() {}, light() {} }, settings });
    source.open(context);
    await source.load([{ index: 0, percent: 100 }, { index: 1, percent: 100 }]);
    equal(decoded, 1);
    practice.use(recording([bar(1, 2000)], { 1: 0 }));
    await source.load([{ index: 2, percent: 100 }]);
    equal(decoded, 2);
  });
});
