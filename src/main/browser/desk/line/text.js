// The whole text of a line in the editor component. Every change of the text, from wherever, goes through here, so that
// there is one history.
/*! The editor component is @codemirror; its licence and those of what it stands on: /assets/licenses.txt */
import {
  defaultKeymap,
  history,
  historyField,
  historyKeymap,
  insertNewlineKeepIndent,
  isolateHistory,
  redo,
  undo,
} from "@codemirror/commands";
import { EditorState } from "@codemirror/state";
import { EditorView, keymap, lineNumbers } from "@codemirror/view";
import { byId } from "../../common/page.js";
import { difference } from "./difference.js";
import { language } from "./language.js";
import { look } from "./look.js";
import { offers } from "./offers.js";
import { underlines, underlining } from "./remarks.js";
import { Stretch } from "./stretch.js";

const MOST_KEPT = 600_000; // characters of a history that stay in the browser
const ONE_STEP = 600; // milliseconds between keys that are undone together
const KEPT = { history: historyField };

/** What earlier visits left, where the text is still the one that it led to; else a beginning. */
function begin(memory, doc, extensions) {
  try {
    const kept = JSON.parse(localStorage.getItem(memory) ?? "null");
    if (kept?.doc === doc) return EditorState.fromJSON(kept, { extensions }, KEPT);
  } catch {
    // unreadable, or not allowed: a new history begins
  }
  return EditorState.create({ doc, extensions });
}

export class LineText {
  #view;
  /** @type {Set<Stretch>} */
  #followed = new Set();

  /**
   * @param {HTMLTextAreaElement} area holds the text for the form, with a label
   * @param {object} wishes
   * @param {string} wishes.memory the name under which the history stays in this browser
   * @param wishes.words the words of line text
   * @param {() => string[]} wishes.strings how its strings are called at this moment
   * @param {() => void} wishes.changed told of each change
   * @param {() => void} wishes.entered told when the writer comes here
   * @param {(index: number) => void} wishes.fix asked to mend what stands there
   * @param {boolean} wishes.begun whether typing in the plain field goes on here
   */
  constructor(area, { memory, words, strings, changed, entered, fix, begun }) {
    const extensions = [
      offers(words, strings),
      keymap.of([
        { key: "Alt-r", run: (view) => (fix(view.state.selection.main.head), true) },
        { key: "Enter", run: insertNewlineKeepIndent, shift: insertNewlineKeepIndent },
        ...historyKeymap,
        ...defaultKeymap, // without a key for Tab: the keyboard must be able to leave
      ]),
      history({ minDepth: Infinity, newGroupDelay: ONE_STEP }),
      lineNumbers(),
      language,
      underlines,
      look,
      EditorView.contentAttributes.of(naming(area)),
      EditorView.domEventHandlers({ focus: entered }),
      EditorView.updateListener.of((update) => {
        if (!update.docChanged) return;
        this.#followed.forEach((stretch) => this.#move(stretch, update.changes));
        area.value = this.value();
        area.dispatchEvent(new Event("input", { bubbles: true }));
        changed();
      }),
    ];
    this.#view = new EditorView({ state: begin(memory, area.value, extensions), parent: rootAfter(area) });
    if (begun) this.select(area.selectionStart, area.selectionEnd);
    labelOf(area).removeAttribute("for"); // the editor has its name now
    area.hidden = true;
    addEventListener("pagehide", () => this.#keep(memory));
  }

  #move(stretch, changes) {
    stretch.follow(changes);
    if (!stretch.place) this.#followed.delete(stretch);
  }

  #keep(memory) {
    try {
      const kept = JSON.stringify(this.#view.state.toJSON(KEPT));
      if (kept.length < MOST_KEPT) localStorage.setItem(memory, kept);
    } catch {
      // no room or not allowed
    }
  }

  value() {
    return this.#view.state.doc.toString();
  }

  /** The line in which the cursor stands, from 1. */
  lineHere() {
    return this.lineAt(this.#view.state.selection.main.head);
  }

  /** The number of the line of text in which `index` lies, from 1. */
  lineAt(index) {
    return this.#view.state.doc.lineAt(index).number;
  }

  /** What stands in its line before the cursor. */
  before() {
    const { doc, selection } = this.#view.state;
    const line = doc.lineAt(selection.main.head);
    return line.text.slice(0, selection.main.head - line.from);
  }

  /** Puts stretches of text in the place of others, as one step of the history. */
  apply(splices) {
    this.#change(splices, isolateHistory.of("full"));
  }

  /** @param annotations without any, what is written at one place in a short time is one step */
  #change(splices, ...annotations) {
    const changes = splices
      .filter(({ from, to, text }) => this.#view.state.sliceDoc(from, to) !== text)
      .map(({ from, to, text }) => ({ from, to, insert: text }));
    if (changes.length) this.#view.dispatch({ changes, annotations });
  }

  /** A stretch that goes along with the text around it; empty it is still there. */
  follow(from, to) {
    const stretch = new Stretch(from, to);
    this.#followed.add(stretch);
    return stretch;
  }

  read(stretch) {
    const { place } = stretch;
    return place && this.#view.state.sliceDoc(place.from, place.to);
  }

  /** Only what differs is replaced, so that the history holds single letters. */
  write(stretch, text) {
    const { place } = stretch;
    if (place) this.#write(place.from, place.to, text);
  }

  /** Another text in the place of all that is there. */
  replace(text) {
    this.#write(0, this.#view.state.doc.length, text);
  }

  #write(from, to, text) {
    const differs = difference(this.#view.state.sliceDoc(from, to), text);
    this.#change([{ from: from + differs.from, to: from + differs.to, text: differs.text }]);
  }

  insert(text) {
    this.#view.dispatch(this.#view.state.replaceSelection(text));
  }

  undo() {
    undo(this.#view);
  }

  redo() {
    redo(this.#view);
  }

  show(remarks) {
    this.#view.dispatch({ effects: underlining(remarks) });
  }

  select(from, to) {
    this.#view.focus();
    this.#view.dispatch({ selection: { anchor: from, head: to }, scrollIntoView: true });
  }
}

/** @returns {HTMLLabelElement} */
function labelOf(area) {
  return area.labels[0];
}

/** The editor is called and described as the field is in whose place it stands. */
function naming(area) {
  const described = (area.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean);
  const description = described.map((id) => byId(id, HTMLElement).textContent.trim()).join(" ");
  return {
    "aria-label": labelOf(area).textContent,
    tabindex: "0", // as it is anyway; said for checkers, which do not count what is edited in place among what has the focus
    ...(description && { "aria-description": description }),
  };
}

/**
 * The component brings its own styles. In a tree of its own they are adopted as sheets, which the policy of our pages lets
 * through; in the page itself they would be an inline style, which it does not.
 */
function rootAfter(area) {
  const host = document.createElement("div");
  host.className = "line-text";
  area.after(host);
  return host.attachShadow({ mode: "open" });
}
