package groundbass.musicxml;

import groundbass.musicxml.NoteWriting.Spot;
import groundbass.score.Arrival;
import groundbass.score.Line;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Ornaments.Trill;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What belongs to one note beside its pitch and length: ties, slurs, slides, tuplets, ornaments, technique, signs. */
final class Notations {
    private static final Comparator<Head> UPWARD = Comparator.comparing(
                    (Head head) -> head.pitch().midi())
            .thenComparing(head -> head.note().string(), Comparator.reverseOrder());

    private final Links links;
    private final PluckElements strokes;
    private final SpannerNumbers numbers;

    Notations(Line line) {
        this.links = Links.of(line);
        this.strokes = PluckElements.of(line);
        this.numbers = new SpannerNumbers(line.header().tuning().size());
    }

    Optional<Node> of(Spot spot, Head head, boolean first) {
        var all = new ArrayList<Node>();
        all.addAll(tied(head));
        all.addAll(curves(spot, head));
        if (first) {
            all.addAll(tuplet(spot));
        }
        if (spot.isOn(Staff.NOTATION)) {
            all.addAll(ornaments(head));
        }
        group("technical", technical(spot, head)).ifPresent(all::add);
        if (spot.isOn(Staff.NOTATION)) {
            group("articulations", ArticulationElements.of(head)).ifPresent(all::add);
            all.addAll(fermata(spot, head));
            all.addAll(arpeggio(spot, head));
        }
        return group("notations", all);
    }

    /** From the grace note to its own (rule: grace-note-technique). */
    Optional<Node> ofGrace(Spot spot, Head head) {
        var arrival = head.note().arrival().orElseThrow();
        var all = new ArrayList<>(curve(spot, head, new Links.Link(arrival.kind(), true), "start"));
        var technical = new ArrayList<Node>();
        if (spot.isOn(Staff.TABLATURE)) {
            technical.addAll(place(head.note().string(), arrival.graceFret().orElseThrow()));
        }
        technical.addAll(hand(spot, head, arrival.kind(), "start"));
        group("technical", technical).ifPresent(all::add);
        return group("notations", all);
    }

    Optional<Node> ofRest(Spot spot) {
        return group("notations", tuplet(spot));
    }

    private static Optional<Node> group(String name, List<Node> children) {
        return children.isEmpty() ? Optional.empty() : Optional.of(Node.of(name, children));
    }

    private static List<Node> tied(Head head) {
        var ties = new ArrayList<Node>();
        if (head.tiedFrom()) {
            ties.add(Node.empty("tied").with("type", "stop"));
        }
        if (head.tiedTo()) {
            ties.add(Node.empty("tied").with("type", "start"));
        } else if (head.note().has(Mark.RING)) {
            ties.add(Node.empty("tied").with("type", "let-ring"));
        }
        return ties;
    }

    /** Slurs and slides that end here, then those that begin. */
    private List<Node> curves(Spot spot, Head head) {
        var curves = new ArrayList<Node>();
        into(head).ifPresent(link -> curves.addAll(curve(spot, head, link, "stop")));
        outOf(head).ifPresent(link -> curves.addAll(curve(spot, head, link, "start")));
        return curves;
    }

    /** At the first of tied heads. */
    private Optional<Links.Link> into(Head head) {
        if (head.tiedFrom()) {
            return Optional.empty();
        }
        var grace = head.note().arrival().filter(Arrival::isGrace);
        return grace.map(arrival -> new Links.Link(arrival.kind(), true)).or(() -> links.into(head));
    }

    /** At the last of them. */
    private Optional<Links.Link> outOf(Head head) {
        return head.tiedTo() ? Optional.empty() : links.outOf(head);
    }

    private List<Node> curve(Spot spot, Head head, Links.Link link, String type) {
        var number = numbers.of(spot.staff(), head.note().string());
        var nodes = new ArrayList<Node>();
        if (number.isPresent() && link.slurred()) {
            nodes.add(Node.empty("slur").with("type", type).with("number", number.getAsInt()));
        }
        if (number.isPresent() && link.kind() == Arrival.Kind.SLIDE) {
            var slide = Node.empty("slide").with("type", type).with("number", number.getAsInt());
            nodes.add(type.equals("start") ? slide.with("line-type", "solid") : slide);
        }
        return nodes;
    }

    /** Hammer or pull; a slide has an element elsewhere. */
    private List<Node> hand(Spot spot, Head head, Arrival.Kind kind, String type) {
        var number = numbers.of(spot.staff(), head.note().string());
        if (number.isEmpty() || kind == Arrival.Kind.SLIDE) {
            return List.of();
        }
        boolean hammer = kind == Arrival.Kind.HAMMER;
        String name = hammer ? "hammer-on" : "pull-off";
        var node = type.equals("start") ? Node.text(name, hammer ? "H" : "P") : Node.empty(name);
        return List.of(node.with("type", type).with("number", number.getAsInt()));
    }

    private static List<Node> tuplet(Spot spot) {
        if (spot.isOn(Staff.TABLATURE)) {
            return List.of();
        }
        var ends = new ArrayList<Node>();
        spot.tuplet().ifPresent(group -> {
            if (group.first() == spot.index()) {
                ends.add(Node.empty("tuplet").with("type", "start").with("number", 1));
            }
            if (group.last() == spot.index()) {
                ends.add(Node.empty("tuplet").with("type", "stop").with("number", 1));
            }
        });
        return ends;
    }

    /** A trill's mark, and a wave as long as the note, ties and all (rule: vibrato-wave, trill-sign). */
    private static List<Node> ornaments(Head head) {
        var ends = new ArrayList<Node>();
        var trill = head.note().ornaments().trill();
        if (!head.tiedFrom()) {
            trill.ifPresent(each -> ends.add(trill(each)));
        }
        if (head.note().has(Mark.VIBRATO) || trill.isPresent()) {
            if (!head.tiedFrom()) {
                ends.add(wave(head, "start"));
            }
            if (!head.tiedTo()) {
                ends.add(wave(head, "stop"));
            }
        }
        return ends.isEmpty() ? List.of() : List.of(Node.of("ornaments", ends));
    }

    private static Node trill(Trill trill) {
        return Node.empty("trill-mark")
                .with("start-note", "main")
                .with("trill-step", trill.frets() == 1 ? "half" : "whole");
    }

    private static Node wave(Head head, String type) {
        return Node.empty("wavy-line")
                .with("type", type)
                .with("number", head.note().string());
    }

    private List<Node> technical(Spot spot, Head head) {
        var marks = new ArrayList<Node>();
        if (spot.isOn(Staff.TABLATURE)) {
            marks.addAll(place(head.note().string(), fret(head)));
        }
        into(head).ifPresent(link -> marks.addAll(hand(spot, head, link.kind(), "stop")));
        outOf(head).ifPresent(link -> marks.addAll(hand(spot, head, link.kind(), "start")));
        if (!head.tiedFrom()) {
            marks.addAll(ofTheNote(spot, head));
        }
        return marks;
    }

    private List<Node> ofTheNote(Spot spot, Head head) {
        var ornaments = head.note().ornaments();
        var marks = new ArrayList<Node>();
        if (spot.isOn(Staff.NOTATION)) {
            marks.addAll(strokes.technical(head));
            ornaments.finger().ifPresent(finger -> marks.add(Node.text("fingering", finger)));
        }
        ornaments.harmonic().ifPresent(harmonic -> {
            String kind = harmonic.touchedFret().isPresent() ? "artificial" : "natural";
            marks.add(Node.of("harmonic", Node.empty(kind), Node.empty("sounding-pitch")));
            harmonic.touchedFret().ifPresent(fret -> marks.add(Node.text("other-technical", "touch " + fret)));
        });
        ornaments.bend().ifPresent(bend -> marks.addAll(bends(bend)));
        return marks;
    }

    /** What is let back is a bend of its own; numbers below zero are of pre-bends and releases. */
    private static List<Node> bends(Bend bend) {
        var bends = new ArrayList<Node>();
        bends.add(
                bend.before()
                        ? Node.of("bend", Node.text("bend-alter", -bend.semitones()), Node.empty("pre-bend"))
                        : Node.of("bend", Node.text("bend-alter", bend.semitones())));
        if (bend.released()) {
            bends.add(Node.of("bend", Node.text("bend-alter", -bend.semitones()), Node.empty("release")));
        }
        return bends.stream().map(node -> node.with("shape", "curved")).toList();
    }

    private static List<Node> place(int string, int fret) {
        return List.of(Node.text("string", string), Node.text("fret", fret));
    }

    /** The format asks for a fret of every string; a dead note is given that of its open string, which it damps. */
    private static int fret(Head head) {
        return head.note().place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
    }

    /** At the end of its sound; of the lower of two voices it stands below. */
    private static List<Node> fermata(Spot spot, Head head) {
        boolean ends = head.note().has(Mark.FERMATA) && !head.tiedTo();
        return ends
                ? List.of(Node.text("fermata", "normal").with("type", spot.isLower() ? "inverted" : "upright"))
                : List.of();
    }

    /** What is said of a chord; else a rake over strings that sound together runs from the highest to the lowest. */
    private static List<Node> arpeggio(Spot spot, Head head) {
        var said = head.note().ornaments().spread().filter(spread -> !head.tiedFrom());
        if (said.isPresent()) {
            return spread(said.get(), spot, head);
        }
        boolean rake = spot.element() instanceof Chord chord
                && chord.heads().size() > 1
                && chord.heads().stream().allMatch(Notations::isRaked);
        return rake ? List.of(Node.empty("arpeggiate").with("direction", "down")) : List.of();
    }

    private static List<Node> spread(Spread spread, Spot spot, Head head) {
        var wave = Node.empty("arpeggiate");
        return switch (spread) {
            case ROLL -> List.of(wave);
            case ROLL_UP -> List.of(wave.with("direction", "up"));
            case ROLL_DOWN -> List.of(wave.with("direction", "down"));
            case BRACKET -> bracket(spot, head);
        };
    }

    /** At its two ends, whichever voices they belong to. */
    private static List<Node> bracket(Spot spot, Head head) {
        var chord = spot.written().voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(element -> element.onset().equals(spot.element().onset()))
                .flatMap(element -> element instanceof Chord found ? found.heads().stream() : Stream.of())
                .filter(other -> !other.tiedFrom())
                .sorted(UPWARD)
                .toList();
        var ends = new ArrayList<Node>();
        if (head.equals(chord.get(0))) {
            ends.add(Node.empty("non-arpeggiate").with("type", "bottom"));
        }
        if (head.equals(chord.get(chord.size() - 1))) {
            ends.add(Node.empty("non-arpeggiate").with("type", "top"));
        }
        return ends;
    }

    private static boolean isRaked(Head head) {
        return !head.tiedFrom()
                && head.note().pluck().filter(Technique.RAKE::equals).isPresent();
    }
}
