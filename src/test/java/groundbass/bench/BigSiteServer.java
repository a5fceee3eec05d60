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
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/**
 * A site with all that {@link BigSite} invents. Arguments: the data folder, the port, how many downloads and, where it is not the embedded
 * database, the address of a PostgreSQL. The token of a session of its
 * educator, the id of its series and that of a lesson are written to the file {@code session}, a line each.
 */
final class BigSiteServer {
    private BigSiteServer() {}

    public static void main(String[] args) throws Exception {
        var data = Files.createDirectories(Path.of(args[0]));
        var clock = Clock.systemUTC();
        String token;
        List<String> ids;
        try (var database = args.length > 3 ? Database.open(args[3], "postgres", "") : Database.embedded(data)) {
            var educator = BigSite.fill(database, clock, Integer.parseInt(args[2]));
            token = Parts.sessions(database.jdbi(), clock)
                    .open(new Person.OfEducator(educator), Device.PROGRAM)
                    .value();
            ids = database.jdbi().withHandle(handle -> handle.createQuery(
                            "select min(series_id) from episode union all select max(id) from episode")
                    .mapTo(String.class)
                    .list());
        }
        var local = Config.local(data, Integer.parseInt(args[1]));
        var site = Groundbass.start(args.length > 3 ? on(local, args[3]) : local, clock);
        Runtime.getRuntime().addShutdownHook(new Thread(site::close));
        var written = Files.write(data.resolve("session.part"), List.of(token, ids.get(0), ids.get(ids.size() - 1)));
        Files.move(written, data.resolve("session"), StandardCopyOption.ATOMIC_MOVE);
        new CountDownLatch(1).await();
    }

    private static Config on(Config local, String url) {
        return local.with(Optional.of(new Config.DatabaseServer(url, "postgres", new Secret(""))));
    }
}
