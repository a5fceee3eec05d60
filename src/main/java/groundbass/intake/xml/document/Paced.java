package groundbass.intake.xml.document;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/**
 * Characters of a document, so many at the most for each step of its parser, which holds a comment, an attribute or a
 * stretch of text whole. Mutable; one for a walk.
 */
final class Paced extends FilterReader {
    static final int LONGEST_STEP = 1 << 20;

    private int given;

    Paced(Reader characters) {
        super(characters);
    }

    /** A step begins. */
    void begin() {
        given = 0;
    }

    @Override
    public int read() throws IOException {
        return counted(super.read(), 1);
    }

    @Override
    public int read(char[] buffer, int offset, int length) throws IOException {
        int read = super.read(buffer, offset, length);
        return counted(read, read);
    }

    private int counted(int answer, int characters) throws IOException {
        given += Math.max(0, characters);
        if (given > LONGEST_STEP) {
            throw Document.tooLarge();
        }
        return answer;
    }
}
