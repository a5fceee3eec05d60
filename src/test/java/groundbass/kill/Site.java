package groundbass.kill;

import groundbass.store.Database;
import java.nio.file.Path;

/** A data folder and the database that belongs to it: the embedded one, or the address of a PostgreSQL. */
record Site(Path folder, String database) {
    static final String EMBEDDED = "embedded";

    Database open() {
        return database.equals(EMBEDDED) ? Database.embedded(folder) : Database.open(database, "postgres", "");
    }

    Path files() {
        return folder.resolve("files");
    }
}
