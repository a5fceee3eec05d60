// The sheet to work on: systems as the server draws them, and over each bar what one clicks on to open it.
import { element } from "../../common/page.js";

const PIXELS = 10.5; // for a staff space, where there is room
const NARROW = 44; // staff spaces
const MARGIN = 12; // pixels around the bar in hand

export class Sheet {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
    this.drawnFor = 0; // staff spaces
    this.drawings = new Map(); // of the systems shown, by their keys
  }

  width() {
    return Math.round(Math.max(NARROW, Math.min(110, this.desk.part("sheet").clientWidth / PIXELS)));
  }

  /** Which systems need no drawing again, by their keys. */
  has() {
    return [...this.drawings.keys()].join(" ");
  }

  /** Whether it would be drawn otherwise for the room that it has by now. */
  isOfOtherWidth() {
    return this.drawnFor && Math.abs(this.width() - this.drawnFor) > 3;
  }

  /** Systems that are drawn as before come without their drawing. */
  drawAhead(live, width) {
    this.drawnFor = width;
    this.drawings = new Map(live.systems.map(({ key, svg }) => [key, svg || this.drawings.get(key)]));
    this.show(live, live.remarks);
  }

  /** The sheet alone, which is there before anything is said of it. */
  show(live, remarks) {
    const focused = /** @type {HTMLElement | null} */ (document.activeElement)?.dataset.barSpot;
    const open = this.desk.strip.bar;
    const split = open === null
      ? live.systems.length
      : (live.bars.find((bar) => bar.number === open)?.system ?? -1) + 1;
    this.draw(this.desk.part("before"), live, remarks, 0, split);
    this.draw(this.desk.part("after"), live, remarks, split, live.systems.length);
    this.tabStop();
    this.markPassage();
    if (focused) this.spot(focused)?.focus();
    if (this.desk.places.last === "text") this.follow(live);
  }

  draw(host, live, remarks, first, end) {
    const systems = live.systems.slice(first, end);
    systems.forEach((system, place) => {
      const index = first + place;
      const bars = live.bars.filter((bar) => bar.system === index);
      let box = host.children[place];
      if (!box) {
        box = element("div", { class: "system" });
        host.append(box);
      }
      if (box.drawing !== system.key) {
        box.drawing = system.key;
        box.innerHTML = this.drawings.get(system.key); // drawn by the server, words in it escaped
        box.spots = null;
      }
      this.putSpots(box, bars, remarks);
    });
    while (host.children.length > systems.length) host.lastElementChild.remove();
  }

  /** Over a system in which nothing changed they stay as they are. */
  putSpots(box, bars, all) {
    const numbers = new Set(bars.map((bar) => bar.number));
    const remarks = all.filter((remark) => numbers.has(remark.bar));
    const said = JSON.stringify([
      this.desk.strip.bar,
      bars.map(({ number, left, right }) => [number, left, right]),
      remarks.map(({ bar, weight, x }) => [bar, weight, x]),
    ]);
    if (box.spots === said) {
      box.querySelectorAll("[data-bar-spot]").forEach((spot) => spot.setAttribute("tabindex", "-1"));
      return;
    }
    box.spots = said;
    box.querySelectorAll("[data-bar-spot], .spot-mark").forEach((old) => old.remove());
    bars.forEach((bar) => box.append(...this.spots(bar, remarks)));
  }

  /** What one clicks on to open a bar, and the marks of what is wrong in it. */
  spots(bar, remarks) {
    const here = remarks.filter((remark) => remark.bar === bar.number);
    const name = here.length ? this.desk.say("barRemarks", bar.number, here.length) : this.desk.say("bar", bar.number);
    const open = this.desk.strip.bar === bar.number;
    const spot = element("button", {
      type: "button",
      class: open ? "spot spot-open" : "spot",
      "data-bar-spot": bar.number,
      "aria-label": name,
      "aria-expanded": String(open),
      tabindex: "-1",
    });
    spot.style.left = `${100 * bar.left}%`;
    spot.style.width = `${100 * (bar.right - bar.left)}%`;
    const marks = here.map((remark) => {
      const mark = element("span", { class: `spot-mark spot-${remark.weight}`, "aria-hidden": "true" });
      mark.style.left = `${100 * (remark.x < 0 ? bar.left + 0.01 : remark.x)}%`;
      return mark;
    });
    return [spot, ...marks];
  }

  /** One bar can be reached with Tab: the open one, else the first. */
  tabStop() {
    (this.spot(this.desk.strip.bar ?? this.desk.places.here.bar) ??
      this.desk.part("sheet").querySelector("[data-bar-spot]"))?.setAttribute(
        "tabindex",
        "0",
      );
  }

  /** Beside the text, the sheet shows the bar that is written there. */
  follow(live = this.desk.live) {
    const line = this.desk.text.lineHere();
    const bar = live?.bars.filter((one) => one.line <= line).at(-1);
    this.desk.stand.querySelectorAll(".spot-here").forEach((spot) => spot.classList.remove("spot-here"));
    const spot = bar && this.spot(bar.number);
    if (!spot) return;
    spot.classList.add("spot-here");
    const sheet = this.desk.part("sheet");
    const [all, own] = [sheet.getBoundingClientRect(), spot.getBoundingClientRect()];
    if (own.top < all.top) sheet.scrollTop -= all.top - own.top + MARGIN;
    else if (own.bottom > all.bottom) sheet.scrollTop += own.bottom - all.bottom + MARGIN;
  }

  /** Shows which bars are one passage. */
  markPassage() {
    for (const spot of this.desk.part("sheet").querySelectorAll("[data-bar-spot]")) {
      spot.classList.toggle("spot-chosen", this.desk.strip.passage.has(Number(spot.dataset.barSpot)));
    }
  }

  spot(number) {
    return this.desk.part("sheet").querySelector(`[data-bar-spot="${number}"]`);
  }

  /** From bar to bar over the sheet. */
  walk(event) {
    const spot = event.target.closest("[data-bar-spot]");
    if (spot && (event.defaultPrevented || this.desk.strip.passage.key(event, Number(spot.dataset.barSpot)))) return;
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!spot || !by) return;
    event.preventDefault();
    this.spot(Number(spot.dataset.barSpot) + by)?.focus();
  }

  light(bar) {
    this.desk.stand.querySelectorAll(".spot-sounding").forEach((spot) => spot.classList.remove("spot-sounding"));
    if (bar !== null) this.spot(bar)?.classList.add("spot-sounding");
    this.desk.button("listen").textContent = this.desk.say(
      bar === null && !this.desk.player.playing ? "listen" : "stop",
    );
  }
}
