// The bars of a recording while they are corrected, and how their marks are called.
import { deepEqual, equal } from "node:assert/strict";
import { Correction } from "../../../main/browser/desk/bars/correction.js";
import { nameOf, shortNameOf } from "../../../main/browser/desk/bars/names.js";

const map = {
  kept: true,
  bars: [1, 2, 3].map((bar, i) => ({ bar, pass: 1, round: 1, seconds: 2 * i })),
  end: 6,
};

function begun(at = 0) {
  const correction = new Correction();
  correction.begin(map, at);
  return correction;
}

Deno.test("what the server keeps is what stands, and the mark nearest to what is heard is in hand", () => {
  const correction = begun(2.2);
  deepEqual([correction.marks, correction.chosen, correction.standing], [[0, 2, 4, 6], 1, "kept"]);
  correction.heard(3.9);
  equal(correction.chosen, 2);
  correction.choose(0);
  correction.heard(3.9);
  equal(correction.chosen, 0, "what a hand chose stays in hand");
  correction.follow(3.9);
  equal(correction.chosen, 2);
});

Deno.test("bars that were found and are not kept are told as found", () => {
  const correction = new Correction();
  correction.begin({ ...map, kept: false }, 0);
  equal(correction.standing, "found");
});

Deno.test("a tap puts the mark in hand and takes up the next one, the last one stays", () => {
  const correction = begun();
  correction.choose(2);
  deepEqual([correction.tap(4.3), correction.chosen, correction.standing], [2, 3, "changed"]);
  deepEqual([correction.tap(6.1), correction.chosen], [3, 3]);
  deepEqual(correction.marks, [0, 2, 4.3, 6.1]);
});

Deno.test("a nudge moves the mark in hand and leaves the others", () => {
  const correction = begun(2);
  correction.nudge(0.01);
  correction.nudge(0.01);
  deepEqual(correction.marks, [0, 2.02, 4, 6]);
});

Deno.test("every change is taken back, one after the other, until nothing is left of them", () => {
  const correction = begun();
  correction.tap(0.5);
  correction.replace({ bars: [{ bar: 1, pass: 1, round: 1, seconds: 1 }], end: 3 }, 9);
  deepEqual([correction.marks, correction.chosen], [[1, 3], 1]);
  correction.undo();
  deepEqual(correction.marks, [0.5, 2, 4, 6]);
  equal(correction.bars.length, 3);
  correction.undo();
  deepEqual([correction.marks, correction.canUndo], [[0, 2, 4, 6], false]);
  correction.undo();
  deepEqual(correction.marks, [0, 2, 4, 6]);
});

Deno.test("undone, the mark in hand is one that is there", () => {
  const correction = new Correction();
  correction.begin({ bars: map.bars.slice(0, 1), end: 3 }, 0);
  correction.replace(map, 6);
  equal(correction.chosen, 3);
  correction.undo();
  equal(correction.chosen, 1);
});

Deno.test("around a mark are the bars before and after it", () => {
  const correction = begun(2);
  deepEqual(correction.around, { from: 0, to: 4 });
  correction.choose(0);
  deepEqual(correction.around, { from: -2, to: 2 });
  correction.choose(3);
  deepEqual(correction.around, { from: 4, to: 8 });
});

Deno.test("the last bar may end a second behind the recording, not later", () => {
  const correction = begun();
  equal(correction.stumble(5), null);
  deepEqual(correction.stumble(4.9), { index: 3, outside: true });
  correction.choose(1);
  correction.tap(4.5);
  deepEqual(correction.stumble(6), { index: 2, outside: false });
});

const say = (word, ...values) => [word, ...values].join(" ");

Deno.test("a mark is called by its bar, and by pass and round only where they tell bars apart", () => {
  const plain = map.bars;
  const again = [...plain, { bar: 1, pass: 2, round: 1 }, { bar: 1, pass: 1, round: 2 }];
  deepEqual([nameOf(plain, 1, say), nameOf(plain, 3, say)], ["bar 2", "end"]);
  deepEqual([nameOf(again, 0, say), nameOf(again, 4, say)], ["bar 1, pass 1, round 1", "bar 1, pass 1, round 2"]);
  deepEqual(
    [0, 3, 4, 5].map((i) => shortNameOf(again, i, say)),
    ["1", "1 pass-short 2", "1 round-short 2", "end-short"],
  );
});
