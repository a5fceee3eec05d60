// What is repeated, in which order and how fast.
import { deepEqual, equal } from "node:assert/strict";
import { Trainer } from "../../../main/browser/play/trainer.js";
import { around, rangeOf, readRange, Rounds, wholeLine, writeRange } from "../../../main/browser/play/loop.js";
import { placeWords } from "../../../main/browser/common/places.js";
import { barsOf, waysOf } from "../../../main/browser/play/passes.js";
import { bar, bars } from "./bars.js";

const END = Infinity;

for (
  const [from, to, expected] of [
    ["", "", { first: 0, from: 0, last: 2, to: END }],
    ["1", "1", { first: 0, from: 0, last: 0, to: END }],
    ["2", "2", { first: 2, from: 0, last: 2, to: END }],
    ["1.3", "2.1&", { first: 1, from: 0.5, last: 2, to: 0.25 }],
    ["1", "2", { first: 0, from: 0, last: 2, to: END }],
    ["2.2&", "2.4", { first: 2, from: 0.375, last: 2, to: END }],
    [" 2 . 2+ ", "2,3", { first: 2, from: 0.375, last: 2, to: 0.75 }],
  ]
) {
  Deno.test(`both ends of a range are played: "${from}" to "${to}"`, () => {
    deepEqual(readRange(from, to, bars).range, expected);
  });
}

for (
  const [from, to, problem, field] of [
    ["3", "4", "bar", "from"],
    ["x", "2", "form", "from"],
    ["2", "1", "backward", "to"],
    ["1", "1.5", "count", "to"],
    ["2.3", "2.2", "backward", "to"],
  ]
) {
  Deno.test(`what is no range is named: "${from}" to "${to}"`, () => {
    const read = readRange(from, to, bars);
    deepEqual([read.problem, read.field], [problem, field]);
  });
}

for (const typed of ["1 1", "2 2", "1.1 1.1", "1.1 1.2e", "1.3 2.1", "2.2& 2.3e", "1.4& 2"]) {
  Deno.test(`a range is written as it was typed: ${typed}`, () => {
    const [from, to] = typed.split(" ");
    equal(writeRange(readRange(from, to, bars).range, bars).join(" "), typed);
  });
}

Deno.test("a drag in either direction chooses the same notes", () => {
  const a = { bar: 1, at: 0.25, toBar: 1, to: 0.375 };
  const b = { bar: 2, at: 0.5, toBar: 2, to: 0.625 };
  deepEqual(writeRange(rangeOf(a, b, bars), bars), ["1.2", "2.3e"]);
  deepEqual(writeRange(rangeOf(b, a, bars), bars), ["1.2", "2.3e"]);
});

// Bars 1 and 2 with endings 2 and 3: played 1 2 1 3 4; from 1 to 3 leads through the second ending.
Deno.test("a passage into a second ending is the pass in which its ends are neighbours", () => {
  const form = [[1, 1], [2, 1], [1, 2], [3, 1], [4, 1]].map(([number, pass], i) => bar(number, pass, 4000 * i));
  const a = { bar: 1, at: 0.5, toBar: 1, to: 0.75 };
  const b = { bar: 3, at: 0, toBar: 3, to: 0.25 };
  const read = (from, to) => readRange(from, to, form).range;
  const found = [read("1", "3"), rangeOf(a, b, form), read("1", "2"), read("1", "4")];
  deepEqual(found.map(({ first, last }) => [first, last]), [[2, 3], [2, 3], [0, 1], [0, 4]]);
});

// Played 1 2 3 1 2 4 5: bars 1 and 2 twice, with endings 3 and 4.
const twice = [[1, 1], [2, 1], [3, 1], [1, 2], [2, 2], [4, 1], [5, 1]].map(([n, pass], i) => bar(n, pass, 4000 * i));

for (
  const [from, to, first, last] of [
    ["1x2", "2", 3, 4],
    ["1x2", "2x2", 3, 4],
    ["2x1", "4", 1, 5],
    ["1", "2x2", 3, 4],
    ["1x1", "2x2", 0, 4],
    ["1x2", "5", 3, 6],
    ["1.2 x 2", "2.3×2", 3, 4],
  ]
) {
  Deno.test(`a pass can be named: "${from}" to "${to}"`, () => {
    const { range } = readRange(from, to, twice);
    deepEqual([range.first, range.last], [first, last]);
  });
}

Deno.test("a pass that is not played is named", () => {
  const { problem, field, found, bar: number, times } = readRange("2x3", "4", twice);
  deepEqual([problem, field, found, number, times], ["pass", "from", 3, 2, 2]);
});

Deno.test("what is written is read as the same passage, in whichever pass", () => {
  for (let first = 0; first < twice.length; first++) {
    for (let last = first; last < twice.length; last++) {
      const range = { first, from: 0.25, last, to: 0.75 };
      deepEqual(readRange(...writeRange(range, twice), twice).range, range, `${first} to ${last}`);
    }
  }
  deepEqual(writeRange({ first: 0, from: 0, last: 1, to: END }, twice), ["1", "2"]);
  deepEqual(writeRange({ first: 3, from: 0, last: 4, to: END }, twice), ["1x2", "2"]);
});

Deno.test("the passes of a passage are offered in order, with the bars that each has", () => {
  const offered = (from, to) =>
    waysOf(readRange(from, to, twice).range, twice).map(({ range, pass }) => [pass, barsOf(range, twice)]);
  deepEqual(offered("1", "2"), [[1, "1–2"], [2, "1–2"], [null, "1–3, 1–2"]]);
  deepEqual(offered("2", "4"), [[1, "2–3, 1–2, 4"], [2, "2, 4"]]);
  deepEqual(offered("4", "5"), []);
  deepEqual(offered("", ""), []);
});

Deno.test("a drag inside a triplet reaches the next named counts", () => {
  const a = { bar: 2, at: 1 / 12, toBar: 2, to: 1 / 6 };
  deepEqual(writeRange(rangeOf(a, a, bars), bars), ["2.1e", "2.1"]);
});

Deno.test("the first round may begin in the middle of the range", () => {
  const range = { first: 0, from: 0.5, last: 2, to: 0.5 };
  const rounds = new Rounds({ range, start: { index: 1, at: 0.25 }, percent: 80 });
  const steps = [0, 1, 2, 3].map((n) => rounds.step(n));
  deepEqual(
    steps.map((step) => [step.round, step.index, step.from, step.to]),
    [[0, 1, 0.25, END], [0, 2, 0, 0.5], [1, 0, 0.5, END], [1, 1, 0, END]],
  );
});

Deno.test("the tempo climbs after so many rounds and stays at its top", () => {
  const trainer = new Trainer({ from: 92, to: 100, step: 5, rounds: 2, rest: 0 });
  const ladder = { percentIn: (round) => trainer.tempoIn(round), restBefore: () => 0 };
  const rounds = new Rounds({ range: wholeLine(bars), percent: 80, ladder });
  deepEqual([0, 1, 2, 3, 4, 5, 99].map((round) => rounds.percentIn(round)), [92, 92, 97, 97, 100, 100, 100]);
});

// 2.2 to the bar's end is beats 2, 3 and 4 of four: the last of them is what a player would say.
Deno.test("a passage inside one bar is written with both its counts", () => {
  const written = (from, to) => writeRange(readRange(from, to, bars).range, bars).join(" ");
  deepEqual([written("2.2", "2"), written("2", "2"), written("1.2", "2")], ["2.2 2.4", "2 2", "1.2 2"]);
});

// Played 1 2 1 2 3 4 5: section A has bars 1 and 2 with their repeat, B begins at bar 3.
Deno.test("one press repeats this bar, four bars from it on, or its section with its repeats", () => {
  const form = [[1, 1], [2, 1], [1, 2], [2, 2], [3, 1], [4, 1], [5, 1]].map(([n, pass], i) => bar(n, pass, 4000 * i));
  const sections = [{ name: "A", bar: 1 }, { name: "B", bar: 3 }];
  const found = (way, at, of = sections) => {
    const { first, from, last, to } = around(way, at, form, of);
    deepEqual([from, to], [0, END]);
    return [first, last];
  };
  deepEqual(found("bar", 4), [4, 4]);
  deepEqual([found("four", 1), found("four", 5)], [[1, 4], [5, 6]]);
  deepEqual([0, 3, 4, 6].map((at) => found("section", at)), [[0, 3], [0, 3], [4, 6], [4, 6]]);
  deepEqual(found("section", 0, [{ name: "B", bar: 3 }]), [0, 3]);
});

Deno.test("a place with its pass is said in words", () => {
  const say = (/** @type {string} */ word, /** @type {string[]} */ ...parts) => [word, ...parts].join(" ");
  deepEqual(["5", "5.2&", "5.2&x3"].map((place) => placeWords(place, say)), ["5", "5.2&", "timeOf 5.2& 3"]);
});
