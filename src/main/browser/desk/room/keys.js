// The page of keys, over the room one is in: by the question mark, or by its link.
import { element, inside, isTyping, targetOf } from "../../common/page.js";

/** From the press until the page is closed again. */
let open = false;

/** @param {string} way of the page; where it cannot be shown over the room, the browser goes there */
async function show(way) {
  if (open) return;
  open = true;
  try {
    const dialog = dialogOf(await fetched(way));
    dialog.addEventListener("close", () => {
      dialog.remove();
      open = false;
    });
    document.body.append(dialog);
    dialog.showModal();
  } catch {
    open = false;
    location.assign(way);
  }
}

/** @param {string} way */
async function fetched(way) {
  const answer = await fetch(way);
  if (!answer.ok) throw new Error(String(answer.status));
  return new DOMParser().parseFromString(await answer.text(), "text/html");
}

/**
 * @param {Document} page that of the keys; a sign-in page, where the session has ended, has none
 * @returns {HTMLDialogElement}
 */
function dialogOf(page) {
  const keys = inside(page, "#keys");
  const close = element("button", { type: "button", class: "button-quiet", text: String(keys.dataset.close) });
  const dialog = element("dialog", { class: "keys-dialog", "aria-labelledby": "keys-head" }, close, keys);
  close.addEventListener("click", () => dialog.close());
  return dialog;
}

export function showKeys() {
  /** @type {HTMLAnchorElement | null} */
  const link = document.querySelector("a[data-keys]");
  if (!link) return;
  document.addEventListener("keydown", (event) => {
    if (event.key !== "?" || isTyping(event) || open || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    show(link.href);
  });
  document.addEventListener("click", (event) => {
    if (targetOf(event).closest("a[data-keys]") && !event.ctrlKey && !event.metaKey && !event.shiftKey) {
      event.preventDefault();
      show(link.href);
    }
  });
}
