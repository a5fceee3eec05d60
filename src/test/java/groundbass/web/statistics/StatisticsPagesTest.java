package groundbass.web.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.rollup.RollUps;
import groundbass.audience.student.Person;
import groundbass.store.AskedStatements;
import groundbass.text.Messages;
import groundbass.web.Html;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All figures are counted by hand from the {@link Story}. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StatisticsPagesTest {
    private Story story;
    private Cookie educator;

    @BeforeAll
    void open() {
        story = new Story();
        educator = story.site.atTheDesk();
    }

    @AfterAll
    void close() {
        story.close();
    }

    @Test
    void tellsEachLessonInNumbers() {
        assertThat(text("/desk/statistics"))
                .contains("1 =Rope & <Tide> 2 4 3 1 1 2 ")
                .contains("2 Night Ferry 1 1 1 0 0 1 ")
                .doesNotContain("Theirs");
    }

    @Test
    void aShortListHasOnePageAndTheRuleOfCountingStandsOnIt() {
        assertThat(page("/desk/statistics"))
                .doesNotContain("class=\"paging\"")
                .isEqualTo(page("/desk/statistics?page=1"));
        assertThat(text("/desk/statistics"))
                .contains("Left out are requests of robots, what an educator takes while signed in to the desk");
    }

    @Test
    void drawsTheWeeksOfTheSeriesOwnCalendar() {
        var page = page("/desk/statistics");
        assertThat(words(page))
                .contains("Week of Jan 26, 2026: one download, one student")
                .contains("Week of Feb 2, 2026: 3 downloads, 2 students")
                .contains("Week of Feb 9, 2026: one download, one student")
                .contains("Feb 9, 2026 1 1 1 0 Feb 2, 2026 2 3 2 1 Jan 26, 2026 1 1 1 0 ");
        // three of the four that the full height stands for: two complete, one broken off
        assertThat(page)
                .contains("<rect class=\"chart-complete\" width=\"7\" x=\"100\" y=\"500\" height=\"500\">")
                .contains("<rect class=\"chart-broken\" width=\"7\" x=\"100\" y=\"250\" height=\"250\">");
    }

    @Test
    void tellsOfALessonWhichFilesWentToWhomAndWhen() {
        assertThat(text("/desk/statistics/episodes/" + story.rope.id()))
                .contains(
                        "4 downloads by 2 students who signed in and one visitor who did not: 3 complete, 1 broken off.")
                .contains("One request of a robot is in none of these numbers.")
                .contains("line.mid 1 1 0 0 sheet.pdf 3 2 1 0 ")
                .contains("February 4, 2026, 10:00 AM CET not signed in sheet.pdf complete"
                        + " February 3, 2026, 7:00 PM CET b.reader@demo.invalid sheet.pdf broken off"
                        + " February 2, 2026, 12:30 AM CET a.reader@example.org line.mid complete"
                        + " February 1, 2026, 11:30 PM CET a.reader@example.org sheet.pdf complete ");
    }

    /**
     * Both lessons came out on Monday, 2026-02-02, at 09:00 UTC; the story was told until nine days after that. Rope: what
     * was taken before it was out is of its first hour (2 by Anna), then Bert after 33 hours and a visitor after 48. Ferry:
     * Bert after 191 hours, which is after its first week.
     */
    @Test
    void tellsLessonsAtEqualAge() {
        var path = "/desk/statistics/series/" + story.rope.series();
        assertThat(text(path))
                .contains("1 =Rope & <Tide> 2 4 – 1 2 – 2 Night Ferry 0 0 – 0 0 – ")
                .contains("No week is summed up yet.")
                .contains("Demo figures");
        assertThat(page(path)).contains("2 lessons at equal age.").doesNotContain("Theirs");
    }

    @Test
    void tellsWhoComesBackAndWhenOnceWeeksAreSummedUp() {
        try (var later = new Story()) {
            later.site.clock().set("2026-02-19T09:00:00Z");
            new RollUps(later.site.groundbass().database().jdbi(), later.site.clock()).pass();
            String path = "/desk/statistics/series/" + later.rope.series();
            String page = later.site
                    .browser()
                    .cookie(later.site.atTheDesk())
                    .get(path)
                    .asString();
            // Anna and Bert began in the week of 02-02, Bert came back; Anna's first, before the lesson was out, is of
            // no week
            assertThat(words(page))
                    .contains("Began in the week of +0 +1 Feb 2, 2026 2 1 ")
                    .contains("in one week 2 100 of 100 in 2 weeks 1 50 of 100 in 4 weeks 0 0 of 100")
                    .contains("The most is downloaded on ");
            assertThat(page)
                    .contains(
                            ": one download<",
                            ": one student, 50 of 100<",
                            "by the week in which they began, for one week")
                    .doesNotContainPattern("\\b1 (downloads|students|weeks)");
            assertThat(Html.mistakes(page)).isEmpty();
            var csv = later.site.browser().cookie(later.site.atTheDesk());
            assertThat(csv.get(path + "/cohorts.csv").asString())
                    .isEqualTo("Began in the week of,Week of,Students\r\n2026-02-02,2026-02-02,2\r\n"
                            + "2026-02-02,2026-02-09,1\r\n");
            assertThat(later.site
                            .browser()
                            .cookie(later.site.atTheDesk())
                            .get(path + "/clock.csv")
                            .asString())
                    .isEqualTo("Weekday (1 is Monday),Hour,Downloads\r\n1,0,1\r\n2,9,1\r\n2,19,1\r\n3,10,1\r\n");
            assertThat(later.site
                            .browser()
                            .cookie(later.site.atTheDesk())
                            .get(path + "/ages.csv")
                            .asString())
                    .contains("Low Tide 2: Night Ferry (demo figures),1 day,0,0")
                    .contains("Low Tide 1: =Rope & <Tide> (demo figures),7 days,2,4")
                    .doesNotContain("28 days");
        }
    }

    /** A hundred lessons at once, as in the table of all lessons. */
    @Test
    void aLongSeriesIsReadInPieces() {
        try (var longer = new Story()) {
            longer.further(99);
            var browser = longer.site.browser().cookie(longer.site.atTheDesk());
            var rows = new ArrayList<String>();
            var asked =
                    AskedStatements.during(longer.site.groundbass().database().jdbi(), () -> browser.get(
                                    "/desk/statistics/series/" + longer.rope.series() + "/ages.csv")
                            .asString()
                            .lines()
                            .filter(row -> row.contains(",1 day,"))
                            .forEach(rows::add));
            assertThat(asked)
                    .filteredOn(statement -> statement.contains("from taken_hour"))
                    .hasSize(2);
            assertThat(rows).hasSize(2 + 99).doesNotHaveDuplicates();
            assertThat(rows.get(99)).contains("Low Tide 100: Further 98");
            assertThat(rows.get(100)).contains("Low Tide 101: Further 99");
        }
    }

    /** Numbers of things as both languages have them, from memory. */
    @Test
    void oneOfAThingIsSaidInTheSingularAndNoneIsTold() {
        var english = Messages.of(Locale.ENGLISH);
        assertThat(english.say("statistics.ages.told", 1, "Rope", 3)).startsWith("One lesson at equal age.");
        assertThat(english.say("statistics.ages.latest", 1)).startsWith("The one lesson so far;");
        assertThat(english.say("statistics.ages.latest", 2)).startsWith("The last 2 lessons;");
        assertThat(Stream.of(0, 1, 2).map(taken -> english.say("statistics.ages.column", "Rope", taken)))
                .containsExactly("Rope: no downloads", "Rope: one download", "Rope: 2 downloads");
        var german = Messages.of(Locale.GERMAN);
        assertThat(german.say("statistics.ages.told", 1, "Seil", 3)).startsWith("Eine Lektion gleichen Alters.");
        assertThat(german.say("statistics.ages.latest", 1)).startsWith("Die bisher einzige Lektion;");
        assertThat(german.say("statistics.cohorts.told", 1)).endsWith("für eine Woche");
        assertThat(Stream.of(0, 1, 2).map(back -> german.say("statistics.cohorts.square", "9. Feb.", 1, back, 50)))
                .containsExactly(
                        "Begonnen in der Woche vom 9. Feb., 1 Woche später: niemand, 50 von 100",
                        "Begonnen in der Woche vom 9. Feb., 1 Woche später: eine Person, 50 von 100",
                        "Begonnen in der Woche vom 9. Feb., 1 Woche später: 2 Lernende, 50 von 100");
        assertThat(german.say("statistics.clock.square", "Montag 9:00", 1)).isEqualTo("Montag 9:00: ein Download");
        assertThat(german.say("statistics.clock.best", "Montag 9:00", 1)).contains("wird am Montag 9:00 geholt");
    }

    @Test
    void listsWhoTookSomethingOfTheseLessonsOnly() {
        assertThat(text("/desk/statistics/students"))
                .contains("b.reader@demo.invalid 2 2 February 3, 2026 February 10, 2026"
                        + " a.reader@example.org 1 2 February 1, 2026 February 1, 2026 ")
                .doesNotContain("c.reader@example.org");
    }

    @Test
    void tellsOfAStudentWhatTheyTookOfTheseLessonsAndWhen() {
        assertThat(text("/desk/statistics/students/" + story.anna))
                .contains("February 2, 2026, 12:30 AM CET =Rope & <Tide> Low Tide line.mid complete"
                        + " February 1, 2026, 11:30 PM CET =Rope & <Tide> Low Tide sheet.pdf complete ")
                .doesNotContain("Theirs");
    }

    @Test
    void speaksTheReadersLanguage() {
        var page = story.site.browser().cookie(educator).header("Accept-Language", "de");
        assertThat(words(
                        page.get("/desk/statistics/episodes/" + story.rope.id()).asString()))
                .contains("4 Downloads von 2 angemeldeten Personen und einem Besuch ohne Anmeldung")
                .contains("3. Februar 2026, 19:00 MEZ b.reader@demo.invalid sheet.pdf abgebrochen");
    }

    @Test
    void marksInventedFigures() {
        assertThat(text("/desk/statistics")).contains("Demo figures");
        assertThat(text("/desk/statistics/students/" + story.bert)).contains("Demo figures");
        assertThat(text("/desk/statistics/students/" + story.anna)).doesNotContain("Demo figures");
        assertThat(csv("/desk/statistics/episodes.csv").asString()).contains("(demo figures)");
    }

    /** RFC 4180: CRLF, quotes doubled; a title that a spreadsheet would run gets an apostrophe. */
    @Test
    void givesEachLessonAsATable() {
        var answer = csv("/desk/statistics/episodes.csv");
        assertThat(answer.contentType()).isEqualTo("text/csv; charset=utf-8; header=present");
        assertThat(answer.header("Content-Disposition")).isEqualTo("attachment; filename=\"episodes.csv\"");
        assertThat(answer.asString())
                .isEqualTo(String.join(
                        "\r\n",
                        "Lesson,File,Students,Downloads,Complete,Broken off,End not known,Not signed in",
                        "Low Tide 1: =Rope & <Tide> (demo figures),all files,2,4,3,1,0,1",
                        "Low Tide 1: =Rope & <Tide> (demo figures),line.mid,,1,1,0,0,",
                        "Low Tide 1: =Rope & <Tide> (demo figures),sheet.pdf,,3,2,1,0,",
                        "Low Tide 2: Night Ferry (demo figures),all files,1,1,1,0,0,0",
                        "Low Tide 2: Night Ferry (demo figures),bundle.zip,,1,1,0,0,",
                        ""));
    }

    @Test
    void givesWhatStudentsTookAsATable() {
        assertThat(csv("/desk/statistics/students.csv")
                        .asString()
                        .lines()
                        .map(line -> line.split(","))
                        .map(cells -> cells[0] + " " + cells[1] + " " + cells[4] + " " + cells[5]))
                .containsExactly(
                        "Student When File State",
                        "a.reader@example.org 2026-02-01T23:30:00+01:00 sheet.pdf complete",
                        "a.reader@example.org 2026-02-02T00:30:00+01:00 line.mid complete",
                        "b.reader@demo.invalid 2026-02-03T19:00:00+01:00 sheet.pdf broken off",
                        "b.reader@demo.invalid 2026-02-10T09:00:00+01:00 bundle.zip complete");
    }

    @Test
    void givesOneLessonAndOneStudentAsTables() {
        var lesson = csv("/desk/statistics/episodes/" + story.rope.id() + "/downloads.csv");
        assertThat(lesson.asString().lines()).hasSize(1 + 4);
        assertThat(lesson.header("Content-Disposition")).contains("low-tide-rope-tide.csv");
        assertThat(csv("/desk/statistics/students/" + story.anna + "/downloads.csv")
                        .asString()
                        .lines())
                .hasSize(1 + 2);
    }

    /**
     * Of rope, on its first day: the visitor opens and plays it; 2 downloads. Within seven days: Anna too, who plays all of it and
     * repeats two bars. 28 days are not over.
     */
    @Test
    void tellsOfALessonWhoCameAndWhatTheyPlayed() {
        var path = "/desk/statistics/episodes/" + story.rope.id();
        assertThat(text(path))
                .contains("Opened the lesson 2 1 2 – Signed in on the way 0 0 0 – Downloads 4 2 4 – Played 2 1 2 –"
                        + " Played all of it 1 0 1 – Repeated a passage 1 0 1 – Followed a course 1 0 1 – ")
                .contains("https://courses.example/slap 1 ");
        assertThat(csv(path + "/visits.csv").asString().lines())
                .hasSize(1 + 6 + 1)
                .contains(
                        "Low Tide 1: =Rope & <Tide> (demo figures),Opened the lesson,1,2,2,2",
                        "Low Tide 1: =Rope & <Tide> (demo figures),https://courses.example/slap,,,,1");
        assertThat(csv(path + "/played.csv").asString())
                .startsWith("Lesson,Line,At least,Visitors\r\n")
                .contains("line,0,2", "line,1,2", "line,2,1", "line,4,1");
        assertThat(csv(path + "/repeated.csv").asString())
                .isEqualTo(
                        "Lesson,Release,Line,Bar,Visitors\r\nLow Tide 1: =Rope & <Tide> (demo figures),1,line,3,1\r\n"
                                + "Low Tide 1: =Rope & <Tide> (demo figures),1,line,4,1\r\n");
    }

    /**
     * Two lessons of seven days, both with slap, one with fingers too. Slap: (2 + 0) / 2 students, views and plays a lesson; of 2
     * who played one played all and repeated.
     */
    @Test
    void tellsWhatStudentsTookFinishedAndRepeated() {
        assertThat(text("/desk/statistics/next"))
                .contains("2 lessons are looked at here, each at an age of 7 days.")
                .contains("Taken by the most students: Slap, by one a lesson.")
                .contains("Most often played to the end: Slap, by 50 of 100 who played.")
                .contains(" Slap 1 1 1 50 50 2 Fingerstyle 0 0 0 – – 1 ")
                .contains(" Beginner 1 1 1 50 50 2 ");
        var series = "/desk/statistics/series/" + story.rope.series() + "/next";
        assertThat(text(series)).contains(" Slap 1 1 1 50 50 2 ");
        assertThat(csv(series + ".csv").asString().lines()).hasSize(1 + 2 + 1).contains("Slap,2,1,1,1,50,50");
        assertThat(csv("/desk/statistics/next.csv").asString().lines()).hasSize(1 + 2 + 1);
    }

    Stream<String> ofOthers() {
        return Stream.of(
                "/desk/statistics/episodes/" + story.strangers.id() + "/visits.csv",
                "/desk/statistics/episodes/" + story.strangers.id() + "/played.csv",
                "/desk/statistics/episodes/" + story.strangers.id() + "/repeated.csv",
                "/desk/statistics/series/" + story.strangers.series() + "/next",
                "/desk/statistics/series/" + story.strangers.series() + "/next.csv",
                "/desk/statistics/episodes/" + story.strangers.id(),
                "/desk/statistics/episodes/" + story.strangers.id() + "/downloads.csv",
                "/desk/statistics?page=2",
                "/desk/statistics?page=none",
                "/desk/statistics/students?page=2",
                "/desk/statistics/students?page=0",
                "/desk/statistics/episodes/none",
                "/desk/statistics/series/none",
                "/desk/statistics/series/" + story.strangers.series(),
                "/desk/statistics/series/" + story.strangers.series() + "/ages.csv",
                "/desk/statistics/series/" + story.strangers.series() + "/cohorts.csv",
                "/desk/statistics/series/" + story.strangers.series() + "/clock.csv",
                "/desk/statistics/students/" + story.carl,
                "/desk/statistics/students/" + story.carl + "/downloads.csv",
                "/desk/statistics/students/none");
    }

    @ParameterizedTest
    @MethodSource("ofOthers")
    void whatIsSomebodyElsesIsNotThere(String path) {
        story.site.browser().cookie(educator).get(path).then().statusCode(404);
    }

    Stream<String> pages() {
        return Stream.of(
                "/desk/statistics",
                "/desk/statistics/episodes/" + story.rope.id(),
                "/desk/statistics/series/" + story.rope.series(),
                "/desk/statistics/next",
                "/desk/statistics/students",
                "/desk/statistics/students/" + story.anna);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void pagesConformToTheHtmlStandardAndAreKeptNowhere(String path) {
        var answer = story.site.browser().cookie(educator).get(path);
        assertThat(Html.mistakes(answer.asString())).isEmpty();
        assertThat(answer.header("Cache-Control")).isEqualTo("no-store");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void onlyTheEducatorMayRead(String path) {
        story.site.browser().get(path).then().statusCode(303);
        var student = story.site.signedIn(new Person.OfStudent(story.anna));
        assertThat(story.site.browser().cookie(student).get(path).statusCode()).isNotEqualTo(200);
    }

    private Response csv(String path) {
        return story.site.program().cookie(educator).get(path);
    }

    private String page(String path) {
        var answer = story.site.browser().cookie(educator).get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        return answer.asString();
    }

    private String text(String path) {
        return words(page(path));
    }

    /** What a reader reads, with single spaces. */
    private static String words(String page) {
        return page.replaceAll("<[^>]+>", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&")
                .replaceAll("[\\s\u00a0\u202f]+", " ");
    }
}
