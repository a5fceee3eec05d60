// Slower or faster at the same pitch.
import { deepEqual, equal, ok } from "node:assert/strict";
import { stretch } from "../../main/browser/common/stretch.js";

const RATE = 44100;

/** A tone with three partials above it, two seconds long. */
function tone(hertz) {
  const partial = (k, i) => Math.sin(2 * Math.PI * k * hertz * i / RATE) / k / 2;
  return Float32Array.from({ length: 2 * RATE }, (_, i) => [1, 2, 3, 4].reduce((sum, k) => sum + partial(k, i), 0));
}

/** How much of a frequency there is: one bin of the Fourier transform by Goertzel's recurrence. */
function power(samples, hertz) {
  const twice = 2 * Math.cos(2 * Math.PI * hertz / RATE);
  let [one, two] = [0, 0];
  for (const sample of samples) [one, two] = [sample + twice * one - two, one];
  return one * one + two * two - twice * one * two;
}

/** The peak under a Hann window, in steps of one cent, 60 cents around `hertz`. */
function centsAway(samples, hertz) {
  const windowed = samples.map((sample, i) => sample * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / samples.length)));
  let [best, most] = [0, 0];
  for (let cents = -60; cents <= 60; cents++) {
    const found = power(windowed, hertz * 2 ** (cents / 1200));
    if (found > most) [best, most] = [cents, found];
  }
  return best;
}

// The open E (41.2 Hz) and higher tones; five cents and one per cent are ours.
for (const [hertz, longer] of [[41.2, 0.8], [41.2, 1.2], [110, 0.92], [110, 1.08], [110, 1.5], [392, 1.1]]) {
  Deno.test(`${hertz} Hz made ${longer} times as long keeps its pitch within five cents, its length within 1 %`, () => {
    const [out] = stretch([tone(hertz)], RATE, longer, false);
    const cents = centsAway(out, hertz);
    ok(Math.abs(cents) < 5, `${cents} cents away`);
    const length = out.length / (2 * RATE) / longer;
    ok(length > 0.99 && length < 1.01, `${length} of the length asked for`);
  });
}

Deno.test("stretching silence or nothing is harmless", () => {
  equal(stretch([new Float32Array(0)], RATE, 1.1, false)[0].length, 0);
  ok(stretch([new Float32Array(5000)], RATE, 1.1, false)[0].every((sample) => sample === 0));
});

Deno.test("an attack at the start is not touched", () => {
  const struck = Float32Array.from({ length: 20000 }, (_, i) => Math.sin(i * i / 1000) * Math.exp(-i / 3000));
  const [out] = stretch([struck], RATE, 1.2, true);
  deepEqual(out.slice(0, 500), struck.slice(0, 500));
});
