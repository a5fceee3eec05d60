// The keys of headsets and of a locked screen (W3C Media Session), where the browser hands them to a page.

/** @param {Record<string, () => void>} actions by the names of the standard: play, pause, stop, previoustrack, nexttrack */
export function watchMedia(actions) {
  const session = navigator.mediaSession;
  if (!session) return;
  for (const [name, action] of Object.entries(actions)) {
    try {
      session.setActionHandler(/** @type {MediaSessionAction} */ (name), action);
    } catch {
      // a browser that does not know this key leaves the others
    }
  }
}

/** What such a device shows: what is practised, and whether it sounds. */
export function tellMedia(title, sounding) {
  const session = navigator.mediaSession;
  if (!session) return;
  if (session.metadata?.title !== title) session.metadata = new MediaMetadata({ title });
  session.playbackState = sounding ? "playing" : "paused";
}
