// Follows a build that is under way, until the lesson stands where it was sent.
import { byId } from "../../common/page.js";
import { replaceParts } from "./look.js";

const AGAIN = 2000; // milliseconds

export function followCalendar() {
  const calendar = document.getElementById("calendar");
  if (calendar) setTimeout(() => follow(`${calendar.dataset.path}/calendar`), AGAIN);
}

async function follow(address) {
  const before = byId("calendar", HTMLElement);
  if (before.dataset.busy !== "yes") return;
  try {
    const answer = await fetch(address);
    if (answer.ok) replaceParts(await answer.text());
    // the buttons of the page fit the state it was in
    if (byId("calendar", HTMLElement).dataset.out !== before.dataset.out) return location.reload();
  } catch {
    // asked again below
  }
  setTimeout(() => follow(address), AGAIN);
}
