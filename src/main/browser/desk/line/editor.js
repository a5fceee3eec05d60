// The editor component around the text of a line: colours, underlines, words that are offered, and the history. It is
// fetched once somebody opens the text or undoes, since it weighs more than all else on the page.
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
import { EditorState, Transaction } from "@codemirror/state";
import { EditorView, keymap, lineNumbers } from "@codemirror/view";
import { byId } from "../../common/page.js";
import { language } from "./language.js";
import { look } from "./look.js";
import { offers } from "./offers.js";
import { underlines, underlining } from "./remarks.js";

const ONE_STEP = 600; // milliseconds between keys that are undone together
const KEPT = { history: historyField };

/** What earlier visits left, where it can be read; else a beginning. */
function begin(kept, doc, extensions) {
  try {
    if (kept?.selection) return EditorState.fromJSON(kept, { extensions }, KEPT);
  } catch {
    // of another version: a new history begins
  }
  return EditorState.create({ doc, extensions });
}

/** A change that was written before the editor was here becomes a part of its history, as of when it was made. */
function written(state, { splices, at, alone }) {
  const annotations = [Transaction.time.of(at), ...(alone ? [isolateHistory.of("full")] : [])];
  return state.update({ changes: changesOf(splices), annotations }).state;
}

function changesOf(splices) {
  return splices.map(({ from, to, text }) => ({ from, to, insert: text }));
}

/** @param {import("@codemirror/state").ChangeSet} changes */
function splicesOf(changes) {
  const splices = [];
  changes.iterChanges((from, to, _from, _to, text) => splices.push({ from, to, text: text.toString() }));
  return splices;
}

export class LineEditor {
  #view;

  /**
   * @param {HTMLTextAreaElement} area the field in whose place it stands, with a label
   * @param {object} wishes
   * @param wishes.kept the state that an earlier visit left, if any
   * @param {string} wishes.doc the text that `wishes.written` led away from
   * @param {Array} wishes.written what was changed before the editor was here
   * @param wishes.words the words of line text
   * @param {() => string[]} wishes.strings how its strings are called at this moment
   * @param {(splices: Array) => void} wishes.changed told of each change
   * @param {() => void} wishes.entered told when the writer comes here
   * @param {(index: number) => void} wishes.fix asked to mend what stands there
   */
  constructor(area, wishes) {
    const { words, strings, changed, entered, fix } = wishes;
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
        if (update.docChanged) changed(splicesOf(update.changes));
      }),
    ];
    const state = wishes.written.reduce(written, begin(wishes.kept, wishes.doc, extensions));
    this.#view = new EditorView({ state, parent: rootAfter(area) });
    labelOf(area).removeAttribute("for"); // the editor has its name now
  }

  /** What the next visit begins with. */
  toJSON() {
    return this.#view.state.toJSON(KEPT);
  }

  value() {
    return this.#view.state.doc.toString();
  }

  /** Where the cursor is. */
  head() {
    return this.#view.state.selection.main.head;
  }

  /** @param {boolean} alone whether it is a step of the history by itself */
  change(splices, alone) {
    const annotations = alone ? [isolateHistory.of("full")] : [];
    this.#view.dispatch({ changes: changesOf(splices), annotations });
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
