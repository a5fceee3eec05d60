/**
 * What talk is about and what can be said of it: notes and items with all their parts, the stretch of the line that is
 * meant, and the memory of what was meant last.
 */
package groundbass.script.thread.stage;
