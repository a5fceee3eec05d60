package groundbass.script.reading;

import groundbass.score.Fraction;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Described;
import groundbass.script.claims.Said;
import groundbass.script.claims.Spot;
import groundbass.script.claims.Where;
import groundbass.script.words.Sense;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Predicate;

/**
 * Gathers the chunks of a sentence into notes and the places where they are said to be. What has been said already of
 * the note in hand begins a new note when it is said again; a word like "and" or "then" begins one too, unless a pronoun
 * takes the note up again.
 */
final class Grouping {
    private final Context context;
    private final List<Said> chunks;
    private final List<Segment> segments = new ArrayList<>();
    private Segment segment;
    /** Whether lengths are those of a tuplet, which are not what they are called. */
    private final boolean tuplet;
    /** Whether several parts are told, where the one may rest while another sounds. */
    private final boolean voices;

    private boolean fresh;
    private boolean away;
    /** Whether the next thing said must be of another note. */
    private boolean hard;
    /** How many groups the segment had at the last place where a thought may have ended. */
    private int boundary;
    /** What is reached from the note in hand. */
    private Optional<Group> waiting = Optional.empty();
    /** Whether the last thing said was a landmark, whose own place does not matter. */
    private boolean landmark;
    /** How many groups stand before a clause that has a place of its own; 0 where there is none. */
    private int clause;
    /** How many groups it had when its place was last said. */
    private int placed;

    private Grouping(List<Said> chunks, Context context) {
        this.chunks = chunks;
        this.context = context;
        this.tuplet = chunks.stream().anyMatch(said -> said.is(Sense.TUPLET));
        this.voices = chunks.stream().anyMatch(said -> said.is(Sense.VOICE));
        this.segment = new Segment(Where.UNSAID);
        segments.add(segment);
    }

    static List<Segment> of(List<Said> chunks, Context context) {
        var grouping = new Grouping(chunks, context);
        for (int i = 0; i < chunks.size(); i++) {
            grouping.take(i);
        }
        grouping.waiting.ifPresent(grouping.segment.groups()::add);
        return grouping.segments;
    }

    private void take(int i) {
        var said = chunks.get(i);
        var chunk = said.chunk();
        if (chunk instanceof Chunk.Tie tie) {
            tie(tie.sense());
        } else if (chunk instanceof Chunk.Bars || chunk instanceof Chunk.BarAt) {
            context.bars(chunk).ifPresent(this::bars);
        } else if (chunk instanceof Chunk.Beats || chunk instanceof Chunk.LastBeats || chunk instanceof Chunk.Part) {
            boolean from = i > 0 && chunks.get(i - 1).is(Sense.FROM);
            boolean until = i > 0 && chunks.get(i - 1).is(Sense.UNTIL);
            boolean onwards = until || (from && (segment.where().hasTime() || chunk instanceof Chunk.Part));
            if (!onwards) {
                time(chunk);
            }
        } else if (chunk instanceof Chunk.Order order) {
            order(order, i);
        } else {
            note(said, i);
            landmark = away;
            away = false;
        }
    }

    private void tie(Sense sense) {
        switch (sense) {
            case SO -> {
                landmark = false;
                fresh = true;
                boundary = segment.groups().size();
                clause = boundary;
            }
            case AND, THEN, BUT -> {
                landmark = false;
                fresh = true;
                boundary = segment.groups().size();
            }
            case COMMA, COLON, SEMICOLON -> {
                landmark = false;
                boundary = segment.groups().size();
                hard |= sense == Sense.SEMICOLON || (sense == Sense.COLON && isAmount());
            }
            case PRONOUN, THAT -> {
                fresh = false;
                clause = 0;
            }
            case LEAD -> away = true;
            case THE_LINE -> away = false;
            default -> {}
        }
    }

    /** "Two sixteenths": after a colon comes which. */
    private boolean isAmount() {
        return segment.last()
                .filter(group -> group.all(note -> note.length().isPresent() && !note.hasCore()))
                .isPresent();
    }

    private void note(Said said, int i) {
        var chunk = said.chunk();
        if (chunk instanceof Chunk.Notes notes) {
            if (!isChordTones(i)) {
                away |= isSource(i) || isAimed(i);
                hard |= away && segment.last().filter(group -> !group.isAway()).isPresent();
                intoPath(notes.path() ? -1 : i);
                row(
                        said,
                        notes.names(),
                        note -> note.name().isPresent() || (note.isDead() && !touches(i)),
                        Described::with);
                if (notes.path()) {
                    segment.last().orElseThrow().asPath();
                }
            }
        } else if (chunk instanceof Chunk.Places places) {
            intoPath(places.path() ? -1 : i);
            boolean source = !places.path() && isSource(i);
            away |= source;
            hard |= source;
            places(said, places);
        } else if (chunk instanceof Chunk.Played played) {
            played(said, played, i);
        } else if (chunk instanceof Chunk.Lengths lengths && !tuplet) {
            lengths(said, lengths.each());
        } else if (chunk instanceof Chunk.Lasts lasts) {
            if (i > 0 && chunks.get(i - 1).is(Chunk.Silence.class)) {
                return; // so long a rest
            }
            current(said).change(note -> note.lasting(lasts.wholeBar() ? -1 : lasts.beats()));
        } else if (chunk instanceof Chunk.Finger finger) {
            boolean second = segment.last()
                    .filter(group -> group.any(note -> note.finger().isPresent()))
                    .isPresent();
            open(said, second).change(note -> note.withFinger(finger.number()));
        } else if (chunk instanceof Chunk.Pair) {
            current(said).change(Described::paired);
        } else if (chunk instanceof Chunk.Silence silence && !away && !voices && !tuplet) {
            segment.quiets().add(new Segment.Quiet(silence.length(), later(i), said.from(), said.to()));
            fresh = true;
        }
    }

    private boolean later(int i) {
        return chunks.subList(0, i).stream().anyMatch(said -> said.is(Sense.UNTIL) || said.is(Sense.THEN));
    }

    /** "Over Em7 (E, G, B and D)". */
    private boolean isChordTones(int i) {
        int before =
                i > 0 && (chunks.get(i - 1).is(Sense.COMMA) || chunks.get(i - 1).is(Sense.COLON)) ? i - 2 : i - 1;
        return before >= 0
                && (chunks.get(before).is(Chunk.ChordNamed.class)
                        || chunks.get(before).is(Sense.OVER));
    }

    private Group current(Said said) {
        return open(said, false);
    }

    /** The group in hand, or a new one. */
    private Group open(Said said, boolean another) {
        boolean begun = segment.last().filter(group -> !group.isEmpty()).isPresent();
        boolean core =
                segment.last().filter(group -> group.any(Described::hasCore)).isPresent();
        boolean closed =
                segment.last().filter(group -> group.isAway() ? fresh : away).isPresent();
        if (!begun || another || (fresh && core) || closed || hard) {
            if (begun || segment.groups().isEmpty()) {
                segment.groups().add(new Group(away));
            }
        }
        fresh = false;
        hard = false;
        return segment.last().orElseThrow().spanning(said);
    }

    /** Values that belong to as many notes: to the ones in hand, to the last ones that lack them, or to new ones. */
    private <T> void row(Said said, List<T> values, Predicate<Described> has, BiFunction<Described, T, Described> put) {
        int many = values.size();
        var lacking = lastLacking(many, has);
        if (many > 1 && lacking.size() == many) {
            for (int i = 0; i < many; i++) {
                T value = values.get(i);
                lacking.get(i).spanning(said).change(note -> put.apply(note, value));
            }
            fresh = false;
            return;
        }
        boolean fits = segment.last()
                .filter(group -> !group.any(has) && (many == 1 || group.size() == 1 || group.size() == many))
                .filter(group -> many > 1
                        || group.size() == 1
                        || put.apply(Described.NOTHING, values.get(0))
                                .spot()
                                .fret()
                                .isEmpty())
                .filter(group -> many > 1
                        || !put.apply(Described.NOTHING, values.get(0)).identifies()
                        || !group.any(Described::isAmount))
                .isPresent();
        var group = open(said, !fits);
        boolean firstOnly = many > 1 && group.size() == 1 && group.any(Described::identifies);
        if (firstOnly) {
            group.change(note -> put.apply(note, values.get(0)));
            for (T value : values.subList(1, many)) {
                open(said, true).change(note -> put.apply(note, value));
            }
        } else if (many == 1) {
            group.change(note -> put.apply(note, values.get(0)));
        } else {
            group.spread(many);
            for (int i = 0; i < many; i++) {
                T value = values.get(i);
                group.change(i, note -> put.apply(note, value));
            }
        }
    }

    private List<Group> lastLacking(int many, Predicate<Described> has) {
        var groups = segment.groups();
        if (groups.size() < many || hard) {
            return List.of();
        }
        var last = groups.subList(groups.size() - many, groups.size());
        boolean lacking = last.stream()
                .allMatch(group ->
                        group.size() == 1 && !group.any(has) && !group.isAway() && group.all(note -> note.many() == 1));
        return lacking ? last : List.of();
    }

    /** "A from the third fret": where the hand comes from. */
    private boolean isSource(int i) {
        return i > 0
                && chunks.get(i - 1).is(Sense.FROM)
                && segment.last().filter(group -> group.any(Described::hasCore)).isPresent();
    }

    /** "A passing note up to A": where it goes, after a note that is told already. */
    private boolean isAimed(int i) {
        boolean to =
                i > 0 && (chunks.get(i - 1).is(Sense.TO) || chunks.get(i - 1).is(Sense.UNTIL));
        return to
                && segment.last()
                        .filter(group -> group.any(Described::hasCore) && !group.any(Described::isReached))
                        .isPresent();
    }

    /** "The hammer goes from the open D to the E": the first is not what is hammered. */
    private void intoPath(int i) {
        boolean from = i > 0
                && chunks.get(i - 1).is(Sense.FROM)
                && segment.last()
                        .filter(group -> group.any(Described::isReached) && !group.any(Described::hasCore))
                        .isPresent();
        if (from) {
            var reached = segment.groups().remove(segment.groups().size() - 1);
            var source = new Group(away).spanning(chunks.get(i));
            segment.groups().add(source);
            waiting = Optional.of(reached);
        } else if (i > 0 && waiting.isPresent()) {
            segment.groups().add(waiting.get());
            waiting = Optional.empty();
        }
    }

    private boolean touches(int i) {
        return i > 0
                && chunks.get(i - 1).is(Chunk.Played.class)
                && chunks.get(i - 1).after() == chunks.get(i).first();
    }

    private void places(Said said, Chunk.Places places) {
        boolean stringOnly =
                places.spots().stream().allMatch(spot -> spot.fret().isEmpty());
        boolean fretOnly =
                places.spots().stream().allMatch(spot -> spot.string().isEmpty());
        Predicate<Described> has = note -> stringOnly
                ? note.spot().string().isPresent()
                : note.spot().fret().isPresent()
                        || note.isDead()
                        || (!fretOnly && note.spot().string().isPresent());
        var before = lastString();
        var open = places.spots().size() == 1 ? openName(places.spots().get(0)) : Optional.<NoteName>empty();
        boolean another = open.isPresent()
                && segment.last()
                        .filter(group -> group.any(note -> note.name()
                                .filter(name -> name.pitchClass() != open.get().pitchClass())
                                .isPresent()))
                        .isPresent();
        hard |= another && isListed(said);
        row(said, places.spots(), has, (note, spot) -> note.with(note.spot().or(spot)));
        open.filter(name -> segment.last().orElseThrow().all(note -> note.name().isEmpty()))
                .ifPresent(name -> segment.last().orElseThrow().change(note -> note.with(name)));
        var group = segment.last().orElseThrow();
        if (places.path()) {
            group.asPath();
        }
        if (fretOnly) {
            before.ifPresent(
                    string -> group.change(note -> note.with(note.spot().or(string))));
        }
    }

    /** An open string is called by its name. */
    private Optional<NoteName> openName(Spot spot) {
        return Optional.of(spot)
                .filter(one -> one.isWhole() && one.fret().getAsInt() == 0)
                .map(one -> context.string(one.string().getAsInt()));
    }

    /** Whether it comes after a comma or an "and" rather than after "is" or "on". */
    private boolean isListed(Said said) {
        int i = chunks.indexOf(said);
        return i > 0
                && (chunks.get(i - 1).is(Sense.COMMA)
                        || chunks.get(i - 1).is(Sense.AND)
                        || chunks.get(i - 1).is(Sense.THEN));
    }

    /** The string that was last named in this sentence. */
    private Optional<Spot> lastString() {
        return segments.stream()
                .flatMap(each -> each.groups().stream())
                .flatMap(group -> group.notes().stream())
                .map(Described::spot)
                .filter(spot -> spot.string().isPresent())
                .map(spot -> Spot.onString(spot.string().getAsInt()))
                .reduce((one, two) -> two);
    }

    private void played(Said said, Chunk.Played played, int i) {
        boolean core =
                segment.last().filter(group -> group.any(Described::hasCore)).isPresent();
        boolean verb = core && isFollowedByCore(i);
        boolean noun = played.manner().isPitchless()
                && segment.last()
                        .filter(group -> group.any(note -> note.isDead()
                                || note.spot().fret().isPresent()
                                || note.name().isPresent()))
                        .isPresent();
        boolean several = (played.count() > 1 && core) || isOfNextLength(i);
        boolean other = segment.last()
                .filter(group -> group.any(note -> note.clashesWith(played.manner())))
                .isPresent();
        var group = open(said, verb || noun || several || other);
        group.changeReached(note -> note.with(played.manner()));
        if (played.count() > 1) {
            group.change(note -> note.times(played.count()));
        }
    }

    /** "A dead sixteenth" after a note that has its length already. */
    private boolean isOfNextLength(int i) {
        boolean next = i + 1 < chunks.size() && chunks.get(i + 1).is(Chunk.Lengths.class);
        return next
                && segment.last()
                        .filter(group -> group.any(note -> note.length().isPresent()))
                        .isPresent();
    }

    private boolean isFollowedByCore(int i) {
        for (int at = i + 1; at < chunks.size(); at++) {
            var chunk = chunks.get(at).chunk();
            if (chunk instanceof Chunk.Notes || chunk instanceof Chunk.Places) {
                return true;
            }
            boolean small = chunk instanceof Chunk.Tie tie
                    && List.of(Sense.TO, Sense.FROM, Sense.PLAIN, Sense.NOTE, Sense.AGAIN)
                            .contains(tie.sense());
            boolean also = chunk instanceof Chunk.Finger || chunk instanceof Chunk.Lengths;
            if (!small && !also) {
                return false;
            }
        }
        return false;
    }

    private void lengths(Said said, List<Fraction> each) {
        boolean alike = each.stream().distinct().count() == 1;
        boolean room = segment.last()
                .filter(group -> group.size() == each.size() || group.size() == 1)
                .isPresent();
        if (each.size() > 1 && alike && !room) {
            row(said, each.subList(0, 1), note -> note.length().isPresent(), Described::with);
            segment.last().orElseThrow().change(note -> note.times(each.size()));
        } else if (each.size() > 1 && alike) {
            several(said, each);
        } else {
            row(said, each, note -> note.length().isPresent(), Described::with);
        }
    }

    /** "Two sixteenths": which they are may be said afterwards. */
    private void several(Said said, List<Fraction> each) {
        var last = segment.last();
        boolean fits = last.filter(group -> group.size() == each.size()
                        && !group.any(note -> note.length().isPresent()))
                .isPresent();
        boolean open = last.filter(group -> group.any(Described::hasCore)).isPresent();
        var group = open(said, !fits && open);
        group.change(note -> note.with(each.get(0)));
        if (group.size() == 1) {
            group.change(note -> note.times(each.size()));
        }
    }

    private void bars(List<Integer> numbers) {
        if (landmark && segment.last().filter(Group::isAway).isPresent()) {
            return;
        }
        if (segment.where().hasBars() && !segment.isEmpty()) {
            split(Where.UNSAID);
        }
        boolean own =
                clause > 0 && !segment.where().hasBars() && !segment.where().hasTime();
        if (own) {
            split(segment.where());
        }
        segment.place(segment.where().withBars(numbers, false));
        placed = segment.groups().size();
    }

    private void time(Chunk chunk) {
        var where = segment.where();
        boolean refines = chunk instanceof Chunk.Part part
                && part.beat().isEmpty()
                && where.part().isEmpty();
        if (where.hasTime() && !segment.isEmpty() && !refines) {
            split(where.withoutTime().withoutOrder());
        }
        segment.place(timed(segment.where(), chunk));
        placed = segment.groups().size();
    }

    private Where timed(Where where, Chunk chunk) {
        if (chunk instanceof Chunk.Beats beats) {
            return where.withBeats(beats.numbers(), beats.exactly());
        }
        if (chunk instanceof Chunk.LastBeats last) {
            return where.withLastBeats(last.many());
        }
        var part = (Chunk.Part) chunk;
        if (part.beat().isPresent()) {
            return where.withBeats(List.of(part.beat().get()), false).withPart(part.part());
        }
        var beats = where.beats().isEmpty() ? context.beats() : where.beats();
        return beats.size() == 1 ? where.withBeats(beats, false).withPart(part.part()) : where;
    }

    private void order(Chunk.Order order, int i) {
        boolean later = !segment.isEmpty() && boundary == segment.groups().size() && boundary > 0;
        if (later) {
            split(segment.where().withoutOrder());
        }
        boolean strong = segment.where().order().isEmpty() || order.which() != Chunk.Which.ENDING;
        if (strong) {
            segment.place(segment.where().with(order.which(), order.nth(), order.ofAll()));
        }
        boolean several = order.nth() > 1 && order.which() != Chunk.Which.NTH;
        if (several) {
            open(chunks.get(i), segment.last().isPresent()).change(note -> note.times(order.nth()));
        }
    }

    /** Begins a new segment with the groups since the last place where a thought may have ended. */
    private void split(Where where) {
        var next = new Segment(where);
        segment.moveFrom(Math.min(Math.max(boundary, placed), segment.groups().size()), next);
        segments.add(next);
        segment = next;
        boundary = 0;
        placed = 0;
        clause = 0;
        fresh = false;
    }
}
