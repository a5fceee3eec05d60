// Only one thing of a page sounds at a time, whichever script it belongs to.
const SOUNDS = "groundbass-sounds";

/**
 * Takes part in it: `stop` is called when something else begins to sound.
 * @param {() => void} stop
 * @returns {() => void} to be called when it begins to sound itself
 */
export function soundAlone(stop) {
  const self = {};
  document.addEventListener(SOUNDS, (event) => {
    if (/** @type {CustomEvent} */ (event).detail !== self) stop();
  });
  return () => document.dispatchEvent(new CustomEvent(SOUNDS, { detail: self }));
}
