package groundbass.audience;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.ROBOT;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Audience.VISITOR;
import static groundbass.audience.Audience.file;
import static groundbass.audience.Audience.whole;

import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.audience.student.StudentId;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.series.SeriesId;
import groundbass.post.EmailAddress;
import groundbass.store.Database;
import groundbass.store.Instants;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * A month of a series in Vienna with two lessons, small enough to be counted by hand. Times in UTC; Vienna is an hour ahead
 * until Sunday, 2026-03-29, 01:00 UTC, and two from then on (IANA tz, Europe/Vienna).
 *
 * <pre>
 * lesson 1 comes out Monday 2026-03-02 16:00, lesson 2 Monday 2026-03-09 16:00
 *
 *    when              who      what                        hours since    week of   hour in Vienna
 *  1 Mon 03-02 16:30   Anna     1 sheet.pdf  complete        0             03-02     Mon 17
 *  2 Mon 03-02 16:40   Anna     1 line.mid   complete        0             03-02     Mon 17
 *  3 Tue 03-03 17:00   Bert     1 sheet.pdf  broken off     25             03-02     Tue 18
 *  4 Wed 03-04 09:00   visitor  1 sheet.pdf  complete       41             03-02     Wed 10
 *    Wed 03-04 09:00   the same once more: counted nowhere; a robot: counted for itself, at 41 hours
 *  5 Mon 03-09 16:10   Anna     2 sheet.pdf  complete        0             03-09     Mon 17
 *  6 Tue 03-10 20:00   Cara     2 sheet.pdf  complete       28             03-09     Tue 21
 *  7 Wed 03-11 08:00   Bert     1 sheet.pdf  handed over   208             03-09     Wed 09
 *  8 Sun 03-29 22:30   Cara     1 sheet.pdf  complete      654             03-30     Mon 00
 * </pre>
 */
public final class Story {
    public static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    public static final SeriesId SERIES = new SeriesId("series0000000001");
    public static final StatisticsScope WHOLE = new StatisticsScope.OfSeries(SERIES);
    private static final EmailAddress CARA = new EmailAddress("c.reader@example.org");
    private static final ReleasedFile SHEET = file(FIRST, "sheet.pdf", 1000);
    private static final ReleasedFile MIDI = file(FIRST, "line.mid", 50);
    private static final ReleasedFile OTHER = file(SECOND, "sheet.pdf", 900);

    public final Audience audience;
    public final StudentId anna;
    public final StudentId bert;
    public final StudentId cara;

    public Story(Database database) {
        audience = new Audience(database);
        series(audience);
        anna = audience.student(ANNA);
        bert = audience.student(BERT);
        cara = audience.student(CARA);
    }

    /** The series with both lessons, before anybody takes anything. */
    public static void series(Audience audience) {
        EducatorId educator = TrialEducators.create(
                        audience.database.jdbi(), audience.clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        audience.database.jdbi().useHandle(handle -> {
            handle.execute(
                    "insert into series (id, educator_id, slug, title, summary, zone, created_at)"
                            + " values (?, ?, 'low-tide', 'Low Tide', '', ?, ?)",
                    SERIES.value(),
                    educator.value(),
                    VIENNA.getId(),
                    Instants.toColumn(audience.clock.instant()));
            int number = 1;
            for (var lesson : List.of(FIRST, SECOND)) {
                var out = Instant.parse(number == 1 ? "2026-03-02T16:00:00Z" : "2026-03-09T16:00:00Z");
                handle.execute(
                        "insert into episode (id, series_id, number, slug, title, level, summary, published_at, created_at)"
                                + " values (?, ?, ?, ?, 'Lesson', 'beginner', '', ?, ?)",
                        lesson.value(),
                        SERIES.value(),
                        number,
                        "lesson-" + number,
                        Instants.toColumn(out),
                        Instants.toColumn(out));
                number++;
            }
        });
    }

    /** Downloads 1 to 4. */
    public void firstWeek() {
        at("2026-03-02T16:30:00Z").take(SHEET, new Requester.Known(anna));
        at("2026-03-02T16:40:00Z").take(MIDI, new Requester.Known(anna));
        var broken = at("2026-03-03T17:00:00Z").downloads.begin(whole(SHEET, new Requester.Known(bert)));
        audience.downloads.brokenOff(broken.id(), ByteSpan.of(0, 400));
        at("2026-03-04T09:00:00Z").take(SHEET, VISITOR);
        audience.take(SHEET, VISITOR);
        audience.take(SHEET, ROBOT);
    }

    /** Downloads 5 to 7. */
    public void secondWeek() {
        at("2026-03-09T16:10:00Z").take(OTHER, new Requester.Known(anna));
        at("2026-03-10T20:00:00Z").take(OTHER, new Requester.Known(cara));
        var handed = at("2026-03-11T08:00:00Z").downloads.begin(whole(SHEET, new Requester.Known(bert)));
        audience.downloads.handedOver(handed.id());
        audience.downloads.settle();
    }

    /** Download 8. */
    public void lastWeek() {
        at("2026-03-29T22:30:00Z").take(SHEET, new Requester.Known(cara));
    }

    public void all() {
        firstWeek();
        secondWeek();
        lastWeek();
    }

    public Audience at(String instant) {
        audience.clock.set(instant);
        return audience;
    }
}
