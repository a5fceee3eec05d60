// Two texts of one field beside the text that both began from.
import { deepEqual } from "node:assert/strict";
import { stretches } from "../../../main/browser/desk/draft/merge.js";

const base = "a\nb\nc\nd";

Deno.test("texts that agree are one stretch", () => {
  deepEqual(stretches(base, base, base), [{ same: ["a", "b", "c", "d"] }]);
});

Deno.test("the side that changed a line is offered first", () => {
  const mine = stretches("a\nB\nc\nd", base, base);
  deepEqual(mine, [{ same: ["a"] }, { mine: ["B"], theirs: ["b"], first: "mine" }, { same: ["c", "d"] }]);
  const theirs = stretches(base, "a\nb\nc\nD\ne", base);
  deepEqual(theirs, [{ same: ["a", "b", "c"] }, { mine: ["d"], theirs: ["D", "e"], first: "theirs" }]);
});

Deno.test("mine is offered first where both changed a line, or nobody knows what they began from", () => {
  deepEqual(stretches("a\nB\nc\nd", "a\nX\nc\nd", base)[1], { mine: ["B"], theirs: ["X"], first: "mine" });
  deepEqual(stretches(base, "a\nX\nc\nd", undefined)[1], { mine: ["b"], theirs: ["X"], first: "mine" });
});

Deno.test("nothing that either side wrote is left out", () => {
  const texts = ["a\nb\nc", "", "a\n\nb", "c\nb\na", "b\nb\nb", "a\nx\nb\ny\nc"];
  for (const mine of texts) {
    for (const theirs of texts) {
      const found = stretches(mine, theirs, base);
      deepEqual(found.flatMap((part) => part.same ?? part.mine).join("\n"), mine);
      deepEqual(found.flatMap((part) => part.same ?? part.theirs).join("\n"), theirs);
    }
  }
});
