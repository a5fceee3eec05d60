// The text of a line: what is replaced in it, stretches that go along with it, and how its words are told apart.
import { deepEqual, equal } from "node:assert/strict";
import { StringStream } from "@codemirror/language";
import { ChangeSet } from "@codemirror/state";
import { difference } from "../../../main/browser/desk/line/difference.js";
import { lineText } from "../../../main/browser/desk/line/language.js";
import { Stretch } from "../../../main/browser/desk/line/stretch.js";
import { LineText } from "../../../main/browser/desk/line/text.js";
import { Written } from "../../../main/browser/desk/line/written.js";
import { having, nothing, thing } from "./stand-ins.js";

const LENGTH = 20;

/** Where a stretch from 5 to 8 of a text of 20 characters is after changes, one after the other. */
function after(...changes) {
  const stretch = new Stretch(5, 8);
  for (const { from, to = from, insert = "" } of changes) stretch.follow([{ from, to, text: insert }]);
  return stretch.place;
}

Deno.test("only what differs is replaced", () => {
  const cases = [
    ["E5", "E7", { from: 1, to: 2, text: "7" }],
    ["E5", "E5", { from: 2, to: 2, text: "" }],
    ["", "A7", { from: 0, to: 0, text: "A7" }],
    ["aa", "a", { from: 1, to: 2, text: "" }],
    ["a", "aaa", { from: 1, to: 1, text: "aa" }],
    ["E5, A5", "E5, D5, A5", { from: 4, to: 4, text: "D5, " }],
  ];
  for (const [old, text, expected] of cases) {
    const found = difference(old, text);
    deepEqual(found, expected, `${old} to ${text}`);
    equal(old.slice(0, found.from) + found.text + old.slice(found.to), text);
  }
});

Deno.test("a stretch goes along with what is written before it, in it and at its edges", () => {
  deepEqual(after({ from: 0, insert: "two" }), { from: 8, to: 11 });
  deepEqual(after({ from: 12, insert: "two" }), { from: 5, to: 8 });
  deepEqual(after({ from: 6, insert: "xy" }), { from: 5, to: 10 });
  deepEqual(after({ from: 5, insert: "x" }), { from: 5, to: 9 });
  deepEqual(after({ from: 8, insert: "x" }), { from: 5, to: 9 });
  deepEqual(after({ from: 3, to: 6 }), { from: 3, to: 5 });
});

Deno.test("a stretch that was emptied is still there, one that went along with more is gone", () => {
  deepEqual(after({ from: 5, to: 8 }), { from: 5, to: 5 });
  deepEqual(after({ from: 5, to: 8 }, { from: 5, insert: "A7" }), { from: 5, to: 7 });
  equal(after({ from: 4, to: 8, insert: "A7" }), null);
  equal(after({ from: 5, to: 9 }), null);
  equal(after({ from: 0, to: LENGTH, insert: "another text" }), null);
});

/** As the editor component itself maps places through changes. */
Deno.test("a stretch follows several changes at once as the editor does", () => {
  const many = [{ from: 1, to: 3, insert: "x" }, { from: 5, insert: "ab" }, { from: 7, to: 8 }, {
    from: 8,
    insert: "!",
  }];
  const changes = ChangeSet.of(many, LENGTH);
  const stretch = new Stretch(5, 8);
  stretch.follow(many.map(({ from, to = from, insert = "" }) => ({ from, to, text: insert })));
  deepEqual(stretch.place, { from: changes.mapPos(5, -1), to: changes.mapPos(8, 1) });
  deepEqual(stretch.place, { from: 4, to: 9 });
});

/** A plain field with a text, where the editor is of this script. */
async function plain(script, look) {
  const area = thing({
    value: "1 E5+A12, D7",
    selectionStart: 0,
    selectionEnd: 0,
    setSelectionRange: (from, to) => Object.assign(area, { selectionStart: from, selectionEnd: to }),
    focus: () => area.focused = true,
  });
  const said = [];
  const wishes = {
    memory: "a line",
    changed: () => {},
    entered: () => {},
    editor: `data:text/javascript,${encodeURIComponent(script)}`,
  };
  const console = { ...globalThis.console, warn: (problem) => said.push(problem.message) };
  await having({ ...nothing(), console }, () => look(new LineText(area, wishes), area, said));
}

/** How an editor is made that cannot stand in the place of a field the first time, and the text that it would undo to. */
const secondTime = (text) => `
  let made = 0;
  export class LineEditor {
    constructor(area, { changed }) {
      if (!made++) throw new Error("no room");
      this.undo = () => changed([{ from: 0, to: area.value.length, text: "${text}" }]);
    }
    show() {}
  }`;

Deno.test("stretches are replaced together whatever their order, also where something is put in at the start of one", () =>
  plain("", (text, area) => {
    const after = text.follow(10, 12);
    text.apply([{ from: 5, to: 8, text: "A7" }, { from: 2, to: 4, text: "E10" }, { from: 2, to: 2, text: "(" }]);
    equal(text.value(), "1 (E10+A7, D7");
    equal(area.value, text.value());
    equal(text.read(after), "D7");
  }));

Deno.test("where the editor cannot be had, a place is selected in the plain field", () =>
  plain("throw new Error('not to be had');", async (text, area, said) => {
    await text.select(5, 8);
    deepEqual([area.focused, area.selectionStart, area.selectionEnd], [true, 5, 8]);
    await text.undo();
    await text.redo();
    equal(text.value(), area.value);
    deepEqual(new Set(said), new Set(["not to be had"]));
  }));

Deno.test("where the editor cannot be had, what was written is undone in the plain field", () =>
  plain("throw new Error('not to be had');", async (text, area) => {
    const first = text.value();
    text.apply([{ from: 2, to: 4, text: "E10" }]);
    text.apply([{ from: 0, to: 1, text: "4" }]);
    await text.undo();
    equal(area.value, "1 E10+A12, D7");
    equal(text.value(), area.value);
    deepEqual([area.selectionStart, area.selectionEnd], [1, 1]);
    await text.undo();
    await text.undo(); // there is no more of it
    equal(area.value, first);
    await text.redo();
    equal(area.value, "1 E10+A12, D7");
    text.apply([{ from: 0, to: 1, text: "2" }]);
    await text.redo(); // something else was written since
    equal(area.value, "2 E10+A12, D7");
  }));

Deno.test("what is typed in one go is one step", () => {
  const typed = (from, text, at, alone = false) => ({ splices: [{ from, to: from, text }], at, alone });
  const written = new Written("", [typed(0, "E", 0), typed(1, "5", 400), typed(2, ",", 2_000)]);
  written.note(typed(3, " A5", 2_100, true));
  equal(written.text(), "E5, A5");
  const steps = [];
  while (written.undo()) steps.push(written.text());
  deepEqual(steps, ["E5,", "E5", ""]);
  while (written.redo());
  equal(written.text(), "E5, A5");
});

Deno.test("an editor that cannot stand in the place of the field is asked for again", () =>
  plain(secondTime("1 E5"), async (text, area, said) => {
    await text.select(2, 4);
    deepEqual([area.focused, area.selectionStart, area.selectionEnd], [true, 2, 4]);
    await text.undo();
    equal(text.value(), "1 E5");
    deepEqual(said, ["no room"]);
  }));

/** The kinds of the words of a line of text, each beside what it is made of; the rest is left out. */
function kinds(line) {
  const stream = new StringStream(line, 8, 2);
  const state = lineText.startState(2);
  const found = [];
  while (!stream.eol()) {
    stream.start = stream.pos;
    const kind = lineText.token(stream, state);
    if (kind) found.push([line.slice(stream.start, stream.pos), kind]);
  }
  return found;
}

Deno.test("words of a line are told apart", () => {
  deepEqual(kinds("# the groove"), [["# the groove", "comment"]]);
  deepEqual(kinds("tempo   96"), [["tempo", "keyword"]]);
  deepEqual(kinds("bar 1 over F#m7   # slowly"), [["bar 1 over F#m7", "heading"], ["   # slowly", "comment"]]);
  deepEqual(kinds("2&  E5 slap, rest"), [["2&", "number"], ["E5", "atom"], ["slap", "propertyName"], [
    "rest",
    "modifier",
  ]]);
  deepEqual(kinds('1 2  Ax "la la"'), [["1", "number"], ["2", "number"], ["Ax", "atom"], ['"la la"', "string"]]);
});
