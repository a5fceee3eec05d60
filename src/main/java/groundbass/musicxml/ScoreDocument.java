package groundbass.musicxml;

import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.score.Technique;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;

/** The whole document: title, credits, the instrument, and its one part. */
final class ScoreDocument {
    private static final String PART = "P1";
    private static final String INSTRUMENT = "P1-I1";

    private ScoreDocument() {}

    static Node of(WrittenLine line, Credits credits) {
        var children = new ArrayList<Node>();
        if (!credits.title().isBlank()) {
            children.add(Node.of("work", Node.text("work-title", credits.title())));
        }
        children.add(identification(credits));
        children.add(Node.of("part-list", part(line.line())));
        children.add(Node.of("part", MeasureElements.of(line)).with("id", PART));
        return Node.of("score-partwise", children).with("version", "4.0");
    }

    private static Node identification(Credits credits) {
        var children = new ArrayList<Node>();
        children.addAll(creator("composer", credits.composer()));
        children.addAll(creator("transcriber", credits.transcriber()));
        children.addAll(said("rights", credits.rights()));
        children.add(
                Node.of("encoding", Node.text("software", "Groundbass"), supports("accidental"), supports("beam")));
        children.addAll(said("source", credits.source()));
        return Node.of("identification", children);
    }

    private static List<Node> creator(String type, String name) {
        return said("creator", name).stream()
                .map(creator -> creator.with("type", type))
                .toList();
    }

    private static List<Node> said(String name, String text) {
        return text.isBlank() ? List.of() : List.of(Node.text(name, text));
    }

    private static Node supports(String element) {
        return Node.empty("supports").with("element", element).with("type", "yes");
    }

    private static Node part(Line line) {
        var instrument = Node.of(
                        "score-instrument",
                        Node.text("instrument-name", "Electric Bass"),
                        Node.text("instrument-sound", "pluck.bass.electric"))
                .with("id", INSTRUMENT);
        var midi = Node.of(
                        "midi-instrument",
                        Node.text("midi-channel", 1),
                        Node.text("midi-program", program(line.header().style())))
                .with("id", INSTRUMENT);
        return Node.of("score-part", Node.text("part-name", "Bass"), instrument, midi)
                .with("id", PART);
    }

    /** The bass of General MIDI 1 (RP-003) that is nearest; the element counts programs from one. */
    private static int program(Technique style) {
        return switch (style) {
            case SLAP, POP, THUMB_DOWN, THUMB_UP -> 37;
            case PICK -> 35;
            case FINGER, INDEX, MIDDLE, THUMB, PLUCK, TAP, MUTE, RAKE, LEFT_HAND -> 34;
        };
    }
}
