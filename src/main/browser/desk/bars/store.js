// The bars that the server keeps of a recording, or finds in it.

/**
 * Bars, or where there are none the word that says why.
 * @typedef {{map?: {kept: boolean, bars: {bar: number, pass: number, round: number, seconds: number}[], end: number}, word?: string}} Answer
 */

const WRONG = { 401: "expired", 404: "unused", 409: "conflict", 412: "conflict" };
const NOT_MINE = 412; // another window has saved others since

export class BarStore {
  #path;
  #tag = ""; // names the bars that the server had when they were last read or saved

  constructor(path) {
    this.#path = path;
  }

  /** What the recording looks like and how long it is: `{peaks, stepsASecond, seconds}`; null where that does not come. */
  async picture() {
    try {
      const answer = await fetch(`${this.#path}/sound`);
      return answer.ok ? await answer.json() : null;
    } catch {
      return null;
    }
  }

  /** Whether the server is still listening to the recording. */
  async waiting() {
    const answer = await fetch(`${this.#path}/sound`).catch(() => null);
    return !answer?.ok || (await answer.json()).state === "waiting";
  }

  /** The recording itself, as it was sent. */
  async recording() {
    const answer = await fetch(`${this.#path}/recording`);
    if (!answer.ok) throw new Error(String(answer.status));
    return answer.arrayBuffer();
  }

  /** What is kept; where nothing is, what is found. */
  kept() {
    return this.#ask("");
  }

  /** What is found anew, in a recording that plays the line so many times. */
  found(rounds) {
    return this.#ask(`?find=yes&rounds=${encodeURIComponent(rounds)}`);
  }

  /** @returns {Promise<Answer>} */
  async #ask(query) {
    try {
      const answer = await fetch(`${this.#path}/bars${query}`);
      if (!answer.ok) return { word: answer.status === 401 ? "expired" : "failed" };
      const map = await answer.json();
      this.#tag ||= answer.headers.get("ETag") ?? "";
      return map.bars.length ? { map } : { word: "none" };
    } catch {
      return { word: "failed" };
    }
  }

  /**
   * `{saved, others, word}`: whether it is kept now, whether another window has saved others (where the server has
   * answered), and what is to be told.
   */
  async save(map) {
    try {
      const answer = await fetch(`${this.#path}/bars`, {
        method: "PUT",
        headers: { "Content-Type": "application/json", "If-Match": this.#tag },
        body: JSON.stringify(map),
      });
      this.#tag = answer.headers.get("ETag") ?? this.#tag;
      const word = answer.ok ? "saved" : (WRONG[answer.status] ?? "failed");
      return { saved: answer.ok, others: answer.status === NOT_MINE, word };
    } catch {
      return { saved: false, word: "failed" };
    }
  }
}
