package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.util.Collection;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/**
 * Keeps a folder of files and a database from being used with a stranger: both hold the same identity, made at their
 * first start together. Files that no row names are cleared away in time, so the wrong pair would lose its files.
 */
public final class Pairing {
    private static final String SETTING = "store.identity";

    private final Jdbi jdbi;
    private final BlobStore files;

    public Pairing(Jdbi jdbi, BlobStore files) {
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
            String identity = files.identity().or(() -> ofDatabase).orElseGet(RandomId::next);
            files.identify(ofDatabase.orElseGet(() -> NamedValues.keep(jdbi, SETTING, () -> identity)));
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
        var ofFolder = files.identity();
        if (ofFolder.isPresent() && ofDatabase.isPresent()) {
            refuseUnless(ofFolder.equals(ofDatabase), ofDatabase.get(), "belong to another database than this one");
            return true;
        }
        refuseStrangers(named, ofFolder.or(() -> ofDatabase).orElseGet(RandomId::next));
        return false;
    }

    private void refuseStrangers(Collection<Sha256> named, String identity) throws IOException {
        boolean known = isAnyHeld(named);
        boolean empty = files.isEmpty();
        refuseUnless(known || named.isEmpty() || !empty, identity, "are gone, but the database names some");
        refuseUnless(known || empty, identity, "are unknown to this database");
    }

    private boolean isAnyHeld(Collection<Sha256> named) throws IOException {
        for (var sha256 : named) {
            if (files.holds(sha256)) {
                return true;
            }
        }
        return false;
    }

    private void refuseUnless(boolean together, String identity, String wrong) {
        if (!together) {
            throw new CannotOpen("The files in " + files.place() + " " + wrong
                    + ". Start with the files (--data, or --files) and the"
                    + " database (--database-url, or the embedded one in the folder) that belong together, or restore"
                    + " both from one backup. If these two do belong together, put the line \"" + identity + "\" into "
                    + files.place() + "/" + BlobStore.IDENTITY + " and into the database as the setting \"" + SETTING
                    + "\".");
        }
    }
}
