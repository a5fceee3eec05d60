// Whose the keys are on a page with several lines.
import { equal } from "node:assert/strict";
import { Used } from "../../../main/browser/play/used.js";

function line(name) {
  const practice = Object.assign(new EventTarget(), { state: "stopped" });
  const panel = new EventTarget();
  const turn = (state) => {
    practice.state = state;
    practice.dispatchEvent(new Event("change"));
  };
  return { name, practice, panel, turn };
}

Deno.test("keys are for the line that was pressed, reached or begun last", () => {
  const lines = [];
  const used = new Used(lines);
  equal(used.line, null);
  const [one, two] = [line("one"), line("two")];
  for (const each of [one, two]) {
    lines.push(each);
    used.watch(each, [each.panel]);
  }
  equal(used.line, one);
  two.turn("loading"); // beside a step of the walkthrough
  equal(used.line, two);
  one.panel.dispatchEvent(new Event("focusin"));
  equal(used.line, one);
  two.turn("playing"); // and another change of what sounds already
  equal(used.line, one);
  two.turn("stopped");
  two.turn("loading");
  equal(used.line, two);
});
