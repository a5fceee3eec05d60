// Lines of a page, each brought to life as soon as what it needs is here.

/**
 * Resolves once all have come or failed; one that fails holds up no other.
 * @template P, M
 * @param {P[]} places
 * @param {(place: P) => Promise<M>} bring
 * @param {(place: P, manifest: M) => void} begin
 * @param {(place: P, problem: unknown) => void} away is told of what did not come or could not be begun
 */
export async function beginAll(places, bring, begin, away) {
  await Promise.all(places.map(async (place) => {
    try {
      begin(place, await bring(place));
    } catch (problem) {
      console.warn(problem);
      away(place, problem);
    }
  }));
}
