// The keys of headsets and of a locked screen (W3C Media Session), where the browser hands them to a page. They belong to
// what sounded last: what the page plays as a plain recording has the browser's own.
import { soundAlone } from "../common/alone.js";

export class MediaKeys {
  #actions;
  #isHeld = false;

  /** @param {Record<string, () => void>} actions by the names of the standard: play, pause, stop, previoustrack, nexttrack */
  constructor(actions) {
    this.#actions = actions;
    soundAlone(() => this.#release());
  }

  /** What such a device shows: what is practised, and whether it sounds. */
  tell(title, sounding) {
    const session = navigator.mediaSession;
    if (!session) return;
    if (sounding && !this.#isHeld) this.#hold();
    if (!this.#isHeld) return;
    if (session.metadata?.title !== title) session.metadata = new MediaMetadata({ title });
    session.playbackState = sounding ? "playing" : "paused";
  }

  #hold() {
    this.#isHeld = true;
    this.#handle((action) => action);
  }

  #release() {
    if (!this.#isHeld) return;
    this.#isHeld = false;
    this.#handle(() => null);
    navigator.mediaSession.metadata = null;
    navigator.mediaSession.playbackState = "none";
  }

  #handle(by) {
    for (const [name, action] of Object.entries(this.#actions)) {
      try {
        navigator.mediaSession.setActionHandler(/** @type {MediaSessionAction} */ (name), by(action));
      } catch {
        // a browser that does not know this key leaves the others
      }
    }
  }
}
