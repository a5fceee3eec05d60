package groundbass.release.play;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.release.play.PlayManifest.Fingered;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where the neck is lit. What is expected was read off each line's text by hand; string 1 is the highest. */
class NeckPlacesTest {
    private static List<Fingered> places(String text) {
        var read = LineText.read(text);
        assertThat(read.problems()).isEmpty();
        return NeckPlaces.of(read.line());
    }

    /** A pickup is bar 0, and its moments count from where its bar would begin. */
    @Test
    void aPickupAndADampedStringHaveTheirPlaces() {
        assertThat(places("""
                bar 0
                4    E3, Ex
                bar 1
                1-4  rest
                """)).containsExactly(new Fingered(0, "3/4", 4, "3"), new Fingered(0, "7/8", 4, "x"));
    }

    @Test
    void bothVoicesAreLitTheUpperFirst() {
        assertThat(places("""
                bar 1
                1    A3 until end + G5
                2    G7
                3-4  G5
                """))
                .containsExactly(
                        new Fingered(1, "0", 1, "5"),
                        new Fingered(1, "1/4", 1, "7"),
                        new Fingered(1, "1/2", 1, "5"),
                        new Fingered(1, "0", 3, "3"));
    }

    @Test
    void everyNoteOfAChordIsLitTheLowestFirst() {
        assertThat(places("""
                bar 1
                1-2  E3 + G4
                3-4  rest
                """)).containsExactly(new Fingered(1, "0", 4, "3"), new Fingered(1, "0", 1, "4"));
    }

    /** The finger stays there, so the neck shows it for as long as the sheet does. */
    @Test
    void whatIsTiedOverTheBarLineIsLitInBothBars() {
        assertThat(places("""
                bar 1
                1-2  rest
                3-4  E5
                bar 2
                1    hold
                2-4  rest
                """)).containsExactly(new Fingered(1, "1/2", 4, "5"), new Fingered(2, "0", 4, "5"));
    }

    @Test
    void aBarThatComesAgainStandsOnce() {
        assertThat(places("""
                repeat start
                bar 1
                1-4  E0
                repeat end x2
                """)).containsExactly(new Fingered(1, "0", 4, "0"));
    }

    @Test
    void theLowestOfFiveStringsIsTheFifth() {
        assertThat(places("""
                strings B E A D G
                bar 1
                1-4  B2
                """)).containsExactly(new Fingered(1, "0", 5, "2"));
    }
}
