// What is lit is told when it changes, and not with every picture of the screen.
import { deepEqual } from "node:assert/strict";
import { Practice } from "../../../main/browser/play/practice.js";
import { bars } from "./bars.js";

Object.assign(globalThis, { document: new EventTarget() });

const settings = Object.assign(new EventTarget(), { get: () => "", set() {} });

/** A note of the first bar. */
const note = (at, to) => ({ bar: 1, at, toBar: 1, to });

/** What is told while, picture by picture, these events sound; and what the sheet lights. */
function watched(pictures) {
  const told = [];
  const lit = [];
  const sheet = { shade() {}, light: (events) => lit.push(events) };
  const practice = new Practice({ source: { score: { bars, sections: [] } }, sheet, settings });
  practice.addEventListener("lit", (event) => told.push(/** @type {CustomEvent} */ (event).detail));
  for (const events of pictures) {
    practice.engine.heard = () => /** @type {any} */ ({ step: {}, take: { eventsAt: () => events }, frame: 0 });
    practice.light();
  }
  return { told, lit };
}

Deno.test("what stays lit is told once", () => {
  const one = [note("0", "1/4")];
  const two = [note("1/4", "1/2"), note("1/4", "1")];
  const { told, lit } = watched([[], one, one, one, two, two, [], []]);
  deepEqual(told, [one, two, []]);
  deepEqual(lit, told);
});

Deno.test("a note of another length at the same moment is another", () => {
  const short = [note("0", "1/4")];
  const long = [note("0", "1/2")];
  deepEqual(watched([short, long]).told, [short, long]);
});

/** What Play does: `{index, at, round}` from which it goes on. */
function goesOnAt(practice) {
  let begun = null;
  practice.engine.play = (start) => (begun = start);
  practice.go();
  return begun;
}

Deno.test("what the line breaks off goes on in its bar and round", () => {
  const sheet = { shade() {}, light() {} };
  const practice = new Practice({ source: { score: { bars, sections: [] } }, sheet, settings });
  practice.engine.state = "playing";
  practice.engine.heard = () => practice.state === "playing" ? { step: { index: 1, round: 5 } } : null;
  const told = [];
  practice.addEventListener("problem", () => told.push(practice.state));
  practice.engine.dispatchEvent(new CustomEvent("problem"));
  deepEqual(told, ["stopped"]);
  deepEqual(goesOnAt(practice), { index: 1, at: 0, round: 5 });
});

/** A practice of the three bars, and what it keeps. */
function practising(kept = {}) {
  const keeping = Object.assign(new EventTarget(), {
    get: (name) => kept[name] ?? "",
    set: (name, value) => void (kept[name] = value),
  });
  const sheet = { shade() {}, light() {} };
  return { practice: new Practice({ source: { score: { bars, sections: [] } }, sheet, settings: keeping }), kept };
}

/** The first bar is played twice. */
Deno.test("a tap inside a passage of the second time begins there, and outside gives the passage up", () => {
  const { practice, kept } = practising({ from: "1x2", to: "2" });
  practice.engine.play = async () => {};
  practice.beginAt({ bar: 1, at: 0.25 });
  deepEqual(practice.range, ["1x2", "2"]);
  deepEqual(goesOnAt(practice), { index: 1, at: 0.25 });
  practice.setRange("2", "2");
  practice.beginAt({ bar: 1, at: 0.25 });
  deepEqual([practice.range, kept.from], [null, ""]);
  deepEqual(goesOnAt(practice), { index: 0, at: 0.25 });
});

Deno.test("a recording without the kept passage plays whole, and the band has the passage again", () => {
  const { practice, kept } = practising({ from: "2", to: "2" });
  practice.use({ score: { bars: bars.slice(0, 2), sections: [] } });
  deepEqual([practice.range, kept.from], [null, "2"]);
  practice.use({ score: { bars, sections: [] } });
  deepEqual(practice.range, ["2", "2"]);
});

Deno.test("a source that is chosen again has the way to the loudspeaker that it had", () => {
  const { practice } = practising();
  const { engine } = practice;
  practice.use({ score: { bars: bars.slice(0, 2), sections: [] } });
  deepEqual(practice.engine === engine, false);
  practice.use(engine.source);
  deepEqual(practice.engine === engine, true);
  const told = [];
  practice.addEventListener("problem", () => told.push("problem"));
  engine.dispatchEvent(new CustomEvent("problem"));
  deepEqual(told, ["problem"], "and is heard once");
});

/** 85 % of 42 beats a minute are 35.7, and fractions make 85.00000000000001 % of that. */
Deno.test("a tempo that is a whole percentage is one", () => {
  const kept = new Map();
  const keeping = Object.assign(new EventTarget(), { get: () => "", set: (name, value) => void kept.set(name, value) });
  const score = { bars, sections: [], bpm: (percent) => (42 * percent) / 100 };
  const practice = new Practice({ source: { score }, sheet: { shade() {}, light() {} }, settings: keeping });
  practice.setTempo((42 * 85) / 100);
  deepEqual(kept.get("percent"), 85);
  practice.setTempo(36);
  deepEqual(Math.round(kept.get("percent") * 1000), 85714);
});
