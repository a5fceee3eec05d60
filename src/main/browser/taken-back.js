// The page of a lesson that was taken back: what this device keeps of it goes as well, and its reader is told.
import { byId } from "./common/page.js";
import { isOffered, removeAt } from "./keep/copies.js";

if (await isOffered() && await removeAt(location.pathname)) {
  const said = byId("copy-removed", HTMLElement);
  said.textContent = said.dataset.said ?? "";
}
