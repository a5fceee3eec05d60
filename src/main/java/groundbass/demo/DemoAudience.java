package groundbass.demo;

import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadId;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.download.DownloadState;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.student.DemoAddress;
import groundbass.audience.student.Student;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Invented students and downloads, so that the demo's statistics show something. Marked as such by their addresses, which
 * end in {@value DemoAddress#DOMAIN}. How many came is told from outside; who of them, and
 * when in the time, is chance, but the same on every machine.
 */
final class DemoAudience {
    /** How many students there are; no visits may ask for more. */
    public static final int STUDENTS = 24;

    private static final long SEED = 4; // any number; fixed, so that the demo looks alike everywhere

    private final Random random = new Random(SEED);
    private final Handle handle;

    private DemoAudience(Handle handle) {
        this.handle = handle;
    }

    /**
     * Downloads of one file within a stretch of time.
     *
     * @param byStudents completed, each by a different student
     * @param anonymous completed without signing in
     * @param brokenOff begun without signing in and never finished
     */
    public record Visits(ReleasedFile file, Instant from, Instant until, int byStudents, int anonymous, int brokenOff) {
        public Visits {
            if (byStudents < 0 || anonymous < 0 || brokenOff < 0 || byStudents > STUDENTS) {
                throw new IllegalArgumentException("not a number of visits to " + file.name());
            }
            if (until.isBefore(from)) throw new IllegalArgumentException(from + " is not before " + until);
        }
    }

    /** Makes the audience with all its visits, once: a second call finds them and does nothing. */
    public static void invent(Jdbi jdbi, List<Visits> visits) {
        jdbi.useTransaction(handle -> {
            if (!visits.isEmpty() && !isThere(handle)) {
                new DemoAudience(handle).tell(visits);
                RollUps.forget(handle);
            }
        });
    }

    private static boolean isThere(Handle handle) {
        return handle.createQuery("select count(*) from student where email like :demo")
                        .bind("demo", "%@" + DemoAddress.DOMAIN)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    private void tell(List<Visits> visits) {
        var beginning =
                visits.stream().map(Visits::from).min(Comparator.naturalOrder()).orElseThrow();
        var students = new ArrayList<>(IntStream.rangeClosed(1, STUDENTS)
                .mapToObj(number -> student(number, beginning))
                .toList());
        for (Visits each : visits) {
            Collections.shuffle(students, random);
            students.subList(0, each.byStudents()).forEach(student -> complete(each, Optional.of(student)));
            IntStream.range(0, each.anonymous()).forEach(visitor -> complete(each, Optional.empty()));
            IntStream.range(0, each.brokenOff()).forEach(visitor -> breakOff(each));
        }
    }

    private StudentId student(int number, Instant since) {
        var email = DemoAddress.of("student-%02d".formatted(number));
        var student = new Student(StudentId.next(), email, Locale.ENGLISH, since);
        Students.insert(handle, student);
        return student.id();
    }

    private void complete(Visits visits, Optional<StudentId> student) {
        record(visits, student, DownloadState.COMPLETE, visits.file().size());
    }

    private void breakOff(Visits visits) {
        long sent = (long) (random.nextDouble() * visits.file().size());
        record(visits, Optional.empty(), DownloadState.BROKEN_OFF, sent);
    }

    private void record(Visits visits, Optional<StudentId> student, DownloadState state, long sent) {
        Instant at = moment(visits);
        var download =
                new Download(DownloadId.next(at), visits.file(), student, at, at, state, sent, false, false, false);
        DownloadRows.insert(handle, download);
    }

    /** Most come in the first days. */
    private Instant moment(Visits visits) {
        double early = random.nextDouble();
        long seconds = Duration.between(visits.from(), visits.until()).toSeconds();
        return visits.from().plusSeconds((long) (early * early * seconds));
    }
}
