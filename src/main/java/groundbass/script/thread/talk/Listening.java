package groundbass.script.thread.talk;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.ClauseReading;
import groundbass.script.thread.ClauseReading.Understood;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.whole.Asking;
import groundbass.script.thread.whole.Beginning;
import groundbass.script.thread.whole.Leaning;
import groundbass.script.thread.whole.NumberedBar;
import groundbass.script.thread.whole.NumberedBeat;
import groundbass.script.thread.whole.StringNames;
import groundbass.script.thread.whole.Turn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Hears one clause where a talk has come to it. */
final class Listening {
    /** So many characters a clause may have for it to be one, or so many things it may tell. */
    private static final int SHORT = 60;

    private static final int FEW = 5;

    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL);

    private final Stage stage;
    private final boolean unpunctuated;
    private final StringNames tuning;
    private final ClauseReading reading;

    Listening(Timeline timeline, boolean unpunctuated) {
        this.stage = new Stage(timeline, false);
        this.unpunctuated = unpunctuated;
        this.tuning = new StringNames(timeline.line().header().tuning());
        this.reading = new ClauseReading(timeline);
    }

    /**
     * @param heard what came of a clause
     * @param whole whether it was understood to its last word
     * @param after where the talk has come with it
     */
    record Step(HeardClause heard, boolean whole, Course after) {
        /** The same, where it is not sure enough that it was one clause for it to be called wrong. */
        Step doubted() {
            return new Step(heard.doubted(), whole, after);
        }
    }

    Step hear(Course at, Clause said) {
        var answer = at.question().flatMap(asked -> asked.answered(said)).or(() -> at.last()
                .flatMap(earlier -> Leaning.completed(said, earlier)));
        var together = hear(at, said, ofBars(at, answer.orElse(said).plain()));
        boolean apart = answer.isPresent() && together.heard().verdict().isEmpty();
        // what is not understood together may be so alone
        var step = apart ? hear(at, said, ofBars(at, said.plain())) : together;
        boolean waits = answer.isEmpty() && !isMusical(said) && !said.has(Tie.NO); // "Let me see."
        var question = said.isQuestion()
                ? Optional.of(new Asking(said))
                : at.question().filter(asked -> waits && !asked.isPatient()).map(Asking::patient);
        return new Step(step.heard(), step.whole(), step.after().after(said, isMusical(said), question));
    }

    /** "Eight bars, and the last one is over G": after bars were spoken of, "one" is a bar. */
    private Clause ofBars(Course at, Clause clause) {
        boolean one = clause.units().size() > 2
                && clause.units().get(1).is(Tie.ONE)
                && clause.units().get(0).unit() instanceof Constituent.Rank rank
                && rank.which() == Constituent.Rank.Which.LAST;
        if (!at.isOverview() || !one) {
            var numbered = at.question().isPresent() ? clause : new NumberedBar(at.memory(), stage).of(clause);
            return new NumberedBeat(at.memory(), stage, at.question().isPresent()).of(numbered);
        }
        var units = new ArrayList<>(clause.units().subList(2, clause.units().size()));
        var last = clause.units().get(0);
        units.add(0, new Read(new Constituent.BarAt(Constituent.BarAt.Way.LAST), last.from(), last.to()));
        return new Clause(units);
    }

    /** @param clause what is meant, where a question and its answer make one statement */
    private Step hear(Course at, Clause said, Clause clause) {
        var opened = opened(at, clause);
        var found = isUnreal(opened, clause) ? Optional.<Understood>empty() : read(opened, clause);
        var ahead = movedOn(opened, clause, found);
        var here = ahead.orElse(opened);
        var finding = ahead.isPresent() ? Optional.<Understood>empty() : found;
        var judged = finding.map(Understood::judged);
        var verdict = judged.map(Judged::verdict)
                .map(there -> isTold(there, said) && !isSaidItself(there, clause) ? there : Verdict.CANNOT_TELL);
        var wrong = judged.flatMap(Judged::about).flatMap(said::find).or(said::firstKnown);
        var after = remembered(here, clause, judged);
        int from = wrong.map(Read::from).orElse(said.from());
        int to = said.lastKnown().map(Read::to).orElse(said.to());
        boolean turned = to <= from; // what was said last was put before the rest
        var heard = new HeardClause(
                turned ? said.units().stream().mapToInt(Read::from).min().orElse(from) : from,
                turned ? said.units().stream().mapToInt(Read::to).max().orElse(to) : to,
                verdict,
                isMusical(clause) || clause.units().get(0).is(Tie.WHICH), // more is said of what was just said
                clause.isQuestion() || ClauseReading.isCompared(clause) || ClauseReading.isFarFrom(clause),
                position(after, judged));
        return new Step(heard, finding.filter(Understood::whole).isPresent(), after.hearing(clause));
    }

    /** What is right is a silence, and one is what was said: something else of it was misheard. */
    private static boolean isSaidItself(Verdict found, Clause clause) {
        return found instanceof Verdict.Contradicts wrong
                && wrong.right() instanceof Right.NothingBegins nothing
                && nothing.rest()
                && clause.has(Constituent.Silence.class)
                && !clause.has(Constituent.Value.class)
                && !clause.has(Constituent.Lasting.class)
                && clause.units().stream()
                        .noneMatch(read -> read.unit() instanceof Constituent.Silence silence
                                && silence.length().isPresent());
    }

    /**
     * Where nobody wrote marks, the words that turn to the next bar are easily lost: what is wrong of the bar in hand and so
     * of the next one may be said of either. Empty where nothing speaks for that.
     */
    private Optional<Course> movedOn(Course at, Clause clause, Optional<Understood> found) {
        boolean wrong = found.filter(finding -> finding.judged().contradicts()).isPresent();
        boolean said = clause.units().stream()
                .anyMatch(read -> read.is(Constituent.Bars.class)
                        || read.is(Constituent.BarAt.class)
                        || read.is(Constituent.BarsAtEdge.class)
                        || read.is(Constituent.Whole.class));
        return at.memory()
                .bar()
                .filter(bar -> unpunctuated && wrong && !said && !goesOn(at.memory(), clause))
                .filter(bar -> stage.timeline().has(bar + 1))
                .filter(bar -> read(at.with(at.memory().at(List.of(bar + 1), OptionalInt.empty())), clause)
                        .filter(finding -> finding.judged().agrees())
                        .isPresent())
                .map(bar -> at.with(at.memory().at(List.of(bar, bar + 1), OptionalInt.empty())));
    }

    /** Whether a clause speaks of a later beat than the one in hand, or nothing was said of the bar yet. */
    private static boolean goesOn(Memory memory, Clause clause) {
        boolean fresh = memory.beat().isEmpty() && memory.compared().isEmpty();
        int beat = memory.beat().orElse(0);
        return fresh
                || beat > 0
                        && clause.units().stream()
                                .anyMatch(read -> read.unit() instanceof Constituent.Beats beats
                                                && beats.numbers().get(0) > beat
                                        || read.unit() instanceof Constituent.Parts parts
                                                && parts.beat().orElse(0) > beat);
    }

    /** A talk begins where its line does. */
    private Course opened(Course at, Clause clause) {
        boolean named = at.last().filter(Listening::isBare).isPresent(); // "Bar two. You start on ..."
        boolean fresh = at.memory().bars().isEmpty() || !at.begun() && clause.has(Tie.WE) && !named;
        boolean opening = fresh && Beginning.isIn(clause) && !clause.has(Constituent.Bars.class);
        return opening
                ? at.with(at.memory().at(List.of(stage.timeline().line().firstNumber()), OptionalInt.empty()))
                : at;
    }

    /** Whether no more than a bar is said. */
    private static boolean isBare(Clause clause) {
        return clause.has(Constituent.Bars.class)
                && clause.units().stream()
                        .allMatch(read -> read.unit() instanceof Constituent.Small || read.is(Constituent.Bars.class));
    }

    /** Whether it asks, wishes, or speaks of another tempo or another bar. */
    private static boolean isUnreal(Course at, Clause clause) {
        boolean practised = at.isSlow(clause) && clause.has(Constituent.TempoNamed.class);
        boolean ofOther = clause.units().get(0).is(Tie.WHAT)
                && at.before().filter(earlier -> earlier.has(Tie.EXCEPT)).isPresent(); // "unlike bar one, where ..."
        boolean wished = clause.has(Tie.MAYBE)
                || at.before().filter(earlier -> earlier.has(Tie.MAYBE)).isPresent()
                        && VERBS.stream().noneMatch(clause::has); // "try it at sixty, and then at ninety"
        return wished || clause.isQuestion() || practised || ofOther;
    }

    private Optional<Understood> read(Course at, Clause clause) {
        return tuning.read(clause)
                .or(() -> continued(at, clause))
                .map(judged -> new Understood(judged, true))
                .or(() -> reading.understood(clause, at.memory(), at.denied()));
    }

    private boolean isTold(Verdict found, Clause said) {
        return !(found instanceof Verdict.Contradicts wrong) || isOne(said) && !isTorn(said, wrong);
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
        return !unpunctuated || brief;
    }

    /** Nobody wrote to what a time belongs: "... nothing on four there are four notes in bar four". */
    private boolean isTorn(Clause said, Verdict.Contradicts wrong) {
        return unpunctuated
                && wrong.right() instanceof Right.CountThere
                && said.has(Constituent.Beats.class)
                && said.has(Tie.THERE);
    }

    private Optional<Position> position(Course after, Optional<Judged> finding) {
        return finding.flatMap(found -> found.notes().stream().findFirst().map(Timeline.At::position))
                .or(() -> after.memory()
                        .bar()
                        .filter(stage.timeline()::has)
                        .map(bar -> new Position(bar, Fraction.ZERO)));
    }

    /** "On three you stay there and play the G": without a subject of its own, a verb is at the time of the one before. */
    private Optional<Judged> continued(Course at, Clause clause) {
        var first = clause.units().get(0);
        boolean elliptic = first.is(Tie.PLAY) || first.is(Tie.HAVE) || first.is(Tie.HOLD);
        var moments = at.before().stream()
                .flatMap(earlier -> earlier.units().stream())
                .filter(Listening::isMoment)
                .toList();
        boolean bar = !unpunctuated
                && !moments.isEmpty()
                && moments.stream().allMatch(read -> read.is(Constituent.Bars.class));
        if (!elliptic && !bar
                || moments.isEmpty()
                || !clause.isKnown()
                || clause.units().stream().anyMatch(Listening::isMoment)) {
            return Optional.empty();
        }
        var units = new ArrayList<>(moments);
        units.addAll(clause.units());
        return reading.whole(new Clause(units), at.memory()).filter(Judged::agrees);
    }

    private static boolean isMoment(Read read) {
        return read.is(Constituent.Beats.class)
                || read.is(Constituent.LastBeats.class)
                || read.is(Constituent.Parts.class)
                || read.is(Constituent.HalfBar.class)
                || read.is(Constituent.Bars.class)
                || read.is(Constituent.BarAt.class);
    }

    /** That the line has a name, or is spoken of, says nothing of it. */
    static boolean isMusical(Clause clause) {
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

    /** "You hold it right through beat three": nothing else is named, so that "it" is still the same. */
    private static boolean isOfIt(Clause clause) {
        return clause.has(Tie.IT)
                && clause.has(Tie.WE)
                && clause.units().stream()
                        .allMatch(read -> read.unit() instanceof Constituent.Small
                                || read.is(Constituent.Unknown.class)
                                || read.is(Constituent.Lasting.class)
                                || read.isTime());
    }

    /** Bars and beats are remembered of every clause, notes of those that were understood. */
    private Course remembered(Course at, Clause clause, Optional<Judged> finding) {
        var memory = at.memory();
        var turn = new Turn(memory, stage, at.isOverview(), at.isAmountAsked()).of(clause);
        boolean aside = at.takenBack() || clause.units().get(0).is(Tie.NO);
        var turned = memory.at(turn.bars().filter(bars -> !aside).orElse(memory.bars()), turn.beat());
        if (finding.isEmpty()) {
            return at.with(isMusical(clause) && !isOfIt(clause) ? turned.vague() : turned);
        }
        var notes = finding.get().notes();
        return at.with(turned.of(notes, finding.get().agrees())
                .at(turned.bars(), beat(notes))
                .comparedWith(finding.get().compared()));
    }
}
