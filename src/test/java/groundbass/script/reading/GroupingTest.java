package groundbass.script.reading;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Described;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Said;
import groundbass.script.words.Sense;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which notes a sentence tells of, and where: the rules of {@link Next} and {@link InHand}, ours. */
class GroupingTest {
    private static final Line LINE = LineText.read("meter 4/4\ntempo 80\n\nbar 1\n1-4 E5\nbar 2\n1-4 E7\n")
            .line();
    private static final Chunk E = name("E");
    private static final Chunk G = name("G");
    private static final Chunk EIGHTH = new Chunk.Lengths(List.of(Fraction.of(1, 8)));

    private static Chunk name(String name) {
        return new Chunk.Notes(List.of(NoteName.parse(name).orElseThrow()), false);
    }

    private static Chunk word(Sense sense) {
        return new Chunk.Tie(sense);
    }

    private static List<Segment> told(Chunk... chunks) {
        var said = IntStream.range(0, chunks.length)
                .mapToObj(i -> new Said(chunks[i], i, i + 1, i, i + 1))
                .toList();
        return Grouping.of(said, new Context(LINE));
    }

    private static List<Group> groups(Chunk... chunks) {
        var segments = told(chunks);
        assertThat(segments).hasSize(1);
        return segments.get(0).groups();
    }

    @Test
    void whatANoteLacksIsSaidOfTheNoteInHand() {
        var groups = groups(E, EIGHTH, new Chunk.Places(List.of(NamedPlace.of(3, 7)), false));
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).notes()).hasSize(1).allSatisfy(note -> {
            assertThat(note.spot()).isEqualTo(NamedPlace.of(3, 7));
            assertThat(note.length()).contains(Fraction.of(1, 8));
        });
    }

    @Test
    void whatANoteHasAlreadyIsSaidOfAnother() {
        assertThat(groups(E, G)).hasSize(2);
        assertThat(groups(EIGHTH, EIGHTH)).hasSize(2);
    }

    @Test
    void afterABreakWhatIsSaidIsOfAnotherNoteUnlessAPronounTakesItUp() {
        assertThat(groups(E, word(Sense.AND), EIGHTH)).hasSize(2);
        assertThat(groups(E, word(Sense.AND), word(Sense.PRONOUN), EIGHTH)).hasSize(1);
        assertThat(groups(E, word(Sense.COMMA), EIGHTH)).hasSize(1);
    }

    @Test
    void aPronounDoesNotTakeUpWhatASemicolonHasEnded() {
        assertThat(groups(E, word(Sense.SEMICOLON), word(Sense.PRONOUN), EIGHTH))
                .hasSize(2);
    }

    @Test
    void aNoteThatAnotherLeadsToIsALandmark() {
        var groups = groups(E, word(Sense.LEAD), G);
        assertThat(groups).extracting(Group::isAway).containsExactly(false, true);
    }

    @Test
    void whatWasToldSinceAThoughtEndedGoesIntoTheNextBar() {
        var segments = told(bar(1), E, word(Sense.COMMA), G, bar(2));
        assertThat(segments).extracting(segment -> segment.where().bars()).containsExactly(List.of(1), List.of(2));
        assertThat(segments).allSatisfy(segment -> assertThat(segment.groups()).hasSize(1));
        assertThat(segments.get(1).last().orElseThrow().any(Described::hasCore)).isTrue();
    }

    private static Chunk bar(int number) {
        return new Chunk.Bars(List.of(number));
    }
}
