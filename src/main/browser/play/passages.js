// Passages that the player has marked to come back to: each a button with its bars and tempo, and one that forgets it.
import { element } from "../common/page.js";
import { rangeWords } from "../common/places.js";
import { number, say } from "./words.js";

const MOST = 12;

export class Passages {
  #practice;
  #list;
  #keeper;
  #tell;

  /**
   * @param {any} practice
   * @param {HTMLElement} list in which they are shown
   * @param {HTMLElement} keep marks the passage that is repeated now
   * @param {(words: string) => void} tell says what was done
   */
  constructor(practice, list, keep, tell) {
    this.#practice = practice;
    this.#list = list;
    this.#keeper = keep;
    this.#tell = tell;
    keep.addEventListener("click", () => this.#keep());
    practice.settings.addEventListener("change", ({ detail }) => detail === "passages" && this.#show());
    this.#show();
  }

  get #kept() {
    return this.#practice.settings.passages;
  }

  set #kept(passages) {
    this.#practice.settings.set("passages", passages);
  }

  #keep() {
    const [from, to] = this.#practice.range ?? ["", ""];
    const percent = this.#practice.settings.get("percent");
    this.#kept = [...this.#othersThan({ from, to }), { from, to, percent }].slice(-MOST);
  }

  #othersThan({ from, to }) {
    return this.#kept.filter((one) => one.from !== from || one.to !== to);
  }

  #go({ from, to, percent }) {
    if (this.#practice.setRange(from, to)) return; // another line by now
    this.#practice.setPercent(percent);
  }

  /** The button that was pressed is gone: the keyboard stands at its neighbour. */
  #forget(passage, name) {
    const at = this.#kept.findIndex((one) => one.from === passage.from && one.to === passage.to);
    this.#kept = this.#othersThan(passage);
    const rows = [...this.#list.querySelectorAll("li")];
    (rows[at] ?? rows.at(-1))?.querySelector("button")?.focus();
    if (!rows.length) this.#keeper.focus();
    this.#tell(say("forgot", name));
  }

  #show() {
    this.#list.hidden = !this.#kept.length;
    this.#list.replaceChildren(...this.#kept.map((passage) => this.#row(passage)));
  }

  #row(passage) {
    const { from, to, percent } = passage;
    const what = from || to ? rangeWords([from, to], say) : say("all");
    const name = say("passage", what, number(percent));
    const go = element("button", { type: "button", class: "practice-plain", text: name });
    const forget = element("button", {
      type: "button",
      class: "practice-plain",
      text: "×",
      "aria-label": say("forget", name),
    });
    go.addEventListener("click", () => this.#go(passage));
    forget.addEventListener("click", () => this.#forget(passage, name));
    return element("li", {}, go, forget);
  }
}
