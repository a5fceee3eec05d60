package groundbass.script.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Keeps the rounds as they were frozen. What they measure is printed by {@link RoundRun}. */
class RoundsTest {
    static List<String> digests() throws IOException {
        return Files.readAllLines(Round.FOLDER.resolve("digests.sha256"));
    }

    /** Up to this round one alarm is allowed; in later ones not more than when they were first run. */
    private static final int HELD_TO_ONE = 16;

    /** A note that is said to be in the bar "twice" is there three times, and is told to agree. */
    private static final int WITH_ONE_PRAISED = 30;

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

    /** What a round found when it was first run stands beside it; that nothing false is praised is kept for all but one of them. */
    @ParameterizedTest
    @MethodSource("rounds")
    void nothingWrongIsToldToAgreeAndHardlyAnythingElseIsCalledWrong(int number) throws IOException {
        var figures = Figures.of(Round.read(number).answers());
        System.out.println("round " + number + ": " + figures);
        assertThat(figures.praised()).isLessThanOrEqualTo(number == WITH_ONE_PRAISED ? 1 : 0);
        assertThat(figures.alarms())
                .as("of 33 to 35 that are not wrong")
                .isLessThanOrEqualTo(number <= HELD_TO_ONE ? 1 : firstAlarms(number));
        assertThat(figures.found()).isPositive();
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
