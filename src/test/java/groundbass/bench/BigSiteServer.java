package groundbass.bench;

import groundbass.Parts;
import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.site.Config;
import groundbass.site.Groundbass;
import groundbass.site.Secret;
import groundbass.store.Database;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * A site with all that {@link BigSite} invents. Arguments: the data folder, the port and, where it is not the embedded
 * database, the address of a PostgreSQL. The token of a session of its educator is written to the file {@code session}.
 */
final class BigSiteServer {
    private BigSiteServer() {}

    public static void main(String[] args) throws Exception {
        var data = Files.createDirectories(Path.of(args[0]));
        var clock = Clock.systemUTC();
        String token;
        try (var database = args.length > 2 ? Database.open(args[2], "postgres", "") : Database.embedded(data)) {
            var educator = BigSite.fill(database, clock);
            token = Parts.sessions(database.jdbi(), clock)
                    .open(new Person.OfEducator(educator), Device.PROGRAM)
                    .value();
        }
        var local = Config.local(data, Integer.parseInt(args[1]));
        var site = Groundbass.start(args.length > 2 ? on(local, args[2]) : local, clock);
        Runtime.getRuntime().addShutdownHook(new Thread(site::close));
        var written = Files.writeString(data.resolve("session.part"), token);
        Files.move(written, data.resolve("session"), StandardCopyOption.ATOMIC_MOVE);
        new CountDownLatch(1).await();
    }

    private static Config on(Config local, String url) {
        return new Config(
                local.data(),
                local.host(),
                local.port(),
                local.publicAddress(),
                local.demo(),
                local.keeping(),
                local.hops(),
                local.handOver(),
                Optional.of(new Config.DatabaseServer(url, "postgres", new Secret(""))),
                local.mail());
    }
}
