// Two bars of 4/4 with all their counts, the first played twice, 1000 frames a count.

/**
 * @param {number} number
 * @param {number} pass
 * @param {number} start
 */
export function bar(number, pass, start) {
  const names = [1, 2, 3, 4].flatMap((beat) => ["", "e", "&", "a"].map((quarter) => beat + quarter));
  const counts = names.map((count, i) => ({ count, at: i / 16, frame: start + 250 * i }));
  return { bar: number, pass, start, frames: 4000, length: 1, counts, events: [] };
}

export const bars = [bar(1, 1, 4000), bar(1, 2, 8000), bar(2, 1, 12000)];
