package groundbass.intake.notice;

import java.util.Objects;

/**
 * One of the parts or tracks of a file.
 *
 * @param number from 1, in the order of the file
 * @param name as the file has it; empty where it has none
 * @param notes how many notes it has
 */
public record FilePart(int number, String name, int notes) {
    public FilePart {
        Objects.requireNonNull(name);
    }
}
