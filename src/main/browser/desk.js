// The page of an episode, while it is written: puts a desk around each line, saves as one types, sends recordings, and
// follows a build. Everything works without it too, by the buttons.
import { byId, targetOf, typedIn } from "./common/page.js";
import { Draft } from "./desk/draft/draft.js";
import { LineDesk } from "./desk/line/desk.js";

const form = byId("episode", HTMLFormElement);
const path = form.dataset.path;
const word = byId("live-word", HTMLElement);
const SOON = 350; // milliseconds after the last key
const AGAIN = 2000;

let asked = 0;
let timer = 0;
let changed = false; // something that only a button saves
let leaving = false;

/** Puts each part of `html` that has an id in the place of the one with that id; opened details stay open. */
function replaceParts(html) {
  const parts = new DOMParser().parseFromString(html, "text/html").body;
  for (
    const part of [...parts.querySelectorAll("[id^='live-notes'], #live-hour, [id^='findings-groove'], #calendar")]
  ) {
    const old = document.getElementById(part.id);
    if (!old) continue;
    for (const details of old.querySelectorAll("details[open][id]")) {
      part.querySelector(`[id="${details.id}"]`)?.setAttribute("open", "");
    }
    old.replaceWith(part);
  }
}

/** What follows the typing beside the lines: the drums, the notes, the hour. */
async function preview() {
  const number = ++asked;
  const typed = typedIn(form);
  if (lines.length) typed.set("beside", "yes"); // the lines look after themselves
  try {
    const answer = await fetch(`${path}/preview`, { method: "POST", body: typed });
    if (answer.status === 401) {
      word.textContent = form.dataset.expired ?? "";
      return;
    }
    if (answer.status === 503) {
      clearTimeout(timer);
      timer = setTimeout(preview, 1000 * Number(answer.headers.get("Retry-After") ?? 5));
      return;
    }
    if (!answer.ok) throw new Error(String(answer.status));
    const html = await answer.text();
    if (number !== asked) return; // a later one is on its way
    replaceParts(html);
    word.textContent = "";
  } catch {
    word.textContent = form.dataset.offline ?? "";
  }
}

form.addEventListener("input", (event) => {
  const field = targetOf(event);
  if (field.matches("textarea.code") && field.id !== "groove") return;
  if (field.closest(".stand")) return;
  soon();
});

function soon() {
  clearTimeout(timer);
  timer = setTimeout(preview, SOON);
}

// the lines
const lines = [];

function count() {
  const mistakes = lines.reduce((sum, line) => sum + line.mistakes(), 0);
  const looks = lines.reduce((sum, line) => sum + line.looks(), 0);
  const said = byId("live-said", HTMLElement);
  const say = lines[0].say;
  const text = mistakes === 0 ? say("well") : mistakes === 1 ? say("one") : say("many", mistakes);
  said.textContent = looks ? `${text}, ${say("looks", looks)}` : text;
  said.classList.toggle("said-wrong", mistakes > 0);
}

async function openLines() {
  const parts = /** @type {HTMLTemplateElement | null} */ (document.getElementById("stand-parts"))?.content;
  if (!parts) return;
  const answer = await fetch("/desk/line-words");
  if (!answer.ok) return;
  const words = await answer.json();
  for (const root of document.querySelectorAll("[data-field][data-prefix]")) {
    const line = new LineDesk(root, parts, words, form);
    line.onShow(count);
    line.onShow(() => {
      if (byId("notes", HTMLTextAreaElement).value.includes("](bar")) soon(); // notes that show pieces of the line
    });
    lines.push(line);
  }
}

// the listening bench asks for the bar that it plays
document.addEventListener("line-bar", (event) => lines[0]?.writeBar(/** @type {CustomEvent<number>} */ (event).detail));

/** Fields were given other values: the editors show them. */
function filled() {
  for (const line of lines) line.text.replace(line.area.value);
  preview();
}

await openLines();
lines[0]?.once(() => {
  const bar = /^#bar-(\d+)$/.exec(location.hash);
  if (bar) lines[0].openBar(Number(bar[1]), "first");
});
const draft = document.querySelector("[data-draft]") ? new Draft(form, filled) : null;

form.addEventListener("submit", (event) => {
  leaving = !event.defaultPrevented;
});

window.addEventListener("pagehide", () => {
  if (!leaving) draft?.keepLocal();
});

window.addEventListener("beforeunload", (event) => {
  if (!leaving && (changed || draft?.dirty)) event.preventDefault();
});

// from a finding to its place in the text
form.addEventListener("click", (event) => {
  /** @type {HTMLAnchorElement | null} */
  const link = targetOf(event).closest("a[data-line]");
  if (!link) return;
  /** @type {HTMLTextAreaElement | null} */
  const area = form.querySelector(`textarea[id="${CSS.escape(decodeURIComponent(link.hash.slice(1)))}"]`);
  if (!area || !area.offsetParent) return;
  event.preventDefault();
  const before = area.value.split("\n").slice(0, Number(link.dataset.line) - 1);
  const start = before.reduce((sum, line) => sum + line.length + 1, 0) + Number(link.dataset.column) - 1;
  area.focus();
  area.setSelectionRange(start, start + Math.max(1, Number(link.dataset.length)));
});

// a build that is under way
async function follow() {
  const calendar = document.getElementById("calendar");
  if (!calendar || calendar.dataset.busy !== "yes") return;
  try {
    const answer = await fetch(`${path}/calendar`);
    if (answer.ok) replaceParts(await answer.text());
    const now = document.getElementById("calendar");
    // the buttons of the page fit the state it was in; what is being typed goes before
    if (now?.dataset.out !== calendar.dataset.out && !changed && !draft?.dirty) location.reload();
  } catch {
    // asked again below
  }
  setTimeout(follow, AGAIN);
}
setTimeout(follow, AGAIN);

// recordings
const upload = document.getElementById("upload");
const LARGEST = 100_000_000;

function tell(text) {
  byId("file-problem", HTMLElement).textContent = text;
}

function send(file, chosen) {
  const bar = byId("upload-progress", HTMLProgressElement);
  const request = new XMLHttpRequest(); // fetch does not tell how much is sent
  request.open("PUT", `${path}/tracks?name=${encodeURIComponent(chosen.name)}`);
  request.upload.addEventListener("progress", (event) => {
    bar.value = event.lengthComputable ? (100 * event.loaded) / event.total : 0;
  });
  request.addEventListener("loadend", () => {
    bar.hidden = true;
    arrived(file, request);
  });
  bar.hidden = false;
  bar.value = 0;
  tell("");
  request.send(chosen);
}

function arrived(file, request) {
  if (request.status === 201) {
    const row = document.createElement("li");
    row.innerHTML = request.responseText; // escaped by the server, as every page is
    byId("track-list", HTMLElement).append(row);
    file.value = "";
    word.textContent = file.dataset.done;
    if (draft) draft.changed();
    else changed = true;
    return;
  }
  if (request.status === 401) {
    tell(form.dataset.expired);
    return;
  }
  try {
    tell(JSON.parse(request.responseText).detail);
  } catch {
    tell(file.dataset.failed);
  }
}

upload?.addEventListener("submit", (event) => {
  event.preventDefault();
  const file = byId("file", HTMLInputElement);
  const chosen = file.files?.[0];
  if (!chosen) return;
  if (chosen.size > LARGEST) {
    tell(file.dataset.tooLarge);
    return;
  }
  send(file, chosen);
});
