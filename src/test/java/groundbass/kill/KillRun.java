package groundbass.kill;

import groundbass.store.bucket.ObjectServer;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Kills a site many times under load and counts what was acknowledged and is not there afterwards, and what is there by halves or twice. All kills of a run
 * meet one site, which grows older, and at the end everything of all kills is looked for once more. The processors are
 * kept busy beside it. Ends with status 1 where anything is lost.
 *
 * <p>Arguments: how many kills; {@code h2}, {@code postgres}, or {@code bucket} for a PostgreSQL and an object store; a seed,
 * where a run is to be repeated.
 */
final class KillRun {
    private static final int BURNERS = Runtime.getRuntime().availableProcessors();
    /** How long a process goes on once it acknowledged every kind: from not at all to so many milliseconds. */
    private static final int LONGEST_LIFE = 1500;

    private final Site site;
    private final Random random;
    private final List<Acknowledged> acknowledged = new ArrayList<>();
    private final Map<Kind, Integer> lost = new EnumMap<>(Kind.class);

    private KillRun(Site site, Random random) {
        this.site = site;
        this.random = random;
    }

    public static void main(String[] args) throws Exception {
        int kills = Integer.parseInt(args[0]);
        long seed = args.length > 2 ? Long.parseLong(args[2]) : System.nanoTime();
        Path folder = Files.createTempDirectory("kill-run");
        print("%d kills on %s, %d busy threads beside, seed %d, in %s", kills, args[1], BURNERS, seed, folder);
        boolean whole =
                switch (args[1]) {
                    case "h2" -> run(Site.in(folder), kills, seed);
                    case "postgres" -> onPostgres(folder, Site.IN_FOLDER, kills, seed);
                    case "bucket" ->
                        onPostgres(folder, ObjectServer.get().freshBucket().toString(), kills, seed);
                    default -> throw new IllegalArgumentException("none of h2, postgres, bucket: " + args[1]);
                };
        delete(folder);
        System.exit(whole ? 0 : 1);
    }

    private static boolean onPostgres(Path folder, String files, int kills, long seed) throws Exception {
        try (var server = EmbeddedPostgres.start()) {
            return run(new Site(folder, server.getJdbcUrl("postgres", "postgres"), files), kills, seed);
        }
    }

    private static boolean run(Site site, int kills, long seed) throws Exception {
        var run = new KillRun(site, new Random(seed));
        try (var killing = new Killing();
                var burners = new Burners(BURNERS)) {
            burners.start();
            for (int i = 1; i <= kills; i++) {
                run.kill(killing, i);
            }
        }
        return run.report();
    }

    private void kill(Killing killing, int number) throws Exception {
        var told = killing.kill(site, Duration.ofMillis(random.nextInt(LONGEST_LIFE)));
        acknowledged.addAll(told);
        List<Acknowledged> missing;
        try (var witness = Witness.of(site)) {
            missing = witness.lost(told);
        }
        missing.forEach(one -> lost.merge(one.kind(), 1, Integer::sum));
        print("kill %d: %d acknowledged, lost %s", number, told.size(), missing);
    }

    private boolean report() {
        int lostAtTheEnd;
        List<String> halfDone;
        try (var witness = Witness.of(site)) {
            lostAtTheEnd = witness.lost(acknowledged).size();
            halfDone = witness.halfDone();
        }
        print("%-9s %12s %6s", "", "acknowledged", "lost");
        for (Kind kind : Kind.values()) {
            long count = acknowledged.stream().filter(one -> one.kind() == kind).count();
            print("%-9s %12d %6d", kind.name().toLowerCase(Locale.ROOT), count, lost.getOrDefault(kind, 0));
        }
        print(
                "%-9s %12d %6d",
                "together",
                acknowledged.size(),
                lost.values().stream().mapToInt(n -> n).sum());
        print("looked for once more at the end: %d lost; by halves or twice: %s", lostAtTheEnd, halfDone);
        return lost.isEmpty() && halfDone.isEmpty() && lostAtTheEnd == 0 && !acknowledged.isEmpty();
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static void print(String format, Object... parameters) {
        System.out.printf(Locale.ROOT, format + "%n", parameters);
    }
}
