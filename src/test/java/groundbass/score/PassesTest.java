package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.score.Passes.Fault;
import groundbass.score.Passes.Fault.Kind;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Roadmap.Until;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** rule: repeats-unfold, first-repeat-start. */
class PassesTest {
    private static final Repeats PLAIN = Repeats.NONE;

    @Test
    void barsWithoutSignsArePlayedOnce() {
        assertThat(unrolled(PLAIN, PLAIN)).isEqualTo("AB");
    }

    @Test
    void aRepeatIsPlayedTwiceUnlessItSaysMore() {
        assertThat(unrolled(PLAIN.withStart(), PLAIN.with(RepeatEnd.PLAIN), PLAIN))
                .isEqualTo("ABABC");
        assertThat(unrolled(PLAIN.withStart().with(times(3)), PLAIN)).isEqualTo("AAAB");
    }

    @Test
    void theFirstRepeatStartMayBeLeftOut() {
        assertThat(unrolled(PLAIN, PLAIN.with(RepeatEnd.PLAIN), PLAIN)).isEqualTo("ABABC");
    }

    @Test
    void aLaterRepeatWithoutAStartGoesBackToTheEndBeforeIt() {
        assertThat(unrolled(PLAIN, PLAIN.with(RepeatEnd.PLAIN), PLAIN, PLAIN.with(RepeatEnd.PLAIN), PLAIN))
                .isEqualTo("ABABCDCDE");
    }

    @Test
    void endingsTakeTheirPasses() {
        // rule: repeats-unfold: repeat start, A, ending 1 = B, repeat end, ending 2 = C
        assertThat(unrolled(PLAIN.withStart(), bracket(1, 1).with(RepeatEnd.PLAIN), bracket(2, 2)))
                .isEqualTo("ABAC");
        // three times, with endings 1, 2 and 3
        assertThat(unrolled(PLAIN.withStart(), bracket(1, 2).with(times(3)), bracket(3, 3)))
                .isEqualTo("ABABAC");
    }

    @Test
    void knowsThePassOfEachBar() {
        var bars = bars(PLAIN.withStart(), bracket(1, 1).with(RepeatEnd.PLAIN), bracket(2, 2));
        assertThat(Passes.unroll(bars).stream().map(Passes.Played::pass)).containsExactly(1, 1, 2, 2);
    }

    @Test
    void signsThatDoNotAgreeAreNamed() {
        assertThat(faults(PLAIN.withStart(), PLAIN)).containsExactly(new Fault(0, Kind.START_WITHOUT_END));
        assertThat(faults(PLAIN.withEndingEnd())).containsExactly(new Fault(0, Kind.END_WITHOUT_ENDING));
        assertThat(faults(PLAIN.withStart(), PLAIN.withStart().with(RepeatEnd.PLAIN)))
                .containsExactly(new Fault(1, Kind.START_INSIDE_STRETCH));
        assertThat(faults(PLAIN, PLAIN.with(new Ending(1, 1)))).containsExactly(new Fault(1, Kind.ENDING_NOT_CLOSED));
        assertThat(faults(PLAIN, bracket(1, 1).with(RepeatEnd.PLAIN), bracket(3, 3)))
                .containsExactly(new Fault(2, Kind.PASSES_NOT_COVERED));
        assertThat(faults(PLAIN, bracket(1, 1).with(times(4)), bracket(2, 2)))
                .containsExactly(new Fault(1, Kind.TIMES_DISAGREE));
        assertThat(faults(PLAIN, bracket(1, 1), bracket(2, 2)))
                .containsExactly(new Fault(1, Kind.REPEAT_END_MISPLACED));
    }

    @Test
    void aLineRefusesSignsThatDoNotAgree() {
        var bars = bars(PLAIN.withStart(), PLAIN);
        assertThatThrownBy(() -> new Line(Header.PLAIN, bars)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aNoteIsNotHeldOverARepeatSign() {
        var held = Bar.of(
                        Meter.COMMON,
                        List.of(Note.plucked(Fraction.of(3, 4), Fraction.of(1, 2), Place.of(4, 3), Technique.FINGER)))
                .with(PLAIN.with(RepeatEnd.PLAIN));
        var next = Bar.of(Meter.COMMON, List.of());
        assertThatThrownBy(() -> new Line(Header.PLAIN, List.of(held, next)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(new Line(Header.PLAIN, List.of(held.with(PLAIN), next)).bars())
                .hasSize(2);
    }

    /** rule: jumps-unfold. */
    @Test
    void aJumpIsTakenOnceAndWithoutRepeats() {
        var fine = map(Roadmap.NONE.withFine());
        // D.C. al Fine: A B, then A to the Fine
        assertThat(unrolled(fine, map(jump(From.CAPO, Until.FINE)))).isEqualTo("ABA");
        // the repeat of A and B is taken before the jump, not after it
        assertThat(unrolled(PLAIN.withStart(), fine.with(RepeatEnd.PLAIN), map(jump(From.CAPO, Until.FINE))))
                .isEqualTo("ABABCAB");
        // a jump alone goes on to the end
        assertThat(unrolled(PLAIN, map(jump(From.CAPO, Until.END)), PLAIN)).isEqualTo("ABABC");
        assertThat(unrolled(PLAIN, map(Roadmap.NONE.withSegno()), map(jump(From.SEGNO, Until.END)), PLAIN))
                .isEqualTo("ABCBCD");
    }

    /** rule: jumps-unfold. */
    @Test
    void theWayToTheCodaLeavesAfterTheJump() {
        var toCoda = map(Roadmap.NONE.withSegno().withToCoda());
        assertThat(unrolled(PLAIN, toCoda, map(jump(From.SEGNO, Until.CODA)), map(Roadmap.NONE.withCoda()), PLAIN))
                .isEqualTo("ABCBDE");
        // endings: first A B A C, then the last ending alone; the coda's own repeat is taken
        assertThat(unrolled(
                        PLAIN.withStart(),
                        bracket(1, 1).with(RepeatEnd.PLAIN),
                        bracket(2, 2).with(Roadmap.NONE.withToCoda()),
                        map(jump(From.CAPO, Until.CODA)),
                        map(Roadmap.NONE.withCoda()).withStart().with(RepeatEnd.PLAIN)))
                .isEqualTo("ABACDACEE");
    }

    @Test
    void everyTimeThatABarIsPlayedHasAPassOfItsOwn() {
        var bars = bars(
                PLAIN.withStart().with(RepeatEnd.PLAIN).with(Roadmap.NONE.withFine()),
                map(jump(From.CAPO, Until.FINE)));
        assertThat(Passes.unroll(bars))
                .containsExactly(
                        new Passes.Played(0, 1),
                        new Passes.Played(0, 2),
                        new Passes.Played(1, 1),
                        new Passes.Played(0, 3));
    }

    @Test
    void jumpsThatDoNotAgreeAreNamed() {
        var fine = map(Roadmap.NONE.withFine());
        var toCoda = map(Roadmap.NONE.withToCoda());
        var coda = map(Roadmap.NONE.withCoda());
        var dcFine = map(jump(From.CAPO, Until.FINE));
        var dcCoda = map(jump(From.CAPO, Until.CODA));
        assertThat(faults(fine, fine, dcFine)).containsExactly(new Fault(1, Kind.JUMP_SIGN_TWICE));
        assertThat(faults(PLAIN, map(jump(From.SEGNO, Until.END)))).containsExactly(new Fault(1, Kind.NO_SEGNO));
        assertThat(faults(PLAIN, dcFine)).containsExactly(new Fault(1, Kind.NO_FINE));
        assertThat(faults(PLAIN, dcCoda, coda)).containsExactly(new Fault(1, Kind.NO_CODA));
        assertThat(faults(toCoda, dcCoda, PLAIN, coda)).containsExactly(new Fault(1, Kind.NO_CODA));
        assertThat(faults(fine, PLAIN)).containsExactly(new Fault(0, Kind.NO_JUMP));
        assertThat(faults(fine, dcFine, PLAIN)).containsExactly(new Fault(1, Kind.NEVER_PLAYED));
        assertThat(faults(PLAIN.withStart(), map(jump(From.CAPO, Until.END)), PLAIN.with(RepeatEnd.PLAIN)))
                .containsExactly(new Fault(1, Kind.JUMP_INSIDE_REPEAT));
        assertThat(faults(
                        PLAIN.withStart(),
                        bracket(1, 1).with(RepeatEnd.PLAIN).with(Roadmap.NONE.withFine()),
                        bracket(2, 2),
                        dcFine))
                .containsExactly(new Fault(1, Kind.JUMP_INSIDE_REPEAT));
    }

    private static Repeats map(Roadmap signs) {
        return PLAIN.with(signs);
    }

    private static Roadmap jump(From from, Until until) {
        return Roadmap.NONE.with(new Jump(from, until));
    }

    private static Repeats bracket(int first, int last) {
        return PLAIN.with(new Ending(first, last)).withEndingEnd();
    }

    private static RepeatEnd times(int times) {
        return new RepeatEnd(Optional.of(times));
    }

    private static List<Bar> bars(Repeats... signs) {
        return Stream.of(signs)
                .map(each -> Bar.of(Meter.COMMON, List.of()).with(each))
                .toList();
    }

    private static List<Fault> faults(Repeats... signs) {
        return Passes.faults(bars(signs));
    }

    private static String unrolled(Repeats... signs) {
        return Passes.unroll(bars(signs)).stream()
                .map(played -> String.valueOf((char) ('A' + played.bar())))
                .collect(Collectors.joining());
    }
}
