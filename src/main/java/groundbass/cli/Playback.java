package groundbass.cli;

import groundbass.groove.BassTone;
import groundbass.groove.ChordTone;
import groundbass.groove.Instruments;
import groundbass.midi.Opening;
import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the band of sounds and MIDI files plays on. */
final class Playback {
    @Option(
            names = "--bass",
            paramLabel = "amplifier|direct",
            description = "What the bass is heard through: a light amplifier and cabinet, or nothing.",
            converter = Bass.class)
    private BassTone bass = Instruments.USUAL.bass();

    @Option(
            names = "--chords",
            paramLabel = "keys|guitar",
            description = "What the chords are played on.",
            converter = Chords.class)
    private ChordTone chords = Instruments.USUAL.chords();

    @Option(
            names = "--no-count-in",
            description = "Begins the MIDI file with bar 1, so that programs number bars as the sheet does.")
    private boolean bare;

    Instruments instruments() {
        return new Instruments(bass, chords);
    }

    Opening opening() {
        return bare ? Opening.FIRST_BAR : Opening.COUNT_IN;
    }

    static final class Bass implements ITypeConverter<BassTone> {
        @Override
        public BassTone convert(String text) {
            return BassTone.ofWord(text).orElseThrow(() -> unknown(text, BassTone.values(), BassTone::word));
        }
    }

    static final class Chords implements ITypeConverter<ChordTone> {
        @Override
        public ChordTone convert(String text) {
            return ChordTone.ofWord(text).orElseThrow(() -> unknown(text, ChordTone.values(), ChordTone::word));
        }
    }

    private static <T> TypeConversionException unknown(String text, T[] known, Function<T, String> word) {
        var words = Arrays.stream(known).map(word).collect(Collectors.joining(" nor "));
        return new TypeConversionException("'" + text + "' is neither " + words);
    }
}
