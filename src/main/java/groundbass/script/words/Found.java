package groundbass.script.words;

/**
 * Something read from a sentence.
 *
 * @param after index of the term after it
 */
public record Found<T>(T value, int after) {}
