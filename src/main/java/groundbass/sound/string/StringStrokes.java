package groundbass.sound.string;

import groundbass.performance.Attack;
import groundbass.performance.TimedNote;
import groundbass.score.Arrival;
import groundbass.score.Harmonic;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.OnePole;
import groundbass.theory.Pitch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a player's hands do to one string for each note: where it is stopped, how it is struck, what it meets. */
final class StringStrokes {
    /** How long a thumb is in touch with the string (rule: thumb-contact). */
    static final double CONTACT_SECONDS = 0.0015;

    /** Of a period: a thumb is no wider than that. */
    private static final double LONGEST_CONTACT = 0.15;

    private static final int NORMAL_FORCE = 96;

    /** Where the fretting hand lies on a dead string, as fractions from the bridge. */
    private static final double[] DAMPED = {0.37, 0.47, 0.57, 0.67, 0.77, 0.87, 0.95};

    /** What the first of them takes of each wave that passes, and each further one more (by trial, no source). */
    private static final double DAMPING = 0.045;

    /** What a finger that hammers, pulls or slides leaves of what sounds (by trial for rule: legato-attack, no source). */
    private static final double AFTER_A_HAMMER = 0.48;

    private static final double AFTER_A_PULL = 0.65;
    private static final double AFTER_A_SLIDE = 0.75;

    /** Of a popped string, which soon falls and leaves less to the finger that comes. */
    private static final double POPPED_AFTER_A_HAMMER = 0.71;

    private static final double POPPED_AFTER_A_PULL = 0.9;

    private static final double TOUCH_SECONDS = 0.2;
    private static final double TOUCH = 0.25;

    private final SampleRate rate;
    private final Plane plane;
    private final int number;
    private final StringParameters course;
    private final double openPeriod;
    private final Map<Integer, Dispersion> spreads = new HashMap<>();

    /**
     * In one of the planes in which the string swings.
     *
     * @param number of the string, counted from the highest: so that no two rustle alike
     */
    StringStrokes(SampleRate rate, Plane plane, int number, StringParameters course) {
        this.rate = rate;
        this.plane = plane;
        this.number = number;
        this.course = course;
        this.openPeriod = rate.hertz() / Pitch.hertz((double) course.openMidi());
    }

    /** The frequency of the string itself, so many seconds after the note's start; a harmonic sounds above it. */
    double hertz(TimedNote note, double seconds) {
        return Pitch.hertz(stopped(note) + note.curve().at(seconds));
    }

    /** A new stroke on a string at rest. */
    Excitation strike(PluckedString string, TimedNote note, int seed) {
        var excitation = note.isDead() ? Excitation.dead(note.attack().hand()) : excitation(note.attack());
        double hertz = hertz(note, 0);
        string.rest(hertz, loss(note, excitation), spread(note));
        excite(string, note, excitation, hertz, seed);
        string.meet(contacts(note, excitation));
        return excitation;
    }

    /**
     * The fretting hand takes the string over at the frequency {@code from}, from which it is then brought to its own.
     * What a turn loses stays: a shorter string falls faster by itself, and a change would be heard as a click.
     */
    void carryOn(PluckedString string, TimedNote note, Attack.Continued attack, double from, int seed) {
        excite(string, note, excitation(attack), from, seed);
    }

    /**
     * How much of what is heard of the string remains where the fretting hand takes it over: a shorter string that swings
     * as far is louder, which is taken away too.
     *
     * @param from the frequency at which the string was last plucked
     */
    double remains(TimedNote note, Attack.Continued attack, double from) {
        double higher = Math.min(1, from / hertz(note, 0));
        boolean popped = attack.hand() == Technique.POP;
        return higher
                * switch (attack.by()) {
                    case HAMMER -> popped ? POPPED_AFTER_A_HAMMER : AFTER_A_HAMMER;
                    case PULL -> popped ? POPPED_AFTER_A_PULL : AFTER_A_PULL;
                    case SLIDE -> AFTER_A_SLIDE;
                };
    }

    /** A hand that hammers on a silent string is heard; one that slides along it has plucked it. */
    private static Excitation excitation(Attack attack) {
        boolean alone = attack instanceof Attack.Continued continued && continued.by() != Arrival.Kind.SLIDE;
        return alone ? excitation((Attack.Continued) attack) : Excitation.of(attack.hand());
    }

    private static Excitation excitation(Attack.Continued attack) {
        return switch (attack.by()) {
            case HAMMER -> Excitation.HAMMER;
            case PULL -> Excitation.PULL;
            case SLIDE -> Excitation.SLIDE;
        };
    }

    private void excite(PluckedString string, TimedNote note, Excitation excitation, double hertz, int seed) {
        var variation = StrokeVariation.of(seed * 31 + number);
        double level = level(note) * variation.level();
        double bright = excitation.brightness() * variation.brightness() * Math.min(1.5, StrictMath.pow(level, 0.7));
        double period = rate.hertz() / hertz;
        double place = place(note, excitation, variation);
        if (excitation.pull() != 0 || excitation.strike() != 0) {
            double contact = Math.min(rate.hertz() * CONTACT_SECONDS, LONGEST_CONTACT * period);
            var shape =
                    new Displacement(period, place, excitation.pull() * level, excitation.strike() * level, contact);
            double decay = rate.decay(t60(note, excitation));
            string.load(shape.rounded(
                    new OnePole(rate, bright),
                    new OnePole(rate, bright),
                    string.bridge(),
                    decay,
                    string.shapeLength()));
        }
        if (plane.neck()) {
            string.rub(ExcitationNoise.of(rate, excitation, bright, level, seed * 31 + number), place * period);
        }
    }

    /** The square of how hard it is played (common practice, no source). */
    private double level(TimedNote note) {
        double share = note.force() / (double) NORMAL_FORCE;
        return share * share;
    }

    private LoopFilter loss(TimedNote note, Excitation excitation) {
        int stopped = stopped(note);
        return LoopFilter.of(rate, Pitch.hertz((double) stopped), t60(note, excitation), excitation.loss());
    }

    private double t60(TimedNote note, Excitation excitation) {
        return course.t60(stopped(note)) * excitation.sustain() * plane.sustain();
    }

    private Dispersion spread(TimedNote note) {
        return spreads.computeIfAbsent(stopped(note), this::spread);
    }

    private Dispersion spread(int pitch) {
        double hertz = Pitch.hertz((double) pitch);
        var plain = LoopFilter.of(rate, hertz, course.t60(pitch), 0.05);
        return Dispersion.of(rate, hertz, course.stiffness(pitch), plain);
    }

    private List<Contact> contacts(TimedNote note, Excitation excitation) {
        if (note.isDead()) {
            return dampers(rate.at(note.when().seconds() + 1));
        }
        var contacts = new ArrayList<Contact>();
        if (plane.neck()) {
            contacts.addAll(excitation.frets().contacts(rate, openPeriod * ratio(note), level(note)));
        }
        harmonic(note).ifPresent(harmonic -> contacts.add(node(note, harmonic)));
        return contacts;
    }

    /** A hand that lies on it more and more firmly: where it began at once, the string would ring on this side of it. */
    private List<Contact> dampers(long samples) {
        var dampers = new ArrayList<Contact>();
        for (int i = 0; i < DAMPED.length; i++) {
            dampers.add(Contact.finger(DAMPED[i] * openPeriod, DAMPING * (i + 1), samples));
        }
        return dampers;
    }

    /** A harmonic is struck where the wanted partial swings widest, the nearer to the bridge the higher it is (rule: harmonic-purity). */
    private double place(TimedNote note, Excitation excitation, StrokeVariation variation) {
        double own = excitation.place().times(variation.place()).of(ratio(note));
        return harmonic(note).isPresent() ? Math.min(own, 0.5 / partial(note)) : own;
    }

    private long partial(TimedNote note) {
        return Math.round(StrictMath.pow(2, (note.pitch() - stopped(note)) / 12.0));
    }

    /** A finger touches the string where the wanted partials stand still. */
    private Contact node(TimedNote note, Harmonic harmonic) {
        int fret = ((Fretted) note.note().place()).fret();
        int above = harmonic.touchedFret().isPresent() ? harmonic.touchedFret().getAsInt() - fret : fret;
        long partial = partial(note);
        double touched = StrictMath.pow(2, -above / 12.0);
        double node = Math.rint(touched * partial) / partial;
        return Contact.finger(node * openPeriod * ratio(note), TOUCH, rate.at(TOUCH_SECONDS));
    }

    private static Optional<Harmonic> harmonic(TimedNote note) {
        if (note.grace() || !(note.note().place() instanceof Fretted fretted)) {
            return Optional.empty();
        }
        return note.note().ornaments().harmonic().filter(each -> each.semitonesAboveOpen(fretted.fret())
                .isPresent());
    }

    /** The MIDI number of what sounds where no finger touches a node. */
    private int stopped(TimedNote note) {
        return harmonic(note)
                .map(harmonic -> harmonic.touchedFret().isPresent()
                        ? course.openMidi() + ((Fretted) note.note().place()).fret()
                        : course.openMidi())
                .orElse(note.pitch());
    }

    /** What sounds, as a fraction of the open string. */
    private double ratio(TimedNote note) {
        return StrictMath.pow(2, (course.openMidi() - stopped(note)) / 12.0);
    }
}
