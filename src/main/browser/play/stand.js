// The music stand: the sheet of one line over the whole screen, and a slim strip to play it by. It scrolls with the music.
import { byId, partsOf, targetOf } from "../common/page.js";
import { fitted } from "../common/fitted.js";
import { rove, walkable } from "../common/sheet-keys.js";
import { nextIndex, scrolledTo, spacesFor } from "./fit.js";
import { tempoWords } from "./panel.js";
import { gently } from "./sheet.js";
import { goWords, say } from "./words.js";

/** Milliseconds after the reader's own scrolling in which the sheet stays where it is. */
const LEAVE = 4000;

/** Tells of `open` and `close` events. */
export class Stand extends EventTarget {
  #settings;
  #dialog;
  #part;
  /** @type {any} the line that stands on it: `{practice, panel, sheet, title}` */
  #line = null;
  #listening = new AbortController();
  #asked = 0;
  #spaces = 0;
  /** What is to be said of the sheet as it stands there. */
  #note = "";
  #scrolled = -Infinity;

  constructor(settings) {
    super();
    this.#settings = settings;
    const content = byId("practice-stand", HTMLTemplateElement).content.cloneNode(true);
    this.#dialog = /** @type {HTMLDialogElement} */ (/** @type {DocumentFragment} */ (content).firstElementChild);
    this.#part = partsOf(this.#dialog);
    document.body.append(this.#dialog);
    walkable(this.figure);
    this.#bind();
  }

  /** In which the sheet is pressed and dragged. */
  get figure() {
    return this.#part("figure");
  }

  /** The line on the stand; null while it is away. */
  get line() {
    return this.#line;
  }

  /** Puts a line on it; a press of a key or button lets it fill the screen (WHATWG Fullscreen), else it fills the page. */
  async open(line) {
    this.#line = line;
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    line.practice.addEventListener("change", () => this.show(), { signal });
    line.panel.addEventListener("urgent", () => this.#tell(), { signal });
    this.#dialog.setAttribute("aria-label", say("standOf", line.title));
    for (const name of ["staves", "size"]) this.#radio(name).checked = true;
    this.#dialog.showModal();
    this.#part("go").focus();
    this.show();
    this.dispatchEvent(new Event("open"));
    await this.#part("page").requestFullscreen?.({ navigationUI: "hide" }).catch(() => {}); // it may be refused
    if (line === this.#line) await this.#set();
    else if (!this.#line && document.fullscreenElement) document.exitFullscreen(); // closed while the screen was asked for
  }

  close() {
    this.#dialog.close();
  }

  show() {
    const { practice } = this.#line;
    const { state } = practice;
    const go = this.#part("go");
    go.dataset.state = state;
    go.setAttribute("aria-label", goWords(state));
    this.#part("loop").setAttribute("aria-pressed", String(practice.range !== null));
    this.showTempo();
  }

  #tell() {
    const words = this.#line.panel.urgent || this.#note;
    if (this.#part("said").textContent !== words) this.#part("said").textContent = words;
  }

  /** Often called: a climbing tempo changes by itself. */
  showTempo() {
    const percent = this.#part("percent");
    const words = tempoWords(this.#line.practice);
    if (percent.textContent !== words) percent.textContent = words;
  }

  /** Brings the bar with this index and what comes after it into sight, unless the reader has just scrolled. */
  follow(index) {
    if (performance.now() - this.#scrolled > LEAVE) this.#bring(index, gently());
  }

  #bind() {
    const press = (name, action) =>
      this.#part(name).addEventListener("click", () => this.#line && action(this.#line.practice));
    press("go", (practice) => practice.go());
    press("slower", (practice) => practice.slower());
    press("faster", (practice) => practice.faster());
    press("loop", (practice) => practice.toggleLoop());
    this.#part("close").addEventListener("click", () => this.close());
    this.#part("look").addEventListener("change", ({ target }) => this.#choose(target));
    this.#dialog.addEventListener("close", () => this.#away());
    this.#dialog.addEventListener("keydown", (event) => this.#key(event));
    document.addEventListener("fullscreenchange", () => {
      if (!document.fullscreenElement && this.#line) this.close(); // the browser's own way out
    });
    for (const way of ["wheel", "touchmove"]) {
      this.#part("scroll").addEventListener(way, () => (this.#scrolled = performance.now()), { passive: true });
    }
    addEventListener("resize", () => this.#line && this.#width() !== this.#spaces && this.#set());
  }

  /** The space bar plays, also where the page's other keys are switched off. */
  #key(event) {
    if (event.key !== " " || targetOf(event).closest("button, input, summary, [role=button]")) return;
    event.preventDefault();
    if (!event.repeat) this.#line.practice.go();
  }

  /** The choice that is kept, else the first that there is. */
  #radio(name) {
    /** @type {NodeListOf<HTMLInputElement>} */
    const radios = this.#dialog.querySelectorAll(`input[name="stand-${name}"]`);
    return [...radios].find((radio) => radio.value === this.#settings.get(`stand-${name}`)) ?? radios[0];
  }

  #choose({ name, value }) {
    this.#settings.set(name, value);
    this.#set();
  }

  #width() {
    const { clientWidth: width, clientHeight: height } = this.#part("scroll");
    return spacesFor({ width, height }, this.#radio("size").value);
  }

  /** Has the sheet drawn for this screen, these staves and this size; what stands on the page serves where it cannot be. */
  async #set() {
    const line = this.#line;
    const asked = ++this.#asked;
    const staves = this.#radio("staves").value;
    this.#spaces = this.#width();
    const drawn = line.fitted && await fitted(line.fitted, staves, this.#spaces);
    if (asked !== this.#asked || line !== this.#line) return;
    const svg = drawn ?? line.sheet.copy();
    this.#part("sheet").replaceChildren(svg);
    this.#note = drawn || staves === "both" ? "" : say("standWhole");
    this.#tell();
    line.sheet.show(svg);
    rove(this.figure);
    const { index } = line.practice.place;
    if (index !== undefined) this.#bring(index, "instant");
  }

  #bring(index, behavior) {
    const { practice, sheet } = this.#line;
    const { bars } = practice.score;
    const systemOf = (i) => sheet.system(bars[i].bar);
    const now = systemOf(index);
    if (!now) return;
    const next = nextIndex(index, practice.engine.range, systemOf);
    const scroll = this.#part("scroll");
    const top = scrolledTo(this.#box(now), next === null ? null : this.#box(systemOf(next)), {
      top: scroll.scrollTop,
      bottom: scroll.scrollTop + scroll.clientHeight,
    });
    if (top !== null) scroll.scrollTo({ top, behavior });
  }

  /** Where a system stands on the sheet, from its top. */
  #box(system) {
    const scroll = this.#part("scroll");
    const from = scroll.getBoundingClientRect().top - scroll.scrollTop;
    const { top, bottom } = system.getBoundingClientRect();
    return { top: top - from, bottom: bottom - from };
  }

  #away() {
    const line = this.#line;
    this.#listening.abort();
    this.#line = null;
    this.#asked++;
    if (document.fullscreenElement) document.exitFullscreen();
    line.sheet.show(null);
    this.#part("sheet").replaceChildren();
    this.dispatchEvent(new Event("close"));
  }
}
