// When one is reminded to rest.
import { equal } from "node:assert/strict";
import { Rest } from "../../../main/browser/play/rest.js";

Deno.test("one is reminded by what was played, and again after as much", () => {
  const rest = new Rest(60);
  equal(rest.due(0, true), false);
  equal(rest.due(59, true), false);
  equal(rest.due(60, false), false); // the last second passed in silence
  equal(rest.due(600, false), false);
  equal(rest.due(601, true), false);
  equal(rest.due(602, true), true);
  equal(rest.due(603, true), false);
});
