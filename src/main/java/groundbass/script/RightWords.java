package groundbass.script;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import groundbass.script.checking.Right;
import groundbass.text.Messages;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says what would be right, in a reader's language. Names of notes, places and lengths are the walkthrough's. */
public final class RightWords {
    private final Messages messages;
    private final Tuning tuning;

    public RightWords(Messages messages, Tuning tuning) {
        this.messages = messages;
        this.tuning = tuning;
    }

    /** One or two sentences. */
    public String of(Right right) {
        if (right instanceof Right.NameOfPlace place) {
            return nameOfPlace(place);
        }
        if (right instanceof Right.NoteThere there) {
            return say("note", bar(there.position().bar()), there.count(), note(there));
        }
        if (right instanceof Right.NothingBegins nothing) {
            return say(nothing.rest() ? "rest" : "held", bar(nothing.position().bar()), nothing.count());
        }
        if (right instanceof Right.RestLength rest) {
            return say("rest.length", bar(rest.position().bar()), rest.count(), length("rest.", rest.length()));
        }
        if (right instanceof Right.BarsDiffer differ) {
            return barsDiffer(differ);
        }
        if (right instanceof Right.Interval interval) {
            return interval(interval.semitones());
        }
        return head(right);
    }

    private String head(Right right) {
        if (right instanceof Right.KeyThere there) {
            return say("key", key(there.key()));
        }
        if (right instanceof Right.MeterThere there) {
            return say("meter", there.meter().toString());
        }
        if (right instanceof Right.TempoThere there) {
            return say("tempo", there.perMinute());
        }
        if (right instanceof Right.FeelThere there) {
            return say(there.swung() ? "swung" : "straight");
        }
        if (right instanceof Right.ChordsThere there) {
            String chords = there.chords().stream().map(ChordSymbol::toString).collect(Collectors.joining(", "));
            return say("chords", bar(there.bar()), chords);
        }
        return counted(right);
    }

    private String counted(Right right) {
        if (right instanceof Right.CountThere there) {
            return say("count", there.count());
        }
        if (right instanceof Right.StepThere there) {
            return step(there.semitones());
        }
        if (right instanceof Right.DegreeThere there) {
            return there.degree()
                    .map(degree ->
                            say("degree", degree.toString(), there.chord().toString()))
                    .orElseGet(() -> say("degree.none", there.chord().toString()));
        }
        if (right instanceof Right.OnlyIn there) {
            String bars = there.bars().stream().map(RightWords::bar).collect(Collectors.joining(", "));
            return there.bars().isEmpty()
                    ? say("nowhere")
                    : say("only", there.bars().size(), bars);
        }
        if (right instanceof Right.StringsThere there) {
            return say("strings", there.count());
        }
        return right instanceof Right.LastBar last ? say("last", bar(last.bar())) : say("unlike");
    }

    private String step(int semitones) {
        int size = Math.abs(semitones);
        if (size == 0) {
            return say("unison");
        }
        return say(semitones > 0 ? "up" : "down", say("semitones", size));
    }

    private String nameOfPlace(Right.NameOfPlace right) {
        var place = right.place();
        String frets = right.frets().stream().map(String::valueOf).collect(Collectors.joining(", "));
        return say(
                "name",
                String.valueOf(place.fret()),
                string(place.string()),
                name(right.name()),
                name(right.said()),
                frets);
    }

    private String note(Right.NoteThere there) {
        var note = there.note();
        String what = struck(note, there.told().technique(), place(note, there.name()));
        if (there.told().length()) {
            what = say("with", what, length("", note.length()));
        }
        var finger = note.ornaments().finger();
        return there.told().finger() && finger.isPresent()
                ? say("with", what, walk("finger." + finger.getAsInt()))
                : what;
    }

    private String struck(Note note, boolean told, String what) {
        if (!told) {
            return what;
        }
        return note.pluck()
                .map(technique -> walk("pluck." + technique.word(), what))
                .or(() -> note.arrival().map(Arrival::kind).map(kind -> walk("arrive." + kind.word(), what)))
                .orElse(what);
    }

    private String place(Note note, Optional<NoteName> name) {
        String string = string(note.string());
        if (!(note.place() instanceof Fretted fretted) || name.isEmpty()) {
            return walk("place.dead", string);
        }
        return fretted.fret() == 0
                ? walk("place.open", name(name.get()), string)
                : walk("place.fret", name(name.get()), string, String.valueOf(fretted.fret()));
    }

    private String barsDiffer(Right.BarsDiffer right) {
        String differ = say("bars", bar(right.bar()), bar(right.as()), right.count());
        return right.sameAs()
                .map(same -> differ + " " + say("bars.same", bar(right.bar()), bar(same)))
                .orElse(differ);
    }

    private String interval(int semitones) {
        int distance = Math.abs(semitones);
        if (distance == 0) {
            return say("unison");
        }
        String size = distance % 12 == 0 ? say("octaves", distance / 12) : say("semitones", distance);
        return say(semitones > 0 ? "above" : "below", size);
    }

    private String length(String kind, Fraction length) {
        return Arrays.stream(Base.values())
                .flatMap(base -> Stream.of(NoteValue.of(base), NoteValue.dotted(base)))
                .filter(value -> value.length().equals(length))
                .findFirst()
                .map(value -> walk(kind + (value.dots() == 1 ? "dotted." : "value.") + word(value.base()), 1, "1"))
                .orElseGet(() -> say("fraction", length.toString()));
    }

    private static String word(Base base) {
        return base.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private String string(int number) {
        var name = tuning.string(number).name();
        return tuning.numberOf(name).isPresent()
                ? walk("string", name(name))
                : walk("string.number", String.valueOf(number));
    }

    private String name(NoteName name) {
        if (messages.has("walkthrough.note." + name)) {
            return walk("note." + name);
        }
        String form =
                List.of("doubleflat", "flat", "natural", "sharp", "doublesharp").get(name.alteration() + 2);
        return walk("note." + form, name.letter().toString());
    }

    private String key(Key key) {
        String tonic = name(key.tonic());
        return walk("mode." + key.mode(), tonic, tonic.toLowerCase(messages.locale()));
    }

    private static String bar(int number) {
        return String.valueOf(number);
    }

    private String say(String key, Object... args) {
        return messages.say("script.right." + key, args);
    }

    private String walk(String key, Object... args) {
        return messages.say("walkthrough." + key, args);
    }
}
