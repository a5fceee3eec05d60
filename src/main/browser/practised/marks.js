// What this browser remembers of practising and of favourites, by lesson. Values and their store; no page.

const KEY = "groundbass.practised";
const MOST = 400; // lessons; the longest unused goes first

/**
 * @typedef {{day: string, tempo: number, from: string, to: string}} Passage that was played: the day as 2026-11-29, the
 *   tempo in beats a minute, the ends as the two fields have them
 * @typedef {Passage & {sent?: boolean, own?: boolean, last?: Passage & {at: number}}} Mark of a line: the fastest passage of
 *   the last day; `sent` is what an account knows, `own` what somebody did who was signed in, `last` what was played last
 *   in this browser, at which millisecond
 * @typedef {{title: string, star: boolean, starSent?: boolean, starOwn?: boolean, lines: Record<string, Mark>,
 *   unstar?: boolean, gone?: boolean}} Lesson `unstar` and `gone` where an account is still to be told that it is no
 *   favourite any more, and that it is forgotten
 */

/** Whether a mark says more than another: a later day, or on the same day a faster tempo. */
export function goesBefore(mark, other) {
  return !other || mark.day > other.day || (mark.day === other.day && mark.tempo > other.tempo);
}

/** Today where the reader is. */
export function today(now = new Date()) {
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

/** Every change is made to what stands in the store at that moment: another script of the page, or window, has its own. */
export class Marks {
  /** @type {Record<string, Lesson>} where the store refuses; it lasts as long as the page */
  #refused = {};

  /** All lessons, the one that was practised last first: `[id, lesson]`. */
  get lessons() {
    /** @param {Lesson} lesson */
    const isOwed = ({ gone, unstar, star, lines }) => (gone || unstar) && !star && Object.keys(lines).length === 0;
    return inOrder(this.#read()).filter(([, lesson]) => !isOwed(lesson));
  }

  /** What was practised last: `{id, title, line, mark}`; undefined where nothing was. */
  get last() {
    const all = this.lessons.flatMap(([id, { title, lines }]) =>
      Object.entries(lines).map(([line, mark]) => ({ id, title, line, mark: lastOf(mark) }))
    );
    if (all.length === 0) return undefined;
    const { mark: { day, tempo, from, to }, ...of } = all.reduce((best, one) =>
      isLater(one.mark, best.mark) ? one : best
    );
    return { ...of, mark: { day, tempo, from, to } };
  }

  isStar(id) {
    return this.#read()[id]?.star === true;
  }

  /**
   * That a passage of a line was played to its end.
   * @param {string} id
   * @param {string} title
   * @param {string} line
   * @param {Passage} mark
   * @param {boolean} own where somebody is signed in
   * @param {number} at milliseconds of the world's time
   */
  note(id, title, line, mark, own = false, at = Date.now()) {
    this.#change((lessons) => {
      const { lines } = entry(lessons, id, title);
      const known = lines[line];
      const fastest = goesBefore(mark, known) ? { ...mark, ...(own && { own }) } : known;
      lines[line] = { ...fastest, last: { ...mark, at } };
    });
  }

  star(id, title, chosen, own = false) {
    const [starOwn, unstar] = [(chosen && own) || undefined, (!chosen && own) || undefined];
    const star = { star: chosen, starSent: undefined, starOwn, unstar };
    this.#change((lessons) => Object.assign(entry(lessons, id, title), star));
  }

  /** `own` where an account is to be told. */
  forget(id, own = false) {
    this.#change((lessons) => {
      if (own) lessons[id] = { title: lessons[id]?.title ?? "", star: false, lines: {}, gone: true };
      else delete lessons[id];
    });
  }

  /** What an account has not been told yet: the fields of a form. */
  unsent() {
    const fields = new URLSearchParams();
    for (const [id, { star, starSent, unstar, gone, lines }] of inOrder(this.#read())) {
      if (gone) {
        fields.append("forget", id); // first; what was done with it since then is told after that
        continue;
      }
      if (star && !starSent) fields.append("star", id);
      if (unstar) fields.append("unstar", id);
      for (const [line, mark] of Object.entries(lines)) if (!mark.sent) fields.append("mark", fieldOf(id, line, mark));
    }
    return fields;
  }

  /**
   * What an account knows takes the place of what was here and it was told. What was noted since then, perhaps by another
   * window, stays until it is told too.
   *
   * @param {{lines: any[], stars: any[]}} known
   * @param {URLSearchParams} told as `unsent` gave it
   */
  replace({ lines, stars }, told) {
    const had = new Set([...told].map(([name, value]) => `${name} ${value}`));
    this.#change((lessons) => {
      const before = Object.entries(lessons);
      for (const [id] of before) delete lessons[id];
      for (const { lesson, title, line, ...mark } of lines) {
        const last = before.find(([id]) => id === lesson)?.[1].lines[line]?.last;
        entry(lessons, lesson, title).lines[line] = { ...mark, sent: true, ...(last && { last }) };
      }
      for (const { lesson, title } of stars) {
        Object.assign(entry(lessons, lesson, title), { star: true, starSent: true });
      }
      for (const [id, lesson] of before) keepSince(lessons, had, id, lesson);
    });
  }

  /** What belongs to an account leaves with whoever signs out of it, also what it has not been told yet. */
  leave() {
    this.#change((lessons) => {
      for (const [id, lesson] of Object.entries(lessons)) {
        if (lesson.starSent || lesson.starOwn) {
          Object.assign(lesson, { star: false, starSent: undefined, starOwn: undefined });
        }
        delete lesson.unstar;
        delete lesson.gone;
        const others = Object.entries(lesson.lines).filter(([, mark]) => !mark.sent && !mark.own);
        lesson.lines = Object.fromEntries(others);
        if (!lesson.star && !others.length) delete lessons[id];
      }
    });
  }

  /** @returns {Record<string, Lesson>} */
  #read() {
    try {
      const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
      return Object.fromEntries(Object.entries(kept).filter(([, lesson]) => typeof lesson?.lines === "object"));
    } catch {
      return this.#refused;
    }
  }

  #change(task) {
    const lessons = this.#read();
    task(lessons);
    for (const [id, lesson] of inOrder(lessons).slice(MOST)) if (!lesson.star) delete lessons[id];
    try {
      localStorage.setItem(KEY, JSON.stringify(lessons));
    } catch {
      this.#refused = lessons; // a private window
    }
  }
}

/** A mark as a field of a form. */
function fieldOf(id, line, { day, tempo, from, to }) {
  return [id, line, day, Math.round(tempo), from, to].join(",");
}

/**
 * Puts back what an account could not answer, for it had not been told.
 *
 * @param {Record<string, Lesson>} lessons
 * @param {Set<string>} had the fields that it was told
 * @param {string} id
 * @param {Lesson} before
 */
function keepSince(lessons, had, id, { title, star, starSent, starOwn, unstar, gone, lines }) {
  if (gone && !had.has(`forget ${id}`)) lessons[id] = { title, star: false, lines: {}, gone };
  if (unstar && !had.has(`unstar ${id}`)) {
    Object.assign(entry(lessons, id, title), { star: false, starSent: undefined, unstar });
  }
  if (star && !starSent && !had.has(`star ${id}`)) {
    Object.assign(entry(lessons, id, title), { star, starSent: undefined, starOwn });
  }
  for (const [line, mark] of Object.entries(lines)) {
    const isNew = !mark.sent && !had.has(`mark ${fieldOf(id, line, mark)}`);
    if (isNew && goesBefore(mark, lessons[id]?.lines[line])) entry(lessons, id, title).lines[line] = mark;
  }
}

/** @param {Record<string, Lesson>} lessons */
function inOrder(lessons) {
  const last = ([, { lines }]) => Object.values(lines).map(lastOf).sort(byTime).at(-1);
  return Object.entries(lessons).sort((one, other) => byTime(last(other), last(one)));
}

function entry(lessons, id, title) {
  const lesson = lessons[id] ??= { title, star: false, lines: {} };
  lesson.title = title;
  return lesson;
}

/** What was played last of a line: here, or on a later day on another device. @returns {Passage & {at?: number}} */
function lastOf(mark) {
  return mark.last && mark.last.day >= mark.day ? mark.last : mark;
}

/** By day, then as they were played here, then by tempo; what was never played comes first. */
function byTime(one, other) {
  if (!one || !other) return Number(Boolean(one)) - Number(Boolean(other));
  return one.day.localeCompare(other.day) || (one.at ?? 0) - (other.at ?? 0) || one.tempo - other.tempo;
}

function isLater(one, other) {
  return byTime(one, other) > 0;
}
