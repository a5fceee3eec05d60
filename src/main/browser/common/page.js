// What the server has put into a page: elements by their names, and sentences in the reader's language.

/**
 * The element of that id.
 * @template {HTMLElement} T
 * @param {string} id
 * @param {new () => T} kind
 * @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new TypeError(`#${id} of this page is no ${kind.name}`);
}

/**
 * What stands at `selector` below `root`, where the server's template always puts something.
 * @param {ParentNode} root
 * @param {string} selector
 * @returns {HTMLElement}
 */
export function inside(root, selector) {
  const found = root.querySelector(selector);
  if (found instanceof HTMLElement) return found;
  throw new TypeError(`nothing stands at ${selector}`);
}

/**
 * What an event of the page happened to.
 * @param {Event} event
 * @returns {HTMLElement}
 */
export function targetOf(event) {
  return /** @type {HTMLElement} */ (event.target);
}

/**
 * Whether somebody types where an event happened, so that a key is a letter there.
 * @param {Event} event
 */
export function isTyping(event) {
  const at = /** @type {HTMLElement} */ (event.composedPath()[0]);
  if (at instanceof HTMLInputElement) return !["checkbox", "radio", "button", "range", "submit"].includes(at.type);
  return at instanceof HTMLTextAreaElement || at instanceof HTMLSelectElement || at.isContentEditable;
}

/**
 * Whether a key with the one that commands (Control, or Command on a Mac) is this letter.
 * @param {KeyboardEvent} event
 * @param {string} letter
 */
export function isCommand(event, letter) {
  return (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === letter;
}

/**
 * Finds parts of `root` by their `data-part`; each is of the kind that the server's template makes it.
 * @param {HTMLElement} root
 * @returns {(name: string) => any}
 */
export function partsOf(root) {
  return (name) => root.querySelector(`[data-part="${name}"]`);
}

/**
 * Finds sentences among the `data-word` elements of `root`, with `{0}` and so on filled in.
 * @param {ParentNode} root
 * @returns {(name: string, ...values: unknown[]) => string}
 */
export function wordsOf(root) {
  const words = new Map();
  for (const element of root.querySelectorAll("[data-word]")) {
    words.set(element.getAttribute("data-word"), element.textContent);
  }
  return (name, ...values) => {
    if (!words.has(name)) throw new RangeError(`this page has no words for ${name}`);
    return words.get(name).replace(/\{(\d)\}/g, (_, place) => String(values[place]));
  };
}

/**
 * A new element: `text` and `class` stand for its text and its classes, everything else for an attribute.
 * @param {string} name
 * @param {Record<string, unknown>} attributes
 * @param {...(Node | string)} children
 * @returns {any} of the kind that the name says
 */
export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key === "text") made.textContent = String(value);
    else if (key === "class") made.className = String(value);
    else made.setAttribute(key, String(value));
  }
  made.append(...children);
  return made;
}

/**
 * What stands in the fields of a form, ready to be sent.
 * @param {HTMLFormElement} form
 */
export function typedIn(form) {
  return new URLSearchParams(/** @type {any} */ (new FormData(form))); // its fields of files are sent otherwise
}
