// A lesson whose sound is still being made: looks now and then how far it is. Who has just come gets the page anew where
// there is more to hear; who has begun to read or to do something is not disturbed, but told.
import { byId, partsOf } from "./common/page.js";

/** Milliseconds until it looks for the first time, by how much longer it waits each time, and the longest that it waits. */
const FIRST = 3000;
const LONGER = 1.3;
const LONGEST = 60_000;
/** Milliseconds in which nobody has read far, with the eyes or with a program that reads the page out. */
const JUST_COME = 15_000;

const note = byId("sound-follows", HTMLElement);
const part = partsOf(note);
let pause = FIRST;

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

function isUntouched() {
  return !navigator.userActivation?.hasBeenActive && scrollY === 0 && performance.now() < JUST_COME;
}

async function look() {
  if (document.visibilityState === "hidden") {
    document.addEventListener("visibilitychange", look, { once: true }); // nobody waits for it
  } else if (!await isMore()) {
    pause = Math.min(LONGEST, LONGER * pause);
    setTimeout(look, pause);
  } else if (isUntouched()) {
    location.reload();
  } else {
    part("coming").hidden = true;
    part("there").hidden = false;
  }
}

setTimeout(look, pause);
