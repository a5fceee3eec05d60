// Where one is in a recording of a minute.
import { deepEqual, equal } from "node:assert/strict";
import { Position } from "../../../main/browser/desk/recording/position.js";

const MINUTE = 60;

Deno.test("nobody leaves the recording", () => {
  const place = new Position(MINUTE);
  place.seek(70);
  deepEqual([place.at, place.ended], [60, true]);
  place.seek(-3);
  deepEqual([place.at, place.ended], [0, false]);
  place.repeat(50, 80);
  deepEqual(place.loop, { from: 50, to: 60 });
});

Deno.test("a stretch is repeated from its earlier end, whichever was drawn first", () => {
  const place = new Position(MINUTE);
  place.repeat(9, 4);
  deepEqual([place.loop, place.at], [{ from: 4, to: 9 }, 4]);
});

Deno.test("what is too short to be meant repeats nothing, and leaves the place alone", () => {
  const place = new Position(MINUTE);
  place.repeat(4, 9);
  place.seek(5);
  place.repeat(8, 8.05);
  deepEqual([place.loop, place.at], [null, 5]);
});

Deno.test("going elsewhere ends the repeating, going to a place inside does not", () => {
  const place = new Position(MINUTE);
  place.repeat(4, 9);
  place.seek(8.9);
  deepEqual(place.loop, { from: 4, to: 9 });
  place.seek(9);
  equal(place.loop, null);
});

Deno.test("the picture turns over like a page when what is heard leaves it", () => {
  const place = new Position(MINUTE);
  place.seek(10);
  place.zoom(1 / 6);
  deepEqual(place.view, { from: 5, to: 15 });
  place.follow(15);
  deepEqual(place.view, { from: 5, to: 15 });
  place.follow(15.1);
  deepEqual(place.view, { from: 15.1, to: 25.1 });
});

Deno.test("a place that is not seen comes into the middle of the picture", () => {
  const place = new Position(MINUTE);
  place.zoom(1 / 6);
  place.reveal(3);
  deepEqual(place.view, { from: 0, to: 10 });
  place.reveal(30);
  deepEqual(place.view, { from: 25, to: 35 });
});
