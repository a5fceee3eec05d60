package groundbass.sound.string;

import groundbass.performance.Attack;
import groundbass.performance.TimedNote;
import groundbass.score.Arrival;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import groundbass.theory.Pitch;
import java.util.List;
import java.util.Optional;

/**
 * One string of the bass and all that it plays. A new stroke takes a fresh loop while the old one fades under the finger;
 * a hammered, pulled or slid note keeps the loop and changes its length.
 */
final class BassString implements Unit {
    /** Samples between two looks at a moving pitch. */
    private static final int CONTROL = 32;

    private static final double HAMMER_SECONDS = 0.004;
    private static final double SOFTENED_SECONDS = 0.03;
    private static final double TOUCHED_SECONDS = 0.04;
    private static final double RELEASED_SECONDS = 0.15;
    private static final long NEVER = Long.MAX_VALUE;

    private final SampleRate rate;
    private final List<TimedNote> notes;
    private final StringStrokes strokes;
    private final StringStrokes across;
    private Fading sounding;
    private Fading fading;
    private Optional<Held> held = Optional.empty();
    private int next;
    private long now;
    private long glideUntil = NEVER;

    private boolean deadened;

    /** The frequency that the string was last brought to, and that at which it was last plucked. */
    private double last;

    private double plucked;

    /** The note that sounds, from and until which sample. */
    private record Held(TimedNote note, long from, long until) {
        boolean moves() {
            return !note.curve().isFlat();
        }

        long sinceControl(long now) {
            return (now - from) % CONTROL;
        }
    }

    /** @param openMidi the open string's MIDI number */
    BassString(SampleRate rate, int number, int openMidi, List<TimedNote> notes) {
        this.rate = rate;
        this.notes = notes;
        var course = new StringParameters(openMidi);
        this.strokes = new StringStrokes(rate, Plane.UPRIGHT, number, course);
        this.across = new StringStrokes(FourFold.slower(rate), Plane.ACROSS, number, course);
        double open = Pitch.hertz((double) openMidi);
        this.sounding = new Fading(rate, new TwoPlanes(rate, open));
        this.fading = new Fading(rate, new TwoPlanes(rate, open));
    }

    @Override
    public void render(float[] out, int from, int count) {
        int done = 0;
        while (done < count) {
            change();
            int step = (int) Math.min(count - done, nextChange() - now);
            sounding.render(out, from + done, step);
            fading.render(out, from + done, step);
            now += step;
            done += step;
        }
    }

    /** Everything that is due at this sample. */
    private void change() {
        while (next < notes.size() && startOf(next) <= now) {
            start(notes.get(next++));
        }
        if (held.filter(note -> note.until() <= now).isPresent()) {
            sounding.fade(RELEASED_SECONDS);
            sounding.string().hold();
            held = Optional.empty();
        }
        held.filter(Held::moves).ifPresent(this::follow);
        if (glideUntil == now) {
            sounding.string().hold();
            glideUntil = NEVER;
        }
    }

    private void follow(Held moving) {
        glideUntil = NEVER;
        if (moving.sinceControl(now) == 0) {
            double ahead = (now + CONTROL - moving.from()) / (double) rate.hertz();
            last = strokes.hertz(moving.note(), ahead);
            sounding.string().glide(last, CONTROL);
        }
    }

    private long nextChange() {
        long change = Math.min(glideUntil, next < notes.size() ? startOf(next) : NEVER);
        if (held.isPresent()) {
            change = Math.min(change, held.get().until());
        }
        if (held.filter(Held::moves).isPresent()) {
            change = Math.min(change, now + CONTROL - held.get().sinceControl(now));
        }
        return change;
    }

    private long startOf(int index) {
        return rate.at(notes.get(index).when().start());
    }

    private void start(TimedNote note) {
        if (note.attack() instanceof Attack.Continued continued && sounding.isOpen() && !deadened) {
            carryOn(note, continued);
        } else {
            strike(note);
        }
        held = Optional.of(
                new Held(note, now, Math.max(now + 1, rate.at(note.when().end()))));
    }

    private void strike(TimedNote note) {
        var touched = sounding;
        touched.fade(TOUCHED_SECONDS);
        touched.string().hold();
        sounding = fading;
        fading = touched;
        glideUntil = NEVER;
        var string = sounding.string();
        if (FourFold.carries(strokes.hertz(note, 0))) {
            across.strike(string.across(), note, next);
        } else {
            string.across().lie();
        }
        sounding.open(strokes.strike(string.upright(), note, next).rise());
        string.start();
        last = strokes.hertz(note, 0);
        plucked = last;
        deadened = note.isDead();
    }

    private void carryOn(TimedNote note, Attack.Continued attack) {
        int samples = (int) rate.at(HAMMER_SECONDS);
        sounding.soften(strokes.remains(note, attack, plucked), (int) rate.at(SOFTENED_SECONDS));
        var string = sounding.string();
        strokes.carryOn(string.upright(), note, attack, last, next);
        // a finger that hammers comes down towards the neck
        if (FourFold.carries(last) && attack.by() != Arrival.Kind.HAMMER) {
            across.carryOn(string.across(), note, attack, last, next);
        }
        string.ease(strokes.hertz(note, 0), samples);
        glideUntil = now + samples;
        last = strokes.hertz(note, 0);
    }
}
