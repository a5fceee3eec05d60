package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.theory.KeyFinding.Certainty;
import groundbass.theory.PitchWeights.Weighed;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Melodies of known key with the published profiles. The correlations (rule: key-by-profile) were
 * computed apart from this program, from the same weights with the profiles as Krumhansl 1990 and Temperley 2001 and
 * 2007 print them.
 */
class KeyFindingTest {
    private static final Pattern NOTE = Pattern.compile("([A-G]#?b?)([\\d.]+)");

    private record Melody(String name, Key key, PitchWeights weights) {}

    static Stream<Melody> melodies() {
        return rows("melodies.txt").map(row -> {
            var parts = row.split(" \\| ");
            var weighed = NOTE.matcher(parts[2])
                    .results()
                    .map(note -> new Weighed(
                            NoteName.parse(note.group(1)).orElseThrow().pitchClass(),
                            Double.parseDouble(note.group(2))))
                    .toList();
            return new Melody(parts[0], key(parts[1]), PitchWeights.of(weighed));
        });
    }

    static Stream<String> rows(String resource) {
        try (var in = KeyFindingTest.class.getResourceAsStream("/theory/" + resource)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().filter(line -> !line.startsWith("#") && !line.isBlank());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Key key(String text) {
        var parts = text.split(" ");
        return new Key(NoteName.parse(parts[0]).orElseThrow(), Mode.valueOf(parts[1].toUpperCase(Locale.ROOT)));
    }

    private static PitchWeights weights(String text) {
        return new PitchWeights(
                Arrays.stream(text.split(" ")).map(Double::valueOf).toList());
    }

    @ParameterizedTest
    @MethodSource("melodies")
    void everyProfileFindsTheKeyOfAPlainMelody(Melody melody) {
        assertThat(KeyFinding.of(melody.weights(), KeyProfile.KRUMHANSL_KESSLER).best())
                .isEqualTo(melody.key());
        assertThat(KeyFinding.of(melody.weights(), KeyProfile.TEMPERLEY).best()).isEqualTo(melody.key());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 0 6.5 0 8 0 9.5 4 0 4 0 0      | KRUMHANSL_KESSLER | D major | 0.695 | F# minor | 0.549",
                "0 0 6.5 0 8 0 9.5 4 0 4 0 0      | TEMPERLEY         | D major | 0.707 | G major  | 0.543",
                "0 0 6.5 0 8 0 9.5 4 0 4 0 0      | KOSTKA_PAYNE      | D major | 0.798 | B minor  | 0.562",
                "12 0 2 0 6 3 0 8 0 1 0 0         | KRUMHANSL_KESSLER | C major | 0.964 | C minor  | 0.593",
                "8 0 8 0 8 8 0 12 0 4 0 0         | KRUMHANSL_KESSLER | C major | 0.858 | G major  | 0.684",
                "8 0 8 0 8 8 0 12 0 4 0 0         | TEMPERLEY         | C major | 0.817 | F major  | 0.686",
                "8 0 8 0 8 8 0 12 0 4 0 0         | KOSTKA_PAYNE      | C major | 0.899 | F major  | 0.703",
                "0 0 15 0 3 0 0 17.5 0 3 0 9.5    | KRUMHANSL_KESSLER | G major | 0.917 | D major  | 0.653",
                "7.5 0 6 0 7 1 0.5 3 4 12.5 0 6.5 | KRUMHANSL_KESSLER | A minor | 0.886 | A major  | 0.620",
                "7.5 0 6 0 7 1 0.5 3 4 12.5 0 6.5 | KOSTKA_PAYNE      | A minor | 0.884 | G major  | 0.554",
                "15 0 0 0 0 15 0 7 0 14 8 0       | KRUMHANSL_KESSLER | F major | 0.908 | A minor  | 0.635",
                "15 0 0 0 0 15 0 7 0 14 8 0       | TEMPERLEY         | F major | 0.821 | Bb major | 0.578",
                "2 0 1 0 1 1 0 1 0 1 0 1          | KRUMHANSL_KESSLER | C major | 0.901 | A minor  | 0.756",
                "1 0 1 0 1 1 0 0 1 2 0 1          | KRUMHANSL_KESSLER | A minor | 0.847 | A major  | 0.550",
                "1 0 2 0 1 1 0 1 0 1 0 1          | KRUMHANSL_KESSLER | D minor | 0.717 | G major  | 0.716",
                "0 0 4 0 0 0 2 4 0 4 0 2          | KOSTKA_PAYNE      | G major | 0.816 | D major  | 0.782",
            })
    void correlationsAreThePublishedProfiles(
            String weights, KeyProfile profile, String best, double first, String next, double second) {
        var candidates = KeyFinding.of(weights(weights), profile).candidates();
        assertThat(candidates.get(0).key()).isEqualTo(key(best));
        assertThat(candidates.get(0).correlation()).isCloseTo(first, within(0.0006));
        assertThat(candidates.get(1).key()).isEqualTo(key(next));
        assertThat(candidates.get(1).correlation()).isCloseTo(second, within(0.0006));
    }

    /** rule: key-by-profile: three keys tie. */
    @Test
    void aPentatonicRiffLeavesTheKeyOpen() {
        var finding = KeyFinding.of(weights("0 0 1 0 2 0 0 1 0 1 0 1"), KeyProfile.TEMPERLEY);
        assertThat(finding.candidates().subList(0, 3))
                .allSatisfy(candidate -> assertThat(candidate.correlation()).isCloseTo(0.574, within(0.0006)))
                .extracting(KeyFinding.Candidate::key)
                .containsExactlyInAnyOrder(key("E minor"), key("G major"), key("C major"));
        assertThat(finding.certainty()).isEqualTo(Certainty.OPEN);
    }

    @Test
    void aDorianScaleLeavesTheKeyOpenAndAChildrensSongIsClear() {
        var dorian = KeyFinding.of(weights("1 0 2 0 1 1 0 1 0 1 0 1"), KeyProfile.KRUMHANSL_KESSLER);
        assertThat(dorian.certainty()).isEqualTo(Certainty.OPEN);
        var song = KeyFinding.of(weights("12 0 2 0 6 3 0 8 0 1 0 0"), KeyProfile.KRUMHANSL_KESSLER);
        assertThat(song.certainty()).isEqualTo(Certainty.CLEAR);
    }

    @Test
    void keysComeInTheirSimplestSpelling() {
        var finding = KeyFinding.of(weights("1 1 1 1 1 1 1 1 1 1 1 1"), KeyProfile.TEMPERLEY);
        assertThat(finding.candidates())
                .extracting(KeyFinding.Candidate::key)
                .doesNotHaveDuplicates()
                .hasSize(24)
                .allMatch(key -> Math.abs(key.fifths()) <= 6)
                .contains(key("F# major"), key("Eb minor"), key("Db major"), key("G# minor"));
        assertThat(finding.certainty()).isEqualTo(Certainty.OPEN);
        assertThat(finding.best()).isEqualTo(finding.candidates().get(0).key());
    }

    /** Arithmetic: of five, four lie in C major. */
    @Test
    void theShareInAScaleIsCountedByTime() {
        var weights = weights("3 1 1 0 0 0 0 0 0 0 0 0");
        assertThat(weights.shareIn(NoteName.parse("C").orElseThrow(), Scale.MAJOR))
                .isEqualTo(0.8);
        assertThat(weights.shareIn(NoteName.parse("Db").orElseThrow(), Scale.MAJOR))
                .isEqualTo(0.8);
        assertThat(weights.shareIn(NoteName.parse("D").orElseThrow(), Scale.MAJOR))
                .isEqualTo(0.4);
        assertThat(weights("0 0 0 0 0 0 0 0 0 0 0 0")
                        .shareIn(NoteName.parse("C").orElseThrow(), Scale.MAJOR))
                .as("where nothing sounds nothing lies outside")
                .isEqualTo(1);
    }

    /** The limits are ours: a fit of 0.7 and a margin of 0.1 are clear, half that margin likely. */
    @ParameterizedTest
    @CsvSource({
        "0.7,  0.59, CLEAR",
        "0.7,  0.61, LIKELY",
        "0.7, 0.64, LIKELY",
        "0.7, 0.66, OPEN",
        "0.69, 0.5,  LIKELY",
        "0.69, 0.61, OPEN",
        "0.9, 0.9,  OPEN"
    })
    void certaintyIsAFitAndAMargin(double first, double second, Certainty certainty) {
        var finding = new KeyFinding(List.of(
                new KeyFinding.Candidate(key("C major"), first), new KeyFinding.Candidate(key("G major"), second)));
        assertThat(finding.certainty()).isEqualTo(certainty);
    }
}
