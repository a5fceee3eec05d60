// The order of the source tree: what may import what, and that nothing is exported for nobody.
import { deepEqual, ok } from "node:assert/strict";

const MAIN = new URL("../../main/browser/", import.meta.url);
const TEST = new URL("./", import.meta.url);

/** Every script under a folder, as `[path, text]`. */
function scripts(folder, inside = "") {
  return [...Deno.readDirSync(new URL(inside, folder))].flatMap(({ name, isDirectory }) => {
    if (isDirectory) return scripts(folder, `${inside}${name}/`);
    return name.endsWith(".js") ? [[inside + name, Deno.readTextFileSync(new URL(inside + name, folder))]] : [];
  });
}

/** `[names, path]` of what a script takes from others of the tree. */
function importsOf(path, text, from) {
  const found = text.matchAll(/(?:import|export)\s*\{([^}]*)\}\s*from\s*"(\.[^"]+)"/g);
  return [...found].map(([, names, address]) => [
    names.split(",").map((name) => name.trim()).filter(Boolean),
    new URL(address, new URL(path, from)).href.replace(MAIN.href, ""),
  ]);
}

const main = scripts(MAIN);
const all = [
  ...main.flatMap(([path, text]) => importsOf(path, text, MAIN)),
  ...scripts(TEST).flatMap(([path, text]) => importsOf(path, text, TEST)),
];

Deno.test("what pages share knows no page, and practising knows no desk", () => {
  ok(main.length > 40);
  const wrong = main.flatMap(([path, text]) =>
    importsOf(path, text, MAIN)
      .map(([, other]) => [path.split("/")[0], other.split("/")[0]])
      .filter(([room, other]) => room !== other && other !== "common" && !room.endsWith(".js"))
      .map(([room, other]) => `${path} (${room}) imports from ${other}`)
  );
  deepEqual(wrong, []);
});

/** What a room of the desk takes from others; all else they share is common. */
const OF_THE_DESK = { bars: ["recording"], bench: ["recording"], room: ["draft"] };

Deno.test("a room of the desk knows no other but those that it is made of", () => {
  const wrong = main.flatMap(([path, text]) =>
    importsOf(path, text, MAIN)
      .map(([, other]) => [path.split("/"), other.split("/")])
      .filter(([[first], [second]]) => first === "desk" && second === "desk")
      .filter(([[, room], [, other]]) => room !== other && !OF_THE_DESK[room]?.includes(other))
      .map(([, other]) => `${path} imports from ${other.join("/")}`)
  );
  deepEqual(wrong, []);
});

Deno.test("every export has a user, but for what a page shows to tests", () => {
  const used = new Set(all.flatMap(([names, path]) => names.map((name) => `${path} ${name}`)));
  const unused = main.flatMap(([path, text]) =>
    [...text.matchAll(/^export (?:async )?(?:function|class|const) (\w+)/gm)]
      .map(([, name]) => `${path} ${name}`)
      .filter((known) => !used.has(known))
  );
  deepEqual(unused, ["play.js lines"]);
});

// A change anywhere on a page restyles whatever hangs on :has(): the light changes with every note, the sheet with every key.
Deno.test("no style of a page that changes while one plays or types asks what an element holds", () => {
  const styles = [
    "groundbass.css",
    "sheet.css",
    "play.css",
    "walkthrough.css",
    "room.css",
    "line-desk.css",
    "bench.css",
  ];
  const asking = styles.flatMap((name) =>
    Deno.readTextFileSync(new URL(name, MAIN)).split("\n").filter((line) => line.includes(":has(")).map((line) =>
      name + ": " + line
    )
  );
  deepEqual(asking, []);
});
