// Words that are offered while a line is written. None is chosen before the writer does, so that Enter and Tab mean what
// they always mean; asked for with Ctrl+space, the first one is chosen, and one that is alone is taken.
import {
  acceptCompletion,
  autocompletion,
  completionStatus,
  currentCompletions,
  setSelectedCompletion,
  startCompletion,
} from "@codemirror/autocomplete";
import { Prec } from "@codemirror/state";
import { EditorView, keymap, tooltips } from "@codemirror/view";
import { complete } from "./words.js";

const MOST = 40;
const LEAST = 2; // letters of a word before it is offered unasked
const NONE = -1;

/**
 * @param words the words of line text
 * @param strings tells how the strings are called at this moment
 */
export function offers(words, strings) {
  let asked = false;
  const ask = (view) => (asked = startCompletion(view));
  const find = ({ state, pos, explicit }) => {
    const line = state.doc.lineAt(pos);
    const typed = line.text.slice(0, pos - line.from);
    const { from, list } = complete(typed, words, strings());
    if (!explicit && (typed.length - from < LEAST || !/[A-Za-z]$/.test(typed))) return null;
    const options = list.slice(0, MOST).map((label) => ({ label }));
    return options.length ? { from: line.from + from, options, filter: false } : null;
  };
  return [
    Prec.highest(keymap.of([{ key: "Ctrl-Space", run: ask }, { key: "Tab", run: acceptCompletion }])),
    autocompletion({
      override: [find],
      selectOnOpen: false,
      activateOnTypingDelay: 0,
      interactionDelay: 0, // nothing is chosen that could be taken by mistake
      icons: false,
    }),
    tooltips({ position: "absolute" }), // goes along when what stands above the editor grows
    EditorView.updateListener.of(({ docChanged, state, view }) => {
      const status = completionStatus(state);
      if (docChanged) {
        asked = false;
        if (status) view.dispatch({ effects: setSelectedCompletion(NONE) }); // typed on: what was chosen may be another word
      } else if (asked && status === "active") {
        asked = false;
        view.dispatch({ effects: setSelectedCompletion(0) });
        if (currentCompletions(state).length === 1) acceptCompletion(view);
      } else if (!status) {
        asked = false;
      }
    }),
  ];
}
