package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Other ways to say the same: in another order, with the noun behind or before, counted up, set against something else. */
class OtherWaysTest {
    private static final Line LINE = LineText.read("""
                    title Lantern Steps
                    key A minor
                    meter 4/4
                    tempo 92

                    bar 1 over Am
                    1    A0
                    2-3  A0, D2 for 2, D5
                    4    D4, Dx

                    bar 2 over Dm
                    1    A5
                    2    rest
                    3    A5, Ax
                    4    A4, A5 hammer

                    bar 3 over Em
                    1    E0
                    2    E3, A5
                    3    D5, D4, D2
                    4    A7 slide

                    bar 4 over Am
                    1    E5 accent
                    2-3  A0
                    4    rest
                    """).line();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "The click's at a hundred and twenty.",
                "The whole thing runs to twelve bars.",
                "It's a piece for a five-string.",
                "In bar one you start with a C sharp there. The note there is a B.",
                "Hammer-ons, you've got three of them altogether.",
                "Count the dead notes in bar one and you get two.",
                "So how many rests are there in the whole line? Five of them.",
                "Bar two. And what happens on beat two? You just let that D ring on.",
                "Bar three. On two there are two quavers, first the D and then the G.",
                "In bar three you get the G on two, and then an A on the and of two.",
                "The lowest note you play anywhere is the low G.",
                "In bar four the last note falls on beat four.",
                "It's not a triplet but two sixteenths on beat four of bar two.",
                "Bar three. The slide goes from F sharp to B on beat four.",
                "In bar four the A on one is played softly, no accent.",
                "Nothing goes higher than the open A.",
                "Bar two's last note is a C sharp.",
                "Bar two. There's a D on one. Which fret? The seventh, on the A string.",
            })
    void finds(String said) {
        assertThat(contradictions(said, Locale.ENGLISH)).as(said).isPositive();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Bar two. There's a D on one. Which fret? The fifth, on the A string.",
                "Bar three, on three. How far down is it from the G to the E? A minor third.",
                "The click's at ninety-two, and you could learn it on a bus if the bus was slow.",
                "The whole thing runs to four bars.",
                "It's a piece for a four-string.",
                "Bar one. The E on the and of two lasts a quarter. It bridges across three.",
                "Bar two. You start on the fifth fret of the A string, and the note there is a D.",
                "Hammer-ons, you've got one of them altogether.",
                "Count the dead notes in bar one and you get one.",
                "So how many rests are there in the whole line? Two of them.",
                "In bar two, what happens on beat two? Nothing at all.",
                "Bar three. On two there are two quavers, first the G and then the D.",
                "In bar three you get the G on two, and then a D on the and of two.",
                "Bar three begins with the open E, and nothing in the tune goes lower than that.",
                "In bar four the last note falls on beat two.",
                "It's not a triplet but two quavers on beat four of bar two.",
                "In bar two you come from C sharp, and from there you hammer up a half step to the D, fifth fret.",
                "In bar two there are two Ds, as many as in bars one and four together, or more.",
                "In the song from last week you slid to the ninth fret in bar two.",
                "It's a half step, that hammer-on.",
                "Last time we had the triplet on beat two of bar one.",
                "That E leads to the A in the next bar.",
            })
    void callsNothingWrong(String said) {
        assertThat(contradictions(said, Locale.ENGLISH)).as(said).isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Insgesamt umfasst das Stück zwölf Takte.",
                "Lang ist es ja nicht, sechzehn Takte, dann bist du durch.",
                "Solche toten Noten gibt es im ganzen Stück drei.",
                "Das ist ein Stück für einen Fünfsaiter.",
                "Takt eins beginnt mit keinem D, sondern mit einem E.",
                "Takt zwei. Nach dem ersten D folgt eine Achtelpause.",
                "In Takt zwei: Der Hammer-on macht einen Ganzton aus.",
                "Slides, davon gibt es zwei im ganzen Stück.",
                "Takt eins. Auf der Drei kommen G und Fis, sonst nichts.",
                "Takt vier. Auf der Eins wird das A gegriffen, und zwar im siebten Bund.",
            })
    void findsInGerman(String said) {
        assertThat(contradictions(said, Locale.GERMAN)).as(said).isPositive();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Insgesamt umfasst das Stück vier Takte.",
                "Lang ist es ja nicht, vier Takte, dann bist du durch.",
                "Solche toten Noten gibt es im ganzen Stück zwei.",
                "Das ist ein Stück für einen Viersaiter.",
                "Takt zwei beginnt mit keinem E, sondern mit einem D.",
                "In Takt zwei: Der Hammer-on macht einen Halbton aus.",
                "Slides, davon gibt es einen im ganzen Stück.",
                "Takt zwei. Im ganzen Takt schlägst du also nur viermal an.",
                "In dem Lied vom letzten Mal hattest du ja den Slide immer auf der Zwei.",
                "Takt zwei. Von dem Cis auf der Vier hämmerst du in den fünften Bund.",
                "Takt drei. Vom ersten bis zum letzten Ton der Triole ist es eine kleine Terz.",
                "Takt drei. Auf der Zwei kommen G und D, und dann löst sich das im letzten Takt ins A auf.",
            })
    void callsNothingWrongInGerman(String said) {
        assertThat(contradictions(said, Locale.GERMAN)).as(said).isZero();
    }

    private static int contradictions(String said, Locale language) {
        return Proofreading.of(said, LINE, language).contradictions().size();
    }
}
