// A room of a lesson other than those in which lines are written. Everything works without it too, by the buttons.
import { followCalendar } from "./desk/room/calendar.js";
import { Look } from "./desk/room/look.js";
import { openRoom } from "./desk/room/room.js";
import { sendPictures } from "./desk/room/pictures.js";
import { sendRecordings } from "./desk/room/uploads.js";

const looking = /** @type {HTMLFormElement | null} */ (document.querySelector("form[data-look]"));
const look = looking ? new Look(looking) : null;
const draft = openRoom(() => look?.ask());

sendPictures();
sendRecordings(() => draft?.changed());
followCalendar();
