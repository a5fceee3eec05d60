// The steps of a walkthrough as values: which stretch of the line each tells of.
import { moment } from "./score.js";

/**
 * The steps under a list that tell of notes, each `{step, bar, at, toBar, to}` with moments as numbers. What is said of a
 * whole bar beside its notes (a section begins, a repeat ends) has none of its own.
 * @param {HTMLElement} list
 */
export function stepsOf(list) {
  const steps = /** @type {HTMLElement[]} */ ([...list.querySelectorAll(".steps > [data-from]")]);
  const read = steps.map((step) => readStep(step));
  return read.filter((one, i) => !one.whole || !read.some((other, j) => sayMore(one, i, other, j)));
}

function readStep(step) {
  const { bar, at } = place(step.dataset.from);
  const { bar: toBar, at: to } = place(step.dataset.to);
  return { step, whole: step.classList.contains("step-whole"), bar, at, toBar, to };
}

/** "3:1/4" as values. */
function place(text) {
  const [bar, at] = text.split(":");
  return { bar: Number(bar), at: moment(at) };
}

/** Whether another step of the same bar has its notes: one of a part of it, else the last of those of all of it. */
function sayMore(whole, i, other, j) {
  return other.bar === whole.bar && (!other.whole || j > i);
}

/** Whether a moment of a bar lies in a step. */
export function tells({ bar, at, toBar, to }, moment) {
  const begun = moment.bar > bar || (moment.bar === bar && moment.at >= at);
  return begun && (moment.bar < toBar || (moment.bar === toBar && moment.at < to));
}
