package groundbass.audience;

import static groundbass.audience.Audience.FIRST;

import groundbass.store.Database;
import java.nio.file.Path;
import java.time.Clock;

/**
 * A program of its own, to be killed: records downloads from several threads and says so, one line for each as soon as
 * it is acknowledged: {@code begun ID} or {@code complete ID}.
 */
final class DownloadsUnderLoad {
    private static final int THREADS = 4;

    private DownloadsUnderLoad() {}

    public static void main(String[] args) {
        var jdbi = Database.embedded(Path.of(args[0])).jdbi();
        Clock clock = Clock.systemUTC();
        var downloads = new Downloads(jdbi, DownloadToken.of(jdbi), new VisitorKey(clock), clock);
        for (int thread = 0; thread < THREADS; thread++) {
            String name = "reader " + thread;
            new Thread(() -> takeForEver(downloads, name)).start();
        }
    }

    private static void takeForEver(Downloads downloads, String name) {
        ReleasedFile file = Audience.file(FIRST, "sheet.pdf", 1000);
        for (long visit = 0; ; visit++) {
            var taker = new Taker.Anonymous("192.0.2.7", name + " " + visit);
            DownloadId id = downloads.begin(Audience.whole(file, taker)).id();
            System.out.println("begun " + id);
            downloads.sent(id, ByteSpan.of(0, file.size()));
            downloads.settle(); // by itself the end is no acknowledgement: nobody waits for it
            System.out.println("complete " + id);
        }
    }
}
