// What the page says, in its own language: the server puts the words into a template.

const words = new Map(
  [...document.getElementById("practice-words").content.querySelectorAll("[data-word]")].map((element) => [
    element.dataset.word,
    element.textContent,
  ]),
);

/** The words of that name, with `{0}` and so on filled in. */
export function say(name, ...values) {
  return words.get(name).replace(/\{(\d)\}/g, (_, place) => String(values[place]));
}

/** The words of that name if the page has any, else `otherwise`. */
export function sayOr(name, otherwise) {
  return words.has(name) ? say(name) : otherwise;
}

/** A whole or a decimal number as the reader writes it. */
export function number(value) {
  return new Intl.NumberFormat(document.documentElement.lang, { maximumFractionDigits: 1 }).format(value);
}
