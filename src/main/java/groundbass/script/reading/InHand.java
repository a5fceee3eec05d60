package groundbass.script.reading;

import groundbass.script.claims.Described;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Said;
import groundbass.script.claims.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What a sentence has told so far: its segments, the note in hand (the last group of the last segment), whether what is
 * said next is still of that note, and whether it is only a landmark, which need not be where the rest is.
 */
final class InHand {
    private final List<Segment> segments = new ArrayList<>();
    private SegmentInHand last;
    private Next next = Next.SAME_NOTE;
    private boolean landmarkComes;
    private boolean landmarkSaid;
    private Optional<Group> reached = Optional.empty();

    InHand() {
        begin(new Segment(Where.UNSAID));
    }

    private void begin(Segment segment) {
        segments.add(segment);
        last = new SegmentInHand(segment);
    }

    SegmentInHand place() {
        return last;
    }

    Segment segment() {
        return last.segment();
    }

    Optional<Group> note() {
        return segment().last();
    }

    /** Whether anything like this was said of the note in hand. */
    boolean has(Predicate<Described> said) {
        return note().filter(group -> group.any(said)).isPresent();
    }

    /** Ends a segment where the place changes; the thought that is being told comes along. */
    void split(Where where) {
        begin(last.split(where));
        next = next.takenUp();
    }

    void breakOff() {
        next = next.afterBreak();
    }

    void takeUp() {
        next = next.takenUp();
    }

    void demandOther() {
        next = Next.OTHER_NOTE;
    }

    void expectLandmark() {
        landmarkComes = true;
    }

    void expectLine() {
        landmarkComes = false;
    }

    boolean expectsLandmark() {
        return landmarkComes;
    }

    /** Something was said, and with it the landmark that was expected. */
    void told() {
        landmarkSaid = landmarkComes;
        landmarkComes = false;
    }

    void leaveLandmark() {
        landmarkSaid = false;
    }

    /** Whether the last thing said was a landmark, whose own place does not matter. */
    boolean isAtLandmark() {
        return landmarkSaid && note().filter(Group::isAway).isPresent();
    }

    Group open(Said said) {
        return open(said, false);
    }

    /** The note in hand, or a new one where this must be of another. */
    Group open(Said said, boolean another) {
        boolean begun = note().filter(group -> !group.isEmpty()).isPresent();
        boolean isOther = !begun || another || isClosed() || next == Next.OTHER_NOTE;
        if (isOther && (begun || segment().groups().isEmpty())) {
            segment().groups().add(new Group(landmarkComes));
        }
        next = Next.SAME_NOTE;
        return note().orElseThrow().spanning(said);
    }

    /** Whether a new thought, or a landmark beside the line, ends what can be said of the note in hand. */
    private boolean isClosed() {
        boolean thought = next == Next.NEW_THOUGHT;
        boolean beside =
                note().filter(group -> group.isAway() ? thought : landmarkComes).isPresent();
        return beside || (thought && has(Described::hasCore));
    }

    /** So many single notes, told last, that all lack something; none where these are not there. */
    List<Group> lastLacking(int many, Predicate<Described> has) {
        var groups = segment().groups();
        if (groups.size() < many || next == Next.OTHER_NOTE) {
            return List.of();
        }
        var told = groups.subList(groups.size() - many, groups.size());
        boolean lacking = told.stream()
                .allMatch(group ->
                        group.size() == 1 && !group.any(has) && !group.isAway() && group.all(note -> note.many() == 1));
        return lacking ? told : List.of();
    }

    /** "The hammer goes from the open D": the D comes first, and what is hammered waits for its turn. */
    void putBefore(Said source) {
        var groups = segment().groups();
        reached = Optional.of(groups.remove(groups.size() - 1));
        groups.add(new Group(landmarkComes).spanning(source));
    }

    /** The note that waits for where it is reached from comes next, if there is one. */
    void putReached() {
        reached.ifPresent(segment().groups()::add);
        reached = Optional.empty();
    }

    /** The string that was last named in this sentence. */
    Optional<NamedPlace> lastString() {
        return segments.stream()
                .flatMap(each -> each.groups().stream())
                .flatMap(group -> group.notes().stream())
                .map(Described::spot)
                .filter(spot -> spot.string().isPresent())
                .map(spot -> NamedPlace.onString(spot.string().getAsInt()))
                .reduce((one, two) -> two);
    }

    /** All of it, at the end of the sentence. */
    List<Segment> end() {
        putReached();
        return segments;
    }
}
