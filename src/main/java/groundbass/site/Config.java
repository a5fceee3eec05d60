package groundbass.site;

import groundbass.post.EmailAddress;
import groundbass.publishing.address.LocalAddress;
import groundbass.store.Database;
import groundbass.store.bucket.BucketName;
import groundbass.web.answer.HandOver;
import java.net.URI;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Everything an operator may choose.
 *
 * @param data the folder of the site
 * @param publicAddress the site's origin as readers type it
 * @param demo whether the site begins with demonstration data
 * @param keeping whether students may keep lessons on their devices
 * @param hops how many front servers of the operator's own pass a request on
 * @param handOver who sends files to readers in the place of the program
 * @param database missing for the embedded one
 * @param files where they lie; missing for those in the folder
 * @param mail missing where letters wait on the desk
 * @param metrics what whoever watches the process shows to read its figures, without which there are none
 */
public record Config(
        Path data,
        String host,
        int port,
        Optional<URI> publicAddress,
        boolean demo,
        boolean keeping,
        int hops,
        Optional<HandOver> handOver,
        Optional<DatabaseServer> database,
        Optional<BucketName> files,
        Optional<MailServer> mail,
        Optional<Secret> metrics) {
    private static final int HIGHEST_PORT = 65_535;

    public Config {
        Objects.requireNonNull(data);
        Objects.requireNonNull(host);
        Objects.requireNonNull(publicAddress);
        Objects.requireNonNull(handOver);
        Objects.requireNonNull(database);
        Objects.requireNonNull(files);
        Objects.requireNonNull(mail);
        Objects.requireNonNull(metrics);
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
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same with its files in a bucket, so that several servers can have them. */
    public Config keptIn(BucketName bucket) {
        return but(changed -> changed.files = Optional.of(bucket));
    }

    /** The same under another public address. */
    public Config at(URI address) {
        return but(changed -> changed.publicAddress = Optional.of(address));
    }

    /** The same with another database; empty for the embedded one. */
    public Config with(Optional<DatabaseServer> other) {
        return but(changed -> changed.database = other);
    }

    /** The same with a server that takes its mail. */
    public Config with(MailServer server) {
        return but(changed -> changed.mail = Optional.of(server));
    }

    /** The same with the demonstration loaded where there is nothing yet. */
    public Config withDemo() {
        return but(changed -> changed.demo = true);
    }

    /** The same where devices keep no lessons. */
    public Config keepingNothing() {
        return but(changed -> changed.keeping = false);
    }

    /** The same behind so many front servers. */
    public Config behind(int servers) {
        return but(changed -> changed.hops = servers);
    }

    /** The same with somebody else who sends files. */
    public Config handingOver(HandOver way) {
        return but(changed -> changed.handOver = Optional.of(way));
    }

    /** The same with figures of the process for whoever shows this. */
    public Config watchedWith(Secret token) {
        return but(changed -> changed.metrics = Optional.of(token));
    }

    private Config but(Consumer<Changed> change) {
        var changed = new Changed();
        change.accept(changed);
        return new Config(
                data,
                host,
                port,
                changed.publicAddress,
                changed.demo,
                changed.keeping,
                changed.hops,
                changed.handOver,
                changed.database,
                changed.files,
                changed.mail,
                changed.metrics);
    }

    /** What can be chosen otherwise, as it is chosen here until it is. */
    private final class Changed {
        private Optional<URI> publicAddress = Config.this.publicAddress;
        private boolean demo = Config.this.demo;
        private boolean keeping = Config.this.keeping;
        private int hops = Config.this.hops;
        private Optional<HandOver> handOver = Config.this.handOver;
        private Optional<DatabaseServer> database = Config.this.database;
        private Optional<BucketName> files = Config.this.files;
        private Optional<MailServer> mail = Config.this.mail;
        private Optional<Secret> metrics = Config.this.metrics;
    }

    /** Where an operator finds its files. */
    public String place() {
        return files.map(BucketName::toString).orElseGet(data::toString);
    }

    /** Whether the database is one that several processes can be connected to. */
    boolean isOnServer() {
        return database.filter(server -> Database.isServer(server.url())).isPresent();
    }

    /** Whether anything of the site lies in {@code data}: its files, or the embedded database. */
    boolean usesFolder() {
        return files.isEmpty() || !isOnServer();
    }

    /** Whether the demonstration is wanted and will have to be drawn: of a database on a server that is not known yet. */
    boolean beginsDemo() {
        return demo && database.isEmpty() && !Database.isEmbeddedIn(data);
    }

    /** Opens the database as it is. @throws groundbass.store.CannotOpen where another program has made its tables */
    public Database openUnchanged() {
        return database.map(server -> Database.openUnchanged(
                        server.url(), server.user(), server.password().value()))
                .orElseGet(() -> Database.embeddedUnchanged(data));
    }

    /** Opens the database and brings it up to date, or makes it where there is none. */
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
        return !LocalAddress.isLoopback(host) && hops == 0;
    }

    private static String nameOf(String host) {
        boolean thisMachine = host.equals("127.0.0.1") || host.equals("0.0.0.0") || host.equals("::");
        if (thisMachine) {
            return "localhost";
        }
        return host.contains(":") ? "[" + host + "]" : host; // RFC 3986 section 3.2.2
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
    public record MailServer(
            String host, int port, Optional<String> user, Optional<Secret> password, EmailAddress from) {
        public MailServer {
            Objects.requireNonNull(host);
            Objects.requireNonNull(user);
            Objects.requireNonNull(password);
            Objects.requireNonNull(from);
        }
    }
}
