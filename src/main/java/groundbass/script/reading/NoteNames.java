package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads note names, and tells the note A from the article and the note E from a part of a beat. */
final class NoteNames {
    private final Terms terms;

    NoteNames(Terms terms) {
        this.terms = terms;
    }

    /** Notes in a row: "B, A, G", "F up to G". A letter that names a string, a key or a part of a beat is none. */
    Optional<Found<Chunk>> row(int i) {
        var first = note(i);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        var names = new ArrayList<>(List.of(first.get().value()));
        int after = first.get().after();
        boolean path = false;
        while (true) {
            var separator = terms.separator(after);
            if (separator.isEmpty()) {
                break;
            }
            var next = note(terms.skipArticles(separator.get().after()));
            if (next.isEmpty() || terms.isAny(next.get().after(), Sense.BE, Sense.FRET)) {
                break; // "it's a C, a B is ..." begins anew
            }
            names.add(next.get().value());
            path |= separator.get().value();
            after = next.get().after();
        }
        return Optional.of(new Found<>(new Chunk.Notes(names, path), after));
    }

    private Optional<Found<NoteName>> note(int i) {
        return name(i).filter(found -> !terms.isAny(found.after(), Sense.STRING, Sense.MODE)
                && !isSection(found.after())
                && !(terms.is(found.after(), Sense.OPEN) && terms.is(found.after() + 1, Sense.STRING)));
    }

    private boolean isSection(int i) {
        return List.of("section", "part", "side", "team").contains(terms.at(i).raw());
    }

    /** A letter with its accidental, whatever it names. */
    Optional<Found<NoteName>> name(int i) {
        if (!terms.is(i, Sense.LETTER) || isPartOfBeat(i)) {
            return Optional.empty();
        }
        var plain = NoteName.parse(terms.at(i).value(Sense.LETTER)).orElseThrow();
        var accidental = plain.alteration() == 0 ? accidental(i + 1) : Optional.<Integer>empty();
        var name = accidental
                .map(alteration -> new NoteName(plain.letter(), alteration))
                .orElse(plain);
        boolean twice = terms.at(i + 1).raw().equals("double");
        int after = accidental.isPresent() ? i + (twice ? 3 : 2) : i + 1;
        boolean sure = isA(i)
                ? isNoteA(i, accidental.isPresent(), after)
                : Character.isUpperCase(terms.at(i).raw().charAt(0))
                        || (terms.at(i).raw().length() <= 2
                                && (terms.isLowered()
                                        || accidental.isPresent()
                                        || terms.isAny(after, Sense.STRING, Sense.MODE)));
        return sure ? Optional.of(new Found<>(name, after)) : Optional.empty();
    }

    private Optional<Integer> accidental(int i) {
        if (terms.at(i).raw().equals("double")) {
            return accidental(i + 1).filter(one -> one != 0).map(one -> 2 * one);
        }
        if (terms.is(i, Sense.SHARP)) {
            return Optional.of(1);
        }
        if (terms.is(i, Sense.FLAT)) {
            return Optional.of(-1);
        }
        return terms.is(i, Sense.NATURAL) ? Optional.of(0) : Optional.empty();
    }

    private boolean isPartOfBeat(int i) {
        boolean counts = terms.is(i, Sense.PART)
                && terms.is(i + 1, Sense.OF)
                && (terms.is(i + 2, Sense.NUMBER) || terms.is(i + 2, Sense.BEAT));
        boolean figure = terms.is(i - 1, Sense.NUMBER)
                && terms.at(i - 1).to() == terms.at(i).from();
        return counts || figure;
    }

    private boolean isA(int i) {
        return terms.at(i).raw().equalsIgnoreCase("a");
    }

    private boolean isNoteA(int i, boolean accidental, int after) {
        boolean capital = terms.at(i).raw().equals("A") && !terms.isShouted();
        boolean opening = i == 0 || terms.isAny(i - 1, Sense.COLON, Sense.STOP);
        if (capital && !opening) {
            return true;
        }
        String before = terms.at(i - 1).raw();
        if (before.equals("an") || (terms.is(i - 1, Sense.OPEN) && !opening)) {
            return true;
        }
        if (terms.is(after, Sense.STRING)) {
            return capital || List.of("the", "your", "low", "my", "same").contains(before);
        }
        boolean standsAlone = terms.isBreak(after)
                || terms.isAny(after, Sense.ON, Sense.BE, Sense.IN, Sense.FROM, Sense.TO, Sense.THEN);
        return standsAlone && (accidental || capital);
    }
}
