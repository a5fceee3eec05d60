package groundbass.checks.level;

import groundbass.checks.finding.Evidence;
import groundbass.checks.hand.Pace;
import groundbass.checks.level.Demand.Kind;
import groundbass.fingering.Gripped;
import groundbass.performance.Played;
import groundbass.performance.TimedChord;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Measures what makes a line hard. */
final class Demands {
    private static final Fraction SIXTEENTH = Fraction.of(1, 16);

    private final Evidence evidence;

    private Demands(Evidence evidence) {
        this.evidence = evidence;
    }

    static List<Demand> of(Evidence evidence) {
        var demands = new Demands(evidence);
        return List.of(
                demands.speed(),
                demands.shifts(),
                demands.syncopation(),
                demands.techniques(),
                demands.meter(),
                demands.division(),
                demands.chords(),
                demands.harmony());
    }

    /** How fast the fastest tenth of the line goes, beside what is easy for the way it is played. */
    private Demand speed() {
        var shares =
                Pace.of(evidence).stream().map(Pace.Window::effort).sorted().toList();
        double share = shares.isEmpty() ? 0 : shares.get((int) (0.9 * (shares.size() - 1)));
        double fastest = Pace.of(evidence).stream()
                .mapToDouble(Pace.Window::perSecond)
                .max()
                .orElse(0);
        return demand(Kind.SPEED, Math.max(0, 3 * (share - 0.3)), "speed", Math.round(10 * fastest) / 10.0);
    }

    private Demand shifts() {
        var grips = evidence.fingering().grips();
        long shifts = IntStream.range(1, grips.size())
                .filter(i -> moves(grips.get(i - 1), grips.get(i)) > 1)
                .count();
        double each = (double) shifts / evidence.line().bars().size();
        return demand(Kind.SHIFTS, Math.min(2, each), "shifts", shifts);
    }

    private static int moves(Gripped from, Gripped to) {
        return Math.abs(to.grip().position() - from.grip().position());
    }

    /** The share of notes that begin off the beat and sound, or leave silence, over the next beat. */
    private Demand syncopation() {
        var onsets = onsets();
        long syncopated = IntStream.range(0, onsets.size())
                .filter(i -> isSyncopated(onsets.get(i), i + 1 < onsets.size() ? onsets.get(i + 1) : onsets.get(i)))
                .count();
        double share = onsets.isEmpty() ? 0 : (double) syncopated / onsets.size();
        return demand(Kind.SYNCOPATION, Math.min(2, 6 * share), "syncopation", Math.round(100 * share));
    }

    private static boolean isSyncopated(Played note, Played next) {
        var meter = note.inForce().meter();
        var at = note.note().onset();
        boolean onBeat = meter.beatStarts().contains(at);
        var beat = note.bar().moment(meter.beatEnd(at));
        return !onBeat && next != note && next.onset().isAfter(beat);
    }

    private List<Played> onsets() {
        var onsets = new ArrayList<Played>();
        var seen = new HashSet<Fraction>();
        evidence.notes().stream().filter(note -> seen.add(note.onset())).forEach(onsets::add);
        return onsets;
    }

    private Demand techniques() {
        var kinds = new HashSet<Skill>();
        evidence.notes().forEach(note -> kinds.addAll(skills(note)));
        double weight = kinds.stream().mapToDouble(Skill::weight).sum();
        return demand(Kind.TECHNIQUES, Math.min(4, weight), "techniques", kinds.size());
    }

    /** What has to be learned beyond plain plucking, and how much that is. */
    private enum Skill {
        SLAP(1),
        POP(0.5),
        DOUBLE_THUMB(1),
        TAP(1.5),
        LEFT_HAND(1),
        RAKE(0.5),
        LEGATO(0.4),
        SLIDE(0.3),
        DEAD(0.3),
        GHOST(0.2),
        HARMONIC(0.8),
        BEND(0.5);

        private final double weight;

        Skill(double weight) {
            this.weight = weight;
        }

        double weight() {
            return weight;
        }
    }

    private static Set<Skill> skills(Played played) {
        var note = played.note();
        var skills = EnumSet.noneOf(Skill.class);
        note.pluck().ifPresent(technique -> skills.addAll(skills(technique)));
        note.arrival()
                .map(Arrival::kind)
                .ifPresent(kind -> skills.add(kind == Arrival.Kind.SLIDE ? Skill.SLIDE : Skill.LEGATO));
        if (note.isDead()) {
            skills.add(Skill.DEAD);
        }
        if (note.has(Mark.GHOST)) {
            skills.add(Skill.GHOST);
        }
        note.ornaments().harmonic().ifPresent(harmonic -> skills.add(Skill.HARMONIC));
        note.ornaments().bend().ifPresent(bend -> skills.add(Skill.BEND));
        note.ornaments().trill().ifPresent(trill -> skills.add(Skill.LEGATO));
        return skills;
    }

    private static Set<Skill> skills(Technique technique) {
        return switch (technique) {
            case SLAP -> Set.of(Skill.SLAP);
            case POP -> Set.of(Skill.POP);
            case THUMB_DOWN -> Set.of(Skill.SLAP);
            case THUMB_UP -> Set.of(Skill.DOUBLE_THUMB);
            case TAP -> Set.of(Skill.TAP);
            case RAKE -> Set.of(Skill.RAKE);
            case LEFT_HAND -> Set.of(Skill.LEFT_HAND);
            case THUMB, FINGER, INDEX, MIDDLE, PICK, PLUCK, MUTE -> Set.of();
        };
    }

    private Demand meter() {
        boolean odd = evidence.line().inForce().stream().anyMatch(each -> isOdd(each.meter()));
        return demand(
                Kind.METER,
                odd ? 1.5 : 0,
                "meter",
                evidence.line().header().meter().toString());
    }

    private static boolean isOdd(Meter meter) {
        return meter.isGrouped() || meter.counts() == 5 || meter.counts() == 7;
    }

    /** Whether notes follow one another in sixteenths or less of a pulse that is not slow. */
    private Demand division() {
        var onsets = onsets();
        long close = IntStream.range(1, onsets.size())
                .filter(i ->
                        !onsets.get(i).onset().minus(onsets.get(i - 1).onset()).isAfter(SIXTEENTH))
                .count();
        double share = onsets.isEmpty() ? 0 : (double) close / onsets.size();
        return demand(Kind.DIVISION, share, "division", Math.round(100 * share));
    }

    /** Notes that sound together under one hand. */
    private Demand chords() {
        long together = evidence.fingering().grips().stream()
                .filter(gripped -> gripped.grip().stopped().getCount() > 1)
                .count();
        double share = (double) together / Math.max(1, evidence.line().bars().size());
        return demand(Kind.CHORDS, Math.min(1, share), "chords", together);
    }

    /** How often one has to think of another chord. */
    private Demand harmony() {
        var performance = evidence.performance();
        var chords = performance.chords().stream().map(TimedChord::chord).toList();
        long changes = IntStream.range(1, chords.size())
                .filter(i -> !chords.get(i).equals(chords.get(i - 1)))
                .count();
        double minutes = (performance.seconds() - performance.seconds(performance.start())) / 60;
        double perMinute = minutes > 0 ? changes / minutes : 0;
        return demand(Kind.HARMONY, Math.min(2, Math.max(0, (perMinute - 15) / 12)), "harmony", Math.round(perMinute));
    }

    private static Demand demand(Kind kind, double weight, String key, Object... args) {
        return new Demand(kind, weight, Message.of("checks.level." + key, args));
    }
}
