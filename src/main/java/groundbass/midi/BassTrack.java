package groundbass.midi;

import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The line itself: techniques by program, loudness and length; slides, bends and vibrato by pitch bend. On one channel as
 * long as nothing is bent while another string sounds, and no two strings sound one pitch; else each string has a channel
 * of its own, as guitar controllers do, so that a bend moves its string alone and a unison stays two notes (rule:
 * string-per-channel).
 */
final class BassTrack {
    private static final int CHANNEL = 0;

    /** Behind the first, which then speaks for all; they come before that of the drums. */
    private static final int MOST_CHANNELS = 8;

    private static final int VOLUME = 110;
    private static final int MIDDLE = 64;

    /** Wide enough for a slide over an octave. */
    static final int BEND_RANGE = 12;

    /** How often a moving pitch is written down. */
    private static final double STEP_SECONDS = 0.01;

    private final Performance performance;
    private final List<TimedNote> notes;
    private final Track track = new Track();
    private final Map<Integer, Channel> channels = new TreeMap<>();

    /** One channel and how it is set. */
    private static final class Channel {
        private final int number;
        private int program;
        private int bend = Track.CENTRE;

        private Channel(int number, int program) {
            this.number = number;
            this.program = program;
        }
    }

    private BassTrack(Performance performance) {
        this.performance = performance;
        this.notes = performance.notes();
    }

    static Track of(Performance performance) {
        return new BassTrack(performance).write();
    }

    private Track write() {
        track.name("Bass");
        deal();
        long members = channels.values().stream().distinct().count();
        if (members > 1) {
            track.zone(CHANNEL, (int) members);
        }
        channels.values().stream().distinct().forEach(channel -> {
            track.instrument(channel.number, channel.program, VOLUME, MIDDLE);
            track.bendRange(0, channel.number, BEND_RANGE);
        });
        notes.forEach(this::write);
        return track;
    }

    /** Gives each string its channel. */
    private void deal() {
        int program = GeneralMidi.program(performance.bars().get(0).inForce().style());
        int strings = performance.line().header().tuning().size();
        var first = new Channel(CHANNEL, program);
        var others = new TreeMap<Integer, Channel>();
        boolean apart = meetsAnother();
        for (int string = 1; string <= strings; string++) {
            int number = 1 + (string - 1) % MOST_CHANNELS;
            channels.put(string, apart ? others.computeIfAbsent(number, each -> new Channel(each, program)) : first);
        }
    }

    /** Whether two strings sound at once of which at least one moves, or both have one pitch. */
    private boolean meetsAnother() {
        var last = new TreeMap<Integer, TimedNote>();
        for (var note : notes) {
            last.put(note.string(), note);
            boolean meets = last.values().stream()
                    .anyMatch(other -> other != note
                            && note.when().at().isBefore(other.when().until())
                            && (other.pitch() == note.pitch()
                                    || !(other.curve().isFlat() && note.curve().isFlat())));
            if (meets) {
                return true;
            }
        }
        return false;
    }

    private void write(TimedNote note) {
        var channel = channels.get(note.string());
        long on = Ticks.of(note.when().at());
        long off = Math.max(on + 1, Ticks.of(note.when().until()));
        changeProgram(channel, on, note);
        follow(channel, note, on, off);
        track.note(on, off, channel.number, key(note), note.velocity());
    }

    /** A dead note keeps the program: a change for a click of 60 ms would cut what rings. */
    private void changeProgram(Channel channel, long tick, TimedNote note) {
        int wanted = note.isDead()
                ? channel.program
                : GeneralMidi.program(note.attack().hand());
        if (wanted != channel.program) {
            track.program(tick, channel.number, wanted);
            channel.program = wanted;
        }
    }

    private void follow(Channel channel, TimedNote note, long on, long off) {
        bendTo(channel, on, valueAt(note, 0));
        if (note.curve().isFlat()) {
            return;
        }
        for (double now = STEP_SECONDS; now < note.when().seconds(); now += STEP_SECONDS) {
            long tick = Ticks.of(performance.tempos().moment(note.when().start() + now));
            if (tick > on && tick < off) {
                bendTo(channel, tick, valueAt(note, now));
            }
        }
    }

    private static int valueAt(TimedNote note, double seconds) {
        return Track.bendOf(note.curve().at(seconds), BEND_RANGE);
    }

    private void bendTo(Channel channel, long tick, int value) {
        if (value != channel.bend) {
            track.bend(tick, channel.number, value);
            channel.bend = value;
        }
    }

    private static int key(TimedNote note) {
        return Math.max(0, Math.min(127, note.pitch()));
    }
}
