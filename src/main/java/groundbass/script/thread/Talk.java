package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.ConstituentReader;
import groundbass.script.grammar.Read;
import groundbass.script.grammar.Splitter;
import groundbass.script.grammar.Vocabulary;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.words.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** Follows a talk clause by clause, and judges the clauses that it understands to their last word. */
public final class Talk {
    private static final int PRACTICE = 3;

    private final Stage stage;
    private final Vocabulary vocabulary;
    private final boolean unpunctuated;
    private final boolean lowered;
    private final SameReader same;
    private final List<Reader> readers;
    private final List<Reader> otherwise;
    private final List<Reader> loosely;
    private final List<Reader> looselyOtherwise;
    private Memory memory = Memory.NOTHING;
    /** Whether the clause before said what is not so. */
    private boolean denied;
    /** Whether the sentence has taken back what it said first: where it goes on is an aside. */
    private boolean takenBack;
    /** What was asked just now. */
    private Optional<Question> question = Optional.empty();
    /** For so many clauses a tempo may be one to practise at. */
    private int slowly;

    /**
     * @param unpunctuated whether the talk goes on without marks
     * @param lowered whether it goes without capital letters
     */
    public Talk(Timeline timeline, Locale language, boolean unpunctuated, boolean lowered) {
        this.stage = new Stage(timeline, false);
        this.vocabulary = Vocabulary.of(language);
        this.unpunctuated = unpunctuated;
        this.lowered = lowered;
        this.same = new SameReader(stage);
        this.readers = readers(stage);
        this.otherwise = readers(new Stage(timeline, true));
        this.loosely = loosely(stage);
        this.looselyOtherwise = loosely(new Stage(timeline, true));
    }

    private static List<Reader> loosely(Stage stage) {
        return List.of(new HeadGist(stage), new Distances(stage), new Gist(stage));
    }

    private static List<Reader> readers(Stage stage) {
        var notes = new NoteReader(stage);
        return List.of(
                new HeadReader(stage),
                new StringsReader(stage),
                new NeckReader(stage),
                new ExtremeReader(stage),
                new CountReader(stage),
                new IntervalReader(stage),
                new PathReader(stage),
                new DirectionReader(stage, notes),
                new EdgeReader(stage),
                new LocationReader(stage),
                notes);
    }

    /**
     * A clause.
     *
     * @param verdict empty where it was not understood
     * @param musical whether it speaks of the line at all, as far as can be seen
     * @param asked whether it asks and does not say
     */
    public record Heard(
            int from, int to, Optional<Verdict> verdict, boolean musical, boolean asked, Optional<Position> position) {
        private Heard untold() {
            return new Heard(from, to, Optional.empty(), musical, asked, position);
        }
    }

    public List<Heard> hear(List<Word> sentence) {
        var units = ConstituentReader.units(sentence, vocabulary, lowered);
        var heard = new ArrayList<Heard>();
        takenBack = false;
        for (var clause : Splitter.clauses(units, unpunctuated)) {
            if (!heard.isEmpty() && question.isEmpty() && isBareNo(clause)) {
                heard.replaceAll(Heard::untold);
                takenBack = true;
            }
            heard.add(hear(clause));
        }
        return heard;
    }

    /** "..., well, no, ...": what was said before in this sentence is meant no longer. */
    private static boolean isBareNo(Clause clause) {
        return clause.has(Tie.NO) && !isMusical(clause);
    }

    private Heard hear(Clause said) {
        var answer = question.flatMap(asked -> asked.answered(said));
        var heard = hear(said, answer.orElse(said).plain());
        question = said.isQuestion() ? Optional.of(new Question(said)) : Optional.empty();
        return heard;
    }

    /** @param clause what is meant, where a question and its answer make one statement */
    private Heard hear(Clause said, Clause clause) {
        boolean opening = memory.bars().isEmpty() && clause.has(Tie.START) && !clause.has(Constituent.Bars.class);
        if (opening) { // a talk begins where its line does
            memory = memory.at(List.of(stage.timeline().line().firstNumber()), OptionalInt.empty());
        }
        slowly = clause.has(Tie.SLOW) ? PRACTICE : slowly - 1;
        boolean practised = slowly > 0 && clause.has(Constituent.TempoNamed.class);
        boolean unreal = clause.has(Tie.MAYBE) || clause.isQuestion() || practised;
        var finding = unreal ? Optional.<Judged>empty() : judged(clause);
        remember(clause, finding);
        denied = clause.has(Tie.NOT);
        var verdict = finding.map(Judged::verdict);
        var wrong = finding.flatMap(Judged::about).flatMap(said::find).or(said::firstKnown);
        return new Heard(
                wrong.map(Read::from).orElse(said.from()),
                said.lastKnown().map(Read::to).orElse(said.to()),
                verdict,
                isMusical(clause),
                clause.isQuestion(),
                position(finding));
    }

    private Optional<Position> position(Optional<Judged> finding) {
        return finding.flatMap(found -> found.notes().stream().findFirst().map(Timeline.At::position))
                .or(() -> memory.bar().filter(stage.timeline()::has).map(bar -> new Position(bar, Fraction.ZERO)));
    }

    /** What is not understood to its last word is read without the words that are not known, and then for its gist. */
    private Optional<Judged> judged(Clause clause) {
        var whole = clause.isKnown() ? read(clause, readers) : Optional.<Judged>empty();
        if (whole.filter(Judged::isSure).isPresent()) {
            return whole;
        }
        var core = clause.core();
        boolean negative = clause.has(Tie.NOT) || clause.has(Tie.NO);
        boolean leads = clause.has(Tie.UP) || clause.has(Tie.DOWN) || clause.has(Tie.TO) || clause.has(Tie.FROM);
        var careful = readers.stream()
                .filter(reader -> !clause.has(Tie.SAME) && !clause.has(Tie.LIKE))
                .filter(reader -> !leads || reader instanceof PathReader || reader instanceof IntervalReader)
                .toList();
        return core.filter(known -> !clause.isKnown() && !negative)
                .flatMap(known -> read(known, careful))
                .filter(Judged::contradicts)
                .or(() -> core.flatMap(this::gist))
                .or(() -> whole);
    }

    /** What "it" is, where something was denied just now, or is the same as something else, nobody knows. */
    private Optional<Judged> gist(Clause clause) {
        boolean refers = clause.has(Tie.IT) || clause.has(Tie.THAT) || clause.has(Tie.WHICH);
        return (denied || clause.has(Tie.SAME)) && refers
                ? Optional.empty()
                : PlacedClause.of(clause, memory, stage).flatMap(said -> judged(said, loosely, looselyOtherwise));
    }

    private Optional<Judged> read(Clause clause, List<Reader> by) {
        var alike = same.read(clause, memory);
        if (alike.isPresent()) {
            return alike;
        }
        var said = PlacedClause.of(clause, memory, stage);
        if (said.isEmpty()) {
            return Optional.empty();
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

    private static boolean isMusical(Clause clause) {
        return clause.units().stream()
                .anyMatch(read -> !(read.unit() instanceof Constituent.Small)
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
        List<Integer> bars = null;
        var beat = OptionalInt.empty();
        int places = 0;
        for (Read read : clause.units()) {
            var unit = read.unit();
            if (unit instanceof Constituent.Bars said) {
                bars = places == 0 ? said.numbers() : bars;
                places++;
            } else if (unit instanceof Constituent.BarAt at) {
                bars = at.way() == Constituent.BarAt.Way.LAST
                        ? List.of(stage.timeline().lastBar())
                        : bars;
                bars = at.way() == Constituent.BarAt.Way.NEXT
                        ? memory.bar().map(bar -> List.of(bar + 1)).orElse(bars)
                        : bars;
            } else if (unit instanceof Constituent.Beats beats
                    && beats.numbers().size() == 1) {
                beat = OptionalInt.of(beats.numbers().get(0));
            } else if (unit instanceof Constituent.Parts parts && parts.beat().isPresent()) {
                beat = parts.beat();
            }
        }
        boolean aside = takenBack || clause.units().get(0).is(Tie.NO);
        memory = memory.at(bars == null || aside ? memory.bars() : bars, beat);
        if (finding.isPresent()) {
            memory = memory.of(finding.get().notes(), finding.get().agrees())
                    .at(memory.bars(), beat(finding.get().notes()));
        } else if (isMusical(clause)) {
            memory = memory.vague();
        }
    }
}
