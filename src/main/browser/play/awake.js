// Keeps the screen of a phone on the music stand lit while something sounds or the stand is open (W3C Screen Wake Lock),
// where it may.

let wanted = false;
/** @type {Promise<WakeLockSentinel | null> | null} */
let held = null;

export async function stayAwake(wish) {
  wanted = wish;
  if (wanted) {
    hold();
    return;
  }
  const letGo = held;
  held = null;
  (await letGo)?.release();
}

function hold() {
  held ??= navigator.wakeLock?.request("screen").catch(() => null) ?? null; // a low battery may refuse it
}

// the standard has it released whenever the page is hidden
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState !== "visible" || !wanted) return;
  held = null;
  hold();
});
