// In the place of the worker on a site that lets nobody keep lessons any more: it removes what was kept, and itself.
import { removeCaches } from "./keep/copies.js";

const worker = /** @type {any} */ (self);

worker.addEventListener("install", () => worker.skipWaiting());
worker.addEventListener(
  "activate",
  (event) => event.waitUntil(removeCaches().then(() => worker.registration.unregister())),
);
