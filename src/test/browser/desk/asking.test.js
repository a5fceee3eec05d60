// What a desk is told where the server does not answer a question.
import { deepEqual } from "node:assert/strict";
import { having } from "./stand-ins.js";
import { post, postForJson } from "../../../main/browser/desk/line/asking.js";

/** @param {() => Response} answer */
const asked = (answer) =>
  having({ fetch: () => Promise.resolve().then(answer) }, () => postForJson("/ways", { bar: "1" }));

Deno.test("an answer comes without a word", async () => {
  deepEqual(await asked(() => Response.json({ ways: [] })), { value: { ways: [] }, word: "", wait: 0 });
});

// RFC 9110, sections 15.5.2, 15.6.4 and 10.2.3: unauthorized; unavailable, with the seconds to wait
Deno.test("why there is none is said, and nothing is thrown", async () => {
  const none = (word, wait = 0) => ({ value: null, word, wait });
  deepEqual(await asked(() => new Response("", { status: 401 })), none("expired"));
  const busy = () => new Response("", { status: 503, headers: { "Retry-After": "7" } });
  deepEqual(await asked(busy), none("busy", 7000));
  deepEqual(await asked(() => new Response("", { status: 500 })), none("offline"));
  deepEqual(await asked(() => new Response('{"ways": [', { status: 200 })), none("offline"));
  const away = () => {
    throw new TypeError("Failed to fetch");
  };
  deepEqual(await asked(away), none("offline"));
  deepEqual(await having({ fetch: () => Promise.resolve().then(away) }, () => post("/live", {})), {
    answer: null,
    word: "offline",
    wait: 0,
  });
});
