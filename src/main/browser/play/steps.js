// The walkthrough played along to: each step shows its piece of the sheet, repeats its sound, and has the controls at hand.
import { element } from "../common/page.js";
import { rangeOf, writeRange } from "./loop.js";
import { tempoWords } from "./panel.js";
import { stepsOf } from "./told.js";
import { Visiting } from "./visiting.js";
import { goWords, say } from "./words.js";

/** Gives each step under `list` a button; `line` is `{practice, sheet}`. */
export function watchSteps(list, line) {
  const { practice, sheet } = line;
  let open = null; // one at a time
  const visiting = new Visiting(practice);

  function close() {
    open?.button.setAttribute("aria-expanded", "false");
    open?.piece.remove();
    open?.controls.close();
    open = null;
  }

  function show(step, passage, button) {
    visiting.go(passage);
    const piece = sheet.piece(passage, practice.score.bars);
    const controls = new Controls(practice);
    step.append(piece, controls.row);
    button.setAttribute("aria-expanded", "true");
    open = { step, button, piece, controls };
    if (practice.state === "stopped") practice.go();
  }

  function press(step, passage, button) {
    const again = open?.step === step;
    close();
    if (!again) {
      show(step, passage, button);
      return;
    }
    practice.stop();
    visiting.back();
  }

  for (const { step, ...passage } of stepsOf(list)) {
    const button = plain(say("step"));
    button.classList.add("practice-step");
    button.setAttribute("aria-label", nameOf(passage, practice.score.bars));
    button.setAttribute("aria-expanded", "false");
    button.addEventListener("click", () => press(step, passage, button));
    step.append(" ", button);
  }
}

/** Stop and tempo beside a step, where the strip under the sheet is far away. */
class Controls {
  #practice;
  #go = plain("");
  #percent = document.createElement("span");
  #closing = new AbortController();

  constructor(practice) {
    this.#practice = practice;
    const slower = plain("−", say("slower"));
    const faster = plain("+", say("faster"));
    this.#percent.className = "practice-percent";
    this.#go.addEventListener("click", () => practice.go());
    slower.addEventListener("click", () => practice.slower());
    faster.addEventListener("click", () => practice.faster());
    this.row = document.createElement("p");
    this.row.className = "practice-quick practice-beside";
    this.row.append(this.#go, slower, this.#percent, faster);
    practice.addEventListener("change", () => this.#show(), { signal: this.#closing.signal });
    this.#show();
  }

  close() {
    this.#closing.abort();
    this.row.remove();
  }

  #show() {
    this.#go.textContent = goWords(this.#practice.state);
    this.#percent.textContent = tempoWords(this.#practice);
  }
}

function plain(text, name) {
  return element("button", { type: "button", class: "practice-plain", text, ...(name && { "aria-label": name }) });
}

/** What tells this step's button from the others': where it begins and ends. */
function nameOf(passage, bars) {
  const range = rangeOf(passage, passage, bars);
  if (!range) return say("step");
  const [from, to] = writeRange(range, bars);
  return from === to ? say("stepAt", from) : say("stepFrom", from, to);
}
