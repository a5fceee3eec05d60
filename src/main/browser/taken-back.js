// The page of a lesson that was taken back: what this device keeps of it goes as well, and its reader is told.
import { byId } from "./common/page.js";
import { isOffered, noteAt, remove } from "./keep/copies.js";

const note = await isOffered() ? await noteAt(location.pathname) : null;
if (note) {
  await remove(note.lesson);
  const said = byId("copy-removed", HTMLElement);
  said.textContent = said.dataset.said ?? "";
}
