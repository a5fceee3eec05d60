// What students repeat, on the sheet: each bar shaded, the more the oftener it was. The table beside it says the same.
import { boxOf, layer, rectangle } from "./common/sheet-box.js";

const ROOM = 0.5; // staff spaces before a bar's first note

/** The darkest is no darker than that notes stay clear. */
const DARKEST = 0.6;

/** Numbers by bar, of `3:12 4:9`. @param {string} text @returns {Map<number, number>} */
function read(text) {
  return new Map(text.split(" ").map((pair) => /** @type {[number, number]} */ (pair.split(":").map(Number))));
}

/** Where each bar of a system stands, `{bar, box}`: from its first sign to that of the next. */
function barsOf(system) {
  const { x, y, width, height } = system.getBBox();
  /** @type {Map<number, number>} */
  const lefts = new Map();
  for (const event of system.querySelectorAll("g.event")) {
    const bar = Number(event.dataset.bar);
    lefts.set(bar, Math.min(lefts.get(bar) ?? Infinity, boxOf(event).x - ROOM));
  }
  const bars = [...lefts].sort(([, one], [, other]) => one - other);
  return bars.map(([bar, left], i) => {
    const right = i + 1 < bars.length ? bars[i + 1][1] : x + width;
    return { bar, box: { x: left, y, width: Math.max(0, right - left), height } };
  });
}

function shade(svg, numbers) {
  svg.querySelector(".repeated-bars")?.remove();
  const most = Math.max(...numbers.values());
  const bars = [...svg.querySelectorAll("g.system")].flatMap(barsOf);
  const shades = bars.filter(({ bar }) => numbers.has(bar)).map(({ bar, box }) => {
    const shaded = rectangle(box, 0);
    shaded.setAttribute("fill-opacity", String((DARKEST * (numbers.get(bar) ?? 0)) / most));
    return shaded;
  });
  layer(svg, "repeated-bars").replaceChildren(...shades);
}

/** @type {NodeListOf<HTMLElement>} */
const figures = document.querySelectorAll("[data-repeated]");
for (const figure of figures) {
  const numbers = read(figure.dataset.repeated ?? "");
  // which drawing is seen depends on the window; what is not seen has no size
  new ResizeObserver(() => {
    for (const svg of figure.querySelectorAll(".sheet-page svg")) {
      if (svg.getClientRects().length) shade(svg, numbers);
    }
  }).observe(figure);
}
