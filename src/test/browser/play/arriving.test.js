// Several lines on one page, of which one does not come.
import { deepEqual } from "node:assert/strict";
import { beginAll } from "../../../main/browser/play/arriving.js";

Deno.test("a line that does not come, comes late or cannot be begun holds up no other", async () => {
  const told = [];
  let letGo = () => {};
  const late = new Promise((done) => (letGo = () => done("late")));
  const coming = {
    a: Promise.reject(new TypeError("no net")),
    b: late,
    c: Promise.resolve(""),
    d: Promise.resolve("d"),
  };
  const begin = (place, manifest) => {
    if (!manifest) throw new RangeError("no manifest");
    told.push(`${place} begun`);
  };
  const all = beginAll(["a", "b", "c", "d"], (place) => coming[place], begin, (place) => told.push(`${place} away`));
  for (let turn = 0; turn < 10; turn++) await Promise.resolve();
  deepEqual(told.toSorted(), ["a away", "c away", "d begun"]);
  letGo();
  await all;
  deepEqual(told.at(-1), "b begun");
});
