// What is said of a line, below its sheet and in the strip, with what mends it.
import { element } from "../../common/page.js";

export class Said {
  /** @param {import("./desk.js").LineDesk} desk */
  constructor(desk) {
    this.desk = desk;
  }

  item(remark) {
    const sentence = element("span", { lang: remark.language, text: remark.sentence });
    const item = element(
      "li",
      { class: `remark-line remark-line-${remark.weight}` },
      element("strong", { text: `${remark.name}: ` }),
      sentence,
    );
    for (const fix of remark.fixes) {
      const button = element("button", {
        type: "button",
        class: "button-quiet button-fix",
        text: this.desk.say("fix", fix.label),
      });
      button.addEventListener("click", () => this.desk.take(fix));
      item.append(" ", button);
    }
    return item;
  }

  show() {
    const items = this.desk.live.remarks.slice(0, 12).map((remark) => {
      const item = this.item(remark);
      const where = remark.bar >= 0
        ? this.desk.say("bar", remark.bar) + (remark.at ? `, ${remark.at}` : "")
        : this.desk.say("where", remark.line);
      const go = element("a", { href: `#${this.desk.area.id}-editor`, text: where, class: "remark-where" });
      go.addEventListener("click", (event) => {
        event.preventDefault();
        this.desk.part("text-box").open = true;
        this.desk.text.select(remark.from, remark.to);
      });
      item.prepend(go, " ");
      return item;
    });
    this.desk.part("remarks").replaceChildren(...(items.length ? [element("ul", {}, ...items)] : []));
  }
}
