package groundbass.script.thread;

import groundbass.score.Meter;
import groundbass.script.checking.HeadCheck;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Verdict;
import groundbass.script.claims.Claim;
import groundbass.script.claims.Where;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;

/** Key, metre, tempo, feel, length, strings and chords. */
final class HeadReader implements Reader {
    private static final Set<Class<? extends Constituent>> KINDS = Set.of(
            Constituent.KeyNamed.class,
            Constituent.ChordNamed.class,
            Constituent.TempoNamed.class,
            Constituent.MeterNamed.class,
            Constituent.FeelNamed.class,
            Constituent.StringCount.class,
            Constituent.BarCount.class,
            Constituent.Signature.class,
            Constituent.BeatsInBar.class,
            Constituent.Name.class);
    private static final Set<Tie> TIES = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.IN,
            Tie.ON,
            Tie.OVER,
            Tie.IT,
            Tie.THAT,
            Tie.WE,
            Tie.THERE,
            Tie.WITH,
            Tie.AND,
            Tie.COMMA,
            Tie.COLON,
            Tie.CHORD,
            Tie.KEY,
            Tie.OF,
            Tie.AT,
            Tie.BASS,
            Tie.TEMPO,
            Tie.METER,
            Tie.FEEL,
            Tie.LONG,
            Tie.SO,
            Tie.AGAIN,
            Tie.TO,
            Tie.THEN,
            Tie.CHANGE,
            Tie.FOR,
            Tie.ONE,
            Tie.STOP,
            Tie.LOW,
            Tie.ALL,
            Tie.BOTH,
            Tie.EACH,
            Tie.ABOVE);

    private final Stage stage;
    private final HeadCheck heads;

    HeadReader(Stage stage) {
        this.stage = stage;
        this.heads = new HeadCheck(stage.timeline());
    }

    @Override
    public Optional<Judged> read(PlacedClause placed) {
        boolean ofLine = placed.has(Tie.KEY) && placed.has(Constituent.KeyNamed.class); // whatever bars stand beside it
        var said = ofLine ? placed.in(Scope.NOTHING) : placed;
        if (!said.isOnly(KINDS, TIES) || said.scope().time().isPresent()) {
            return Optional.empty();
        }
        var verdicts = new ArrayList<Optional<Verdict>>();
        var told = said.units().stream()
                .filter(unit -> !(unit instanceof Constituent.Small) && !(unit instanceof Constituent.Name))
                .toList();
        told.forEach(unit -> verdicts.add(head(unit, said)));
        names(said).ifPresent(verdicts::add);
        if (verdicts.isEmpty() || verdicts.stream().anyMatch(Optional::isEmpty)) {
            return Optional.empty();
        }
        var notes = said.scope().isSaid() ? List.<At>of() : said.memory().notes();
        for (int i = 0; i < verdicts.size(); i++) {
            var judged = new Judged(verdicts.get(i).orElseThrow(), notes);
            if (!judged.agrees()) {
                return Optional.of(i < told.size() ? judged.at(told.get(i)) : judged);
            }
        }
        return Optional.of(Judged.agrees(notes));
    }

    /** What one head that is named in a clause comes to; empty where it is no statement. */
    Optional<Verdict> head(Constituent unit, PlacedClause said) {
        if (unit instanceof Constituent.TempoNamed tempo) {
            return Optional.of(heads.check(new Claim.TempoIs(tempo.perMinute())));
        }
        if (unit instanceof Constituent.Signature signature) {
            var key = stage.timeline().line().header().key();
            return Optional.of(
                    key.fifths() == signature.sharps()
                            ? Verdict.AGREES
                            : new Verdict.Contradicts(new Right.KeyThere(key)));
        }
        if (unit instanceof Constituent.FeelNamed feel) {
            return Optional.of(heads.check(new Claim.FeelIs(feel.swung())));
        }
        if (unit instanceof Constituent.MeterNamed meter) {
            return meter(meter, said);
        }
        if (unit instanceof Constituent.StringCount strings) {
            int there = stage.tuning().size();
            boolean bass = said.has(Tie.BASS) || said.has(Tie.HAVE) || strings.instrument();
            return bass ? Optional.of(counted(strings.strings(), there)) : Optional.empty();
        }
        if (unit instanceof Constituent.BarCount count) {
            boolean alone = said.units().stream().allMatch(part -> part == unit || isLead(part))
                    && said.memory().bars().isEmpty(); // "eight bars", to begin with
            boolean own = alone
                    || said.has(Tie.LONG)
                    || said.hasAny(Tie.BE, Tie.HAVE) && (!said.has(Tie.OF) || said.has(Tie.IT));
            boolean other = said.hasAny(Tie.FOR, Tie.THEN, Tie.TO, Tie.OVER) || said.has(Constituent.Name.class);
            boolean whole = said.scope().extent() == Scope.Extent.WHOLE // "the whole thing runs to twelve bars"
                    && said.units().stream()
                            .allMatch(part -> part == unit
                                    || isLead(part)
                                    || PlacedClause.is(part, Tie.TO)
                                    || PlacedClause.is(part, Tie.FOR)
                                    || PlacedClause.is(part, Tie.PLAY));
            return whole || own && !other
                    ? Optional.of(heads.check(new Claim.BarCountIs(count.bars())))
                    : Optional.empty();
        }
        if (unit instanceof Constituent.BeatsInBar beats) {
            return Optional.of(beats(beats.beats()));
        }
        return keyOrChord(unit, said);
    }

    private static boolean isLead(Constituent unit) {
        return PlacedClause.is(unit, Tie.SO) || PlacedClause.is(unit, Tie.AND) || PlacedClause.is(unit, Tie.COMMA);
    }

    private static Verdict counted(int said, int there) {
        return said == there ? Verdict.AGREES : new Verdict.Contradicts(new Right.StringsThere(there));
    }

    private Optional<Verdict> meter(Constituent.MeterNamed said, PlacedClause clause) {
        if (said.counts() < 2 || said.counts() > Meter.MOST_COUNTS || !Meter.isUnit(said.unit())) {
            return Optional.empty();
        }
        var meter = Meter.of(said.counts(), said.unit());
        boolean one = clause.scope().isSaid() && clause.scope().bars().size() == 1;
        if (!one) {
            return Optional.of(heads.check(new Claim.MeterIs(meter)));
        }
        int bar = clause.scope().bars().get(0);
        if (!stage.timeline().has(bar)) {
            return Optional.of(Verdict.CANNOT_TELL);
        }
        var there = stage.timeline().at(bar).meter();
        boolean same = there.counts() == meter.counts() && there.unit() == meter.unit();
        return Optional.of(same ? Verdict.AGREES : new Verdict.Contradicts(new Right.MeterThere(there)));
    }

    /** "Four beats in every bar": counts, or what the metre calls beats. */
    private Verdict beats(int said) {
        var meters = stage.allBars().stream()
                .map(bar -> stage.timeline().at(bar).meter())
                .distinct()
                .toList();
        boolean fits = meters.stream()
                .allMatch(
                        meter -> said == meter.counts() || said == meter.beats().size());
        return fits ? Verdict.AGREES : new Verdict.Contradicts(new Right.MeterThere(meters.get(0)));
    }

    /** A minor may be the line's key or a bar's chord. */
    private Optional<Verdict> keyOrChord(Constituent unit, PlacedClause said) {
        boolean bars = said.scope().isSaid() && said.scope().extent() == Scope.Extent.SAID;
        boolean here = said.has(Tie.ON) && said.has(Tie.WE); // "we're on D minor"
        boolean chord = bars || here || said.hasAny(Tie.OVER, Tie.CHORD) || unit instanceof Constituent.ChordNamed;
        if (!chord) {
            var named = (Constituent.KeyNamed) unit;
            boolean stated = said.hasAny(Tie.IN, Tie.KEY)
                    || said.units().size() > 1
                    || said.scope().isSaid();
            return stated && Key.isWritable(named.tonic(), named.mode())
                    ? Optional.of(heads.check(new Claim.KeyIs(new Key(named.tonic(), named.mode()), Where.UNSAID)))
                    : Optional.empty();
        }
        Predicate<Chord> fits = unit instanceof Constituent.ChordNamed named
                ? there -> isSame(there, named.chord())
                : there -> isTriad(there, (Constituent.KeyNamed) unit);
        return Optional.of(chords(said, fits));
    }

    private static boolean isSame(Chord there, Chord said) {
        return there.root().pitchClass() == said.root().pitchClass() && there.quality() == said.quality();
    }

    private static boolean isTriad(Chord there, Constituent.KeyNamed said) {
        boolean minor = there.quality().has(Degree.parse("b3"));
        return there.root().pitchClass() == said.tonic().pitchClass()
                && minor == said.mode().isMinorish();
    }

    private Verdict chords(PlacedClause said, Predicate<Chord> fits) {
        for (int bar : said.bars()) {
            if (!stage.timeline().has(bar)) {
                return Verdict.CANNOT_TELL;
            }
            var there = stage.chords(bar);
            if (there.isEmpty()) {
                return Verdict.CANNOT_TELL;
            }
            boolean any = there.stream().anyMatch(chord -> chord instanceof Chord named && fits.test(named));
            if (!any) {
                return new Verdict.Contradicts(new Right.ChordsThere(bar, List.copyOf(there)));
            }
        }
        return said.bars().isEmpty() ? Verdict.CANNOT_TELL : Verdict.AGREES;
    }

    /** "The chord is E flat", "a C chord", "with F sharp in the bass". */
    private Optional<Optional<Verdict>> names(PlacedClause said) {
        var names = said.all(Constituent.Name.class);
        if (names.isEmpty()) {
            return Optional.empty();
        }
        if (names.size() > 1) {
            return Optional.of(Optional.empty());
        }
        NoteName name = names.get(0).name();
        if (said.has(Tie.BASS)) {
            return Optional.of(Optional.of(
                    chords(said, there -> there.bass().orElse(there.root()).pitchClass() == name.pitchClass())));
        }
        boolean chord =
                said.has(Tie.CHORD) || (said.has(Tie.OVER) && said.scope().isSaid());
        if (chord) {
            return Optional.of(Optional.of(
                    chords(said, there -> there.root().pitchClass() == name.pitchClass() && isPlain(there))));
        }
        boolean home = said.has(Tie.ON) && said.has(Tie.WE) && said.scope().extent() == Scope.Extent.SAID;
        if (home) {
            return Optional.of(home(name, said));
        }
        boolean tonic = said.has(Tie.IN)
                && said.units().size() <= 4
                && !said.scope().isSaid()
                && said.hasAny(Tie.WE, Tie.IT, Tie.THAT)
                && !said.hasAny(Tie.PLAY, Tie.HAVE);
        return Optional.of(tonic ? Optional.of(heads.check(new Claim.TonicIs(name))) : Optional.empty());
    }

    /** "We stay on C": over its chord, or on its note. */
    private Optional<Verdict> home(NoteName name, PlacedClause said) {
        var chords = chords(said, there -> there.root().pitchClass() == name.pitchClass());
        boolean played = stage.notes(stage.stretches(said.bars(), Optional.empty(), OptionalInt.empty())).stream()
                .flatMap(at -> stage.midi(at).stream())
                .anyMatch(midi -> Math.floorMod(midi, 12) == name.pitchClass());
        return Optional.of(played && chords instanceof Verdict.Contradicts ? Verdict.CANNOT_TELL : chords);
    }

    private static boolean isPlain(ChordSymbol chord) {
        return chord instanceof Chord named && !named.quality().has(Degree.parse("b3"));
    }
}
