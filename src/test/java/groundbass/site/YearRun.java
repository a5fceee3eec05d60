package groundbass.site;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.Comparator;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;

/**
 * A whole site that lives through a year in minutes: a lesson each week and what an educator throws away beside it, readers
 * every day, students who come and go, letters, and all that comes round. The clock is moved on by a day as soon as all that
 * was due is done, so what comes round hourly does so once a day. Every four weeks it prints what the process and the
 * folder hold, and at the end the rows of each table.
 *
 * <p>Argument: how many weeks, 52 where it is left out.
 */
final class YearRun {
    private static final int WEEKS = 52;
    private static final int WEEKS_BETWEEN = 4;
    private static final int DAYS = 7;
    /** A day of the week is this hour until the next. */
    private static final LocalTime HOUR = LocalTime.of(17, 30);

    private static final Duration A_DAY = Duration.ofDays(1);
    private static final Duration SETTLED_WITHIN = Duration.ofMinutes(5);
    private static final Duration LOOK_AGAIN = Duration.ofMillis(20);

    private final YearsClock clock;
    private final Groundbass site;
    private final Services parts;
    private final YearsDesk desk;
    private final YearsPeople people;
    private final YearsFigures figures;

    private YearRun(Path folder, YearsClock clock) throws Exception {
        var config = Config.local(folder, 0).behind(1);
        this.clock = clock;
        this.site = Groundbass.start(config, clock, clock);
        this.parts = new Services(config, site.address(), clock, site.database());
        this.desk = new YearsDesk(parts);
        this.people = new YearsPeople(site.address(), parts, desk.series());
        this.figures = new YearsFigures(site.database().jdbi(), folder);
    }

    public static void main(String[] args) throws Exception {
        int weeks = args.length > 0 ? Integer.parseInt(args[0]) : WEEKS;
        var folder = Files.createTempDirectory("year");
        // ahead, and not in the past: the files' own time is the machine's, and a sweep takes a later one for young
        var now = ZonedDateTime.now(Clock.systemUTC());
        var begin = now.with(TemporalAdjusters.next(DayOfWeek.TUESDAY)).with(HOUR);
        var clock = YearsClock.ahead(Duration.between(now, begin));
        var run = new YearRun(folder, clock);
        try {
            run.live(weeks);
        } finally {
            run.site.close();
            delete(folder);
        }
        System.exit(0);
    }

    private void live(int weeks) throws Exception {
        settle();
        for (int week = 1; week <= weeks; week++) {
            desk.week(week);
            settle(); // or what is being built would be taken for left behind by a server that is gone
            for (int day = 0; day < DAYS; day++) {
                people.day(day);
                clock.advance(A_DAY);
                settle();
            }
            if (week % WEEKS_BETWEEN == 0) {
                System.out.println(figures.of(week));
            }
            if (2 * week == weeks) {
                System.out.println(figures.rows());
            }
        }
        System.out.println(people.told());
        System.out.println(figures.rows());
    }

    /** Until all that is due now is done. */
    private void settle() {
        site.settle();
        var due = clock.instant();
        long patience = System.nanoTime() + SETTLED_WITHIN.toNanos();
        while (isOpen(due)) {
            if (System.nanoTime() > patience) {
                throw new IllegalStateException("not done yet: what was due at " + due);
            }
            LockSupport.parkNanos(LOOK_AGAIN.toNanos());
        }
    }

    private boolean isOpen(Instant due) {
        return parts.database
                .jdbi()
                .withHandle(handle -> handle.createQuery(
                                        "select count(*) from scheduled_tasks where picked or execution_time <= :due")
                                .bind("due", due)
                                .mapTo(Integer.class)
                                .one()
                        > 0);
    }

    private static void delete(Path folder) throws Exception {
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }

    static String line(String format, Object... parameters) {
        return String.format(Locale.ROOT, format, parameters);
    }
}
