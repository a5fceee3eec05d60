package groundbass.intake.xml.document;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.CharacterCodingException;

/** The document of a score, unpacked and decoded anew for each walk through it, so that it is never held whole. */
public final class Document {
    private final Source source;

    /** Where its bytes come from, each time from the first on. */
    @FunctionalInterface
    public interface Source {
        InputStream open() throws IOException, Unreadable;
    }

    private Document(Source source) {
        this.source = source;
    }

    public static Document of(byte[] file) throws Unreadable {
        return of(() -> new ByteArrayInputStream(file));
    }

    /** Reads it once to its end: what is wrong with its size, its zip or its characters is told before its form. */
    public static Document of(Source source) throws Unreadable {
        var document = new Document(source);
        try (var reader = document.reader()) {
            reader.transferTo(Writer.nullWriter());
        } catch (IOException e) {
            throw told(e);
        }
        return document;
    }

    Reader reader() throws IOException, Unreadable {
        return Decoding.reader(source.open());
    }

    /** What is to be said of a document that cannot be read on. */
    static Unreadable told(IOException fault) {
        if (fault.getCause() instanceof Unreadable known) {
            return known;
        }
        String key = fault instanceof CharacterCodingException ? "intake.refused.characters" : "intake.refused.zip";
        return new Unreadable(Message.of(key), fault);
    }

    /** Of more than is ever read, to be thrown where only an input or output fault may be. */
    static IOException tooLarge() {
        return new IOException(new Unreadable(Message.of("intake.refused.size")));
    }
}
