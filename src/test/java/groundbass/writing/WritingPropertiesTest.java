package groundbass.writing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.writing.BeamGroup.Part;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** What holds of every line, on random ones; the seed stands in the message. */
class WritingPropertiesTest {
    private static final int LINES = 400;

    /** A note by the bar it begins in. */
    private record Struck(int bar, Note note) {}

    /** One head of it, on a time axis of its own. */
    private record Seen(Fraction from, Fraction to, Head head) {}

    private static void forAll(BiConsumer<String, Line> claim) {
        for (long seed = 0; seed < LINES; seed++) {
            claim.accept("seed " + seed, RandomLines.line(seed));
        }
    }

    private static void forAllVoices(VoiceClaim claim) {
        forAll((seed, line) -> {
            for (var bar : Writing.of(line).bars()) {
                bar.voices()
                        .forEach(voice ->
                                claim.check(seed + " bar " + bar.inForce().number(), bar, voice));
            }
        });
    }

    private interface VoiceClaim {
        void check(String where, WrittenBar bar, Voice voice);
    }

    @Test
    void voicesFillTheirBarsWithoutGaps() {
        forAllVoices((where, bar, voice) -> {
            var at = bar.bar().from();
            for (var element : voice.elements()) {
                assertThat(element.onset()).as(where).isEqualTo(at);
                at = at.plus(element.length());
            }
            assertThat(at).as(where).isEqualTo(bar.bar().to());
        });
    }

    /** rule: tuplet-sum: a shape lasts what it says, less what its tuplet takes. */
    @Test
    void shapesLastWhatTheySay() {
        forAllVoices((where, bar, voice) -> {
            for (int i = 0; i < voice.elements().size(); i++) {
                var element = voice.elements().get(i);
                boolean wholeBar = element instanceof Rest rest && rest.wholeBar();
                if (!wholeBar) {
                    assertThat(element.value().length().times(squeeze(voice, i)))
                            .as(where + " element " + i)
                            .isEqualTo(element.length());
                }
            }
        });
    }

    private static Fraction squeeze(Voice voice, int element) {
        return voice.tuplets().stream()
                .filter(tuplet -> tuplet.first() <= element && element <= tuplet.last())
                .map(tuplet -> Fraction.of(tuplet.normal(), tuplet.actual()))
                .findFirst()
                .orElse(Fraction.ONE);
    }

    @Test
    void everyNoteIsOneChainOfTiedHeadsAsLongAsItself() {
        forAll((seed, line) -> {
            var seen = seen(Writing.of(line));
            int notes = line.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
            assertThat(seen).as(seed).hasSize(notes);
            seen.forEach((struck, heads) -> checkChain(seed + " " + struck, struck.note(), heads));
        });
    }

    private static void checkChain(String where, Note note, List<Seen> heads) {
        for (int i = 0; i < heads.size(); i++) {
            var head = heads.get(i);
            assertThat(head.head().tiedFrom()).as(where).isEqualTo(i > 0);
            assertThat(head.head().tiedTo()).as(where).isEqualTo(i + 1 < heads.size());
            if (i > 0) {
                assertThat(head.from()).as(where).isEqualTo(heads.get(i - 1).to());
            }
        }
        var length = heads.get(heads.size() - 1).to().minus(heads.get(0).from());
        assertThat(length).as(where).isEqualTo(note.length());
    }

    private static Map<Struck, List<Seen>> seen(WrittenLine written) {
        var all = new HashMap<Struck, List<Seen>>();
        var start = Fraction.ZERO;
        for (var bar : written.bars()) {
            var zero = start.minus(bar.bar().from());
            for (var voice : bar.voices()) {
                for (var element : voice.elements()) {
                    if (element instanceof Chord chord) {
                        var from = zero.plus(chord.onset());
                        for (var head : chord.heads()) {
                            all.computeIfAbsent(new Struck(head.noteBar(), head.note()), key -> new ArrayList<>())
                                    .add(new Seen(from, from.plus(chord.length()), head));
                        }
                    }
                }
            }
            start = start.plus(bar.bar().length());
        }
        return all;
    }

    /** rule: beam-simple-metre, beam-compound-metre, beam-grouped-metre, beam-over-rests. */
    @Test
    void beamsStayInTheirBeatUnlessTheyJoinPlainEighths() {
        forAllVoices((where, bar, voice) -> {
            for (var beam : voice.beams()) {
                var elements = voice.elements().subList(beam.first(), beam.last() + 1);
                assertThat(elements.get(0)).as(where).isInstanceOf(Chord.class);
                assertThat(elements.get(elements.size() - 1)).as(where).isInstanceOf(Chord.class);
                boolean inTuplet = voice.tuplets().stream()
                        .anyMatch(tuplet -> tuplet.first() <= beam.first() && beam.last() <= tuplet.last());
                var meter = bar.inForce().meter();
                var last = elements.get(elements.size() - 1).onset();
                boolean oneBeat = last.isBefore(meter.beatEnd(elements.get(0).onset()));
                boolean eighths = !meter.isCompound()
                        && !meter.isGrouped()
                        && elements.stream()
                                .allMatch(element -> element.value().base().beams() == 1);
                assertThat(inTuplet || oneBeat || eighths).as(where).isTrue();
            }
        });
    }

    /** MusicXML 4.0, beam element: at each level a begin is closed by an end, with nothing but continues between. */
    @Test
    void everyBeamLevelThatBeginsEnds() {
        forAllVoices((where, bar, voice) -> {
            for (var beam : voice.beams()) {
                var open = new HashMap<Integer, Part>();
                for (int i = 0; i < beam.parts().size(); i++) {
                    var levels = beam.parts().get(i);
                    var element = voice.elements().get(beam.first() + i);
                    int expected =
                            element instanceof Chord ? element.value().base().beams() : 0;
                    assertThat(levels).as(where).hasSize(expected);
                    for (int level = 0; level < levels.size(); level++) {
                        step(where, open, level, levels.get(level));
                    }
                }
                assertThat(open).as(where).isEmpty();
            }
        });
    }

    private static void step(String where, Map<Integer, Part> open, int level, Part part) {
        switch (part) {
            case BEGIN -> assertThat(open.put(level, part)).as(where).isNull();
            case CONTINUE -> assertThat(open).as(where).containsKey(level);
            case END -> assertThat(open.remove(level)).as(where).isNotNull();
            case FORWARD_HOOK, BACKWARD_HOOK -> assertThat(open).as(where).doesNotContainKey(level);
        }
    }

    /**
     * rule: accidental-for-its-bar, courtesy-accidental, accidental-per-octave; read back by {@link SignReader}, which
     * shares no code with what wrote them.
     */
    @Test
    void whoReadsTheSignsHearsThePitches() {
        forAll((seed, line) -> {
            var reader = new SignReader();
            for (var bar : Writing.of(line).bars()) {
                var graces = new IdentityHashMap<Head, Integer>();
                var heads = reader.read(bar, graces);
                graces.forEach((head, midi) -> assertThat(midi)
                        .as(seed + " bar " + bar.inForce().number() + " grace of " + head.note())
                        .isEqualTo(line.header()
                                .tuning()
                                .midi(new Place.Fretted(
                                        head.note().string(),
                                        head.note()
                                                .arrival()
                                                .orElseThrow()
                                                .graceFret()
                                                .orElseThrow()))));
                heads.forEach(
                        (head, midi) -> head.note().midi(line.header().tuning()).ifPresent(sounding -> assertThat(midi)
                                .as(seed + " bar " + bar.inForce().number() + " " + head.note())
                                .isEqualTo(sounding)));
            }
        });
    }

    @Test
    void onlyASecondVoiceHidesRestsAndNeverAWholeBar() {
        forAllVoices((where, bar, voice) -> {
            boolean hides =
                    voice.elements().stream().anyMatch(element -> element instanceof Rest rest && rest.hidden());
            assertThat(hides && bar.voices().size() == 1).as(where).isFalse();
            assertThat(bar.voices().size() == 2 && voice.elements().stream().noneMatch(Chord.class::isInstance))
                    .as(where)
                    .isFalse();
        });
    }

    @Test
    void everyTupletHasANote() {
        forAllVoices((where, bar, voice) -> {
            for (var tuplet : voice.tuplets()) {
                assertThat(voice.elements().subList(tuplet.first(), tuplet.last() + 1))
                        .as(where)
                        .anyMatch(Chord.class::isInstance);
            }
        });
    }
}
