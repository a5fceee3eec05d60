// The recordings of a lesson's page: a player in the page's own hand in the place of the browser's, which serves without
// this script. Sound is fetched when it is wanted, not before.
import { soundAlone } from "./common/alone.js";
import { minutes } from "./common/minutes.js";
import { byId, inside, partsOf, wordsOf } from "./common/page.js";

const parts = byId("track-player", HTMLTemplateElement).content;
const say = wordsOf(parts);

const QUIETLY = 0.5; // who listens turns up

/** How loud all players of the page are, from 0 to 1. */
class Loudness extends EventTarget {
  #level = QUIETLY;

  /** Some devices leave that to their own keys. */
  static get offered() {
    const asked = 0.5;
    const probe = new Audio();
    probe.volume = asked;
    return probe.volume === asked;
  }

  get level() {
    return this.#level;
  }

  set level(level) {
    this.#level = level;
    this.dispatchEvent(new Event("change"));
  }
}

class TrackPlayer {
  #audio;
  #part;
  #name;
  #loudness;
  #soundsAlone;

  /**
   * @param {HTMLAudioElement} audio with controls of its own, which are put away
   * @param {Loudness} loudness
   */
  constructor(audio, loudness) {
    this.#audio = audio;
    this.#name = audio.getAttribute("aria-label") ?? "";
    this.#loudness = loudness;
    const player = /** @type {HTMLElement} */ (inside(parts, ".player").cloneNode(true));
    player.setAttribute("aria-label", this.#name);
    this.#part = partsOf(player);
    this.#part("link").href = audio.src;
    audio.controls = false;
    audio.after(player);
    this.#soundsAlone = soundAlone(() => audio.pause());
    this.#bind();
    this.#hear();
    this.#show();
  }

  #bind() {
    const audio = this.#audio;
    const part = this.#part;
    part("go").addEventListener("click", () => this.#toggle());
    part("place").addEventListener("input", () => (audio.currentTime = part("place").valueAsNumber));
    part("volume").addEventListener("input", () => (this.#loudness.level = part("volume").valueAsNumber / 100));
    part("loudness").hidden = !Loudness.offered;
    this.#loudness.addEventListener("change", () => this.#hear());
    for (const news of ["play", "pause", "ended", "timeupdate", "seeking", "durationchange"]) {
      audio.addEventListener(news, () => this.#show());
    }
    audio.addEventListener("error", () => this.#tell(true));
    audio.addEventListener("loadeddata", () => this.#tell(false));
  }

  async #toggle() {
    const audio = this.#audio;
    if (!audio.paused) return audio.pause();
    this.#soundsAlone();
    if (audio.error) audio.load(); // what did not come may come now
    await audio.play().catch(() => {}); // stopped before it began, or told as an error
  }

  #hear() {
    this.#audio.volume = this.#loudness.level;
    this.#part("volume").value = Math.round(100 * this.#loudness.level);
  }

  #tell(failed) {
    this.#part("failed").hidden = !failed;
    this.#show();
  }

  #show() {
    const { currentTime, duration, paused, error } = this.#audio;
    const known = Number.isFinite(duration);
    const [at, whole] = [currentTime, known ? duration : 0].map((seconds) => minutes(Math.floor(seconds), 0));
    const word = paused || error ? "play" : "pause";
    const part = this.#part;
    part("go").textContent = say(word);
    part("go").setAttribute("aria-label", say(`${word}-of`, this.#name));
    part("place").disabled = !known;
    if (known) part("place").max = duration;
    part("place").value = currentTime;
    part("place").setAttribute("aria-valuetext", known ? say("time", at, whole) : at);
    part("time").textContent = known ? say("time", at, whole) : at;
  }
}

const loudness = new Loudness();
for (const audio of document.querySelectorAll(".track audio")) {
  new TrackPlayer(/** @type {HTMLAudioElement} */ (audio), loudness);
}
