package groundbass.musicxml;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.theory.Pitch;
import groundbass.writing.BeamGroup;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.Head.Accidental;
import groundbass.writing.NoteValue;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Notes, grace notes and rests. Everything stands at the notation staff; the tablature has strings and frets and what
 * happens between numbers, but no beams, accidentals or letters, and its rests are not shown.
 */
final class NoteWriting {
    /** The highest octave that the format has. */
    private static final int HIGHEST_OCTAVE = 9;

    private final Divisions divisions;
    private final Notations notations;

    /** One element of a voice where it stands. */
    record Spot(int bar, WrittenBar written, Staff staff, int voiceNumber, int index) {
        Voice voice() {
            return written.voices().get(voiceNumber);
        }

        Element element() {
            return voice().elements().get(index);
        }

        boolean isOn(Staff other) {
            return staff == other;
        }

        Optional<TupletGroup> tuplet() {
            return voice().tuplets().stream()
                    .filter(group -> index >= group.first() && index <= group.last())
                    .findFirst();
        }

        List<BeamGroup.Part> beams() {
            return voice().beams().stream()
                    .filter(group -> index >= group.first() && index <= group.last())
                    .findFirst()
                    .map(group -> group.parts().get(index - group.first()))
                    .orElse(List.of());
        }

        /** Whether two voices share the staff here, and this is the lower one. */
        boolean isLower() {
            return written.voicesAt(element()) > 1 && voiceNumber == 1;
        }
    }

    NoteWriting(Line line, Divisions divisions) {
        this.divisions = divisions;
        this.notations = new Notations(line);
    }

    List<Node> of(int bar, WrittenBar written, Staff staff, int voice, int index) {
        var spot = new Spot(bar, written, staff, voice, index);
        if (spot.element() instanceof Chord chord) {
            var nodes = new ArrayList<>(graces(spot, chord));
            for (int i = 0; i < chord.heads().size(); i++) {
                nodes.add(note(spot, chord, chord.heads().get(i), i == 0));
            }
            return nodes;
        }
        return List.of(rest(spot, (Rest) spot.element()));
    }

    private Node note(Spot spot, Chord chord, Head head, boolean first) {
        boolean notation = spot.isOn(Staff.NOTATION);
        var children = new ArrayList<Node>();
        if (!first) {
            children.add(Node.empty("chord"));
        }
        children.add(pitch(head.writtenPitch()));
        children.add(duration(spot, chord.length()));
        children.addAll(ties(head));
        children.add(voice(spot));
        children.addAll(shape(chord.value()));
        if (notation) {
            head.accidental().ifPresent(sign -> children.add(accidental(sign)));
        }
        spot.tuplet().ifPresent(group -> children.add(timeModification(group)));
        stem(spot).ifPresent(children::add);
        notehead(head).ifPresent(children::add);
        children.add(staff(spot));
        if (notation && first) {
            children.addAll(beams(spot));
        }
        notations.of(spot, head, first).ifPresent(children::add);
        if (notation && !head.tiedFrom()) {
            PluckElements.play(head).ifPresent(children::add);
        }
        return Node.of("note", children);
    }

    private List<Node> graces(Spot spot, Chord chord) {
        var nodes = new ArrayList<Node>();
        for (var head : chord.heads()) {
            head.grace().ifPresent(grace -> nodes.add(grace(spot, head, grace, nodes.isEmpty())));
        }
        return nodes;
    }

    private Node grace(Spot spot, Head head, Head.Grace grace, boolean first) {
        var children = new ArrayList<Node>();
        children.add(Node.empty("grace").with("slash", "yes"));
        if (!first) {
            children.add(Node.empty("chord"));
        }
        children.add(pitch(grace.pitch().octavesUp(1)));
        children.add(voice(spot));
        children.addAll(shape(NoteValue.of(NoteValue.Base.EIGHTH)));
        if (spot.isOn(Staff.NOTATION)) {
            grace.accidental().ifPresent(sign -> children.add(accidental(sign)));
        } else {
            children.add(Node.text("stem", "none"));
        }
        children.add(staff(spot));
        notations.ofGrace(spot, head).ifPresent(children::add);
        return Node.of("note", children);
    }

    /** A silence that only fills a second voice, and any on the tablature, is there but not shown. */
    private Node rest(Spot spot, Rest rest) {
        var children = new ArrayList<Node>();
        children.add(rest.wholeBar() ? Node.empty("rest").with("measure", "yes") : Node.empty("rest"));
        children.add(duration(spot, rest.length()));
        children.add(voice(spot));
        if (!rest.wholeBar()) {
            children.addAll(shape(rest.value()));
        }
        spot.tuplet().ifPresent(group -> children.add(timeModification(group)));
        children.add(staff(spot));
        notations.ofRest(spot).ifPresent(children::add);
        var note = Node.of("note", children);
        return rest.hidden() || spot.isOn(Staff.TABLATURE) ? note.with("print-object", "no") : note;
    }

    private static Node pitch(Pitch pitch) {
        var children = new ArrayList<Node>();
        children.add(Node.text("step", pitch.name().letter()));
        children.addAll(Signatures.alter("alter", pitch.name()));
        children.add(Node.text("octave", Math.min(HIGHEST_OCTAVE, pitch.octave())));
        return Node.of("pitch", children);
    }

    private Node duration(Spot spot, Fraction length) {
        return Node.text("duration", divisions.count(spot.bar(), length));
    }

    private static List<Node> ties(Head head) {
        return Stream.concat(
                        head.tiedFrom() ? Stream.of("stop") : Stream.<String>empty(),
                        head.tiedTo() ? Stream.of("start") : Stream.<String>empty())
                .map(type -> Node.empty("tie").with("type", type))
                .toList();
    }

    private static Node voice(Spot spot) {
        return Node.text("voice", spot.staff().voice(spot.voiceNumber()));
    }

    private static Node staff(Spot spot) {
        return Node.text("staff", spot.staff().number());
    }

    private static List<Node> shape(NoteValue value) {
        return Stream.concat(
                        Stream.of(Node.text("type", type(value.base()))),
                        Stream.generate(() -> Node.empty("dot")).limit(value.dots()))
                .toList();
    }

    private static String type(NoteValue.Base base) {
        return switch (base) {
            case WHOLE -> "whole";
            case HALF -> "half";
            case QUARTER -> "quarter";
            case EIGHTH -> "eighth";
            case SIXTEENTH -> "16th";
            case THIRTY_SECOND -> "32nd";
            case SIXTY_FOURTH -> "64th";
        };
    }

    private static Node accidental(Accidental accidental) {
        String name =
                switch (accidental.sign()) {
                    case DOUBLE_FLAT -> "flat-flat";
                    case FLAT -> "flat";
                    case NATURAL -> "natural";
                    case SHARP -> "sharp";
                    case DOUBLE_SHARP -> "double-sharp";
                };
        var sign = Node.text("accidental", name);
        return accidental.courtesy() ? sign.with("cautionary", "yes").with("parentheses", "yes") : sign;
    }

    private static Node timeModification(TupletGroup group) {
        return Node.of(
                "time-modification",
                Node.text("actual-notes", group.actual()),
                Node.text("normal-notes", group.normal()));
    }

    /** Where one voice stands alone its stems are the reader's to place (rule: stem-direction, two-voice-stems). */
    private static Optional<Node> stem(Spot spot) {
        if (spot.isOn(Staff.TABLATURE)) {
            return Optional.of(Node.text("stem", "none"));
        }
        boolean two = spot.written().voicesAt(spot.element()) > 1;
        return two ? Optional.of(Node.text("stem", spot.isLower() ? "down" : "up")) : Optional.empty();
    }

    /** rule: tab-dead-note, tab-ghost-note, tab-harmonic. */
    private static Optional<Node> notehead(Head head) {
        if (head.note().place() instanceof Place.Dead) {
            return Optional.of(Node.text("notehead", "x"));
        }
        boolean harmonic = head.note().ornaments().harmonic().isPresent();
        boolean ghost = head.note().has(Mark.GHOST);
        if (!harmonic && !ghost) {
            return Optional.empty();
        }
        var shape = Node.text("notehead", harmonic ? "diamond" : "normal");
        return Optional.of(ghost ? shape.with("parentheses", "yes") : shape);
    }

    private static List<Node> beams(Spot spot) {
        var parts = spot.beams();
        var nodes = new ArrayList<Node>();
        for (int level = 1; level <= parts.size(); level++) {
            nodes.add(Node.text("beam", beam(parts.get(level - 1))).with("number", level));
        }
        return nodes;
    }

    private static String beam(BeamGroup.Part part) {
        return switch (part) {
            case BEGIN -> "begin";
            case CONTINUE -> "continue";
            case END -> "end";
            case FORWARD_HOOK -> "forward hook";
            case BACKWARD_HOOK -> "backward hook";
        };
    }
}
