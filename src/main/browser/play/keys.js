// The keyboard: one letter does one thing, never while somebody types, and only while the student wants it so (WCAG
// 2.2, success criterion 2.1.4).

import { targetOf } from "../common/page.js";

/** What each key does, as a name of an action; digits silence a stem. */
const ACTIONS = {
  " ": "go",
  p: "go",
  0: "rewind",
  "-": "slower",
  "+": "faster",
  arrowleft: "back",
  arrowright: "on",
  a: "loopFrom",
  b: "loopTo",
  l: "loopNone",
  c: "countIn",
};

/** What goes on while its key is held; all else would begin and end many times a second. */
const HELD = ["slower", "faster", "back", "on"];

const TYPED =
  "input:not([type=checkbox], [type=radio], [type=range], [type=button]), textarea, select, [contenteditable]";
/** Keys that such a thing needs for itself. */
const OWN = [
  [" ", "button, a, summary, input, audio, [role=button]"],
  ["arrow", "input, audio, summary, [role=slider], svg, svg *"],
];

/** Calls `actions.NAME()` or `actions.silence(n)`; `wanted()` says whether keys are on. */
export function watchKeys(wanted, actions) {
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || !wanted()) return;
    const key = event.key.toLowerCase();
    const target = targetOf(event);
    if (target.closest(TYPED) || isTheirs(key, target)) return;
    const name = ACTIONS[key];
    if (name) event.preventDefault();
    if (event.repeat && !HELD.includes(name)) return;
    if (name) actions[name]();
    else if (/^[1-9]$/.test(key) && actions.silence(Number(key) - 1)) event.preventDefault();
  });
}

function isTheirs(key, target) {
  return OWN.some(([begin, things]) => key.startsWith(begin) && target.closest(things));
}
