// Lessons of the coming weeks are dragged: to a free hour, or onto another lesson to change places with it. A drop fills in
// and sends the form of the page that does the same by a press; where there is none, nothing can be dropped.
import { byId, targetOf } from "./common/page.js";

/** @type {HTMLElement | null} */
let dragged = null;

/**
 * The choice among those of a form that has this value, or names this lesson before how it stands.
 * @param {ParentNode} place
 * @param {string} select
 * @param {string | undefined} value
 * @returns {HTMLOptionElement | undefined}
 */
function choice(place, select, value) {
  if (!value) return undefined;
  /** @type {NodeListOf<HTMLOptionElement>} */
  const options = place.querySelectorAll(`${select} option`);
  return [...options].find((one) => one.value === value || one.value.startsWith(`${value} `));
}

/**
 * What a drop of a lesson on an hour stands for.
 * @param {HTMLElement} lesson
 * @param {HTMLElement} cell
 */
function meant(lesson, cell) {
  if (cell.dataset.series !== lesson.dataset.series || cell.contains(lesson)) return undefined;
  const there = cell.querySelector("time")?.dateTime;
  const other = /** @type {HTMLElement | null} */ (cell.querySelector("[data-lesson]"))?.dataset.lesson;
  return other
    ? choice(lesson, "select[name=other]", other)
    : choice(lesson, "select[name=local]", there) ?? choice(cell, "select[name=episode]", lesson.dataset.lesson);
}

/** @returns {HTMLElement[]} */
function cells() {
  return [...document.querySelectorAll(".week-cell")].map((cell) => /** @type {HTMLElement} */ (cell));
}

/** @param {DragEvent} event */
function cellOf(event) {
  return /** @type {HTMLElement | null} */ (targetOf(event).closest(".week-cell"));
}

const lessons = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-lesson]"));
const movable = [...lessons].filter((lesson) => cells().some((cell) => meant(lesson, cell)));
for (const lesson of movable) lesson.draggable = true;
byId("drag-hint", HTMLElement).hidden = !movable.length || !matchMedia("(pointer: fine)").matches;

document.addEventListener("dragstart", (event) => {
  dragged = /** @type {HTMLElement | null} */ (targetOf(event).closest("[data-lesson][draggable]"));
  const lesson = dragged;
  if (!lesson || !event.dataTransfer) return;
  event.dataTransfer.effectAllowed = "move";
  event.dataTransfer.setData("text/plain", lesson.querySelector("a")?.textContent ?? "");
  for (const cell of cells()) cell.classList.toggle("week-open", meant(lesson, cell) !== undefined);
});

document.addEventListener("dragover", (event) => {
  const cell = cellOf(event);
  if (dragged && cell && meant(dragged, cell)) event.preventDefault();
});

document.addEventListener("drop", (event) => {
  const cell = cellOf(event);
  const option = dragged && cell ? meant(dragged, cell) : undefined;
  if (!option) return;
  event.preventDefault();
  option.selected = true;
  option.closest("form")?.requestSubmit();
});

document.addEventListener("dragend", () => {
  dragged = null;
  for (const cell of cells()) cell.classList.remove("week-open");
});
