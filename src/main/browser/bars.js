// The bars of an own recording: found by the server, heard with a click, tapped, moved and saved.
import { Clicks } from "./desk/bars/clicks.js";
import { mapOf, marksOf, nearest, placed, repeats, stumble } from "./desk/bars/map.js";
import { clock, nudged } from "./desk/bench/bars.js";
import { BenchPlayer } from "./desk/bench/player.js";
import { moved, secondAt, zoomed } from "./desk/bench/view.js";
import { Wave } from "./desk/bench/wave.js";
import { byId, partsOf, targetOf, wordsOf } from "./common/page.js";
import { Stretcher } from "./common/stretcher.js";

const NUDGE = 0.01;
const AHEAD = 120; // seconds made ready at once at full speed, so that a hand that taps is rarely interrupted
const AHEAD_SLOW = 30;
const BESIDE = 2; // seconds before the first bar and after the last one
const ASK_AGAIN = 2000; // milliseconds

const root = byId("bars", HTMLElement);
const path = root.dataset.path;
const part = partsOf(root);
const say = wordsOf(root);
const tell = (text) => (part("word").textContent = text);

const player = new BenchPlayer(new Stretcher(), new Clicks(() => marks));
const wave = new Wave(part("wave"));

let bars = []; // how each bar is called
let marks = []; // when it begins, and last when the last one ends
const earlier = []; // what stood before each change
let tag = ""; // names the bars that the server keeps
let standing = "is-found";
let length = 0;
let at = 0;
let chosen = 0; // the mark that is tapped or moved next
let following = true; // whether what is heard chooses it
let loop = null;
let view = { from: 0, to: 1 };
let opening = null;

async function begin() {
  if (root.dataset.state === "waiting") return void setTimeout(waited, ASK_AGAIN);
  const sound = await (await fetch(`${path}/sound`)).json();
  wave.take(sound.peaks, sound.stepsASecond);
  length = sound.seconds;
  view = { from: 0, to: length };
  part("seek").max = length;
  root.hidden = false;
  const found = await ask("");
  if (found) take(found);
  standing = found?.kept ? "is-kept" : "is-found";
  show();
}

async function waited() {
  const answer = await fetch(`${path}/sound`).catch(() => null);
  const state = answer?.ok ? (await answer.json()).state : "waiting";
  if (state === "waiting") setTimeout(waited, ASK_AGAIN);
  else location.reload();
}

/** The bars that the server keeps or finds; null where there are none, which is told. */
async function ask(query) {
  try {
    const answer = await fetch(`${path}/bars${query}`);
    if (!answer.ok) return void tell(say(answer.status === 401 ? "expired" : "failed"));
    const found = await answer.json();
    tag ||= answer.headers.get("ETag");
    if (found.bars.length === 0) tell(say("none"));
    return found.bars.length ? found : null;
  } catch {
    tell(say("failed"));
    return null;
  }
}

function take(found) {
  bars = found.bars;
  marks = marksOf(found);
  chosen = Math.max(0, nearest(marks, at));
  part("rounds").value = Math.max(...bars.map((bar) => bar.round));
  showChoice();
}

/** What stood is kept, so that it can be taken back. */
function change(made) {
  earlier.push({ bars, marks });
  made();
  standing = "is-changed";
  showChoice();
  show();
}

function undo() {
  const before = earlier.pop();
  if (!before) return;
  ({ bars, marks } = before);
  chosen = Math.min(chosen, marks.length - 1);
  standing = "is-changed";
  showChoice();
  again();
}

function name(i) {
  if (i === bars.length) return say("end");
  const told = repeats(bars);
  const { bar, pass, round } = bars[i];
  return [say("bar", bar), told.pass && say("pass", pass), told.round && say("round", round)].filter(Boolean).join(
    ", ",
  );
}

function shortName(i) {
  if (i === bars.length) return say("end-short");
  const { bar, pass, round } = bars[i];
  return [bar, pass > 1 && say("pass-short", pass), round > 1 && say("round-short", round)].filter(Boolean).join(" ");
}

function showChoice() {
  const options = marks.map((mark, i) => new Option(say("at", name(i), clock(mark, 2)), String(i)));
  part("chosen").replaceChildren(...options);
}

function show() {
  const any = marks.length > 0;
  wave.draw({ ...view, bars: marks.map((from, i) => ({ bar: shortName(i), from })), loop, at });
  part("seek").value = at;
  part("seek").setAttribute("aria-valuetext", clock(at));
  part("place").textContent = clock(at);
  part("play").textContent = say(player.playing ? "stop" : "play");
  part("tap").textContent = any ? say("tap", name(chosen)) : say("tap-none");
  if (any) part("chosen").selectedIndex = chosen;
  for (const one of ["tap", "chosen", "earlier", "later", "around", "save"]) part(one).disabled = !any;
  part("undo").disabled = earlier.length === 0;
  part("kept").textContent = any ? say(standing) : "";
  part("speed-said").textContent = say("percent", part("speed").value);
}

function open() {
  opening ??= fetch(`${path}/recording`)
    .then((answer) => (answer.ok ? answer.arrayBuffer() : Promise.reject(new Error(String(answer.status)))))
    .then((bytes) => player.context.decodeAudioData(bytes))
    .then((sound) => (player.sound = sound))
    .catch((problem) => {
      opening = null;
      throw problem;
    });
  return opening;
}

function hear() {
  player.hear({
    what: part("click").checked ? "both" : "recording",
    low: false,
    volume: Number(part("volume").value) / 100,
  });
}

async function play() {
  try {
    player.context;
    tell(opening ? "" : say("opening"));
    await open();
  } catch {
    return tell(say("unreadable"));
  }
  hear();
  const speed = Number(part("speed").value) / 100;
  if (at >= length - 0.05) at = 0;
  await player.play(at, { speed, loop, bars: [], withLine: true, most: speed === 1 ? AHEAD : AHEAD_SLOW });
  tell("");
  watch();
}

let watching = false;

function watch() {
  if (watching) return;
  watching = true;
  const look = () => {
    at = player.at ?? at;
    watching = player.playing;
    if (following && marks.length) chosen = nearest(marks, at);
    if (at > view.to || at < view.from) view = moved(view, length, at);
    show();
    if (watching) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** What is playing is made anew where it stands. */
function again() {
  if (player.playing) play();
  show();
}

function toggle() {
  if (player.playing) {
    player.stop();
    loop = null;
    show();
  } else {
    following = true;
    play();
  }
}

function seek(second) {
  at = Math.min(length, Math.max(0, second));
  loop = null;
  following = true;
  if (marks.length) chosen = nearest(marks, at);
  again();
}

function choose(i) {
  chosen = i;
  following = false;
  if (loop) return around();
  if (!player.playing) at = Math.min(length, marks[i]);
  if (at > view.to || at < view.from) view = moved(view, length, at - (view.to - view.from) / 2);
  show();
}

/** Repeats the bar before the chosen one and the chosen one. */
function around() {
  const here = marks[chosen];
  const from = Math.max(0, marks[chosen - 1] ?? here - BESIDE);
  const to = Math.min(length, marks[chosen + 1] ?? here + BESIDE);
  if (to - from < 0.1) return;
  loop = { from, to };
  at = from;
  following = false;
  play();
}

function tap() {
  if (!marks.length) return;
  const now = player.at ?? at;
  const tapped = chosen;
  change(() => {
    marks = placed(marks, tapped, now);
    chosen = Math.min(tapped + 1, marks.length - 1);
  });
  following = false;
  tell(say("at", name(tapped), clock(marks[tapped], 2)));
}

function nudge(by) {
  if (!marks.length) return;
  following = false;
  change(() => (marks = placed(marks, chosen, nudged(marks, chosen, by)[chosen])));
  tell(say("at", name(chosen), clock(marks[chosen], 2)));
  again();
}

async function find() {
  const found = await ask(`?find=yes&rounds=${encodeURIComponent(part("rounds").value)}`);
  if (!found) return;
  change(() => take(found));
  tell(say("found", found.bars.length));
  again();
}

async function theirs() {
  const kept = await ask("");
  if (!kept) return;
  change(() => take(kept));
  standing = "is-kept";
  part("theirs").hidden = true;
  part("save").focus();
  tell("");
  again();
}

/** Where the bars do not run forward it is told, and that one is chosen. */
function runsForward() {
  const wrong = stumble(marks, length + 1);
  if (wrong < 0) return true;
  choose(wrong);
  const outside = marks[wrong] > length + 1;
  tell(outside ? say("outside", name(wrong), clock(marks[wrong], 2)) : say("backward", name(wrong), name(wrong - 1)));
  return false;
}

async function save() {
  if (!runsForward()) return;
  const sent = marks;
  try {
    const answer = await fetch(`${path}/bars`, {
      method: "PUT",
      headers: { "Content-Type": "application/json", "If-Match": tag },
      body: JSON.stringify(mapOf(bars, marks)),
    });
    tag = answer.headers.get("ETag") ?? tag;
    part("theirs").hidden = answer.status !== 412;
    if (answer.ok && sent === marks) standing = "is-kept";
    tell(
      say(
        answer.ok
          ? "saved"
          : ({ 401: "expired", 404: "unused", 409: "conflict", 412: "conflict" }[answer.status] ?? "failed"),
      ),
    );
  } catch {
    tell(say("failed"));
  }
  show();
}

const CLICKS = {
  play: toggle,
  tap,
  closer: () => ((view = zoomed(view, length, at, 0.5)), show()),
  wider: () => ((view = zoomed(view, length, at, 2)), show()),
  earlier: () => nudge(-NUDGE),
  later: () => nudge(NUDGE),
  around,
  find,
  undo,
  save,
  theirs,
};
for (const [one, action] of Object.entries(CLICKS)) part(one).addEventListener("click", action);

part("seek").addEventListener("input", () => seek(Number(part("seek").value)));
part("wave").addEventListener("click", (event) => seek(secondAt(event, part("wave"), view)));
part("chosen").addEventListener("change", () => choose(part("chosen").selectedIndex));
part("speed").addEventListener("input", show);
part("speed").addEventListener("change", again);
for (const one of ["click", "volume"]) part(one).addEventListener("input", hear);
root.addEventListener("keydown", (event) => {
  const pressed = targetOf(event).matches("input[type=number], input[type=checkbox], select, button");
  const action = { " ": toggle, t: tap, e: CLICKS.earlier, l: CLICKS.later }[event.key.toLowerCase()];
  if (!action || event.ctrlKey || event.altKey || event.metaKey) return;
  if ((pressed && event.key === " ") || targetOf(event).matches("input[type=number]")) return;
  if (event.repeat && action === tap) return;
  event.preventDefault();
  action();
});
player.addEventListener("change", () => {
  if (player.playing) watch();
  show();
});
addEventListener("resize", show);
addEventListener("beforeunload", (event) => {
  if (standing === "is-changed") event.preventDefault();
});
begin();
