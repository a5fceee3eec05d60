// What may follow at a spot of line text.
import { deepEqual, equal, ok } from "node:assert/strict";
import { complete, countAt, quarters } from "../../../main/browser/desk/line/words.js";

const words = {
  lines: ["title", "tempo", "key", "bar"],
  events: ["rest", "slap", "slide", "short"],
  chords: ["", "m", "m7", "maj7"],
  modes: ["major", "minor", "dorian"],
  techniques: ["finger", "pick"],
  feels: ["straight", "swing"],
  shifts: ["one string higher", "one string lower", "one fret up", "two frets up"],
};
const strings = ["E", "A", "D", "G"];
const at = (typed) => complete(typed, words, strings);

Deno.test("counts are quarters of a beat, and back", () => {
  deepEqual(["1", "1e", "2&", "4a"].map(quarters), [0, 1, 6, 15]);
  deepEqual([0, 1, 6, 15].map(countAt), ["1", "1e", "2&", "4a"]);
  ok(Number.isNaN(quarters("&")));
});

Deno.test("a line begins with a setting or a bar", () => {
  deepEqual(at("t"), { from: 0, list: ["title", "tempo"] });
});

Deno.test("an event begins with a string, and goes on with what is done to it", () => {
  deepEqual(at("1   "), { from: 4, list: ["E", "A", "D", "G", "rest", "hold"] });
  deepEqual(at("1   E5 sl"), { from: 7, list: ["slap", "slide"] });
  deepEqual(at("2&  E5 slap, r"), { from: 13, list: ["rest"] });
});

Deno.test("a chord follows its root, and a mode its key", () => {
  deepEqual(at("bar 1 over Am"), { from: 11, list: ["Am7", "Amaj7"] });
  deepEqual(at("key  A d"), { from: 7, list: ["dorian"] });
  deepEqual(at("style  p"), { from: 7, list: ["pick"] });
});

Deno.test("a bar is taken over from another, moved by strings and by frets", () => {
  deepEqual(at("bar 5 as b"), { from: 9, list: ["bar"] });
  deepEqual(at("bar 5 = bar 1").list, []);
  deepEqual(at("bar 5 as bar 1, one s"), { from: 16, list: ["one string higher", "one string lower"] });
  deepEqual(at("bar 5 as bar 1 counts 3-4, t"), { from: 27, list: ["two frets up"] });
  deepEqual(at("bar 5 as bar 1, one string higher, "), { from: 35, list: ["one fret up", "two frets up"] });
  deepEqual(at("bar 5 = bar 1 over Am"), { from: 19, list: ["Am7", "Amaj7"] });
});

Deno.test("what is complete as it is typed is not offered", () => {
  for (const typed of ["tempo", "1   E5 slap", "1   rest", "bar 1 over Am7", "key  A minor", "style  finger"]) {
    const { from, list } = at(typed);
    ok(!list.includes(typed.slice(from)), typed);
  }
  equal(at("title  Lantern").list.length, 0);
});
