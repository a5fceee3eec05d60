// The desk around the text of one line: the sheet to work on, the strip of the bar in hand, fretboard, sound and the text
// itself. The text in the editor component is the one truth here; all else shows it or changes it.
import { byId, element, isCommand, isTyping, partsOf, wordsOf } from "../../common/page.js";
import { LineText } from "./text.js";
import { MidiKeys } from "./midi.js";
import { Neck } from "./neck.js";
import { Places } from "./places.js";
import { Player } from "./sound.js";
import { Said } from "./said.js";
import { Settings } from "./settings.js";
import { Sheet } from "./sheet.js";
import { Strip } from "./strip.js";
import { Talk } from "./talk.js";
import { Ways } from "./ways.js";

const ROOMY = "(min-width: 40rem)"; // on a phone the sheet and the strip come first

export class LineDesk {
  /**
   * @param root the element around the text area of a line
   * @param parts what to put around it
   * @param words the words of line text
   */
  constructor(root, parts, words, form) {
    this.root = root;
    this.words = words;
    this.form = form;
    this.path = form.dataset.path;
    this.prefix = root.dataset.prefix;
    this.area = byId(root.dataset.field, HTMLTextAreaElement);
    this.say = wordsOf(parts);
    this.ids = 0;
    this.listeners = [];
    this.midiWord = null; // what its button says while no keyboard is listened to
    this.stand = parts.querySelector(".stand").cloneNode(true);
    this.part = partsOf(this.stand);
    this.enclose(document.activeElement === this.area);
    this.talk = new Talk(this);
    this.sheet = new Sheet(this);
    this.said = new Said(this);
    this.ways = new Ways(this);
    this.places = new Places(this);
    this.text = new LineText(this.area, {
      memory: `groundbass-history:${this.path}:${this.area.id}`,
      editor: this.stand.dataset.editor,
      words: this.words,
      strings: () => this.strings(),
      changed: () => this.talk.changed(),
      entered: () => {
        this.places.last = "text";
        this.places.where();
      },
      fix: (index) => this.fixAt(index),
    });
    // the editor component weighs as much as all else on the page: it comes when somebody comes to the text
    for (const coming of ["pointerenter", "focusin"]) {
      this.part("text-box").addEventListener(coming, () => this.text.open(), { once: true });
    }
    for (const moved of ["keyup", "pointerup"]) this.part("text").addEventListener(moved, () => this.sheet.follow());
    this.strip = new Strip(this.part("strip"), this);
    this.neck = new Neck(this.part("neck"), this.say, (place) => this.places.writePlace(place));
    this.player = new Player(
      this.path,
      (bar) => this.sheet.light(bar),
      (word) => this.tell(word ? this.say(word) : ""),
    );
    this.midi = new MidiKeys((pitches) => this.places.pitches(pitches), (word, value) => this.midiTold(word, value));
    this.settings = new Settings(this);
    this.buildTools();
    this.buildKeys();
    this.part("walk").addEventListener("toggle", () => this.part("walk").open && this.talk.refresh());
    new ResizeObserver(() => this.resized()).observe(this.part("sheet"));
    this.talk.refresh();
  }

  /**
   * Puts the desk around the field of the text.
   * @param {boolean} begun whether somebody is typing in it
   */
  enclose(begun) {
    const field = this.root.querySelector(".field");
    const drawn = this.root.querySelector(".live svg");
    if (drawn) this.part("before").append(element("div", { class: "system" }, drawn)); // until the first answer
    this.root.classList.remove("pair");
    this.root.replaceChildren(this.stand);
    this.part("text").append(field);
    this.part("text-box").open = begun || matchMedia(ROOMY).matches;
    if (begun) this.area.focus(); // which its new place took away
  }

  buildTools() {
    for (const technique of this.words.techniques) {
      this.part("technique").append(element("option", { value: technique, text: technique }));
    }
    const does = {
      settings: () => this.settings.toggle(),
      "add-bar": () => this.addBar(),
      undo: () => this.history(true),
      redo: () => this.history(false),
      listen: () => this.listen(),
      rest: () => this.places.writePlace("rest"),
      hold: () => this.places.writePlace("hold"),
      midi: () => this.toggleMidi(),
    };
    for (const [name, action] of Object.entries(does)) this.button(name).addEventListener("click", action);
    this.button("midi").hidden = !MidiKeys.offered;
  }

  button(name) {
    return this.stand.querySelector(`[data-do="${name}"]`);
  }

  buildKeys() {
    document.addEventListener("keydown", (event) => {
      this.undoKey(event);
      this.barKey(event);
    });
    this.stand.addEventListener("keydown", (event) => {
      if (event.altKey && event.key.toLowerCase() === "p") {
        event.preventDefault();
        this.listen();
      }
    });
    this.part("sheet").addEventListener("keydown", (event) => this.sheet.walk(event));
    this.part("sheet").addEventListener("click", (event) => {
      const spot = event.target.closest("[data-bar-spot]");
      if (spot) this.openBar(Number(spot.dataset.barSpot), "first");
    });
  }

  /**
   * Undoes and does again wherever the focus is; a field in which something else is typed undoes that itself. The plain
   * field of the text forgets what was typed once the strip or a button has changed it: its history is ours as well.
   */
  undoKey(event) {
    const undo = isCommand(event, "z") && !event.shiftKey;
    const redo = isCommand(event, "y") || (isCommand(event, "z") && event.shiftKey);
    const ours = event.target === this.area || this.part("strip").contains(event.target);
    const own = isTyping(event) && !ours;
    if (event.defaultPrevented || own || (!undo && !redo)) return;
    event.preventDefault();
    this.history(undo);
  }

  /** Adds a bar wherever nothing is typed; a link is opened by these keys in a window of its own. */
  barKey(event) {
    if (event.defaultPrevented || !isCommand(event, "enter") || event.shiftKey) return;
    if (isTyping(event) || event.target.closest("a[href]")) return;
    event.preventDefault();
    this.addBar();
  }

  /** The bar that a key speaks of; a strip that is open goes there, so that one sees which is meant. */
  takeInHand(number) {
    if (this.strip.bar === null) return this.strip.passage.begin(number);
    if (this.strip.bar === number) return;
    this.strip.open(number);
    this.show();
  }

  // --- the text and what it comes to

  /** What the text comes to, as the server said last; null until it has. */
  get live() {
    return this.talk.live;
  }

  /**
   * Has the server change the text. Whether it could.
   * @param {Record<string, unknown>} change
   * @param {string} [cannot] what is said where it could not
   */
  edit(change, cannot) {
    return this.talk.edit(change, cannot);
  }

  /** What is still to change the text. Null for nothing. */
  coming() {
    return this.talk.coming();
  }

  markPassage() {
    this.sheet.markPassage();
  }

  resized() {
    if (this.sheet.isOfOtherWidth()) this.talk.widened();
    this.strip.spread();
  }

  take(fix) {
    if (this.talk.liveText !== this.text.value()) return;
    this.text.apply(fix.splices);
    this.strip.reread();
  }

  /** Also where the answer to the last key is still on its way. */
  async fixAt(index) {
    if (!(await this.talk.settled())) return;
    const fixable = this.live.remarks.filter((remark) => remark.fixes.length);
    const line = this.text.lineAt(index);
    const remark = fixable.find((one) => one.from <= index && index <= one.to) ??
      fixable.find((one) => one.line === line);
    if (remark) this.take(remark.fixes[0]);
  }

  async history(back) {
    await (back ? this.text.undo() : this.text.redo());
    this.strip.reread();
  }

  tell(text) {
    this.part("word").textContent = text;
  }

  strings() {
    return this.live?.neck.strings.map((string) => string.name.replace(/f$/, "")) ?? [];
  }

  onShow(listener) {
    this.listeners.push(listener);
  }

  /** Once, when the line is shown first. */
  once(listener) {
    if (this.live) return listener();
    this.onShow(() => {
      if (!listener) return;
      const first = listener;
      listener = null;
      first();
    });
  }

  mistakes() {
    return this.live?.remarks.filter((remark) => remark.weight === "error").length ?? 0;
  }

  looks() {
    return (this.live?.remarks.length ?? 0) - this.mistakes();
  }

  // --- showing

  show() {
    const live = this.live;
    const open = this.strip.bar;
    this.sheet.show(live, live.remarks);
    this.part("empty").hidden = live.systems.length > 0 || live.undrawn;
    this.button("add-bar").classList.toggle("button-quiet", live.bars.length > 0);
    this.part("undrawn").hidden = !live.undrawn;
    this.part("undrawn").textContent = live.undrawn;
    if (open !== null) {
      if (live.bars.some((bar) => bar.number === open)) this.strip.update();
      else this.loseBar();
    }
    this.neck.show(live.neck);
    this.text.show(live.remarks);
    this.said.show();
    this.settings.show();
    this.showWalk();
    this.places.where();
    this.listeners.forEach((listener) => listener());
  }

  showWalk() {
    const box = this.part("walk");
    box.hidden = !this.live.systems.length;
    if (box.open) {
      box.querySelector("ol").replaceChildren(...this.live.walk.map((step) => element("li", { text: step })));
    }
  }

  // --- the bar in hand

  openBar(number, at) {
    this.places.last = "strip";
    if (!this.live?.bars.some((bar) => bar.number === number)) return;
    const before = this.strip.bar;
    this.strip.bar = number === before ? number : this.strip.bar;
    this.strip.open(number);
    if (before !== number) this.show();
    this.strip.focus(at ?? "first");
    this.strip.host.scrollIntoView({ block: "nearest" });
  }

  /** Opens a bar; one that is not written yet is added. */
  writeBar(number) {
    if (this.live?.bars.some((bar) => bar.number === number)) this.openBar(number, "first");
    else this.addBar();
  }

  closeStrip(focus = true) {
    const bar = this.strip.bar;
    this.strip.shut();
    this.show();
    if (focus) this.sheet.spot(bar)?.focus();
  }

  /** The bar in hand is there no more, after an undo perhaps; whoever wrote in it goes on where it was. */
  loseBar() {
    const held = this.part("strip").contains(document.activeElement);
    const left = Math.min(this.strip.bar, this.live.bars.at(-1)?.number ?? 0);
    this.closeStrip(false);
    if (held) (this.sheet.spot(left) ?? this.button("add-bar")).focus();
  }

  async addBar() {
    const last = this.strip.bar ?? this.live?.bars.at(-1)?.number ?? 0;
    if (await this.edit({ edit: "add-bar", bar: last })) {
      const numbers = this.live.bars.map((bar) => bar.number);
      this.openBar(numbers.includes(last + 1) ? last + 1 : numbers.at(-1), "first");
    }
  }

  // --- a keyboard, and listening

  toggleMidi() {
    if (this.midi.on) this.midi.stop();
    else this.midi.start();
  }

  midiTold(word, value) {
    const button = this.button("midi");
    this.midiWord ??= button.textContent;
    button.textContent = word === "midiOn" ? this.say(word, value) : this.midiWord;
    this.tell(word && word !== "midiOn" ? this.say(word) : "");
  }

  async listen() {
    if (this.player.playing) return this.player.stop();
    await this.talk.settled();
    const bar = this.strip.bar ?? this.places.here.bar ?? this.live?.bars[0]?.number;
    if (bar === undefined || bar === null) return;
    const asked = { text: this.text.value(), bar, percent: this.part("percent").value };
    if (this.part("band").checked) asked.band = "yes";
    this.player.play(asked);
  }
}
