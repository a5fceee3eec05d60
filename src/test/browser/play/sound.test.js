// What is heard of the parts, what is kept of their sound, and how they are counted in.
import { deepEqual, equal } from "node:assert/strict";
import { counted } from "../../../main/browser/play/count-in.js";
import { Kept } from "../../../main/browser/play/kept.js";
import { heard, rounded } from "../../../main/browser/play/mixer.js";

Deno.test("mute goes before solo, and solo silences the others", () => {
  const on = { level: 1, mute: false, solo: false };
  const both = (balance) => [heard("bass", balance), heard("drums", balance)];
  deepEqual(both({ bass: on, drums: on }), [1, 1]);
  deepEqual(both({ bass: { ...on, solo: true }, drums: on }), [1, 0]);
  deepEqual(both({ bass: { ...on, solo: true, mute: true }, drums: on }), [0, 0]);
});

Deno.test("tips that stand out where stems meet are rounded off, and all else stays as it is", () => {
  deepEqual([0, 0.5, -0.75].map(rounded), [0, 0.5, -0.75]);
  const loud = [0.8, 1, 1.5, 3].map(rounded);
  equal(loud.every((sample, i) => sample <= 1 && sample > (loud[i - 1] ?? 0.75)), true);
  equal(rounded(-1.5), -rounded(1.5));
});

Deno.test("a full memory forgets what was longest unused", () => {
  const kept = new Kept(10);
  kept.put("a", 1, 4);
  kept.put("b", 2, 4);
  kept.get("a");
  kept.put("c", 3, 4);
  deepEqual(["a", "b", "c"].map((key) => kept.get(key)), [1, undefined, 3]);
  equal(kept.held, 8);
});

Deno.test("a start inside a bar is counted a whole bar and on", () => {
  const beats = [0, 1000, 2000, 3000].map((frame, i) => ({ frame, accent: i === 0 }));
  const take = { countIn: { frames: 4000, beats }, before: 3000 };
  const told = [[0, 0], [1, 0], [1, 1500]].map(([index, frame]) => counted(take, index, frame));
  deepEqual(
    told.map((count) => `${count.frames}:${count.beats.map((beat) => beat.number).join("")}`),
    ["3000:1234", "4000:1234", "5500:123412"],
  );
});
