// Why nothing sounds, as a word for what its hearer can do about it.
import { Refused } from "../common/patience.js";

/** What is said where the browser makes no sound for a page. */
export class Mute extends Error {}

const WORDS = { 401: "closed", 403: "closed", 404: "gone", 410: "gone", 429: "busy", 503: "busy" };

/**
 * The name of the sentence.
 * @param {unknown} problem
 */
export function troubleOf(problem) {
  if (problem instanceof Mute) return "mute";
  return problem instanceof Refused ? WORDS[problem.status] ?? "failed" : "failed";
}
