package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collection;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Keeps a folder of files and a database from being used with a stranger: both hold the same identity, made at their
 * first start together. Files that no row names are cleared away in time, so the wrong pair would lose its files.
 */
public final class Pairing {
    /** Where the folder keeps its identity: one line. */
    static final String FILE = "database.id";

    private static final String SETTING = "store.identity";

    private final Jdbi jdbi;
    private final BlobFolder files;

    public Pairing(Jdbi jdbi, BlobFolder files) {
        this.jdbi = jdbi;
        this.files = files;
    }

    /**
     * Returns where folder and database belong together, and makes their identity where one is missing.
     *
     * @param named some of the files that rows of the database name; empty only where none is named
     * @throws CannotOpen where they are strangers, also where one is empty and the other is not
     */
    public void check(Collection<Sha256> named) throws IOException {
        var ofDatabase = ofDatabase();
        if (!areKnown(ofDatabase, named)) {
            String identity = ofFolder().or(() -> ofDatabase).orElseGet(RandomId::next);
            write(ofDatabase.orElseGet(() -> NamedValues.keep(jdbi, SETTING, () -> identity)));
        }
        files.pair();
    }

    /** The same for whoever only reads: nothing is made where an identity is missing. */
    public void compare(Collection<Sha256> named) throws IOException {
        if (areKnown(ofDatabase(), named)) {
            files.pair();
        }
    }

    private Optional<String> ofDatabase() {
        return jdbi.withHandle(handle -> NamedValues.find(handle, SETTING));
    }

    /** @return whether both have the same identity; they may belong together although one has none yet */
    private boolean areKnown(Optional<String> ofDatabase, Collection<Sha256> named) throws IOException {
        var ofFolder = ofFolder();
        if (ofFolder.isPresent() && ofDatabase.isPresent()) {
            refuseUnless(ofFolder.equals(ofDatabase), ofDatabase.get(), "belong to another database than this one");
            return true;
        }
        refuseStrangers(named, ofFolder.or(() -> ofDatabase).orElseGet(RandomId::next));
        return false;
    }

    private void refuseStrangers(Collection<Sha256> named, String identity) {
        boolean known = named.stream().anyMatch(files::holds);
        refuseUnless(known || named.isEmpty() || !files.isEmpty(), identity, "are gone, but the database names some");
        refuseUnless(known || files.isEmpty(), identity, "are unknown to this database");
    }

    private void refuseUnless(boolean together, String identity, String wrong) {
        if (!together) {
            throw new CannotOpen("The files in " + files.folder() + " " + wrong
                    + ". Start with the folder (--data) and the"
                    + " database (--database-url, or the embedded one in the folder) that belong together, or restore"
                    + " both from one backup. If these two do belong together, put the line \"" + identity + "\" into "
                    + files.folder().resolve(FILE) + " and into the database as the setting \"" + SETTING + "\".");
        }
    }

    private Optional<String> ofFolder() throws IOException {
        try {
            String text = Files.readString(files.folder().resolve(FILE), StandardCharsets.UTF_8)
                    .strip();
            return Optional.of(text);
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    private void write(String identity) throws IOException {
        Path written = Files.writeString(files.incoming().resolve(RandomId.next()), identity + "\n");
        Files.move(written, files.folder().resolve(FILE), StandardCopyOption.ATOMIC_MOVE);
    }
}
