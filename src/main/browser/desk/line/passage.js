// The bar in hand, and others up to one behind it, as one passage: brought once more, kept to be put in elsewhere, moved on
// the neck.
import { element, isCommand, isTyping } from "../../common/page.js";

const KEPT = "groundbass-bars"; // also for another line, in another window
/** @type {Record<string, [number, number]>} by strings and by frets */
const SHIFTS = { stringUp: [1, 0], stringDown: [-1, 0], fretUp: [0, 1], fretDown: [0, -1] };

export class Passage {
  #desk;
  #first = 0;
  #last;
  #struck;
  #becomes;

  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.#desk = desk;
    const { say } = desk;
    this.#last = element("input", { type: "text", inputmode: "numeric", autocomplete: "off", size: "3" });
    this.#last.addEventListener("change", () => this.#desk.markPassage());
    const label = element("label", { class: "stand-choice" }, element("span", { text: say("lastBar") }), this.#last);
    const button = (word, action) => {
      const made = element("button", { type: "button", class: "button-quiet", text: say(word) });
      made.addEventListener("click", action);
      return made;
    };
    const shifts = Object.entries(SHIFTS).map(([word, by]) => button(word, () => this.move(by)));
    const tools = element(
      "div",
      { class: "stand-tools" },
      label,
      button("again", () => this.again()),
      button("copyBars", () => this.copy()),
      button("pasteBars", () => this.paste()),
      ...shifts,
    );
    const ways = desk.words.techniques;
    this.#struck = choice(ways, ways[0]);
    this.#becomes = choice(ways, ways[1]);
    const exchange = element(
      "div",
      { class: "stand-tools" },
      element("label", { class: "stand-choice" }, element("span", { text: say("struck") }), this.#struck),
      element("label", { class: "stand-choice" }, element("span", { text: say("becomes") }), this.#becomes),
      button("exchange", () => this.exchange()),
    );
    const summary = element("summary", { text: say("passage") });
    this.box = element("details", { class: "strip-passage" }, summary, tools, exchange);
  }

  /** The bar in hand, alone where it is another than before. */
  begin(number) {
    if (number === this.#first) return;
    this.#first = number;
    this.#last.value = String(number);
    this.#desk.markPassage();
  }

  /** The bars, as far as the line has them. */
  bars() {
    const numbers = this.#desk.live?.bars.map((bar) => bar.number) ?? [];
    const wanted = Number(this.#last.value) || this.#first;
    const last = Math.max(this.#first, Math.min(wanted, numbers.at(-1) ?? this.#first));
    return { first: this.#first, last };
  }

  has(number) {
    const { first, last } = this.bars();
    return last > first && number >= first && number <= last;
  }

  reach(by) {
    const { first, last } = this.bars();
    this.#last.value = String(Math.max(first, last + by));
    this.#desk.markPassage();
    const now = this.bars();
    this.#desk.tell(this.#desk.say("chosen", now.first, now.last));
  }

  async again() {
    const { first, last } = this.bars();
    if (await this.#desk.edit({ edit: "repeat", bar: first, last })) this.#goOn(last + 1, last - first);
  }

  /** With bars that have just come, as many as they are, so that the next key means all of them. */
  #goOn(number, more) {
    this.#desk.openBar(number, "first");
    this.#last.value = String(number + more);
    this.#desk.markPassage();
  }

  copy() {
    const { first, last } = this.bars();
    try {
      localStorage.setItem(KEPT, JSON.stringify({ source: this.#desk.text.value(), bar: first, last }));
      this.#desk.tell(this.#desk.say("copiedBars", first, last));
    } catch {
      this.#desk.tell(this.#desk.say("cannot"));
    }
  }

  async paste() {
    const { last } = this.bars();
    let kept;
    try {
      kept = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    } catch {
      return this.#desk.tell(this.#desk.say("cannot"));
    }
    if (!kept) return this.#desk.tell(this.#desk.say("nothingCopied"));
    if (await this.#desk.edit({ edit: "paste", after: last, ...kept })) this.#goOn(last + 1, kept.last - kept.bar);
  }

  /** @param {[number, number]} by strings and frets */
  async move([strings, frets]) {
    const { first, last } = this.bars();
    const told = await this.#desk.edit({ edit: "move", bar: first, last, strings, frets }, "offNeck");
    if (told) this.#desk.strip.reread();
  }

  /** What is struck one way in these bars is struck another way. */
  async exchange() {
    const { first, last } = this.bars();
    const change = { edit: "exchange", bar: first, last, struck: this.#struck.value, becomes: this.#becomes.value };
    if (await this.#desk.edit(change, "notStruck")) this.#desk.strip.reread();
  }

  /**
   * Keys that speak of bars, on the sheet and in the strip.
   * @param {KeyboardEvent} event
   * @param {number} bar where it was pressed
   * @returns {boolean} whether it was one
   */
  key(event, bar) {
    const action = this.#action(event);
    if (!action) return false;
    event.preventDefault();
    this.#desk.takeInHand(bar);
    action();
    return true;
  }

  /** @param {KeyboardEvent} event */
  #action(event) {
    if (event.altKey && !event.ctrlKey && !event.metaKey) {
      const up = { ArrowUp: 1, ArrowDown: -1 }[event.code];
      if (up) return () => this.move(event.shiftKey ? [up, 0] : [0, up]);
      return { KeyA: () => this.again(), KeyC: () => this.copy(), KeyV: () => this.paste() }[event.code];
    }
    if (isTyping(event)) return undefined;
    if (isCommand(event, "c")) return wordsAreMarked() ? undefined : () => this.copy();
    if (isCommand(event, "v")) return () => this.paste();
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.code];
    return by && event.shiftKey ? () => this.reach(by) : undefined;
  }
}

/** @param {string[]} words @param {string} chosen */
function choice(words, chosen) {
  const made = element("select", {}, ...words.map((word) => element("option", { value: word, text: word })));
  made.value = chosen;
  return made;
}

/** Words of the page, a remark perhaps: the browser's own copying is meant then. */
function wordsAreMarked() {
  return getSelection()?.isCollapsed === false;
}
