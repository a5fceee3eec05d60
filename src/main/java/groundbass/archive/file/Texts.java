package groundbass.archive.file;

import groundbass.identity.Sha256;
import groundbass.text.Utf8;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.SortedSet;

/** Reads the files of a source; texts are in UTF-8, and none is longer than it may be. */
public final class Texts {
    private final ArchiveFiles source;
    private final SortedSet<String> names;

    public Texts(ArchiveFiles source) {
        this.source = source;
        this.names = source.names();
    }

    public boolean has(String name) {
        return names.contains(name);
    }

    /** Empty where there is no such file. */
    public Optional<String> find(String name, int most) throws DamagedFile {
        return has(name) ? Optional.of(text(name, bytes(name, most))) : Optional.empty();
    }

    public Optional<String> find(String name) throws DamagedFile {
        return find(name, ArchiveLimits.LONGEST_TEXT);
    }

    /**
     * The text that a list promises.
     *
     * @throws DamagedFile where it is not there, or is not what it was when it was written
     */
    public String find(String name, Entry promised, int most) throws DamagedFile {
        byte[] bytes = bytes(name, most);
        if (bytes.length != promised.size() || !Sha256.of(bytes).hex().equals(promised.sha256())) {
            throw DamagedFile.of("archive.problem.changed").in(name);
        }
        return text(name, bytes);
    }

    /**
     * A file of any kind. What is wrong with it while it is read is {@link SourceInput.Damaged}.
     *
     * @throws DamagedFile where it is not there, or cannot be opened
     */
    public InputStream open(String name) throws DamagedFile {
        if (!has(name)) {
            throw DamagedFile.of("archive.problem.missing");
        }
        try {
            return new SourceInput(source.open(name));
        } catch (IOException e) {
            throw DamagedFile.of("archive.problem.damaged");
        }
    }

    byte[] bytes(String name, int most) throws DamagedFile {
        if (!has(name)) {
            throw DamagedFile.of("archive.problem.missing").in(name);
        }
        try (var in = source.open(name)) {
            byte[] bytes = in.readNBytes(most + 1);
            if (bytes.length > most) {
                throw DamagedFile.of("archive.problem.long", most).in(name);
            }
            return bytes;
        } catch (IOException e) { // zips name what is wrong with them in many ways
            throw DamagedFile.of("archive.problem.damaged").in(name);
        }
    }

    public static String text(String name, byte[] bytes) throws DamagedFile {
        return Utf8.read(bytes)
                .orElseThrow(() -> DamagedFile.of("archive.problem.utf-8").in(name));
    }
}
