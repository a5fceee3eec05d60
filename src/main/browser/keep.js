// A lesson's page: keeps it on this device at a press, says what is kept and how old that is, and lets it go again.
import { spacesIn } from "./common/fitted.js";
import { byId, inside, partsOf, wordsOf } from "./common/page.js";
import { Refused } from "./common/patience.js";
import { isOffered, noteOf, notes, remove } from "./keep/copies.js";
import { keep, reckon } from "./keep/keeping.js";
import { dayWords, sizeWords } from "./keep/words.js";
import { sheetsOn } from "./play/fit.js";
import { Settings } from "./play/remember.js";

const place = inside(document, "[data-keep]");
const part = partsOf(place);
const say = wordsOf(byId("keep-words", HTMLTemplateElement).content);
const { lesson = "", release = "" } = place.dataset;
const copied = document.documentElement.dataset.kept;
/** @type {AbortController | null} while it is being kept */
let keeping = null;
/** Which copy there was when it was last looked for. */
let known = "";

/** The sheets of the page's lines for this screen: those of the stand, and those of large notes on the page. */
function sheetsOf(page) {
  const settings = new Settings();
  const screens = [{ width: screen.width, height: screen.height }];
  if (innerWidth !== screen.width) screens.push({ width: innerWidth, height: innerHeight });
  const chosen = { staves: settings.get("stand-staves"), size: settings.get("stand-size") };
  const larger = ["large", "largest"].flatMap((size) => {
    const spaces = [screen.width, screen.height, innerWidth].flatMap((width) => spacesIn(width, size) ?? []);
    return spaces.map((wide) => ({ staves: "both", spaces: wide }));
  });
  const all = [...screens.flatMap((one) => sheetsOn(one, chosen)), ...larger];
  return [...page.querySelectorAll("[data-fitted]")].flatMap((figure) => {
    const bytes = figure.querySelector("svg")?.outerHTML.length ?? 0;
    const names = new Set(all.map(({ staves, spaces }) => `${figure.dataset.fitted}/${staves}/${spaces}`));
    return [...names].map((name) => ({ address: new URL(name, location.href).href, bytes }));
  });
}

/** What stands there, as it is now. */
async function show() {
  const note = await noteOf(lesson);
  known = note ? `${note.release} ${note.whole} ${note.at}` : "";
  const isWhole = note?.whole === true;
  const isOlder = isWhole && note.release !== release;
  part("copy-keep").textContent = say(isOlder ? "renew" : note && !isWhole ? "on" : "keep");
  part("copy-keep").hidden = keeping !== null || isWhole && !isOlder || copied !== undefined;
  part("copy-stop").hidden = keeping === null;
  part("copy-remove").hidden = keeping !== null || note === null;
  part("copy-progress").hidden = keeping === null;
  part("copy-list").hidden = (await notes()).length === 0;
  part("copy-size").hidden = keeping !== null || isWhole && !isOlder || copied !== undefined;
  return note;
}

/** What the reader is told of the copy. @param {import("./keep/copies.js").Note | null} note */
function state(note) {
  if (!note) return "";
  if (!note.whole) return say("half");
  const kept = say(note.release === release ? "kept" : "older", dayWords(note.at), sizeWords(note.bytes));
  return note.recordings ? `${kept} ${say("recordings")}` : kept;
}

async function press() {
  if (keeping) return; // the second of two presses
  keeping = new AbortController();
  const problem = await attempt(keeping.signal).then(() => "", wrong);
  keeping = null;
  const stood = document.activeElement === part("copy-stop"); // it goes; who has gone on meanwhile is left where they are
  const note = await show();
  tell(problem || (note ? state(note) : say("removed"))); // in another window
  if (stood) part("copy-said").focus();
}

/** @param {AbortSignal} signal */
async function attempt(signal) {
  if (!await hasRoom()) throw new DOMException("", "QuotaExceededError");
  tell(say("keeping"));
  await show();
  part("copy-stop").focus();
  await keep(location.pathname, sheetsOf, signal, progress);
  navigator.storage?.persist?.(); // a browser that is short of room then asks before it clears this
}

/** Why it could not be kept, and what helps. */
function wrong(fault) {
  if (fault.name === "AbortError") return say("stopped");
  if (fault.name === "QuotaExceededError") return say("full");
  if (fault instanceof Refused && fault.status === 410) return say("gone");
  if (fault.name === "SecurityError") return say("refused");
  return say("broken");
}

/** Whether the browser reckons with room for it. */
async function hasRoom() {
  const { quota, usage } = await navigator.storage?.estimate?.() ?? {};
  return quota === undefined || usage === undefined || quota - usage > await about;
}

function progress(done, all) {
  part("copy-progress").value = done / all;
}

/** What is said already is not said again: it would be read out once more. */
function tell(words) {
  if (part("copy-said").textContent !== words) part("copy-said").textContent = words;
}

/** In another window it may have been kept or removed meanwhile; else what was said here stays. */
async function seenAgain() {
  if (keeping || document.visibilityState === "hidden") return;
  const before = known;
  const note = await show();
  if (known !== before) tell(state(note));
}

async function letGo() {
  await remove(lesson);
  await show();
  tell(say("removed"));
  part("copy-said").focus();
}

/** @type {Promise<number>} bytes, reckoned */
let about = Promise.resolve(0);

if (await isOffered()) {
  part("copy-keep").addEventListener("click", press);
  part("copy-stop").addEventListener("click", () => keeping?.abort());
  part("copy-remove").addEventListener("click", letGo);
  if (copied) {
    part("copy-note").textContent = say("copy", dayWords(copied));
    part("copy-note").hidden = false;
  } else {
    about = reckon(document, sheetsOf(document)).catch(() => 0);
    const bytes = await about;
    part("copy-size").textContent = bytes ? say("size", sizeWords(bytes)) : "";
  }
  tell(state(await show()));
  place.hidden = false;
  document.addEventListener("visibilitychange", seenAgain);
}
