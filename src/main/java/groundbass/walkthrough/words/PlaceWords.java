package groundbass.walkthrough.words;

import groundbass.score.Harmonic;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import groundbass.writing.Head;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Where notes lie on the neck: name, string, fret, and a finger where that does not go without saying. */
final class PlaceWords {
    private final Wording words;
    private final Tuning tuning;
    private final Predicate<Note> underFinger;
    private final Optional<NamedPlaces> named;

    /** @param named what was named before in one breath, where notes are told so */
    PlaceWords(Wording words, Tuning tuning, Predicate<Note> underFinger, Optional<NamedPlaces> named) {
        this.words = words;
        this.tuning = tuning;
        this.underFinger = underFinger;
        this.named = named;
    }

    /** Of a note by itself; in one breath without what was named before it. */
    String of(Head head) {
        var note = head.note();
        boolean plain = note.ornaments().harmonic().isEmpty() && finger(note).isEmpty();
        boolean known = plain && named.filter(each -> each.isKnown(head)).isPresent();
        boolean near = plain && isOnNamedString(note.string());
        String what = known ? again(head) : near ? near(head) : whole(head);
        named.ifPresent(each -> {
            if (known && !isOpen(head)) {
                each.recall(head);
            } else {
                each.name(head);
            }
        });
        return what;
    }

    /** Of a note among others that are struck together. */
    String together(Head head) {
        named.ifPresent(each -> each.nameTogether(head));
        return whole(head);
    }

    /** Of notes that follow one another along one string. */
    String along(List<Head> heads) {
        int number = heads.get(0).note().string();
        boolean near = isOnNamedString(number);
        heads.forEach(head -> named.ifPresent(each -> each.name(head)));
        String names = words.inTurn(heads.stream().map(this::name).toList());
        String frets = words.list(heads.stream().map(PlaceWords::fret).toList());
        return near ? words.say("run.near", names, frets) : words.say("run", names, string(number), frets);
    }

    private boolean isOnNamedString(int string) {
        return named.filter(each -> each.isOnString(string)).isPresent();
    }

    private String again(Head head) {
        return isOpen(head) ? words.say("again.open", whole(head)) : words.say("again", name(head));
    }

    /** On the string that was named last. */
    private String near(Head head) {
        if (head.note().isDead()) {
            return words.say("near.dead");
        }
        return isOpen(head) ? whole(head) : words.say("near.fret", name(head), fret(head));
    }

    private String whole(Head head) {
        String string = string(head.note().string());
        return head.note().place() instanceof Fretted fretted
                ? pitched(head, fretted, string)
                : words.say("place.dead", string);
    }

    private String pitched(Head head, Fretted place, String string) {
        var harmonic = head.note().ornaments().harmonic();
        if (harmonic.isPresent()) {
            return harmonic(harmonic.get(), name(head), string, fret(head));
        }
        if (place.fret() == 0) {
            var open = tuning.string(place.string()).name();
            boolean own =
                    head.pitch().name().equals(open) && tuning.numberOf(open).isPresent();
            return own ? words.say("place.open.own", string) : words.say("place.open", name(head), string);
        }
        return finger(head.note())
                .map(finger -> words.say("place.finger", name(head), string, fret(head), finger))
                .orElseGet(() -> words.say("place.fret", name(head), string, fret(head)));
    }

    private Optional<String> finger(Note note) {
        var finger = note.ornaments().finger();
        return finger.isPresent() && !underFinger.test(note)
                ? Optional.of(words.say("finger." + finger.getAsInt()))
                : Optional.empty();
    }

    private String harmonic(Harmonic harmonic, String name, String string, String fret) {
        return harmonic.touchedFret().isPresent()
                ? words.say(
                        "place.artificial",
                        name,
                        string,
                        fret,
                        String.valueOf(harmonic.touchedFret().getAsInt()))
                : words.say("place.harmonic", name, string, fret);
    }

    /** By its name, or by its number where two strings have the same name. */
    String string(int number) {
        var name = tuning.string(number).name();
        return tuning.numberOf(name).isPresent()
                ? words.say("string", words.name(name))
                : words.say("string.number", String.valueOf(number));
    }

    private String name(Head head) {
        return words.name(head.pitch().name());
    }

    private static boolean isOpen(Head head) {
        return head.note().place() instanceof Fretted place && place.fret() == 0;
    }

    private static String fret(Head head) {
        return head.note().place() instanceof Fretted place ? String.valueOf(place.fret()) : "";
    }
}
