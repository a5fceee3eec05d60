// What may follow at a spot of line text: the words come from the server, which reads line text by the same lists.

const COUNT = /^(\d+)([e&a]?)$/;
const SYLLABLES = ["", "e", "&", "a"];

/** A count such as 2& as quarters of a count from the start of the bar; NaN where it is none. */
export function quarters(count) {
  const parts = COUNT.exec(count);
  return parts ? 4 * (Number(parts[1]) - 1) + SYLLABLES.indexOf(parts[2]) : NaN;
}

/** The other way round. */
export function countAt(quarter) {
  return Math.floor(quarter / 4) + 1 + SYLLABLES[quarter % 4];
}

/** Words of `list` that begin with what is typed, what is typed itself left out. */
function fitting(list, typed) {
  const small = typed.toLowerCase();
  return list.filter((word) => word.toLowerCase().startsWith(small) && word !== typed);
}

/** The letters at the end of what is typed that `form` asks for; there may be none. */
function endOf(typed, form) {
  return typed.slice(typed.search(form));
}

/** What may stand in the events of a count: `typed` is the text before the cursor. Answers `{from, list}`. */
export function completeEvents(typed, words, strings) {
  const word = endOf(typed, /[^\s,+*]*$/);
  const from = typed.length - word.length;
  const before = typed.slice(0, from).replace(/"[^"]*"/g, "");
  const event = before.slice(Math.max(before.lastIndexOf(","), before.lastIndexOf("+")) + 1);
  if (event.trim() === "") return { from, list: fitting([...strings, "rest", "hold"], word) };
  return { from, list: fitting(words.events.filter((one) => one !== "rest"), word) };
}

/** A chord: its root is typed, its kind follows. */
export function completeChords(typed, words) {
  const word = endOf(typed, /[^\s,]*$/);
  const root = /^[A-G][#b]?/.exec(word)?.[0] ?? "";
  const list = root ? words.chords.map((kind) => root + kind) : ["A", "B", "C", "D", "E", "F", "G", "N.C."];
  return { from: typed.length - word.length, list: fitting(list, word) };
}

/** Another bar that is taken over: its number, then how far it is moved on the neck, by strings and by frets. */
export function completeTaken(typed, words) {
  const numbered = /^\s*(?:=|as\b)?\s*bar\s+\d+(?:\s+counts?\s+[^\s,]+)?\s*,/.exec(typed);
  if (!numbered) {
    const word = endOf(typed, /\S*$/);
    return { from: typed.length - word.length, list: fitting(["bar"], word) };
  }
  const part = endOf(typed, /[^,]*$/).trimStart();
  const said = typed.slice(numbered[0].length, typed.length - part.length);
  const list = words.shifts.filter((shift) =>
    !["string", "fret"].some((by) => said.includes(by) && shift.includes(by))
  );
  return { from: typed.length - part.length, list: fitting(list, part) };
}

const VALUES = { style: "techniques", feel: "feels" };

/** Anything, by what the line of text begins with. */
export function complete(typed, words, strings) {
  const start = /^\s*(\S*)$/.exec(typed);
  if (start && !/^\d/.test(start[1])) {
    return { from: typed.length - start[1].length, list: fitting(words.lines, start[1]) };
  }
  const count = /^\s*\d\S*(\s+\d\S*)*\s+/.exec(typed);
  if (count) {
    const inside = completeEvents(typed.slice(count[0].length), words, strings);
    return { from: count[0].length + inside.from, list: inside.list };
  }
  if (/^\s*bar\b.*\sover\s/.test(typed)) return completeChords(typed, words);
  const taken = /^\s*bar\s+\d*\s*(?:=|as\b)\s*/.exec(typed);
  if (taken) {
    const inside = completeTaken(typed.slice(taken[0].length), words);
    return { from: taken[0].length + inside.from, list: inside.list };
  }
  const value = /^\s*(\S+)\s+(.*)$/.exec(typed);
  if (!value) return { from: typed.length, list: [] };
  return completeValue(value[1], value[2], typed.length, words);
}

/** The value of a setting. */
export function completeValue(name, value, end, words) {
  if (name === "key" && /\s/.test(value)) {
    const mode = endOf(value, /\S*$/);
    return { from: end - mode.length, list: fitting(words.modes, mode) };
  }
  const list = words[VALUES[name]] ?? [];
  return { from: end - value.length, list: fitting(list, value) };
}
