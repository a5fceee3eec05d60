// The page of keys, over the room one is in: by the question mark, or by its link.
import { element, inside, isTyping, targetOf } from "../../common/page.js";

/** @type {HTMLDialogElement | null} */
let shown = null;

/** @param {string} way of the page */
async function open(way) {
  const answer = await fetch(way);
  if (!answer.ok) return location.assign(way);
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const keys = inside(page, "#keys");
  const close = element("button", { type: "button", class: "button-quiet", text: String(keys.dataset.close) });
  /** @type {HTMLDialogElement} */
  const dialog = element("dialog", { class: "keys-dialog", "aria-labelledby": "keys-head" }, keys, close);
  close.addEventListener("click", () => dialog.close());
  dialog.addEventListener("close", () => {
    dialog.remove();
    shown = null;
  });
  shown = dialog;
  document.body.append(dialog);
  dialog.showModal();
}

export function showKeys() {
  /** @type {HTMLAnchorElement | null} */
  const link = document.querySelector("a[data-keys]");
  if (!link) return;
  document.addEventListener("keydown", (event) => {
    if (event.key !== "?" || isTyping(event) || shown || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    open(link.href);
  });
  document.addEventListener("click", (event) => {
    if (targetOf(event).closest("a[data-keys]") && !event.ctrlKey && !event.metaKey && !event.shiftKey) {
      event.preventDefault();
      open(link.href);
    }
  });
}
