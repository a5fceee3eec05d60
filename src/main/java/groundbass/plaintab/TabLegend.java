package groundbass.plaintab;

import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What the letters of a tablature mean, those that it uses, in the order in which they come. Mutable; one for a line. */
final class TabLegend {
    private static final String GAP = "  ";

    private final Messages messages;
    private final Map<String, String> meanings = new LinkedHashMap<>();

    TabLegend(Messages messages) {
        this.messages = messages;
    }

    Messages messages() {
        return messages;
    }

    /** Notes what a note's figure and stroke use. */
    void use(Note note) {
        note.pluck().ifPresent(hand -> add(letter(hand), hand.name()));
        note.arrival()
                .ifPresent(arrival -> add(sign(arrival.kind()), arrival.kind().name()));
        var ornaments = note.ornaments();
        ornaments.slideIn().ifPresent(in -> add("/5 \\5", "SLIDE_IN"));
        ornaments.slideOff().ifPresent(off -> add("5/ 5\\", "SLIDE_OFF"));
        ornaments.bend().ifPresent(bend -> add(bend.before() ? "pb" : "b", bend.before() ? "PREBEND" : "BEND"));
        ornaments.bend().filter(Bend::released).ifPresent(bend -> add("r", "RELEASE"));
        ornaments.trill().ifPresent(trill -> add("tr", "TRILL"));
        ornaments.harmonic().ifPresent(harmonic -> add("< >", "HARMONIC"));
        ornaments.spread().ifPresent(spread -> add(under(spread), key(spread)));
        if (note.isDead()) {
            add("x", "DEAD");
        }
        for (var mark : note.ornaments().marks()) {
            add(sign(mark), mark.name());
        }
    }

    private void add(String sign, String key) {
        if (!sign.isEmpty()) {
            meanings.putIfAbsent(sign, messages.say("sheet.sign." + key.toLowerCase(Locale.ROOT)));
        }
    }

    /** As on a sheet (rule: technique-letters), with words for its signs; empty where it goes without saying. */
    static String letter(Technique hand) {
        return switch (hand) {
            case SLAP -> "T";
            case POP -> "P";
            case THUMB -> "Th";
            case FINGER, PLUCK -> "";
            case INDEX -> "i";
            case MIDDLE -> "m";
            case THUMB_DOWN -> "D";
            case THUMB_UP -> "U";
            case PICK -> "Pk";
            case TAP -> "+";
            case MUTE -> "M";
            case RAKE -> "R";
            case LEFT_HAND -> "LH";
        };
    }

    /** What stands under a note for a mark, beside its stroke; empty where its figure shows it. */
    static String under(Mark mark) {
        return switch (mark) {
            case SHORT -> ".";
            case TENUTO -> "_";
            case ACCENT -> ">";
            case MARCATO -> "^";
            case RING -> "=";
            case FERMATA -> "@";
            case GHOST, VIBRATO -> "";
        };
    }

    /** What stands under a chord. */
    static String under(Spread spread) {
        return switch (spread) {
            case ROLL, ROLL_UP -> "}";
            case ROLL_DOWN -> "{";
            case BRACKET -> "]";
        };
    }

    private static String key(Spread spread) {
        return switch (spread) {
            case ROLL, ROLL_UP -> "ROLL";
            case ROLL_DOWN -> "ROLL_DOWN";
            case BRACKET -> "BRACKET";
        };
    }

    private static String sign(Mark mark) {
        return switch (mark) {
            case GHOST -> "( )";
            case VIBRATO -> "~";
            case SHORT, TENUTO, ACCENT, MARCATO, RING, FERMATA -> under(mark);
        };
    }

    private static String sign(Arrival.Kind kind) {
        return switch (kind) {
            case HAMMER -> "h";
            case PULL -> "p";
            case SLIDE -> "/ \\";
        };
    }

    /** An empty row, then a meaning each; nothing where no letter was used. */
    List<String> rows() {
        var rows = new ArrayList<String>();
        int widest = meanings.keySet().stream().mapToInt(String::length).max().orElse(0);
        meanings.forEach((sign, meaning) -> {
            var wrapped = Wrapped.rows(meaning, PlainTab.WIDTH - widest - GAP.length());
            rows.add(TabRow.padded(sign, widest) + GAP + wrapped.get(0));
            wrapped.stream().skip(1).forEach(more -> rows.add(TabRow.padded("", widest) + GAP + more));
        });
        if (!rows.isEmpty()) {
            rows.add(0, "");
        }
        return rows;
    }
}
