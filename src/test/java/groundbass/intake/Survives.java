package groundbass.intake;

import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Repeats;
import groundbass.writing.Element.Chord;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What of a line survives the way out and in again: all but what the table of src/main/docs/musicxml.md names. */
final class Survives {
    private Survives() {}

    /** @param back what came back, which decides where no choice is right: the style, and how many frets the neck has */
    static Line of(Line line, Line back) {
        var header = line.header()
                .with(back.header().style())
                .withFrets(back.header().frets());
        var bars = new ArrayList<Bar>();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i).writtenOut();
            bars.add(bar.with(changes(line, i)).with(repeats(bar.repeats())));
        }
        return unnamed(new Line(header, bars));
    }

    /** Without the names that are asked for; how notes are called in the end is compared by itself. */
    static Line unnamed(Line line) {
        return new Line(
                line.header(),
                line.bars().stream()
                        .map(bar -> bar.withNotes(
                                bar.notes().stream().map(Survives::unnamed).toList()))
                        .toList());
    }

    private static Note unnamed(Note note) {
        var all = note.ornaments();
        return note.withOrnaments(new Ornaments(
                all.marks(),
                all.bend(),
                all.trill(),
                all.harmonic(),
                all.slideIn(),
                all.slideOff(),
                all.spread(),
                all.finger(),
                Optional.empty()));
    }

    /** What each head of a line is called. */
    static List<String> names(Line line) {
        return Writing.of(line).bars().stream()
                .flatMap(bar -> bar.voices().stream())
                .flatMap(voice -> voice.elements().stream())
                .filter(Chord.class::isInstance)
                .flatMap(chord -> ((Chord) chord).heads().stream())
                .map(head -> head.pitch().toString())
                .toList();
    }

    /** A key or metre that holds already is not written again, nor what notes without a word of their own are struck with. */
    private static Changes changes(Line line, int index) {
        var changes = line.bars().get(index).changes();
        if (index == 0) {
            return changes;
        }
        var before = line.inForce().get(index - 1);
        return new Changes(
                changes.section(),
                changes.key().filter(key -> !key.equals(before.key())),
                changes.meter().filter(meter -> !meter.equals(before.meter())),
                changes.tempo(),
                changes.slowingTo(),
                changes.feel(),
                Optional.empty(),
                changes.place());
    }

    /** Under brackets it is they that say how often. */
    private static Repeats repeats(Repeats repeats) {
        return repeats.endingEnd() && repeats.end().isPresent() ? repeats.with(Repeats.RepeatEnd.PLAIN) : repeats;
    }
}
