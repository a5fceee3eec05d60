// A form that cannot be sent, for the browser knows that there is no net: it says so, and what was typed stays.
import { byId } from "./common/page.js";

const said = byId("no-net", HTMLElement);

document.addEventListener("submit", (event) => {
  if (navigator.onLine) return;
  event.preventDefault();
  said.textContent = said.dataset.said ?? "";
  said.scrollIntoView({ block: "nearest" });
});
addEventListener("online", () => (said.textContent = ""));
