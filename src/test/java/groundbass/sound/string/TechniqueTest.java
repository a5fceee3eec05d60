package groundbass.sound.string;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.by;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.linetext.LineText;
import groundbass.score.Arrival;
import groundbass.score.Harmonic;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.sound.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What tells the techniques apart, measured: attack, brightness, decay, pitch, level. The bounds are those of
 * rule: technique-sound, unless another is named.
 */
class TechniqueTest {
    private static final int RATE = Played.RATE;
    private static final int FIFTY_MS = 2_205;

    private static float[] play(Note... notes) {
        return Played.from(line(quarters(60), bar(notes)));
    }

    private static float[] play(int string, int fret, Technique hand) {
        return play(note(f(0, 1), f(1, 1), Place.of(string, fret), hand));
    }

    private static double centroid(float[] samples) {
        return Measure.centroid(samples, 0, FIFTY_MS);
    }

    private static double level(float[] samples) {
        return Measure.decibels(samples, 0, 8_820);
    }

    @ParameterizedTest
    @CsvSource({"4, 0", "4, 3", "3, 0", "3, 5", "2, 2", "1, 7"})
    void slapAndPopAreLouderBrighterAndQuickerThanAFinger(int string, int fret) {
        float[] finger = play(string, fret, Technique.FINGER);
        float[] slap = play(string, fret, Technique.SLAP);
        float[] pop = play(string, fret, Technique.POP);
        assertThat(level(slap) - level(finger)).isBetween(2.0, 6.5);
        assertThat(level(pop) - level(finger)).isBetween(3.0, 6.5);
        assertThat(centroid(slap)).isGreaterThan(centroid(finger) * 2);
        assertThat(centroid(pop)).isGreaterThan(centroid(finger) * 2);
        assertThat(Measure.share(pop, 0, FIFTY_MS, 3_000))
                .isGreaterThan(Measure.share(finger, 0, FIFTY_MS, 3_000) * 30);
        assertThat(Measure.share(slap, 0, FIFTY_MS, 3_000))
                .isGreaterThan(Measure.share(finger, 0, FIFTY_MS, 3_000) * 10);
        // a blow of 1 to 3 ms, a release under 1 ms, a finger that lets go in 5 to 10 ms
        assertThat(Measure.attack(slap, 0)).isLessThan(0.003);
        // rule: thumb-contact
        assertThat(StringStrokes.CONTACT_SECONDS).isBetween(0.001, 0.003);
        assertThat(Measure.attack(pop, 0)).isLessThan(0.001);
        assertThat(Excitation.of(Technique.FINGER).rise()).isBetween(0.005, 0.01);
        // ours: half of the peak comes on the way, or with the first period
        assertThat(Measure.attack(finger, 0)).isBetween(0.002, 0.02);
    }

    @ParameterizedTest
    @CsvSource({
        "SLAP, 4",
        "SLAP, 3",
        "SLAP, 2",
        "SLAP, 1",
        "POP, 4",
        "POP, 3",
        "POP, 2",
        "POP, 1",
        "THUMB_UP, 4",
        "THUMB_UP, 2",
        "THUMB, 4",
        "FINGER, 1"
    })
    void neighbouringFretsSoundAlike(Technique hand, int string) {
        // rule: fret-contact: within 2 dB and 30 % of the centroid
        float[] before = brief(string, 0, hand);
        for (int fret = 1; fret <= 24; fret++) {
            float[] samples = brief(string, fret, hand);
            assertThat(level(samples)).as("level at fret %d", fret).isCloseTo(level(before), within(2.0));
            assertThat(centroid(samples) / centroid(before))
                    .as("centroid at fret %d", fret)
                    .isBetween(1 / 1.3, 1.3);
            before = samples;
        }
    }

    @ParameterizedTest
    @CsvSource({"4, 41.2034", "3, 55", "2, 73.4162"})
    void aSlappedNoteHasItsFundamental(int string, double open) {
        // rule: fret-contact: within 10 dB of the strongest partial
        for (int fret = 0; fret <= 7; fret++) {
            float[] samples = brief(string, fret, Technique.SLAP);
            double hertz = open * Math.pow(2, fret / 12.0);
            double strongest = 0;
            for (int k = 2; k <= 24; k++) {
                strongest = Math.max(strongest, heard(samples, hertz, 1e-4, k));
            }
            assertThat(20 * Math.log10(heard(samples, hertz, 0, 1) / strongest))
                    .as("fret %d", fret)
                    .isGreaterThan(-10);
        }
    }

    private static float[] brief(int string, int fret, Technique hand) {
        return Played.from(line(quarters(240), bar(note(f(0, 1), f(1, 1), Place.of(string, fret), hand))));
    }

    @Test
    void aNoteIsNeverPlayedTwiceTheSame() {
        var again = Played.from(line(
                quarters(120),
                bar(
                        note(f(0, 1), f(1, 4), Place.of(4, 5), Technique.FINGER),
                        note(f(1, 4), f(1, 4), Place.of(4, 5), Technique.FINGER))));
        double apart = 0;
        double power = 0;
        int beat = RATE / 2;
        for (int i = 0; i < beat / 2; i++) {
            apart += Math.pow(again[i] - again[beat + i], 2);
            power += again[i] * again[i];
        }
        // ours: they differ by more than a hundredth of their amplitude, and are as loud within 1.5 dB
        assertThat(10 * Math.log10(apart / power)).isBetween(-40.0, 0.0);
        assertThat(Measure.decibels(again, beat, beat / 2))
                .isCloseTo(Measure.decibels(again, 0, beat / 2), within(1.5));
    }

    @ParameterizedTest
    @EnumSource(
            value = Technique.class,
            names = {"FINGER", "PICK", "SLAP"})
    void aHarderStrokeIsLouderAndBrighter(Technique hand) {
        // rule: technique-sound: what lies over 2 kHz grows faster than the rest
        double loud = -100;
        double bright = 0;
        for (var dynamic : List.of("pp", "p", "mf", "ff")) {
            float[] samples = written("1-4 E3 " + hand.name().toLowerCase(Locale.ROOT) + " " + dynamic);
            assertThat(level(samples)).as(dynamic).isGreaterThan(loud + 0.8);
            assertThat(Measure.share(samples, 0, FIFTY_MS, 2_000)).as(dynamic).isGreaterThan(bright * 1.1);
            loud = level(samples);
            bright = Measure.share(samples, 0, FIFTY_MS, 2_000);
        }
    }

    /** Where the frets let go of the string, nothing is heard; the spectrum over which a step stands out. */
    @ParameterizedTest
    @CsvSource({"3, 13, SLAP", "3, 14, SLAP", "3, 17, SLAP", "3, 15, POP", "4, 5, SLAP"})
    void nothingTicksInsideANote(int string, int fret, Technique hand) {
        float[] samples = brief(string, fret, hand);
        int period =
                (int) (1.05 * RATE / (440 * Math.pow(2, (new int[] {43, 38, 33, 28}[string - 1] + fret - 69) / 12.0)));
        double before = roughest(samples, 0, period);
        for (int from = period; from < RATE * 4 / 10; from += period) {
            double now = roughest(samples, from, from + period);
            if (from > RATE * 3 / 100) {
                // ours: within 12 dB of the turn before
                assertThat(now).as("after %d samples", from).isLessThan(4 * before);
            }
            before = now;
        }
    }

    /** The greatest third difference of samples. */
    private static double roughest(float[] samples, int from, int to) {
        double roughest = 1e-5;
        for (int i = from; i < to; i++) {
            double third = samples[i + 3] - 3.0 * samples[i + 2] + 3.0 * samples[i + 1] - samples[i];
            roughest = Math.max(roughest, Math.abs(third));
        }
        return roughest;
    }

    private static float[] written(String bar) {
        return Played.from(LineText.read("tempo 84\nbar 1\n" + bar + "\n").line());
    }

    @Test
    void theThumbRattlesMoreThanItRings() {
        // contact with the frets: the high part of a slap falls much faster than that of a note without rattle would
        float[] slap = play(4, 0, Technique.SLAP);
        double early = Measure.share(slap, 0, FIFTY_MS, 2_000);
        double late = Measure.share(slap, RATE / 2, FIFTY_MS, 2_000);
        assertThat(early).isGreaterThan(late * 10);
    }

    @Test
    void aSlapKnocksTheHarderTheMoreItRattles() {
        // the gap is fixed, so a stroke of twice the level is brighter: conditional reflection (Rank and Kubin 1997)
        var soft =
                note(f(0, 1), f(1, 1), Place.of(4, 0), Technique.SLAP).withOrnaments(Ornaments.NONE.with(Mark.GHOST));
        assertThat(centroid(play(4, 0, Technique.SLAP))).isGreaterThan(centroid(play(soft)) * 1.5);
    }

    @Test
    void theThumbsDownstrokeIsASlapAndItsUpstrokeIsSofterInTone() {
        float[] down = play(4, 0, Technique.THUMB_DOWN);
        float[] up = play(4, 0, Technique.THUMB_UP);
        assertThat(down).isEqualTo(play(4, 0, Technique.SLAP));
        assertThat(centroid(up)).isLessThan(centroid(down));
        assertThat(level(up)).isCloseTo(level(down), within(4.0));
    }

    @Test
    void aMutedNoteIsDarkAndShort() {
        // 0.1 to 0.25 of the decay of 7.5 s that the rule decay-of-strings gives the A string at fret 5
        float[] muted = play(3, 5, Technique.MUTE);
        float[] finger = play(3, 5, Technique.FINGER);
        double decay = 60
                / (20
                        * Math.log10(Measure.partial(muted, RATE / 8, 73.4162)
                                / Measure.partial(muted, RATE * 5 / 8, 73.4162)))
                * 0.5;
        assertThat(decay).isBetween(0.1 * 7.5, 0.25 * 7.5);
        // rule: technique-sound: -3 dB, before it dies away; 1.5 is ours
        assertThat(Measure.decibels(muted, 0, FIFTY_MS))
                .isCloseTo(Measure.decibels(finger, 0, FIFTY_MS) - 3, within(1.5));
        assertThat(Measure.share(muted, 0, 8_820, 1_000)).isLessThan(Measure.share(finger, 0, 8_820, 1_000));
    }

    @Test
    void aGhostNoteIsSoftAndDullButHasItsPitch() {
        var ghost =
                note(f(0, 1), f(1, 1), Place.of(3, 5), Technique.FINGER).withOrnaments(Ornaments.NONE.with(Mark.GHOST));
        float[] samples = play(ghost);
        float[] plain = play(3, 5, Technique.FINGER);
        assertThat(level(samples)).isLessThan(level(plain) - 9);
        assertThat(centroid(samples)).isLessThan(centroid(plain));
        // A string, fret 5: D2, 73.4162 Hz (ISO 16)
        assertThat(Measure.cents(Measure.hertz(samples, 4_410, 73.4162), 73.4162))
                .isCloseTo(0, within(3.0));
    }

    @Test
    void aHammeredAndAPulledNoteComeWithoutAStroke() {
        float[] hammered = play(note(f(0, 1), f(1, 4), 5), by(Arrival.Kind.HAMMER, f(1, 4), f(1, 2), 7));
        float[] pulled = play(note(f(0, 1), f(1, 4), 7), by(Arrival.Kind.PULL, f(1, 4), f(1, 2), 5));
        // E string: fret 7 B1 61.7354 Hz, fret 5 A1 55 Hz (ISO 16)
        assertThat(Measure.cents(Measure.hertz(hammered, RATE + RATE / 8, 61.7354), 61.7354))
                .isCloseTo(0, within(3.0));
        assertThat(Measure.cents(Measure.hertz(pulled, RATE + RATE / 8, 55), 55))
                .isCloseTo(0, within(3.0));
    }

    @ParameterizedTest
    @EnumSource(
            value = Arrival.Kind.class,
            names = {"HAMMER", "PULL"})
    void legatoSetsInUnderAPluck(Arrival.Kind kind) {
        // rule: legato-attack: on the whole 3 to 6 dB; how the string just swings makes some of it, so each is given
        // more
        double sum = 0;
        int[][] cases = {{3, 5, 60}, {5, 7, 120}, {0, 2, 180}, {7, 9, 120}};
        for (int[] each : cases) {
            int from = kind == Arrival.Kind.HAMMER ? each[0] : each[1];
            int to = kind == Arrival.Kind.HAMMER ? each[1] : each[0];
            int beat = RATE * 30 / each[2];
            int heard = Math.min(4_410, beat);
            float[] samples = Played.from(
                    line(quarters(each[2]), bar(note(f(0, 1), f(1, 8), from), by(kind, f(1, 8), f(1, 4), to))));
            double under = Measure.decibels(samples, 0, heard) - Measure.decibels(samples, beat, heard);
            assertThat(under).as("%d to %d", from, to).isBetween(0.0, 10.0);
            sum += under;
        }
        assertThat(sum / cases.length).isBetween(3.0, 6.5);
    }

    @ParameterizedTest
    @EnumSource(
            value = Arrival.Kind.class,
            names = {"HAMMER", "PULL"})
    void legatoOnAStringThatHasRungForAWhileSetsInUnderAPluckToo(Arrival.Kind kind) {
        // rule: legato-attack: the hand that comes down brings its own
        double sum = 0;
        int beat = RATE * 60 / 84;
        int cases = 0;
        for (char string : "EADG".toCharArray()) {
            for (int[] each : new int[][] {{0, 2}, {5, 7}, {7, 9}}) {
                String from = string + "" + (kind == Arrival.Kind.HAMMER ? each[0] : each[1]);
                String to = string + "" + (kind == Arrival.Kind.HAMMER ? each[1] : each[0]);
                float[] samples =
                        written("1 " + from + "\n2 " + to + " " + kind.name().toLowerCase(Locale.ROOT) + "\n3 " + to);
                sum += Measure.decibels(samples, 2 * beat, 4_410) - Measure.decibels(samples, beat, 4_410);
                cases++;
            }
        }
        assertThat(sum / cases).isBetween(3.0, 6.0);
    }

    @ParameterizedTest
    @CsvSource({"HAMMER, POP", "PULL, POP", "HAMMER, SLAP", "PULL, SLAP"})
    void legatoSetsInUnderASlapOrAPopToo(Arrival.Kind kind, Technique hand) {
        // rule: legato-attack: 3 to 6 dB on the whole, up to 7.5 after a slap, over 200 ms; 10 at one place is ours
        double sum = 0;
        int cases = 0;
        int eighth = RATE / 4;
        for (int string = 1; string <= 4; string++) {
            for (int[] each : new int[][] {{2, 4}, {3, 5}, {7, 9}, {10, 12}}) {
                var first = Place.of(string, kind == Arrival.Kind.HAMMER ? each[0] : each[1]);
                var second = Place.of(string, kind == Arrival.Kind.HAMMER ? each[1] : each[0]);
                var arriving = new Note(
                        f(1, 8), f(1, 8), second, Optional.empty(), Optional.of(Arrival.by(kind)), Ornaments.NONE);
                float[] samples = Played.from(line(quarters(120), bar(note(f(0, 1), f(1, 8), first, hand), arriving)));
                double under = Measure.decibels(samples, 0, 8_820) - Measure.decibels(samples, eighth + 441, 8_379);
                assertThat(under).as("%s to %s", first, second).isLessThan(10);
                sum += under;
                cases++;
            }
        }
        assertThat(sum / cases).isBetween(3.0, hand == Technique.POP ? 6.0 : 7.5);
    }

    /** Each hand that comes down gives as much as it takes; common practice, no source. */
    @Test
    void hammersAndPullsThatFollowOneAnotherFadeAwayNoSoonerThanTheStringItself() {
        int sixteenth = RATE / 8;
        var notes = new ArrayList<Note>();
        notes.add(note(f(0, 1), f(1, 16), 5));
        for (int i = 1; i < 16; i++) {
            var kind = i % 2 == 1 ? Arrival.Kind.HAMMER : Arrival.Kind.PULL;
            notes.add(by(kind, f(i, 16), f(1, 16), i % 2 == 1 ? 7 : 5));
        }
        float[] slurred = Played.from(line(quarters(120), bar(notes.toArray(Note[]::new))));
        float[] held = Played.from(line(quarters(120), bar(note(f(0, 1), f(1, 1), 5))));
        assertThat(fall(slurred, sixteenth)).isLessThan(fall(held, sixteenth) + 3);
    }

    private static double fall(float[] samples, int sixteenth) {
        double early = Measure.decibels(samples, sixteenth, 4_410);
        return early - Measure.decibels(samples, 12 * sixteenth, 4_410);
    }

    @Test
    void aTappedNoteIsStruckAtItsFret() {
        float[] tapped = play(1, 12, Technique.TAP);
        // G3, 195.9977 Hz (ISO 16)
        assertThat(Measure.cents(Measure.hertz(tapped, 4_410, 195.9977), 195.9977))
                .isCloseTo(0, within(2.0));
        assertThat(centroid(tapped)).isGreaterThan(centroid(play(1, 12, Technique.FINGER)));
        assertThat(level(tapped)).isLessThan(level(play(1, 12, Technique.FINGER)));
    }

    @ParameterizedTest
    @CsvSource({
        // partial k of the open string sounds 12 log2 k above it: fret 12 the second, 7 the third, 5 the fourth
        // (physics)
        "2, 12, 73.4162, 2",
        "1, 7, 97.9989, 3",
        "1, 5, 97.9989, 4"
    })
    void aHarmonicLeavesOnlyThePartialsWithANodeUnderTheFinger(int string, int fret, double open, int partial) {
        var touched = note(f(0, 1), f(1, 1), Place.of(string, fret), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.with(Harmonic.NATURAL));
        float[] samples = play(touched);
        double sounding = Measure.partial(samples, RATE / 2, open * partial);
        for (int k = 1; k < 2 * partial; k++) {
            if (k != partial) {
                assertThat(20 * Math.log10(sounding / Measure.partial(samples, RATE / 2, open * k)))
                        .as("partial %d", k)
                        .isGreaterThan(30);
            }
        }
        assertThat(Measure.cents(Measure.hertz(samples, RATE / 2, open * partial), open * partial))
                .isCloseTo(0, within(2.0));
    }

    @ParameterizedTest
    @CsvSource({"1, 97.9989, 5e-5", "2, 73.4162, 8e-5", "3, 55, 1.2e-4", "4, 41.2034, 2e-4"})
    void theWantedPartialOfANaturalHarmonicIsTheLoudest(int string, double open, double stiffness) {
        // rule: harmonic-purity, string-stiffness; the nodes of a string divide it into equal parts (physics)
        var partials = Map.of(3, 6, 4, 5, 5, 4, 7, 3, 9, 5, 12, 2);
        partials.forEach((fret, wanted) -> {
            var touched = note(f(0, 1), f(1, 1), Place.of(string, fret), Technique.FINGER)
                    .withOrnaments(Ornaments.NONE.with(Harmonic.NATURAL));
            float[] samples = play(touched);
            double sounding = heard(samples, open, stiffness, wanted);
            for (int k = 1; k <= 14; k++) {
                if (k != wanted) {
                    assertThat(20 * Math.log10(sounding / heard(samples, open, stiffness, k)))
                            .as("fret %d, partial %d", fret, k)
                            .isGreaterThan(6);
                }
            }
        });
    }

    private static double heard(float[] samples, double open, double stiffness, int partial) {
        double hertz = partial * open * Math.sqrt(1 + stiffness * partial * partial);
        return Measure.partial(samples, RATE / 4, hertz);
    }

    /**
     * rule: pickup-place. At 2/11 of the string partial 11 stands still, while 10 and 12 move: at least 6 dB below their
     * mean by |sin(11 pi p)| for p of 0.175 to 0.19. A pick at 0.13 rouses all three; rule: string-stiffness, A string.
     */
    @Test
    void thePickupDoesNotHearWhatStandsStillOverIt() {
        float[] picked = play(3, 0, Technique.PICK);
        double between = (heard(picked, 55, 1.2e-4, 10) + heard(picked, 55, 1.2e-4, 12)) / 2;
        assertThat(heard(picked, 55, 1.2e-4, 11)).isLessThan(between / 2);
    }

    @Test
    void aSlideArrivesWithoutAStroke() {
        float[] slid = play(note(f(0, 1), f(1, 4), 3), by(Arrival.Kind.SLIDE, f(1, 4), f(1, 2), 10));
        // E string fret 10: D2, 73.4162 Hz (ISO 16)
        assertThat(Measure.cents(Measure.hertz(slid, RATE + RATE / 8, 73.4162), 73.4162))
                .isCloseTo(0, within(3.0));
        assertThat(Measure.decibels(slid, RATE, 4_410)).isLessThan(Measure.decibels(slid, RATE * 3 / 4, 4_410) + 3);
    }

    @ParameterizedTest
    @CsvSource({"3, 10", "0, 12", "5, 7"})
    void aSlideArrivesSofterThanItBegan(int from, int to) {
        // rule: legato-attack
        int beat = RATE / 4;
        float[] slid = Played.from(
                line(quarters(120), bar(note(f(0, 1), f(1, 8), from), by(Arrival.Kind.SLIDE, f(1, 8), f(1, 2), to))));
        assertThat(Measure.decibels(slid, beat + RATE / 25, 4_410)).isLessThan(Measure.decibels(slid, 0, 4_410) - 1);
    }

    @Test
    void vibratoWaversByTenToThirtyCents() {
        // rule: vibrato-figures: 4 to 6 Hz, 10 to 30 cents
        var wavering = note(f(0, 1), f(1, 1), Place.of(1, 12), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.with(Mark.VIBRATO));
        float[] samples = play(wavering);
        var cents = new ArrayList<Double>();
        for (int from = RATE / 2; from < RATE * 2; from += RATE / 50) {
            cents.add(Measure.cents(Measure.quickHertz(samples, from, 195.9977), 195.9977));
        }
        double highest = cents.stream().max(Double::compare).orElseThrow();
        double lowest = cents.stream().min(Double::compare).orElseThrow();
        assertThat(highest).isBetween(10.0, 30.0);
        assertThat(lowest).isBetween(-30.0, -10.0);
        var rising = IntStream.range(1, cents.size())
                .filter(i -> cents.get(i - 1) < 0 && cents.get(i) >= 0)
                .toArray();
        assertThat(rising).hasSizeGreaterThan(3);
        double turns = rising.length - 1;
        assertThat(turns * 50 / (rising[rising.length - 1] - rising[0])).isBetween(4.0, 6.0);
    }

    @Test // rule: technique-sound: place, release, brightness and decay
    void strokesMeetTheStringAsTheTableSays() {
        isWithin(Excitation.of(Technique.FINGER), 0.15, 0.25, 1_500, 3_000, 1, 1);
        isWithin(Excitation.of(Technique.SLAP), 0.28, 0.35, 4_000, 7_000, 0.8, 0.8);
        isWithin(Excitation.of(Technique.POP), 0.15, 0.22, 6_000, 10_000, 0.8, 0.8);
        isWithin(Excitation.of(Technique.MUTE), 0.05, 0.12, 500, 1_000, 0.1, 0.25);
        for (var hand : Technique.values()) {
            isWithin(Excitation.dead(hand), 0, 1, 1_000, 4_000, 0.01, 0.03);
        }
        assertThat(Excitation.of(Technique.FINGER).rise()).isBetween(0.005, 0.01);
        assertThat(Excitation.of(Technique.POP).rise()).isLessThan(0.001);
    }

    private static void isWithin(
            Excitation excitation, double near, double far, double dull, double bright, double least, double most) {
        assertThat(excitation.place().fraction()).isBetween(near, far);
        assertThat(excitation.brightness()).isBetween(dull, bright);
        assertThat(excitation.sustain()).isBetween(least, most);
    }

    @ParameterizedTest
    @EnumSource(Technique.class)
    void noStepIsSteeperThanTheNoteItself(Technique hand) {
        // starts, stops and strokes on a sounding string; steps of neighbouring samples
        for (int string = 1; string <= 4; string++) {
            var first = note(f(0, 1), f(1, 4), Place.of(string, 5), hand);
            var again = note(f(1, 4), f(1, 8), Place.of(string, 9), hand);
            float[] samples = play(first, again);
            double own = Measure.steepest(samples, 64, RATE);
            assertThat(Measure.steepest(samples, 0, 64))
                    .as("start, string %d", string)
                    .isLessThanOrEqualTo(own);
            assertThat(Measure.steepest(samples, RATE - 8, RATE + 64))
                    .as("stroke, string %d", string)
                    .isLessThanOrEqualTo(Math.max(own, Measure.steepest(samples, RATE + 64, RATE * 5 / 4)));
            int end = samples.length;
            assertThat(Measure.steepest(samples, RATE * 13 / 10, end))
                    .as("stop, string %d", string)
                    .isLessThanOrEqualTo(own);
        }
    }

    @ParameterizedTest
    @EnumSource(Arrival.Kind.class)
    void noStepIsSteeperWhereTheSoundIsTakenOver(Arrival.Kind kind) {
        int from = kind == Arrival.Kind.PULL ? 7 : 5;
        int to = kind == Arrival.Kind.PULL ? 5 : 7;
        float[] samples = play(note(f(0, 1), f(1, 4), from), by(kind, f(1, 4), f(1, 4), to));
        // ours: what a hammer sends along the string is up to a fifth steeper than a pluck
        assertThat(Measure.steepest(samples, RATE - 8, RATE + 400))
                .isLessThanOrEqualTo(1.2 * Measure.steepest(samples, 0, RATE - 8));
    }

    @ParameterizedTest
    @EnumSource(Technique.class)
    void theMeanIsNothing(Technique hand) {
        // below -60 dBFS, where a finger's stroke peaks at 1
        assertThat(Math.abs(Measure.mean(play(4, 0, hand)))).isLessThan(0.001);
        assertThat(Math.abs(Measure.mean(play(1, 12, hand)))).isLessThan(0.001);
    }
}
