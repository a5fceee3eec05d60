// What every room of a lesson does: saves as one types, leads to the rooms before and after by a key, and lets nobody go
// before the server has what was typed.
import { isCommand, targetOf } from "../../common/page.js";
import { Draft } from "../draft/draft.js";
import { showKeys } from "./keys.js";
import { followSigns } from "./signs.js";

const KEYS = new Map([["Comma", ","], ["Period", "."]]);

/**
 * Brings the room to life.
 * @param {() => void} filled called after fields were given other values
 * @returns {Draft | null} null in a room without a form
 */
export function openRoom(filled) {
  const form = /** @type {HTMLFormElement | null} */ (document.getElementById("room"));
  const draft = form ? new Draft(form, filled, followSigns(new URL(form.action).pathname)) : null;
  showKeys(); // before the guard, which would leave the room by its link
  if (draft) guard(form, draft);
  document.addEventListener("keydown", (event) => {
    if (draft && isCommand(event, "s") && !event.shiftKey) {
      event.preventDefault();
      return draft.saveNow();
    }
    if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || !KEYS.has(event.code)) return;
    /** @type {HTMLAnchorElement | null} */
    const way = document.querySelector(`.room-foot a[data-key="${KEYS.get(event.code)}"]`);
    if (!way) return;
    event.preventDefault();
    way.click();
  });
  return draft;
}

/** Ways to other rooms are open once this one is saved; by any other way out the browser asks. */
function guard(form, draft) {
  let leaving = false;
  document.addEventListener("click", async (event) => {
    /** @type {HTMLAnchorElement | null} */
    const way = targetOf(event).closest("#page a[href]");
    if (!way || way.target || event.defaultPrevented || event.button || event.ctrlKey || event.metaKey) return;
    if (event.shiftKey || way.hash && way.pathname === location.pathname || !draft.dirty && !draft.sending) return;
    event.preventDefault();
    if (!(await draft.settled())) return;
    leaving = true;
    location.assign(way.href);
  });
  form.addEventListener("submit", (event) => {
    leaving = !event.defaultPrevented;
  });
  window.addEventListener("pagehide", () => {
    if (!leaving) draft.keepUnsaved();
  });
  window.addEventListener("beforeunload", (event) => {
    if (!leaving && draft.dirty) event.preventDefault();
  });
}
