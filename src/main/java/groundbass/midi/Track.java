package groundbass.midi;

import groundbass.midi.TrackEvent.Rank;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The events of one track, gathered in any order. Layouts: MIDI 1.0 and Standard MIDI Files 1.0 (RP-001).
 * Channels count from zero.
 */
final class Track {
    static final int CENTRE = 0x2000;
    private static final int HIGHEST_BEND = 0x3FFF;
    private static final long SLOWEST_TEMPO = 0xFFFFFF;
    private static final int RELEASE_VELOCITY = 0x40;
    private static final int CLOCKS_PER_WHOLE = 96;
    private static final int THIRTY_SECONDS_PER_QUARTER = 8;

    private final List<TrackEvent> events = new ArrayList<>();

    Track name(String name) {
        return text(0, 0x03, name);
    }

    Track words(long tick, String text) {
        return text(tick, 0x01, text);
    }

    Track copyright(String rights) {
        return text(0, 0x02, rights);
    }

    Track marker(long tick, String text) {
        return text(tick, 0x06, text);
    }

    /** FF 51: microseconds to a quarter, rounded; three bytes hold nothing slower than about 3.6 quarters a minute. */
    Track tempo(long tick, Fraction quartersPerMinute) {
        long micros = Fraction.of(60_000_000)
                .dividedBy(quartersPerMinute)
                .plus(Fraction.of(1, 2))
                .floor();
        micros = Math.min(micros, SLOWEST_TEMPO);
        return meta(tick, 0x51, (int) (micros >> 16), (int) (micros >> 8), (int) micros);
    }

    /** FF 58: figures, MIDI clocks to a click, notated 32nds to a MIDI quarter. */
    Track timeSignature(long tick, int counts, int unit, Fraction click) {
        int clocks = (int) click.times(CLOCKS_PER_WHOLE).floor();
        return meta(tick, 0x58, counts, Integer.numberOfTrailingZeros(unit), clocks, THIRTY_SECONDS_PER_QUARTER);
    }

    Track timeSignature(long tick, Meter meter) {
        return timeSignature(tick, meter.counts(), meter.unit(), meter.pulse());
    }

    /** FF 59: sharps or flats, and 1 for minor; the other modes give their signature as a major key. */
    Track key(long tick, Key key) {
        return meta(tick, 0x59, key.fifths(), key.mode() == Mode.MINOR ? 1 : 0);
    }

    Track program(long tick, int channel, int program) {
        return add(tick, Rank.SETTING, 0xC0 | channel, program);
    }

    Track controller(long tick, int channel, int number, int value) {
        return add(tick, Rank.SETTING, 0xB0 | channel, number, value);
    }

    /** Bank 0, a program, its volume and its place, at the start of the file. */
    Track instrument(int channel, int program, int volume, int place) {
        return controller(0, channel, 0x00, 0)
                .controller(0, channel, 0x20, 0)
                .program(0, channel, program)
                .controller(0, channel, 0x07, volume)
                .controller(0, channel, 0x0A, place);
    }

    /** That the channels behind this one belong together, a note to each (MPE, MMA RP-053): registered parameter 6. */
    Track zone(int master, int members) {
        return controller(0, master, 0x65, 0)
                .controller(0, master, 0x64, 6)
                .controller(0, master, 0x06, members)
                .controller(0, master, 0x65, 0x7F)
                .controller(0, master, 0x64, 0x7F);
    }

    /** Registered parameter 0, then the null parameter, so that later data entries change nothing. */
    Track bendRange(long tick, int channel, int semitones) {
        return controller(tick, channel, 0x65, 0)
                .controller(tick, channel, 0x64, 0)
                .controller(tick, channel, 0x06, semitones)
                .controller(tick, channel, 0x26, 0)
                .controller(tick, channel, 0x65, 0x7F)
                .controller(tick, channel, 0x64, 0x7F);
    }

    /** @param value 0 to 3FFF, 2000 in the middle */
    Track bend(long tick, int channel, int value) {
        return add(tick, Rank.SETTING, 0xE0 | channel, value & 0x7F, value >> 7);
    }

    /** The bend for so many semitones where the range is {@code range}. */
    static int bendOf(double semitones, int range) {
        long value = CENTRE + Math.round(CENTRE * semitones / range);
        return (int) Math.max(0, Math.min(HIGHEST_BEND, value));
    }

    Track note(long on, long off, int channel, int key, int velocity) {
        add(on, Rank.NOTE_ON, 0x90 | channel, key, velocity);
        return add(Math.max(on + 1, off), Rank.NOTE_OFF, 0x80 | channel, key, RELEASE_VELOCITY);
    }

    /** The chunk from {@code start} on, with what is set before it; ends at {@code end} or with its last event. */
    byte[] chunk(long start, long end) {
        var body = new ByteArrayOutputStream();
        long now = start;
        for (var event : events.stream().sorted(TrackEvent.ORDER).toList()) {
            long tick = Math.max(start, event.tick());
            VariableLength.write(body, tick - now);
            body.writeBytes(event.bytes());
            now = tick;
        }
        VariableLength.write(body, Math.max(0, end - now));
        body.writeBytes(new byte[] {(byte) 0xFF, 0x2F, 0});
        return FileChunk.of("MTrk", body.toByteArray());
    }

    private Track text(long tick, int type, String text) {
        byte[] letters = text.getBytes(StandardCharsets.UTF_8);
        int[] data = new int[letters.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = letters[i] & 0xFF;
        }
        return meta(tick, type, data);
    }

    private Track meta(long tick, int type, int... data) {
        var bytes = new ByteArrayOutputStream();
        bytes.write(0xFF);
        bytes.write(type);
        VariableLength.write(bytes, data.length);
        for (int each : data) {
            bytes.write(each);
        }
        events.add(new TrackEvent(tick, Rank.META, bytes.toByteArray()));
        return this;
    }

    /** A system exclusive message at the start, without its first byte, F0. */
    Track exclusive(int... data) {
        var bytes = new ByteArrayOutputStream();
        bytes.write(0xF0);
        VariableLength.write(bytes, data.length);
        for (int each : data) {
            bytes.write(each);
        }
        events.add(new TrackEvent(0, Rank.META, bytes.toByteArray()));
        return this;
    }

    private Track add(long tick, Rank rank, int... data) {
        byte[] bytes = new byte[data.length];
        for (int i = 0; i < data.length; i++) {
            bytes[i] = (byte) data[i];
        }
        events.add(new TrackEvent(tick, rank, bytes));
        return this;
    }
}
