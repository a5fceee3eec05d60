package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.visit.CourseClicks;
import groundbass.audience.visit.LoopedBar;
import groundbass.audience.visit.PlayedPart;
import groundbass.audience.visit.VisitKind;
import groundbass.audience.visit.VisitsOfLesson;
import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import groundbass.text.Messages;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/**
 * Statistics as tables for a spreadsheet (RFC 4180, to be sent as UTF-8), in the words of the page and in the educator's
 * language, times in the zone of the episode's series with their offset. Writes each row as it is told.
 */
public final class StatisticsCsv {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX", Locale.ROOT);

    private final Messages words;
    private final Function<EpisodeId, ZoneId> zone;
    private final Function<EpisodeId, String> title;
    private final Csv csv;

    /**
     * @param zone in which an episode's hours are told
     * @param title what to call an episode
     * @param out is written to, and not closed
     */
    public StatisticsCsv(
            Locale locale, Function<EpisodeId, ZoneId> zone, Function<EpisodeId, String> title, Appendable out) {
        this.words = Messages.of(locale);
        this.zone = zone;
        this.title = title;
        this.csv = new Csv(out);
    }

    /** The columns of {@link #episode}. */
    public void episodes() {
        headings("lesson", "file", "students", "downloads", "complete", "broken", "unknown", "nobody");
    }

    /** A row over all files of an episode, then a row for each file (whose students are not told apart). */
    public void episode(EpisodeUse use) {
        String name = title.apply(use.episode());
        String all = words.say("statistics.csv.allfiles");
        row(name, all, Long.toString(use.students()), use.downloads(), Long.toString(use.anonymous()));
        use.files().forEach(file -> row(name, file.name(), "", file.downloads(), ""));
    }

    /** The columns of {@link #taken}. */
    public void downloads() {
        headings("student", "when", "lesson", "release", "file", "state", "bytes");
    }

    /** A row for one download: who, when, what, and how it ended. */
    public void taken(AddressedDownload taken) {
        Download download = taken.download();
        csv.row(List.of(
                taken.student().map(EmailAddress::value).orElseGet(() -> words.say("audience.csv.nobody")),
                time(download),
                title.apply(download.file().episode()),
                download.file().release(),
                download.file().name(),
                words.say(download.state().key()),
                Long.toString(download.bytesSent())));
    }

    /** The columns of {@link #age}. */
    public void ages() {
        headings("lesson", "age", "students", "downloads");
    }

    /** A row for one lesson at one age. @param hours how old */
    public void age(EpisodeId episode, int hours, AtAge taken) {
        csv.row(List.of(
                title.apply(episode),
                words.say("statistics.age.days", hours / LessonAges.DAY),
                Long.toString(taken.students()),
                Long.toString(taken.downloads())));
    }

    /** A row for each week of each cohort, under its columns. */
    public void cohorts(List<Cohort> cohorts) {
        headings("joined", "week", "students");
        for (var cohort : cohorts) {
            for (int after = 0; after < cohort.students().size(); after++) {
                csv.row(List.of(
                        cohort.joined().toString(),
                        cohort.joined().plusWeeks(after).toString(),
                        cohort.students().get(after).toString()));
            }
        }
    }

    /** A row for each hour of the week in which anything was taken, under its columns; Monday is 1. */
    public void clock(List<HourUse> hours) {
        headings("weekday", "hour", "downloads");
        hours.forEach(hour -> csv.row(List.of(
                Integer.toString(hour.weekday()),
                Integer.toString(hour.localHour()),
                Long.toString(hour.downloads()))));
    }

    /** The columns of {@link #visits(VisitsOfLesson)} and {@link #clicks}. */
    public void visits() {
        headings("lesson", "visit", "ages.day", "ages.week", "ages.month", "inall");
    }

    /** A row for each thing that visitors of a lesson did. */
    public void visits(VisitsOfLesson visits) {
        for (var kind : VisitKind.values()) {
            var numbers = visits.of(kind);
            csv.row(List.of(
                    title.apply(visits.lesson()),
                    words.say(kind.key()),
                    Long.toString(numbers.firstDay()),
                    Long.toString(numbers.firstWeek()),
                    Long.toString(numbers.firstMonth()),
                    Long.toString(numbers.inAll())));
        }
    }

    /** A row for one course that a lesson leads to, at no age but in all. */
    public void clicks(EpisodeId lesson, CourseClicks clicks) {
        csv.row(List.of(title.apply(lesson), clicks.address(), "", "", "", Long.toString(clicks.visitors())));
    }

    /** The columns of {@link #played(EpisodeId, PlayedPart)}. */
    public void played() {
        headings("lesson", "line", "quarters", "visitors");
    }

    /** A row for one part of a line at least. */
    public void played(EpisodeId lesson, PlayedPart part) {
        csv.row(List.of(
                title.apply(lesson), part.line(), Integer.toString(part.quarters()), Long.toString(part.visitors())));
    }

    /** The columns of {@link #repeated(EpisodeId, LoopedBar)}. */
    public void repeated() {
        headings("lesson", "release", "line", "bar", "visitors");
    }

    /** A row for one bar. */
    public void repeated(EpisodeId lesson, LoopedBar bar) {
        csv.row(List.of(
                title.apply(lesson),
                bar.release() == 0 ? "" : Integer.toString(bar.release()),
                bar.line(),
                Integer.toString(bar.bar()),
                Long.toString(bar.visitors())));
    }

    /** The columns of {@link #next(String, long...)}. */
    public void next() {
        headings("next.trait", "lessons", "visit.view", "students", "visit.play", "next.whole", "next.looped");
    }

    /** A row for the lessons with one trait. @param numbers under the other columns */
    public void next(String trait, long... numbers) {
        csv.row(Stream.concat(Stream.of(trait), LongStream.of(numbers).mapToObj(Long::toString))
                .toList());
    }

    private void headings(String... columns) {
        csv.row(Stream.of(columns)
                .map(column -> words.say("statistics." + column))
                .toList());
    }

    private void row(String episode, String file, String students, DownloadCounts counts, String nobody) {
        csv.row(List.of(
                episode,
                file,
                students,
                Long.toString(counts.all()),
                Long.toString(counts.complete()),
                Long.toString(counts.brokenOff()),
                Long.toString(counts.unknown()),
                nobody));
    }

    private String time(Download download) {
        return TIME.format(
                download.startedAt().atZone(zone.apply(download.file().episode())));
    }
}
