// The whole text of a line. Every change of it, from wherever, goes through here, so that there is one history. Until the
// editor component is here, which is fetched when it is wanted, the plain field of the page holds the text, and what is
// changed is noted for the history.
import { difference } from "./difference.js";
import { Stretch } from "./stretch.js";
import { spliced, Written } from "./written.js";

const MOST_KEPT = 600_000; // characters of a history that stay in the browser

/** What earlier visits left under that name, where the text is still the one that it led to. */
function keptOf(memory, text) {
  try {
    const kept = JSON.parse(localStorage.getItem(memory) ?? "null");
    return kept && (kept.now ?? kept.doc) === text ? kept : null;
  } catch {
    return null; // unreadable, or not allowed
  }
}

export class LineText {
  #area;
  #wishes;
  #text;
  #kept;
  #written;
  #remarks = [];
  /** @type {import("./editor.js").LineEditor | null} */
  #editor = null;
  /** @type {Promise<void> | null} */
  #coming = null;
  /** @type {Set<Stretch>} */
  #followed = new Set();

  /**
   * @param {HTMLTextAreaElement} area holds the text for the form, with a label
   * @param {object} wishes
   * @param {string} wishes.memory the name under which the history stays in this browser
   * @param {string} wishes.editor where the script of the editor component is
   * @param wishes.words the words of line text
   * @param {() => string[]} wishes.strings how its strings are called at this moment
   * @param {() => void} wishes.changed told of each change
   * @param {() => void} wishes.entered told when the writer comes here
   * @param {(index: number) => void} wishes.fix asked to mend what stands there
   */
  constructor(area, wishes) {
    this.#area = area;
    this.#wishes = wishes;
    this.#text = area.value;
    this.#kept = keptOf(wishes.memory, area.value);
    this.#written = new Written(this.#kept?.doc ?? area.value, this.#kept?.written ?? []);
    area.addEventListener("focus", wishes.entered);
    area.addEventListener("input", () => this.#typed());
    addEventListener("pagehide", () => this.#keep());
  }

  /** Fetches the editor, which then stands in the place of the field. Where it cannot be had, the field stays. */
  open() {
    this.#coming ??= import(this.#wishes.editor).then(({ LineEditor }) => this.#enter(LineEditor)).catch((problem) => {
      console.warn(problem);
      this.#coming = null; // asked for again
    });
    return this.#coming;
  }

  #enter(LineEditor) {
    const area = this.#area;
    const begun = document.activeElement === area; // typing in the plain field goes on in the editor
    const [start, end] = [area.selectionStart, area.selectionEnd];
    const editor = new LineEditor(area, {
      ...this.#wishes,
      kept: this.#kept,
      doc: this.#written.before,
      written: this.#written.changes,
      changed: (splices) => this.#changed(splices),
    });
    editor.show(this.#remarks);
    this.#editor = editor;
    if (begun) this.select(start, end);
    area.hidden = true;
  }

  /** Something was typed into the plain field. */
  #typed() {
    const differs = difference(this.#text, this.#area.value);
    if (!this.#editor && (differs.text || differs.from < differs.to)) this.#note([differs], false);
  }

  #note(splices, alone) {
    this.#written.note({ splices, at: Date.now(), alone });
    this.#changed(splices);
  }

  /** @param splices in places of the text as it was before */
  #changed(splices) {
    this.#followed.forEach((stretch) => {
      stretch.follow(splices);
      if (!stretch.place) this.#followed.delete(stretch);
    });
    this.#text = spliced(this.#text, splices);
    if (this.#area.value !== this.#text) {
      this.#area.value = this.#text;
      this.#area.dispatchEvent(new Event("input", { bubbles: true }));
    }
    this.#wishes.changed();
  }

  #keep() {
    try {
      const { before: doc, changes: written } = this.#written;
      const plain = { ...this.#kept, doc, written, now: this.#text };
      const kept = JSON.stringify(this.#editor ?? plain);
      if (kept.length < MOST_KEPT) localStorage.setItem(this.#wishes.memory, kept);
    } catch {
      // no room or not allowed
    }
  }

  value() {
    return this.#text;
  }

  #head() {
    return this.#editor ? this.#editor.head() : this.#area.selectionStart;
  }

  /** The line in which the cursor stands, from 1. */
  lineHere() {
    return this.lineAt(this.#head());
  }

  /** The number of the line of text in which `index` lies, from 1. */
  lineAt(index) {
    return this.#text.slice(0, index).split("\n").length;
  }

  /** What stands in its line before the cursor. */
  before() {
    const text = this.#text.slice(0, this.#head());
    return text.slice(text.lastIndexOf("\n") + 1);
  }

  /** Puts stretches of text in the place of others, which do not overlap, as one step of the history. */
  apply(splices) {
    this.#change(splices, true);
  }

  /** @param {boolean} alone else what is written at one place in a short time is one step */
  #change(splices, alone) {
    const changes = splices.filter(({ from, to, text }) => this.#text.slice(from, to) !== text)
      .sort((one, other) => one.from - other.from || one.to - other.to);
    if (!changes.length) return;
    if (this.#editor) this.#editor.change(changes, alone);
    else this.#note(changes, alone);
  }

  /** A stretch that goes along with the text around it; empty it is still there. */
  follow(from, to) {
    const stretch = new Stretch(from, to);
    this.#followed.add(stretch);
    return stretch;
  }

  read(stretch) {
    const { place } = stretch;
    return place && this.#text.slice(place.from, place.to);
  }

  /** Only what differs is replaced, so that the history holds single letters. */
  write(stretch, text) {
    const { place } = stretch;
    if (place) this.#write(place.from, place.to, text);
  }

  /** Another text in the place of all that is there. */
  replace(text) {
    this.#write(0, this.#text.length, text);
  }

  #write(from, to, text) {
    const differs = difference(this.#text.slice(from, to), text);
    this.#change([{ from: from + differs.from, to: from + differs.to, text: differs.text }], false);
  }

  insert(text) {
    if (this.#editor) return this.#editor.insert(text);
    const { selectionStart: from, selectionEnd: to } = this.#area;
    this.#change([{ from, to, text }], false);
    this.#area.setSelectionRange(from + text.length, from + text.length);
  }

  async undo() {
    await this.open();
    if (this.#editor) this.#editor.undo();
    else if (this.#written.undo()) this.#goBack();
  }

  async redo() {
    await this.open();
    if (this.#editor) this.#editor.redo();
    else if (this.#written.redo()) this.#goBack();
  }

  /** Without an editor: the text becomes what is written, and the cursor stands where that differs. */
  #goBack() {
    const differs = difference(this.#text, this.#written.text());
    this.#changed([differs]);
    const end = differs.from + differs.text.length;
    this.#area.setSelectionRange(end, end);
  }

  show(remarks) {
    this.#remarks = remarks;
    this.#editor?.show(remarks);
  }

  async select(from, to) {
    await this.open();
    if (this.#editor) return this.#editor.select(from, to);
    this.#area.focus();
    this.#area.setSelectionRange(from, to);
  }
}
