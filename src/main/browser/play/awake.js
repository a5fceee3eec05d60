// Keeps the screen of a phone on the music stand lit while something sounds (W3C Screen Wake Lock), where it may.

let held = null;

export async function stayAwake(wanted) {
  if (!wanted) {
    const letGo = held;
    held = null;
    (await letGo)?.release();
    return;
  }
  held ??= navigator.wakeLock?.request("screen").catch(() => null); // a low battery may refuse it
}
