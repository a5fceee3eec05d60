// Which steps of the walkthrough tell of notes, and which of them of what sounds.
import { deepEqual, equal } from "node:assert/strict";
import { stepsOf, tells } from "../../../main/browser/play/told.js";

/** A stand-in for an element of the page: what is told, of which stretch. */
function told(text, from, to) {
  const isWhole = from.endsWith(":0") && to.endsWith(":0");
  return { text, dataset: { from, to }, classList: { contains: () => isWhole } };
}

function textsOf(...steps) {
  const list = /** @type {any} */ ({ querySelectorAll: () => steps });
  return stepsOf(list).map(({ step }) => /** @type {any} */ (step).text);
}

Deno.test("what is said of a bar beside its notes has none of its own", () => {
  const said = [
    told("Section begins", "1:0", "2:0"),
    told("Beat 1", "1:0", "1:1/4"),
    told("Beat 2", "1:1/4", "2:0"),
    told("The repeat ends", "1:0", "2:0"),
    told("Section begins", "2:0", "3:0"),
    told("As bar 1", "2:0", "3:0"),
    told("A whole note", "3:0", "4:0"),
  ];
  deepEqual(textsOf(...said), ["Beat 1", "Beat 2", "As bar 1", "A whole note"]);
});

Deno.test("two voices that begin at one moment are both told of", () => {
  deepEqual(textsOf(told("Above", "1:0", "1:1/4"), told("Below", "1:0", "1:1/2")), ["Above", "Below"]);
});

const half = { bar: 2, at: 0.5, toBar: 2, to: 0.75 };
const whole = { bar: 2, at: 0, toBar: 3, to: 0 };

for (
  const [step, bar, at, expected] of /** @type {const} */ ([
    [half, 2, 0.5, true],
    [half, 2, 0.625, true],
    [half, 2, 0.75, false],
    [half, 2, 0.25, false],
    [half, 3, 0.5, false],
    [whole, 2, 0.75, true],
    [whole, 3, 0, false],
    [whole, 1, 0.75, false],
  ])
) {
  Deno.test(`a step begins where it says and ends before its end: ${bar}:${at} of ${step.at}`, () => {
    equal(tells(step, { bar, at }), expected);
  });
}
