// What the student chose, kept in this browser for all lessons of this site. Nothing of it is sent anywhere.

const KEY = "groundbass.practice";

const USUAL = {
  percent: 80,
  countIn: true,
  climb: false,
  every: 4,
  volume: 0.8,
  follow: true,
  keys: true,
};

/** The settings of this browser; a `change` event tells of each change. */
export class Settings extends EventTarget {
  #values;

  constructor() {
    super();
    this.#values = sane(read());
  }

  get(name) {
    return this.#values[name];
  }

  set(name, value) {
    if (this.#values[name] === value) return;
    this.#values[name] = value;
    this.#changed(name);
  }

  /** `{level, mute, solo}` by stem. */
  balance(stems) {
    return Object.fromEntries(stems.map((stem) => [stem, soundOf(stem, this.#values.balance[stem])]));
  }

  setSound(stem, change) {
    this.#values.balance[stem] = { ...soundOf(stem, this.#values.balance[stem]), ...change };
    this.#changed("balance");
  }

  #changed(name) {
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#values));
    } catch {
      // a private window may refuse; the settings then last as long as the page
    }
    this.dispatchEvent(new CustomEvent("change", { detail: name }));
  }
}

/** What was kept, with the usual value where there is none or another kind of thing. */
function sane(kept) {
  const values = { ...USUAL };
  for (const name of Object.keys(USUAL)) if (typeof kept[name] === typeof USUAL[name]) values[name] = kept[name];
  return { ...values, balance: typeof kept.balance === "object" && kept.balance ? kept.balance : {} };
}

/** The click waits until it is asked for. */
function soundOf(stem, kept) {
  const usual = { level: 0.8, mute: stem === "click", solo: false };
  const { level, mute, solo } = { ...usual, ...kept };
  return { level: level >= 0 && level <= 1 ? level : usual.level, mute: mute === true, solo: solo === true };
}

function read() {
  try {
    return JSON.parse(localStorage.getItem(KEY)) ?? {};
  } catch {
    return {};
  }
}
