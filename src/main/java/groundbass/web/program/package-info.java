/**
 * The HTTP interface: what an educator's own programs ask for, by a token of theirs. It reads and writes through the same
 * services as the desk and has no rules of its own; what it answers is described in {@code openapi.json}, which a test
 * holds against the routes. A session opens nothing here, and a token nothing at the desk.
 */
package groundbass.web.program;
