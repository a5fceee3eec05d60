// Writing from a MIDI keyboard, where the browser has Web MIDI. Notes pressed together are one event.
const TOGETHER = 60; // milliseconds

export class MidiKeys {
  /**
   * @param played called with the pitches of an event, as MIDI numbers
   * @param told called with a word and what fills it
   */
  constructor(played, told) {
    this.played = played;
    this.told = told;
    this.pitches = [];
    /** @type {MIDIAccess | null} */
    this.access = null;
    this.timer = 0;
  }

  static get offered() {
    return typeof navigator.requestMIDIAccess === "function";
  }

  get on() {
    return Boolean(this.access);
  }

  async start() {
    try {
      const access = await navigator.requestMIDIAccess();
      access.onstatechange = () => this.listen(access);
      this.access = access;
      this.listen(access);
    } catch {
      this.told("midiRefused");
    }
  }

  listen(access) {
    const inputs = [...access.inputs.values()];
    inputs.forEach((input) => {
      input.onmidimessage = (event) => this.heard(event.data);
    });
    if (inputs.length) this.told("midiOn", inputs.map((input) => input.name).join(", "));
    else this.told("midiNone");
  }

  stop() {
    if (!this.access) return;
    for (const input of this.access.inputs.values()) input.onmidimessage = null;
    this.access.onstatechange = null;
    this.access = null;
    this.told("");
  }

  /** A note-on of any channel with a velocity (MIDI 1.0 detailed specification, channel voice messages). */
  heard(data) {
    const [status, pitch, velocity] = data;
    if ((status & 0xf0) !== 0x90 || velocity === 0) return;
    this.pitches.push(pitch);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      const pitches = [...new Set(this.pitches)].sort((a, b) => a - b);
      this.pitches = [];
      this.played(pitches);
    }, TOGETHER);
  }
}
