package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.Said;
import groundbass.script.words.Sense;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The chunks of a sentence by their place, and what stands around each of them. */
record Surroundings(List<Said> chunks) {
    /** Words that may stand between a technique and the note that it is said of. */
    private static final Set<Sense> SMALL = Set.of(Sense.TO, Sense.FROM, Sense.PLAIN, Sense.NOTE, Sense.AGAIN);

    Said at(int i) {
        return chunks.get(i);
    }

    /** Whether one of these words stands right before. */
    boolean follows(int i, Sense... words) {
        return i > 0 && Stream.of(words).anyMatch(chunks.get(i - 1)::is);
    }

    boolean follows(int i, Class<? extends Chunk> kind) {
        return i > 0 && chunks.get(i - 1).is(kind);
    }

    /** "And then a rest": whether something else comes before it. */
    boolean isLater(int i) {
        return chunks.subList(0, i).stream().anyMatch(said -> said.is(Sense.UNTIL) || said.is(Sense.THEN));
    }

    /** "Over Em7 (E, G, B and D)". */
    boolean isChordTones(int i) {
        int before = follows(i, Sense.COMMA, Sense.COLON) ? i - 2 : i - 1;
        return before >= 0
                && (chunks.get(before).is(Chunk.ChordNamed.class)
                        || chunks.get(before).is(Sense.OVER));
    }

    /** Whether it comes after a comma or an "and" rather than after "is" or "on". */
    boolean isListed(int i) {
        return follows(i, Sense.COMMA, Sense.AND, Sense.THEN);
    }

    /** "A dead E": a technique and a note without a word between them. */
    boolean touchesTechnique(int i) {
        return follows(i, Chunk.Played.class)
                && chunks.get(i - 1).after() == chunks.get(i).first();
    }

    boolean isBeforeLengths(int i) {
        return i + 1 < chunks.size() && chunks.get(i + 1).is(Chunk.Lengths.class);
    }

    /** Whether a note or a place comes next, with nothing but small words, fingers and lengths between. */
    boolean leadsToNote(int i) {
        for (int at = i + 1; at < chunks.size(); at++) {
            var chunk = chunks.get(at).chunk();
            if (chunk instanceof Chunk.Notes || chunk instanceof Chunk.Places) {
                return true;
            }
            boolean small = chunk instanceof Chunk.Tie tie && SMALL.contains(tie.sense());
            if (!small && !(chunk instanceof Chunk.Finger) && !(chunk instanceof Chunk.Lengths)) {
                return false;
            }
        }
        return false;
    }

    boolean say(Sense word) {
        return chunks.stream().anyMatch(said -> said.is(word));
    }
}
