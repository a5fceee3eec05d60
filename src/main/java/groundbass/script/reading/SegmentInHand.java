package groundbass.script.reading;

import groundbass.script.claims.Where;

/** A segment that is still being told: where in it thoughts ended, and where its place was said, counted in groups. */
final class SegmentInHand {
    private final Segment segment;
    private int thoughtEnd;
    private int placedAt;
    private int clauseAt;

    SegmentInHand(Segment segment) {
        this.segment = segment;
    }

    Segment segment() {
        return segment;
    }

    /** A thought may have ended here, so that what follows can have a place of its own. */
    void endThought() {
        thoughtEnd = segment.groups().size();
    }

    /** "So": a clause begins that has a place of its own, if one is said. */
    void beginClause() {
        endThought();
        clauseAt = thoughtEnd;
    }

    /** A pronoun takes up what was said before, so there is no clause of its own. */
    void continueClause() {
        clauseAt = 0;
    }

    boolean isInOwnClause() {
        return clauseAt > 0 && !segment.where().hasBars() && !segment.where().hasTime();
    }

    /** Whether a thought has just ended, and nothing was told since. */
    boolean isBetweenThoughts() {
        return thoughtEnd > 0 && thoughtEnd == segment.groups().size();
    }

    void place(Where where) {
        segment.place(where);
        placedAt = segment.groups().size();
    }

    void order(Where where) {
        segment.place(where);
    }

    /** A new segment with the groups that were told since a thought ended or the place was said. */
    Segment split(Where where) {
        var next = new Segment(where);
        int from = Math.min(Math.max(thoughtEnd, placedAt), segment.groups().size());
        segment.moveFrom(from, next);
        return next;
    }
}
