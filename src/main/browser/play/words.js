// What the page says, in its own language: the server puts the words into a template.
import { byId, wordsOf } from "../common/page.js";

const words = byId("practice-words", HTMLTemplateElement).content;

/** The words of that name, with `{0}` and so on filled in. */
export const say = wordsOf(words);

/** The words of that name if the page has any, else `otherwise`. */
export function sayOr(name, otherwise) {
  return words.querySelector(`[data-word="${CSS.escape(name)}"]`) ? say(name) : otherwise;
}

/** What the button says that plays and stops, by what a practice is at. */
export function goWords(state) {
  return say({ stopped: "play", loading: "wait", playing: "pause" }[state]);
}

/** A whole or a decimal number as the reader writes it. */
export function number(value) {
  return new Intl.NumberFormat(document.documentElement.lang, { maximumFractionDigits: 1 }).format(value);
}
