package groundbass.web.student;

import groundbass.audience.download.Download;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Consent;
import groundbass.audience.student.Consents;
import groundbass.audience.student.Student;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** All that is kept about a student, for the student: in a common machine-readable form, times in UTC (ISO 8601). */
final class OwnData {
    private final Consents consents;
    private final Statistics statistics;

    OwnData(Consents consents, Statistics statistics) {
        this.consents = consents;
        this.statistics = statistics;
    }

    /** To be written as JSON. */
    Map<String, Object> of(Student student) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("email", student.email().value());
        data.put("language", student.locale().toLanguageTag());
        data.put("since", student.createdAt().toString());
        data.put("consents", consents.of(student.id()).stream().map(OwnData::of).toList());
        data.put("downloads", downloads(student));
        return data;
    }

    private List<Map<String, Object>> downloads(Student student) {
        return statistics.ofStudent(student.id()).stream().map(OwnData::of).toList();
    }

    private static Map<String, Object> of(Consent consent) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("purpose", consent.purpose().name().toLowerCase(Locale.ROOT));
        data.put("wording", consent.wording());
        data.put("given", consent.givenAt().toString());
        consent.withdrawnAt().map(Instant::toString).ifPresent(at -> data.put("withdrawn", at));
        return data;
    }

    private static Map<String, Object> of(Download download) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("episode", download.file().episode().value());
        data.put("release", download.file().release());
        data.put("file", download.file().name());
        data.put("started", download.startedAt().toString());
        data.put("state", download.state().name().toLowerCase(Locale.ROOT));
        data.put("bytesSent", download.bytesSent());
        return data;
    }
}
