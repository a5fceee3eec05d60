package groundbass.audience.statistics;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.ROBOT;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Audience.VISITOR;
import static groundbass.audience.Audience.file;
import static groundbass.audience.Audience.whole;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.Story;
import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadId;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.download.DownloadState;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.student.StudentId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** All numbers are counted by hand from the little story that {@link #tell} tells. */
class StatisticsTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final ReleasedFile SHEET = file(FIRST, "sheet.pdf", 1000);
    private static final ReleasedFile MIDI = file(FIRST, "line.mid", 50);
    private static final ReleasedFile OTHER = file(SECOND, "sheet.pdf", 900);

    private static final Weeks SPRING = Weeks.until(LocalDate.of(2026, 4, 1), 6, VIENNA);

    private static final StatisticsScope BOTH = new StatisticsScope.OfSeries(Story.SERIES);

    private StudentId anna;
    private StudentId bert;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void countsStudentsDownloadsAndFilesOfEachEpisode(Database database) {
        try (database) {
            Audience audience = tell(database);
            var uses = audience.statistics.ofEpisodes(List.of(SECOND, FIRST));

            assertThat(uses.get(1))
                    .isEqualTo(new EpisodeUse(
                            FIRST,
                            2,
                            1,
                            new DownloadCounts(3, 1, 1, 0),
                            1,
                            List.of(
                                    new FileUse("line.mid", new DownloadCounts(1, 0, 0, 0)),
                                    new FileUse("sheet.pdf", new DownloadCounts(2, 1, 1, 0)))));
            assertThat(uses.get(0))
                    .isEqualTo(new EpisodeUse(
                            SECOND,
                            1,
                            0,
                            new DownloadCounts(0, 0, 0, 1),
                            0,
                            List.of(new FileUse("sheet.pdf", new DownloadCounts(0, 0, 0, 1)))));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEpisodeNobodyTookHasZeros(Database database) {
        try (database) {
            var audience = new Audience(database);
            assertThat(audience.statistics.ofEpisode(FIRST))
                    .isEqualTo(new EpisodeUse(FIRST, 0, 0, DownloadCounts.NONE, 0, List.of()));
            assertThat(audience.statistics.ofEpisodes(List.of())).isEmpty();
            assertThat(audience.statistics.byWeek(BOTH, SPRING)).isEmpty();
            assertThat(audience.statistics.byWeek(new StatisticsScope.OfLesson(FIRST), SPRING))
                    .isEmpty();
            assertThat(audience.statistics.students(List.of(), 0, 10)).isEmpty();
            assertThat(audience.statistics.students(List.of(Story.SERIES), 0, 10))
                    .isEmpty();
            assertThat(audience.statistics.latest(FIRST, 10)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void weeksFollowTheEducatorsCalendar(Database database) {
        try (database) {
            Audience audience = tell(database);
            // Sunday 2026-03-29, 22:30 UTC is Monday, 00:30 in Vienna: summer time began that night (IANA tz,
            // Europe/Vienna)
            assertThat(audience.statistics.byWeek(BOTH, SPRING))
                    .containsExactly(
                            new WeekUse(LocalDate.of(2026, 3, 2), 2, new DownloadCounts(3, 1, 0, 0)),
                            new WeekUse(LocalDate.of(2026, 3, 23), 1, new DownloadCounts(0, 0, 1, 0)),
                            new WeekUse(LocalDate.of(2026, 3, 30), 1, new DownloadCounts(0, 0, 0, 1)));
            var utc = Weeks.until(LocalDate.of(2026, 4, 1), 6, ZoneId.of("UTC"));
            assertThat(audience.statistics.byWeek(BOTH, utc))
                    .extracting(week -> week.monday() + " " + week.downloads().all())
                    .containsExactly("2026-03-02 4", "2026-03-23 2");
            assertThat(audience.statistics.byWeek(BOTH, new Weeks(LocalDate.of(2026, 3, 23), 1, VIENNA)))
                    .extracting(WeekUse::monday)
                    .containsExactly(LocalDate.of(2026, 3, 23));
            assertThat(audience.statistics.byWeek(new StatisticsScope.OfLesson(SECOND), SPRING))
                    .extracting(WeekUse::monday)
                    .containsExactly(LocalDate.of(2026, 3, 30));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void showsWhatEachStudentTookAndWhen(Database database) {
        try (database) {
            Audience audience = tell(database);
            assertThat(audience.statistics.ofStudent(anna))
                    .extracting(download -> download.file().name() + " " + download.startedAt())
                    .containsExactly(
                            "sheet.pdf 2026-03-29T22:30:00Z",
                            "line.mid 2026-03-02T10:05:00Z",
                            "sheet.pdf 2026-03-02T10:00:00Z");
            var students = audience.statistics.students(List.of(Story.SERIES), 0, 10);
            assertThat(students)
                    .extracting(use -> use.student().email() + " " + use.downloads() + " of " + use.episodes())
                    .containsExactly(ANNA + " 3 of 2", BERT + " 2 of 1");
            assertThat(audience.statistics.students(List.of(Story.SERIES), 1, 10))
                    .containsExactly(students.get(1));
            assertThat(audience.statistics.students(List.of(Story.SERIES), 0, 1))
                    .containsExactly(students.get(0));
            assertThat(audience.statistics.students(List.of(Story.SERIES), 2, 10))
                    .isEmpty();
            assertThat(audience.statistics.latest(FIRST, 2))
                    .extracting(taken -> taken.download().startedAt().toString())
                    .containsExactly("2026-03-25T08:00:00Z", "2026-03-04T09:00:00Z");
            assertThat(students.get(1).first()).isEqualTo("2026-03-03T18:00:00Z");
            assertThat(students.get(1).last()).isEqualTo("2026-03-25T08:00:00Z");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void writesEpisodesForASpreadsheet(Database database) {
        try (database) {
            Audience audience = tell(database);
            var table = new StringBuilder();
            var csv = new StatisticsCsv(
                    Locale.ENGLISH,
                    episode -> VIENNA,
                    episode -> episode.equals(FIRST) ? "=One, \"two\"" : "Two",
                    table);
            csv.episodes();
            audience.statistics.ofEpisodes(List.of(FIRST, SECOND)).forEach(csv::episode);
            assertThat(table)
                    .hasToString(String.join(
                            "\r\n",
                            "Lesson,File,Students,Downloads,Complete,Broken off,End not known,Not signed in",
                            "\"'=One, \"\"two\"\"\",all files,2,5,3,1,1,1",
                            "\"'=One, \"\"two\"\"\",line.mid,,1,1,0,0,",
                            "\"'=One, \"\"two\"\"\",sheet.pdf,,4,2,1,1,",
                            "Two,all files,1,1,0,0,1,0",
                            "Two,sheet.pdf,,1,0,0,1,",
                            ""));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void writesDownloadsForASpreadsheet(Database database) {
        try (database) {
            Audience audience = tell(database);
            var table = new StringBuilder();
            var csv = new StatisticsCsv(Locale.GERMAN, episode -> VIENNA, episode -> "Folge", table);
            csv.downloads();
            List.of(FIRST, SECOND).forEach(episode -> audience.statistics.taken(episode, csv::taken));
            assertThat(table)
                    .hasToString(String.join(
                            "\r\n",
                            "Lernende Person,Wann,Lektion,Ausgabe,Datei,Stand,Gesendete Bytes",
                            ANNA + ",2026-03-02T11:00:00+01:00,Folge,release000000001,sheet.pdf,vollständig,1000",
                            ANNA + ",2026-03-02T11:05:00+01:00,Folge,release000000001,line.mid,vollständig,50",
                            BERT + ",2026-03-03T19:00:00+01:00,Folge,release000000001,sheet.pdf,abgebrochen,400",
                            "nicht angemeldet,2026-03-04T10:00:00+01:00,Folge,release000000001,sheet.pdf,vollständig,1000",
                            BERT + ",2026-03-25T09:00:00+01:00,Folge,release000000001,sheet.pdf,übergeben,0",
                            ANNA + ",2026-03-30T00:30:00+02:00,Folge,release000000001,sheet.pdf,unterwegs,0",
                            ""));
        }
    }

    /** Longer than what is read at once, so that pieces are seen to join without a gap. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void tellsLongListsInPiecesWithoutLosingAny(Database database) {
        try (database) {
            var audience = new Audience(database);
            Story.series(audience);
            anna = audience.student(ANNA);
            int many = 2345;
            database.jdbi().useTransaction(handle -> {
                for (int i = 0; i < many; i++) {
                    var at = audience.clock.instant().plusSeconds(i / 3); // three share an instant
                    var student = i == 0 ? Optional.of(anna) : Optional.<StudentId>empty();
                    DownloadRows.insert(
                            handle,
                            new Download(
                                    DownloadId.next(at),
                                    SHEET,
                                    student,
                                    at,
                                    at,
                                    DownloadState.COMPLETE,
                                    1000,
                                    false,
                                    false,
                                    false));
                }
            });
            var told = new ArrayList<AddressedDownload>();
            audience.statistics.taken(FIRST, told::add);
            assertThat(told).hasSize(many).doesNotHaveDuplicates();
            assertThat(told).isSortedAccordingTo(Comparator.comparing(taken -> taken.download()
                    .startedAt()));
            told.clear();
            audience.statistics.takenByStudents(List.of(Story.SERIES), told::add);
            assertThat(told).hasSize(1);
            assertThat(audience.statistics.students(List.of(Story.SERIES), 0, 10))
                    .hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatAnEducatorTakesAtTheDeskIsRecordedAndNotCounted(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.take(SHEET, new Requester.AtTheDesk());
            audience.take(SHEET, new Requester.AtTheDesk());
            assertThat(audience.all()).hasSize(2).allMatch(Download::own).noneMatch(Download::counts);
            assertThat(audience.statistics.ofEpisode(FIRST))
                    .isEqualTo(new EpisodeUse(FIRST, 0, 0, DownloadCounts.NONE, 0, List.of()));
            assertThat(audience.statistics.byWeek(new StatisticsScope.OfLesson(FIRST), SPRING))
                    .isEmpty();
            audience.statistics.taken(FIRST, taken -> assertThat(taken).isNull());
        }
    }

    /** Two students, one visitor who asks twice, one robot; first and second episode. */
    private Audience tell(Database database) {
        var audience = new Audience(database);
        Story.series(audience);
        anna = audience.student(ANNA);
        bert = audience.student(BERT);
        audience.take(SHEET, new Requester.Known(anna));
        audience.clock.set("2026-03-02T10:05:00Z");
        audience.take(MIDI, new Requester.Known(anna));
        audience.clock.set("2026-03-03T18:00:00Z");
        var broken = audience.downloads.begin(whole(SHEET, new Requester.Known(bert)));
        audience.downloads.brokenOff(broken.id(), ByteSpan.of(0, 400));
        audience.clock.set("2026-03-04T09:00:00Z");
        audience.take(SHEET, VISITOR);
        audience.take(SHEET, VISITOR);
        audience.take(SHEET, ROBOT);
        audience.clock.set("2026-03-25T08:00:00Z");
        var handed = audience.downloads.begin(whole(SHEET, new Requester.Known(bert)));
        audience.downloads.handedOver(handed.id());
        audience.clock.set("2026-03-29T22:30:00Z");
        audience.downloads.begin(whole(OTHER, new Requester.Known(anna)));
        return audience;
    }
}
