// Sends pictures for notes without leaving the room, and sets them where the writer is.
import { byId } from "../../common/page.js";

const LARGEST = 15_000_000; // bytes

/** Brings the form of the notes' pictures to life, where there is one. */
export function sendPictures() {
  const form = document.getElementById("send-picture");
  if (!form) return;
  const file = byId("picture", HTMLInputElement);
  const words = byId("words", HTMLInputElement);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const chosen = file.files?.[0];
    if (!chosen) return file.focus();
    if (chosen.size > LARGEST) return tell(file.dataset.tooLarge);
    if (!words.value.trim()) {
      tell(words.dataset.missing);
      return words.focus();
    }
    send(chosen, file, words);
  });
}

function tell(text = "") {
  byId("picture-problem", HTMLElement).textContent = text;
}

/** @param {File} chosen @param {HTMLInputElement} file @param {HTMLInputElement} words */
async function send(chosen, file, words) {
  tell();
  const { path } = byId("room", HTMLFormElement).dataset;
  const query = new URLSearchParams({ name: chosen.name, words: words.value });
  try {
    const answer = await fetch(`${path}/pictures?${query}`, { method: "PUT", body: chosen });
    if (answer.status === 401) return tell(file.dataset.expired);
    const said = await answer.json();
    if (!answer.ok) return tell(said.detail);
    set(said.typed);
    file.value = "";
    words.value = "";
    byId("live-word", HTMLElement).textContent = file.dataset.done ?? "";
  } catch {
    tell(file.dataset.failed);
  }
}

/** As a paragraph of its own behind the line in which the writer was last; undone as if it had been typed. */
function set(typed) {
  const notes = byId("notes", HTMLTextAreaElement);
  const end = notes.value.indexOf("\n", notes.selectionEnd);
  const at = end < 0 ? notes.value.length : end;
  const before = notes.value.slice(0, at);
  const after = notes.value.slice(at);
  const gap = before === "" || before.endsWith("\n\n") ? "" : before.endsWith("\n") ? "\n" : "\n\n";
  const piece = gap + typed + (after === "" || after.startsWith("\n\n") ? "" : "\n");
  notes.focus();
  notes.setSelectionRange(at, at);
  if (document.execCommand("insertText", false, piece)) return;
  notes.setRangeText(piece, at, at, "end");
  notes.dispatchEvent(new Event("input", { bubbles: true }));
}
