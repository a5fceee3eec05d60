package groundbass.intake.draft;

import groundbass.fingering.Fingered;
import groundbass.fingering.Fretboard;
import groundbass.fingering.Hand;
import groundbass.fingering.NoteConstraint;
import groundbass.fingering.Search;
import groundbass.fingering.SoundingMoment;
import groundbass.intake.notice.NoticeList;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Gives every note its place: what the file says, and where it says nothing the cheapest way for a hand. */
final class Seating {
    /** Moments that one search takes at once; the next begins where it ended. */
    private static final int AT_ONCE = 1_000;

    private static final Comparator<DraftNote> ORDER =
            Comparator.comparing(DraftNote::start).thenComparingInt(DraftNote::midi);

    private final Header header;
    private final Fretboard neck;
    private final BarTimes times;
    private final NoticeList notices;

    private Seating(Header header, BarTimes times, NoticeList notices) {
        this.header = header;
        this.neck = Fretboard.of(header);
        this.times = times;
        this.notices = notices;
    }

    /** In time; without what is on no string of the neck. */
    static List<DraftNote> of(Header header, BarTimes times, List<DraftNote> notes, NoticeList notices) {
        return new Seating(header, times, notices).seat(notes);
    }

    private List<DraftNote> seat(List<DraftNote> notes) {
        var together = new TreeMap<Fraction, List<DraftNote>>();
        notes.stream()
                .sorted(ORDER)
                .map(this::withPlaces)
                .filter(this::isOnTheNeck)
                .map(this::withTrillOnTheNeck)
                .forEach(note -> together.computeIfAbsent(note.start(), start -> new ArrayList<>())
                        .add(note));
        var groups = together.values().stream().map(this::withStringEach).toList();
        boolean isKnown = groups.stream().flatMap(List::stream).allMatch(DraftNote::isSeated);
        return isKnown ? groups.stream().flatMap(List::stream).toList() : search(groups);
    }

    private DraftNote withPlaces(DraftNote note) {
        if (!note.places().isEmpty()) {
            return note;
        }
        var places = neck.tuning().placesOf(note.midi(), neck.frets()).stream();
        var all = note.dead() ? dead(places) : places.map(Place.class::cast).toList();
        return note.at(all);
    }

    /** Where the neck has the upper note of its trill too; without the trill where it has that nowhere. */
    private DraftNote withTrillOnTheNeck(DraftNote note) {
        var fitting = note.places().stream()
                .filter(place -> note.ornaments().fit(place, header.frets()))
                .toList();
        if (fitting.isEmpty() && note.ornaments().trill().isPresent()) {
            notices.leftOut(times.barOf(note.start()), Message.of("intake.left.trill"));
            return note.withoutTrill();
        }
        return fitting.isEmpty() ? note : note.at(fitting);
    }

    /** A dead note has no pitch, so it has a string on every neck. */
    private List<Place> dead(Stream<Place.Fretted> places) {
        var found = places.map(place -> Place.dead(place.string())).toList();
        return found.isEmpty() ? List.of(Place.dead(neck.tuning().size())) : found;
    }

    private boolean isOnTheNeck(DraftNote note) {
        if (note.places().isEmpty()) {
            notices.leftOut(times.barOf(note.start()), Message.of("intake.left.neck"));
        }
        return !note.places().isEmpty();
    }

    /** Without one note after the other, the highest first, until every one has a string. */
    private List<DraftNote> withStringEach(List<DraftNote> group) {
        var notes = new ArrayList<>(once(group));
        while (StringSharing.of(places(notes), neck.tuning().size()).isEmpty()) {
            notices.leftOut(times.barOf(notes.get(0).start()), Message.of("intake.left.strings"));
            notes.remove(notes.size() - 1);
        }
        return notes;
    }

    /** Two voices that meet in one note play it once, as long as the longer. */
    private static List<DraftNote> once(List<DraftNote> group) {
        var notes = new ArrayList<DraftNote>();
        for (var note : group) {
            int last = notes.size() - 1;
            boolean again = last >= 0
                    && notes.get(last).midi() == note.midi()
                    && !notes.get(last).isSeated()
                    && !note.isSeated();
            if (again) {
                var one = notes.get(last);
                notes.set(last, one.between(one.start(), one.end().max(note.end())));
            } else {
                notes.add(note);
            }
        }
        return notes;
    }

    private static List<List<Place>> places(List<DraftNote> notes) {
        return notes.stream().map(DraftNote::places).toList();
    }

    private List<DraftNote> search(List<List<DraftNote>> groups) {
        var seated = new ArrayList<List<DraftNote>>();
        for (int from = 0; from < groups.size(); from += AT_ONCE) {
            var window = new ArrayList<List<DraftNote>>();
            if (from > 0) {
                window.add(seated.get(seated.size() - 1));
            }
            window.addAll(groups.subList(from, Math.min(groups.size(), from + AT_ONCE)));
            var found = seats(window);
            seated.addAll(from > 0 ? found.subList(1, found.size()) : found);
        }
        return seated.stream().flatMap(List::stream).toList();
    }

    private List<List<DraftNote>> seats(List<List<DraftNote>> groups) {
        var moments = IntStream.range(0, groups.size())
                .mapToObj(i -> moment(groups.get(i), i == 0 ? List.of() : held(groups.get(i - 1), groups.get(i))))
                .toList();
        var way = Search.best(neck, Hand.AVERAGE, moments).orElseThrow();
        return IntStream.range(0, groups.size())
                .mapToObj(i -> seats(groups.get(i), way.grips().get(i).notes()))
                .toList();
    }

    /** What sounds on from the moment before, where it can. */
    private List<DraftNote> held(List<DraftNote> before, List<DraftNote> group) {
        var held = before.stream()
                .filter(note -> note.end().isAfter(group.get(0).start()) && !note.dead())
                .toList();
        var all = Stream.concat(group.stream(), held.stream()).toList();
        return StringSharing.of(places(all), neck.tuning().size()).isPresent() ? held : List.of();
    }

    private SoundingMoment moment(List<DraftNote> group, List<DraftNote> held) {
        var end = Stream.concat(group.stream(), held.stream())
                .map(DraftNote::end)
                .reduce(Fraction::min)
                .orElseThrow();
        var wanted = Stream.concat(
                        group.stream().map(Seating::wanted),
                        held.stream().map(note -> wanted(note).sustained()))
                .toList();
        return new SoundingMoment(seconds(group.get(0).start()), seconds(end), wanted);
    }

    /** At the tempo of the head: what a change of tempo does to the price of a shift is little. */
    private double seconds(Fraction moment) {
        return header.tempo().seconds(moment);
    }

    private static NoteConstraint wanted(DraftNote note) {
        var ornaments = note.ornaments();
        boolean pressed = ornaments.bend().isPresent()
                || ornaments.slideIn().isPresent()
                || ornaments.slideOff().isPresent()
                || ornaments.has(Mark.VIBRATO);
        return new NoteConstraint(
                note.places(),
                ornaments.finger(),
                note.pluck(),
                note.arrival().filter(kind -> note.isLed()),
                pressed,
                false);
    }

    private List<DraftNote> seats(List<DraftNote> group, List<Fingered> found) {
        var places = IntStream.range(0, group.size())
                .mapToObj(i -> found.get(i).place())
                .toList();
        boolean apart = places.stream().map(Place::string).distinct().count() == places.size();
        var seats = apart
                ? places
                : StringSharing.of(places(group), neck.tuning().size()).orElseThrow();
        return IntStream.range(0, group.size())
                .mapToObj(i -> seat(group.get(i), seats.get(i)))
                .toList();
    }

    private DraftNote seat(DraftNote note, Place place) {
        if (!note.isSeated()) {
            notices.guessed(times.barOf(note.start()), Message.of("intake.guessed.places"));
        }
        return note.at(place);
    }
}
