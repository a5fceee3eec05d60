// The rooms in which lines are written: puts a desk around the line. Everything works without it too, by the buttons.
import { byId, targetOf } from "./common/page.js";
import { LineDesk } from "./desk/line/desk.js";
import { openRoom } from "./desk/room/room.js";

const form = byId("room", HTMLFormElement);

/** @param {LineDesk} line */
function count(line) {
  const said = byId("live-said", HTMLElement);
  const [mistakes, looks] = [line.mistakes(), line.looks()];
  const text = mistakes === 0 ? line.say("well") : mistakes === 1 ? line.say("one") : line.say("many", mistakes);
  said.textContent = looks ? `${text}, ${line.say("looks", looks)}` : text;
  said.classList.toggle("said-wrong", mistakes > 0);
}

/** @returns {Promise<LineDesk | null>} null where the words of line text cannot be had; the field is written as it is */
async function openLine() {
  const parts = /** @type {HTMLTemplateElement | null} */ (document.getElementById("stand-parts"))?.content;
  if (!parts) return null;
  const answer = await fetch("/desk/line-words").catch(() => null);
  if (!answer?.ok) return null;
  const line = new LineDesk(document.querySelector("[data-field][data-prefix]"), parts, await answer.json(), form);
  line.onShow(() => count(line));
  return line;
}

const bench = document.getElementById("bench");
bench?.addEventListener("toggle", () => import(String(bench.dataset.script)), { once: true });

const line = await openLine();

// the listening bench asks for the bar that it plays
document.addEventListener("line-bar", (event) => line?.writeBar(/** @type {CustomEvent<number>} */ (event).detail));

line?.once(() => {
  const bar = /^#bar-(\d+)$/.exec(location.hash);
  if (bar) line.openBar(Number(bar[1]), "first");
});

// where fields were given other values the editor shows them
openRoom(() => line?.text.replace(line.area.value), () => line?.coming() ?? null);

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
  const start = before.reduce((sum, text) => sum + text.length + 1, 0) + Number(link.dataset.column) - 1;
  area.focus();
  area.setSelectionRange(start, start + Math.max(1, Number(link.dataset.length)));
});
