package groundbass.bench;

import groundbass.identity.Sha256;
import groundbass.site.Config;
import groundbass.site.Groundbass;
import groundbass.store.BlobFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.jdbi.v3.core.Jdbi;

/**
 * The demo behind a front server (each request tells its reader's address), with one more file of 200 KB in its first
 * release. Where to get that is written to the file {@code path} of the data folder.
 */
final class DownloadServer {
    static final String NAME = "bench.bin";
    static final int SIZE = 200_000;

    private DownloadServer() {}

    public static void main(String[] args) throws Exception {
        var data = Path.of(args[0]);
        var local = Config.local(data, Integer.parseInt(args[1]));
        var config = local.withDemo().behind(1);
        var site = Groundbass.start(config, Clock.systemUTC());
        Runtime.getRuntime().addShutdownHook(new Thread(site::close));
        String release = release(site.database().jdbi());
        offer(site.database().jdbi(), release, stored(data));
        var path = Files.writeString(data.resolve("path.part"), "/files/" + release + "/" + NAME);
        Files.move(path, data.resolve("path"), StandardCopyOption.ATOMIC_MOVE);
        new CountDownLatch(1).await();
    }

    /** A release that is out; the demo is loaded once its last episode is. */
    private static String release(Jdbi jdbi) {
        while (true) {
            var releases = jdbi.withHandle(
                    handle -> handle.createQuery("select id from release where published_at is not null order by id")
                            .mapTo(String.class)
                            .list());
            if (releases.size() >= 6) return releases.get(0);
            LockSupport.parkNanos(Duration.ofMillis(200).toNanos());
        }
    }

    private static Sha256 stored(Path data) throws Exception {
        var bytes = new byte[SIZE];
        new Random(1).nextBytes(bytes);
        return new BlobFolder(data.resolve("files"), Clock.systemUTC())
                .put(bytes)
                .sha256();
    }

    private static void offer(Jdbi jdbi, String release, Sha256 sha256) {
        jdbi.useTransaction(handle -> {
            handle.execute("delete from release_file where name = ?", NAME);
            handle.execute("""
                    insert into release_file (release_id, place, name, role, media_type, byte_count, sha256)
                    values (?, 99, ?, 'own_track', 'application/octet-stream', ?, ?)""", release, NAME, SIZE, sha256.hex());
        });
    }
}
