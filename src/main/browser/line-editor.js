// The editor component, fetched by the desk of a line once its text is opened.
export { LineEditor } from "./desk/line/editor.js";
