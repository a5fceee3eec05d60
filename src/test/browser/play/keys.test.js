// Keys that are held down, and a pointer that is let go where nobody hears of it.
import { deepEqual } from "node:assert/strict";
import { watchDrag } from "../../../main/browser/play/drag.js";
import { watchKeys } from "../../../main/browser/play/keys.js";
import { having } from "../desk/stand-ins.js";

/** The names of actions that keys set off, and whether the page scrolls at the space bar. */
async function done(...keys) {
  const told = [];
  let scrolls = false;
  const document = new EventTarget();
  const action = (name) => () => told.push(name);
  const names = ["go", "slower", "on", "countIn"];
  const actions = {
    ...Object.fromEntries(names.map((name) => [name, action(name)])),
    silence: () => told.push("silence"),
  };
  await having({ document }, () => watchKeys(() => true, actions));
  for (const [key, repeat] of keys) {
    const event = Object.assign(new Event("keydown", { cancelable: true }), { key, repeat });
    Object.defineProperty(event, "target", { value: { closest: () => null } });
    document.dispatchEvent(event);
    if (key === " ") scrolls ||= !event.defaultPrevented;
  }
  return [told.join(" "), scrolls];
}

Deno.test("a key that is held goes on with tempo and bars, and does all else once", async () => {
  const held = (key) => [[key, false], [key, true], [key, true]];
  deepEqual(await done(...held("-"), ...held("ArrowRight")), ["slower slower slower on on on", false]);
  deepEqual(await done(...held("p"), ...held(" "), ...held("c"), ...held("2")), ["go go countIn silence", false]);
});

/** What comes of pointer events on a sheet, each `[type, x, buttons]`. */
function drawn(...events) {
  const told = [];
  const figure = Object.assign(new EventTarget(), { setPointerCapture() {} });
  const sheet = { eventAt: (x) => x };
  watchDrag(figure, () => sheet, {
    tapped: (at) => told.push(`tap ${at}`),
    dragged: (from, to) => told.push(`drag ${from} ${to}`),
    chosen: (from, to) => told.push(`chosen ${from} ${to}`),
    left: () => told.push("left"),
  });
  const target = { closest: (what) => what === "svg" ? {} : null };
  for (const [type, clientX, buttons] of events) {
    const event = Object.assign(new Event(type), { pointerId: 1, button: 0, buttons, clientX, clientY: 0 });
    Object.defineProperty(event, "target", { value: target });
    figure.dispatchEvent(event);
  }
  return told;
}

// W3C Pointer Events: `buttons` is 0 where nothing is pressed
Deno.test("a press that was let go outside the sheet neither drags on nor chooses", () => {
  const down = ["pointerdown", 10, 1];
  deepEqual(drawn(down, ["pointermove", 40, 1], ["pointerup", 50, 0]), ["drag 10 40", "chosen 10 50"]);
  deepEqual(drawn(down, ["pointermove", 40, 0], ["pointermove", 60, 0], ["pointerup", 60, 0]), []);
  deepEqual(drawn(down, ["pointermove", 40, 1], ["pointermove", 60, 0], ["pointerup", 60, 0]), ["drag 10 40", "left"]);
});
