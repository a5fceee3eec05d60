// What the student chose, kept in this browser: some of it for all lessons, some for each line. Nothing of it is sent anywhere.

const KEY = "groundbass.practice";

/** The same wherever one practises. */
const SHARED = {
  countIn: true,
  countEach: false,
  every: 4,
  rest: 0,
  volume: 0.8,
  follow: true,
  keys: true,
  neck: false,
  leftHanded: false,
  restReminder: true,
  "stand-staves": "both",
  "stand-size": "medium",
};
/**
 * Each line's own: its tempo (0 for the line's usual one), its trainer in beats a minute (0 likewise), its loop as it stands
 * in the two fields.
 */
const OWN = { percent: 0, climb: false, climbFrom: 0, climbTo: 0, climbStep: 0, from: "", to: "" };
/** The tempo that one begins at, if the line has been rendered at it or at one below. */
const USUAL = 80;

/** Values under a key of the browser's storage; a `change` event tells of each change. */
class Kept extends EventTarget {
  #key;
  #values;

  constructor(key, usual) {
    super();
    this.#key = key;
    const kept = read(key);
    this.#values = { ...usual };
    for (const name of Object.keys(usual)) {
      if (typeof kept[name] === typeof usual[name]) this.#values[name] = kept[name];
    }
  }

  has(name) {
    return name in this.#values;
  }

  get(name) {
    return this.#values[name];
  }

  /** As it stands in the store, where another window may have put it. */
  fresh(name) {
    const kept = read(this.#key)?.[name];
    if (typeof kept === typeof this.#values[name]) this.#values[name] = kept;
    return this.#values[name];
  }

  set(name, value) {
    if (this.#values[name] === value) return;
    this.#values[name] = value;
    write(this.#key, { ...read(this.#key), [name]: value }); // all else is as another window may have it
    this.dispatchEvent(new CustomEvent("change", { detail: name }));
  }
}

/** The settings of this browser for all lines. */
export class Settings extends Kept {
  constructor() {
    super(KEY, SHARED);
  }
}

/** The settings of one line, which has the shared ones too; a `change` event tells of each change of either. */
export class LineSettings extends EventTarget {
  #shared;
  #own;
  #usual;

  /** @param percents that the line was rendered at, rising */
  constructor(shared, line, percents) {
    super();
    this.#shared = shared;
    this.#own = new Kept(`${KEY}:${line}`, { ...OWN, balance: {}, passages: [] });
    this.#usual = percents.filter((percent) => percent <= USUAL).at(-1) ?? percents[0] ?? USUAL;
    for (const kept of [shared, this.#own]) {
      kept.addEventListener("change", ({ detail }) => this.dispatchEvent(new CustomEvent("change", { detail })));
    }
  }

  /** The per cent that the line begins at. */
  get usual() {
    return this.#usual;
  }

  get(name) {
    if (name === "percent") return this.#own.get(name) || this.#usual;
    return this.#own.has(name) ? this.#own.get(name) : this.#shared.get(name);
  }

  set(name, value) {
    (this.#own.has(name) ? this.#own : this.#shared).set(name, value);
  }

  /** Passages to come back to, each `{from, to, percent}`. */
  get passages() {
    const kept = this.#own.fresh("passages");
    return Array.isArray(kept) ? kept.filter(isPassage) : [];
  }

  /** `{level, mute, solo}` by stem. */
  balance(stems) {
    return Object.fromEntries(stems.map((stem) => [stem, soundOf(stem, this.#own.get("balance")?.[stem])]));
  }

  setSound(stem, change) {
    const balance = this.#own.fresh("balance") ?? {};
    this.set("balance", { ...balance, [stem]: { ...soundOf(stem, balance[stem]), ...change } });
  }
}

function isPassage(kept) {
  return typeof kept?.from === "string" && typeof kept.to === "string" && kept.percent > 0;
}

/** The click waits until it is asked for. */
function soundOf(stem, kept) {
  const usual = { level: 0.8, mute: stem === "click", solo: false };
  const { level, mute, solo } = { ...usual, ...kept };
  return { level: level >= 0 && level <= 1 ? level : usual.level, mute: mute === true, solo: solo === true };
}

function read(key) {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "{}");
  } catch {
    return {};
  }
}

function write(key, values) {
  try {
    localStorage.setItem(key, JSON.stringify(values));
  } catch {
    // a private window may refuse; the settings then last as long as the page
  }
}
