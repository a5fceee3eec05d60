package groundbass.cli;

import groundbass.site.Accounts;
import groundbass.site.Config;
import groundbass.store.Database;
import java.time.Clock;

/** The few parts of a site that an operator works with at the command line, without its pages and jobs. */
final class AdminSite implements AutoCloseable {
    final Database database;
    final Accounts accounts;

    private AdminSite(Database database, Clock clock) {
        this.database = database;
        this.accounts = Accounts.over(database.jdbi(), clock);
    }

    /** Opens the site's database and brings it up to date; unlike a server it makes none where there is none. */
    static AdminSite open(Config config, Clock clock) {
        demandThere(config);
        return new AdminSite(config.openDatabase(), clock);
    }

    /** Opens the site's database for a command that changes nothing, not even what an earlier program has made. */
    static AdminSite toRead(Config config, Clock clock) {
        demandThere(config);
        return new AdminSite(config.openUnchanged(), clock);
    }

    /** @throws Refused where nothing says that there is a site */
    static void demandThere(Config config) {
        if (config.database().isEmpty() && !Database.isEmbeddedIn(config.data())) {
            throw new Refused("There is no site in the folder " + config.data()
                    + ". Name its folder with --data, or its database with --database-url.");
        }
    }

    @Override
    public void close() {
        database.close();
    }

    /** What an operator can mend; its message is told as it stands. */
    static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }
}
