/** Sentences cut into words, and what each word may stand for in its language. Knows nothing of lines of music. */
package groundbass.script.words;
