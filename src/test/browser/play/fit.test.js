// How a sheet fits a screen and stands while it is played.
import { deepEqual, equal, ok } from "node:assert/strict";
import { nextIndex, scrolledTo, sheetsOn, spacesFor } from "../../../main/browser/play/fit.js";

Deno.test("a sheet is set as wide as the screen, never wider and in the widths that are drawn", () => {
  equal(spacesFor({ width: 390, height: 780 }, "medium"), 48); // ours: as on the lesson's page, 390 px / 8 px
  equal(spacesFor({ width: 844, height: 342 }, "medium"), 108); // 342 px / 44 = 7.8 px
  for (const width of [320, 390, 844, 1280, 2560]) {
    const screen = { width, height: 700 };
    const widths = ["small", "medium", "large", "largest"].map((size) => spacesFor(screen, size));
    deepEqual(widths, [...widths].sort((a, b) => b - a), `larger notes, shorter systems, on ${width} px`);
    ok(widths.every((width) => width % 4 === 0 && width >= 20 && width <= 160));
  }
});

Deno.test("the system that is played and the one after it are brought into sight", () => {
  const systems = [0, 200, 400, 600].map((top) => ({ top, bottom: top + 180 }));
  const view = (top) => ({ top, bottom: top + 420 });
  equal(scrolledTo(systems[0], systems[1], view(0)), null, "both are there");
  equal(scrolledTo(systems[1], systems[2], view(0)), 192, "the next one is cut");
  equal(scrolledTo(systems[2], systems[1], view(0)), 192, "a repeat goes back by one");
  equal(scrolledTo(systems[3], systems[0], view(392)), null, "what is far back is shown when it comes");
  equal(scrolledTo(systems[0], systems[1], view(392)), 0);
  equal(scrolledTo(systems[2], null, view(0)), 392);
});

Deno.test("where there is no room for two, the one that is played stands on top", () => {
  const low = (top) => ({ top, bottom: top + 200 });
  equal(scrolledTo({ top: 200, bottom: 380 }, { top: 400, bottom: 580 }, low(100)), 192);
  equal(scrolledTo({ top: 200, bottom: 380 }, { top: 400, bottom: 580 }, low(192)), null, "and stays there");
});

Deno.test("what follows is told by the order of playing, round after round", () => {
  const systems = ["a", "a", "b", "b", "c", "a", "b"];
  const systemOf = (i) => systems[i];
  const whole = { first: 0, last: 6 };
  equal(nextIndex(0, whole, systemOf), 2);
  equal(nextIndex(4, whole, systemOf), 5, "a repeat");
  equal(nextIndex(6, whole, systemOf), 0, "from the end to the beginning");
  equal(nextIndex(0, { first: 0, last: 1 }, systemOf), null, "a loop inside one system");
});

Deno.test("a device keeps what its stand shows, held either way: all sizes of the chosen staves, one of the others", () => {
  const sheets = sheetsOn({ width: 390, height: 844 }, { staves: "tab", size: "medium" });
  const widths = (staves) => sheets.filter((one) => one.staves === staves).map(({ spaces }) => spaces);
  deepEqual(widths("both"), [48, 108]); // 390 / 8; 844 / ((390 - 53) / 44), in steps of four
  deepEqual(widths("notation"), [48, 108]);
  ok(widths("tab").includes(48) && widths("tab").length > 4);
  equal(new Set(widths("tab")).size, widths("tab").length, "each once");
});
