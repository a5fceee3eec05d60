package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.score.Tuning;
import groundbass.script.checking.Fitting.Facet;
import groundbass.script.checking.Places.Area;
import groundbass.script.checking.Places.Moment;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Claim;
import groundbass.script.claims.Described;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Checks what is said of a note, against the neck first and then against the line. */
public final class NoteCheck {
    private final Timeline timeline;
    private final Neck neck;
    private final Places places;
    private final Fitting fitting;

    public NoteCheck(Timeline timeline) {
        this.timeline = timeline;
        this.neck = new Neck(timeline);
        this.places = new Places(timeline);
        this.fitting = new Fitting(timeline, neck);
    }

    public Verdict check(Claim.NoteIs claim) {
        var onNeck = neck.check(claim.note());
        if (onNeck.filter(verdict -> verdict instanceof Verdict.Contradicts).isPresent()) {
            return onNeck.get();
        }
        if (!claim.where().hasBars()) {
            return onNeck.orElse(Verdict.CANNOT_TELL);
        }
        var missing =
                claim.where().bars().stream().filter(bar -> !timeline.has(bar)).findFirst();
        if (missing.isPresent()) {
            return claim.where().carried()
                    ? Verdict.CANNOT_TELL
                    : new Verdict.Contradicts(new Right.LastBar(timeline.lastBar()));
        }
        var inLine = inLine(claim);
        boolean loose = claim.where().carried()
                && !claim.where().hasTime()
                && claim.where().order().isEmpty();
        return loose && !(inLine instanceof Verdict.Agrees) ? loosely(claim, onNeck, inLine) : inLine;
    }

    /** The speaker may have moved on to a neighbouring bar without saying so, or may speak of the neck in general. */
    private Verdict loosely(Claim.NoteIs claim, Optional<Verdict> onNeck, Verdict inLine) {
        boolean one = claim.note().spot().isWhole() || claim.note().name().isPresent();
        boolean sure = one && !claim.note().manners().isEmpty();
        boolean nearby = claim.where().bars().stream()
                .flatMap(bar -> Stream.of(bar - 1, bar, bar + 1))
                .filter(timeline::has)
                .anyMatch(bar -> timeline.notes(List.of(timeline.whole(bar))).stream()
                        .anyMatch(at -> fitting.fits(at, claim.note())));
        return sure && !nearby ? inLine : onNeck.orElse(Verdict.CANNOT_TELL);
    }

    /** Agrees where any reading does; contradicts only where all of them do. */
    private Verdict inLine(Claim.NoteIs claim) {
        Verdict worst = Verdict.CANNOT_TELL;
        for (var area : places.readings(claim.where())) {
            var verdict = inArea(claim, area);
            if (verdict instanceof Verdict.Agrees) {
                return verdict;
            }
            worst = verdict;
        }
        return worst;
    }

    private Verdict inArea(Claim.NoteIs claim, Area area) {
        var candidates = area.moments().isEmpty() ? ofArea(claim, area) : atMoment(claim, area);
        return isThere(claim.note(), candidates)
                ? Verdict.AGREES
                : new Verdict.Contradicts(right(claim.note(), candidates, area));
    }

    /** Of several notes, each may be played in its own way: "two dead notes, thumb down, thumb up". */
    private boolean isThere(Described said, List<At> candidates) {
        if (said.many() == 1) {
            return count(said, candidates) > 0;
        }
        var plain = said.unstruck();
        return count(plain, candidates) >= said.many()
                && said.manners().stream().allMatch(manner -> count(plain.with(manner), candidates) > 0);
    }

    private long count(Described said, List<At> candidates) {
        return candidates.stream().filter(at -> fitting.fits(at, said)).count();
    }

    private List<At> atMoment(Claim.NoteIs claim, Area area) {
        return area.moments().stream()
                .flatMap(moment -> atMoment(claim, moment).stream())
                .toList();
    }

    private List<At> atMoment(Claim.NoteIs claim, Moment moment) {
        var whole = timeline.whole(moment.bar());
        boolean wide = !claim.strictly() || claim.note().many() > 1;
        var until = wide ? whole.to() : moment.at().plus(Fraction.of(1, 1024));
        return timeline.notes(List.of(new Stretch(moment.bar(), moment.at(), until)));
    }

    private List<At> ofArea(Claim.NoteIs claim, Area area) {
        var notes = timeline.notes(area.stretches());
        var order = claim.where().order();
        boolean superlative = order.filter(which -> which == Chunk.Which.HIGHEST || which == Chunk.Which.LOWEST)
                .isPresent();
        if (order.isEmpty() || (superlative && claim.among() > 1)) {
            return notes;
        }
        int many = Math.max(claim.among(), claim.note().many());
        return switch (order.get()) {
            case FIRST -> union(notes, claim, all -> onsets(all, 0, many));
            case NTH ->
                union(
                        notes,
                        claim,
                        all -> onsets(
                                all, claim.where().nth() - 1, claim.where().nth() - 1 + many));
            case LAST -> union(notes, claim, all -> onsets(all, count(all) - many, count(all)));
            case ENDING -> ending(claim, area, notes, many);
            case HIGHEST -> extreme(notes, Comparator.comparingInt(this::midi));
            case LOWEST -> extreme(notes, Comparator.comparingInt(this::midi).reversed());
        };
    }

    private List<At> ending(Claim.NoteIs claim, Area area, List<At> notes, int many) {
        var last = area.stretches().get(area.stretches().size() - 1);
        boolean wholeBar = claim.where().beats().isEmpty();
        if (!wholeBar) {
            return many > 1 ? notes : union(notes, claim, all -> onsets(all, count(all) - many, count(all)));
        }
        var beats = places.beats(last.bar(), true);
        return timeline.notes(beats.subList(beats.size() - 1, beats.size()));
    }

    /** The first note may be the first of all, the first with a pitch, or the first of that name or string. */
    private List<At> union(List<At> notes, Claim.NoteIs claim, UnaryOperator<List<At>> choice) {
        var said = claim.note();
        boolean narrow = !claim.where().ofAll();
        Predicate<At> alike = at -> said.name().isEmpty()
                || fitting.fits(at, Described.NOTHING.with(said.name().get()));
        Predicate<At> sameString = at -> said.spot().string().isEmpty()
                || said.spot().string().getAsInt() == at.note().string();
        boolean named = said.name().isPresent() || said.isDead();
        var all = new ArrayList<>(choice.apply(notes));
        all.addAll(choice.apply(notes.stream().filter(at -> !at.note().isDead()).toList()));
        if (said.isDead() && narrow) {
            all.addAll(
                    choice.apply(notes.stream().filter(at -> at.note().isDead()).toList()));
        } else if (named && narrow && said.spot().fret().isEmpty()) {
            all.addAll(choice.apply(notes.stream().filter(alike.and(sameString)).toList()));
        }
        return all.stream().distinct().toList();
    }

    private static int count(List<At> notes) {
        return (int) notes.stream().map(At::position).distinct().count();
    }

    /** The notes of the onsets from one number to another, counted from zero. */
    private static List<At> onsets(List<At> notes, int from, int to) {
        var positions = notes.stream().map(At::position).distinct().toList();
        int first = Math.max(0, Math.min(from, positions.size()));
        int last = Math.max(first, Math.min(to, positions.size()));
        var chosen = Set.copyOf(positions.subList(first, last));
        return notes.stream().filter(at -> chosen.contains(at.position())).toList();
    }

    private int midi(At at) {
        Tuning tuning = timeline.line().header().tuning();
        return at.note()
                .midi(tuning)
                .orElse(tuning.string(at.note().string()).pitch().midi());
    }

    private static List<At> extreme(List<At> notes, Comparator<At> order) {
        var pitched = notes.stream().filter(at -> !at.note().isDead()).toList();
        return pitched.stream()
                .max(order)
                .map(most -> pitched.stream()
                        .filter(at -> order.compare(at, most) == 0)
                        .toList())
                .orElse(List.of());
    }

    /** What is there instead: of the notes meant, the one that is most like what was said. */
    private Right right(Described said, List<At> candidates, Area area) {
        if (!area.moments().isEmpty()) {
            var moment = area.moments().get(0);
            var there = timeline.notes(
                    List.of(new Stretch(moment.bar(), moment.at(), moment.at().plus(Fraction.of(1, 1024)))));
            return there.isEmpty()
                    ? new Right.NothingBegins(
                            new Position(moment.bar(), moment.at()),
                            Counts.of(timeline, moment.bar(), moment.at()),
                            timeline.isSilent(moment.bar(), moment.at()))
                    : nearest(said, there);
        }
        var near = candidates.isEmpty() ? timeline.notes(area.stretches()) : candidates;
        var start = area.stretches().get(0);
        return near.isEmpty()
                ? new Right.NothingBegins(start.start(), Counts.of(timeline, start.bar(), start.from()), true)
                : nearest(said, near);
    }

    private Right nearest(Described said, List<At> there) {
        var best = there.stream()
                .min(Comparator.comparingInt(at -> weight(fitting.wrong(at, said))))
                .orElseThrow();
        var wrong = fitting.wrong(best, said);
        return WhatIsRight.note(
                timeline,
                best,
                new Right.Told(
                        wrong.contains(Facet.TECHNIQUE), wrong.contains(Facet.LENGTH), wrong.contains(Facet.FINGER)));
    }

    private static int weight(Set<Facet> wrong) {
        return wrong.stream()
                .mapToInt(facet -> switch (facet) {
                    case FRET, NAME -> 3;
                    case STRING, TECHNIQUE -> 4;
                    case LENGTH, FINGER, PAIR -> 2;
                })
                .sum();
    }
}
