// Which part of a neck is shown, and where a finger stands on it.
import { deepEqual, equal, ok } from "node:assert/strict";
import { Frets } from "../../../main/browser/play/frets.js";

const strings = ["G", "D", "A", "E"];
const on = (...frets) => new Frets(strings, frets.map((fret) => ({ fret })));

Deno.test("a line near the nut is shown from the nut", () => {
  const { first, last } = on("0", "3", "x", "5");
  deepEqual([first, last], [0, 5]);
});

Deno.test("a line up the neck is shown from a fret before it", () => {
  const { first, last } = on("7", "12", "0");
  deepEqual([first, last], [5, 12]);
});

Deno.test("open and damped strings alone have a neck as well", () => {
  const { first, last } = on("0", "x");
  deepEqual([first, last], [0, 5]);
});

Deno.test("a finger stands behind its wire, and an open string before the first", () => {
  const frets = on("3", "0");
  ok(frets.finger("3") < frets.wire(3) && frets.finger("3") > frets.wire(2));
  ok(frets.finger("0") < frets.wire(0) && frets.finger("0") > 0);
  equal(frets.finger("x"), frets.finger("0"));
});

Deno.test("the highest string lies on top, as in tablature", () => {
  ok(on("3").string(1) < on("3").string(4));
});

Deno.test("each of five and of six strings has its height, above the numbers of the frets", () => {
  for (const names of [["G", "D", "A", "E", "B"], ["C", "G", "D", "A", "E", "B"]]) {
    const frets = new Frets(names, [{ fret: "3" }]);
    const heights = names.map((_, i) => frets.string(i + 1));
    deepEqual(heights, heights.toSorted((one, other) => one - other));
    equal(new Set(heights).size, names.length);
    ok(frets.string(names.length) < frets.height - 6);
  }
});

Deno.test("dots are those of the frets that are shown", () => {
  deepEqual(on("2", "8").dots, [3, 5, 7]);
});

Deno.test("the twelfth and the twenty-fourth fret have two dots, between the outer strings of four", () => {
  const frets = on("12", "24");
  const between = (string) => (frets.string(string) + frets.string(string + 1)) / 2;
  for (const fret of [12, 24]) deepEqual(frets.dotsOf(fret), [between(1), between(3)]);
  deepEqual(frets.dotsOf(7), [between(2)]);
});

Deno.test("a name stands before the finger of its open string", () => {
  const frets = on("0");
  ok(frets.names > 0 && frets.names < frets.finger("0"));
});
