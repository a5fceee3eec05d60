package groundbass.musicxml;

import groundbass.score.Fraction;
import jakarta.xml.bind.JAXBElement;
import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Notations;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.ScorePartwise.Part.Measure;
import org.audiveris.proxymusic.StaffTuning;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.Step;
import org.audiveris.proxymusic.Technical;
import org.audiveris.proxymusic.util.Marshalling;

/**
 * A document as a library that knows the format reads it, and as its specification says that it is to be understood:
 * positions by duration, backup and chord, pitches by step, alter, octave and transposition. Knows nothing of the writer.
 */
final class ReadScore {
    private static final Map<Step, Integer> SEMITONES =
            Map.of(Step.C, 0, Step.D, 2, Step.E, 4, Step.F, 5, Step.G, 7, Step.A, 9, Step.B, 11);

    private final List<Bar> bars = new ArrayList<>();
    private final Map<Integer, Integer> open = new HashMap<>();
    private BigDecimal divisions = BigDecimal.ONE;
    private int octaveChange;
    private int fifths;

    /** One head. Times are in whole notes; onsets count from the beginning of the bar. */
    record Head(Note note, Fraction onset, Fraction length, int sounding) {
        int staff() {
            return note.getStaff().intValue();
        }

        boolean isGrace() {
            return note.getGrace() != null;
        }

        boolean ties(StartStop type) {
            return note.getTie().stream().anyMatch(tie -> tie.getType() == type);
        }

        Optional<Integer> string() {
            return Optional.ofNullable(technical("string")).map(value -> Integer.valueOf(value.toString()));
        }

        Optional<Integer> fret() {
            return Optional.ofNullable(technical("fret")).map(value -> Integer.valueOf(value.toString()));
        }

        String shape() {
            return note.getNotehead() == null
                    ? ""
                    : note.getNotehead().getValue().value();
        }

        Object technical(String name) {
            return elements()
                    .filter(element -> element.getName().getLocalPart().equals(name))
                    .map(ReadScore::value)
                    .findFirst()
                    .orElse(null);
        }

        private Stream<JAXBElement<?>> elements() {
            return note.getNotations().stream()
                    .map(Notations::getTiedOrSlurOrTuplet)
                    .flatMap(List::stream)
                    .filter(Technical.class::isInstance)
                    .map(Technical.class::cast)
                    .map(Technical::getUpBowOrDownBowOrHarmonic)
                    .flatMap(List::stream);
        }
    }

    /** One bar, with how far its voices fill it and the signature that holds. */
    record Bar(Measure measure, List<Head> heads, Fraction length, int fifths) {
        Stream<Head> on(int staff) {
            return heads.stream().filter(head -> head.staff() == staff);
        }
    }

    private ReadScore() {}

    static ReadScore of(byte[] document) {
        try {
            var score = (ScorePartwise) Marshalling.unmarshal(new ByteArrayInputStream(document));
            var read = new ReadScore();
            score.getPart().get(0).getMeasure().forEach(read::read);
            return read;
        } catch (Marshalling.UnmarshallingException e) {
            throw new AssertionError(e);
        }
    }

    List<Bar> bars() {
        return bars;
    }

    /** The sounding pitch of each open string, by its number from the highest. */
    Map<Integer, Integer> open() {
        return open;
    }

    private static Object value(JAXBElement<?> element) {
        try {
            return element.getValue().getClass().getMethod("getValue").invoke(element.getValue());
        } catch (ReflectiveOperationException e) {
            return element.getValue();
        }
    }

    private void read(Measure measure) {
        var heads = new ArrayList<Head>();
        var position = Fraction.ZERO;
        var end = Fraction.ZERO;
        var onset = Fraction.ZERO;
        for (var item : measure.getNoteOrBackupOrForward()) {
            if (item instanceof Attributes attributes) {
                read(attributes);
            } else if (item instanceof Backup backup) {
                position = position.minus(time(backup.getDuration()));
            } else if (item instanceof Forward forward) {
                position = position.plus(time(forward.getDuration()));
            } else if (item instanceof Note note) {
                var length = note.getGrace() == null ? time(note.getDuration()) : Fraction.ZERO;
                boolean together = note.getChord() != null;
                onset = together ? onset : position;
                position = together ? position : position.plus(length);
                if (note.getPitch() != null) {
                    heads.add(new Head(note, onset, length, sounding(note)));
                }
            }
            if (position.isNegative()) {
                throw new AssertionError("before the bar, measure " + measure.getNumber());
            }
            end = end.max(position);
        }
        if (!position.equals(end)) {
            throw new AssertionError("the last voice does not fill measure " + measure.getNumber());
        }
        bars.add(new Bar(measure, heads, end, fifths));
    }

    private void read(Attributes attributes) {
        divisions = attributes.getDivisions() == null ? divisions : attributes.getDivisions();
        attributes.getKey().forEach(key -> fifths = key.getFifths().intValue());
        attributes
                .getTranspose()
                .forEach(transpose -> octaveChange = transpose.getOctaveChange().intValue());
        attributes.getStaffDetails().forEach(details -> {
            int strings = details.getStaffLines().intValue();
            details.getStaffTuning()
                    .forEach(tuning -> open.put(strings + 1 - tuning.getLine().intValue(), pitch(tuning)));
        });
    }

    private static int pitch(StaffTuning tuning) {
        return midi(tuning.getTuningStep(), tuning.getTuningAlter(), tuning.getTuningOctave());
    }

    private int sounding(Note note) {
        var pitch = note.getPitch();
        return midi(pitch.getStep(), pitch.getAlter(), pitch.getOctave() + octaveChange);
    }

    /** MIDI numbers, middle C (octave 4) being 60. */
    private static int midi(Step step, BigDecimal alter, int octave) {
        return 12 * (octave + 1) + SEMITONES.get(step) + (alter == null ? 0 : alter.intValueExact());
    }

    private Fraction time(BigDecimal duration) {
        return Fraction.of(duration.longValueExact(), 4 * divisions.longValueExact());
    }

    /** A note as it sounds: ties joined, by moment from the beginning of the line as it is written. */
    record Sound(Fraction at, Fraction length, int pitch, int string, int fret, boolean dead) {
        static final Comparator<Sound> ORDER = Comparator.comparing(Sound::at).thenComparing(Sound::string);
    }

    /** What the tablature says. */
    List<Sound> sounds() {
        var sounds = new ArrayList<Sound>();
        var held = new HashMap<Integer, Integer>();
        var start = Fraction.ZERO;
        for (var bar : bars) {
            for (var head : bar.on(2)
                    .filter(each -> !each.isGrace())
                    .sorted(Comparator.comparing(Head::onset))
                    .toList()) {
                int string = head.string().orElseThrow();
                if (head.ties(StartStop.STOP)) {
                    int index = held.get(string);
                    var before = sounds.get(index);
                    if (!before.at().plus(before.length()).equals(start.plus(head.onset()))
                            || before.pitch() != head.sounding()) {
                        throw new AssertionError(
                                "no such tie, measure " + bar.measure().getNumber());
                    }
                    sounds.set(
                            index,
                            new Sound(
                                    before.at(),
                                    before.length().plus(head.length()),
                                    before.pitch(),
                                    string,
                                    before.fret(),
                                    before.dead()));
                } else {
                    held.put(string, sounds.size());
                    sounds.add(new Sound(
                            start.plus(head.onset()),
                            head.length(),
                            head.sounding(),
                            string,
                            head.fret().orElseThrow(),
                            head.shape().equals("x")));
                }
            }
            start = start.plus(bar.length());
        }
        return sounds.stream().sorted(Sound.ORDER).toList();
    }
}
