/**
 * Follows a talk clause by clause: where a clause begins and ends, to what part of the line it turns, what was asked
 * before it, and what is remembered after it.
 */
package groundbass.script.thread.talk;
