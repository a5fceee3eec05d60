package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.grammar.TalkHearing;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.whole.Asking;
import groundbass.script.thread.whole.AtItsTime;
import groundbass.script.thread.whole.Beginning;
import groundbass.script.thread.whole.Leaning;
import groundbass.script.thread.whole.NumberedBar;
import groundbass.script.thread.whole.SameReader;
import groundbass.script.thread.whole.StringNames;
import groundbass.script.thread.whole.Turn;
import groundbass.script.words.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Follows a talk clause by clause, and judges the clauses that it understands to their last word. */
public final class Talk {
    private static final int PRACTICE = 3;

    /** So many characters a clause may have for it to be one, or so many things it may tell. */
    private static final int SHORT = 60;

    private static final int FEW = 5;

    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL);

    private static final Set<Class<? extends Constituent>> OF_NOTES = Set.of(
            Constituent.Name.class,
            Constituent.Place.class,
            Constituent.Value.class,
            Constituent.Played.class,
            Constituent.Dead.class,
            Constituent.Triplet.class,
            Constituent.Silence.class,
            Constituent.Beats.class);

    private final Stage stage;
    private final TalkHearing hearing;
    private final SameReader same;
    private final TwoEnds ends;
    private final StringNames tuning;
    private final List<Reader> readers;
    private final List<Reader> otherwise;
    private final List<Reader> loosely;
    private final List<Reader> looselyOtherwise;
    private Memory memory = Memory.NOTHING;
    /** Whether the clause before said what is not so. */
    private boolean denied;
    /** Whether the sentence has taken back what it said first: where it goes on is an aside. */
    private boolean takenBack;
    /** The clause before, in the same sentence. */
    private Optional<Clause> before = Optional.empty();
    /** What was said last of the line, in this sentence or before it. */
    private Optional<Clause> last = Optional.empty();
    /** What was asked just now. */
    private Optional<Asking> question = Optional.empty();
    /** Whether anything was said of notes yet, and not of chords and bars alone. */
    private boolean begun;
    /** For so many clauses a tempo may be one to practise at. */
    private int slowly;

    public Talk(Timeline timeline, TalkHearing hearing) {
        this.stage = new Stage(timeline, false);
        this.hearing = hearing;
        this.same = new SameReader(stage);
        this.ends = new TwoEnds(stage);
        this.tuning = new StringNames(timeline.line().header().tuning());
        this.readers = readers(stage);
        this.otherwise = readers(new Stage(timeline, true));
        this.loosely = loosely(stage);
        this.looselyOtherwise = loosely(new Stage(timeline, true));
    }

    private static List<Reader> loosely(Stage stage) {
        return List.of(
                new HeadGist(stage), new Distances(stage), new Denials(stage), new Amounts(stage), new Gist(stage));
    }

    private static List<Reader> readers(Stage stage) {
        var notes = new NoteReader(stage);
        return List.of(
                new HeadReader(stage),
                new HandReader(stage),
                new StringsReader(stage),
                new NeckReader(stage),
                new ExtremeReader(stage),
                new CountReader(stage),
                new EndsReader(stage),
                new IntervalReader(stage),
                new AboveReader(stage),
                new SpanReader(stage),
                new RestReader(stage),
                new AgainReader(stage),
                new AlikeReader(stage),
                new PathReader(stage),
                new DirectionReader(stage, notes),
                new EdgeReader(stage),
                new UntilReader(stage),
                new LocationReader(stage),
                notes);
    }

    /**
     * A clause.
     *
     * @param verdict empty where it was not understood
     * @param musical whether it speaks of the line at all, as far as can be seen
     * @param asked whether it asks and does not say, or only compares with something that was said
     */
    public record Heard(
            int from, int to, Optional<Verdict> verdict, boolean musical, boolean asked, Optional<Position> position) {
        private Heard untold() {
            return new Heard(from, to, Optional.empty(), musical, asked, position);
        }
    }

    public List<Heard> hear(List<Word> sentence) {
        var heard = new ArrayList<Heard>();
        takenBack = false;
        before = hearing.unpunctuated() ? before : Optional.empty(); // nobody wrote where a sentence ends
        for (var clause : hearing.clauses(sentence)) {
            if (!heard.isEmpty() && question.isEmpty() && isBareNo(clause)) {
                int first = hearing.unpunctuated() ? heard.size() - 1 : 0;
                heard.subList(first, heard.size()).replaceAll(Heard::untold);
                takenBack = true;
            }
            heard.add(hear(clause));
            before = Optional.of(clause);
        }
        return heard;
    }

    /** "..., well, no, ...": what was said before in this sentence is meant no longer. */
    private static boolean isBareNo(Clause clause) {
        return clause.units().get(0).is(Tie.NO) && !isMusical(clause);
    }

    private Heard hear(Clause said) {
        var answer = question.flatMap(asked -> asked.answered(said))
                .or(() -> last.flatMap(earlier -> Leaning.completed(said, earlier)));
        var known = state();
        var heard = hear(said, ofBars(answer.orElse(said).plain()));
        boolean apart = answer.isPresent() && heard.verdict().isEmpty();
        if (apart) { // what is not understood together may be so alone
            goBackTo(known);
            heard = hear(said, ofBars(said.plain()));
        }
        last = isMusical(said) ? Optional.of(said) : last;
        boolean waits = answer.isEmpty() && !isMusical(said) && !said.has(Tie.NO); // "Let me see."
        question = said.isQuestion()
                ? Optional.of(new Asking(said))
                : question.filter(asked -> waits && !asked.isPatient()).map(Asking::patient);
        return heard;
    }

    /** What hearing one clause changes. */
    private record State(Memory memory, boolean denied, boolean begun, int slowly) {}

    private State state() {
        return new State(memory, denied, begun, slowly);
    }

    private void goBackTo(State state) {
        memory = state.memory();
        denied = state.denied();
        begun = state.begun();
        slowly = state.slowly();
    }

    private boolean isOverview() {
        return before.filter(earlier -> earlier.has(Constituent.BarCount.class)).isPresent();
    }

    /** "Eight bars, and the last one is over G": after bars were spoken of, "one" is a bar. */
    private Clause ofBars(Clause clause) {
        boolean one = clause.units().size() > 2
                && clause.units().get(1).is(Tie.ONE)
                && clause.units().get(0).unit() instanceof Constituent.Rank rank
                && rank.which() == Constituent.Rank.Which.LAST;
        if (!isOverview() || !one) {
            return question.isPresent() ? clause : new NumberedBar(memory, stage).of(clause);
        }
        var units = new ArrayList<>(clause.units().subList(2, clause.units().size()));
        var last = clause.units().get(0);
        units.add(0, new Read(new Constituent.BarAt(Constituent.BarAt.Way.LAST), last.from(), last.to()));
        return new Clause(units);
    }

    /** @param clause what is meant, where a question and its answer make one statement */
    private Heard hear(Clause said, Clause clause) {
        boolean starts = Beginning.isIn(clause);
        boolean fresh = memory.bars().isEmpty() || !begun && clause.has(Tie.WE);
        boolean opening = fresh && starts && !clause.has(Constituent.Bars.class);
        begun |= clause.units().stream()
                .anyMatch(read -> OF_NOTES.contains(read.unit().getClass()));
        if (opening) { // a talk begins where its line does
            memory = memory.at(List.of(stage.timeline().line().firstNumber()), OptionalInt.empty());
        }
        slowly = clause.has(Tie.SLOW) ? PRACTICE : slowly - 1;
        boolean practised = slowly > 0 && clause.has(Constituent.TempoNamed.class);
        boolean ofOther = clause.units().get(0).is(Tie.WHAT)
                && before.filter(earlier -> earlier.has(Tie.EXCEPT)).isPresent(); // "unlike bar one, where ..."
        boolean wished = clause.has(Tie.MAYBE)
                || before.filter(earlier -> earlier.has(Tie.MAYBE)).isPresent()
                        && VERBS.stream().noneMatch(clause::has); // "try it at sixty, and then at ninety"
        boolean unreal = wished || clause.isQuestion() || practised || ofOther;
        var finding = unreal ? Optional.<Judged>empty() : read(clause);
        remember(clause, finding);
        denied = clause.has(Tie.NOT);
        var verdict = finding.map(Judged::verdict)
                .map(found -> found instanceof Verdict.Contradicts wrong && (!isOne(said) || isTorn(said, wrong))
                        ? Verdict.CANNOT_TELL
                        : found);
        var wrong = finding.flatMap(Judged::about).flatMap(said::find).or(said::firstKnown);
        return new Heard(
                wrong.map(Read::from).orElse(said.from()),
                said.lastKnown().map(Read::to).orElse(said.to()),
                verdict,
                isMusical(clause),
                clause.isQuestion() || isCompared(clause) || isFarFrom(clause),
                position(finding));
    }

    private Optional<Judged> read(Clause clause) {
        return tuning.read(clause).or(() -> continued(clause)).or(() -> judged(clause));
    }

    /** Where nobody wrote where a clause ends, a long one may be two. */
    private boolean isOne(Clause said) {
        long told = said.units().stream()
                .filter(read -> !(read.unit() instanceof Constituent.Small))
                .count();
        int from = said.firstKnown().map(Read::from).orElse(said.from());
        int to = said.lastKnown().map(Read::to).orElse(said.to());
        boolean verb = VERBS.stream().anyMatch(said::has) || said.has(Tie.WE) && said.has(Constituent.Played.class);
        boolean brief = to - from <= SHORT || told <= FEW && verb;
        return !hearing.unpunctuated() || brief;
    }

    /** Nobody wrote to what a time belongs: "... nothing on four there are four notes in bar four". */
    private boolean isTorn(Clause said, Verdict.Contradicts wrong) {
        return hearing.unpunctuated()
                && wrong.right() instanceof Right.CountThere
                && said.has(Constituent.Beats.class)
                && said.has(Tie.THERE);
    }

    private Optional<Position> position(Optional<Judged> finding) {
        return finding.flatMap(found -> found.notes().stream().findFirst().map(Timeline.At::position))
                .or(() -> memory.bar().filter(stage.timeline()::has).map(bar -> new Position(bar, Fraction.ZERO)));
    }

    /** "On three you stay there and play the G": without a subject of its own, a verb is at the time of the one before. */
    private Optional<Judged> continued(Clause clause) {
        var first = clause.units().get(0);
        boolean elliptic = first.is(Tie.PLAY) || first.is(Tie.HAVE) || first.is(Tie.HOLD);
        var moments = before.stream()
                .flatMap(earlier -> earlier.units().stream())
                .filter(Talk::isMoment)
                .toList();
        boolean bar = !hearing.unpunctuated()
                && !moments.isEmpty()
                && moments.stream().allMatch(read -> read.is(Constituent.Bars.class));
        if (!elliptic && !bar
                || moments.isEmpty()
                || !clause.isKnown()
                || clause.units().stream().anyMatch(Talk::isMoment)) {
            return Optional.empty();
        }
        var units = new ArrayList<>(moments);
        units.addAll(clause.units());
        return read(new Clause(units), readers).filter(Judged::agrees);
    }

    private static boolean isMoment(Read read) {
        return read.is(Constituent.Beats.class)
                || read.is(Constituent.LastBeats.class)
                || read.is(Constituent.Parts.class)
                || read.is(Constituent.HalfBar.class)
                || read.is(Constituent.Bars.class)
                || read.is(Constituent.BarAt.class);
    }

    /** What is not understood to its last word is read without the words that are not known, and then for its gist. */
    private Optional<Judged> judged(Clause clause) {
        var timed = AtItsTime.of(clause);
        if (timed != clause) {
            return judged(timed).map(Judged::partly);
        }
        var whole = clause.isKnown() ? read(clause, readers) : Optional.<Judged>empty();
        if (whole.filter(Judged::isSure).isPresent()) {
            return whole;
        }
        var core = clause.core();
        boolean negative = clause.has(Tie.NOT) || clause.has(Tie.NO);
        boolean leads = clause.has(Tie.UP) || clause.has(Tie.DOWN) || clause.has(Tie.TO) || clause.has(Tie.FROM);
        var careful = readers.stream()
                .filter(reader -> !isRelative(clause) && !clause.has(Tie.SAME) && !clause.has(Tie.LIKE))
                .filter(reader -> !leads || reader instanceof PathReader || reader instanceof IntervalReader)
                .toList();
        return core.filter(known -> !clause.isKnown() && !negative)
                .flatMap(known -> read(known, careful))
                .filter(Judged::contradicts)
                .or(() -> core.filter(known -> !isRelative(clause) || !refers(known))
                        .flatMap(this::gist))
                .or(() -> whole);
    }

    /** What "it" is, where something was denied just now, or is the same as something else, nobody knows. */
    private Optional<Judged> gist(Clause clause) {
        if (denied && refers(clause) || isCompared(clause)) {
            return Optional.empty();
        }
        var alike = same.gist(clause, memory);
        if (alike.isPresent()) {
            return alike;
        }
        return PlacedClause.of(clause, memory, stage)
                .or(() -> head(clause).flatMap(head -> PlacedClause.of(head, memory, stage)))
                .flatMap(said -> judged(said, loosely, looselyOtherwise));
    }

    /** "The only place where you ...". */
    private static boolean isRelative(Clause clause) {
        var units = clause.units();
        for (int i = 1; i + 1 < units.size(); i++) {
            if (units.get(i).is(Tie.WHAT) && !units.get(i + 1).is(Tie.COMMA)) {
                return true;
            }
        }
        return false;
    }

    /** "It's the same G that you know". */
    private static boolean isCompared(Clause clause) {
        return (clause.has(Tie.SAME) || clause.has(Constituent.Octaves.class) && clause.has(Tie.OF)) && refers(clause);
    }

    /** "A fret below the place where the next bar begins". */
    private static boolean isFarFrom(Clause clause) {
        boolean ofGroup = clause.units().stream()
                        .anyMatch(read -> read.unit() instanceof Constituent.Rank rank
                                && (rank.which() == Constituent.Rank.Which.HIGHEST
                                        || rank.which() == Constituent.Rank.Which.LOWEST))
                && clause.has(Tie.OF)
                && (clause.has(Tie.THAT) || clause.has(Tie.THEY)); // "the top of that run"
        return ofGroup || isRelative(clause) && (clause.has(Tie.BELOW) || clause.has(Tie.ABOVE));
    }

    private static boolean refers(Clause clause) {
        return clause.has(Tie.IT) || clause.has(Tie.THAT) || clause.has(Tie.WHICH);
    }

    /** "Two slides in the line, one here and one in bar two": what stands before the comma, where two places do not go together. */
    private static Optional<Clause> head(Clause clause) {
        for (int i = 1; i < clause.units().size(); i++) {
            if (clause.units().get(i).is(Tie.COMMA)) {
                return Optional.of(new Clause(clause.units().subList(0, i)));
            }
        }
        return Optional.empty();
    }

    private Optional<Judged> read(Clause clause, List<Reader> by) {
        var alike = same.read(clause, memory);
        if (alike.isPresent()) {
            return alike;
        }
        var said = PlacedClause.of(clause, memory, stage);
        if (said.isEmpty()) {
            return ends.read(clause, memory);
        }
        boolean nowhere =
                said.get().scope().isSaid() && said.get().scope().bars().isEmpty();
        return nowhere ? Optional.empty() : judged(said.get(), by, otherwise);
    }

    /** In compound and grouped meters a beat may be a count or what the meter calls a beat: wrong is only what is so in neither. */
    private Optional<Judged> judged(PlacedClause said, List<Reader> readers, List<Reader> otherwise) {
        var finding = first(readers, said);
        boolean ambiguous = said.scope().time().isPresent()
                && said.bars().stream().filter(stage.timeline()::has).anyMatch(this::isGrouped)
                && finding.filter(found -> !found.agrees()).isPresent();
        if (!ambiguous) {
            return finding;
        }
        var other = first(otherwise, said);
        return other.filter(found -> !found.contradicts()).or(() -> finding);
    }

    private boolean isGrouped(int bar) {
        return stage.timeline().at(bar).meter().beats().stream().anyMatch(beat -> beat != 1);
    }

    private static Optional<Judged> first(List<Reader> readers, PlacedClause said) {
        for (var reader : readers) {
            var finding = reader.read(said);
            if (finding.isPresent()) {
                return finding;
            }
        }
        return Optional.empty();
    }

    /** That the line has a name, or is spoken of, says nothing of it. */
    private static boolean isMusical(Clause clause) {
        return clause.units().stream()
                .anyMatch(read -> !(read.unit() instanceof Constituent.Small)
                        && !(read.unit() instanceof Constituent.Whole)
                        && !(read.unit() instanceof Constituent.Unknown)
                        && !(read.unit() instanceof Constituent.Number));
    }

    /** The beat in which notes begin; empty where they begin in several. */
    private OptionalInt beat(List<Timeline.At> notes) {
        var beats = notes.stream()
                .map(at -> stage.beats(at.bar()).stream()
                        .filter(beat -> !beat.from().isAfter(at.note().onset()))
                        .count())
                .distinct()
                .toList();
        return beats.size() == 1 ? OptionalInt.of(beats.get(0).intValue()) : OptionalInt.empty();
    }

    /** Bars and beats are remembered of every clause, notes of those that were understood. */
    private void remember(Clause clause, Optional<Judged> finding) {
        boolean amount =
                question.filter(asked -> asked.asked().has(Tie.HOW_MANY)).isPresent();
        var turn = new Turn(memory, stage, isOverview(), amount).of(clause);
        boolean aside = takenBack || clause.units().get(0).is(Tie.NO);
        memory = memory.at(turn.bars().filter(bars -> !aside).orElse(memory.bars()), turn.beat());
        if (finding.isPresent()) {
            memory = memory.of(finding.get().notes(), finding.get().agrees())
                    .at(memory.bars(), beat(finding.get().notes()))
                    .comparedWith(finding.get().compared());
        } else if (isMusical(clause)) {
            memory = memory.vague();
        }
    }
}
