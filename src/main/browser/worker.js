// The service worker (W3C Service Workers): it serves the lessons that a student keeps on this device where the server
// cannot be reached. It is set up with the first lesson and goes with the last.
import { answerTo } from "./keep/answers.js";
import { removeOldForms } from "./keep/copies.js";

const worker = /** @type {any} */ (self);

worker.addEventListener("install", () => worker.skipWaiting());
worker.addEventListener(
  "activate",
  (event) => event.waitUntil(Promise.all([removeOldForms(), worker.clients.claim()])),
);
worker.addEventListener("fetch", (event) => {
  const answer = answerTo(event.request);
  if (answer) event.respondWith(answer);
});
