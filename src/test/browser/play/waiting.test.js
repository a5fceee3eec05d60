// What plays while sound is late, as on a slow line. The clock stands where the test puts it, and it is looked at when the
// test says so.
import { deepEqual, equal } from "node:assert/strict";
import { having } from "../desk/stand-ins.js";
import { engineOf, source } from "./still.js";

/** Sound that comes when it is let through: what is asked for is named by `nameOf`. */
class SlowLine {
  here = new Set();
  /** @type {{names: string[], done: () => void, failed: (problem: Error) => void}[]} */
  held = [];

  constructor(nameOf = ({ index }) => String(index)) {
    this.source = {
      ...source,
      ready: (step) => this.here.has(nameOf(step)) ? [] : null,
      load: (steps) => this.#load(steps.map(nameOf)),
    };
  }

  #load(names) {
    if (names.every((name) => this.here.has(name))) return Promise.resolve();
    return new Promise((done, failed) => this.held.push({ names, done: () => done(undefined), failed }));
  }

  /** These have come, and so whoever waits for nothing else goes on. */
  async arrive(...names) {
    for (const name of names) this.here.add(name);
    this.#settle(({ done }) => done());
    await turns();
  }

  async fail() {
    const problem = new Error("the line is down");
    for (const { failed } of this.held.splice(0)) failed(problem);
    await turns();
  }

  #settle(task) {
    const isHere = ({ names }) => names.every((name) => this.here.has(name));
    this.held.filter(isHere).forEach(task);
    this.held = this.held.filter((one) => !isHere(one));
  }
}

async function turns() {
  for (let turn = 0; turn < 50; turn++) await Promise.resolve();
}

/** Without a timer of its own: `tick()` is what it would do next. */
async function looked(work) {
  let look = () => {};
  const names = { setInterval: (task) => (look = task, 1), clearInterval: () => (look = () => {}) };
  await having(names, () =>
    work(async () => {
      look();
      await turns();
    }));
}

/** Moves the clock on. */
function later({ context }, seconds) {
  context.currentTime += seconds;
}

const laid = (clock) => clock.laid.map(({ step }) => step.index);

const atTempo = ({ index, percent }) => `${index} at ${percent}`;

/** Plays the first bar at 80 %, whose neighbour is on its way. */
async function begun(line, wishes = {}) {
  const made = engineOf(line.source, Object.assign(wishes, { percent: 80 }));
  const playing = made.play();
  await line.arrive("0 at 80");
  await playing;
  later(made, 0.3);
  return made;
}

Deno.test("a tempo that is chosen while a bar is late is what plays when sound comes", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const wishes = { percent: 80 };
    const made = await begun(line, wishes);
    wishes.percent = 75;
    made.change();
    later(made, 0.25); // the bar has ended, and no sound has come
    await tick();
    equal(made.state, "loading");
    await line.arrive("1 at 80", "0 at 75", "1 at 75");
    equal(made.state, "playing");
    equal(made.clock?.rounds.percent, 75);
    deepEqual(made.clock?.rounds.start, { index: 1, at: 0, round: 0 });
    made.stop();
  }));

Deno.test("a place that is tapped while a bar is late is gone to, also where another tempo is chosen after it", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const wishes = { percent: 80 };
    const made = await begun(line, wishes);
    made.change({ index: 0, at: 0.5 });
    wishes.percent = 75;
    made.change();
    later(made, 0.25);
    await tick();
    await line.arrive("1 at 80", "0 at 75", "1 at 75");
    deepEqual(made.clock?.rounds.start, { index: 0, at: 0.5, round: 0 });
    equal(made.clock?.rounds.percent, 75);
    made.stop();
  }));

Deno.test("a passage that is chosen while a bar is late is what plays", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const made = await begun(line);
    made.range = { first: 0, from: 0.5, last: 0, to: Infinity };
    made.change(null, true);
    later(made, 0.25);
    await tick();
    await line.arrive("1 at 80");
    deepEqual(made.clock?.rounds.range, made.range);
    deepEqual(made.clock?.rounds.start, { index: 0, at: 0.5, round: 0 });
    made.stop();
  }));

Deno.test("what was asked for before a stop is forgotten", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const made = await begun(line);
    made.change({ index: 0, at: 0.5 });
    made.stop();
    await made.play();
    later(made, 0.56);
    await tick();
    await line.arrive("1 at 80");
    deepEqual(made.clock?.rounds.start, { index: 1, at: 0, round: 0 });
    made.stop();
  }));

Deno.test("a bar that was waited for sounds once, after its count", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const made = await begun(line, { countIn: true });
    later(made, 1 + 0.25); // it was counted in
    await tick();
    const before = made.clock;
    equal(made.state, "loading");
    await line.arrive("1 at 80");
    equal(made.state, "playing");
    deepEqual(laid(before), [0]);
    later(made, 1.06);
    await tick();
    deepEqual(laid(made.clock)[0], 1);
    made.stop();
  }));

Deno.test("what another tempo has asked for before does not hold up what the new one needs", () =>
  looked(async (tick) => {
    const line = new SlowLine(({ index, round, percent }) => `${index} of ${round} at ${percent}`);
    const wishes = { percent: 80 };
    const made = engineOf(line.source, wishes);
    const playing = made.play();
    await line.arrive("0 of 0 at 80");
    await playing;
    equal(line.held.length, 1); // the second bar
    wishes.percent = 75;
    made.change();
    await line.arrive("0 of 0 at 75", "1 of 0 at 75");
    equal(made.clock?.rounds.percent, 75);
    await tick();
    deepEqual(line.held.map(({ names }) => names), [["1 of 0 at 80"], ["0 of 1 at 75"]]);
    made.stop();
  }));

Deno.test("a count between rounds is let go once it is over", () =>
  looked(async (tick) => {
    const sounds = new Set();
    const node = globalThis.AudioBufferSourceNode;
    class Counting extends node {
      stop() {
        sounds.add(this);
      }
    }
    await having({ AudioBufferSourceNode: Counting }, async () => {
      const made = engineOf(source, { counted: true });
      await made.play();
      for (let second = 0; second < 60; second++) {
        later(made, 1);
        await tick();
      }
      sounds.clear();
      made.stop();
      deepEqual(sounds.size < 20, true, `${sounds.size} after a minute of two beats each two seconds`);
    });
  }));

/** What is told of trouble: where it would go on. */
function troubles(made) {
  const told = [];
  made.addEventListener("problem", () => told.push([made.state, made.resume]));
  return told;
}

Deno.test("sound that is here plays on where more of it does not come, and is asked for again", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const made = await begun(line);
    const told = troubles(made);
    await line.fail();
    equal(made.state, "playing");
    await tick();
    equal(line.held.length, 0, "not at every look");
    later(made, 0.1);
    await tick();
    await tick();
    equal(made.state, "playing");
    deepEqual(told, []);
    made.stop();
  }));

Deno.test("what did not come is asked for again after a while", () =>
  looked(async (tick) => {
    const line = new SlowLine(({ index, round }) => `${index} of ${round}`);
    const made = engineOf(line.source);
    const playing = made.play();
    await line.arrive("0 of 0");
    await playing;
    await line.arrive("1 of 0");
    await line.fail();
    later(made, 0.4);
    await tick();
    equal(line.held.length, 0);
    later(made, 0.2); // the second bar sounds until 1.06
    await tick();
    deepEqual(line.held.map(({ names }) => names), [["0 of 1"]]);
    await line.arrive("0 of 1");
    equal(made.clock?.laid.length, 3);
    made.stop();
  }));

Deno.test("where sound is due and does not come, it is told before it stops where it would go on", () =>
  looked(async (tick) => {
    const line = new SlowLine(atTempo);
    const made = await begun(line);
    const told = troubles(made);
    await line.fail();
    later(made, 0.25);
    await tick();
    await line.fail();
    deepEqual(told, [["loading", { index: 1, at: 0, round: 0 }]]);
    equal(made.state, "stopped");
  }));
