// What a change of the tempo keeps of the place. The times and rounds that are expected are added up by hand.
import { deepEqual } from "node:assert/strict";
import { engineOf, source } from "./still.js";

const LADDER = { percentIn: () => 100, restBefore: (round) => (round ? 20 : 0) };

const engine = (settings) => engineOf(source, { ladder: LADDER, ...settings });

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
