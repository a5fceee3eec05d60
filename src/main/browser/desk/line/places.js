// Writing by place: what is pressed on the neck or on a keyboard goes where writing stands, in the strip or in the text.
import { countAt, quarters } from "./words.js";

export class Places {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
    this.here = { bar: null, at: 0 };
    this.last = "strip"; // where the cursor was last: there or in the text
    this.before = null; // where was written last
    this.played = []; // what pitches came to
    /** @type {Promise<void>} */
    this.writing = Promise.resolve();
  }

  /** Where writing goes on. */
  standAt(bar, at) {
    this.here = { bar, at };
    this.last = "strip";
    this.where();
  }

  where() {
    const bar = this.desk.live?.bars.find((one) => one.number === this.here.bar);
    if (!bar && this.desk.live?.bars.length && this.last !== "text") {
      this.here = { bar: this.desk.live.bars[0].number, at: 0 };
    }
    const full = bar && this.here.at >= 4 * bar.counts; // what comes next begins the bar after it
    const text = this.desk.live?.bars.length && this.here.bar !== null
      ? this.desk.say("place", this.here.bar + (full ? 1 : 0), countAt(full ? 0 : this.here.at))
      : this.desk.say("nowhere");
    this.desk.part("place").textContent = this.last === "text" ? "" : text;
  }

  /** Writes at the place in hand and goes on by the step; into the text where the cursor was there last. */
  writePlace(place) {
    return this.next(() => this.write(place));
  }

  /** What is pressed is written in its order, also where an answer takes its time. */
  next(work) {
    this.writing = this.desk.talk.awaited(this.writing.catch(() => undefined).then(work));
    return this.writing;
  }

  async write(place) {
    const technique = this.desk.part("technique").value;
    const silent = place === "rest" || place === "hold";
    const event = technique && !silent ? `${place} ${technique}` : place;
    if (this.last === "text") return this.intoText(event);
    if (!this.desk.live?.bars.length && !(await this.desk.edit({ edit: "add-bar", bar: 0 }))) return;
    if (this.here.bar === null) this.here = { bar: this.desk.live.bars[0].number, at: 0 };
    const step = Number(this.desk.part("step").value);
    const together = this.desk.part("together").checked && this.before;
    if (together) return this.alter((events) => `${events}+${event}`, this.before);
    if (step === 0) return this.alter((events) => (/^rest$/.test(events) ? event : `${events}, ${event}`), this.here);
    await this.stepOn(event, step);
  }

  intoText(event) {
    const before = this.desk.text.before();
    const counted = /^\s*\d/.test(before);
    const gap = !counted || /(^|[,+]\s*|\d[e&a]?\s\s+)$/.test(before)
      ? ""
      : this.desk.part("together").checked
      ? "+"
      : ", ";
    this.desk.text.insert(gap + event);
  }

  column(spot) {
    const bar = this.desk.live.bars.find((one) => one.number === spot.bar);
    return bar?.columns.filter((one) => quarters(one.at) <= spot.at).at(-1);
  }

  async alter(change, spot) {
    const column = this.column(spot);
    if (!column) return;
    await this.desk.edit({ edit: "events", bar: spot.bar, at: column.at, events: change(column.events) });
  }

  async stepOn(event, step) {
    let { bar, at } = this.here;
    let view = this.desk.live.bars.find((one) => one.number === bar);
    if (!view || at >= 4 * view.counts) {
      const next = view ? view.number + 1 : this.desk.live.bars[0].number;
      if (
        !this.desk.live.bars.some((one) => one.number === next) && !(await this.desk.edit({ edit: "add-bar", bar }))
      ) return;
      bar = next;
      at = 0;
      view = this.desk.live.bars.find((one) => one.number === bar);
    }
    const wrote = await this.desk.edit({ edit: "step", bar, at: countAt(at), step, unit: view.unit, events: event });
    if (!wrote) return;
    this.before = { bar, at };
    this.here = { bar, at: at + step };
    if (this.desk.strip.bar !== bar) {
      this.desk.strip.open(bar);
      this.desk.show();
    }
    this.where();
  }

  /** The best place for pitches, as the fingering search sees it after what was written before. */
  pitches(pitches) {
    return this.next(() => this.writePitches(pitches));
  }

  async writePitches(pitches) {
    const before = this.played.slice(-4);
    const said = await this.desk.talk.ofText("places", { pitches: pitches.join(" "), before: before.join(" ") });
    if (!said) return;
    const { event } = said;
    if (!event) return this.desk.tell(this.desk.say("noPlace"));
    this.played = [...before, event];
    await this.write(event);
  }
}
