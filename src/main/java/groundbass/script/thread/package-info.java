/**
 * The thread of talk: what a clause is about (line, bar, beat, notes), what was spoken of last, and whether all that the
 * clause says is so. A clause that is not understood to its last word is not judged here.
 */
package groundbass.script.thread;
