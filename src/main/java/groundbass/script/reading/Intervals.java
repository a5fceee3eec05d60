package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.Claim;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Said;
import groundbass.script.claims.Spoken;
import groundbass.script.words.Sense;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds what is said of places that are octaves apart or sound alike, and takes out the place compared with. */
final class Intervals {
    private final List<Said> chunks;
    private final Context context;
    private final List<Spoken> claims = new ArrayList<>();
    private final List<Said> rest = new ArrayList<>();

    private Intervals(List<Said> chunks, Context context) {
        this.chunks = chunks;
        this.context = context;
    }

    /**
     * @param claims what is said of intervals
     * @param rest the sentence without the places that others were only compared with
     */
    record Read(List<Spoken> claims, List<Said> rest) {}

    static Read in(List<Said> chunks, Context context) {
        var intervals = new Intervals(chunks, context);
        intervals.read();
        return new Read(intervals.claims, intervals.rest);
    }

    private void read() {
        int i = 0;
        while (i < chunks.size()) {
            var said = chunks.get(i);
            boolean compares = said.is(Chunk.Octaves.class) || said.is(Sense.SAME) || said.is(Sense.EQUAL_PITCH);
            i = compares ? compare(i) : keep(i);
        }
    }

    private int keep(int i) {
        rest.add(chunks.get(i));
        return i + 1;
    }

    private int compare(int i) {
        var said = chunks.get(i);
        var target = target(i + 1);
        if (target.isEmpty()) {
            if (!said.is(Sense.SAME)) {
                bothOfTheLast(i);
            }
            return keep(i);
        }
        int at = target.get();
        boolean twoNamed = said.is(Sense.SAME) && chunks.get(at).is(Chunk.Notes.class);
        if (twoNamed) { // "are the same F sharp": the name is theirs
            bothOfTheLast(i);
            return keep(i);
        }
        octaves(i, at).ifPresent(octaves -> claim(i, at, octaves));
        return Math.max(at + 1, i + 1);
    }

    /** So many octaves between subject and target; empty where only some octave is meant. */
    private Optional<Integer> octaves(int i, int target) {
        if (chunks.get(i).chunk() instanceof Chunk.Octaves octaves) {
            return Optional.of(octaves.octaves() * (octaves.direction() == 0 ? 1 : octaves.direction()));
        }
        for (int at = i + 1; at < Math.min(chunks.size(), target + 4); at++) {
            if (chunks.get(at).chunk() instanceof Chunk.Octaves octaves) {
                return Optional.of(octaves.octaves() * octaves.direction());
            }
        }
        return Optional.of(0);
    }

    /** The place or note right after a comparison. */
    private Optional<Integer> target(int from) {
        for (int at = from; at < Math.min(chunks.size(), from + 4); at++) {
            var said = chunks.get(at);
            if (said.chunk() instanceof Chunk.Places places) {
                return places.spots().size() == 1 && places.spots().get(0).isWhole()
                        ? Optional.of(at)
                        : Optional.empty();
            }
            if (said.chunk() instanceof Chunk.Notes notes) {
                boolean placed = at + 1 < chunks.size()
                        && chunks.get(at + 1).chunk() instanceof Chunk.Places places
                        && places.spots().size() == 1
                        && places.spots().get(0).isWhole();
                if (placed) { // "the D at the third fret of the B string"
                    return Optional.of(at + 1);
                }
                return notes.names().size() == 1 ? Optional.of(at) : Optional.empty();
            }
            boolean small = said.is(Sense.TO)
                    || said.is(Sense.FROM)
                    || said.is(Sense.PLAIN)
                    || said.is(Sense.NOTE)
                    || said.is(Sense.LEAD)
                    || said.chunk() instanceof Chunk.Octaves;
            if (!small) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private void claim(int i, int target, int octaves) {
        var subject = subject().or(() -> later(target + 1));
        var said = chunks.get(target);
        if (subject.isEmpty()) {
            return;
        }
        int from = Math.min(chunks.get(i).from(), said.from());
        int to = Math.max(chunks.get(i).to(), said.to());
        if (said.chunk() instanceof Chunk.Places places) {
            boolean apart = chunks.get(i).chunk() instanceof Chunk.Octaves said8 && said8.direction() == 0;
            var claim = new Claim.OctavesApart(subject.get(), places.spots().get(0), octaves, apart);
            claims.add(new Spoken(claim, from, to));
        } else if (said.chunk() instanceof Chunk.Notes notes) {
            NoteName name = notes.names().get(0);
            claims.add(new Spoken(new Claim.OctaveOfName(subject.get(), name), from, to));
        }
    }

    /** The last whole place said before. */
    private Optional<NamedPlace> subject() {
        return spots(rest).stream()
                .reduce((one, two) -> two)
                .or(() -> startsWithPronoun()
                        ? Optional.of(context.spot()).filter(NamedPlace::isWhole)
                        : Optional.empty());
    }

    /** "The octave of the open E is the second fret of the D string." */
    private Optional<NamedPlace> later(int from) {
        return spots(chunks.subList(Math.min(from, chunks.size()), chunks.size())).stream()
                .findFirst();
    }

    private boolean startsWithPronoun() {
        return !chunks.isEmpty() && chunks.get(0).isPronoun();
    }

    private static List<NamedPlace> spots(List<Said> said) {
        return said.stream()
                .map(Said::chunk)
                .filter(Chunk.Places.class::isInstance)
                .flatMap(chunk -> ((Chunk.Places) chunk).spots().stream())
                .filter(NamedPlace::isWhole)
                .toList();
    }

    /** "A and B are two octaves apart", "are the same pitch". */
    private void bothOfTheLast(int i) {
        var said = chunks.get(i);
        boolean apart = said.chunk() instanceof Chunk.Octaves octaves && octaves.direction() == 0;
        boolean alike = said.is(Sense.EQUAL_PITCH) || said.is(Sense.SAME);
        var spots = spots(rest);
        if ((apart || alike) && spots.size() == 2 && claims.isEmpty()) {
            int octaves = apart ? ((Chunk.Octaves) said.chunk()).octaves() : 0;
            claims.add(Spoken.of(new Claim.OctavesApart(spots.get(0), spots.get(1), octaves, true), said));
        }
    }
}
