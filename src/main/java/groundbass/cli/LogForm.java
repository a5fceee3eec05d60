package groundbass.cli;

/** How lines of the log are written; the names are what an operator types. */
enum LogForm {
    /** For people: the moment with its zone, the level, who says it, what. */
    TEXT,
    /** One JSON object a line (RFC 8259), with any trace in it, for programs that collect logs. */
    JSON
}
