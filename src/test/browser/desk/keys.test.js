// The page of keys over a room: shown once, and where it cannot be, the browser goes there.
import { deepEqual, equal } from "node:assert/strict";
import { showKeys } from "../../../main/browser/desk/room/keys.js";
import { having, keyOn, nothing, thing } from "./stand-ins.js";

const WAY = "/desk/keys";

/** A room in which the question mark was pressed twice: what was asked for, where the browser went, what is shown. */
async function room(answer, look) {
  const seen = { fetched: [], went: [] };
  const names = nothing();
  const dialog = () => thing({ showModal: () => {}, close: () => {}, remove: () => {} });
  Object.assign(names.document, { createElement: dialog, querySelector: () => thing({ href: WAY }) });
  const fetch = (way) => {
    seen.fetched.push(way);
    return answer();
  };
  const DOMParser = class {
    parseFromString = (text) => ({ querySelector: () => (text === "keys" ? thing() : null) });
  };
  await having({ ...names, fetch, DOMParser, location: { assign: (way) => seen.went.push(way) } }, async () => {
    showKeys();
    const press = async () => {
      names.document.dispatchEvent(keyOn(thing(), "?"));
      names.document.dispatchEvent(keyOn(thing(), "?"));
      await new Promise((done) => setTimeout(done));
      return names.document.body.children;
    };
    await look(press, seen);
  });
}

const page = (text) => () => Promise.resolve({ ok: true, text: () => Promise.resolve(text) });

Deno.test("pressed twice before it is there, the page is shown once, and again once it was closed", () =>
  room(page("keys"), async (press, { fetched, went }) => {
    for (const times of [1, 2]) {
      const shown = await press();
      equal(shown.length, times);
      shown.at(-1).dispatchEvent(new Event("close"));
    }
    deepEqual([fetched, went], [[WAY, WAY], []]);
  }));

const failures = {
  "without a way to the server": () => Promise.reject(new TypeError("no network")),
  "where the server refuses": () => Promise.resolve({ ok: false, status: 503 }),
  "after the session has ended": page("sign in"),
};
for (const [when, answer] of Object.entries(failures)) {
  Deno.test(`${when} the browser goes to the page`, () =>
    room(answer, async (press, { went }) => {
      equal((await press()).length, 0);
      deepEqual(went, [WAY]);
      await press();
      equal(went.length, 2, "when it is asked for again");
    }));
}
