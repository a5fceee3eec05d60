// What is told of playing: how much of a line sounded, and which bars were repeated.
import { equal } from "node:assert/strict";
import { Played } from "../../../main/browser/play/sitting.js";

/** Bars 1 2 1 2 3 4 5 6: the first two are repeated, so that eight are played. */
const BARS = [1, 2, 1, 2, 3, 4, 5, 6].map((bar) => ({ bar }));
const WHOLE = { first: 0, last: 7, whole: true };

/** Hears the bars with these places one after another. @param {{first: number, last: number, whole: boolean}} range */
function hear(played, range, places, round = 0) {
  for (const index of places) played.hear({ index, round }, range, BARS);
}

Deno.test("nothing is told before a bar has sounded to its end", () => {
  const played = new Played("line");
  equal(played.news(BARS), null);
  hear(played, WHOLE, [0, 0, 0]);
  equal(played.news(BARS), null);
});

Deno.test("a bar counts once the next one sounds, and quarters are full ones", () => {
  const played = new Played("line");
  hear(played, WHOLE, [0, 1, 2]);
  equal(played.news(BARS), "line,1,"); // two of eight
  hear(played, WHOLE, [2, 3]);
  equal(played.news(BARS), null, "three of eight are the same quarter");
  hear(played, WHOLE, [3, 4, 5, 6, 7]);
  equal(played.news(BARS), "line,3,", "the last bar has not ended");
  hear(played, WHOLE, [0], 1);
  equal(played.news(BARS), "line,4,", "a round of the whole line repeats no passage");
});

Deno.test("a passage that begins again was repeated, bar by bar as the sheet numbers them", () => {
  const played = new Played("exercise-2");
  const passage = { first: 3, last: 5, whole: false };
  hear(played, passage, [3, 4, 5]);
  equal(played.news(BARS), "exercise-2,1,");
  hear(played, passage, [3], 1);
  equal(played.news(BARS), "exercise-2,1,2.3.4");
  equal(played.news(BARS), null, "nothing is told twice");
});

Deno.test("one bar that is repeated counts", () => {
  const played = new Played("line");
  const bar = { first: 4, last: 4, whole: false };
  hear(played, bar, [4]);
  hear(played, bar, [4], 1);
  equal(played.news(BARS), "line,0,3");
});

Deno.test("a place that is gone to, and a stop, end no bar", () => {
  const played = new Played("line");
  hear(played, WHOLE, [0, 6]);
  played.hear(null, WHOLE, BARS);
  hear(played, WHOLE, [7]);
  equal(played.news(BARS), null);
});
