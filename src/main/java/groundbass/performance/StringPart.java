package groundbass.performance;

import groundbass.performance.TimedNotes.Onset;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Trill;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What one string plays from start to end. */
final class StringPart {
    /**
     * How long a dead note and a grace note last, at most (rule: gate-length; the grace note's is common practice, no
     * source).
     */
    private static final int DEAD_MILLISECONDS = 60;

    private static final int GRACE_MILLISECONDS = 60;

    private final Tuning tuning;
    private final TempoMap tempos;
    private final DynamicCourse loudness;
    private final List<Onset> onsets;
    private final Fraction end;
    private final List<TimedNote> notes = new ArrayList<>();

    StringPart(Tuning tuning, TempoMap tempos, DynamicCourse loudness, List<Onset> onsets, Fraction end) {
        this.tuning = tuning;
        this.tempos = tempos;
        this.loudness = loudness;
        this.onsets = onsets;
        this.end = end;
    }

    Stream<TimedNote> notes() {
        for (int i = 0; i < onsets.size(); i++) {
            add(i);
        }
        return notes.stream();
    }

    private void add(int index) {
        var onset = onsets.get(index);
        var attack = attack(onset);
        int force = force(onset, attack);
        graceFret(onset).ifPresent(fret -> notes.add(grace(index, fret, attack, force)));
        var first = onset.note()
                .arrival()
                .filter(Arrival::isGrace)
                .<Attack>map(arrival -> new Attack.Continued(arrival.kind(), attack.hand()))
                .orElse(attack);
        int softened = first instanceof Attack.Continued continued && first != attack
                ? Velocity.continued(onset.note(), continued.by(), force)
                : force;
        var when = When.of(onset.at(), silence(index), tempos);
        var plain = new TimedNote(
                onset.note(), onset.origin(), when, first, pitch(onset), softened, curve(index, when), false);
        notes.addAll(onset.note()
                .ornaments()
                .trill()
                .map(trill -> trilled(index, plain, trill))
                .orElse(List.of(plain)));
    }

    /** Slid into at the first of its notes, and led on from the last. */
    private List<TimedNote> trilled(int index, TimedNote plain, Trill trill) {
        var trilled =
                new ArrayList<>(PlayedTrill.of(plain, trill, onsets.get(index).end(), tempos));
        var first = trilled.get(0);
        trilled.set(0, first.with(slidIn(index, first.when())));
        int end = trilled.size() - 1;
        var last = trilled.get(end);
        trilled.set(end, last.with(ledOn(index, PitchCurve.FLAT, last.when())));
        return trilled;
    }

    private Attack attack(Onset onset) {
        return onset.note().pluck().<Attack>map(Attack.Struck::new).orElseGet(() -> {
            var kind = onset.note().arrival().orElseThrow().kind();
            return new Attack.Continued(
                    kind, previous().map(note -> note.attack().hand()).orElse(style(onset)));
        });
    }

    private int force(Onset onset, Attack attack) {
        var dynamic = loudness.at(onset.written());
        if (attack instanceof Attack.Continued continued) {
            int source = previous()
                    .map(TimedNote::force)
                    .orElseGet(() -> Velocity.struck(onset.note(), attack.hand(), dynamic));
            return Velocity.continued(onset.note(), continued.by(), source);
        }
        return Velocity.struck(onset.note(), attack.hand(), dynamic);
    }

    private Optional<TimedNote> previous() {
        return notes.isEmpty() ? Optional.empty() : Optional.of(notes.get(notes.size() - 1));
    }

    private static Technique style(Onset onset) {
        return onset.bar().inForce().style();
    }

    private int open(Onset onset) {
        return tuning.string(onset.note().string()).pitch().midi();
    }

    private int pitch(Onset onset) {
        return onset.note().midi(tuning).orElseGet(() -> open(onset));
    }

    private static Optional<Integer> graceFret(Onset onset) {
        return onset.note().arrival().filter(Arrival::isGrace).map(arrival -> arrival.graceFret()
                .orElseThrow());
    }

    /** The grace note comes before the beat, out of at most half of the time since the note before. */
    private Fraction graceStart(int index) {
        var at = onsets.get(index).at();
        var before = index == 0 ? Fraction.ZERO : onsets.get(index - 1).at();
        return at.minus(tempos.span(GRACE_MILLISECONDS, at).min(at.minus(before).dividedBy(2)));
    }

    private TimedNote grace(int index, int fret, Attack attack, int force) {
        var onset = onsets.get(index);
        var when = When.of(graceStart(index), onset.at(), tempos);
        int pitch = open(onset) + fret;
        boolean slides = onset.note().arrival().orElseThrow().kind() == Arrival.Kind.SLIDE;
        var curve = slides ? PitchCurve.FLAT.then(Glide.whole(when, pitch(onset) - pitch)) : PitchCurve.FLAT;
        return new TimedNote(onset.note(), onset.origin(), when, attack, pitch, force, curve, true);
    }

    /** When the note falls silent: by how it is played, and at the latest when its string is touched again. */
    private Fraction silence(int index) {
        var alone = silenceAlone(index);
        return index + 1 < onsets.size() ? alone.min(touched(index + 1)) : alone;
    }

    private Fraction silenceAlone(int index) {
        var onset = onsets.get(index);
        var note = onset.note();
        if (note.isDead()) {
            return onset.at().plus(tempos.span(DEAD_MILLISECONDS, onset.at())).min(onset.end());
        }
        if (note.has(Mark.RING)) {
            return end;
        }
        return carriesOn(index) ? onset.end() : onset.at().plus(onset.length().times(GateLength.of(note)));
    }

    private Fraction touched(int index) {
        return graceFret(onsets.get(index)).isPresent()
                ? graceStart(index)
                : onsets.get(index).at();
    }

    /** Whether the fretting hand takes this note's sound over into the next without a gap. */
    private boolean carriesOn(int index) {
        return arrivalOutOf(index).isPresent()
                && onsets.get(index).end().equals(onsets.get(index + 1).at());
    }

    private Optional<Arrival> arrivalOutOf(int index) {
        return index + 1 < onsets.size()
                ? onsets.get(index + 1).note().arrival().filter(arrival -> !arrival.isGrace())
                : Optional.empty();
    }

    private PitchCurve curve(int index, When when) {
        var slidIn = slidIn(index, when);
        var bend = onsets.get(index).note().ornaments().bend();
        return ledOn(
                index, bend.map(each -> slidIn.then(Glide.bend(each, when))).orElse(slidIn), when);
    }

    private PitchCurve slidIn(int index, When when) {
        var note = onsets.get(index).note();
        var way = note.ornaments().slideIn();
        return way.isPresent() && note.place() instanceof Fretted fretted
                ? PitchCurve.FLAT.then(Glide.in(way.get(), fretted.fret(), when))
                : PitchCurve.FLAT;
    }

    /** With the note's vibrato, and to where its pitch goes in the end. */
    private PitchCurve ledOn(int index, PitchCurve before, When when) {
        var onset = onsets.get(index);
        var ornaments = onset.note().ornaments();
        if (!(onset.note().place() instanceof Fretted fretted)) {
            return PitchCurve.FLAT;
        }
        var curve = new PitchCurve(before.points(), onset.note().has(Mark.VIBRATO));
        if (carriesOn(index) && arrivalOutOf(index).orElseThrow().kind() == Arrival.Kind.SLIDE) {
            return curve.then(Glide.to(pitch(onsets.get(index + 1)) - pitch(onset), curve, when));
        }
        return ornaments.slideOff().isPresent()
                ? curve.then(Glide.off(ornaments.slideOff().get(), fretted.fret(), curve, when))
                : curve;
    }
}
