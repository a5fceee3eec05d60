// Scrolls what is said for filming: at a pace, in a size, mirrored for a glass in front of the lens, on the full screen.
import { byId, targetOf } from "./common/page.js";

const text = byId("prompter-text", HTMLElement);
const pace = byId("prompter-pace", HTMLElement);
const run = byId("prompter-run", HTMLElement);
const mirror = byId("prompter-mirror", HTMLElement);
const stage = byId("prompter-stage", HTMLElement);
const full = byId("prompter-full", HTMLElement);
// pixels a second at normal size
const SLOWEST = 10;
const FASTEST = 200;
const STEP = 10;

let speed = 40;
let scale = 1;
let running = false;
let last = 0; // when the last picture was drawn
let owed = 0; // pixels, less than one, that are still to be scrolled

function show() {
  pace.textContent = (pace.dataset.pace ?? "").replace("{0}", String(speed));
  run.setAttribute("aria-pressed", String(running));
  text.style.setProperty("--prompter-scale", String(scale));
}

function frame(now) {
  if (!running) return;
  owed += (speed * scale * (now - last)) / 1000;
  last = now;
  const whole = Math.floor(owed); // scrollTop keeps whole pixels only
  text.scrollTop += whole;
  owed -= whole;
  if (text.scrollTop + text.clientHeight >= text.scrollHeight - 1) stop();
  else requestAnimationFrame(frame);
}

function start() {
  running = true;
  last = performance.now();
  requestAnimationFrame(frame);
  show();
}

function stop() {
  running = false;
  show();
}

function toggle() {
  if (running) stop();
  else start();
}

function hurry(by) {
  speed = Math.min(FASTEST, Math.max(SLOWEST, speed + by));
  show();
}

function grow(by) {
  scale = Math.min(3, Math.max(0.5, scale + by));
  show();
}

function turn() {
  const mirrored = text.classList.toggle("is-mirrored");
  mirror.setAttribute("aria-pressed", String(mirrored));
}

/** Some browsers have no full screen, or do not allow it; the page is then as it was. */
async function fill() {
  try {
    if (document.fullscreenElement) await document.exitFullscreen();
    else await stage.requestFullscreen();
    text.focus();
  } catch {
    full.hidden = true;
  }
}

const BUTTONS = {
  "prompter-run": toggle,
  "prompter-slower": () => hurry(-STEP),
  "prompter-faster": () => hurry(STEP),
  "prompter-smaller": () => grow(-0.1),
  "prompter-bigger": () => grow(0.1),
  "prompter-mirror": turn,
  "prompter-full": fill,
};
for (const [id, action] of Object.entries(BUTTONS)) byId(id, HTMLElement).addEventListener("click", action);

const KEYS = {
  " ": toggle,
  ArrowLeft: () => hurry(-STEP),
  ArrowRight: () => hurry(STEP),
  "+": () => grow(0.1),
  "-": () => grow(-0.1),
  m: turn,
  f: fill,
};
document.addEventListener("keydown", (event) => {
  const action = KEYS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  const pressing = event.key === " " && targetOf(event).closest("button, a"); // which the space bar presses by itself
  if (!action || pressing || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  action();
});
document.addEventListener("fullscreenchange", () => {
  full.setAttribute("aria-pressed", String(document.fullscreenElement === stage));
});
full.hidden = !document.fullscreenEnabled;

byId("prompter-bar", HTMLElement).hidden = false;
show();
