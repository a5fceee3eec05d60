// Bars of a recording: tapped, moved, and the stretch of it that is seen.
import { deepEqual, equal } from "node:assert/strict";
import { mapOf, marksOf, nearest, placed, stumble } from "../../../main/browser/desk/bars/map.js";
import { BarStore } from "../../../main/browser/desk/bars/store.js";
import { minutes } from "../../../main/browser/common/minutes.js";
import { barAt } from "../../../main/browser/desk/bench/bars.js";
import { marked, nudged } from "../../../main/browser/desk/recording/marks.js";
import { moved, zoomed } from "../../../main/browser/desk/recording/view.js";
import { having } from "./stand-ins.js";

Deno.test("marks stand in order, and a slip of the hand makes none", () => {
  deepEqual(marked([1, 3], 2), [1, 2, 3]);
  deepEqual(marked([1, 3], 1.2), [1, 3]);
});

Deno.test("a mark is moved up to its neighbours at most", () => {
  deepEqual(nudged([1, 2, 3], 1, 5), [1, 2.75, 3]);
  deepEqual(nudged([1, 2, 3], 1, -5), [1, 1.25, 3]);
  deepEqual(nudged([1, 2, 3], 0, -5), [0, 2, 3]);
});

Deno.test("each mark begins a bar, and the last one only ends one", () => {
  deepEqual(barAt([1, 2, 4], 5, 2), { bar: 6, from: 2, to: 4 });
  equal(barAt([1, 2, 4], 5, 4), undefined);
  equal(barAt([1, 2, 4], 5, 0.9), undefined);
});

Deno.test("a map of bars is a row of moments, and back", () => {
  const map = {
    bars: [{ bar: 1, pass: 1, round: 1, seconds: 0.5 }, { bar: 2, pass: 1, round: 1, seconds: 2 }],
    end: 4,
  };
  deepEqual(marksOf(map), [0.5, 2, 4]);
  deepEqual(mapOf(map.bars, marksOf(map)), map);
  deepEqual(marksOf(mapOf([], [])), []);
});

Deno.test("a moment is put down to the millisecond, and its nearest mark is found", () => {
  deepEqual(placed([1, 2], 1, 2.00049), [1, 2]);
  deepEqual(placed([1, 2], 0, -3), [0, 2]);
  equal(nearest([1, 2, 4], 2.9), 1);
  equal(nearest([], 2.9), -1);
});

Deno.test("the first mark that runs backward or past the end is found", () => {
  equal(stumble([1, 2, 3], 4), -1);
  equal(stumble([1, 1, 3], 4), 1);
  equal(stumble([1, 2, 5], 4), 2);
});

Deno.test("a view never leaves the recording", () => {
  deepEqual(moved({ from: 0, to: 10 }, 60, 55), { from: 50, to: 60 });
  deepEqual(moved({ from: 0, to: 10 }, 60, -5), { from: 0, to: 10 });
  deepEqual(zoomed({ from: 0, to: 10 }, 60, 5, 100), { from: 0, to: 60 });
  deepEqual(zoomed({ from: 0, to: 10 }, 60, 5, 0.01), { from: 4, to: 6 });
});

Deno.test("seconds are told in minutes", () => {
  equal(minutes(65.25), "1:05.3");
  equal(minutes(0, 2), "0:00.00");
  equal(minutes(65, 0), "1:05");
  equal(minutes(59.96), "1:00.0", "rounded up to a whole minute");
});

Deno.test("a recording whose picture does not come has none, whatever came instead", async () => {
  const picture = (fetch) => having({ fetch }, () => new BarStore("/r").picture());
  equal(await picture(() => Promise.reject(new TypeError("no net"))), null);
  equal(await picture(() => Promise.resolve(new Response("", { status: 401 }))), null); // RFC 9110 section 15.5.2
  equal(await picture(() => Promise.resolve(new Response("<!DOCTYPE html>"))), null);
  deepEqual(await picture(() => Promise.resolve(Response.json({ seconds: 4 }))), { seconds: 4 });
});
