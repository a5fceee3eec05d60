// Modules that tests ask inside a browser, where sound and pictures are: what Java tests import as /assets/parts.js.
export { Clicks } from "../../main/browser/desk/bars/clicks.js";
export { WrittenLine } from "../../main/browser/desk/bench/line.js";
export { cut } from "../../main/browser/desk/recording/cut.js";
export { Stretcher } from "../../main/browser/common/stretcher.js";
export { Clock } from "../../main/browser/play/clock.js";
export { latency } from "../../main/browser/play/engine.js";
export { readRange, Rounds, wholeLine } from "../../main/browser/play/loop.js";
export { ownTracks } from "../../main/browser/play/own.js";
export { Score, Take } from "../../main/browser/play/score.js";
export { Stems } from "../../main/browser/play/stems.js";
