// The ways between the sheet and its walkthrough: from the bar where the music stands to what is told of it, from there
// back to the sheet, and a mark beside the step that sounds.
import { element, inside } from "../common/page.js";
import { moment } from "./score.js";
import { stepsOf, tells } from "./told.js";
import { say } from "./words.js";

export class Ways {
  /** @type {{bar: number, told: HTMLElement}[]} in their order; what comes again is told once, where it was first */
  #bars;
  #steps;
  #line;
  /** @type {HTMLElement[]} */
  #marked = [];

  /**
   * @param {HTMLElement} list the walkthrough of one line
   * @param {any} line `{practice, sheet, panel}`
   */
  constructor(list, line) {
    this.#line = line;
    const told = /** @type {HTMLElement[]} */ ([...list.querySelectorAll(".told-bar")]);
    this.#bars = told.map((one) => ({ bar: Number(one.id.match(/\d+$/)?.[0]), told: one }));
    this.#steps = stepsOf(list);
    for (const one of this.#bars) this.#wayBack(one);
    line.panel.tellable(() => this.#go());
  }

  /** Marks the steps of what is lit, events of the sheet. */
  mark(events) {
    for (const step of this.#marked) step.classList.remove("step-now");
    const at = events.map((event) => ({ bar: event.bar, at: moment(event.at) }));
    this.#marked = this.#steps.filter((step) => at.some((one) => tells(step, one))).map(({ step }) => step);
    for (const step of this.#marked) step.classList.add("step-now");
  }

  /** To the bar where the music stands. */
  #go() {
    const { practice } = this.#line;
    const { index } = practice.place;
    const { bar } = practice.score.bars[index ?? practice.engine.range.first];
    const found = this.#bars.findLast((one) => one.bar <= bar) ?? this.#bars[0];
    const folded = found.told.closest("details");
    if (folded) folded.open = true;
    const name = inside(found.told, ".told-name");
    name.tabIndex = -1;
    name.focus({ preventScroll: true });
    found.told.scrollIntoView({ block: "start" });
  }

  #wayBack({ bar, told }) {
    const name = inside(told, ".told-name");
    const back = element("button", {
      type: "button",
      class: "practice-plain told-back",
      text: say("toSheet"),
      "aria-label": say("toSheetOf", name.textContent),
    });
    back.addEventListener("click", () => this.#line.sheet.reach(bar));
    name.after(back);
  }
}
