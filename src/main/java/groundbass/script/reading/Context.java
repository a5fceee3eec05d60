package groundbass.script.reading;

import groundbass.score.Line;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.NamedPlace;
import groundbass.script.claims.Where;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** What a speaker may take as known from the sentences before: the bar and beat in hand, and the place last named. */
final class Context {
    /** After so many sentences without a bar, nobody can be sure which one is meant. */
    private static final int FRESH = 8;

    private final Line line;
    private List<Integer> bars = List.of();
    private List<Integer> beats = List.of();
    private NamedPlace spot = NamedPlace.NOWHERE;
    private Optional<NoteName> name = Optional.empty();
    private int age;

    Context(Line line) {
        this.line = line;
    }

    List<Integer> bars() {
        return age <= FRESH ? bars : List.of();
    }

    List<Integer> beats() {
        return age <= 2 ? beats : List.of();
    }

    NamedPlace spot() {
        return spot;
    }

    /** The bars that a chunk names. */
    Optional<List<Integer>> bars(Chunk chunk) {
        if (chunk instanceof Chunk.Bars named) {
            return Optional.of(named.numbers());
        }
        if (!(chunk instanceof Chunk.BarAt at)) {
            return Optional.empty();
        }
        int last = line.firstNumber() + line.bars().size() - 1;
        return switch (at.way()) {
            case LAST -> Optional.of(List.of(last));
            case PICKUP -> Optional.of(List.of(0)).filter(pickup -> line.firstNumber() == 0);
            case THIS -> Optional.of(bars()).filter(known -> !known.isEmpty());
            case NEXT ->
                Optional.of(bars())
                        .filter(known -> known.size() == 1 && known.get(0) < last)
                        .map(known -> List.of(known.get(0) + 1));
        };
    }

    /** What the string of a number is called. */
    NoteName string(int number) {
        return line.header().tuning().string(number).name();
    }

    void sentenceDone() {
        age++;
    }

    /** A new subject, such as the whole line: the bar in hand is no longer known. */
    void forget() {
        bars = List.of();
        beats = List.of();
    }

    void moveTo(Where where) {
        if (where.hasBars() && !where.carried()) {
            bars = where.bars().size() == 1 ? where.bars() : List.of();
            beats = where.beats();
            age = 0;
        } else if (!where.beats().isEmpty()) {
            beats = where.beats();
            age = Math.min(age, 1);
        }
    }

    /** The name of the note last spoken of; empty where several were. */
    Optional<NoteName> name() {
        return name;
    }

    void called(Optional<NoteName> newName) {
        name = newName;
    }

    void named(NamedPlace newSpot) {
        spot = newSpot;
    }
}
