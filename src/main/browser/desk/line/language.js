// How the words of line text are told apart by colour and weight. Each line of the text stands for itself.
import { HighlightStyle, StreamLanguage, syntaxHighlighting } from "@codemirror/language";
import { tags } from "@lezer/highlight";

/** @type {import("@codemirror/language").StreamParser<{first: boolean, count: boolean}>} */
export const lineText = {
  name: "line-text",
  startState: () => ({ first: true, count: false }),
  token(stream, state) {
    if (stream.sol()) {
      state.first = true;
      state.count = false;
      if (stream.match(/^\s*#.*/)) return "comment";
    }
    if (stream.match(/^\s{2,}#.*/)) return "comment";
    if (stream.eatSpace()) return null;
    if (state.first) {
      state.first = false;
      if (stream.match(/^\d[^\s]*/)) {
        state.count = true;
        return "number";
      }
      if (stream.match(/^bar\b.*?(?=\s{2,}#|$)/)) return "heading";
      if (stream.match(/^[a-z]+/)) return "keyword";
    }
    if (state.count) {
      if (stream.match(/^"[^"]*"?/)) return "string";
      if (stream.match(/^(s\d+(f\d+|x)|[A-G][#b]*(\d+|x))/)) return "atom";
      if (stream.match(/^(rest|hold)\b/)) return "modifier";
      if (stream.match(/^\d[^\s,+*]*(?=\s)/)) return "number";
      if (stream.match(/^[a-z]+/)) return "propertyName";
    }
    stream.next();
    return null;
  },
  languageData: { commentTokens: { line: "#" } },
};

const colours = HighlightStyle.define([
  { tag: tags.comment, color: "var(--ink-soft)", fontStyle: "italic" },
  { tag: [tags.keyword, tags.heading], color: "var(--accent-strong)", fontWeight: "700" },
  { tag: tags.number, fontWeight: "700" },
  { tag: tags.atom, color: "var(--accent)" },
  { tag: [tags.modifier, tags.propertyName, tags.string], color: "var(--ink-soft)" },
]);

export const language = [StreamLanguage.define(lineText), syntaxHighlighting(colours)];
