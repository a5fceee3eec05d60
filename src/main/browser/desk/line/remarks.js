// What is to be said of a line, underlined where it stands in the text.
import { StateEffect, StateField } from "@codemirror/state";
import { Decoration, EditorView } from "@codemirror/view";

/** @type {import("@codemirror/state").StateEffectType<import("@codemirror/view").DecorationSet>} */
const shown = StateEffect.define();

/** Goes along with the text until the next remarks are known. */
export const underlines = StateField.define({
  create: () => Decoration.none,
  update(now, transaction) {
    const next = transaction.effects.find((effect) => effect.is(shown));
    return next ? next.value : now.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

/** The effect after which `remarks`, of the text as it stands, are underlined and no others. */
export function underlining(remarks) {
  const marks = remarks
    .filter((remark) => remark.from < remark.to) // what is missing has no place to underline
    .map((remark) =>
      Decoration.mark({
        class: `remark remark-${remark.weight}`,
        attributes: { title: remark.sentence },
      }).range(remark.from, remark.to)
    );
  return shown.of(Decoration.set(marks, true));
}
