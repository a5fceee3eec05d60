package groundbass.script.reading;

import groundbass.score.Line;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Claim;
import groundbass.script.claims.Described;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Said;
import groundbass.script.claims.Spoken;
import groundbass.script.claims.Where;
import groundbass.script.words.Lexicon;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.script.words.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Reads the claims of one sentence after another, remembering what the speaker may take as known. */
public final class SentenceReader {
    private final Line line;
    private final Lexicon lexicon;
    private final Context context;

    public SentenceReader(Line line, Lexicon lexicon) {
        this.line = line;
        this.lexicon = lexicon;
        this.context = new Context(line);
    }

    public List<Spoken> read(List<Word> sentence) {
        var terms = new Terms(lexicon.terms(sentence));
        var all = Chunker.chunks(terms, line.header().tuning());
        var chunks = Reality.claimed(all);
        context.sentenceDone();
        if (chunks.isEmpty()) {
            return List.of();
        }
        var spoken = new ArrayList<Spoken>();
        var same = Sameness.in(chunks, context, line);
        spoken.addAll(same);
        var intervals = Intervals.in(chunks, context);
        if (same.isEmpty()) {
            spoken.addAll(intervals.claims());
        }
        var rest = same.isEmpty() ? intervals.rest() : withoutPlaces(chunks);
        boolean theLine = rest.stream().anyMatch(said -> said.is(Sense.THE_LINE));
        var segments = Grouping.of(rest, context);
        for (var segment : segments) {
            segment(segment, placed(segment.where(), theLine), spoken);
        }
        heads(rest, spoken);
        if (!same.isEmpty()) {
            context.moveTo(Where.UNSAID.withBars(((Claim.SameBars) same.get(0).claim()).bars(), false));
        }
        return spoken;
    }

    private static List<Said> withoutPlaces(List<Said> chunks) {
        return chunks.stream()
                .filter(said -> !said.is(Chunk.Bars.class)
                        && !said.is(Chunk.BarAt.class)
                        && !said.is(Chunk.Beats.class)
                        && !said.is(Chunk.LastBeats.class)
                        && !said.is(Chunk.Order.class))
                .toList();
    }

    /** Where nothing was said of the bar, it is the one in hand. */
    private Where placed(Where where, boolean theLine) {
        if (where.hasBars()) {
            return where;
        }
        if (theLine && where.order().isPresent() && !where.hasTime()) {
            int last = line.firstNumber() + line.bars().size() - 1;
            return where.withBars(
                    IntStream.rangeClosed(line.firstNumber(), last).boxed().toList(), false);
        }
        return context.bars().isEmpty() ? where : where.withBars(context.bars(), true);
    }

    private void segment(Segment segment, Where where, List<Spoken> spoken) {
        int among = segment.notes();
        boolean single = among == 1;
        for (int i = 0; i < segment.groups().size(); i++) {
            var group = segment.groups().get(i);
            if (!group.isEmpty()) {
                boolean first = segment.isPlacedFirst() && i == 0;
                boolean strictly = !group.isPath() && (single || first);
                group(group, group.isAway() ? Where.UNSAID : where, among, strictly, spoken);
            }
        }
        for (var quiet : segment.quiets()) {
            boolean alone = segment.groups().stream().allMatch(Group::isEmpty);
            boolean named = alone
                    && quiet.length().isEmpty()
                    && segment.quiets().stream()
                            .anyMatch(other -> other.length().isPresent());
            boolean placed = segment.where().hasBars() || where.carried();
            if (placed && !named) {
                var claim = new Claim.RestIs(quiet.length(), where, alone && !quiet.later());
                spoken.add(new Spoken(claim, quiet.from(), quiet.to()));
            }
        }
        context.moveTo(where);
    }

    private void group(Group group, Where where, int among, boolean strictly, List<Spoken> spoken) {
        for (int i = 0; i < group.size(); i++) {
            var note = group.notes().get(i);
            if (isStatement(note, where)) {
                boolean firstOfAll = strictly && i == 0;
                spoken.add(new Spoken(new Claim.NoteIs(note, where, among, firstOfAll), group.from(), group.to()));
            }
            context.named(note.spot().isWhole() ? note.spot() : NamedPlace.NOWHERE);
            context.called(group.size() == 1 ? note.name() : Optional.empty());
        }
    }

    /** Whether enough is said to be right or wrong. */
    private static boolean isStatement(Described note, Where where) {
        boolean triple = note.name().isPresent() && note.spot().fret().isPresent();
        if (!where.hasBars()) {
            return triple || note.spot().isWhole();
        }
        boolean something = note.hasCore()
                || !note.manners().isEmpty()
                || note.length().isPresent()
                || note.pair()
                || note.lasts() != 0;
        boolean placed = !where.carried()
                || where.hasTime()
                || where.order().isPresent()
                || note.spot().fret().isPresent()
                || (note.name().isPresent() && !note.manners().isEmpty());
        return something && placed;
    }

    private void heads(List<Said> chunks, List<Spoken> spoken) {
        var where = chunks.stream()
                .map(said -> context.bars(said.chunk()))
                .flatMap(Optional::stream)
                .findFirst()
                .map(bars -> Where.UNSAID.withBars(bars, false))
                .orElse(Where.UNSAID);
        for (var said : chunks) {
            head(said.chunk(), where).ifPresent(claim -> spoken.add(Spoken.of(claim, said)));
        }
    }

    private static Optional<Claim> head(Chunk chunk, Where where) {
        if (chunk instanceof Chunk.KeyNamed named && named.claimed()) {
            return Optional.of(new Claim.KeyIs(named.key(), where));
        }
        if (chunk instanceof Chunk.TonicNamed named) {
            return Optional.of(new Claim.TonicIs(named.tonic()));
        }
        if (chunk instanceof Chunk.MeterNamed named) {
            return Optional.of(new Claim.MeterIs(named.meter()));
        }
        if (chunk instanceof Chunk.TempoNamed named) {
            return Optional.of(new Claim.TempoIs(named.perMinute()));
        }
        if (chunk instanceof Chunk.FeelNamed named) {
            return Optional.of(new Claim.FeelIs(named.swung()));
        }
        if (chunk instanceof Chunk.ChordNamed named) {
            return Optional.of(new Claim.ChordIs(named.chord(), where));
        }
        return chunk instanceof Chunk.BarCount count
                ? Optional.of(new Claim.BarCountIs(count.bars()))
                : Optional.empty();
    }
}
