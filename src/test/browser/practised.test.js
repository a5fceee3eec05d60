// What a browser remembers of practising, and what it tells an account.
import { deepEqual, equal } from "node:assert/strict";
import { join } from "../../main/browser/practised/account.js";
import { goesBefore, Marks, today } from "../../main/browser/practised/marks.js";

const mark = (day, tempo, from = "", to = "") => ({ day, tempo, from, to });

Deno.test("a later day counts, and of one day the fastest tempo", () => {
  equal(goesBefore(mark("2026-11-29", 60), undefined), true);
  equal(goesBefore(mark("2026-11-29", 60), mark("2026-11-28", 90)), true);
  equal(goesBefore(mark("2026-11-29", 60), mark("2026-11-29", 90)), false);
  equal(goesBefore(mark("2026-11-29", 91), mark("2026-11-29", 90)), true);
  equal(goesBefore(mark("2025-12-31", 91), mark("2026-01-01", 40)), false);
});

Deno.test("a day is that of the reader, in the order that sorts", () =>
  equal(today(new Date(2026, 2, 7, 23, 59)), "2026-03-07"));

Deno.test("what was practised outlasts the page, the last first, whichever script notes it", () => {
  localStorage.clear();
  const [one, other] = [new Marks(), new Marks()];
  one.note("a", "Lantern", "line", mark("2026-11-27", 60));
  other.note("b", "Quay", "exercise-1", mark("2026-11-28", 70, "3", "4.4"));
  one.note("a", "Lantern", "line", mark("2026-11-26", 99));
  one.star("c", "Tide", true);
  deepEqual(new Marks().lessons.map(([id]) => id), ["b", "a", "c"]);
  deepEqual(new Marks().last, { id: "b", title: "Quay", line: "exercise-1", mark: mark("2026-11-28", 70, "3", "4.4") });
  equal(new Marks().lessons[1][1].lines.line.tempo, 60);
  other.forget("b");
  equal(one.last?.id, "a");
  localStorage.clear();
});

Deno.test("the way on leads to what was played last, which need not have been the fastest", () => {
  localStorage.clear();
  const marks = new Marks();
  marks.note("a", "Lantern", "line", mark("2026-11-28", 140, "1", "4"), true, 1000);
  marks.note("b", "Quay", "line", mark("2026-11-28", 70), true, 2000);
  equal(marks.last?.id, "b");
  marks.note("a", "Lantern", "line", mark("2026-11-28", 60, "5", "8"), true, 3000);
  deepEqual(marks.last, { id: "a", title: "Lantern", line: "line", mark: mark("2026-11-28", 60, "5", "8") });
  deepEqual(marks.lessons.map(([id]) => id), ["a", "b"]);
  deepEqual([...marks.unsent()][0], ["mark", "a,line,2026-11-28,140,1,4"], "the fastest of the day");
  marks.replace({
    lines: [
      { lesson: "a", title: "Lantern", line: "line", ...mark("2026-11-28", 140, "1", "4") },
      { lesson: "b", title: "Quay", line: "line", ...mark("2026-11-28", 70) },
    ],
    stars: [],
  }, marks.unsent());
  equal(marks.last?.mark.from, "5", "an account knows nothing of it");
  const elsewhere = mark("2026-11-29", 90, "2", "3"); // on another device, the day after
  marks.replace({ lines: [{ lesson: "b", title: "Quay", line: "line", ...elsewhere }], stars: [] }, marks.unsent());
  deepEqual(marks.last, { id: "b", title: "Quay", line: "line", mark: elsewhere });
  localStorage.clear();
});

Deno.test("an account is told what it does not know, and its marks leave with whoever signs out", () => {
  localStorage.clear();
  const marks = new Marks();
  marks.note("a", "Lantern", "line", mark("2026-11-27", 60.4, "3.2&", "4"));
  marks.star("b", "Quay", true);
  const told = marks.unsent();
  deepEqual([...told], [["mark", "a,line,2026-11-27,60,3.2&,4"], ["star", "b"]]);
  marks.replace({
    lines: [{ lesson: "a", title: "Lantern", line: "line", ...mark("2026-11-27", 60) }],
    stars: [{ lesson: "b", title: "Quay" }],
  }, told);
  deepEqual([...marks.unsent()], []);
  marks.note("c", "Tide", "line", mark("2026-11-29", 80), true);
  marks.star("d", "Pier", true, true);
  deepEqual([...marks.unsent()].length, 2);
  marks.note("e", "Dune", "line", mark("2026-11-29", 80)); // by the next person, before they sign in
  marks.leave();
  deepEqual(marks.lessons.map(([id]) => id), ["e"]);
  localStorage.clear();
});

Deno.test("what is noted while the account answers stays, and is told next", () => {
  localStorage.clear();
  const marks = new Marks();
  marks.note("a", "Lantern", "line", mark("2026-11-28", 60));
  marks.note("b", "Quay", "line", mark("2026-11-28", 60));
  const told = marks.unsent();
  marks.note("a", "Lantern", "line", mark("2026-11-29", 70), true);
  marks.star("c", "Tide", true, true);
  const known = { lines: [{ lesson: "a", title: "Lantern", line: "line", ...mark("2026-11-28", 60) }], stars: [] };
  marks.replace(known, told);
  deepEqual([...marks.unsent()], [["mark", "a,line,2026-11-29,70,,"], ["star", "c"]]);
  marks.leave();
  deepEqual(marks.lessons, []); // b was told, and the account has it no more
  localStorage.clear();
});

Deno.test("what is no memory is none", () => {
  localStorage.setItem("groundbass.practised", '{"a": 1, "b": null, "c": {"lines": {}}}');
  deepEqual(new Marks().lessons.map(([id]) => id), ["c"]);
  localStorage.setItem("groundbass.practised", "no JSON");
  deepEqual([new Marks().lessons, new Marks().last], [[], undefined]);
  localStorage.clear();
});

Deno.test("what was noted without net waits, and leaves where the sign-in was ended elsewhere", async () => {
  localStorage.clear();
  const { fetch } = globalThis;
  const marks = new Marks();
  marks.note("a", "Lantern", "line", mark("2026-11-28", 60), true);
  try {
    globalThis.fetch = () => Promise.reject(new TypeError("no net"));
    await join(marks, true);
    deepEqual([...marks.unsent()].length, 1);
    globalThis.fetch = () => Promise.resolve(new Response(null, { status: 401 })); // RFC 9110 section 15.5.2
    await join(marks, true);
  } finally {
    globalThis.fetch = fetch;
  }
  deepEqual(marks.lessons, []);
});

/** What an account answers: these lessons, each with a line, of which some are favourites. */
const known = (ids, stars = []) => ({
  lines: ids.map((lesson) => ({ lesson, title: lesson, line: "line", ...mark("2026-11-27", 60) })),
  stars: stars.map((lesson) => ({ lesson, title: lesson })),
});

const idsOf = (marks) => marks.lessons.map(([id]) => id);

Deno.test("what is forgotten and what is liked no more is told until the account has heard it", async () => {
  localStorage.clear();
  const { fetch } = globalThis;
  const marks = new Marks();
  marks.replace(known(["a", "b"], ["a", "b"]), new URLSearchParams());
  marks.forget("a", true);
  marks.star("b", "b", false, true);
  deepEqual([...marks.unsent()].toSorted(), [["forget", "a"], ["unstar", "b"]]);
  try {
    globalThis.fetch = () => Promise.reject(new TypeError("no net"));
    await join(marks, true);
    deepEqual([idsOf(marks), marks.isStar("b")], [["b"], false]);
    // asked before, answered after: it does not know yet
    marks.replace(known(["a", "b"], ["a", "b"]), new URLSearchParams());
    deepEqual([idsOf(marks), marks.isStar("b"), [...marks.unsent()].length], [["b"], false, 2]);
    let told = "";
    globalThis.fetch = (_, ask) => {
      told = String(ask?.body);
      return Promise.resolve(Response.json(known(["b"])));
    };
    await join(marks, true);
    deepEqual(new URLSearchParams(told).get("forget"), "a");
    deepEqual([idsOf(marks), marks.isStar("b"), [...marks.unsent()]], [["b"], false, []]);
  } finally {
    globalThis.fetch = fetch;
  }
  localStorage.clear();
});

Deno.test("what is practised again after it was forgotten is told once that is", () => {
  localStorage.clear();
  const marks = new Marks();
  marks.replace(known(["a"]), new URLSearchParams());
  marks.forget("a", true);
  marks.note("a", "a", "line", mark("2026-11-28", 50), true);
  const told = marks.unsent();
  deepEqual([...told], [["forget", "a"]]);
  marks.replace(known([]), told);
  deepEqual([...marks.unsent()], [["mark", "a,line,2026-11-28,50,,"]]);
  localStorage.clear();
});

Deno.test("what one had forgotten is no matter of who sits here next, and nobody's without an account", () => {
  localStorage.clear();
  const marks = new Marks();
  marks.replace(known(["a", "b"], ["b"]), new URLSearchParams());
  marks.forget("a", true);
  marks.star("b", "b", false, true);
  marks.leave();
  deepEqual([[...marks.unsent()], idsOf(marks)], [[], []]);
  marks.note("c", "c", "line", mark("2026-11-28", 50));
  marks.forget("c");
  deepEqual([...marks.unsent()], []);
  equal(localStorage.getItem("groundbass.practised"), "{}");
  localStorage.clear();
});
