// What every page with a recording has: its picture, the place in it, and the controls that play it.
import { minutes } from "../../common/minutes.js";
import { targetOf } from "../../common/page.js";
import { Position } from "./position.js";
import { Wave } from "./wave.js";

const CLOSER = 0.5;
const WIDER = 2;

/**
 * What differs from page to page.
 *
 * @typedef {object} Wishes
 * @property {() => Promise<boolean>} ready makes the sound ready; whether it is, or else the page has told why not
 * @property {(speed: number) => object} play how it is to be played, beside its speed and what is repeated
 * @property {() => {what: string, low: boolean}} hear what of it is to be heard
 * @property {() => {bar: unknown, from: number}[]} marks what stands on its picture
 * @property {() => void} toggle what the button for playing does, and the space bar
 * @property {(second: number) => void} seek goes where the slider was moved
 * @property {(second: number) => void} heard told of what is heard, with each picture of the screen
 * @property {() => void} shown told whenever the deck was shown anew
 * @property {Record<string, () => void>} letters what a letter of the keyboard does
 */

export class Deck {
  #part;
  #say;
  #player;
  #wishes;
  #following = false;

  /**
   * @param {HTMLElement} root in which its keys count
   * @param {(name: string) => any} part finds its controls
   * @param say finds its words
   * @param {import("./player.js").RecordingPlayer} player
   * @param {Wishes} wishes
   */
  constructor(root, part, say, player, wishes) {
    this.#part = part;
    this.#say = say;
    this.#player = player;
    this.#wishes = wishes;
    this.wave = new Wave(part("wave"));
    this.place = new Position(0);
    this.#bind();
    bindLetters(root, { " ": () => wishes.toggle(), ...wishes.letters });
  }

  get playing() {
    return this.#player.playing;
  }

  /** The second that is heard, or would be heard next. */
  get at() {
    return this.#player.at ?? this.place.at;
  }

  /** From now on a recording of so many seconds, from its start. */
  open(length) {
    this.place = new Position(length);
    this.#part("seek").max = length;
  }

  tell(text) {
    this.#part("word").textContent = text;
  }

  async play() {
    this.#player.context; // made within the press: later it might not be allowed to sound
    if (!(await this.#wishes.ready())) return;
    this.hear();
    if (this.place.ended) this.place.seek(0);
    const speed = Number(this.#part("speed").value) / 100;
    await this.#player.play(this.place.at, { speed, loop: this.place.loop, ...this.#wishes.play(speed) });
    this.tell("");
    this.#follow();
  }

  stop() {
    this.#player.stop();
  }

  /** What is playing is made anew where it stands. */
  again() {
    if (this.playing) this.play();
    this.show();
  }

  hear() {
    this.#player.hear({ ...this.#wishes.hear(), volume: Number(this.#part("volume").value) / 100 });
  }

  show() {
    const { at, loop, view, length } = this.place;
    if (!length) return;
    this.wave.draw({ ...view, bars: this.#wishes.marks(), loop, at });
    this.#part("seek").value = at;
    this.#part("seek").setAttribute("aria-valuetext", minutes(at));
    this.#part("play").textContent = this.#say(this.playing ? "stop" : "play");
    this.#part("speed-said").textContent = this.#say("percent", this.#part("speed").value);
    this.#wishes.shown();
  }

  #bind() {
    const part = this.#part;
    part("play").addEventListener("click", () => this.#wishes.toggle());
    part("closer").addEventListener("click", () => this.#zoom(CLOSER));
    part("wider").addEventListener("click", () => this.#zoom(WIDER));
    part("seek").addEventListener("input", () => this.#wishes.seek(Number(part("seek").value)));
    part("speed").addEventListener("input", () => this.show());
    part("speed").addEventListener("change", () => this.again());
    part("volume").addEventListener("input", () => this.hear());
    this.#player.addEventListener("change", () => {
      if (this.playing) this.#follow(); // also when the next piece begins
      this.show();
    });
    addEventListener("resize", () => this.show());
  }

  #zoom(by) {
    this.place.zoom(by);
    this.show();
  }

  /** With each picture of the screen, while something sounds. */
  #follow() {
    if (this.#following) return;
    this.#following = true;
    const look = () => {
      this.#following = this.playing;
      this.place.follow(this.at);
      this.#wishes.heard(this.place.at);
      this.show();
      if (this.#following) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  }
}

/** Letters are typed into these, or choose among their words; not in the list of marks, where one stays to move them. */
const TYPED = "input[type=number], select:not([data-part=chosen])";
const PRESSED = "button, select, input[type=checkbox]";

/** One letter does one thing, but where the control in hand needs it itself. */
function bindLetters(root, letters) {
  root.addEventListener("keydown", (event) => {
    const action = letters[event.key.toLowerCase()];
    const target = targetOf(event);
    if (!action || event.ctrlKey || event.altKey || event.metaKey || target.matches(TYPED)) return;
    if (event.key === " " && target.matches(PRESSED)) return;
    event.preventDefault();
    action(event);
  });
}
