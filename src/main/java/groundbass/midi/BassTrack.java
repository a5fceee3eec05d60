package groundbass.midi;

import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The line itself on one channel: techniques by program, loudness and length; slides, bends and vibrato by pitch bend,
 * where no other string sounds that would be bent along.
 */
final class BassTrack {
    static final int CHANNEL = 0;

    /** Wide enough for a slide over an octave. */
    static final int BEND_RANGE = 12;

    /** How often a moving pitch is written down. */
    private static final double STEP_SECONDS = 0.01;

    private final Performance performance;
    private final List<TimedNote> notes;
    private final Track track = new Track();
    private final Map<Integer, Long> soundingUntil = new HashMap<>();
    private int program;
    private int bend = Track.CENTRE;

    private BassTrack(Performance performance) {
        this.performance = performance;
        this.notes = performance.notes();
    }

    static Track of(Performance performance) {
        return new BassTrack(performance).write();
    }

    private Track write() {
        track.name("Bass");
        program = GeneralMidi.program(performance.bars().get(0).inForce().style());
        track.program(0, CHANNEL, program);
        track.bendRange(0, CHANNEL, BEND_RANGE);
        for (int i = 0; i < notes.size(); i++) {
            write(i);
        }
        return track;
    }

    private void write(int index) {
        var note = notes.get(index);
        long on = Ticks.of(note.when().at());
        long off = Math.max(on + 1, Ticks.of(note.when().until()));
        changeProgram(on, note);
        if (soundsAlone(index, on, off)) {
            follow(note, on, off);
        } else {
            bendTo(on, Track.CENTRE);
        }
        track.note(on, off, CHANNEL, key(note), note.velocity());
        soundingUntil.put(note.string(), off);
    }

    /** A dead note keeps the program: a change for a click of 60 ms would cut what rings. */
    private void changeProgram(long tick, TimedNote note) {
        int wanted = note.isDead() ? program : GeneralMidi.program(note.attack().hand());
        if (wanted != program) {
            track.program(tick, CHANNEL, wanted);
            program = wanted;
        }
    }

    private boolean soundsAlone(int index, long on, long off) {
        int string = notes.get(index).string();
        boolean others =
                soundingUntil.entrySet().stream().anyMatch(entry -> entry.getKey() != string && entry.getValue() > on);
        boolean later = index + 1 < notes.size()
                && notes.get(index + 1).string() != string
                && Ticks.of(notes.get(index + 1).when().at()) < off;
        return !others && !later;
    }

    private void follow(TimedNote note, long on, long off) {
        bendTo(on, valueAt(note, 0));
        if (note.curve().isFlat()) {
            return;
        }
        for (double now = STEP_SECONDS; now < note.when().seconds(); now += STEP_SECONDS) {
            long tick = Ticks.of(performance.tempos().moment(note.when().start() + now));
            if (tick > on && tick < off) {
                bendTo(tick, valueAt(note, now));
            }
        }
    }

    private static int valueAt(TimedNote note, double seconds) {
        return Track.bendOf(note.curve().at(seconds), BEND_RANGE);
    }

    private void bendTo(long tick, int value) {
        if (value != bend) {
            track.bend(tick, CHANNEL, value);
            bend = value;
        }
    }

    private static int key(TimedNote note) {
        return Math.max(0, Math.min(127, note.pitch()));
    }
}
