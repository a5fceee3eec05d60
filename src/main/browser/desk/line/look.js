// How the editor looks: colours and letters of the page, which custom properties bring into it.
import { EditorView } from "@codemirror/view";

const LEAST_HEIGHT = "8rem";

export const look = EditorView.theme({
  "&": {
    minHeight: LEAST_HEIGHT,
    border: "1px solid var(--edge)",
    borderRadius: "var(--round)",
    background: "var(--sheet)",
    color: "var(--ink)",
    fontSize: "0.9375rem",
  },
  "&.cm-focused": { outline: "var(--focus)", outlineOffset: "2px" },
  ".cm-scroller": { minHeight: LEAST_HEIGHT, fontFamily: "var(--code)", lineHeight: "1.5" },
  ".cm-content": { caretColor: "var(--ink)" },
  ".cm-gutters": { background: "var(--shade)", borderRight: "1px solid var(--rule)", color: "var(--ink-soft)" },
  "::selection": { background: "var(--accent-wash)", color: "inherit" },
  ".remark": { textDecoration: "underline wavy var(--warm) 1.5px", textUnderlineOffset: "0.2em" },
  ".remark-error, .remark-impossible": { textDecorationColor: "var(--wrong)" },
  ".cm-tooltip": { border: "1px solid var(--edge)", background: "var(--sheet)", color: "var(--ink)" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul": { fontFamily: "var(--code)" },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { background: "var(--accent)", color: "var(--on-accent)" },
});
