package groundbass.sound;

import groundbass.performance.Attack;
import groundbass.performance.TimedNote;
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
    private static final double TOUCHED_SECONDS = 0.04;
    private static final double RELEASED_SECONDS = 0.15;
    private static final int NORMAL_VELOCITY = 96;
    private static final long NEVER = Long.MAX_VALUE;

    private final SampleRate rate;
    private final List<TimedNote> notes;
    private final double open;
    private final int number;
    private Fading sounding;
    private Fading fading;
    private Optional<Held> held = Optional.empty();
    private int next;
    private long now;
    private long glideUntil = NEVER;

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
        this.number = number;
        this.notes = notes;
        this.open = openMidi;
        double lowest = Pitch.hertz(openMidi - 13.0);
        this.sounding = new Fading(rate, new PluckedString(rate, lowest));
        this.fading = new Fading(rate, new PluckedString(rate, lowest));
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
            sounding.string().glide(hertz(moving.note(), ahead), CONTROL);
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
        if (note.attack() instanceof Attack.Continued && sounding.isOpen()) {
            carryOn(note);
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
        var touch = note.isDead() ? Touch.DEAD : touch(note.attack());
        double hertz = hertz(note, 0);
        sounding.string().pluck(hertz, filter(note, touch, hertz), burst(note, touch, hertz));
        sounding.open();
    }

    private void carryOn(TimedNote note) {
        double hertz = hertz(note, 0);
        int samples = (int) rate.at(HAMMER_SECONDS);
        var touch = touch(note.attack());
        sounding.string().lose(filter(note, touch, hertz));
        sounding.string().glide(hertz, samples);
        sounding.string().excite(burst(note, touch, hertz));
        glideUntil = now + samples;
    }

    private static Touch touch(Attack attack) {
        if (attack instanceof Attack.Continued continued) {
            return switch (continued.by()) {
                case HAMMER -> Touch.HAMMER;
                case PULL -> Touch.PULL;
                case SLIDE -> Touch.SLIDE;
            };
        }
        return Touch.of(attack.hand());
    }

    private double hertz(TimedNote note, double seconds) {
        return Pitch.hertz(note.pitch() + note.curve().at(seconds));
    }

    private LoopFilter filter(TimedNote note, Touch touch, double hertz) {
        return LoopFilter.of(rate, hertz, t60(note.pitch()) * touch.sustain(), touch.loss());
    }

    /** REFERENCE 7.2: open B0 14 s, E1 12, A1 10, D2 8, G2 6; shorter with each fret (common practice, no source). */
    private double t60(int pitch) {
        double openSeconds = Math.max(3, 14 - 0.4 * (open - 23));
        return openSeconds * StrictMath.pow(2, (open - pitch) / 12);
    }

    private float[] burst(TimedNote note, Touch touch, double hertz) {
        double share = note.velocity() / (double) NORMAL_VELOCITY;
        return Burst.of(rate, touch, hertz, share * share, next * 31 + number);
    }
}
