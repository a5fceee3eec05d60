package groundbass.web.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.statistics.AddressedDownload;
import groundbass.audience.student.StudentId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Optional;

/**
 * A download in a list.
 *
 * @param student the student's address, where it is known who
 * @param path leads to what else the student took
 * @param when the moment in the series' zone
 * @param state a key of the message bundles
 */
public record TakenRow(
        Optional<String> student, Optional<String> path, String file, Instant at, String when, String state) {
    static TakenRow of(AddressedDownload taken, Days days) {
        return of(taken.download(), taken.student().map(EmailAddress::value), days);
    }

    static TakenRow of(Download download, Optional<String> student, Days days) {
        return new TakenRow(
                student,
                download.student().map(TakenRow::path),
                download.file().name(),
                download.startedAt(),
                days.moment(download.startedAt()),
                download.state().key());
    }

    static String path(StudentId student) {
        return "/desk/statistics/students/" + student;
    }
}
