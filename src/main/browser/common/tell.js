// Tells the site what was done on a lesson's page: a few words, sent as the page is left. Nothing is stored for it in the
// browser, and nothing is sent for who asks not to be counted.

/** Whether the reader's browser says so: Global Privacy Control, or the older Do Not Track (both W3C). */
function asksNotToBeCounted() {
  const { globalPrivacyControl, doNotTrack } = /** @type {any} */ (navigator);
  return globalPrivacyControl === true || doNotTrack === "1";
}

/** Where this page tells; null where it does not. */
export function whereToTell() {
  /** @type {HTMLElement | null} */
  const lesson = document.querySelector("[data-sitting]");
  return asksNotToBeCounted() ? null : lesson?.dataset.sitting ?? null;
}

/**
 * Sends it even while the page is left (W3C Beacon); no answer is waited for.
 * @param {string} where
 * @param {string} name of what is told
 * @param {string[]} values
 */
export function tell(where, name, values) {
  if (values.length) navigator.sendBeacon(where, new URLSearchParams(values.map((value) => [name, value])));
}
