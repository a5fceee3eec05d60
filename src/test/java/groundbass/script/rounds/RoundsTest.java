package groundbass.script.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Keeps the rounds as they were frozen. What they measure is printed by {@link RoundRun}. */
class RoundsTest {
    static List<String> digests() throws IOException {
        return Files.readAllLines(Round.FOLDER.resolve("digests.sha256"));
    }

    /** Rounds in which no more than one alarm is left; in the others there are not more than when they were first run. */
    private static final int HELD_TO_ONE = 16;

    /** The rounds that were learned from together, and what is held of them. */
    private static final List<Held> HELD = List.of(
            new Held(1, 29, 662, 5), new Held(30, 38, 199, 3), new Held(39, 41, 68, 1), new Held(42, 47, 104, 7));

    /** To answer a round is dear, and two tests ask. */
    private static final Map<Integer, Figures> ANSWERED = new ConcurrentHashMap<>();

    /**
     * @param found wrong statements that have to be contradicted
     * @param alarms other statements that may be
     */
    private record Held(int first, int last, int found, int alarms) {}

    @ParameterizedTest
    @MethodSource("digests")
    void aFrozenFileIsNotEdited(String digest) throws IOException, NoSuchAlgorithmException {
        String[] parts = digest.split(" +");
        var sha = MessageDigest.getInstance("SHA-256");
        byte[] file = Files.readAllBytes(Round.FOLDER.resolve(parts[1]));
        assertThat(HexFormat.of().formatHex(sha.digest(file))).as(parts[1]).isEqualTo(parts[0]);
    }

    static Stream<Integer> rounds() throws IOException {
        return digests().stream()
                .filter(digest -> digest.endsWith(".tsv"))
                .map(digest -> Integer.parseInt(digest.replaceAll(".*round-|\\.tsv", "")));
    }

    @ParameterizedTest
    @MethodSource("rounds")
    void aRoundHasSixtyStatementsOfEveryLabel(int number) {
        var round = Round.read(number);
        assertThat(round.rows()).hasSize(60);
        for (var label : Round.Label.values()) {
            assertThat(round.rows()).as(label.name()).anyMatch(row -> row.label() == label);
        }
        assertThat(round.rows()).allMatch(row -> row.right().isEmpty() == (row.label() != Round.Label.CONTRADICTS));
    }

    /** What a round found when it was first run stands beside it; that nothing false is praised is kept for all of them. */
    @ParameterizedTest
    @MethodSource("rounds")
    void nothingWrongIsToldToAgreeAndHardlyAnythingElseIsCalledWrong(int number) throws IOException {
        var figures = answered(number);
        System.out.println("round " + number + ": " + figures);
        assertThat(figures.praised()).isZero();
        assertThat(figures.alarms())
                .as("of 33 to 35 that are not wrong")
                .isLessThanOrEqualTo(number <= HELD_TO_ONE ? 1 : firstAlarms(number));
        assertThat(figures.found()).isPositive();
    }

    static List<Held> held() {
        return HELD;
    }

    @ParameterizedTest
    @MethodSource("held")
    void whatWasLearnedIsHeld(Held held) {
        var figures = IntStream.rangeClosed(held.first(), held.last())
                .mapToObj(RoundsTest::answered)
                .toList();
        assertThat(figures.stream().mapToInt(Figures::found).sum()).isGreaterThanOrEqualTo(held.found());
        assertThat(figures.stream().mapToInt(Figures::alarms).sum()).isLessThanOrEqualTo(held.alarms());
    }

    private static Figures answered(int number) {
        return ANSWERED.computeIfAbsent(
                number, round -> Figures.of(Round.read(round).answers()));
    }

    /** Of the row of all kinds: round, kind, found, wrong, praised, alarms. */
    private static int firstAlarms(int number) throws IOException {
        return Files.readAllLines(Round.FOLDER.resolve("first-runs.tsv")).stream()
                .map(row -> row.split("\t"))
                .filter(row -> row[0].equals(String.valueOf(number)) && row[1].equals("all"))
                .mapToInt(row -> Integer.parseInt(row[5]))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thereAreRounds() throws IOException {
        assertThat(rounds()).isNotEmpty();
    }
}
