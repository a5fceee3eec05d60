package groundbass.groove;

/**
 * What is wrong in a groove's text.
 *
 * @param line, column from 1
 * @param found what stands there
 * @param expected what could stand there instead, as a sentence part
 */
public record Problem(int line, int column, String found, String expected) {
    @Override
    public String toString() {
        return line + ":" + column + ": error: found " + found + ", expected " + expected;
    }
}
