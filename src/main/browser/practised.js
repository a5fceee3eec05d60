// What was practised and what is liked: the list of it, the way on from the front page, and the star of a lesson. All of it
// is remembered in this browser; where somebody is signed in, it is joined to their account.
import { readersLanguage } from "./common/language.js";
import { byId, element, inside, partsOf, wordsOf } from "./common/page.js";
import { placeWords } from "./common/places.js";
import { join } from "./practised/account.js";
import { Marks } from "./practised/marks.js";

const place = inside(document, "[data-practised]");
const part = partsOf(place);
const say = wordsOf(byId("practised-words", HTMLTemplateElement).content);
const marks = new Marks();
const signedIn = place.dataset.signedIn === "true";
const { lesson = "", title = "" } = place.dataset;

const days = new Intl.DateTimeFormat(readersLanguage(), { dateStyle: "long" });

/** Where a mark leads: to the same passage at the same tempo. */
function wayTo(id, line, { from, to, tempo }) {
  const query = new URLSearchParams(from || to ? { from, to } : {});
  query.set("tempo", String(Math.round(tempo)));
  if (line !== "line") query.set("line", `${line}-practice`);
  return `/e/${id}?${query}`;
}

function whatOf(line, { from, to, tempo, day }) {
  const [year, month, date] = day.split("-").map(Number);
  const number = line.match(/^exercise-(\d+)$/)?.[1];
  const isBar = from === to && /^\d+$/.test(from);
  const passage = isBar
    ? say("bar", from)
    : from || to
    ? say("passage", placeWords(from, say), placeWords(to, say))
    : say("whole");
  return [
    number ? say("exercise", number) : "",
    passage,
    say("tempo", Math.round(tempo)),
    days.format(new Date(year, month - 1, date)),
  ].filter(Boolean).join(" · ");
}

/** What the list says now: it is made anew only where that is something else, for a finger or the keyboard may be on it. */
let listed = "";

function showList() {
  const list = part("list");
  if (!list) return;
  const { lessons } = marks;
  part("nothing").hidden = lessons.length > 0;
  const rows = lessons.map(([id, known]) => row(id, known));
  const now = rows.map(({ outerHTML }) => outerHTML).join("");
  if (now === listed) return;
  listed = now;
  const reached = document.activeElement?.closest("[data-id]") ? document.activeElement : null;
  const [id, place] = reached ? placeOf(reached) : ["", 0];
  list.replaceChildren(...rows);
  if (reached) rowOf(id)?.querySelectorAll("a, button")[place]?.focus();
}

/** In which lesson's row something stands, and the how manyeth of it. */
function placeOf(reached) {
  const row = reached.closest("[data-id]");
  return [row.dataset.id, [...row.querySelectorAll("a, button")].indexOf(reached)];
}

function rowOf(id) {
  return [...part("list").children].find(({ dataset }) => dataset.id === id);
}

function row(id, { title, star, lines }) {
  const name = element("h2", { class: "practised-name" }, element("a", { href: `/e/${id}`, text: title }));
  if (star) name.append(" ", element("span", { class: "badge", text: say("favourite") }));
  const all = Object.entries(lines).map(([line, mark]) =>
    element("li", {}, element("a", { href: wayTo(id, line, mark), text: whatOf(line, mark) }))
  );
  const forget = element("button", { type: "button", class: "button-quiet", text: say("forget") });
  forget.setAttribute("aria-label", say("forgetOf", title));
  forget.addEventListener("click", () => forgetAll(id, title));
  return element("li", { class: "practised", "data-id": id }, name, element("ul", { class: "plain" }, ...all), forget);
}

/** The button that was pressed is gone: the keyboard stands at the lesson after it, or at the head of the page. */
async function forgetAll(id, title) {
  const row = rowOf(id);
  const next = (row?.nextElementSibling ?? row?.previousElementSibling)?.dataset.id;
  marks.forget(id, signedIn);
  showList();
  (rowOf(next)?.querySelector("a") ?? inside(document, "h1")).focus();
  part("said").textContent = say("forgot", title);
  if (signedIn) await join(marks, signedIn);
}

function showLast() {
  const way = part("last");
  const { last } = marks;
  if (!way || !last) return;
  way.href = wayTo(last.id, last.line, last.mark);
  way.textContent = `${last.title} · ${whatOf(last.line, last.mark)}`;
  place.hidden = false;
}

function showStar() {
  const star = part("star");
  if (!star) return;
  star.setAttribute("aria-pressed", String(marks.isStar(lesson)));
  place.hidden = false;
}

function show() {
  showList();
  showLast();
  showStar();
}

part("star")?.addEventListener("click", async () => {
  const chosen = !marks.isStar(lesson);
  marks.star(lesson, title, chosen, signedIn);
  showStar();
  if (signedIn) await join(marks, signedIn);
});

// what was practised on this page belongs to whoever is signed in now, not to the next who sits here
addEventListener("pagehide", () => {
  if (signedIn && marks.unsent().size) join(marks, signedIn, true);
});

show();
// a copy on this device does not know whether somebody is signed in; the next page of the server does
if (!document.documentElement.dataset.kept) {
  await join(marks, signedIn);
  show();
}
