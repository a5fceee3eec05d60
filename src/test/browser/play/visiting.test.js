// A step of the walkthrough that is opened and closed again.
import { deepEqual } from "node:assert/strict";
import { Practice } from "../../../main/browser/play/practice.js";
import { Visiting } from "../../../main/browser/play/visiting.js";
import { bars } from "./bars.js";

Object.assign(globalThis, { document: new EventTarget() });

/** A step that tells of all of a bar. */
const step = (bar) => ({ bar, at: 0, toBar: bar, to: 1 });

function visited() {
  const kept = new Map();
  const settings = Object.assign(new EventTarget(), {
    get: (name) => kept.get(name) ?? "",
    set: (name, value) => void kept.set(name, value),
  });
  const practice = new Practice({
    source: { score: { bars, sections: [] } },
    sheet: { shade() {}, light() {} },
    settings,
  });
  return { practice, visiting: new Visiting(practice) };
}

Deno.test("a step that is closed gives back what was repeated, however many were opened", () => {
  const { practice, visiting } = visited();
  practice.setRange("1.2", "2");
  visiting.go(step(2));
  visiting.go(step(1));
  visiting.back();
  deepEqual(practice.range, ["1.2", "2"]);
});

Deno.test("what is chosen while a step is open stays when it is closed", () => {
  const { practice, visiting } = visited();
  visiting.go(step(2));
  practice.setRange("1.3", "1.4");
  visiting.back();
  deepEqual(practice.range, ["1.3", "1.4"]);
});

Deno.test("what is chosen while a step is open is what the next one gives back", () => {
  const { practice, visiting } = visited();
  visiting.go(step(2));
  practice.setRange("1.3", "1.4");
  visiting.go(step(2));
  visiting.back();
  deepEqual(practice.range, ["1.3", "1.4"]);
});

Deno.test("after another source nothing is gone back to: it has other bars", () => {
  const { practice, visiting } = visited();
  visiting.go(step(2));
  practice.use({ score: { bars: bars.slice(0, 2), sections: [] } });
  visiting.back();
  deepEqual(practice.engine.range.last, 1);
});
