// What a browser keeps of one line.
import { deepEqual, equal } from "node:assert/strict";
import { LineSettings, Settings } from "../../../main/browser/play/remember.js";

Deno.test("marked passages of a line outlast its page, and what is no passage is passed over", () => {
  localStorage.clear();
  const line = () => new LineSettings(new Settings(), "/series/a/1#line-practice", [70, 100]);
  deepEqual(line().passages, []);
  line().set("passages", [{ from: "3", to: "4.4", percent: 60 }]);
  deepEqual(line().passages, [{ from: "3", to: "4.4", percent: 60 }]);
  line().set("passages", [null, { from: 3, to: "4", percent: 60 }, { from: "", to: "", percent: 80 }]);
  deepEqual(line().passages, [{ from: "", to: "", percent: 80 }]);
  equal(new LineSettings(new Settings(), "/series/a/2#line-practice", [70]).passages.length, 0);
  localStorage.clear();
});
