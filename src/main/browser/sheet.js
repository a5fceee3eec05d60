// The sheet on a lesson's page: remembers how large the notes are wanted, lets the arrow keys go from event to event,
// and parts the music into systems for paper. Without it the sheet is read and printed all the same.

import { element } from "./common/page.js";
import { fitted, spacesIn } from "./common/fitted.js";
import { borrow, windowOn } from "./common/sheet-box.js";
import { rove, walkable } from "./common/sheet-keys.js";

const KEPT = "groundbass.notes";
const USUAL = "medium";
const AROUND = 1; // staff spaces over and under a system on paper

/** @type {NodeListOf<HTMLElement>} */
const figures = document.querySelectorAll("figure.sheet");

function kept() {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null; // storage that is switched off
  }
}

function keep(size) {
  try {
    localStorage.setItem(KEPT, size);
  } catch {
    // then it holds for this page
  }
}

function choose(size) {
  /** @type {NodeListOf<HTMLInputElement>} */
  const radios = document.querySelectorAll(".sheet-size input");
  for (const radio of radios) radio.checked = radio.value === size;
  for (const figure of figures) figure.dataset.size = size;
  for (const figure of figures) rove(figure);
  for (const figure of figures) fit(figure, size);
}

/** Until the sheet has come, and without net, larger notes are scrolled sideways (sheet.css). */
async function fit(figure, size) {
  const spaces = spacesIn(innerWidth, size);
  const wanted = spaces && figure.dataset.fitted ? String(spaces) : "";
  if (wanted === (figure.dataset.wanted ?? "")) return; // it stands, is on its way, or was refused
  figure.dataset.wanted = wanted;
  figure.querySelector(".sheet-fitted")?.remove();
  const svg = wanted && await fitted(figure.dataset.fitted, "both", wanted);
  if (!svg || wanted !== figure.dataset.wanted || figure.querySelector(".sheet-fitted")) return;
  const page = element("div", { class: "sheet-page sheet-fitted", "data-spaces": wanted }, svg);
  figure.querySelector(".sheet-page").before(page);
  rove(figure);
}

function chosen() {
  return /** @type {HTMLInputElement | null} */ (document.querySelector(".sheet-size input:checked"))?.value;
}

/** Each system of the widest picture as a picture of its own, so that no page of paper cuts through one. */
function part(figure) {
  const drawing = figure.querySelector(".sheet-wide svg");
  const systems = drawing ? [...drawing.querySelectorAll("g.system[data-top]")] : [];
  if (!systems.length) return;
  const printed = document.createElement("div");
  printed.className = "sheet-printed";
  printed.setAttribute("aria-hidden", "true");
  for (const system of systems) printed.append(alone(system, drawing));
  const legend = legendOf(systems.at(-1), drawing);
  if (legend) printed.append(legend);
  const caption = figure.querySelector("figcaption");
  figure.insertBefore(printed, caption);
  figure.classList.add("sheet-parted");
}

function alone(system, drawing) {
  const svg = strip(drawing, Number(system.dataset.top) - AROUND, Number(system.dataset.height) + 2 * AROUND);
  borrow(svg, system);
  return svg;
}

/** What stands under the last system. */
function legendOf(last, drawing) {
  const all = [...drawing.children];
  const below = all.slice(all.indexOf(last) + 1);
  if (!below.length) return null;
  const top = Number(last.dataset.top) + Number(last.dataset.height);
  const svg = strip(drawing, top, drawing.viewBox.baseVal.height - top);
  for (const part of below) svg.append(part.cloneNode(true));
  return svg;
}

/** An empty picture of a part of a drawing's height. */
function strip(drawing, top, height) {
  return windowOn(drawing, { x: 0, y: top, width: drawing.viewBox.baseVal.width, height });
}

const ticked = chosen(); // a browser that loads a page anew may remember it by itself
const size = kept() ?? (ticked === USUAL ? null : ticked);
if (size && document.querySelector(`.sheet-size input[value="${CSS.escape(size)}"]`)) choose(size);
for (const figure of figures) {
  walkable(figure);
  figure.addEventListener("change", (event) => {
    const radio = /** @type {HTMLInputElement} */ (event.target);
    if (!radio.closest(".sheet-size")) return;
    choose(radio.value);
    keep(radio.value);
    dispatchEvent(new Event("resize")); // whoever draws on the sheet finds it in another size
  });
}
addEventListener("resize", () => {
  for (const figure of figures) fit(figure, chosen());
});
addEventListener("beforeprint", () => {
  for (const figure of figures) if (!figure.classList.contains("sheet-parted")) part(figure);
});
