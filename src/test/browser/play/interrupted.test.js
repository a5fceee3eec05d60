// A loudspeaker that somebody else has: a call, or a browser that does not let the page sound.
import { deepEqual, equal } from "node:assert/strict";
import { having } from "../desk/stand-ins.js";
import { engineOf, source } from "./still.js";

/** What is told while the loudspeaker stands still, and answers `resume` so. */
async function toldWhere(resume) {
  const made = engineOf(source);
  const told = [];
  for (const news of ["interrupted", "problem"]) made.addEventListener(news, () => told.push(`${news} ${made.state}`));
  made.addEventListener("state", () => told.push(made.state));
  await made.play();
  made.stop();
  told.length = 0;
  const { context } = made;
  if (!context) throw new Error("nothing was opened");
  context.state = "suspended";
  context.resume = () => resume(context);
  await made.play();
  Object.assign(context, { state: "running", resume: () => Promise.resolve() });
  const { state } = made;
  made.stop();
  return { told, state };
}

// W3C Web Audio API 1.1, AudioContext.resume: it is rejected where the context may not start, or waits until it may
Deno.test("what may not sound is interrupted, and does not play in silence", async () => {
  const refused = await toldWhere(() => Promise.reject(new DOMException("", "InvalidStateError")));
  deepEqual(refused, { told: ["loading", "interrupted loading", "stopped"], state: "stopped" });
  const atOnce = { setTimeout: (task) => (Promise.resolve().then(task), 1), clearTimeout() {} };
  const waiting = await having(atOnce, () => toldWhere(() => new Promise(() => {})));
  deepEqual(waiting, refused);
});

Deno.test("a loudspeaker that comes back while it is waited for plays", async () => {
  const { told, state } = await toldWhere((context) => {
    context.state = "running";
    return Promise.resolve();
  });
  equal(state, "playing");
  deepEqual(told, ["loading", "playing", "stopped"]);
});
