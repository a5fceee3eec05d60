// Other ways to play the notes of a bar.
import { element } from "../../common/page.js";

export class Ways {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
  }

  /** Shows them in `host`, to be taken by a press or by their number. */
  async show(bar, host) {
    const pressed = document.activeElement;
    const said = await this.desk.talk.ofText("ways", { bar });
    // meanwhile another bar may be open, or this one written otherwise
    if (!said || this.desk.strip.bar !== bar || said.text !== this.desk.text.value()) return;
    this.desk.tell("");
    const { ways, text } = said;
    if (!ways.length) {
      host.replaceChildren(element("p", { class: "hint", text: this.desk.say("waysNone") }));
      return;
    }
    const items = ways.map((way, place) => {
      const take = element("button", {
        type: "button",
        class: "button-quiet button-fix",
        text: this.desk.say("waysTake", place + 1),
      });
      take.addEventListener("click", () => {
        if (text === this.desk.text.value()) this.desk.take(way);
      });
      return element(
        "li",
        {},
        element("code", { text: way.places }),
        " ",
        element("span", { text: way.why }),
        " ",
        take,
      );
    });
    const list = element("ol", { class: "ways" }, ...items);
    host.replaceChildren(list);
    list.addEventListener("keydown", (event) => {
      const chosen = ways[Number(event.key) - 1];
      if (chosen && text === this.desk.text.value()) this.desk.take(chosen);
    });
    if (document.activeElement === pressed) list.querySelector("button").focus();
  }
}
