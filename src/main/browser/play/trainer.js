// The tempo trainer: how fast each round of a passage is played, in beats a minute, and where one rests. No sound, no page.

/** What each of its fields may hold: beats a minute, rounds, seconds. */
const BOUNDS = { climbStep: [1, 60], every: [1, 32], rest: [0, 300] };

/** What was typed into a field as a whole number within its bounds; null where it is no number. */
export function typedIn(field, text, [least, most] = BOUNDS[field]) {
  const value = Math.round(Number(text));
  return text.trim() && Number.isFinite(value) ? Math.min(most, Math.max(least, value)) : null;
}

/** `from` and `to` in beats a minute, `step` of them after each `rounds` rounds, up or down; then `rest` seconds. */
export class Trainer {
  #plan;

  /** @param {{from: number, to: number, step: number, rounds: number, rest: number}} plan */
  constructor(plan) {
    this.#plan = plan;
  }

  /** Beats a minute of a round; once the end is reached it stays there. */
  tempoIn(round) {
    const { from, to, step, rounds } = this.#plan;
    const gone = step * Math.floor(round / rounds);
    return from < to ? Math.min(to, from + gone) : Math.max(to, from - gone);
  }

  /** Seconds of rest before a round: where the tempo is another one than before. */
  restBefore(round) {
    return round > 0 && this.tempoIn(round) !== this.tempoIn(round - 1) ? this.#plan.rest : 0;
  }
}
