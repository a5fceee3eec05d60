package groundbass.groove;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.remark.Span;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.text.Messages;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GrooveTextTest {
    private static final String ROCK = """
            groove   Plain rock
            meter    4/4
            columns  8
            kick     X- -- x- --
            snare    -- X- -- X-
            hat      xx xg xx xx
            """;

    private static List<Groove> library() {
        return GrooveLibrary.all();
    }

    @Test
    void readsOneRowForEachPiece() {
        var groove = GrooveText.read(ROCK).groove().orElseThrow();
        assertThat(groove.name()).isEqualTo("Plain rock");
        assertThat(groove.meter()).isEqualTo(Meter.COMMON);
        assertThat(groove.column()).isEqualTo(Fraction.of(1, 8));
        assertThat(groove.stroke(Piece.KICK, 0, 0)).isEqualTo(Stroke.ACCENT);
        assertThat(groove.stroke(Piece.HAT, 0, 3)).isEqualTo(Stroke.GHOST);
        assertThat(groove.stroke(Piece.RIDE, 0, 0)).isEqualTo(Stroke.NONE);
    }

    @Test
    void printsTheCanonicalText() {
        var loose =
                "  groove Plain rock \n# a comment\nmeter 4/4\ncolumns 8\nhat |xxxgxxxx|\nsnare --X---X-\nkick X---x---";
        assertThat(GrooveText.print(GrooveText.read(loose).groove().orElseThrow()))
                .isEqualTo(ROCK);
    }

    @ParameterizedTest
    @MethodSource("library")
    void everyLibraryGrooveComesBackFromItsText(Groove groove) {
        assertThat(GrooveText.read(GrooveText.print(groove)).groove()).contains(groove);
    }

    @Test
    void itsStyleIsReadAndComesBack() {
        var text = """
                groove   Plain rock
                meter    4/4
                columns  8
                back     12
                follow   kick
                chords   x- -x .- g-
                kick     X- -- x- --
                """;
        var groove = GrooveText.read(text).groove().orElseThrow();
        assertThat(groove.style().back()).isEqualTo(12);
        assertThat(groove.style().followsLine()).isTrue();
        assertThat(groove.chords(0, 3)).isEqualTo(ChordStroke.NORMAL);
        assertThat(groove.chords(0, 4)).isEqualTo(ChordStroke.LIFT);
        assertThat(GrooveText.print(groove)).isEqualTo(text);
    }

    @Test
    void whatItsStyleCannotBeIsTold() {
        assertThat(GrooveText.read("columns 4\nkick x---\nchords x-q-x\nback 31\nfollow snare\n")
                        .problems())
                .extracting(problem -> problem.span().line() + ":" + problem.code())
                .containsExactly("3:bad-chord-stroke", "4:bad-back", "5:bad-follow", "3:uneven-row");
    }

    @Test
    void everyProblemComesInOnePass() {
        var text = "groove A\nmeter 4/5\ncolumns 0\nkick x-q-\ncymbal x---\nkick x---\n";
        assertThat(GrooveText.read(text).problems())
                .extracting(
                        problem -> problem.span().line() + ":" + problem.span().column())
                .containsExactly("2:7", "3:9", "4:8", "5:1", "6:1", "4:6");
    }

    @Test
    void aShortRowIsNamedWithItsLength() {
        var problems = GrooveText.read("columns 4\nkick x-x-\nsnare x-x\n").problems();
        assertThat(problems)
                .extracting(problem ->
                        problem.span() + " " + Messages.of(Locale.ENGLISH).say(problem.sentence()))
                .containsExactly(
                        new Span(3, 7, 1) + " This row has 3 columns; each bar has 4, and a groove at most 8 bars.");
    }

    @Test
    void emptyTextIsAProblem() {
        assertThat(GrooveText.read("").problems()).hasSize(1);
        assertThat(GrooveText.read("\n\n# nothing").problems()).hasSize(1);
    }

    @Test
    void noTextThrows() {
        var random = new Random(7);
        String alphabet = "groove meter columns kick hat xXg-| 4/4(2+3)0\n\t\r#\u2028\u0000\u00e9";
        for (int i = 0; i < 5_000; i++) {
            var text = new StringBuilder();
            for (int n = random.nextInt(60); n > 0; n--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            var reading = GrooveText.read(text.toString());
            assertThat(reading.groove().isPresent())
                    .as("seed 7, text %d", i)
                    .isEqualTo(reading.problems().isEmpty());
        }
    }

    @Test
    void randomGroovesComeBackFromTheirText() {
        for (long seed = 0; seed < 300; seed++) {
            var groove = random(new Random(seed));
            assertThat(GrooveText.read(GrooveText.print(groove)).groove())
                    .as("seed %d", seed)
                    .contains(groove);
        }
    }

    private static Groove random(Random random) {
        int columns = 1 + random.nextInt(24);
        int length = columns * (1 + random.nextInt(3));
        var rows = new EnumMap<Piece, List<Stroke>>(Piece.class);
        for (var piece : Piece.values()) {
            if (piece == Piece.KICK || random.nextInt(3) == 0) {
                rows.put(
                        piece,
                        random.ints(length, 0, Stroke.values().length)
                                .mapToObj(i -> Stroke.values()[i])
                                .toList());
            }
        }
        var meter = random.nextBoolean() ? Meter.COMMON : new Meter(8, List.of(3, 2, 2));
        return new Groove(random.nextBoolean() ? "" : "Name " + random.nextInt(9), meter, columns, rows);
    }
}
