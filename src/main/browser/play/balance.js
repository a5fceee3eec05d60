// A slider for each stem and one for everything, with mute and solo.
import { byId } from "../common/page.js";
import { heard } from "./mixer.js";
import { number, say, sayOr } from "./words.js";

const EVERYTHING = "volume";

export class Balance {
  #practice;
  #rows = new Map();
  #closing = new AbortController();

  constructor(place, practice) {
    this.#practice = practice;
    const template = byId("practice-stem", HTMLTemplateElement);
    for (const stem of [EVERYTHING, ...practice.engine.source.stems]) {
      place.append(template.content.cloneNode(true));
      this.#rows.set(stem, this.#row(place.lastElementChild, stem));
    }
    practice.settings.addEventListener("change", () => this.show(), { signal: this.#closing.signal });
    this.show();
  }

  /** For others to take its place. */
  close() {
    this.#closing.abort();
  }

  show() {
    const { settings, engine } = this.#practice;
    const balance = settings.balance(engine.source.stems);
    for (const [stem, row] of this.#rows) {
      const { level, mute, solo } = balance[stem] ?? { level: settings.get("volume") };
      if (Number(row.level.value) !== Math.round(100 * level)) row.level.value = Math.round(100 * level);
      row.level.setAttribute("aria-valuetext", say("percent", number(Number(row.level.value))));
      row.mute?.setAttribute("aria-pressed", String(mute));
      row.solo?.setAttribute("aria-pressed", String(solo));
    }
  }

  #row(element, stem) {
    const row = {};
    for (const part of element.querySelectorAll("[data-part]")) row[part.dataset.part] = part;
    const name = sayOr(stem, stem);
    row.name.textContent = name;
    element.setAttribute("aria-label", name);
    row.level.setAttribute("aria-label", name);
    row.level.addEventListener("input", () => this.#setLevel(stem, row.level.valueAsNumber / 100));
    if (stem === EVERYTHING) return this.#alone(row);
    for (const press of ["mute", "solo"]) {
      row[press].setAttribute("aria-label", say(`${press}Of`, name));
      row[press].addEventListener("click", () => this.#turn(stem, press));
    }
    return row;
  }

  /** Everything is neither muted nor alone. */
  #alone(row) {
    row.mute.remove();
    row.solo.remove();
    return { name: row.name, level: row.level };
  }

  #setLevel(stem, level) {
    if (stem === EVERYTHING) this.#practice.settings.set("volume", level);
    else this.#practice.settings.setSound(stem, { level });
  }

  #turn(stem, press) {
    const { settings, engine } = this.#practice;
    settings.setSound(stem, { [press]: !settings.balance(engine.source.stems)[stem][press] });
  }
}

/** What of a band is not heard; nobody misses the click. */
export function silentOf(balance) {
  return Object.keys(balance).filter((stem) => stem !== "click" && heard(stem, balance) === 0);
}

/** Mutes the n-th stem or lets it sound again; says whether there is one. */
export function silence(practice, n) {
  const { stems } = practice.engine.source;
  if (n >= stems.length) return false;
  const stem = stems[n];
  practice.settings.setSound(stem, { mute: !practice.settings.balance(stems)[stem].mute });
  return true;
}
