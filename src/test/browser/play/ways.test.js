// Which step of the walkthrough tells of what sounds.
import { equal } from "node:assert/strict";
import { tells } from "../../../main/browser/play/loop.js";

const half = { from: { bar: 2, at: 0.5 }, to: { bar: 2, at: 0.75 } };
const whole = { from: { bar: 2, at: 0 }, to: { bar: 3, at: 0 } };

for (
  const [step, bar, at, told] of [
    [half, 2, 0.5, true],
    [half, 2, 0.625, true],
    [half, 2, 0.75, false],
    [half, 2, 0.25, false],
    [half, 3, 0.5, false],
    [whole, 2, 0.75, true],
    [whole, 3, 0, false],
    [whole, 1, 0.75, false],
  ]
) {
  Deno.test(`a step begins where it says and ends before its end: ${bar}:${at} of ${step.from.at}`, () => {
    equal(tells(step, { bar, at }), told);
  });
}
