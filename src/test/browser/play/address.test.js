// A place to practise in a page's address.
import { deepEqual, equal } from "node:assert/strict";
import { asked, query } from "../../../main/browser/play/address.js";

/** A line of 80 beats a minute. */
const score = { bpm: (percent) => 0.8 * percent };

Deno.test("an address leads to a passage at a tempo, in beats a minute", () => {
  deepEqual(asked("?from=3.1&to=4.4&tempo=60", "mainLine", true, score), { from: "3.1", to: "4.4", percent: 75 });
});

Deno.test("a line that an address does not name is left as it is", () => {
  equal(asked("?sign=1", "mainLine", true, score), null);
  equal(asked("?from=3&line=exercise", "mainLine", true, score), null);
  equal(asked("?from=3", "exercise", false, score), null);
});

Deno.test("a tempo that is none is not asked for", () => {
  for (const tempo of ["0", "-5", "fast", ""]) equal(asked(`?tempo=${tempo}`, "a", true, score).percent, null);
});

Deno.test("what else stands in an address stays, and a place can be read back", () => {
  const found = query("?a=1&from=9", "exercise", false, { range: ["2", "2.3&"], tempo: 71.04 });
  equal(new URLSearchParams(found).get("a"), "1");
  deepEqual(asked(`?${found}`, "exercise", false, score), { from: "2", to: "2.3&", percent: 71 / 0.8 });
  equal(query("?from=1&to=2&tempo=3", "mainLine", true, { range: null, tempo: null }), "");
});
