package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.bench.TrialSite.Kind;
import groundbass.bench.Wednesday.Deed;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;

/**
 * An evening on which a lesson is announced, played faster than it goes: first what each deed costs the servers by itself,
 * then all of it together. Arguments: {@code h2}, {@code postgres} or {@code two}; how many students the series has; how
 * many seconds of the evening pass in one. The latter two may be left out.
 */
final class WednesdayBench {
    private static final String PAGE = "/series/harbour-rounds/6";
    private static final int LESSONS = 6;
    private static final long SEED = 17;

    private final TrialSite site;

    private WednesdayBench(TrialSite site) {
        this.site = site;
    }

    public static void main(String[] args) throws Exception {
        var kind = Kind.valueOf(args[0].toUpperCase(Locale.ROOT));
        int students = args.length > 1 ? Integer.parseInt(args[1]) : 10_000;
        double factor = args.length > 2 ? Double.parseDouble(args[2]) : 10;
        var folder = Files.createTempDirectory("wednesday");
        try (var site = TrialSite.open(kind, folder)) {
            var bench = new WednesdayBench(site);
            var offer = bench.load();
            bench.costs(offer);
            bench.evening(offer, students, factor);
            bench.memory();
            if (!site.servers().stream().allMatch(Child::isAlive)) {
                print("%s", site.log());
            }
        } finally {
            Scratch.delete(folder);
        }
        System.exit(0); // whatever a database or an object store has left running
    }

    /** Until all is made: where that begins only now, a release costs what passes meanwhile. */
    private Offer load() throws Exception {
        long begun = site.cpuMicros();
        site.awaitLoaded();
        if (site.isFresh()) {
            print("a release of the demonstration: %.1f s of processor", (site.cpuMicros() - begun) / 1e6 / LESSONS);
        }
        for (var server : site.servers()) {
            print("memory once all is made: %d MiB", server.memory().orElse(-1L));
        }
        var offer = Offer.of(site.addresses().get(0), PAGE);
        if (!offer.isWhole()) {
            throw new IllegalStateException("not all of it is offered: " + offer);
        }
        return offer;
    }

    /** What one of each costs the servers where nothing else happens: the second of two rounds. */
    private void costs(Offer offer) throws Exception {
        print("%-28s %10s %12s %12s %10s", "costs by itself", "how often", "program ms", "database ms", "KiB");
        cost("page alone", List.of(offer.page()));
        cost("page with all it names", offer.of(Deed.PAGE, 0));
        cost("playing along", offer.play());
        for (String ending : List.of(".zip", ".pdf", ".mp3")) {
            cost("download " + ending, List.of(offer.file(ending)));
        }
        // the same bytes as before, without a record
        cost("that without a record", List.of(offer.file(".mp3").replaceFirst("/files/", "/play/")));
    }

    private void cost(String name, List<String> paths) throws Exception {
        var round = new Round(site.addresses(), paths);
        round.run();
        long program = site.cpuMicros();
        long database = site.databaseMicros();
        var done = round.run();
        print(
                "%-28s %,10d %12.2f %12.2f %,10d",
                name,
                done.times(),
                (site.cpuMicros() - program) / 1e3 / done.times(),
                (site.databaseMicros() - database) / 1e3 / done.times(),
                done.bytes() / done.times() / 1024);
    }

    private void evening(Offer offer, int students, double factor) throws Exception {
        var wishes = Wednesday.of(students, SEED);
        long first =
                wishes.stream().filter(wish -> wish.after().toMinutes() < 1).count();
        print(
                "an evening with %,d students, %,d deeds, %,d of them in its first minute; a second is %.0f of it",
                students, wishes.size(), first, factor);
        long program = site.cpuMicros();
        long database = site.databaseMicros();
        long begun = System.nanoTime();
        var crowd = new Crowd(site.addresses(), offer);
        crowd.live(wishes, factor);
        for (Deed deed : Deed.values()) {
            print(
                    "%-9s %s",
                    deed.name().toLowerCase(Locale.ROOT), crowd.of(deed).told());
        }
        double seconds = (System.nanoTime() - begun) / 1e9;
        print(
                "in %.0f s; processor time of the program %.1f s, of the database %.1f s",
                seconds, (site.cpuMicros() - program) / 1e6, (site.databaseMicros() - database) / 1e6);
    }

    private void memory() throws IOException {
        for (var server : site.servers()) {
            print(
                    "memory at the end %d MiB, at most %d MiB, heap within 256",
                    server.memory().orElse(-1L), server.mostMemory().orElse(-1L));
        }
    }
}
