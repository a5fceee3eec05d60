package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;

/** Chord symbols: the root, the kind with the text that players write, what differs from the kind, the bass. */
final class Harmonies {
    private Harmonies() {}

    static void add(List<Bar> bars, DirectionsByBar moments) {
        for (int i = 0; i < bars.size(); i++) {
            for (var chord : bars.get(i).chords()) {
                moments.add(i, chord.at(), offset -> harmony(chord.chord(), offset));
            }
        }
    }

    private static Node harmony(ChordSymbol symbol, List<Node> offset) {
        var children = new ArrayList<Node>();
        if (symbol instanceof Chord chord) {
            children.add(name("root", chord.root()));
            var kind = ChordKind.of(chord.quality());
            children.add(
                    Node.text("kind", kind.name()).with("text", chord.quality().suffix()));
            chord.bass().ifPresent(bass -> children.add(name("bass", bass)));
            kind.degrees().forEach(degree -> children.add(degree(degree)));
        } else {
            children.add(Node.of("root", Node.text("root-step", "C").with("text", "")));
            children.add(Node.text("kind", "none").with("text", symbol));
        }
        children.addAll(offset);
        children.add(Node.text("staff", Staff.NOTATION.number()));
        return Node.of("harmony", children);
    }

    private static Node name(String part, NoteName name) {
        var children = new ArrayList<Node>();
        children.add(Node.text(part + "-step", name.letter()));
        if (name.alteration() != 0) {
            children.add(Node.text(part + "-alter", name.alteration()));
        }
        return Node.of(part, children);
    }

    /** The text of the kind says it already. */
    private static Node degree(ChordKind.Degree degree) {
        return Node.of(
                        "degree",
                        Node.text("degree-value", degree.number()),
                        Node.text("degree-alter", degree.alteration()),
                        Node.text("degree-type", degree.type().word()))
                .with("print-object", "no");
    }
}
