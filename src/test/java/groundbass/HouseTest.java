package groundbass;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;

/** The house as DEVELOPERS.md draws it: each room knows only rooms of the rows below its own. */
@AnalyzeClasses(packages = "groundbass", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseTest {
    /** From the roof down; rooms of one row do not know one another. */
    private static final List<List<String>> ROWS = List.of(
            List.of("web"),
            List.of("publishing"),
            List.of("release", "audience"),
            List.of("catalog", "post"),
            List.of("store", "effort"),
            List.of("engraving", "walkthrough", "script", "midi", "musicxml", "sound", "braille", "comparison"),
            List.of("linetext", "checks", "groove"),
            List.of("fingering", "analysis"), // what is remarked on rests on where the hand is and what a note means
            List.of("writing", "performance"),
            List.of("score"), // a line names its key and chords, so theory lies under it
            List.of("theory"),
            List.of("text"));

    /** The rows from this one on are pure functions of values. */
    private static final int PURE = 5;

    @ArchTest
    static void everyRoomKnowsOnlyRoomsBelow(JavaClasses house) {
        for (int row = 0; row < ROWS.size(); row++) {
            for (String room : ROWS.get(row)) {
                noClasses()
                        .that()
                        .resideInAPackage(within(room))
                        .should()
                        .dependOnClassesThat(resideInAnyPackage(closedTo(room, row)))
                        .because("\"" + room + "\" stands in row " + row + " of the house")
                        .allowEmptyShould(true)
                        .check(house);
            }
        }
    }

    @ArchTest
    static final ArchRule everyClassHasARoom = classes()
            .should()
            .resideInAnyPackage(
                    Stream.concat(Stream.of("groundbass"), allRooms()).toArray(String[]::new));

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
                            Random.class)))
            .allowEmptyShould(true);

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
            .callMethod(String.class, "formatted", Object[].class)
            .allowEmptyShould(true);

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
            .resideOutsideOfPackages("groundbass.web..", "groundbass")
            .should()
            .dependOnClassesThat(resideInAnyPackage("io.javalin..", "jakarta.servlet..", "org.thymeleaf.."));

    private static com.tngtech.archunit.base.DescribedPredicate<com.tngtech.archunit.core.domain.JavaClass> isOneOf(
            Class<?>... types) {
        return com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf(types);
    }

    private static String within(String room) {
        return "groundbass." + room + "..";
    }

    /** Rooms above, the others of the same row, and the roof. */
    private static String[] closedTo(String room, int row) {
        var closed = new ArrayList<String>(List.of("groundbass"));
        for (int above = 0; above <= row; above++) {
            ROWS.get(above).stream()
                    .filter(other -> !other.equals(room))
                    .map(HouseTest::within)
                    .forEach(closed::add);
        }
        return closed.toArray(String[]::new);
    }

    private static Stream<String> allRooms() {
        return ROWS.stream().flatMap(List::stream).map(HouseTest::within);
    }

    private static String[] pureRooms() {
        return ROWS.subList(PURE, ROWS.size()).stream()
                .flatMap(List::stream)
                .map(HouseTest::within)
                .toArray(String[]::new);
    }
}
