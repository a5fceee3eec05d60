// A lesson whose sound is still being made: looks now and then how far it is, and opens the page anew when there is more
// to hear. Who has begun to do something here is not disturbed, but told.
import { byId, partsOf } from "./common/page.js";

const MILLISECONDS = 3000;

const note = byId("sound-follows", HTMLElement);
const part = partsOf(note);

/** Whether there is more now than this page shows. */
async function isMore() {
  try {
    const answer = await fetch(location.href, { cache: "no-cache" });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    return answer.ok && page.getElementById(note.id)?.dataset.played !== note.dataset.played;
  } catch {
    return false; // the line is down: there may be one the next time
  }
}

async function look() {
  if (!await isMore()) {
    setTimeout(look, MILLISECONDS);
  } else if (navigator.userActivation.hasBeenActive) {
    part("coming").hidden = true;
    part("there").hidden = false;
  } else {
    location.reload();
  }
}

setTimeout(look, MILLISECONDS);
