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

    /** Later rounds were run once, as they were met, and wait to be learned from. */
    private static final int LEARNED = 16;

    /** What a round found when it was first run stands beside it; that nothing false is praised is kept for all of them. */
    @ParameterizedTest
    @MethodSource("rounds")
    void nothingWrongIsToldToAgreeAndHardlyAnythingElseIsCalledWrong(int number) {
        var figures = Figures.of(Round.read(number).answers());
        System.out.println("round " + number + ": " + figures);
        assertThat(figures.praised()).isZero();
        if (number <= LEARNED) {
            assertThat(figures.alarms()).as("of 33 to 35 that are not wrong").isLessThanOrEqualTo(1);
        }
        assertThat(figures.found()).isPositive();
    }

    @Test
    void thereAreRounds() throws IOException {
        assertThat(rounds()).isNotEmpty();
    }
}
