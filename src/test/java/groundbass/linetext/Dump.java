package groundbass.linetext;

import groundbass.score.Bar;
import groundbass.score.Direction;
import groundbass.score.Header;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Roadmap;
import groundbass.score.Shift;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A reading in the words of the specification's examples: what differs from a plain header, bars, notes, problems. */
final class Dump {
    private final List<String> lines = new ArrayList<>();

    private Dump() {}

    static String of(Reading reading) {
        var dump = new Dump();
        dump.header(reading.line().header());
        var inForce = reading.line().inForce();
        for (int i = 0; i < inForce.size(); i++) {
            dump.bar(inForce.get(i).number(), reading.line().bars().get(i));
        }
        reading.problems()
                .forEach(problem -> dump.lines.add("! " + problem.span().line() + ":"
                        + problem.span().column() + "+" + problem.span().length() + " " + problem.code()
                        + problem.meant()
                                .map(choice ->
                                        " (" + Messages.of(Locale.ENGLISH).say(choice) + ")")
                                .orElse("")));
        return String.join("\n", dump.lines);
    }

    private void header(Header header) {
        var plain = Header.PLAIN;
        differing("title", header.title(), plain.title());
        differing("composer", header.composer(), plain.composer());
        differing("rights", header.rights(), plain.rights());
        differing("key", header.key() + ", fifths " + header.key().fifths(), "C major, fifths 0");
        differing("beats", header.meter().beats() + " of 1/" + header.meter().unit(), "[1, 1, 1, 1] of 1/4");
        differing("tempo", header.tempo().perMinute() + " of " + header.tempo().beat(), "100 of 1/4");
        differing("feel", header.feel().toString(), "straight");
        var midi = header.tuning().strings().stream()
                .map(string -> string.name() + "=" + string.pitch().midi())
                .toList();
        differing("strings", midi.toString(), "[G=43, D=38, A=33, E=28]");
        differing("frets", "" + header.frets(), "" + plain.frets());
        differing("style", header.style().word(), plain.style().word());
    }

    private void differing(String name, String value, String plain) {
        if (!value.equals(plain)) {
            lines.add(name + " " + value);
        }
    }

    private void bar(int number, Bar bar) {
        var changes = bar.changes();
        changes.place().ifPresent(place -> lines.add("new " + place.word()));
        changes.section().ifPresent(name -> lines.add("section " + name));
        changes.key().ifPresent(key -> lines.add("key " + key));
        changes.meter().ifPresent(meter -> lines.add("beats " + meter.beats() + " of 1/" + meter.unit()));
        changes.tempo().ifPresent(tempo -> lines.add("tempo " + tempo.perMinute() + " of " + tempo.beat()));
        changes.slowingTo().ifPresent(figure -> lines.add("slowing to " + figure));
        changes.feel().ifPresent(feel -> lines.add("feel " + feel));
        changes.style().ifPresent(style -> lines.add("style " + style.word()));
        lines.add("bar " + number + " from " + bar.from() + " to " + bar.to() + signs(bar));
        bar.copy()
                .ifPresent(copy -> lines.add("  copy of " + copy.bar()
                        + copy.counts()
                                .map(span -> " from " + span.from() + " to " + span.to())
                                .orElse("")
                        + shift(copy.shift())));
        bar.chords().forEach(chord -> lines.add("  chord " + chord.chord() + " at " + chord.at()));
        bar.notes().forEach(note -> lines.add("  " + note(note)));
        bar.directions().forEach(direction -> lines.add("  " + direction(direction) + " at " + direction.at()));
    }

    private static String shift(Shift shift) {
        return shift.isNone() ? "" : " by strings " + shift.strings() + ", frets " + shift.frets();
    }

    private static String direction(Direction direction) {
        if (direction instanceof Direction.Hairpin hairpin) {
            return "hairpin " + hairpin.way().word();
        }
        return direction instanceof Direction.Words words
                ? "words " + words.text()
                : "loudness " + ((Direction.Loudness) direction).dynamic();
    }

    private static String signs(Bar bar) {
        var signs = bar.repeats();
        return (signs.start() ? " |:" : "")
                + signs.ending().map(ending -> " [" + ending).orElse("")
                + (signs.endingEnd() ? " ]" : "")
                + signs.end()
                        .map(end -> " :|" + end.times().map(n -> "x" + n).orElse(""))
                        .orElse("")
                + roadmap(signs.roadmap());
    }

    private static String roadmap(Roadmap map) {
        return (map.segno() ? " segno" : "")
                + (map.coda() ? " coda" : "")
                + (map.toCoda() ? " to-coda" : "")
                + (map.fine() ? " fine" : "")
                + map.jump().map(jump -> " " + jump.printed()).orElse("");
    }

    /** Onset, length, string number and fret, then what strikes it ({@code -}: nothing) and everything else. */
    private static String note(Note note) {
        String place =
                note.string() + "/" + (note.place() instanceof Place.Fretted fretted ? "" + fretted.fret() : "x");
        String arrival = note.arrival()
                .map(found -> " " + found.kind().word()
                        + (found.graceFret().isPresent()
                                ? " from " + found.graceFret().getAsInt()
                                : ""))
                .orElse("");
        return note.onset() + " +" + note.length() + " " + place + " "
                + note.pluck().map(technique -> technique.word()).orElse("-") + arrival + ornaments(note.ornaments());
    }

    private static String ornaments(Ornaments ornaments) {
        var text = new StringBuilder();
        for (var mark : Ornaments.Mark.values()) {
            text.append(ornaments.has(mark) ? " " + mark.word() : "");
        }
        ornaments.bend().ifPresent(bend -> text.append(" bend of ")
                .append(bend.quarters())
                .append(bend.before() ? " before" : "")
                .append(bend.released() ? " released" : ""));
        ornaments.trill().ifPresent(trill -> text.append(" trill of ").append(trill.frets()));
        ornaments.harmonic().ifPresent(harmonic -> text.append(" harmonic")
                .append(
                        harmonic.touchedFret().isPresent()
                                ? " at " + harmonic.touchedFret().getAsInt()
                                : ""));
        ornaments.slideIn().ifPresent(way -> text.append(" in ").append(way));
        ornaments.slideOff().ifPresent(way -> text.append(" off ").append(way));
        ornaments.spread().ifPresent(spread -> text.append(" ").append(spread.words()));
        ornaments.finger().ifPresent(finger -> text.append(" finger ").append(finger));
        ornaments.spelling().ifPresent(name -> text.append(" as ").append(name));
        return text.toString();
    }
}
