// The tempo trainer, and what is counted between two rounds. Expected tempos are added up by hand.
import { deepEqual, equal } from "node:assert/strict";
import { Rounds, wholeLine } from "../../../main/browser/play/loop.js";
import { Trainer, typedIn } from "../../../main/browser/play/trainer.js";
import { bars } from "./bars.js";

const tempos = (plan, rounds) => Array.from({ length: rounds }, (_, i) => new Trainer(plan).tempoIn(i));

Deno.test("the tempo goes up or down by its step after so many rounds, and stays at the end", () => {
  const up = { from: 60, to: 72, step: 5, rounds: 2, rest: 0 };
  deepEqual(tempos(up, 8), [60, 60, 65, 65, 70, 70, 72, 72]);
  deepEqual(tempos({ ...up, from: 72, to: 60, rounds: 1 }, 4), [72, 67, 62, 60]);
  deepEqual(tempos({ ...up, to: 60 }, 3), [60, 60, 60]);
});

Deno.test("one rests where the tempo changes, and nowhere else", () => {
  const trainer = new Trainer({ from: 60, to: 70, step: 10, rounds: 2, rest: 20 });
  deepEqual([0, 1, 2, 3, 4, 5, 6].map((round) => trainer.restBefore(round)), [0, 0, 20, 0, 0, 0, 0]);
});

Deno.test("a field of the trainer takes whole numbers within its bounds", () => {
  deepEqual(["12.6", "0", "99", " 7 "].map((text) => typedIn("every", text)), [13, 1, 32, 7]);
  deepEqual(["", " ", "fast"].map((text) => typedIn("rest", text)), [null, null, null]);
  equal(typedIn("climbTo", "999", [36, 180]), 180);
});

Deno.test("a round that is counted in says so at its first step, but not the very first", () => {
  const range = wholeLine(bars);
  const told = (rounds) => [0, 1, 2, 3, 4].map((n) => rounds.step(n).before);
  deepEqual(told(new Rounds({ range, percent: 80 })), [null, null, null, null, null]);
  deepEqual(told(new Rounds({ range, percent: 80, counted: true })), [null, null, null, { rest: 0 }, null]);
  const ladder = { percentIn: () => 80, restBefore: (round) => (round === 1 ? 9 : 0) };
  deepEqual(told(new Rounds({ range, percent: 80, ladder })), [null, null, null, { rest: 9 }, null]);
});

Deno.test("what is begun again in a later round goes on from it", () => {
  const rounds = new Rounds({ range: wholeLine(bars), start: { index: 2, at: 0, round: 3 }, percent: 80 });
  deepEqual([0, 1].map((n) => rounds.step(n).round), [3, 4]);
});
