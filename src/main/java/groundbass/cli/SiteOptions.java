package groundbass.cli;

import groundbass.site.Config;
import groundbass.site.Secret;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** Where a site lies, for every command that opens one. */
final class SiteOptions {
    @Option(
            names = "--data",
            paramLabel = "DIR",
            scope = ScopeType.INHERIT,
            description = "Folder of the site's files (default: data).")
    private Path data = Path.of("data");

    @Option(
            names = "--database-url",
            paramLabel = "URL",
            scope = ScopeType.INHERIT,
            description = "JDBC address of a PostgreSQL server (default: embedded, in the data folder).")
    private Optional<String> databaseUrl = Optional.empty();

    @Option(
            names = "--database-user",
            paramLabel = "NAME",
            scope = ScopeType.INHERIT,
            description = "User of the database server.")
    private String databaseUser = "";

    @Option(
            names = "--database-password",
            paramLabel = "SECRET",
            scope = ScopeType.INHERIT,
            description = "Password of the database server; better given as GROUNDBASS_DATABASE_PASSWORD.")
    private String databasePassword = "";

    @Option(
            names = "--files",
            paramLabel = "s3://BUCKET/PREFIX",
            scope = ScopeType.INHERIT,
            description =
                    "Bucket of an object store for the site's files, so that several servers can have them (default:"
                            + " in the data folder). Which store and with which keys: AWS_ENDPOINT_URL, AWS_REGION,"
                            + " AWS_ACCESS_KEY_ID, AWS_SECRET_ACCESS_KEY.")
    private Optional<String> files = Optional.empty();

    Path data() {
        return data;
    }

    Optional<Config.DatabaseServer> database() {
        return databaseUrl.map(url -> new Config.DatabaseServer(url, databaseUser, new Secret(databasePassword)));
    }

    /** As it was typed. */
    Optional<String> files() {
        return files;
    }
}
