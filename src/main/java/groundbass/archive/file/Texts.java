package groundbass.archive.file;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.SortedSet;

/** Reads the files of a source; texts are in UTF-8, and none is longer than it may be. */
public final class Texts {
    private final Source source;
    private final SortedSet<String> names;

    public Texts(Source source) {
        this.source = source;
        this.names = source.names();
    }

    public boolean has(String name) {
        return names.contains(name);
    }

    /** Empty where there is no such file. */
    public Optional<String> find(String name, int most) throws Unreadable {
        return has(name) ? Optional.of(text(name, bytes(name, most))) : Optional.empty();
    }

    public Optional<String> find(String name) throws Unreadable {
        return find(name, ArchiveLimits.LONGEST_TEXT);
    }

    /**
     * The text that a list promises.
     *
     * @throws Unreadable where it is not there, or is not what it was when it was written
     */
    public String find(String name, Entry promised, int most) throws Unreadable {
        byte[] bytes = bytes(name, most);
        if (bytes.length != promised.size() || !Sha256.of(bytes).hex().equals(promised.sha256())) {
            throw Unreadable.of("archive.problem.changed").in(name);
        }
        return text(name, bytes);
    }

    /**
     * A file of any kind. What is wrong with it while it is read is {@link SourceInput.Damaged}.
     *
     * @throws Unreadable where it is not there, or cannot be opened
     */
    public InputStream open(String name) throws Unreadable {
        if (!has(name)) {
            throw Unreadable.of("archive.problem.missing");
        }
        try {
            return new SourceInput(source.open(name));
        } catch (IOException e) {
            throw Unreadable.of("archive.problem.damaged");
        }
    }

    byte[] bytes(String name, int most) throws Unreadable {
        if (!has(name)) {
            throw Unreadable.of("archive.problem.missing").in(name);
        }
        try (var in = source.open(name)) {
            byte[] bytes = in.readNBytes(most + 1);
            if (bytes.length > most) {
                throw Unreadable.of("archive.problem.long", most).in(name);
            }
            return bytes;
        } catch (IOException e) { // zips name what is wrong with them in many ways
            throw Unreadable.of("archive.problem.damaged").in(name);
        }
    }

    public static String text(String name, byte[] bytes) throws Unreadable {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw Unreadable.of("archive.problem.utf-8").in(name);
        }
    }
}
