package groundbass.script.thread;

import groundbass.script.checking.Timeline;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank.Which;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.whole.AtItsTime;
import groundbass.script.thread.whole.SameReader;
import java.util.List;
import java.util.Optional;

/**
 * What a clause says of the line, and whether it is so: it is read to its last word, else without the words that are not
 * known, else for its gist.
 */
public final class ClauseReading {
    private final Stage stage;
    private final SameReader same;
    private final TwoEnds ends;
    private final List<Reader> readers;
    private final List<Reader> leading;
    private final List<Reader> otherwise;
    private final List<Reader> loosely;
    private final List<Reader> looselyOtherwise;

    public ClauseReading(Timeline timeline) {
        this.stage = new Stage(timeline, false);
        this.same = new SameReader(stage);
        this.ends = new TwoEnds(stage);
        var byBeats = new Stage(timeline, true);
        this.readers = readers(stage);
        this.leading = readers.stream()
                .filter(reader -> reader instanceof PathReader
                        || reader instanceof IntervalReader
                        || reader instanceof EndsReader)
                .toList();
        this.otherwise = readers(byBeats);
        this.loosely = loosely(stage);
        this.looselyOtherwise = loosely(byBeats);
    }

    private static List<Reader> loosely(Stage stage) {
        return List.of(
                new HeadGist(stage),
                new Distances(stage),
                new Denials(stage),
                new Amounts(stage),
                new HeldReader(stage),
                new Gist(stage));
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
                new WhenReader(stage),
                new TimesReader(stage),
                new AlikeReader(stage),
                new PathReader(stage),
                new OnwardReader(stage),
                new DirectionReader(stage, notes),
                new EdgeReader(stage),
                new UntilReader(stage),
                new LocationReader(stage),
                notes);
    }

    /** @param whole whether it was read to its last word */
    public record Understood(Judged judged, boolean whole) {}

    /**
     * What is not understood to its last word is read without the words that are not known, and then for its gist.
     *
     * @param denied whether the clause before said what is not so
     */
    public Optional<Understood> understood(Clause clause, Memory memory, boolean denied) {
        var timed = AtItsTime.of(clause);
        if (timed != clause) {
            return understood(timed, memory, denied)
                    .map(found -> new Understood(found.judged().partly(), false));
        }
        boolean apart =
                leadsOn(clause, memory) && clause.has(Constituent.Name.class) && !clause.has(Constituent.Played.class);
        var whole = (clause.isKnown() ? whole(clause, memory) : Optional.<Judged>empty())
                .filter(judged -> !apart || !judged.contradicts());
        boolean sure = whole.filter(Judged::isSure).isPresent();
        return (sure ? whole : inPart(clause, memory, denied).or(() -> whole))
                .map(judged -> new Understood(judged, sure));
    }

    private Optional<Judged> inPart(Clause clause, Memory memory, boolean denied) {
        var core = clause.core();
        boolean negative = clause.has(Tie.NOT) || clause.has(Tie.NO);
        return core.filter(known -> !clause.isKnown() && !negative)
                .flatMap(known -> read(known, memory, careful(clause)))
                .filter(Judged::contradicts)
                .or(() -> core.filter(known -> !isRelative(clause) || !refers(known))
                        .flatMap(known -> gist(known, memory, denied)));
    }

    /** Those that can be trusted where something was not understood. */
    private List<Reader> careful(Clause clause) {
        if (isRelative(clause) || clause.has(Tie.SAME) || clause.has(Tie.LIKE)) {
            return List.of();
        }
        boolean leads = clause.has(Tie.UP) || clause.has(Tie.DOWN) || clause.has(Tie.TO) || clause.has(Tie.FROM);
        return leads ? leading : readers;
    }

    /** What "it" is, where something was denied just now, or is the same as something else, nobody knows. */
    private Optional<Judged> gist(Clause clause, Memory memory, boolean denied) {
        if (denied && refers(clause) || isCompared(clause) || leadsOn(clause, memory)) {
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

    /** "The C sharp takes us up to the D in the next bar": only where it leads to is there. */
    private static boolean leadsOn(Clause clause, Memory memory) {
        return clause.units().stream()
                .dropWhile(read -> !read.is(Tie.TO))
                .skip(1)
                .anyMatch(
                        read -> read.unit() instanceof Constituent.BarAt bar && bar.way() == Constituent.BarAt.Way.NEXT
                                || read.unit() instanceof Constituent.Bars bars
                                        && memory.bar()
                                                .filter(bar -> bars.numbers().equals(List.of(bar + 1)))
                                                .isPresent());
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
    public static boolean isCompared(Clause clause) {
        return (clause.has(Tie.SAME) || clause.has(Constituent.Octaves.class) && clause.has(Tie.OF)) && refers(clause);
    }

    /** "A fret below the place where the next bar begins". */
    public static boolean isFarFrom(Clause clause) {
        boolean ofGroup = clause.units().stream()
                        .anyMatch(read -> read.unit() instanceof Constituent.Rank rank
                                && (rank.which() == Which.HIGHEST || rank.which() == Which.LOWEST))
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

    /** What is understood to its last word. */
    public Optional<Judged> whole(Clause clause, Memory memory) {
        return read(clause, memory, readers);
    }

    private Optional<Judged> read(Clause clause, Memory memory, List<Reader> by) {
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
}
