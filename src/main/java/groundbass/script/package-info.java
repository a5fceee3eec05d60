/**
 * What is said about a line, found in running text or captions and checked against the neck and the line. Pure; knows
 * nothing of pages or of where a script is kept, and never calls a statement wrong on a guess.
 */
package groundbass.script;
