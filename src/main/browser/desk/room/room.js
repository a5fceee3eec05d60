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
 * @param {() => Promise<unknown> | null} coming what will change a field and is waited for, if anything is
 * @returns {Draft | null} null in a room without a form
 */
export function openRoom(filled, coming = () => null) {
  const form = /** @type {HTMLFormElement | null} */ (document.getElementById("room"));
  const draft = form ? new Draft(form, filled, followSigns(new URL(form.action).pathname)) : null;
  showKeys(); // before the guard, which would leave the room by its link
  if (draft) guard(form, draft, coming);
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

/** Ways to other rooms are open once all that was pressed here is written and saved; by any other way out the browser asks. */
function guard(form, draft, coming) {
  let leaving = false;
  const written = async () => {
    for (let work = coming(); work; work = coming()) await work;
  };
  form.addEventListener("submit", async (event) => {
    if (!coming()) return;
    event.preventDefault();
    event.stopImmediatePropagation(); // the form says too little yet
    await written();
    form.requestSubmit(event.submitter);
  }, { capture: true });
  document.addEventListener("click", async (event) => {
    /** @type {HTMLAnchorElement | null} */
    const way = targetOf(event).closest("#page a[href]");
    if (!way || way.target || event.defaultPrevented || event.button || event.ctrlKey || event.metaKey) return;
    if (event.shiftKey || way.hash && way.pathname === location.pathname) return;
    if (!draft.dirty && !draft.sending && !coming()) return;
    event.preventDefault();
    await written();
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
    if (!leaving && (draft.dirty || coming())) event.preventDefault();
  });
}
