// Tells that a link to a course was followed. The link leads there by itself, with or without this.
import { tell, whereToTell } from "./common/tell.js";

const where = whereToTell();

/** @type {NodeListOf<HTMLAnchorElement>} */
const links = document.querySelectorAll("a[data-course]");
for (const link of links) {
  for (const way of ["click", "auxclick"]) {
    // the middle button opens a link as well, the right one only asks what can be done with it
    link.addEventListener(way, (press) => {
      const { button } = /** @type {MouseEvent} */ (press);
      if (where && button < 2) tell(where, "course", [link.getAttribute("href") ?? ""]);
    });
  }
}
