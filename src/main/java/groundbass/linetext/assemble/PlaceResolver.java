package groundbass.linetext.assemble;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.Event.Played;
import groundbass.linetext.typed.Event.StringRef;
import groundbass.score.Place;
import groundbass.score.Tuning;
import groundbass.theory.NoteName;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Finds typed places on the neck, and says how a string is typed. */
public final class PlaceResolver {
    private final Tuning tuning;
    private final int frets;

    public PlaceResolver(Tuning tuning, int frets) {
        this.tuning = tuning;
        this.frets = frets;
    }

    Tuning tuning() {
        return tuning;
    }

    int frets() {
        return frets;
    }

    /** How the strings are typed, the lowest first. */
    String strings() {
        return String.join(" ", names());
    }

    /** The letter of a string, or its number where the letter would be ambiguous. */
    public String nameOf(int string) {
        return tuning.typed(string);
    }

    public String print(Place place) {
        return tuning.typed(place);
    }

    public Optional<Integer> string(StringRef typed, String fret, Problems problems) {
        return typed.text().startsWith("s") ? numbered(typed, problems) : named(typed, fret, problems);
    }

    public Optional<Place> place(Played typed, Problems problems) {
        var string = string(typed.string(), typed.fret(), problems);
        if (string.isEmpty() || typed.fret().equals("x")) {
            return string.map(Place::dead);
        }
        var fret = TypedNumbers.whole(typed.fret()).filter(n -> n <= frets);
        if (fret.isEmpty()) {
            problems.add(EventProblems.fretOffNeck(typed.span(), typed.fret(), nameOf(string.get()), frets));
        }
        return fret.map(n -> Place.of(string.get(), n));
    }

    private Optional<Integer> numbered(StringRef typed, Problems problems) {
        var number = TypedNumbers.whole(typed.text().substring(1)).filter(n -> n >= 1 && n <= tuning.size());
        if (number.isEmpty()) {
            problems.add(EventProblems.noSuchString(typed.span(), typed.text(), numbers()));
        }
        return number;
    }

    private Optional<Integer> named(StringRef typed, String fret, Problems problems) {
        var name = NoteName.parse(typed.text());
        var found = name.flatMap(tuning::numberOf);
        if (found.isEmpty()) {
            var namesakes = IntStream.rangeClosed(1, tuning.size())
                    .filter(i -> name.filter(tuning.string(i).name()::equals).isPresent())
                    .boxed()
                    .toList();
            problems.add(
                    namesakes.isEmpty()
                            ? EventProblems.noSuchString(typed.span(), typed.text(), names())
                            : EventProblems.ambiguousString(typed.span(), typed.text(), offers(namesakes, fret)));
        }
        return found;
    }

    private static List<String> offers(List<Integer> strings, String fret) {
        String rest = fret.isEmpty() || fret.equals("x") ? fret : "f" + fret;
        return strings.stream().map(i -> "s" + i + rest).toList();
    }

    private List<String> names() {
        var names =
                IntStream.rangeClosed(1, tuning.size()).mapToObj(this::nameOf).collect(Collectors.toList());
        Collections.reverse(names);
        return names;
    }

    private List<String> numbers() {
        var numbers =
                IntStream.rangeClosed(1, tuning.size()).mapToObj(i -> "s" + i).collect(Collectors.toList());
        Collections.reverse(numbers);
        return numbers;
    }
}
