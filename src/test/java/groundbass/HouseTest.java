package groundbass;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The house as DEVELOPERS.md draws it: each room knows only rooms of the rows below its own, and inside a room the same
 * holds for its sub-rooms.
 */
@AnalyzeClasses(
        packages = "groundbass",
        importOptions = {ImportOption.DoNotIncludeTests.class, ImportOption.DoNotIncludePackageInfos.class})
class HouseTest {
    /** From the roof down; rooms of one row do not know one another. */
    private static final List<List<String>> ROWS = List.of(
            List.of("cli"),
            List.of("site"),
            List.of("web", "demo"),
            List.of("archive"),
            List.of("publishing", "backup"),
            List.of("release", "audience"),
            List.of("catalog", "post"),
            List.of("store", "effort"),
            List.of("lesson"),
            List.of("document"), // how a lesson names its notes is a word of the walkthrough
            List.of("intake"), // what our own files call a chord is what comes back
            List.of(
                    "engraving",
                    "walkthrough",
                    "script",
                    "midi",
                    "musicxml",
                    "plaintab",
                    "braille",
                    "sound",
                    "audio",
                    "comparison"),
            List.of("linetext", "checks", "listening"), // a sound is mastered by listening to it
            List.of("fingering", "analysis", "groove"), // remarks rest on where the hand is and what a note means
            List.of("writing", "performance", "remark"),
            List.of("score"), // a line names its key and chords, so theory lies under it
            List.of("theory"),
            List.of("text", "signal", "form", "identity"));

    /** The rows from this one on are pure functions of values. */
    private static final int PURE = 8;

    /** No more classes in a room than one reads through; beyond it a room has sub-rooms. */
    private static final int MOST_IN_A_ROOM = 32;

    /** Rooms of classes of one kind, which nobody reads through: each value of a line. */
    private static final Set<String> OF_ONE_KIND = Set.of("groundbass.score");

    /** A room's own classes, beside those of its sub-rooms. */
    private static final String FACE = "";

    /** The sub-rooms of the rooms that have some, from the roof down. */
    private static final Map<String, List<List<String>>> INSIDE = Map.ofEntries(
            Map.entry(
                    "web",
                    List.of(
                            List.of(FACE),
                            List.of("program"), // a recording that it takes is the one that the desk takes
                            List.of("desk", "student", "statistics"),
                            List.of("general"),
                            List.of("shell"),
                            List.of("view", "gate"),
                            List.of("answer"))),
            Map.entry("web.shell", List.of(List.of(FACE), List.of("limit", "log"))),
            Map.entry(
                    "web.student",
                    List.of(
                            List.of(FACE),
                            List.of("preview"),
                            List.of("file", "account", "news", "feed"),
                            List.of("lesson"),
                            List.of("visit"))),
            Map.entry(
                    "web.desk",
                    List.of(
                            List.of(FACE),
                            List.of(
                                    "editor",
                                    "sound",
                                    "notes",
                                    "walkthrough",
                                    "script",
                                    "takeout",
                                    "facts",
                                    "publish",
                                    "revision",
                                    "site",
                                    "people"),
                            List.of("room"),
                            List.of("line", "recording", "calendar", "account"),
                            List.of("access"))),
            Map.entry("publishing", List.of(List.of(FACE), List.of("preflight", "jobs"), List.of("address"))),
            Map.entry("release", List.of(List.of("find", "care", "request"), List.of(FACE), List.of("play", "zip"))),
            Map.entry(
                    "audience",
                    List.of(
                            List.of(FACE),
                            List.of("statistics"),
                            List.of("rollup", "visit"),
                            List.of("download"),
                            List.of("news", "question", "colleague"),
                            List.of("student"))),
            Map.entry(
                    "catalog",
                    List.of(
                            List.of("upload", "settings"),
                            List.of("episode"),
                            List.of("series"),
                            List.of("educator"),
                            List.of(FACE))),
            Map.entry(
                    "store",
                    List.of(List.of("bucket", "node"), List.of(FACE), List.of("fault", "migration", "temporary"))),
            Map.entry(
                    "engraving",
                    List.of(
                            List.of("svg", "pdf", "png"),
                            List.of("sheet"),
                            List.of("sign"),
                            List.of("sketch"),
                            List.of("spacing"),
                            List.of("options"),
                            List.of("mark"))),
            Map.entry("archive", List.of(List.of(FACE), List.of("file"))),
            Map.entry(
                    "checks",
                    List.of(
                            List.of(FACE),
                            List.of("level"),
                            List.of("hand", "slip"),
                            List.of("finding"),
                            List.of("kin"))),
            Map.entry("engraving.sign", List.of(List.of(FACE), List.of("curve", "around"), List.of("staff"))),
            Map.entry(
                    "linetext",
                    List.of(
                            List.of("edit"),
                            List.of(FACE),
                            List.of("print"),
                            List.of("assemble"),
                            List.of("read"),
                            List.of("typed"),
                            List.of("problem"),
                            List.of("source"))),
            Map.entry(
                    "script",
                    List.of(
                            List.of(FACE),
                            List.of("thread"),
                            List.of("checking", "reading", "grammar"),
                            List.of("claims", "lexicon"),
                            List.of("words", "captions"))),
            Map.entry("script.thread", List.of(List.of("talk"), List.of(FACE), List.of("whole"), List.of("stage"))),
            Map.entry("intake", List.of(List.of(FACE), List.of("xml", "smf"), List.of("draft"), List.of("notice"))),
            Map.entry("intake.xml", List.of(List.of(FACE), List.of("document"))),
            Map.entry(
                    "walkthrough",
                    List.of(List.of("event"), List.of(FACE), List.of("idea", "stretch"), List.of("words"))),
            Map.entry("sound", List.of(List.of("mix"), List.of("string", "drum", "keys"), List.of("unit"))));

    @ArchTest
    static void everyRoomKnowsOnlyRoomsBelow(JavaClasses house) {
        knowOnlyWhatIsBelow("groundbass", ROWS, house);
    }

    @ArchTest
    static void everySubRoomKnowsOnlySubRoomsBelow(JavaClasses house) {
        INSIDE.forEach((room, rows) -> knowOnlyWhatIsBelow("groundbass." + room, rows, house));
    }

    private static void knowOnlyWhatIsBelow(String roof, List<List<String>> rows, JavaClasses house) {
        for (int row = 0; row < rows.size(); row++) {
            for (String room : rows.get(row)) {
                noClasses()
                        .that()
                        .resideInAPackage(within(roof, room))
                        .should()
                        .dependOnClassesThat(resideInAnyPackage(closedTo(roof, rows, room, row)))
                        .because("\"" + room + "\" stands in row " + row + " of " + roof)
                        .check(house);
            }
        }
    }

    @ArchTest
    static void everyClassHasASubRoom(JavaClasses house) {
        INSIDE.forEach((room, rows) -> classes()
                .that()
                .resideInAPackage("groundbass." + room + "..")
                .and()
                .doNotHaveSimpleName("package-info") // a room that only holds rooms says so in its own
                .should()
                .resideInAnyPackage(allRooms("groundbass." + room, rows).toArray(String[]::new))
                .check(house));
    }

    @ArchTest
    static final ArchRule everyClassHasARoom = classes()
            .should()
            .resideInAnyPackage(Stream.concat(Stream.of("groundbass"), allRooms("groundbass", ROWS))
                    .toArray(String[]::new));

    @ArchTest
    static final ArchRule onlyTheStartStandsOutside =
            classes().that().resideInAPackage("groundbass").should().haveNameMatching("groundbass\\.Main(\\$.*)?");

    @ArchTest
    static void noRoomHoldsMoreThanOneReadsThrough(JavaClasses house) {
        var full = house.stream()
                .filter(type -> type.isTopLevelClass() && !OF_ONE_KIND.contains(type.getPackageName()))
                .collect(Collectors.groupingBy(JavaClass::getPackageName, Collectors.counting()));
        assertThat(full)
                .hasSizeGreaterThan(100)
                .allSatisfy((room, classes) -> assertThat(classes).as(room).isLessThanOrEqualTo(MOST_IN_A_ROOM));
    }

    @ArchTest
    static final ArchRule noRoomsGoRoundInACircle =
            slices().matching("groundbass.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule theCoreTouchesNothingOutside = noClasses()
            .that()
            .resideInAnyPackage(pureRooms())
            .should()
            .dependOnClassesThat(resideInAnyPackage(
                            "java.sql..",
                            "javax.sql..",
                            "java.nio.file..",
                            "java.net..",
                            "io.javalin..",
                            "jakarta..",
                            "org.jdbi..",
                            "org.flywaydb..",
                            "org.thymeleaf..",
                            "org.eclipse.jetty..",
                            "org.slf4j..")
                    .or(isOneOf(
                            java.io.File.class,
                            java.io.FileInputStream.class,
                            java.io.FileOutputStream.class,
                            java.time.Clock.class,
                            java.security.SecureRandom.class,
                            Thread.class,
                            java.util.concurrent.Executor.class,
                            java.util.concurrent.Executors.class,
                            java.util.concurrent.ThreadLocalRandom.class,
                            Random.class)));

    @ArchTest
    static final ArchRule theCoreDoesNotAskTheMachineForTimeChanceOrLanguage = noClasses()
            .that()
            .resideInAnyPackage(pureRooms())
            .should()
            .callMethod(Locale.class, "getDefault")
            .orShould()
            .callMethod(java.time.ZoneId.class, "systemDefault")
            .orShould()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callMethod(String.class, "toLowerCase")
            .orShould()
            .callMethod(String.class, "toUpperCase")
            .orShould()
            // these write numbers in the machine's language
            .callMethod(String.class, "format", String.class, Object[].class)
            .orShould()
            .callMethod(String.class, "formatted", Object[].class);

    @ArchTest
    static final ArchRule nobodyAsksForNowBesideTheClock = noClasses()
            .should()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .callMethod(java.time.LocalDate.class, "now")
            .orShould()
            .callMethod(java.time.ZonedDateTime.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static final ArchRule onlyTheWebSpeaksHttp = noClasses()
            .that()
            .resideOutsideOfPackages("groundbass.web..", "groundbass.site..")
            .should()
            .dependOnClassesThat(resideInAnyPackage("io.javalin..", "jakarta.servlet..", "org.thymeleaf.."));

    private static com.tngtech.archunit.base.DescribedPredicate<com.tngtech.archunit.core.domain.JavaClass> isOneOf(
            Class<?>... types) {
        return com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf(types);
    }

    private static String within(String roof, String room) {
        return room.equals(FACE) ? roof : roof + "." + room + "..";
    }

    /** Rooms above, the others of the same row, and the roof itself where it is no room of its own. */
    private static String[] closedTo(String roof, List<List<String>> rows, String room, int row) {
        var closed = new ArrayList<String>();
        if (rows.stream().noneMatch(names -> names.contains(FACE))) {
            closed.add(roof);
        }
        for (int above = 0; above <= row; above++) {
            rows.get(above).stream()
                    .filter(other -> !other.equals(room))
                    .map(other -> within(roof, other))
                    .forEach(closed::add);
        }
        return closed.toArray(String[]::new);
    }

    private static Stream<String> allRooms(String roof, List<List<String>> rows) {
        return rows.stream().flatMap(List::stream).map(room -> within(roof, room));
    }

    private static String[] pureRooms() {
        return allRooms("groundbass", ROWS.subList(PURE, ROWS.size())).toArray(String[]::new);
    }
}
