// The play-along page: finds the lines of a page, and brings their panels to life. Without it the plain tracks serve.
import { element } from "./common/page.js";
import { patiently, receivedJson, Refused } from "./common/patience.js";
import { tell, whereToTell } from "./common/tell.js";
import { asked as wanted, show } from "./play/address.js";
import { beginAll } from "./play/arriving.js";
import { stayAwake } from "./play/awake.js";
import { silence } from "./play/balance.js";
import { watchDrag } from "./play/drag.js";
import { watchKeys } from "./play/keys.js";
import { MediaKeys } from "./play/media.js";
import { Neck } from "./play/neck.js";
import { ownTracks } from "./play/own.js";
import { Panel } from "./play/panel.js";
import { AGAIN } from "./play/parts.js";
import { Practice } from "./play/practice.js";
import { LineSettings, Settings } from "./play/remember.js";
import { Score } from "./play/score.js";
import { readEvent, Sheet } from "./play/sheet.js";
import { Played } from "./play/sitting.js";
import { Stand } from "./play/stand.js";
import { Stems } from "./play/stems.js";
import { watchSteps } from "./play/steps.js";
import { Used } from "./play/used.js";
import { Ways } from "./play/ways.js";
import { say } from "./play/words.js";
import { Marks, today } from "./practised/marks.js";

/** Milliseconds after the reader's own scrolling in which the page does not scroll by itself. */
const LEAVE = 4000;

const settings = new Settings();
const stand = new Stand(settings);
const marks = new Marks();
/** The lesson whose practice is remembered; none in a preview. @type {HTMLElement | null} */
const remembered = document.querySelector("[data-practised][data-lesson]");
/** Where this page tells what was played; null where it does not. */
const telling = whereToTell();
/** @type {HTMLElement[]} where lines are practised, in the order of the page */
const places = [...document.querySelectorAll(/** @type {any} */ (".practice[data-manifest]"))];
/** The lines that can be practised, in the order of the page, each `{practice, panel, sheet}`. */
export const lines = [];
const used = new Used(lines);

/** Theirs is the line that keys are for. */
const media = new MediaKeys({
  play: () => used.line?.practice.state === "stopped" && used.line.practice.go(),
  pause: () => used.line?.practice.stop(),
  stop: () => used.line?.practice.stop(),
  previoustrack: () => used.line?.practice.back(),
  nexttrack: () => used.line?.practice.on(),
});

function manifestAddress(place) {
  return new URL(place.dataset.manifest, document.baseURI);
}

function bring(place) {
  return patiently(() => receivedJson(manifestAddress(place)), { again: AGAIN });
}

function begin(place, manifest) {
  const address = manifestAddress(place);
  const sheet = new Sheet(place.parentElement.querySelector(".sheet"));
  const score = Score.of(manifest);
  const band = new Stems(score, address);
  const sources = [{ title: say("band"), source: band }, ...ownTracks(manifest, address, band)];
  const own = new LineSettings(settings, `${location.pathname}#${place.id}`, score.percents);
  const practice = new Practice({ source: band, sheet, settings: own });
  const isFirst = place === places[0];
  goTo(wanted(location.search, place.id, isFirst, score), practice);
  const panel = new Panel(place, practice, place.dataset.title, sources);
  if (manifest.places) new Neck(panel.neck(), practice, manifest);
  const { title } = place.dataset;
  const { fitted } = sheet.figure.dataset;
  const name = place.id.replace("-practice", "");
  const line = { place, practice, panel, sheet, title, fitted, name, played: new Played(name) };
  lines.push(line);
  lines.sort((one, other) => places.indexOf(one.place) - places.indexOf(other.place));
  watch(line, place);
  /** @type {NodeListOf<HTMLAnchorElement>} */
  const links = document.querySelectorAll(`a[data-practice="${place.id}"]`);
  for (const link of links) {
    link.hash = "#sheet";
    link.addEventListener("click", (event) => lead(event, place, panel));
  }
  /** @type {HTMLElement | null} */
  const told = document.querySelector(`[data-practice-of="${place.id}"]`);
  if (told) {
    const ways = new Ways(told, line);
    practice.addEventListener("lit", (event) => ways.mark(/** @type {CustomEvent<any[]>} */ (event).detail));
    watchSteps(told, line);
  }
  own.addEventListener("change", (event) => {
    const { detail } = /** @type {CustomEvent<string>} */ (event);
    if (["percent", "from", "to"].includes(detail)) show(place.id, isFirst, placeOf(practice, own));
  });
  warmWhenSeen(place, practice);
}

/** Says it where the player would stand. */
function away(place, problem) {
  const word = problem instanceof Refused && problem.isBusy ? "awayBusy" : "away";
  place.append(element("p", { class: "practice-said", role: "status", text: say(word) }));
  place.hidden = false;
}

/** To the sheet for the eye, and to the button that plays for the keyboard: following a link would leave it with nothing. */
function lead(press, place, panel) {
  if (press.ctrlKey || press.metaKey || press.shiftKey) return;
  press.preventDefault();
  place.parentElement.scrollIntoView();
  panel.reach();
}

/** What the page's address asks for, as far as the line has it. */
function goTo(place, practice) {
  if (!place) return;
  practice.setRange(place.from, place.to);
  if (place.percent) practice.setTempo(practice.score.bpm(place.percent));
}

/** What the address says of a line: nothing of what is usual. */
function placeOf(practice, own) {
  const percent = own.get("percent");
  const range = own.get("from") || own.get("to") ? [own.get("from"), own.get("to")] : null;
  return { range, tempo: percent === own.usual ? null : practice.score.bpm(percent) };
}

function watch(line, place) {
  const { practice, panel, sheet } = line;
  sheet.figure.classList.add("practice-sheet");
  reach(sheet.figure, () => line);
  used.watch(line, [place, sheet.figure]);
  practice.addEventListener("change", () => practice.state !== "stopped" && follow(line));
  practice.addEventListener("change", watchScreen);
  practice.addEventListener("change", () => line === used.line && media.tell(line.title, practice.state !== "stopped"));
  panel.standWanted(() => stand.open(line));
  if (remembered?.dataset.lesson) panel.askable(remembered.dataset.lesson, line.name);
  panel.show();
}

/** Lets fingers, mouse and keys reach the music in a figure; `line()` says whose it is. */
function reach(figure, line) {
  watchDrag(figure, () => line().sheet, {
    tapped: (event) => line().practice.beginAt(event),
    dragged: (one, other) => line().practice.consider(one, other),
    chosen: (one, other) => line().practice.choose(one, other),
    left: () => line().practice.consider(null),
  });
  figure.addEventListener("pointerdown", (event) => (line().tapped = event.target.closest("g.event")));
  figure.addEventListener("keydown", (event) => fromTheSheet(event, line()));
  figure.addEventListener("click", (event) => pressed(event, line()));
}

/** The screen stays lit while something sounds, and as long as the music stands on the stand. */
function watchScreen() {
  stayAwake(stand.line !== null || lines.some((one) => one.practice.state !== "stopped"));
}

reach(stand.figure, () => stand.line);
stand.addEventListener("open", () => used.use(stand.line));
for (const turn of ["open", "close"]) stand.addEventListener(turn, watchScreen);

/** A press that no pointer made (W3C UI Events: its count of clicks is 0) comes from a program that reads the page out. */
function pressed(click, { practice }) {
  const event = click.detail === 0 && click.target.closest("g.event");
  if (event) practice.beginAt(readEvent(event));
}

/**
 * Enter and Space begin at the event that has the focus, as they press any button (WAI-ARIA); with Shift they repeat from
 * where that was last done up to this one. On an event that has the focus from a tap Space plays and stops as elsewhere.
 */
function fromTheSheet(pressed, line) {
  const focused = pressed.target.closest?.("g.event");
  if (!focused || !["Enter", " "].includes(pressed.key)) return;
  pressed.preventDefault();
  if (pressed.repeat) return;
  if (pressed.key === " " && focused === line.tapped) {
    line.practice.go();
    return;
  }
  const event = readEvent(focused);
  if (pressed.shiftKey) {
    line.practice.choose(line.begun ?? event, event);
    return;
  }
  line.begun = event;
  line.practice.beginAt(event);
}

/** With each picture of the screen, while something sounds. */
function follow(line) {
  if (line.following) return;
  line.following = true;
  let bar = null;
  const look = () => {
    const { practice, panel, sheet } = line;
    practice.light();
    remember(line);
    hear(line);
    panel.showPlace();
    if (stand.line === line) stand.showTempo();
    const begins = bar === null;
    const index = begins ? practice.index : practice.place.index;
    if (index !== undefined && index !== bar) {
      if (stand.line === line) stand.follow(index);
      else if (begins ? isFollowed() : mayScroll()) sheet.follow(practice.score.bars[index].bar, panel.covered);
      bar = index;
    }
    line.following = practice.state !== "stopped";
    if (line.following) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** A passage that was played to its end is remembered with its tempo. */
function remember(line) {
  const { practice, name, heard } = line;
  const step = practice.engine.heard()?.step;
  if (remembered && step?.round > heard?.round) {
    const [from, to] = practice.range ?? ["", ""];
    const mark = { day: today(), tempo: practice.score.bpm(heard.percent), from, to };
    const { lesson = "", title = "", signedIn } = remembered.dataset;
    marks.note(lesson, title, name, mark, signedIn === "true");
  }
  if (step) line.heard = step; // while a round is counted in, the one before it is not forgotten
}

function hear({ practice, played }) {
  const { first, last } = practice.engine.range;
  const range = { first, last, whole: practice.range === null };
  played.hear(practice.engine.heard()?.step, range, practice.score.bars);
}

/** A page that is hidden may be gone without another word (W3C Page Visibility). */
addEventListener("visibilitychange", () => {
  if (!telling || document.visibilityState !== "hidden") return;
  tell(telling, "played", lines.flatMap(({ played, practice }) => played.news(practice.score.bars) ?? []));
});

let scrolled = -Infinity;
for (const way of ["wheel", "touchmove", "keydown"]) {
  addEventListener(way, () => (scrolled = performance.now()), { passive: true });
}

/** Not while the reader works in a panel. */
function isFollowed() {
  return settings.get("follow") && !document.activeElement?.closest(".practice-work");
}

/** Nor while the reader scrolls. */
function mayScroll() {
  return isFollowed() && performance.now() - scrolled > LEAVE;
}

/** The first bar is fetched as soon as its panel comes near the window, unless the reader saves data. */
function warmWhenSeen(place, practice) {
  if (/** @type {any} */ (navigator).connection?.saveData) return;
  const watcher = new IntersectionObserver(
    (entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      watcher.disconnect();
      practice.engine.warm();
    },
    { rootMargin: "200px" },
  );
  watcher.observe(place.parentElement);
}

watchKeys(() => used.line !== null && settings.get("keys"), {
  go: () => used.line.practice.go(),
  rewind: () => used.line.practice.rewind(),
  slower: () => used.line.practice.slower(),
  faster: () => used.line.practice.faster(),
  back: () => used.line.practice.back(),
  on: () => used.line.practice.on(),
  loopFrom: () => used.line.practice.loopFrom(),
  loopTo: () => used.line.practice.loopTo(),
  loopNone: () => used.line.practice.wholeLine(),
  countIn: () => settings.set("countIn", !settings.get("countIn")),
  silence: (n) => silence(used.line.practice, n),
});

await beginAll(places, bring, begin, away);
