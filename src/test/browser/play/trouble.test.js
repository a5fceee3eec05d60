// What is told of sound that does not come: what its hearer can do.
import { deepEqual, equal } from "node:assert/strict";
import { Refused } from "../../../main/browser/common/patience.js";
import { troubleOf } from "../../../main/browser/play/trouble.js";
import { engineOf, source } from "./still.js";

// RFC 9110 sections 15.5 and 15.6, RFC 6585 section 4
Deno.test("who is refused hears whether to wait, to sign in or to load the page anew", () => {
  const words = [401, 403, 404, 410, 429, 500, 503].map((status) => troubleOf(new Refused(status, "a")));
  deepEqual(words, ["closed", "closed", "gone", "gone", "busy", "failed", "busy"]);
  equal(troubleOf(new TypeError("no net")), "failed");
});

Deno.test("a browser without sound says so, and stops", async () => {
  const refusing = {
    ...source,
    open() {
      throw new TypeError("no Web Audio");
    },
  };
  const made = engineOf(refusing);
  const told = [];
  made.addEventListener("problem", (event) => told.push(troubleOf(/** @type {CustomEvent} */ (event).detail)));
  await made.play();
  deepEqual(told, ["mute"]);
  equal(made.state, "stopped");
});
