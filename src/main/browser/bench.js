// The listening bench: a recording that stays in this browser, slowed, marked and compared with the line that is written.
import { barAt, barsOf } from "./desk/bench/bars.js";
import { WrittenLine } from "./desk/bench/line.js";
import { forget, keep, kept } from "./desk/bench/store.js";
import { Deck } from "./desk/recording/deck.js";
import { marked, nudged } from "./desk/recording/marks.js";
import { RecordingPlayer } from "./desk/recording/player.js";
import { secondAt } from "./desk/recording/view.js";
import { minutes } from "./common/minutes.js";
import { byId, element, partsOf, wordsOf } from "./common/page.js";
import { Stretcher } from "./common/stretcher.js";

const LONGEST = 20 * 60; // seconds
const NUDGE = 0.01;
const MOST_BARS = 999;
const DRAGGED = 5; // CSS pixels

class Bench {
  #root;
  #path;
  #part;
  #say;
  #player;
  #deck;
  /** @type {{name: string, file: File, marks: number[], first: number} | null} */
  #recording = null;

  constructor(root) {
    this.#root = root;
    this.#path = root.dataset.path;
    this.#part = partsOf(root);
    this.#say = wordsOf(root);
    const stretcher = new Stretcher();
    const typed = () => byId("mainLine", HTMLTextAreaElement).value;
    this.#player = new RecordingPlayer(stretcher, new WrittenLine(this.#path, typed, stretcher));
    this.#deck = new Deck(this.#part("work"), this.#part, this.#say, this.#player, {
      ready: async () => {
        this.#deck.tell(this.#say("readying"));
        return true;
      },
      play: () => ({ bars: this.#bars(), withLine: this.#part("what").value !== "recording" }),
      hear: () => ({ what: this.#part("what").value, low: this.#part("low").checked }),
      marks: () => this.#bars(),
      toggle: () => this.#toggle(),
      seek: (second) => this.#seek(second),
      heard: () => {},
      shown: () => this.#show(),
      letters: { t: (event) => event.repeat || this.#mark() },
    });
    this.#bind();
    this.#watchWave();
    root.addEventListener("toggle", () => {
      this.#dock();
      requestAnimationFrame(() => this.#deck.show());
    });
    this.#begin(); // whoever opens the bench fetches this script
  }

  /** What is on the bench: asked for where something is. */
  get #opened() {
    if (!this.#recording) throw new Error("no recording is on the bench");
    return this.#recording;
  }

  /** With the file that was chosen while the script was on its way, else with what was on the bench last. */
  #begin() {
    const chosen = this.#part("file").files[0];
    if (chosen) this.#choose(chosen);
    else this.#openKept();
  }

  async #openKept() {
    const found = await kept(this.#path).catch(() => undefined);
    if (!found) return;
    await this.#open(found);
    this.#showMarks();
  }

  async #open(found) {
    const say = this.#say;
    this.#deck.tell(say("opening"));
    try {
      const sound = await this.#player.context.decodeAudioData(await found.file.arrayBuffer());
      if (sound.duration > LONGEST) return this.#deck.tell(say("long", LONGEST / 60));
      this.#recording = found;
      this.#player.sound = sound;
      this.#deck.open(sound.duration);
      this.#deck.wave.read(sound);
      this.#part("work").hidden = false;
      this.#dock();
      this.#part("name").textContent = found.name;
      this.#part("first").value = found.first;
      this.#deck.tell("");
      this.#deck.show();
    } catch {
      this.#deck.tell(say("unreadable", found.name));
    }
  }

  async #choose(file) {
    const found = { name: file.name, file, marks: [], first: 1 };
    await this.#open(found);
    if (this.#recording !== found) return;
    this.#showMarks();
    await this.#save();
  }

  /** A recording that is open stays in sight (bench.css). */
  #dock() {
    const docked = this.#root.open && !this.#part("work").hidden;
    this.#root.classList.toggle("bench-docked", docked);
    document.documentElement.classList.toggle("has-docked", docked);
  }

  async #save() {
    try {
      await keep(this.#path, this.#opened);
      this.#root.dataset.kept = this.#opened.marks.length;
    } catch {
      this.#deck.tell(this.#say("unkept"));
    }
  }

  async #remove() {
    this.#deck.stop();
    await forget(this.#path);
    this.#recording = null;
    this.#deck.open(0);
    this.#part("work").hidden = true;
    this.#dock();
    this.#part("file").value = "";
    this.#deck.tell(this.#say("removed"));
    this.#part("file").focus();
  }

  #bars() {
    return barsOf(this.#opened.marks, this.#opened.first);
  }

  /** The bar that is heard, or would be heard next. */
  get #here() {
    return barAt(this.#opened.marks, this.#opened.first, this.#deck.place.at);
  }

  #show() {
    const say = this.#say;
    const part = this.#part;
    const { at, loop } = this.#deck.place;
    const here = this.#here;
    part("place").textContent = here ? say("placeBar", minutes(at), here.bar) : say("place", minutes(at));
    part("write").disabled = !here;
    part("write").textContent = here ? say("write", here.bar) : say("writeNone");
    part("loop-bar").disabled = !here;
    part("from").value = loop ? loop.from.toFixed(2) : "";
    part("to").value = loop ? loop.to.toFixed(2) : "";
  }

  #showMarks() {
    this.#part("marks").replaceChildren(...this.#opened.marks.map((mark, i) => this.#markItem(mark, i)));
  }

  #markItem(mark, i) {
    const { marks, first } = this.#opened;
    const name = element("span", { text: this.#say("mark", first + i, minutes(mark)) });
    const item = element("li", {}, name);
    const offer = (word, text, changed) => {
      const label = this.#say(word, first + i);
      const button = element("button", { type: "button", class: "button-quiet", "aria-label": label, text });
      button.addEventListener("click", () => this.#setMarks(changed()));
      item.append(" ", button);
    };
    offer("earlier", "−", () => nudged(marks, i, -NUDGE));
    offer("later", "+", () => nudged(marks, i, NUDGE));
    offer("unmark", "×", () => marks.filter((_, other) => other !== i));
    return item;
  }

  #setMarks(marks) {
    this.#opened.marks = marks;
    this.#showMarks();
    this.#deck.show();
    this.#save();
  }

  #mark() {
    this.#setMarks(marked(this.#opened.marks, this.#deck.at));
  }

  #toggle() {
    if (this.#deck.playing) this.#deck.stop();
    else this.#deck.play();
    this.#deck.show();
  }

  #seek(second) {
    this.#deck.place.seek(second);
    this.#deck.again();
  }

  #repeat(from, to) {
    this.#deck.place.repeat(from, to);
    this.#deck.again();
  }

  #bind() {
    const part = this.#part;
    const clicks = {
      mark: () => this.#mark(),
      remove: () => this.#remove(),
      whole: () => this.#repeat(0, 0),
      "loop-bar": () => this.#here && this.#repeat(this.#here.from, this.#here.to),
      write: () => this.#here && document.dispatchEvent(new CustomEvent("line-bar", { detail: this.#here.bar })),
    };
    for (const [name, action] of Object.entries(clicks)) part(name).addEventListener("click", action);
    part("file").addEventListener("change", () => part("file").files[0] && this.#choose(part("file").files[0]));
    part("first").addEventListener("change", () => this.#setFirst(Number(part("first").value)));
    for (const name of ["from", "to"]) {
      part(name).addEventListener("change", () => this.#repeat(Number(part("from").value), Number(part("to").value)));
    }
    part("what").addEventListener("change", () => this.#deck.again());
    part("low").addEventListener("input", () => this.#deck.hear());
  }

  #setFirst(number) {
    this.#opened.first = Math.max(0, Math.min(MOST_BARS, Math.round(number) || 0));
    this.#setMarks(this.#opened.marks);
  }

  /** A press goes there; what is drawn over is repeated. */
  #watchWave() {
    const canvas = this.#part("wave");
    const second = (event) => secondAt(event, canvas, this.#deck.place.view);
    let begun = null;
    canvas.addEventListener("pointerdown", (event) => {
      begun = event;
      canvas.setPointerCapture(event.pointerId);
    });
    canvas.addEventListener("pointerup", (event) => {
      if (!begun) return;
      const dragged = Math.abs(event.clientX - begun.clientX) > DRAGGED;
      if (dragged) this.#repeat(second(begun), second(event));
      else this.#seek(second(event));
      begun = null;
    });
  }
}

new Bench(byId("bench", HTMLElement));
