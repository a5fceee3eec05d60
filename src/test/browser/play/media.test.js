// Whose the keys of a headset are. That a page's handler takes the place of the browser's own: W3C Media Session, section 4.
import { deepEqual } from "node:assert/strict";
import { soundAlone } from "../../../main/browser/common/alone.js";
import { MediaKeys } from "../../../main/browser/play/media.js";
import { having } from "../desk/stand-ins.js";

class Session {
  metadata = null;
  playbackState = "none";
  handlers = {};
  setActionHandler(name, action) {
    if (name === "unknown") throw new TypeError(name);
    if (action) this.handlers[name] = action;
    else delete this.handlers[name];
  }
}

class Metadata {
  constructor({ title }) {
    this.title = title;
  }
}

Deno.test("keys are the player's from when it sounds until a recording of the page does", async () => {
  const mediaSession = new Session();
  await having({ navigator: { mediaSession }, MediaMetadata: Metadata, document: new EventTarget() }, () => {
    const keys = new MediaKeys({ unknown() {}, play() {}, pause() {} });
    const recordingSounds = soundAlone(() => {});
    const now = () => [Object.keys(mediaSession.handlers), mediaSession.playbackState, mediaSession.metadata?.title];
    keys.tell("Lantern", false);
    deepEqual(now(), [[], "none", undefined]);
    keys.tell("Lantern", true);
    deepEqual(now(), [["play", "pause"], "playing", "Lantern"]);
    keys.tell("Lantern", false);
    deepEqual(now(), [["play", "pause"], "paused", "Lantern"]);
    recordingSounds();
    keys.tell("Lantern", false); // which the recording has stopped
    deepEqual(now(), [[], "none", undefined]);
    keys.tell("Lantern", true);
    deepEqual(now(), [["play", "pause"], "playing", "Lantern"]);
  });
});
