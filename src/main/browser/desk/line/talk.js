// What a desk and the server say to each other about the text of a line: what it comes to, and changes that the server
// writes into it.
import { post, postForJson } from "./asking.js";

const STILL = 120; // milliseconds after which a window that was made wider or narrower stays as it is
const PATIENCE = 8; // how often something is asked again before it is given up
const BREATH = 5000; // milliseconds until a server is asked again that broke off in its answer

/** What an answer says line by line, each as soon as it is there. @param {Response} answer */
async function* piecesOf(answer) {
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  let begun = "";
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    const lines = (begun + read.value).split("\n");
    begun = lines.pop() ?? "";
    for (const line of lines) yield JSON.parse(line);
  }
}

export class Talk {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
    this.asked = 0;
    this.live = null; // what was answered last
    this.liveText = null; // and the text that it is of
    /** @type {Set<Promise<unknown>>} */
    this.awaiting = new Set();
    this.paused = false; // the server has said when it may be asked again
  }

  /** Asks at once; what is typed while an answer is on its way is asked together, once that is there. */
  changed() {
    if (!this.paused) this.refresh();
  }

  /** Draws for another width once it stays as it is. */
  widened() {
    if (this.paused) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.refresh(), STILL);
  }

  /**
   * Asks what the text comes to, once the question before is answered: a server draws on for a browser that no longer
   * waits. An answer is dropped where it speaks of another text than the one that stands now.
   */
  refresh() {
    clearTimeout(this.timer);
    this.paused = false;
    this.askedText = this.desk.text.value();
    const [number, text, before] = [++this.asked, this.askedText, this.flight];
    this.flight = Promise.resolve(before).then(() => number === this.asked ? this.ask(number, text) : undefined);
    return this.flight;
  }

  async ask(number, text) {
    const width = this.desk.sheet.width();
    const language = this.desk.form.dataset.language;
    const has = this.desk.sheet.has();
    const body = { text, width: String(width), prefix: this.desk.prefix, language, has, apart: "yes" };
    if (this.desk.part("walk").open) body.walk = "yes";
    try {
      const { answer, word, wait } = await post(`${this.desk.path}/live`, body);
      if (word === "expired") return this.desk.tell(this.desk.say(word));
      if (word === "busy") return this.later(number, wait);
      if (!answer) return this.away(number);
      const pieces = piecesOf(answer);
      const drawn = (await pieces.next()).value;
      const stands = () => number === this.asked && text === this.desk.text.value();
      if (stands()) {
        this.live = { ...drawn, remarks: this.live?.remarks ?? [] }; // what else is shown meanwhile has these drawings, too
        this.desk.sheet.drawAhead(this.live, width);
      }
      const said = (await pieces.next()).value;
      if (!stands()) return; // typed on: places in it are elsewhere now
      if (!said) return this.later(number, BREATH);
      this.liveText = text;
      this.live = { ...drawn, remarks: said.remarks };
      if (this.offline) this.desk.tell("");
      this.offline = false;
      this.desk.show();
    } catch {
      this.away(number);
    } finally {
      if (number === this.asked) this.askedText = null;
    }
  }

  away(number) {
    if (number !== this.asked) return;
    this.offline = true;
    this.desk.tell(this.desk.say("offline"));
  }

  /** The server has too much to do; it says after how many milliseconds to ask again. */
  later(number, wait) {
    if (number !== this.asked) return;
    this.desk.tell(this.desk.say("busy"));
    this.offline = true;
    clearTimeout(this.timer);
    this.paused = true;
    this.timer = setTimeout(() => this.refresh(), wait);
  }

  /** Waits until what is shown is what the text says. Whether it came to that. */
  async settled() {
    for (let tries = 0; tries < PATIENCE && this.liveText !== this.desk.text.value(); tries++) {
      if (this.askedText !== this.desk.text.value()) this.refresh();
      await this.flight;
      if (this.offline) return false;
    }
    return this.liveText === this.desk.text.value();
  }

  /** Counts work among what is still to change the text, until it has. @template T @param {Promise<T>} work */
  awaited(work) {
    this.awaiting.add(work);
    const done = () => this.awaiting.delete(work);
    work.then(done, done);
    return work;
  }

  /** What is still to change the text: places that were pressed, changes that the server is asked for. Null for nothing. */
  coming() {
    return this.awaiting.size ? Promise.allSettled(this.awaiting) : null;
  }

  /**
   * Has the server change the text, one change after the other. Whether it could.
   * @param {Record<string, unknown>} change
   * @param {string} cannot what is said where it could not
   */
  edit(change, cannot = "cannot") {
    const done = this.awaited((this.editing ?? Promise.resolve()).then(() => this.editNow(change, cannot, PATIENCE)));
    this.editing = done.catch(() => false);
    return done;
  }

  async editNow(change, cannot, patience) {
    const said = await this.ofText("edit", change);
    if (!said) return false;
    if (said.text !== this.desk.text.value()) {
      return patience > 0 && this.editNow(change, cannot, patience - 1); // typed on meanwhile
    }
    if (!said.splices.length) {
      this.desk.tell(this.desk.say(cannot));
      return false;
    }
    this.desk.text.apply(said.splices);
    this.desk.tell("");
    return await this.settled();
  }

  /**
   * Asks something of the text as it stands, again where the server is busy. The answer, with the text that it is of;
   * null where there is none, which is told.
   */
  async ofText(question, fields, patience = PATIENCE) {
    const text = this.desk.text.value();
    const { value, word, wait } = await postForJson(`${this.desk.path}/${question}`, { ...fields, text });
    if (word) this.desk.tell(this.desk.say(word));
    if (word !== "busy" || patience === 0) return value && { ...value, text };
    await new Promise((resolve) => setTimeout(resolve, wait));
    return this.ofText(question, fields, patience - 1);
  }
}
