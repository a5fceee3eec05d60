// Keys that speak of bars: which bar they mean, and what they leave to the browser.
import { deepEqual, equal } from "node:assert/strict";
import { Passage } from "../../../main/browser/desk/line/passage.js";
import { having, keyOn, nothing, thing } from "./stand-ins.js";

const KEPT = "groundbass-bars";
const COMMAND = { ctrlKey: true };
const ALT = { altKey: true };

/** A line of seven bars that notes what is asked of it and what it says. */
function desk() {
  const made = {
    asked: [],
    told: [],
    say: (word, ...values) => [word, ...values].join(" "),
    words: { techniques: ["finger", "slap"] },
    live: { bars: [1, 2, 3, 4, 5, 6, 7].map((number) => ({ number })) },
    text: { value: () => "the text" },
    markPassage: () => {},
    openBar: () => {},
    takeInHand: (bar) => made.passage.begin(bar),
    tell: (word) => made.told.push(word),
    edit: (change) => {
      made.asked.push(change);
      return Promise.resolve(false);
    },
  };
  made.passage = new Passage(made);
  made.press = (key, held, bar) => made.passage.key(keyOn(thing(), key, held), bar);
  return made;
}

/** With an empty store and nothing marked, unless it is said otherwise. */
function bars(name, work, values = {}) {
  Deno.test(name, () =>
    having({ ...nothing(), ...values }, () => {
      localStorage.clear();
      return work(desk());
    }));
}

bars("a key means the bar on which it is pressed", (line) => {
  line.passage.begin(5);
  equal(line.press("a", ALT, 2), true);
  equal(line.press("ArrowUp", ALT, 3), true);
  deepEqual(line.asked, [
    { edit: "repeat", bar: 2, last: 2 },
    { edit: "move", bar: 3, last: 3, strings: 0, frets: 1 },
  ]);
});

bars("bars behind the one in hand belong to it until another one is", (line) => {
  line.press("ArrowRight", { shiftKey: true }, 2);
  line.press("ArrowRight", { shiftKey: true }, 2);
  deepEqual([2, 3, 4, 5].map((bar) => line.passage.has(bar)), [true, true, true, false]);
  line.press("c", COMMAND, 2);
  deepEqual(JSON.parse(localStorage.getItem(KEPT)), { source: "the text", bar: 2, last: 4 });
  line.press("v", COMMAND, 6);
  deepEqual(line.asked, [{ edit: "paste", after: 6, source: "the text", bar: 2, last: 4 }]);
});

bars("bars that were brought once more are what is brought next", async (line) => {
  line.edit = (change) => {
    line.asked.push(change);
    return Promise.resolve(true);
  };
  line.openBar = (bar) => line.passage.begin(bar);
  line.press("ArrowRight", { shiftKey: true }, 1);
  await line.passage.again();
  await line.passage.again();
  deepEqual(line.asked, [{ edit: "repeat", bar: 1, last: 2 }, { edit: "repeat", bar: 3, last: 4 }]);
});

bars("any other key means no bar", (line) => {
  line.passage.begin(5);
  equal(line.press("x", {}, 2), false);
  equal(line.passage.bars().first, 5);
});

bars("marked words are copied by the browser", (line) => {
  equal(line.press("c", COMMAND, 2), false);
  equal(localStorage.getItem(KEPT), null);
  equal(line.press("c", ALT, 2), true, "a key of the desk's own");
}, { getSelection: () => ({ isCollapsed: false }) });

bars("what was kept and cannot be read is told", (line) => {
  line.press("v", COMMAND, 2);
  localStorage.setItem(KEPT, "no JSON");
  line.press("v", COMMAND, 2);
  deepEqual(line.told, ["nothingCopied", "cannot"]);
});

bars("a store that is shut is told", (line) => {
  line.press("c", COMMAND, 2);
  line.press("v", COMMAND, 2);
  deepEqual(line.told, ["cannot", "cannot"]);
}, {
  localStorage: {
    clear: () => {},
    getItem: () => {
      throw new Error("shut");
    },
    setItem: () => {
      throw new Error("shut");
    },
  },
});
