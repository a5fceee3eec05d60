package groundbass.store.bucket;

import groundbass.identity.Sha256;
import groundbass.store.SweepPolicy;
import groundbass.store.Swept;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * One sweep of a bucket. A file that was put more than a day ago and that no row names is marked, by an object beside it:
 * nothing says how long it has been without a name before, so that a file that a row named until a moment ago is marked at
 * once. A mark that is a month old takes its file with it, unless a row names that by then. The marks' times are the store's
 * own, and are taken away where their file is put or named again; nobody puts a file while it is decided that it goes.
 * Where more than half would be marked, rows rather than files are what is missing, and nothing is.
 */
final class BucketSweep {
    private final Bucket bucket;
    private final FileTurns turns;
    private final FileTurns.Work demandHeld;
    private final Instant now;
    private final Map<Sha256, Instant> marks = new HashMap<>();
    private final List<Sha256> unnamed = new ArrayList<>();
    private final List<Sha256> overdue = new ArrayList<>();
    private int seen;

    /** @param demandHeld throws where this process may not write; asked before each step, for a sweep takes a while */
    BucketSweep(Bucket bucket, FileTurns turns, FileTurns.Work demandHeld, Instant now) {
        this.bucket = bucket;
        this.turns = turns;
        this.demandHeld = demandHeld;
        this.now = now;
    }

    Swept run(Predicate<Sha256> named) throws IOException {
        bucket.list(BlobBucket.UNNAMED, mark -> {
            Bucket.digest(mark).ifPresent(sha256 -> marks.put(sha256, mark.lastModified()));
            return true;
        });
        bucket.list(BlobBucket.FILES, object -> {
            var sha256 = Bucket.digest(object);
            if (sha256.isPresent()) {
                look(sha256.get(), object.lastModified(), named.test(sha256.get()));
            }
            return true;
        });
        int deleted = 0;
        for (var sha256 : overdue) {
            deleted += deleted(sha256, named) ? 1 : 0;
        }
        if (SweepPolicy.isTooMany(unnamed.size(), seen)) {
            return new Swept(0, deleted, unnamed.size());
        }
        var marked = SweepPolicy.atOnce(unnamed);
        for (var sha256 : marked) {
            demandHeld.run();
            bucket.put(mark(sha256), new byte[0]);
        }
        return new Swept(marked.size(), deleted, 0);
    }

    private void look(Sha256 sha256, Instant put, boolean wanted) throws IOException {
        seen++;
        var marked = marks.get(sha256);
        if (wanted) {
            if (marked != null) {
                demandHeld.run();
                bucket.delete(mark(sha256));
            }
        } else if (marked == null) {
            if (put.isBefore(now.minus(SweepPolicy.YOUNG))) {
                unnamed.add(sha256);
            }
        } else if (isOverdue(marked)) {
            overdue.add(sha256);
        }
    }

    private boolean isOverdue(Instant marked) {
        return marked.isBefore(now.minus(SweepPolicy.SET_ASIDE));
    }

    private boolean deleted(Sha256 sha256, Predicate<Sha256> named) throws IOException {
        var done = new boolean[1];
        turns.alone(sha256, () -> {
            boolean marked = bucket.time(mark(sha256)).filter(this::isOverdue).isPresent();
            if (marked && !named.test(sha256)) {
                demandHeld.run();
                bucket.delete(BlobBucket.key(sha256));
                bucket.delete(mark(sha256));
                done[0] = true;
            }
        });
        return done[0];
    }

    private static String mark(Sha256 sha256) {
        return BlobBucket.UNNAMED + sha256.hex();
    }
}
