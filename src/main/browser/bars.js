// The bars of an own recording: found by the server, heard with a click, tapped, moved and saved.
import { Clicks } from "./desk/bars/clicks.js";
import { Correction } from "./desk/bars/correction.js";
import { mapOf } from "./desk/bars/map.js";
import { nameOf, shortNameOf } from "./desk/bars/names.js";
import { BarStore } from "./desk/bars/store.js";
import { Deck } from "./desk/recording/deck.js";
import { RecordingPlayer } from "./desk/recording/player.js";
import { secondAt } from "./desk/recording/view.js";
import { minutes } from "./common/minutes.js";
import { byId, element, partsOf, wordsOf } from "./common/page.js";
import { Stretcher } from "./common/stretcher.js";

const NUDGE = 0.01;
const AHEAD = 120; // seconds made ready at once at full speed, so that a hand that taps is rarely interrupted
const AHEAD_SLOW = 30;
const ASK_AGAIN = 2000; // milliseconds

class Bars {
  #root;
  #part;
  #say;
  #store;
  #correction = new Correction();
  #player;
  #deck;
  /** @type {Promise<void> | null} */
  #opening = null;

  constructor(root) {
    this.#root = root;
    this.#part = partsOf(root);
    this.#say = wordsOf(root);
    this.#store = new BarStore(root.dataset.path);
    this.#player = new RecordingPlayer(new Stretcher(), new Clicks(() => this.#correction.marks));
    this.#deck = new Deck(root, this.#part, this.#say, this.#player, {
      ready: () => this.#ready(),
      play: (speed) => ({ bars: [], withLine: true, most: speed === 1 ? AHEAD : AHEAD_SLOW }),
      hear: () => ({ what: this.#part("click").checked ? "both" : "recording", low: false }),
      marks: () => this.#correction.marks.map((from, i) => ({ bar: this.#shortName(i), from })),
      toggle: () => this.#toggle(),
      seek: (second) => this.#seek(second),
      heard: (second) => this.#correction.heard(second),
      shown: () => this.#show(),
      letters: {
        t: (event) => event.repeat || this.#tap(),
        e: () => this.#nudge(-NUDGE),
        l: () => this.#nudge(NUDGE),
      },
    });
    this.#bind();
  }

  async begin() {
    if (this.#root.dataset.state === "waiting") return void setTimeout(() => this.#waited(), ASK_AGAIN);
    const picture = await this.#store.picture();
    if (!picture) {
      return void this.#root.before(element("p", { class: "problem", role: "alert", text: this.#say("away") }));
    }
    const { peaks, stepsASecond, seconds } = picture;
    this.#deck.wave.take(peaks, stepsASecond);
    this.#deck.open(seconds);
    this.#root.hidden = false;
    const map = this.#told(await this.#store.kept());
    if (map) {
      this.#correction.begin(map, this.#deck.place.at);
      this.#showRounds();
    }
    this.#showAll();
  }

  async #waited() {
    if (await this.#store.waiting()) setTimeout(() => this.#waited(), ASK_AGAIN);
    else location.reload();
  }

  /**
   * The map of an answer; what it says in the place of one is told.
   * @param {import("./desk/bars/store.js").Answer} answer
   */
  #told({ map, word }) {
    if (word) this.#deck.tell(this.#say(word));
    return map;
  }

  #name(i) {
    return nameOf(this.#correction.bars, i, this.#say);
  }

  #shortName(i) {
    return shortNameOf(this.#correction.bars, i, this.#say);
  }

  /** How a mark is called and when it is. */
  #mark(i) {
    return this.#say("at", this.#name(i), minutes(this.#correction.marks[i], 2));
  }

  #showAll() {
    const options = this.#correction.marks.map((_, i) => new Option(this.#mark(i), String(i)));
    this.#part("chosen").replaceChildren(...options);
    this.#deck.show();
  }

  #showRounds() {
    this.#part("rounds").value = Math.max(...this.#correction.bars.map((bar) => bar.round));
  }

  #show() {
    const part = this.#part;
    const { any, chosen, canUndo, standing } = this.#correction;
    part("place").textContent = minutes(this.#deck.place.at);
    part("tap").textContent = any ? this.#say("tap", this.#name(chosen)) : this.#say("tap-none");
    if (any) part("chosen").selectedIndex = chosen;
    for (const one of ["tap", "chosen", "earlier", "later", "around", "save"]) part(one).disabled = !any;
    part("undo").disabled = !canUndo;
    part("kept").textContent = any ? this.#say(`is-${standing}`) : "";
  }

  async #ready() {
    this.#deck.tell(this.#opening ? "" : this.#say("opening"));
    this.#opening ??= this.#open();
    try {
      await this.#opening;
      return true;
    } catch {
      this.#opening = null;
      this.#deck.tell(this.#say("unreadable"));
      return false;
    }
  }

  async #open() {
    this.#player.sound = await this.#player.context.decodeAudioData(await this.#store.recording());
  }

  #toggle() {
    if (this.#deck.playing) {
      this.#deck.stop();
      this.#deck.place.repeatNothing();
      this.#deck.show();
    } else {
      this.#correction.following = true;
      this.#deck.play();
    }
  }

  #seek(second) {
    this.#deck.place.repeatNothing();
    this.#deck.place.seek(second);
    this.#correction.follow(this.#deck.place.at);
    this.#deck.again();
  }

  #choose(i) {
    const { place } = this.#deck;
    this.#correction.choose(i);
    if (place.loop) return this.#around();
    if (!this.#deck.playing) place.seek(this.#correction.marks[i]);
    place.reveal(place.at);
    this.#deck.show();
  }

  /** Repeats the bar before the chosen mark and the one after it. */
  #around() {
    const { from, to } = this.#correction.around;
    this.#deck.place.repeat(from, to);
    if (!this.#deck.place.loop) return;
    this.#correction.following = false;
    this.#deck.play();
  }

  #tap() {
    if (!this.#correction.any) return;
    const tapped = this.#correction.tap(this.#deck.at);
    this.#showAll();
    this.#deck.tell(this.#mark(tapped));
  }

  #nudge(by) {
    if (!this.#correction.any) return;
    this.#correction.nudge(by);
    this.#showAll();
    this.#deck.tell(this.#mark(this.#correction.chosen));
    this.#deck.again();
  }

  #undo() {
    this.#correction.undo();
    this.#showAll();
    this.#deck.again();
  }

  async #find() {
    const map = this.#told(await this.#store.found(this.#part("rounds").value));
    if (!map) return;
    this.#replace(map);
    this.#deck.tell(this.#say("found", map.bars.length));
  }

  async #theirs() {
    const map = this.#told(await this.#store.kept());
    if (!map) return;
    this.#correction.replace(map, this.#deck.place.at);
    this.#correction.standing = "kept";
    this.#part("theirs").hidden = true;
    this.#part("save").focus();
    this.#deck.tell("");
    this.#shownAnew();
  }

  #replace(map) {
    this.#correction.replace(map, this.#deck.place.at);
    this.#shownAnew();
  }

  #shownAnew() {
    this.#showRounds();
    this.#showAll();
    this.#deck.again();
  }

  /** Where the bars do not run forward it is told, and that one is chosen. */
  #runsForward() {
    const wrong = this.#correction.stumble(this.#deck.place.length);
    if (!wrong) return true;
    const { index, outside } = wrong;
    this.#choose(index);
    const name = this.#name(index);
    const where = minutes(this.#correction.marks[index], 2);
    this.#deck.tell(outside ? this.#say("outside", name, where) : this.#say("backward", name, this.#name(index - 1)));
    return false;
  }

  async #save() {
    if (!this.#runsForward()) return;
    const { bars, marks } = this.#correction;
    const { saved, others, word } = await this.#store.save(mapOf(bars, marks));
    if (others !== undefined) this.#part("theirs").hidden = !others;
    if (saved && marks === this.#correction.marks) this.#correction.standing = "kept";
    this.#deck.tell(this.#say(word));
    this.#deck.show();
  }

  #bind() {
    const part = this.#part;
    const clicks = {
      tap: () => this.#tap(),
      earlier: () => this.#nudge(-NUDGE),
      later: () => this.#nudge(NUDGE),
      around: () => this.#around(),
      find: () => this.#find(),
      undo: () => this.#undo(),
      save: () => this.#save(),
      theirs: () => this.#theirs(),
    };
    for (const [name, action] of Object.entries(clicks)) part(name).addEventListener("click", action);
    part("wave").addEventListener("click", (event) => this.#seek(secondAt(event, part("wave"), this.#deck.place.view)));
    part("chosen").addEventListener("change", () => this.#choose(part("chosen").selectedIndex));
    part("click").addEventListener("input", () => this.#deck.hear());
    addEventListener("beforeunload", (event) => {
      if (this.#correction.standing === "changed") event.preventDefault();
    });
  }
}

await new Bars(byId("bars", HTMLElement)).begin();
