// The settings of a line, a field each, which are written into its text.
import { element } from "../../common/page.js";
import { Choices } from "./choices.js";
import { completeValue } from "./words.js";

const SETTINGS = ["title", "key", "meter", "tempo", "feel", "strings", "frets", "style", "composer", "rights"];

export class Settings {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
    this.fields = new Map(); // by name
    this.build();
  }

  build() {
    for (const name of SETTINGS) {
      const input = element("input", {
        type: "text",
        id: `${this.desk.prefix}-setting-${name}`,
        autocomplete: "off",
        spellcheck: "false",
      });
      const label = element("label", { for: input.id, text: this.desk.say(`setting-${name}`) });
      this.desk.part("settings").append(element("div", { class: "stand-setting" }, label, input));
      const choices = new Choices(
        input,
        this.desk.say("completions"),
        (typed) => completeValue(name, typed, typed.length, this.desk.words),
      );
      input.addEventListener("input", () => choices.offer(1));
      input.addEventListener("change", () => this.set(name, input.value));
      input.addEventListener("keydown", (event) => {
        if (choices.key(event)) event.preventDefault();
        else if (event.key === "Enter") {
          event.preventDefault();
          this.set(name, input.value);
        } else if (event.key === "Escape") this.toggle();
      });
      this.fields.set(name, input);
    }
    this.desk.part("settings").setAttribute("role", "group");
    this.desk.part("settings").setAttribute("aria-label", this.desk.say("settings"));
  }

  set(name, value) {
    const now = this.desk.live?.settings.find((setting) => setting.name === name)?.value ?? "";
    if (now !== value.trim()) this.desk.edit({ edit: "setting", name, value });
  }

  toggle() {
    const box = this.desk.part("settings");
    box.hidden = !box.hidden;
    this.desk.button("settings").setAttribute("aria-expanded", String(!box.hidden));
    if (box.hidden) this.desk.button("settings").focus();
    else box.querySelector("input").focus();
  }

  show() {
    for (const [name, input] of this.fields) {
      const said = this.desk.live.settings.find((setting) => setting.name === name)?.value ?? "";
      if (document.activeElement !== input) input.value = said;
    }
  }
}
