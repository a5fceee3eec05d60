// The listening bench: a recording that stays in this browser, slowed, marked and compared with the line that is written.
import { barAt, barsOf, clock, marked, nudged } from "./desk/bench/bars.js";
import { WrittenLine } from "./desk/bench/line.js";
import { BenchPlayer } from "./desk/bench/player.js";
import { forget, keep, kept } from "./desk/bench/store.js";
import { moved, secondAt, zoomed } from "./desk/bench/view.js";
import { Wave } from "./desk/bench/wave.js";
import { byId, partsOf, targetOf, wordsOf } from "./common/page.js";
import { Stretcher } from "./common/stretcher.js";

const LONGEST = 20 * 60; // seconds
const NUDGE = 0.01;

const bench = byId("bench", HTMLElement);
const path = bench.dataset.path;
const part = partsOf(bench);
const say = wordsOf(bench);

const stretcher = new Stretcher();
const player = new BenchPlayer(
  stretcher,
  new WrittenLine(path, () => byId("mainLine", HTMLTextAreaElement).value, stretcher),
);
const wave = new Wave(part("wave"));

let recording = null; // {name, file, marks, first}
let length = 0;
let at = 0;
let loop = null;
let view = { from: 0, to: 1 };

function tell(text) {
  part("word").textContent = text;
}

async function open(found) {
  tell(say("opening"));
  try {
    const sound = await player.context.decodeAudioData(await found.file.arrayBuffer());
    if (sound.duration > LONGEST) return tell(say("long", LONGEST / 60));
    recording = found;
    length = sound.duration;
    at = 0;
    loop = null;
    view = { from: 0, to: length };
    player.sound = sound;
    wave.read(sound);
    part("work").hidden = false;
    part("name").textContent = found.name;
    part("first").value = found.first;
    part("seek").max = length;
    tell("");
    show();
  } catch {
    tell(say("unreadable", found.name));
  }
}

async function choose(file) {
  const found = { name: file.name, file, marks: [], first: 1 };
  await open(found);
  if (recording === found) await save();
}

async function save() {
  try {
    await keep(path, recording);
    bench.dataset.kept = recording.marks.length;
  } catch {
    tell(say("unkept"));
  }
}

async function remove() {
  player.stop();
  await forget(path);
  recording = null;
  part("work").hidden = true;
  part("file").value = "";
  tell(say("removed"));
  part("file").focus();
}

function bars() {
  return barsOf(recording.marks, recording.first);
}

function show() {
  if (!recording) return;
  const here = barAt(recording.marks, recording.first, at);
  wave.draw({ ...view, bars: bars(), loop, at });
  part("seek").value = at;
  part("seek").setAttribute("aria-valuetext", clock(at));
  part("place").textContent = here ? say("placeBar", clock(at), here.bar) : say("place", clock(at));
  part("play").textContent = say(player.playing ? "stop" : "play");
  part("write").disabled = !here;
  part("write").textContent = here ? say("write", here.bar) : say("writeNone");
  part("loop-bar").disabled = !here;
  part("from").value = loop ? loop.from.toFixed(2) : "";
  part("to").value = loop ? loop.to.toFixed(2) : "";
  part("speed-said").textContent = say("percent", part("speed").value);
}

function showMarks() {
  part("marks").replaceChildren(
    ...recording.marks.map((mark, i) => {
      const item = document.createElement("li");
      const name = document.createElement("span");
      name.textContent = say("mark", recording.first + i, clock(mark));
      item.append(name);
      const button = (word, text, action) => {
        const made = document.createElement("button");
        made.type = "button";
        made.className = "button-quiet";
        made.textContent = text;
        made.setAttribute("aria-label", say(word, recording.first + i));
        made.addEventListener("click", action);
        item.append(" ", made);
      };
      button("earlier", "−", () => setMarks(nudged(recording.marks, i, -NUDGE)));
      button("later", "+", () => setMarks(nudged(recording.marks, i, NUDGE)));
      button("unmark", "×", () => setMarks(recording.marks.filter((_, other) => other !== i)));
      return item;
    }),
  );
}

function setMarks(marks) {
  recording.marks = marks;
  showMarks();
  show();
  save();
}

function wishes() {
  return { speed: Number(part("speed").value) / 100, loop, bars: bars(), withLine: part("what").value !== "recording" };
}

function hear() {
  player.hear({ what: part("what").value, low: part("low").checked, volume: Number(part("volume").value) / 100 });
}

/** What is playing is made anew where it stands. */
async function again() {
  hear();
  if (player.playing) await play();
  show();
}

async function play() {
  hear();
  tell(say("readying"));
  await player.play(at, wishes());
  tell("");
  follow();
}

let following = false;

function follow() {
  if (following) return;
  following = true;
  const look = () => {
    at = player.at ?? at;
    following = player.playing;
    if (at > view.to || at < view.from) view = moved(view, length, at);
    show();
    if (following) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

function toggle() {
  if (player.playing) player.stop();
  else play();
  show();
}

function seek(second) {
  at = Math.min(length, Math.max(0, second));
  if (loop && (at < loop.from || at >= loop.to)) loop = null;
  again();
}

function setLoop(from, to) {
  const low = Math.max(0, Math.min(from, to));
  const high = Math.min(length, Math.max(from, to));
  loop = high - low >= 0.1 ? { from: low, to: high } : null;
  if (loop) at = loop.from;
  again();
}

function zoom(by) {
  view = zoomed(view, length, at, by);
  show();
}

function watchWave() {
  let begun = null;
  const second = (event) => secondAt(event, part("wave"), view);
  part("wave").addEventListener("pointerdown", (event) => {
    begun = event;
    part("wave").setPointerCapture(event.pointerId);
  });
  part("wave").addEventListener("pointerup", (event) => {
    if (!begun) return;
    const dragged = Math.abs(event.clientX - begun.clientX) > 5;
    if (dragged) setLoop(second(begun), second(event));
    else seek(second(event));
    begun = null;
  });
}

const CLICKS = {
  play: toggle,
  mark: () => setMarks(marked(recording.marks, player.at ?? at)),
  remove,
  closer: () => zoom(0.5),
  wider: () => zoom(2),
  whole: () => setLoop(0, 0),
  "loop-bar": () => {
    const here = barAt(recording.marks, recording.first, at);
    if (here) setLoop(here.from, here.to);
  },
  write: () => {
    const here = barAt(recording.marks, recording.first, at);
    if (here) document.dispatchEvent(new CustomEvent("line-bar", { detail: here.bar }));
  },
};
for (const [name, action] of Object.entries(CLICKS)) part(name).addEventListener("click", action);

part("file").addEventListener("change", () => part("file").files[0] && choose(part("file").files[0]));
part("seek").addEventListener("input", () => seek(Number(part("seek").value)));
part("first").addEventListener("change", () => {
  recording.first = Math.max(0, Math.min(999, Math.round(Number(part("first").value)) || 0));
  setMarks(recording.marks);
});
for (const name of ["from", "to"]) {
  part(name).addEventListener("change", () => setLoop(Number(part("from").value), Number(part("to").value)));
}
for (const name of ["speed", "what"]) part(name).addEventListener("change", again);
part("speed").addEventListener("input", show);
for (const name of ["low", "volume"]) part(name).addEventListener("input", hear);
part("work").addEventListener("keydown", (/** @type {KeyboardEvent} */ event) => {
  const typing = targetOf(event).matches("input[type=number], select");
  const pressing = event.key === " " && targetOf(event).matches("button");
  const action = { " ": toggle, t: CLICKS.mark }[event.key.toLowerCase()];
  if (!action || event.ctrlKey || event.altKey || event.metaKey || typing || pressing) return;
  event.preventDefault();
  action();
});
player.addEventListener("change", () => {
  if (player.playing) follow(); // also when the next piece begins
  show();
});
addEventListener("resize", show);
watchWave();

bench.addEventListener("toggle", async function first() {
  bench.removeEventListener("toggle", first);
  const found = await kept(path).catch(() => undefined);
  if (found) {
    await open(found);
    showMarks();
  }
});
bench.addEventListener("toggle", () => requestAnimationFrame(show));
