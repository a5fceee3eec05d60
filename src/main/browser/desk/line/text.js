// The whole text of a line in the editor component. Every change of the text, from wherever, goes through here, so that
// there is one history.
import { complete } from "./words.js";

const CodeMirror = /** @type {any} */ (globalThis).CodeMirror;

CodeMirror.defineMode("line-text", () => ({
  startState: () => ({ first: true, count: false }),
  token(stream, state) {
    if (stream.sol()) {
      state.first = true;
      state.count = false;
      if (stream.match(/^\s*#.*/)) return "comment";
    }
    if (stream.match(/^\s+(?=#)/, false) && stream.match(/^\s{2,}#.*/)) return "comment";
    if (stream.eatSpace()) return null;
    if (state.first) {
      state.first = false;
      if (stream.match(/^\d[^\s]*/)) {
        state.count = true;
        return "number";
      }
      if (stream.match(/^bar\b.*?(?=\s{2,}#|$)/)) return "header";
      if (stream.match(/^[a-z]+/)) return "keyword";
    }
    if (state.count) {
      if (stream.match(/^"[^"]*"?/)) return "string";
      if (stream.match(/^(s\d+(f\d+|x)|[A-G][#b]*(\d+|x))/)) return "atom";
      if (stream.match(/^(rest|hold)\b/)) return "qualifier";
      if (stream.match(/^\d[^\s,+*]*(?=\s)/)) return "number";
      if (stream.match(/^[a-z]+/)) return "property";
    }
    stream.next();
    return null;
  },
}));

const NONE = -1;

/** Enter and Tab take the word that the writer chose, and mean what they always mean where none is chosen. */
function takeChosen(_editor, list) {
  if (list.data.chosen) return list.pick();
  list.close();
  return CodeMirror.Pass;
}

/** The component chooses the first word of each list that it shows. */
function chooseNone(editor, offered) {
  const { widget } = editor.state.completionActive;
  const first = widget.hints.firstChild;
  first.classList.remove("CodeMirror-hint-active");
  first.removeAttribute("aria-selected");
  editor.getInputField().removeAttribute("aria-activedescendant");
  widget.selectedHint = NONE;
  offered.chosen = false;
}

const HINT_KEYS = {
  Up: (_editor, list) => list.moveFocus(-1),
  Down: (_editor, list) => list.moveFocus(1),
  PageUp: (_editor, list) => list.moveFocus(-list.menuSize() + 1, true),
  PageDown: (_editor, list) => list.moveFocus(list.menuSize() - 1, true),
  Esc: (_editor, list) => list.close(),
  Enter: takeChosen,
  Tab: takeChosen,
};

const MOST_KEPT = 600_000; // characters of a history that stay in the browser

const SAME_START = (a, b) => {
  let at = 0;
  while (at < a.length && at < b.length && a[at] === b[at]) at++;
  return at;
};

export class LineText {
  /** @param area the text area that holds the text for the form, with a label */
  constructor(area, { words, strings, changed, fix, begun }) {
    this.area = area;
    this.begun = begun; // typing in the plain field goes on in the editor
    this.marks = [];
    /** @type {HTMLLabelElement} */
    const label = document.querySelector(`label[for="${area.id}"]`);
    const [from, to] = [area.selectionStart, area.selectionEnd];
    this.editor = CodeMirror.fromTextArea(area, {
      mode: "line-text",
      lineNumbers: true,
      lineWrapping: false,
      undoDepth: Infinity,
      historyEventDelay: 600,
      screenReaderLabel: label.textContent,
      viewportMargin: 60,
      extraKeys: {
        "Ctrl-Space": () => this.hint(words, strings),
        "Alt-R": () => fix(this.editor.indexFromPos(this.editor.getCursor())),
        Tab: false, // the keyboard must be able to leave
        "Shift-Tab": false,
      },
    });
    const input = this.editor.getInputField();
    input.id = `${area.id}-editor`;
    label.htmlFor = input.id;
    const described = area.getAttribute("aria-describedby");
    if (described) input.setAttribute("aria-describedby", described);
    if (this.begun) {
      this.editor.setSelection(this.editor.posFromIndex(from), this.editor.posFromIndex(to));
      this.editor.focus();
    }
    this.editor.on("changes", (editor, changes) => {
      editor.save();
      area.dispatchEvent(new Event("input", { bubbles: true }));
      changed(changes);
    });
    this.editor.on("cursorActivity", (editor) => editor.closeHint());
    this.editor.on("keyup", (_editor, event) => {
      const typing = /^[A-Za-z]$/.test(event.key) && !event.ctrlKey && !event.altKey && !event.metaKey;
      if (typing) this.hint(words, strings, true);
    });
  }

  value() {
    return this.editor.getValue();
  }

  /** Takes up the history of an earlier visit, where the text is still the one it led to. */
  remember(key) {
    try {
      const kept = JSON.parse(localStorage.getItem(key) ?? "null");
      if (kept?.text === this.value()) this.editor.setHistory(kept.history);
    } catch {
      // without an earlier history, a new one begins
    }
    window.addEventListener("pagehide", () => {
      try {
        const kept = JSON.stringify({ text: this.value(), history: this.editor.getHistory() });
        if (kept.length < MOST_KEPT) localStorage.setItem(key, kept);
      } catch {
        // no room or not allowed
      }
    });
  }

  /** While typing, words are offered once two letters of one are there; none is chosen before the writer does. */
  hint(words, strings, typing = false) {
    this.editor.showHint({
      completeSingle: !typing,
      updateOnCursorActivity: false, // its own way takes Enter for a choice while it waits for the next picture
      customKeys: HINT_KEYS,
      hint: (editor) => {
        const cursor = editor.getCursor();
        const typed = editor.getLine(cursor.line).slice(0, cursor.ch);
        const found = complete(typed, words, strings());
        const short = cursor.ch - found.from < 2;
        const offered = {
          list: typing && short ? [] : found.list.slice(0, 40),
          from: CodeMirror.Pos(cursor.line, found.from),
          to: cursor,
        };
        CodeMirror.on(offered, "select", () => (offered.chosen = true));
        if (typing) CodeMirror.on(offered, "shown", () => chooseNone(editor, offered));
        return offered;
      },
    });
  }

  /** Puts stretches of text in the place of others, as one step of the history. */
  apply(splices, origin = "+strip") {
    const editor = this.editor;
    editor.operation(() => {
      for (const splice of [...splices].sort((a, b) => b.from - a.from)) {
        const old = editor.getRange(editor.posFromIndex(splice.from), editor.posFromIndex(splice.to));
        if (old !== splice.text) {
          editor.replaceRange(splice.text, editor.posFromIndex(splice.from), editor.posFromIndex(splice.to), origin);
        }
      }
    });
  }

  /** A stretch that goes along with the text around it; empty it is still there. */
  follow(from, to) {
    const editor = this.editor;
    return editor.markText(editor.posFromIndex(from), editor.posFromIndex(to), {
      inclusiveLeft: true,
      inclusiveRight: true,
      clearWhenEmpty: false,
    });
  }

  read(mark) {
    const range = mark.find();
    return range ? this.editor.getRange(range.from, range.to) : null;
  }

  /** Only what differs is replaced, so that the history holds single letters. */
  write(mark, text) {
    const range = mark.find();
    if (!range) return false;
    const old = this.editor.getRange(range.from, range.to);
    if (old === text) return true;
    const start = SAME_START(old, text);
    const rest = [old.slice(start), text.slice(start)];
    const end = SAME_START([...rest[0]].reverse().join(""), [...rest[1]].reverse().join(""));
    const base = this.editor.indexFromPos(range.from) + start;
    this.apply([{ from: base, to: base + rest[0].length - end, text: rest[1].slice(0, rest[1].length - end) }]);
    return true;
  }

  insert(text) {
    this.editor.replaceSelection(text, "end", "+strip");
  }

  undo() {
    this.editor.undo();
  }

  redo() {
    this.editor.redo();
  }

  show(remarks) {
    const editor = this.editor;
    editor.operation(() => {
      this.marks.forEach((mark) => mark.clear());
      this.marks = remarks.map((remark) =>
        editor.markText(editor.posFromIndex(remark.from), editor.posFromIndex(remark.to), {
          className: `remark remark-${remark.weight}`,
          attributes: { title: remark.sentence },
        })
      );
    });
  }

  select(from, to) {
    this.editor.focus();
    this.editor.setSelection(this.editor.posFromIndex(from), this.editor.posFromIndex(to));
  }

  refresh() {
    this.editor.refresh();
  }
}
