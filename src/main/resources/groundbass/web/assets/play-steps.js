// The walkthrough played along to: each step shows its piece of the sheet and repeats its sound.
import { moment } from "./play-score.js";
import { say } from "./play-words.js";

/** Gives each step under `list` a button; `line` is `{practice, sheet}`. */
export function watchSteps(list, line) {
  let open = null; // one at a time

  function close() {
    open?.button.setAttribute("aria-expanded", "false");
    open?.piece.remove();
    open = null;
  }

  function show(step, button) {
    const passage = passageOf(step);
    line.practice.choose(passage, passage);
    const piece = line.sheet.piece(passage, line.practice.score.bars);
    step.append(piece);
    button.setAttribute("aria-expanded", "true");
    open = { step, button, piece };
    if (line.practice.state === "stopped") line.practice.go();
  }

  function press(step, button) {
    const again = open?.step === step;
    close();
    if (!again) {
      show(step, button);
      return;
    }
    line.practice.stop();
    line.practice.wholeLine();
  }

  for (const step of list.querySelectorAll(".steps > [data-from]")) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "practice-plain practice-step";
    button.textContent = say("step");
    button.setAttribute("aria-expanded", "false");
    button.addEventListener("click", () => press(step, button));
    step.append(" ", button);
  }
}

/** The step's passage as an event of the sheet: `{bar, at, toBar, to}` with moments as numbers. */
function passageOf({ dataset }) {
  const [bar, at] = dataset.from.split(":");
  const [toBar, to] = dataset.to.split(":");
  return { bar: Number(bar), at: moment(at), toBar: Number(toBar), to: moment(to) };
}
