// The panel under a sheet: shows a practice and hands on what is pressed, drawn and typed.
import { byId } from "../common/page.js";
import { rangeWords } from "../common/places.js";
import { FASTEST, SLOWEST } from "./practice.js";
import { Balance, silentOf } from "./balance.js";
import { isSame } from "./loop.js";
import { Passages } from "./passages.js";
import { barsOf } from "./passes.js";
import { ENOUGH, Rest } from "./rest.js";
import { troubleOf } from "./trouble.js";
import { goWords, number, say, sayOr } from "./words.js";

const TICKS = ["countIn", "countEach", "climb", "follow", "neck", "leftHanded", "keys", "restReminder"];
/** The fields of the tempo trainer. */
const TRAINER = ["climbFrom", "climbTo", "climbStep", "every", "rest"];

let panels = 0; // for ids that differ
let cautioned = false; // once a visit, whichever line is played first
const rest = new Rest(); // of all lines together
const MINUTE = 60;

/** Tells of `urgent` events: something else than before is to be read wherever one plays. */
export class Panel extends EventTarget {
  #practice;
  /** Why nothing sounds, until something does. */
  #trouble = "";
  /** What hands and ears are asked to mind. */
  #care = "";
  #parts = {};
  #said = "";
  #shown = null;
  /** @type {Balance | null} */
  #balance = null;

  /** `sources` are what can be chosen to play with, `{title, source}`; the first is what the practice has now. */
  constructor(place, practice, title, sources) {
    super();
    this.#practice = practice;
    place.append(byId("practice-panel", HTMLTemplateElement).content.cloneNode(true));
    place.setAttribute("role", "region");
    place.setAttribute("aria-label", say("panel", title));
    for (const part of place.querySelectorAll("[data-part]")) this.#parts[part.dataset.part] = part;
    this.#describe(++panels);
    this.#bind();
    this.#offer(sources);
    this.#newScore();
    new Passages(practice, this.#parts.passages, this.#parts.keep, (words) => this.#tell(words));
    practice.addEventListener("source", () => this.#newScore());
    practice.addEventListener("change", () => this.show());
    practice.addEventListener("problem", ({ detail }) => this.#fail(say(troubleOf(detail))));
    practice.addEventListener("interrupted", () => this.#fail(say("interrupted")));
    this.#parts.more.open = place.dataset.open === "true";
    place.hidden = false;
    this.show();
  }

  /** What the stand says too, since nobody sees or hears the panel behind it; "" for nothing. */
  get urgent() {
    return this.#trouble || this.#care;
  }

  /** How much of the window's foot the strip covers, in CSS pixels. */
  get covered() {
    return this.#parts.go.closest(".practice-strip").offsetHeight;
  }

  show() {
    this.#showState();
    this.#showTempo();
    this.#showRange();
    this.#showSilent();
    this.#showTicks();
    this.showPlace();
  }

  /** Where the neck is shown; whether there is one is chosen below. */
  neck() {
    for (const tick of ["neck", "leftHanded"]) this.#parts[tick].closest("label").hidden = false;
    return this.#parts.fretboard;
  }

  /** Leads to a question about the bar and count at which the music stands. */
  askable(lesson, line) {
    const { ask } = this.#parts;
    ask.hidden = false;
    const lead = () => {
      const { index, count } = this.#practice.place;
      const place = index === undefined ? "" : `${this.#practice.score.bars[index].bar}.${count}`;
      ask.href = `/e/${lesson}/ask?${new URLSearchParams({ line, place })}`;
    };
    for (const way of ["pointerdown", "focus"]) ask.addEventListener(way, lead);
    lead();
  }

  /** Calls `go()` when what is told of the bar where the music stands is wanted. */
  tellable(go) {
    this.#parts.told.hidden = false;
    this.#parts.told.addEventListener("click", go);
  }

  /** The keyboard stands where one begins to play; the window stays where it is. */
  reach() {
    this.#parts.go.focus({ preventScroll: true });
  }

  /** Calls `open()` when the music is wanted on the stand. */
  standWanted(open) {
    this.#parts.stand.addEventListener("click", open);
  }

  /** Often called: changes the page only where another thing is to be read. */
  showPlace() {
    write(this.#parts.place, this.#placeWords());
    if (write(this.#parts.percent, tempoWords(this.#practice))) this.#showTempo();
    const playing = this.#practice.state === "playing";
    if (playing && rest.due(performance.now() / 1000, true) && this.#practice.settings.get("restReminder")) {
      this.#caution(say("restNow", ENOUGH / MINUTE));
    }
  }

  /** Stands until one stops. */
  #caution(words) {
    if (this.#care === words) return;
    this.#care = words;
    this.#showUrgent();
  }

  /** In the strip, which is on the screen wherever one plays. */
  #showUrgent() {
    this.#parts.urgent.textContent = this.urgent;
    this.#parts.urgent.hidden = !this.urgent;
    this.dispatchEvent(new Event("urgent"));
  }

  #fail(words) {
    this.#tell("");
    this.#setTrouble(words);
  }

  #setTrouble(words) {
    if (this.#trouble === words) return;
    this.#trouble = words;
    this.#showUrgent();
  }

  /** Says what is wrong with the two fields; nothing for null. */
  showProblem(problem) {
    const { from, to } = this.#parts;
    const shown = this.#parts["loop-problem"];
    shown.hidden = !problem;
    shown.textContent = problem ? problemWords(problem) : "";
    for (const [field, input] of Object.entries({ from, to })) {
      input.setAttribute("aria-invalid", String(problem?.field === field));
    }
  }

  #describe(n) {
    const hint = this.#parts["loop-hint"];
    const problem = this.#parts["loop-problem"];
    hint.id = `practice-hint-${n}`;
    problem.id = `practice-problem-${n}`;
    for (const field of [this.#parts.from, this.#parts.to]) {
      field.setAttribute("aria-describedby", `${problem.id} ${hint.id}`);
    }
  }

  #bind() {
    const practice = this.#practice;
    const { go, slower, faster, typed, typedTempo, from, to, whole } = this.#parts;
    go.addEventListener("click", () => practice.go());
    slower.addEventListener("click", () => practice.slower());
    faster.addEventListener("click", () => practice.faster());
    whole.addEventListener("click", () => this.#wholeLine());
    this.#parts.rewind.addEventListener("click", () => practice.rewind());
    this.#parts.pass.addEventListener("change", ({ target }) => practice.chooseWay(Number(target.value)));
    for (const way of ["bar", "four", "section"]) {
      this.#parts[`near-${way}`].addEventListener("click", () => practice.repeatAround(way));
    }
    this.#parts["near-from"].addEventListener("click", () => practice.loopFrom());
    this.#parts["near-to"].addEventListener("click", () => practice.loopTo());
    typed.min = SLOWEST;
    typed.max = FASTEST;
    typed.addEventListener("change", () => {
      this.#typedTempo(typed, [SLOWEST, FASTEST], (value) => practice.setPercent(value));
    });
    typedTempo.addEventListener("change", () => {
      this.#typedTempo(typedTempo, practice.tempos, (value) => practice.setTempo(value));
    });
    for (const field of [from, to]) {
      field.addEventListener("focus", () => field.select());
      field.addEventListener("change", () => this.#typedRange(field));
      field.addEventListener("keydown", (event) => event.key === "Enter" && this.#typedRange(field));
    }
    const { volume } = this.#parts;
    volume.addEventListener("input", () => practice.settings.set("volume", volume.valueAsNumber / 100));
    this.#bindTicks();
  }

  #bindTicks() {
    const { settings } = this.#practice;
    for (const name of TICKS) {
      this.#parts[name].addEventListener("change", ({ target }) => settings.set(name, target.checked));
    }
    for (const name of TRAINER) {
      this.#parts[name].addEventListener("change", ({ target }) => {
        this.#practice.setTrainer(name, target.value);
        target.value = this.#practice.trainer[name];
      });
    }
  }

  #offer(sources) {
    const choice = this.#parts.with;
    this.#parts["with-row"].hidden = sources.length < 2;
    choice.replaceChildren(...sources.map(({ title }, i) => new Option(title, String(i))));
    choice.addEventListener("change", () => this.#practice.use(sources[Number(choice.value)].source));
  }

  /** After the score has changed: its tempos and its stems. */
  #newScore() {
    const { bars } = this.#practice.score;
    this.#parts["near-section"].hidden = !this.#practice.score.sections.length;
    this.#parts.from.placeholder = bars[0].bar;
    this.#parts.to.placeholder = bars[bars.length - 1].bar;
    this.#parts.steps.replaceChildren(...this.#practice.score.percents.map((percent) => this.#step(percent)));
    this.#balance?.close();
    this.#parts.stems.replaceChildren();
    this.#balance = new Balance(this.#parts.stems, this.#practice);
  }

  #step(percent) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "practice-plain";
    button.dataset.percent = percent;
    button.textContent = say("percent", number(percent));
    button.addEventListener("click", () => this.#practice.setPercent(percent));
    return button;
  }

  #typedTempo(field, [least, most], set) {
    const value = field.value ? field.valueAsNumber : NaN;
    if (Number.isFinite(value)) set(value);
    field.value = ""; // what it became, where that is not what was typed
    this.#showTempo();
    if (value < least || value > most) this.#tell(say("bounds", number(least), number(most)));
  }

  /** A new beginning behind the old end takes the end along. */
  #typedRange(field) {
    const { from, to } = this.#parts;
    let problem = this.#practice.setRange(from.value, to.value);
    if (problem?.problem === "backward" && field === from) {
      to.value = from.value.match(/\d+/)[0];
      problem = this.#practice.setRange(from.value, to.value);
    }
    this.showProblem(problem);
  }

  #wholeLine() {
    this.#parts.from.value = this.#parts.to.value = "";
    this.#typedRange(this.#parts.to);
  }

  #showState() {
    const { state } = this.#practice;
    write(this.#parts.go, goWords(state));
    this.#parts.go.dataset.state = state;
    if (state !== "stopped") this.#setTrouble("");
    const range = this.#practice.range;
    const what = range ? rangeWords(range, say) : say("all");
    if (state === "stopped") {
      rest.due(performance.now() / 1000, false);
      this.#caution("");
    } else if (!cautioned) {
      cautioned = true;
      this.#caution(say("caution"));
    }
    if (state === "playing") this.#tell(this.#playing(what));
    else if (state === "loading") this.#tell(say("waiting"));
    else if (this.#said) this.#tell(this.#practice.paused ? say("paused", this.#placeWords()) : say("stopped"));
  }

  #playing(what) {
    const { settings, trainer } = this.#practice;
    if (!settings.get("climb")) return say("playing", what, number(settings.get("percent")));
    return say("training", what, number(trainer.climbFrom), number(trainer.climbTo));
  }

  #showTempo() {
    const { settings } = this.#practice;
    const percent = settings.get("climb") ? this.#practice.percent : settings.get("percent");
    const { steps, typed, typedTempo, stretched } = this.#parts;
    for (const step of steps.children) {
      step.setAttribute("aria-pressed", String(Number(step.dataset.percent) === percent));
    }
    fill(typed, percent);
    fill(typedTempo, this.#practice.score.bpm(percent));
    const { take, longer } = this.#practice.score.at(percent);
    stretched.hidden = longer === 1;
    write(stretched, longer === 1 ? "" : say("stretched", number(take.percent)));
  }

  #showRange() {
    const { range } = this.#practice.engine;
    if (range === this.#shown) return;
    this.#shown = range;
    this.showProblem(null);
    this.#showPasses();
    const { from, to } = this.#parts;
    if (this.#practice.isRange(from.value, to.value)) return; // what is typed stays as it was typed
    [from.value, to.value] = this.#practice.range ?? ["", ""];
  }

  #showPasses() {
    const { ways, score, engine } = this.#practice;
    const { pass, ["pass-row"]: row } = this.#parts;
    row.hidden = !ways.length;
    const options = ways.map((way, i) => {
      const heard = barsOf(way.range, score.bars);
      const words = way.pass === null ? say("passAll", heard) : say("passOf", way.pass, heard);
      const chosen = isSame(way.range, engine.range);
      return new Option(words, String(i), chosen, chosen);
    });
    pass.replaceChildren(...options);
  }

  /** What is left out of the band, for who has forgotten it. */
  #showSilent() {
    const { settings, engine } = this.#practice;
    const names = silentOf(settings.balance(engine.source.stems)).map((stem) => sayOr(stem, stem));
    const { silent } = this.#parts;
    silent.hidden = !names.length;
    write(silent, names.length ? say("without", names.join(", ")) : "");
  }

  #showTicks() {
    const { settings, trainer } = this.#practice;
    for (const name of TICKS) this.#parts[name].checked = settings.get(name);
    this.#parts.volume.value = String(Math.round(100 * settings.get("volume")));
    for (const name of TRAINER) {
      if (document.activeElement !== this.#parts[name]) this.#parts[name].value = trainer[name];
    }
  }

  #placeWords() {
    const { counting, rest, index, count } = this.#practice.place;
    if (rest > 0) return say("resting", Math.ceil(rest));
    if (counting !== undefined) return say("counting", counting || "");
    const { bar, pass } = this.#practice.score.bars[index];
    if (bar === 0) return say("pickup", count);
    return pass > 1 ? say("again", bar, count, pass) : say("place", bar, count);
  }

  #tell(words) {
    this.#said = words;
    write(this.#parts.said, words);
  }
}

/** How fast it is: per cent, or beats a minute where the trainer counts them. */
export function tempoWords(practice) {
  if (!practice.settings.get("climb")) return say("percent", number(practice.percent));
  return say("tempo", number(Math.round(practice.score.bpm(practice.percent))));
}

function problemWords({ problem, found, bar, first, last, times }) {
  return {
    form: () => say("form", found),
    bar: () => say("bar", found, first, last),
    count: () => say("count", found, bar),
    pass: () => say("pass", found, bar, times),
    backward: () => say("backward"),
  }[problem]();
}

/** A number with one decimal at most, unless somebody types there. */
function fill(field, value) {
  if (document.activeElement !== field || !field.value) field.value = String(Math.round(10 * value) / 10);
}

/** Whether it was another text. */
function write(element, text) {
  if (element.textContent === text) return false;
  element.textContent = text;
  return true;
}
