package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Places.Area;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Claim;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Checks what is said of silence. */
public final class RestCheck {
    private final Timeline timeline;
    private final Places places;

    public RestCheck(Timeline timeline) {
        this.timeline = timeline;
        this.places = new Places(timeline);
    }

    public Verdict check(Claim.RestIs claim) {
        var where = claim.where();
        if (!where.hasBars() || !where.bars().stream().allMatch(timeline::has)) {
            return Verdict.CANNOT_TELL;
        }
        boolean vague = !where.hasTime() && where.carried();
        Verdict worst = Verdict.CANNOT_TELL;
        for (var area : places.readings(where)) {
            var verdict = inArea(claim, area);
            if (verdict instanceof Verdict.Agrees) {
                return verdict;
            }
            worst = vague ? Verdict.CANNOT_TELL : verdict;
        }
        return worst;
    }

    private Verdict inArea(Claim.RestIs claim, Area area) {
        var starts = starts(claim, area);
        var wrong = starts.stream().filter(start -> !isRest(claim, area, start)).toList();
        boolean enough = isAmongOthers(claim, area) ? wrong.size() < starts.size() : wrong.isEmpty();
        return enough ? Verdict.AGREES : wrong(claim, area, wrong.get(0));
    }

    /** "Beats 1 and 2: an eighth, an eighth rest": it is one thing of several that fill them, and not in each of them. */
    private static boolean isAmongOthers(Claim.RestIs claim, Area area) {
        return !claim.alone() && area.moments().isEmpty();
    }

    /** Where the rest must be: at the moment, at the beginning, or anywhere in the stretch. */
    private List<Position> starts(Claim.RestIs claim, Area area) {
        if (!area.moments().isEmpty()) {
            return area.moments().stream()
                    .map(moment -> new Position(moment.bar(), moment.at()))
                    .toList();
        }
        return area.stretches().stream().map(Stretch::start).toList();
    }

    private boolean isRest(Claim.RestIs claim, Area area, Position start) {
        var stretch = around(area, start);
        boolean atStart = !area.moments().isEmpty()
                || claim.where()
                        .order()
                        .filter(order -> order == Chunk.Which.FIRST)
                        .isPresent();
        if (atStart) {
            return isSilence(claim.length(), start, stretch);
        }

        boolean beat = claim.alone()
                && claim.where().hasTime()
                && claim.where().order().isEmpty();
        return beat
                ? isSilence(claim.length(), start, stretch)
                : silences(stretch).anyMatch(at -> isSilence(claim.length(), at, stretch))
                        || isRestOfOnePart(claim.length(), stretch);
    }

    /** Of two parts one may rest while the other sounds. */
    private boolean isRestOfOnePart(Optional<Fraction> length, Stretch stretch) {
        return timeline.writtenRests(stretch.bar())
                .filter(stretch::contains)
                .map(at -> new Position(stretch.bar(), at))
                .anyMatch(at -> length.isEmpty() || timeline.isWrittenRest(at, length.get()));
    }

    private static Stretch around(Area area, Position at) {
        return area.stretches().stream()
                .filter(stretch -> stretch.bar() == at.bar() && stretch.contains(at.at()))
                .findFirst()
                .orElse(area.stretches().get(0));
    }

    /** Silence begins at the stretch's start, or where a note in it has ended. */
    private Stream<Position> silences(Stretch stretch) {
        var ends = timeline.line().bar(stretch.bar()).notes().stream().map(note -> note.end());
        return Stream.of(Stream.of(stretch.from()), ends, timeline.writtenRests(stretch.bar()))
                .flatMap(each -> each)
                .filter(stretch::contains)
                .map(at -> new Position(stretch.bar(), at))
                .filter(at -> timeline.isSilent(at.bar(), at.at()));
    }

    /** Whether silence reigns from here for so long: up to the next note, or as far as the stretch goes. */
    private boolean isSilence(Optional<Fraction> length, Position at, Stretch stretch) {
        if (!timeline.isSilent(at.bar(), at.at())) {
            return false;
        }
        var until = timeline.silentUntil(at.bar(), at.at());
        return length.isEmpty()
                || Long.bitCount(until.denominator()) != 1
                || Long.bitCount(at.at().denominator()) != 1
                || timeline.isWrittenRest(at, length.get())
                || until.minus(at.at()).equals(length.get())
                || until.min(stretch.to()).minus(at.at()).equals(length.get());
    }

    private Verdict wrong(Claim.RestIs claim, Area area, Position start) {
        String count = Counts.of(timeline, start.bar(), start.at());
        var stretch = around(area, start);
        if (timeline.isSilent(start.bar(), start.at())) {
            var until = timeline.silentUntil(start.bar(), start.at()).min(stretch.to());
            boolean whole = claim.length().isPresent();
            return whole
                    ? new Verdict.Contradicts(new Right.RestLength(start, count, until.minus(start.at())))
                    : noteThere(stretch, start, count);
        }
        return noteThere(stretch, start, count);
    }

    private Verdict noteThere(Stretch stretch, Position start, String count) {
        return new Verdict.Contradicts(timeline.notes(List.of(stretch)).stream()
                .findFirst()
                .<Right>map(at -> WhatIsRight.note(timeline, at, new Right.Told(false, false, false)))
                .orElse(new Right.NothingBegins(start, count, false)));
    }
}
