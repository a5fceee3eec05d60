package groundbass.walkthrough.words;

import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/** What both hands do for one note or for notes struck together. */
public final class NoteWords {
    private final Wording words;
    private final Tuning tuning;
    private final PlaceWords places;

    public NoteWords(Wording words, Tuning tuning) {
        this(words, tuning, new PlaceWords(words, tuning, note -> false, Optional.empty()));
    }

    private NoteWords(Wording words, Tuning tuning, PlaceWords places) {
        this.words = words;
        this.tuning = tuning;
        this.places = places;
    }

    /**
     * For notes that are told in one breath, where a string and a place are named once.
     *
     * @param underFinger whether the finger that is written for a note goes without saying
     */
    public static NoteWords inOneBreath(Wording words, Tuning tuning, Predicate<Note> underFinger) {
        var places = new PlaceWords(words, tuning, underFinger, Optional.of(new NamedPlaces()));
        return new NoteWords(words, tuning, places);
    }

    /**
     * Notes that are struck together.
     *
     * @param heads those of one chord that begin here, lowest first
     * @param named whether it is said with what they are struck, where that is one thing
     */
    public String of(List<Head> heads, boolean named) {
        return spread(heads, struck(heads, named));
    }

    /** With what is said of notes that begin together. */
    public String spread(List<Head> heads, String what) {
        return heads.get(0)
                .note()
                .ornaments()
                .spread()
                .map(spread -> words.say("detail", what, words.say("spread." + lower(spread))))
                .orElse(what);
    }

    private String struck(List<Head> heads, boolean named) {
        var first = heads.get(0).note();
        boolean alike = heads.stream().map(Head::note).allMatch(note -> isLike(note, first));
        if (heads.size() > 1 && alike) {
            var what = heads.stream().map(places::together).toList();
            return detailed(first, words.say("together", listBut(what), what.get(what.size() - 1)), named);
        }
        if (heads.size() == 1) {
            return detailed(first, places.of(heads.get(0)), named);
        }
        return heads.stream()
                .map(head -> detailed(head.note(), places.together(head), true))
                .reduce((one, two) -> words.say("together.each", one, two))
                .orElseThrow();
    }

    /** Plain notes that follow one another along one string, without what they are struck with. */
    public String along(List<Head> heads) {
        return places.along(heads);
    }

    /** Dead notes that follow one another on one string. */
    public String dead(List<Head> heads) {
        return words.say(
                "dead.several",
                words.number(heads.size()),
                places.string(heads.get(0).note().string()));
    }

    /** Whether the plucking hand does the same for two notes, so that it is said once. */
    public boolean isLike(Note one, Note two) {
        return one.pluck().equals(two.pluck())
                && marks(one).equals(marks(two))
                && one.arrival().isEmpty()
                && two.arrival().isEmpty();
    }

    private String listBut(List<String> what) {
        return what.stream()
                .limit(what.size() - 1L)
                .reduce((one, two) -> words.say("list.more", one, two))
                .orElseThrow();
    }

    private String detailed(Note note, String what, boolean named) {
        return marks(note).stream()
                .reduce(named ? strike(note, what) : what, (text, detail) -> words.say("detail", text, detail));
    }

    /** What the plucking hand does, or how the note is reached: the same word for all that is played alike. */
    public String manner(Note note) {
        return note.pluck()
                .map(Technique::word)
                .or(() -> note.arrival().map(arrival -> arrival.kind().word()))
                .orElse("");
    }

    private String strike(Note note, String what) {
        return note.pluck()
                .map(technique -> words.say(key(technique, note), what))
                .or(() -> note.arrival()
                        .map(arrival -> words.say("arrive." + arrival.kind().word(), what)))
                .orElse(what);
    }

    /** A dead note is struck, and not gone through, where this language tells the two apart. */
    private String key(Technique technique, Note note) {
        String key = "pluck." + technique.word();
        return note.isDead() && words.has(key + ".dead") ? key + ".dead" : key;
    }

    /** The same in one breath. */
    public String briefStrike(Note note, String what) {
        return note.pluck()
                .map(technique -> "brief.pluck." + technique.word())
                .filter(words::has)
                .map(key -> words.say(key, what))
                .orElseGet(() -> strike(note, what));
    }

    /** By its name, or by its number where two strings have the same name. */
    public String string(int number) {
        return places.string(number);
    }

    /** Strokes and places alone, of heads that begin together. */
    public String brief(List<Head> heads) {
        String struck = heads.stream()
                .map(head -> strike(head.note(), brief(head)))
                .reduce((one, two) -> words.say("brief.together", one, two))
                .orElseThrow();
        return spread(heads, struck);
    }

    /** {@code C (A 3)}, {@code open A}, {@code dead (A)}; harmonics in the words that they always have. */
    public String brief(Head head) {
        boolean plain = head.note().ornaments().harmonic().isEmpty();
        if (!plain) {
            return places.together(head);
        }
        if (!(head.note().place() instanceof Fretted place)) {
            return words.say("brief.dead", shortString(head.note().string()));
        }
        return place.fret() == 0
                ? words.say("brief.open", shortString(place.string()))
                : words.say(
                        "brief.place",
                        words.name(head.pitch().name()),
                        shortString(place.string()),
                        String.valueOf(place.fret()));
    }

    private String shortString(int number) {
        var name = tuning.string(number).name();
        return tuning.numberOf(name).isPresent() ? words.name(name) : string(number);
    }

    /** What sounds otherwise than a plain note. */
    public List<String> marks(Note note) {
        var details = new ArrayList<String>();
        note.arrival().flatMap(arrival -> arrival(note, arrival)).ifPresent(details::add);
        var ornaments = note.ornaments();
        ornaments.slideIn().ifPresent(slide -> details.add(words.say("slidein." + lower(slide))));
        ornaments.bend().ifPresent(bend -> details.add(bend(bend)));
        ornaments.trill().ifPresent(trill -> details.add(words.say("trill." + trill.frets())));
        Arrays.stream(Mark.values())
                .filter(ornaments::has)
                .forEach(mark -> details.add(words.say("mark." + mark.word())));
        ornaments.slideOff().ifPresent(slide -> details.add(words.say("slideoff." + lower(slide))));
        return details;
    }

    private Optional<String> arrival(Note note, Arrival arrival) {
        String word = arrival.kind().word();
        if (!arrival.isGrace()) {
            return note.pluck().map(technique -> words.say("reached." + word));
        }
        int from = arrival.graceFret().getAsInt();
        int to = note.place() instanceof Fretted place ? place.fret() : from;
        String way = from == 0 ? ".open" : from < to ? ".up" : ".down";
        int far = Math.abs(to - from);
        return Optional.of(words.say("grace." + word + way, far, words.number(far), String.valueOf(from)));
    }

    private String bend(Bend bend) {
        String far = words.say("bend." + bend.quarters());
        String from = bend.before() ? words.say("bend.before", far) : far;
        return bend.released() ? words.say("bend.released", from) : from;
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
