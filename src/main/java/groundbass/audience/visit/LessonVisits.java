package groundbass.audience.visit;

import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.visit.Happening.Course;
import groundbass.audience.visit.Happening.Loop;
import groundbass.audience.visit.Happening.Part;
import groundbass.audience.visit.Happening.Visit;
import groundbass.catalog.episode.Episode;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Jdbi;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Counts visitors of lessons. Each counts once in 24 hours for each {@link VisitKind} of a lesson, for each quarter of a line and
 * each bar; robots, and educators at the desk, for nothing. Numbers are held in memory for some seconds, then added to the sums:
 * a process that is killed loses what {@link #write} had not written. Thread-safe.
 */
public final class LessonVisits implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(LessonVisits.class);

    private final Jdbi jdbi;
    private final VisitorKey visitors;
    private final Clock clock;
    private final Counted counted = new Counted();
    private final Map<Happening, Long> waiting = new HashMap<>();

    /** @param visitors whose digests are of one use with those of downloads, and are destroyed with them */
    public LessonVisits(Jdbi jdbi, VisitorKey visitors, Clock clock) {
        this.jdbi = jdbi;
        this.visitors = visitors;
        this.clock = clock;
    }

    /** Somebody opened the page of a lesson. */
    public void viewed(Episode lesson, Requester requester) {
        visitor(lesson, requester).ifPresent(visitor -> count(visitor, lesson, VisitKind.VIEW));
    }

    /** Somebody signed in, to go to a lesson. */
    public void signedIn(Episode lesson, Requester requester) {
        visitor(lesson, requester).ifPresent(visitor -> count(visitor, lesson, VisitKind.SIGN_IN));
    }

    /** A browser told what was done on the page; what it has told before is not counted again. */
    public void sat(Episode lesson, Sitting sitting, Requester requester) {
        visitor(lesson, requester).ifPresent(visitor -> {
            sitting.lines().forEach(line -> played(visitor, lesson, line, sitting.release()));
            for (String address : sitting.courses()) {
                count(visitor, lesson, VisitKind.COURSE);
                count(visitor, new Course(lesson.id(), address));
            }
        });
    }

    private void played(String visitor, Episode lesson, PlayedLine line, int release) {
        count(visitor, lesson, VisitKind.PLAY);
        if (line.line().equals(PlayedLine.MAIN) && line.quarters() == PlayedLine.ALL) {
            count(visitor, lesson, VisitKind.WHOLE);
        }
        if (!line.looped().isEmpty()) {
            count(visitor, lesson, VisitKind.LOOP);
        }
        IntStream.rangeClosed(0, line.quarters())
                .forEach(quarters -> count(visitor, new Part(lesson.id(), line.line(), quarters)));
        line.looped().forEach(bar -> count(visitor, new Loop(lesson.id(), release, line.line(), bar)));
    }

    private Optional<String> visitor(Episode lesson, Requester requester) {
        if (requester.isRobot()) {
            return Optional.empty();
        }
        // as little of a student as of anybody else: a digest that cannot be traced after a day
        return requester
                .student()
                .map(student -> visitors.digest("student", student.value()))
                .or(() -> requester.visitor(visitors).filter(visitor -> isAdmitted(lesson, visitor, requester)));
    }

    private synchronized boolean isAdmitted(Episode lesson, String visitor, Requester requester) {
        return !(requester instanceof Requester.Anonymous somebody)
                || counted.admits(somebody.network(visitors), lesson.id(), visitor, clock.instant());
    }

    private void count(String visitor, Episode lesson, VisitKind kind) {
        var now = clock.instant();
        int age = lesson.publishedAt().map(out -> Ages.at(now, out)).orElse(0);
        count(visitor, kind, new Visit(lesson.id(), kind, age));
    }

    private void count(String visitor, Happening what) {
        count(visitor, what, what);
    }

    /** @param thing what it is known again by within the day, in which a lesson may become a day older */
    private synchronized void count(String visitor, Object thing, Happening what) {
        if (counted.isFirst(visitor, what.lesson(), thing, clock.instant())) {
            waiting.merge(what, 1L, Long::sum);
        }
    }

    /** Adds what was counted to the sums; to be run every few seconds. Where that fails it is tried again the next time. */
    public void write() {
        var taken = take();
        if (taken.isEmpty()) {
            return;
        }
        try {
            jdbi.useTransaction(handle -> VisitRows.add(handle, taken));
        } catch (RuntimeException e) {
            giveBack(taken);
            throw e;
        }
    }

    private synchronized Map<Happening, Long> take() {
        counted.forget(clock.instant());
        var taken = Map.copyOf(waiting);
        waiting.clear();
        return taken;
    }

    private synchronized void giveBack(Map<Happening, Long> taken) {
        taken.forEach((what, number) -> waiting.merge(what, number, Long::sum));
    }

    /** Writes. */
    @Override
    public void close() {
        try {
            write();
        } catch (RuntimeException e) {
            log.warn("the last visits are not counted", e);
        }
    }
}
