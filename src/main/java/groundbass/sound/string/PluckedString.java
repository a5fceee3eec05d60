package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * A string as a loop of one period, holding its displacement: a wave towards the bridge, its reflection, and at the far
 * end all that a turn loses (Karplus and Strong 1983, Jaffe and Smith 1983). {@code y = line[a] - line[b]} is how far the
 * string stands off at the place that both pass, and the pickup hears how fast that changes. The delay is read between
 * samples by a cubic (Lagrange) rather than an all-pass, so that slides, bends and vibrato can move it without a click.
 */
final class PluckedString implements Unit {
    /** Where the pickup sits, as a fraction of the open string from the bridge (rule: pickup-place). */
    static final double PICKUP = 0.18;

    private static final int SPAN = 2_048;

    /** Samples for which the far end remembers. */
    private static final int MEMORY = 600;

    /** Samples in which what it meets takes hold: flesh and fret give way a little. */
    private static final int SETTLING = 48;

    /** Samples in which it lets go: what swings ever less comes to touch it no more, and not from one moment to the next. */
    private static final int LEAVING = 1_300;

    /** Samples made in one go. */
    private static final int LONGEST = 256;

    /** Samples from the pickup at which nothing that shakes the string falls into what it hears, on both ways. */
    private static final int CLEAR = 5;

    private static final double INAUDIBLE = 1e-6;
    private static final double[] NOTHING = {};

    private final SampleRate rate;
    private final double tuning;
    private final double[] line;
    private final int history;
    private final double pickup;
    private final double[] turned = new double[LONGEST];
    private final double[] heard = new double[LONGEST];
    private int now;

    private final LoopTermination end = new LoopTermination();
    private double delay = 4;
    private double delayStep;
    private int easing;
    private int eased;
    private boolean silent = true;
    private int quiet;

    private final List<Met> met = new ArrayList<>();
    private long contactsLeft;
    private int contactsMet;
    private int stride;
    private double[] grain = NOTHING;
    private int grained;
    private Pair grainPair = new Pair(1, 1);

    private int whole;
    private double c0;
    private double c1;
    private double c2;
    private double c3;
    private double bridge;
    private int near;
    private double a0;
    private double a1;
    private double a2;
    private int far;
    private double b0;
    private double b1;
    private double b2;

    /** A place on the string: how far behind the newest sample its two waves are. */
    private record Pair(int near, int far) {}

    private record Met(Contact contact, Pair pair) {}

    /**
     * @param openHertz of the open string; it may be tuned to a little more than an octave below
     * @param tuning by what every pitch is multiplied that it is brought to
     */
    PluckedString(SampleRate rate, double openHertz, double tuning) {
        this.rate = rate;
        this.tuning = tuning;
        double open = rate.hertz() / openHertz;
        this.history = (int) (open * 2.2) + MEMORY + 16;
        this.line = new double[history + SPAN];
        this.now = history;
        this.pickup = PICKUP * open / 2;
    }

    /** Forgets all that sounds and lies still at this pitch. */
    void rest(double hertz, LoopFilter loss, Dispersion spread) {
        Arrays.fill(line, 0);
        end.rest();
        end.become(loss, spread);
        delay = delayFor(hertz);
        hold();
        met.clear();
        contactsLeft = 0;
        grain = NOTHING;
        grained = 0;
        aim();
    }

    /** Where the bridge lies, in samples behind the newest. */
    double bridge() {
        return bridge;
    }

    /**
     * How long a shape must be: the whole loop, and before that what its far end heard, or hears as it grows longer.
     */
    int shapeLength() {
        return whole + 4 + MEMORY;
    }

    /**
     * Adds a shape to what sounds, all at once: by how many samples behind the newest, index 0 unused. A hand that takes
     * over a string that swings goes with it, never against it: what sounds would be lost.
     */
    void load(double[] shape) {
        double way = way(shape);
        for (int d = 1; d < shape.length; d++) {
            shape[d] *= way;
            line[now - d] += shape[d];
        }
        var before = new double[MEMORY];
        for (int i = 0; i < MEMORY; i++) {
            int d = whole + MEMORY - i;
            before[i] = c0 * shape[d - 1] + c1 * shape[d] + c2 * shape[d + 1] + c3 * shape[d + 2];
        }
        end.passed(before);
        wake();
    }

    private double way(double[] shape) {
        double along = 0;
        for (int d = 1; d <= whole; d++) {
            along += shape[d] * line[now - d];
        }
        return along < 0 ? -1 : 1;
    }

    /** Shakes the string at a place, in samples of travel from the bridge there and back. */
    void rub(double[] newGrain, double place) {
        grain = newGrain;
        grained = 0;
        grainPair = beside(pair(place));
        stride = 0;
        wake();
    }

    /** Beside the pickup, if it lies under it: there it would be heard how far the string is shaken, not how fast. */
    private Pair beside(Pair pair) {
        int under = Math.abs(pair.near() - near) < CLEAR ? near + CLEAR - pair.near() : 0;
        return new Pair(pair.near() + under, pair.far() - under);
    }

    /** From now on the string meets these, and nothing else. */
    void meet(List<Contact> newContacts) {
        met.clear();
        newContacts.forEach(contact -> met.add(new Met(contact, pair(contact.place()))));
        contactsMet = 0;
        stride = 0;
        contactsLeft = newContacts.stream().mapToLong(Contact::samples).max().orElse(0);
    }

    private void wake() {
        quiet = 0;
        silent = false;
    }

    /** Moves to this pitch over the next so many samples. */
    void glide(double hertz, int samples) {
        delayStep = (delayFor(hertz) - delay) / samples;
        easing = 0;
    }

    /** Moves to this pitch over the next so many samples, setting out and arriving gently. */
    void ease(double hertz, int samples) {
        glide(hertz, samples);
        easing = samples;
        eased = 0;
    }

    /** Keeps its pitch from now on. */
    void hold() {
        delayStep = 0;
        easing = 0;
    }

    boolean isSilent() {
        return silent;
    }

    @Override
    public void render(float[] out, int from, int count) {
        int done = 0;
        while (done < count && !silent) {
            makeRoom();
            int step = Math.min(Math.min(count - done, line.length - now), stride());
            move(step);
            turn(step);
            hear(out, from + done, step);
            done += step;
        }
    }

    private void makeRoom() {
        if (now == line.length) {
            System.arraycopy(line, now - history, line, 0, history);
            now = history;
        }
    }

    /** How many samples may be made in one go with the same result as one by one. */
    private int stride() {
        if (delayStep != 0) {
            stride = 0;
            return 1;
        }
        int most = Math.min(LONGEST, whole - 2);
        if (contactsLeft > 0 || grained < grain.length) {
            stride = stride == 0 ? nearest() : stride;
            most = Math.min(most, stride);
        }
        most = contactsLeft > 0 ? (int) Math.min(most, contactsLeft) : most;
        return grained < grain.length ? Math.min(most, grain.length - grained) : most;
    }

    /** The smallest distance between two places at which the loop is read or changed. */
    private int nearest() {
        var touched = new TreeSet<Integer>();
        if (grained < grain.length) {
            touched.addAll(List.of(grainPair.near(), grainPair.far()));
        }
        met.forEach(
                each -> touched.addAll(List.of(each.pair().near(), each.pair().far())));
        var heardAt = List.of(near, near + 1, near + 2, far, far + 1, far + 2);
        var places = new TreeSet<>(List.of(2, whole - 3));
        places.addAll(heardAt);
        places.addAll(touched);
        int nearest = whole;
        int before = 0;
        for (int place : places) {
            // the three samples that the pickup hears of one wave belong together, where nothing touches them
            boolean same = heardAt.contains(place) && heardAt.contains(before) && !touched.contains(place);
            nearest = same ? nearest : Math.min(nearest, place - before);
            before = place;
        }
        return Math.max(1, nearest);
    }

    /** What happens to the string from outside before the next samples. */
    private void move(int count) {
        if (delayStep != 0) {
            delay += delayStep * pace();
            aim();
        }
        if (grained < grain.length) {
            for (int i = 0; i < count; i++) {
                push(grainPair, i, grain[grained++] / 2);
            }
        }
        if (contactsLeft > 0) {
            met.forEach(each -> meet(each, count));
            contactsLeft -= count;
            contactsMet = Math.min(SETTLING, contactsMet + count);
        }
    }

    /** 1 on a steady glide; on a gentle one from 0 to 2 and back. */
    private double pace() {
        return eased < easing ? 2 - 2 * Math.abs((2 * eased++ + 1.0) / easing - 1) : 1;
    }

    private void meet(Met met, int count) {
        int a = now - met.pair().near();
        int b = now - met.pair().far();
        for (int i = 0; i < count; i++) {
            double push = met.contact().push(line[a + i] - line[b + i]);
            if (push != 0) {
                push(met.pair(), i, push * hold(i));
            }
        }
    }

    /** How firmly what it meets holds after so many samples, to 1. */
    private double hold(int ahead) {
        double coming = (contactsMet + ahead + 1.0) / SETTLING;
        double going = (double) (contactsLeft - ahead) / LEAVING;
        return Math.min(1, Math.min(coming, going));
    }

    private void push(Pair pair, int ahead, double amount) {
        line[now + ahead - pair.near()] += amount;
        line[now + ahead - pair.far()] -= amount;
    }

    /** Where both waves of a place lie now; it stays so while the pitch moves, or its waves would be torn. */
    private Pair pair(double place) {
        double within = Math.min(place, delay - 4);
        return new Pair((int) (bridge - within / 2), (int) (bridge + within / 2));
    }

    /** Writes the next samples of the loop; at most as many as it holds. */
    private void turn(int count) {
        int at = now - whole;
        for (int i = 0; i < count; i++) {
            turned[i] = c0 * line[at + i + 1] + c1 * line[at + i] + c2 * line[at + i - 1] + c3 * line[at + i - 2];
        }
        end.pass(turned, 0, count);
        System.arraycopy(turned, 0, line, now, count);
    }

    private void hear(float[] out, int from, int count) {
        listen(count);
        int given = quiet + count > 2 * whole ? untilSilence(count) : count;
        for (int i = 0; i < given; i++) {
            out[from + i] += (float) heard[i];
        }
        int last = count;
        while (last > 0 && Math.abs(heard[last - 1]) < INAUDIBLE) {
            last--;
        }
        quiet = last > 0 ? count - last : quiet + count;
        now += count;
        if (given < count || quiet > 2 * whole) {
            fallSilent();
        }
    }

    /** How many of these samples are given, where it may come to lie still in their midst. */
    private int untilSilence(int count) {
        int still = quiet;
        for (int i = 0; i < count; i++) {
            still = Math.abs(heard[i]) < INAUDIBLE ? still + 1 : 0;
            if (still > 2 * whole) {
                return i + 1;
            }
        }
        return count;
    }

    /** How fast the string moves at the pickup: the slope of one wave less that of the other, between samples. */
    private void listen(int count) {
        int a = now - near;
        int b = now - far;
        for (int i = 0; i < count; i++) {
            double one = a0 * line[a + i] + a1 * line[a + i - 1] + a2 * line[a + i - 2];
            double other = b0 * line[b + i] + b1 * line[b + i - 1] + b2 * line[b + i - 2];
            heard[i] = one - other;
        }
    }

    /** Lies still until something shakes it. */
    void lie() {
        fallSilent();
    }

    private void fallSilent() {
        silent = true;
        Arrays.fill(line, 0);
        end.rest();
    }

    /** The whole turn takes one period; what it loses and spreads takes its part of it. */
    private double delayFor(double hertz) {
        double tuned = hertz * tuning;
        return Math.max(4, rate.hertz() / tuned - end.delay(rate.radians(tuned)));
    }

    /** Lagrange weights of the four samples around the delay, and where the pickup hears. */
    private void aim() {
        whole = (int) delay;
        double d = delay - whole;
        c0 = -d * (d - 1) * (d - 2) / 6;
        c1 = (d + 1) * (d - 1) * (d - 2) / 2;
        c2 = -(d + 1) * d * (d - 2) / 2;
        c3 = (d + 1) * d * (d - 1) / 6;
        bridge = delay / 2;
        double half = Math.min(pickup, bridge - 1);
        near = (int) (bridge - half);
        double share = bridge - half - near;
        a0 = 1 - share;
        a1 = 2 * share - 1;
        a2 = -share;
        far = (int) (bridge + half);
        share = bridge + half - far;
        b0 = 1 - share;
        b1 = 2 * share - 1;
        b2 = -share;
    }
}
