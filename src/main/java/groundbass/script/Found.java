package groundbass.script;

/**
 * Something read from a sentence.
 *
 * @param after index of the term after it
 */
record Found<T>(T value, int after) {}
