package groundbass.site;

import groundbass.store.Database;
import java.net.URI;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * Everything an operator may choose. {@code publicAddress} is the site's origin as readers type it; {@code keeping} says whether students may keep lessons
 * on their devices; {@code hops} how many
 * front servers of the operator's own pass a request on; {@code handOver} the
 * internal location of a front server that sends files itself; {@code database} is missing for the embedded one.
 */
public record Config(
        Path data,
        String host,
        int port,
        Optional<URI> publicAddress,
        boolean demo,
        boolean keeping,
        int hops,
        Optional<String> handOver,
        Optional<DatabaseServer> database,
        Optional<MailServer> mail) {
    private static final int HIGHEST_PORT = 65_535;

    public Config {
        Objects.requireNonNull(data);
        Objects.requireNonNull(host);
        Objects.requireNonNull(publicAddress);
        Objects.requireNonNull(handOver);
        Objects.requireNonNull(database);
        Objects.requireNonNull(mail);
        if (port < 0 || port > HIGHEST_PORT) {
            throw new IllegalArgumentException("no port has the number " + port);
        }
    }

    /** A server of this machine alone, with everything in {@code data}. */
    public static Config local(Path data, int port) {
        return new Config(
                data,
                "127.0.0.1",
                port,
                Optional.empty(),
                false,
                true,
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same with another database; empty for the embedded one. */
    public Config with(Optional<DatabaseServer> other) {
        return new Config(data, host, port, publicAddress, demo, keeping, hops, handOver, other, mail);
    }

    /** Opens the database, or makes it where there is none. */
    public Database openDatabase() {
        return database.map(server -> Database.open(
                        server.url(), server.user(), server.password().value()))
                .orElseGet(() -> Database.embedded(data));
    }

    /** Where readers find the site, given the port that is really listened on. */
    public URI publicAddress(int listeningPort) {
        return publicAddress.orElseGet(() -> URI.create("http://" + nameOf(host) + ":" + listeningPort));
    }

    /** Whether everybody in a network can connect without a front server, and so reads what is not encrypted. */
    public boolean isExposed() {
        boolean loopback = host.equals("localhost") || host.startsWith("127.") || host.equals("::1");
        return !loopback && hops == 0;
    }

    private static String nameOf(String host) {
        boolean thisMachine = host.equals("127.0.0.1") || host.equals("0.0.0.0") || host.equals("::");
        return thisMachine ? "localhost" : host;
    }

    /** A PostgreSQL, or any address that JDBC knows. */
    public record DatabaseServer(String url, String user, Secret password) {
        public DatabaseServer {
            Objects.requireNonNull(url);
            Objects.requireNonNull(user);
            Objects.requireNonNull(password);
        }
    }

    /** The SMTP server that takes our mail, and the address it is sent from. */
    public record MailServer(String host, int port, Optional<String> user, Optional<Secret> password, String from) {
        public MailServer {
            Objects.requireNonNull(host);
            Objects.requireNonNull(user);
            Objects.requireNonNull(password);
            Objects.requireNonNull(from);
        }
    }
}
