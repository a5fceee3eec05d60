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

Deno.test("two windows of one lesson leave each other's settings and passages", () => {
  localStorage.clear();
  const window = () => new LineSettings(new Settings(), "/series/a/1#line-practice", [70, 100]);
  const [older, newer] = [window(), window()];
  newer.set("passages", [{ from: "3", to: "4.4", percent: 60 }]);
  newer.set("volume", 0.3);
  older.set("percent", 100);
  older.set("countIn", false);
  const next = window();
  deepEqual(next.passages, [{ from: "3", to: "4.4", percent: 60 }]);
  deepEqual(["volume", "percent", "countIn"].map((name) => next.get(name)), [0.3, 100, false]);
  localStorage.clear();
});

Deno.test("passages that are marked in two windows are kept beside each other", () => {
  localStorage.clear();
  const window = () => new LineSettings(new Settings(), "/series/a/1#line-practice", [70, 100]);
  const [older, newer] = [window(), window()];
  const [one, other] = [{ from: "3", to: "4", percent: 60 }, { from: "5", to: "6", percent: 70 }];
  newer.set("passages", [...newer.passages, one]);
  older.set("passages", [...older.passages, other]);
  deepEqual(window().passages, [one, other]);
  localStorage.clear();
});
